package org.broodbench.input.weather;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.zip.GZIPOutputStream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.broodbench.input.BadInput;
import org.broodbench.rig.CsvMapping;
import org.broodbench.sky.Almanac;
import org.broodbench.sky.MonthlyNormals;
import org.broodbench.sky.Stand;
import org.broodbench.sky.Variable;
import org.broodbench.sky.WeatherSeries;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A few lines made by hand in each layout: units, clocks, stamps, missing codes. */
class LayoutsTest {
  @TempDir Path folder;

  private WeatherSeries read(String text) throws IOException {
    return WeatherFiles.read(write("w.txt", text));
  }

  private Path write(String name, String text) throws IOException {
    return Files.writeString(folder.resolve(name), text, StandardCharsets.UTF_8);
  }

  private static void starts(String instant, WeatherSeries w) {
    assertEquals(Instant.parse(instant).getEpochSecond(), w.startEpochS());
  }

  private static String crn(String date, String time, String air, String sun, int flag) {
    return "94082 "
        + date
        + " "
        + time
        + " 20180101 0000  2.422 -108.97   40.24    99.9 "
        + air
        + " 1 1 0.4 "
        + sun
        + " "
        + flag
        + " 0 0 0 0 C 1 0 1 0 1 0 -9999 0 0.1 0.1 0.1 0.1 0.1 1 1 1 1 1\n";
  }

  @Test
  void uscrnHoursEndAtTheStampAndBadFlagsAreMissing() throws IOException {
    WeatherSeries w =
        read(
            crn("20180101", "0100", "1.5", "-3", 0)
                + crn("20180101", "0200", "-9999.0", "800", 3)
                + crn("20180101", "300", "2.5", "20", 0));
    starts("2018-01-01T00:00:00Z", w);
    assertEquals(Stand.MEAN, w.stand(Variable.AIR));
    assertEquals(0, w.value(Variable.GHI, 0), 0.0);
    // the flagged 800 W/m2 and the missing temperature are bridged
    assertEquals(10, w.value(Variable.GHI, 1), 1e-12);
    assertEquals(2, w.value(Variable.AIR, 1), 1e-12);
    assertEquals(0.4, w.value(Variable.PRECIPITATION, 1), 0.0);
    assertEquals(40.24, w.coordinates().get().latitudeDeg(), 0.0);
    assertTrue(w.place().isEmpty());
    assertTrue(w.warnings().stream().anyMatch(t -> t.contains("no wind")));
    assertTrue(w.warnings().stream().anyMatch(t -> t.contains("no humidity")));
  }

  @Test
  void anOlderFlagOfOneMeansMissingToo() throws IOException {
    WeatherSeries w =
        read(
            crn("20180101", "0100", "1.5", "0", 0)
                + crn("20180101", "0200", "2.0", "800", 1)
                + crn("20180101", "0300", "2.5", "20", 0));
    assertEquals(10, w.value(Variable.GHI, 1), 1e-12);
  }

  @Test
  void tmy3IsLocalTimeAndHasAnHour24() throws IOException {
    String head =
        "703165,\"SAND, POINT\",AK,-9.0,55.317,-160.517,7\n"
            + "Date (MM/DD/YYYY),Time (HH:MM),GHI (W/m^2),Dry-bulb (C),RHum (%),Wspd (m/s),"
            + "Pressure (mbar)\n";
    WeatherSeries w =
        read(
            head
                + "12/31/1997,23:00,0,4.0,93,2.1,1012\n"
                + "12/31/1997,24:00,5,3.0,-9900,2.1,1012\n");
    // 23:00 of the label year at UTC-9 ends at 08:00 UTC of the next day
    starts("2002-01-01T07:00:00Z", w);
    assertEquals(2, w.n());
    assertTrue(w.typicalYear());
    assertEquals(Stand.instant(3600), w.stand(Variable.AIR));
    assertEquals(Stand.MEAN, w.stand(Variable.GHI));
    assertEquals(101200, w.value(Variable.PRESSURE, 0), 1e-9);
    assertEquals(93, w.value(Variable.HUMIDITY, 1), 1e-12);
    assertEquals("NREL TMY3, 703165 SAND, POINT", w.source());
  }

  @Test
  void nsrdbIsCentredOnItsStampAndTrailingCommasDoNotMatter() throws IOException {
    WeatherSeries w =
        read(
            "Source,Location ID,City,Latitude,Longitude,Time Zone,Elevation,,,\n"
                + "NSRDB,1,\"a, b\",40.53,-108.54,-7,2168,,,\n"
                + "Year,Month,Day,Hour,Minute,GHI,Dew Point,Temperature,Wind Speed,,\n"
                + "2017,1,1,0,15,0,-10.8,-8.4,0.3,,\n"
                + "2017,1,1,0,45,7,-8.4,-8.4,0.6,,\n");
    starts("2017-01-01T07:00:00Z", w);
    assertEquals(1800, w.stepS());
    assertEquals(Stand.instant(900), w.stand(Variable.AIR));
    // dew point equal to the temperature is saturation
    assertEquals(100, w.value(Variable.HUMIDITY, 1), 1e-9);
    assertEquals(82.6, w.value(Variable.HUMIDITY, 0), 0.5);
  }

  @Test
  void jrcLightHoldsAtTheStatedOffset() throws IOException {
    String text =
        "Latitude (decimal degrees): 45.000\r\nLongitude (decimal degrees): 8.000\r\n"
            + "Elevation (m): 250.0\r\nIrradiance Time Offset (h): 0.1761\r\n"
            + "time(UTC),T2m,RH,G(h),Gb(n),Gd(h),IR(h),WS10m,WD10m,SP\r\n"
            + "20180228:2300,2.04,94.38,0.0,-0.0,0.0,283.58,0.75,257.0,99870.0\r\n"
            + "20070301:0000,1.98,95.45,10.0,0.0,10.0,291.44,0.78,258.0,99800.0\r\n"
            + "\r\nT2m: 2-m air temperature\r\n";
    WeatherSeries w = read(text);
    starts("2001-02-28T22:30:00Z", w);
    assertEquals(2, w.n());
    assertEquals(Stand.instant(1800 + 634), w.stand(Variable.GHI));
    assertEquals(Stand.instant(1800), w.stand(Variable.AIR));
    assertEquals(0, w.value(Variable.DNI, 0), 0.0);
    WeatherSeries plain = read(text.replace("Irradiance Time Offset (h): 0.1761\r\n", ""));
    assertEquals(Stand.instant(1800), plain.stand(Variable.GHI));
    assertTrue(plain.warnings().stream().anyMatch(t -> t.contains("offset")));
  }

  @Test
  void jrcHourlySeriesOfATiltedPlaneIsRefused() throws IOException {
    String text =
        "Latitude (decimal degrees):\t45.000\nLongitude (decimal degrees):\t8.000\n"
            + "Elevation (m):\t250\nSlope: 35 deg.\nAzimuth: 0 deg.\n\n"
            + "time,Gb(i),Gd(i),Gr(i),H_sun,T2m,WS10m,Int\n"
            + "20180601:0910,300.0,100.0,5.0,40.0,18.0,1.5,0.0\n"
            + "20180601:1010,400.0,110.0,5.0,50.0,19.0,1.5,0.0\n";
    BadInput bad = assertThrows(BadInput.class, () -> read(text));
    assertEquals("Slope", bad.problems().get(0).key());
    assertEquals(4, bad.problems().get(0).line());
    WeatherSeries w = read(text.replace("35 deg.", "0 deg."));
    starts("2018-06-01T08:30:00Z", w);
    assertEquals(400, w.value(Variable.GHI, 0), 0.0);
    assertEquals(100, w.value(Variable.DHI, 0), 0.0);
    assertEquals(Stand.instant(1800 + 600), w.stand(Variable.GHI));
  }

  @Test
  void openMeteoUnitsComeFromTheFile() throws IOException {
    WeatherSeries w =
        read(
            "latitude,longitude,elevation,utc_offset_seconds,timezone,timezone_abbreviation\n"
                + "47.0,11.0,900.0,7200,Europe/Vienna,CEST\n\n"
                + "time,temperature_2m (°C),dew_point_2m (°C),wind_speed_10m (km/h),"
                + "shortwave_radiation (W/m²),precipitation (mm)\n"
                + "2026-04-20T02:00,3.5,3.5,36.0,0.0,0.10\n"
                + "2026-04-20T03:00,3.0,NaN,18.0,0.0,0.00\n"
                + "2026-04-20T04:00,3.0,3.0,18.0,0.0,0.00\n"
                + "\ntime,temperature_2m_max (°C)\n2026-04-20,12.0\n");
    starts("2026-04-19T23:00:00Z", w);
    assertEquals(3, w.n());
    assertEquals(10, w.value(Variable.WIND, 0), 1e-12);
    assertEquals(100, w.value(Variable.HUMIDITY, 1), 1e-9);
    assertEquals(Stand.instant(3600), w.stand(Variable.AIR));
    assertEquals(Stand.MEAN, w.stand(Variable.GHI));
    BadInput bad =
        assertThrows(
            BadInput.class,
            () ->
                read(
                    "latitude,longitude,elevation,utc_offset_seconds\n47.0,11.0,900.0,0\n\n"
                        + "time,temperature_2m (furlong)\n2026-04-20T02:00,3.5\n"));
    assertEquals("furlong", bad.problems().get(0).found());
  }

  @Test
  void openMeteoJsonIsTheSame() throws IOException {
    WeatherSeries w =
        read(
            "{\"latitude\":47.0,\"longitude\":11.0,\"elevation\":900.0,"
                + "\"utc_offset_seconds\":0,\n\"hourly_units\":{\"time\":\"iso8601\","
                + "\"temperature_2m\":\"°F\",\"relative_humidity_2m\":\"%\","
                + "\"wind_speed_10m\":\"m/s\",\"shortwave_radiation\":\"W/m²\"},"
                + "\"hourly\":{\"time\":[\"2026-04-20T01:00\",\"2026-04-20T02:00\","
                + "\"2026-04-20T03:00\"],\"temperature_2m\":[32,null,50],"
                + "\"relative_humidity_2m\":[80,81,82],\"wind_speed_10m\":[1,2,3],"
                + "\"shortwave_radiation\":[0,1.5,20]}}");
    assertEquals("open_meteo_json", w.formatId());
    starts("2026-04-20T00:00:00Z", w);
    assertEquals(0, w.value(Variable.AIR, 0), 1e-12);
    assertEquals(5, w.value(Variable.AIR, 1), 1e-12);
    BadInput cut =
        assertThrows(
            BadInput.class, () -> read("{\"utc_offset_seconds\":0,\"hourly\":{\"time\":[\"2026"));
    assertEquals("a whole JSON text", cut.problems().get(0).allowed());
  }

  @Test
  void era5SumsBecomeMeans() throws IOException {
    String text =
        "valid_time,u10,v10,d2m,t2m,sp,tp,ssrd,fdir,latitude,longitude\n"
            + "2020-06-01 11:00:00,3.0,4.0,283.15,293.15,95000.0,0.001,1800000.0,1080000.0,"
            + "47.0,350.0\n"
            + "2020-06-01 12:00:00,0.0,1.0,283.15,293.15,95000.0,0.0,3600000.0,0.0,47.0,350.0\n";
    Path zip = folder.resolve("era5.zip");
    try (ZipOutputStream out = new ZipOutputStream(Files.newOutputStream(zip))) {
      out.putNextEntry(new ZipEntry("data/point.csv"));
      out.write(text.getBytes(StandardCharsets.UTF_8));
    }
    WeatherSeries w = WeatherFiles.read(zip);
    starts("2020-06-01T10:00:00Z", w);
    assertEquals(20, w.value(Variable.AIR, 0), 1e-9);
    assertEquals(500, w.value(Variable.GHI, 0), 1e-9);
    assertEquals(200, w.value(Variable.DHI, 0), 1e-9);
    assertEquals(5, w.value(Variable.WIND, 0), 1e-12);
    assertEquals(1, w.value(Variable.PRECIPITATION, 0), 1e-12);
    assertEquals(52.5, w.value(Variable.HUMIDITY, 0), 0.5);
    assertEquals(-10, w.coordinates().get().longitudeDeg(), 0.0);
  }

  @Test
  void epwHoursEndAtTheStampInStandardTime() throws IOException {
    StringBuilder b = new StringBuilder("LOCATION,Here,-,X,Own,0,47.0,11.0,1,900\n");
    for (String line :
        List.of(
            "DESIGN CONDITIONS,0",
            "TYPICAL/EXTREME PERIODS,0",
            "GROUND TEMPERATURES,0",
            "HOLIDAYS/DAYLIGHT SAVINGS,No,0,0,0",
            "COMMENTS 1,none",
            "COMMENTS 2,none",
            "DATA PERIODS,1,1,Data,Sunday,1/1,12/31")) {
      b.append(line).append('\n');
    }
    String tail = ",0,0,0,0,9999,0,0,0,0,0,180,2.0,5,5,9,9,9,9,9,9,9,9,9,999,1\n";
    b.append("1998,1,1,1,60,flags,99.9,-1.0,80,91000").append(tail);
    b.append("1998,1,1,2,60,flags,4.0,99.9,999,91000").append(tail);
    b.append("1998,1,1,3,60,flags,4.0,4.0,999,91000").append(tail);
    WeatherSeries w = read(b.toString());
    starts("2000-12-31T23:00:00Z", w);
    assertEquals(3, w.n());
    assertEquals(4.0, w.value(Variable.AIR, 0), 0.0);
    assertEquals(100, w.value(Variable.HUMIDITY, 2), 1e-9);
    assertEquals(90, w.value(Variable.HUMIDITY, 1), 1e-9);
    assertEquals(0, w.value(Variable.GHI, 0), 0.0);
    assertEquals(Double.NaN, w.value(Variable.DNI, 0));
    assertEquals(Double.NaN, w.value(Variable.PRECIPITATION, 0));
    assertEquals(Stand.MEAN, w.stand(Variable.GHI));
  }

  /** True solar hours that end at minute 20 are shared out: 40 minutes of one, 20 of the next. */
  @Test
  void dwdSunIsSharedOutToUtcHours() throws IOException {
    Path air = folder.resolve("tu.txt");
    Files.writeString(
        air,
        "STATIONS_ID;MESS_DATUM;QN_9;TT_TU;RF_TU;eor\n"
            + "  1;2023021006;3;  3.0;  90.0;eor\n  1;2023021007;3;  4.0;  90.0;eor\n"
            + "  1;2023021008;3;  5.0;-999;eor\n");
    Path sun = folder.resolve("st.txt");
    String head =
        "STATIONS_ID;MESS_DATUM;QN_592;ATMO_LBERG;FD_LBERG;FG_LBERG;SD_LBERG;ZENIT;"
            + "MESS_DATUM_WOZ;eor\n";
    StringBuilder rows = new StringBuilder(head);
    for (int h = 4; h <= 9; h++) {
      rows.append(
          String.format(
              "  1;20230210%02d:20;1;-999;%d;%d;0;80;20230210%02d:00;eor\n",
              h, 18 * (h - 4), 36 * (h - 4), h + 1));
    }
    Files.writeString(sun, rows.toString());
    WeatherSeries w = WeatherFiles.readTogether(List.of(air, sun), ReadOptions.DEFAULT);
    starts("2023-02-10T05:00:00Z", w);
    assertEquals(3, w.n());
    // hour 5 to 6: 20 minutes of the row ending 05:20 (100 W/m2), 40 of that ending 06:20 (200)
    assertEquals((20 * 100 + 40 * 200) / 60.0, w.value(Variable.GHI, 0), 1e-9);
    assertEquals(0.5, w.value(Variable.DHI, 1) / w.value(Variable.GHI, 1), 1e-12);
    assertEquals(Stand.instant(3000), w.stand(Variable.AIR));
    assertEquals("dwd_hourly", w.formatId());
  }

  @Test
  void gzipIsReadAsItIs() throws IOException {
    Path file = folder.resolve("w.csv.gz");
    try (OutputStream out = new GZIPOutputStream(Files.newOutputStream(file))) {
      out.write(
          ("# broodbench weather 1\n# step_s: 3600\nfrom_utc,air_c,ghi_w_m2\n"
                  + "2027-04-20T00:00:00Z,1,0\n2027-04-20T01:00:00Z,2,0\n")
              .getBytes(StandardCharsets.UTF_8));
    }
    assertEquals(2, WeatherFiles.read(file).n());
    byte[] whole = Files.readAllBytes(file);
    Path cut = folder.resolve("cut.gz");
    Files.write(cut, java.util.Arrays.copyOf(whole, whole.length - 12));
    BadInput bad = assertThrows(BadInput.class, () -> WeatherFiles.read(cut));
    assertEquals("a file that can be read", bad.problems().get(0).allowed());
  }

  /** German spreadsheet: decimal comma, local winter time, stamps at the end of the interval. */
  @Test
  void anyTableIsReadAlongAMapping() throws IOException {
    CsvMapping mapping =
        new CsvMapping(
            ';',
            true,
            1,
            List.of("Datum", "Zeit"),
            "dmyhn",
            3600,
            CsvMapping.Stamped.END,
            1800,
            List.of(
                new CsvMapping.Column("Temp", Variable.AIR, "degF", true),
                new CsvMapping.Column("Feuchte", Variable.HUMIDITY, "percent", true),
                new CsvMapping.Column("Wind", Variable.WIND, "km/h", false),
                new CsvMapping.Column("Strahlung", Variable.GHI, "J/cm2", false)),
            List.of("---"),
            2,
            Optional.empty(),
            "garden");
    String head = "Meine Station\nDatum;Zeit;Temp;Feuchte;Wind;Strahlung\n";
    Path file =
        write(
            "w.csv",
            head
                + "01.05.2026;00:30;41,0;80;3,6;0\n"
                + "01.05.2026;01:00;---;80;3,6;18\n"
                + "01.05.2026;01:30;42,8;80;7,2;0\n");
    WeatherSeries w = WeatherFiles.read(file, mapping, ReadOptions.DEFAULT);
    starts("2026-04-30T23:00:00Z", w);
    assertEquals(5, w.value(Variable.AIR, 0), 1e-12);
    assertEquals(5.5, w.value(Variable.AIR, 1), 1e-12);
    assertEquals(1, w.value(Variable.WIND, 0), 1e-12);
    // 18 J/cm2 in half an hour are 100 W/m2
    assertEquals(100, w.value(Variable.GHI, 1), 1e-9);
    assertEquals(Stand.instant(1800), w.stand(Variable.AIR));
    assertEquals(2, w.windHeightM(), 0.0);
    Path wrong = write("x.csv", head + "2026-13-01;00:30;41;80;3;0\n");
    assertThrows(BadInput.class, () -> WeatherFiles.read(wrong, mapping, ReadOptions.DEFAULT));
  }

  @Test
  void daysBecomeHours() throws IOException {
    String head =
        "# broodbench daily weather 1\n# latitude_deg: 47\n# longitude_deg: 15\n"
            + "# altitude_m: 900\n# source: my diary\n"
            + "date,min_c,max_c,ghi_kwh_m2,precip_mm\n";
    String rows = "2027-04-20,1.5,11.0,4.2,2.4\n2027-04-21,0.5,9.0,,\n2027-04-22,0.5,9.0,3,0\n";
    WeatherSeries w = read(head + rows);
    assertEquals("tidy_daily_csv", w.formatId());
    assertEquals("my diary", w.source());
    // local mean midnight at 15 E
    starts("2027-04-19T23:00:00Z", w);
    assertEquals(72, w.n());
    assertEquals(0.1, w.value(Variable.PRECIPITATION, 3), 1e-12);
    double[] kWh = new double[3];
    for (int i = 0; i < 72; i++) {
      kWh[i / 24] += w.value(Variable.GHI, i) / 1000;
    }
    assertEquals(4.2, kWh[0], 1e-9);
    // Hargreaves: 0.16 sqrt(8.5) of what arrives outside the air, by the formula of FAO-56
    assertEquals(0.16 * Math.sqrt(8.5) * Almanac.faoDailyMJ(47, 111) / 3.6, kWh[1], 0.05);
    BadInput hole =
        assertThrows(BadInput.class, () -> read(head + rows.replace("2027-04-21", "2027-04-25")));
    assertEquals(8, hole.problems().get(0).line());
    assertEquals("2027-04-21", hole.problems().get(0).allowed());
    BadInput wrong =
        assertThrows(BadInput.class, () -> read(head + "2027-04-20,5,1,4,0\n2027-04-21,,9,99,0\n"));
    assertEquals(3, wrong.problems().size(), wrong.problems().toString());
  }

  /** A climate table makes a typical year whose months come back; years where asked for. */
  @Test
  void monthlyNormalsMakeYears() throws IOException {
    String head =
        "# broodbench monthly normals 1\n# latitude_deg: 47\n# longitude_deg: 11\n"
            + "# altitude_m: 900\n";
    String columns = "month,mean_max_c,mean_min_c,ghi_kwh_m2_day,wet_days,precip_mm\n";
    StringBuilder rows = new StringBuilder();
    double[] ghi = {1.3, 2.2, 3.4, 4.4, 5.3, 5.6, 5.7, 4.9, 3.7, 2.4, 1.4, 1.0};
    for (int m = 0; m < 12; m++) {
      double high = 11 - 10 * Math.cos(Math.PI * m / 6);
      rows.append(m + 1).append(',').append(high).append(',').append(high - 10);
      rows.append(',').append(ghi[m]).append(",12,90\n");
    }
    WeatherSeries year = read(head + columns + rows);
    assertEquals("monthly_normals_csv", year.formatId());
    assertTrue(year.typicalYear());
    assertEquals(8760, year.n());
    WeatherSeries ten = read(head + "# years: 10\n# first_year: 2030\n" + columns + rows);
    starts("2030-01-01T00:00:00Z", ten);
    assertEquals(87_648, ten.n());
    MonthlyNormals back = MonthlyNormals.of(ten);
    for (int m = 0; m < 12; m++) {
      // 300 days with a memory of three: about 0.4 K
      double high = 11 - 10 * Math.cos(Math.PI * m / 6);
      assertEquals(high, back.months().get(m).meanMaxC(), 1.7, "high " + m);
      assertEquals(12 / 30.4, back.months().get(m).wetDays(), 0.09, "wet " + m);
    }
    BadInput wrong =
        assertThrows(
            BadInput.class,
            () ->
                read(
                    head
                        + columns
                        + rows.toString()
                            .replace("1,1.0,-9.0,1.3,12,90", "1,-12,-9.0,7,12,90")
                            .replace(",12,90\n4,", ",0,90\n4,")));
    assertEquals(3, wrong.problems().size(), wrong.problems().toString());
    assertEquals(6, wrong.problems().get(0).line());
    assertThrows(BadInput.class, () -> read(head + columns + rows.substring(20)));
    assertThrows(BadInput.class, () -> read(head + columns + rows + "13,1,0,1,1,1\n"));
  }
}

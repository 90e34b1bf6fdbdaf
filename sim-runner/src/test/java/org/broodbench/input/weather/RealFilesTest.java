package org.broodbench.input.weather;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.util.List;
import org.broodbench.input.BadInput;
import org.broodbench.sky.RigClass;
import org.broodbench.sky.SeriesCheck;
import org.broodbench.sky.Variable;
import org.broodbench.sky.WeatherSeries;
import org.broodbench.sky.WeatherSummary;
import org.broodbench.sky.WindowStats;
import org.broodbench.sky.WorstWindows;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Published data files read whole. The expected numbers were summed apart from this program;
 * windows are seven whole days of local mean solar time.
 */
class RealFilesTest {

  @ParameterizedTest
  @CsvSource({
    "uurgeg_260_2000.txt, knmi_hourly, 8784, 3600, 2000-01-01T00:00:00Z",
    "CRNH0203-2018-CO_Dinosaur_2_E.txt, uscrn_hourly02, 8760, 3600, 2018-01-01T00:00:00Z",
    "CRNH0203-2019-CO_Dinosaur_2_E.txt, uscrn_hourly02, 8760, 3600, 2019-01-01T00:00:00Z",
    "CRNH0203-2020-CO_Dinosaur_2_E.txt, uscrn_hourly02, 8784, 3600, 2020-01-01T00:00:00Z",
    "CRNS0101-05-2019-AZ_Tucson_11_W.txt, uscrn_subhourly01, 4, 300, 2019-01-01T16:05:00Z",
    "CRN_with_problems.txt, uscrn_subhourly01, 15, 300, 2020-07-06T11:55:00Z",
    "703165TY.csv, tmy3, 8760, 3600, 2001-01-01T09:00:00Z",
    "nsrdb_psm3_2017_40.53_-108.54.csv, nsrdb_csv, 17520, 1800, 2017-01-01T06:45:00Z",
    "tmy_45.000_8.000_2005_2023.csv, jrc_tmy_csv, 8760, 3600, 2000-12-31T23:30:00Z",
    "tmy_45.000_8.000_2005_2023.json, jrc_tmy_json, 8760, 3600, 2000-12-31T23:30:00Z",
    "tmy_45.000_8.000_2005_2023.epw, epw, 8760, 3600, 2000-12-31T23:30:00Z",
    "psu17001.dat, surfrad, 1440, 60, 2016-12-31T23:59:00Z",
    "psu17010.dat, surfrad, 1440, 60, 2017-01-09T23:59:00Z",
    "tbl17005.dat, surfrad, 1440, 60, 2017-01-04T23:59:00Z",
    "10minutenwerte_SOLAR_01766_akt.zip, dwd_10min, 288, 600, 2023-06-08T23:50:00Z",
    "stundenwerte_TU_00320_akt_excerpt.zip, dwd_hourly, 13200, 3600, 2018-09-14T23:00:00Z",
    "stundenwerte_FF_04911_akt_excerpt.zip, dwd_hourly, 13200, 3600, 2018-09-14T23:00:00Z"
  })
  void everyFileIsRead(String name, String format, int rows, int stepS, String from) {
    WeatherSeries w = WeatherFiles.read(WeatherFolder.file(name), ReadOptions.DESCRIBE);
    assertEquals(format, w.formatId());
    assertEquals(rows, w.n());
    assertEquals(stepS, w.stepS());
    assertEquals(Instant.parse(from).getEpochSecond(), w.startEpochS());
    WeatherSummary s = WeatherSummary.of(w);
    assertEquals(rows, s.rows());
    assertTrue(s.missing().get(Variable.AIR) <= rows);
  }

  /** Noon of the light against noon of the sun; a stamp at the wrong end would make 0.5 or 1 h. */
  @ParameterizedTest
  @CsvSource({
    "uurgeg_260_2000.txt, 0.14",
    "CRNH0203-2019-CO_Dinosaur_2_E.txt, 0.01",
    "703165TY.csv, 0.03",
    "nsrdb_psm3_2017_40.53_-108.54.csv, 0.00",
    "tmy_45.000_8.000_2005_2023.csv, 0.03"
  })
  void theLightIsCentredOnSolarNoon(String name, double expectedH) {
    WeatherSeries w = WeatherFiles.read(WeatherFolder.file(name), ReadOptions.DESCRIBE);
    // which days count as sunny was chosen differently: 0.1 h
    assertEquals(expectedH, SeriesCheck.noonOffsetH(w).getAsDouble(), 0.1);
  }

  @ParameterizedTest
  @CsvSource({
    // file, first day, mean, lowest, kWh/m2/d, mm, percent, m/s
    "uurgeg_260_2000.txt, 2000-12-24T00:00:00Z, -0.1, -4.4, 0.50, 22.8, 90, 4.1",
    "uurgeg_260_2000.txt, 2000-12-22T00:00:00Z, -1.0, -6.3, 0.62, 8.8, 88, 3.5",
    "uurgeg_260_2000.txt, 2000-12-09T23:00:00Z, 9.0, , 0.32, 51.8, , ",
    "CRNH0203-2019-CO_Dinosaur_2_E.txt, 2019-12-22T07:00:00Z, -4.0, -11.1, 1.12, 25.1, 78, ",
    "CRNH0203-2020-CO_Dinosaur_2_E.txt, 2020-12-12T07:00:00Z, -7.2, -13.9, 1.24, 9.7, 77, ",
    "703165TY.csv, 2001-12-09T11:00:00Z, -5.5, -8.1, 0.65, , , 7.1",
    "703165TY.csv, 2001-12-18T11:00:00Z, 3.9, , 0.25, , 86, ",
    "tmy_45.000_8.000_2005_2023.csv, 2001-12-13T23:30:00Z, 2.1, -1.9, 1.04, , 93, 0.9",
    "nsrdb_psm3_2017_40.53_-108.54.csv, 2017-01-02T07:15:00Z, -10.3, -27.7, 1.24, , 79, 3.5",
    "psu17010.dat, 2017-01-09T23:59:00Z, -6.6, , 0.65, , , ",
    "psu17001.dat, 2016-12-31T23:59:00Z, 3.4, , 2.54, , , ",
    "tbl17005.dat, 2017-01-04T23:59:00Z, -15.2, -16.3, 1.57, , , "
  })
  void windowsAreAsSummedElsewhere(
      String name,
      String from,
      double mean,
      Double low,
      double kWh,
      Double mm,
      Double percent,
      Double wind) {
    WeatherSeries w = WeatherFiles.read(WeatherFolder.file(name), ReadOptions.DESCRIBE);
    long start = Instant.parse(from).getEpochSecond();
    WindowStats s = WindowStats.between(w, start, Math.min(w.endEpochS(), start + 7 * 86400L));
    assertEquals(mean, s.meanAirC(), 0.055);
    assertEquals(kWh, s.ghiKWhM2Day(), 0.0055);
    if (low != null) {
      assertEquals(low, s.minAirC(), 0.055);
    }
    if (mm != null) {
      assertEquals(mm, s.precipMm(), 0.055);
    }
    if (percent != null) {
      assertEquals(percent, s.meanRhPercent(), 0.6);
    }
    if (wind != null) {
      assertEquals(wind, s.meanWindMS(), 0.06);
    }
  }

  /** The hardest week of each record is the one found elsewhere with another score. */
  @ParameterizedTest
  @CsvSource({
    "uurgeg_260_2000.txt, 0, 2000-12-22T00:00:00Z",
    "CRNH0203-2020-CO_Dinosaur_2_E.txt, 25200, 2020-12-12T07:00:00Z",
    "703165TY.csv, 39600, 2001-12-09T11:00:00Z",
    "tmy_45.000_8.000_2005_2023.csv, 0, 2001-12-14T00:00:00Z",
    "nsrdb_psm3_2017_40.53_-108.54.csv, 25200, 2017-01-02T07:00:00Z"
  })
  void theHardestWeekIsFound(String name, long dayShiftS, String from) {
    WeatherSeries w = WeatherFiles.read(WeatherFolder.file(name), ReadOptions.DESCRIBE);
    List<WorstWindows.Window> found = WorstWindows.find(w, 7, 3, RigClass.SMALL, dayShiftS);
    assertEquals(Instant.parse(from).getEpochSecond(), found.get(0).fromEpochS());
    assertTrue(found.get(0).hardnessKWh() >= found.get(1).hardnessKWh());
  }

  /** One typical year of the Joint Research Centre in three layouts. */
  @Test
  void threeRenderingsOfOneYearGiveOneSeries() {
    WeatherSeries csv = WeatherFiles.read(WeatherFolder.file("tmy_45.000_8.000_2005_2023.csv"));
    WeatherSeries json = WeatherFiles.read(WeatherFolder.file("tmy_45.000_8.000_2005_2023.json"));
    WeatherSeries epw = WeatherFiles.read(WeatherFolder.file("tmy_45.000_8.000_2005_2023.epw"));
    assertEquals(csv.startEpochS(), json.startEpochS());
    assertEquals(csv.startEpochS(), epw.startEpochS());
    for (Variable v : Variable.values()) {
      assertEquals(csv.stand(v), json.stand(v));
      assertTrue(
          !csv.has(v) || Math.abs(csv.stand(v).offsetS() - epw.stand(v).offsetS()) < 1, v + "");
      // that layout prints the wind with one decimal
      double tolerance = v == Variable.WIND ? 0.0501 : 1e-9;
      for (int i = 0; i < csv.n(); i++) {
        assertEquals(csv.value(v, i), json.value(v, i), 0.0, v + " " + i);
        assertEquals(csv.value(v, i), epw.value(v, i), tolerance, v + " " + i);
      }
    }
  }

  /** A radiation with a bad flag in August 2018 is a gap of four hours, which is named. */
  @Test
  void theBadHoursOfDinosaurAreNamed() {
    var file = WeatherFolder.file("CRNH0203-2018-CO_Dinosaur_2_E.txt");
    BadInput bad = assertThrows(BadInput.class, () -> WeatherFiles.read(file));
    assertEquals(3, bad.problems().size());
    assertTrue(bad.problems().get(0).found().contains("2018-08-24"), "" + bad.problems());
    WeatherSeries kept = WeatherFiles.read(file, ReadOptions.DESCRIBE);
    assertTrue(kept.missing(Variable.GHI) > 3 && kept.missing(Variable.GHI) < 8);
    assertTrue(kept.warnings().stream().anyMatch(t -> t.contains("no wind")));
  }

  /** Three years of one station one after another. */
  @Test
  void yearsAreJoined() {
    WeatherSeries w =
        WeatherFiles.readTogether(
            List.of(
                WeatherFolder.file("CRNH0203-2019-CO_Dinosaur_2_E.txt"),
                WeatherFolder.file("CRNH0203-2018-CO_Dinosaur_2_E.txt"),
                WeatherFolder.file("CRNH0203-2020-CO_Dinosaur_2_E.txt")),
            ReadOptions.DESCRIBE);
    assertEquals(8760 + 8760 + 8784, w.n());
    long from = Instant.parse("2018-12-28T07:00:00Z").getEpochSecond();
    WindowStats s = WindowStats.between(w, from, from + 7 * 86400);
    assertEquals(-11.5, s.meanAirC(), 0.055);
    assertEquals(-20.0, s.minAirC(), 0.0);
    assertEquals(1.94, s.ghiKWhM2Day(), 0.0055);
    assertEquals(59, s.meanRhPercent(), 0.6);
  }

  /** Excerpts of two stations make a record without light, which is refused by name. */
  @Test
  void subjectsAreMergedAndWhatIsMissingIsNamed() {
    var files =
        List.of(
            WeatherFolder.file("stundenwerte_TU_00320_akt_excerpt.zip"),
            WeatherFolder.file("stundenwerte_FF_04911_akt_excerpt.zip"));
    WeatherSeries w = WeatherFiles.readTogether(files, ReadOptions.DESCRIBE);
    assertEquals(13.7, w.value(Variable.AIR, 0), 0.0);
    assertEquals(1.6, w.value(Variable.WIND, 0), 0.0);
    assertEquals(49.9667, w.place().get().latitudeDeg(), 0.0);
    assertTrue(w.warnings().stream().anyMatch(t -> t.contains("km apart")));
    BadInput bad =
        assertThrows(BadInput.class, () -> WeatherFiles.readTogether(files, ReadOptions.DEFAULT));
    assertTrue(bad.problems().stream().anyMatch(p -> p.key().equals("ghi_w_m2")));
  }
}

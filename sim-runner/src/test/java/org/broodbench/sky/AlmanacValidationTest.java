package org.broodbench.sky;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.LocalDate;
import org.broodbench.checks.CheckRows;
import org.broodbench.checks.CheckRows.Row;
import org.broodbench.matter.MoistAir;
import org.junit.jupiter.api.Test;

/**
 * Worked examples of Duffie and Beckman and of FAO-56, extraterrestrial radiation, hours of a day.
 */
class AlmanacValidationTest {

  @Test
  void geometry() {
    CheckRows.of("GEO").run(33, AlmanacValidationTest::geometry);
  }

  private static double geometry(Row r) {
    String id = r.id();
    if (id.equals("GEO-DB151-E")) {
      return Almanac.spencerEquationOfTimeMin((int) r.number("n"));
    }
    if (id.equals("GEO-DB151")) {
      return Almanac.solarTimeH(
          10.5, -r.number("std_meridian_W"), -r.number("lon_W"), (int) r.number("n"));
    }
    if (id.startsWith("GEO-DECL")) {
      return Almanac.cooperDeclinationDeg((int) r.number("n"));
    }
    if (id.startsWith("GEO-DAYL")) {
      return Almanac.dayLengthH(
          r.number("lat_deg"), Almanac.cooperDeclinationDeg((int) r.number("n")));
    }
    double latitude = r.number("lat_deg");
    boolean byDate = id.equals("GEO-DB161");
    double declination = byDate ? Almanac.cooperDeclinationDeg(44) : r.number("decl_deg");
    double hourAngle = byDate ? 15 * (10.5 - 12) : r.number("hour_angle_deg");
    double zenith = 90 - Sun.elevationDeg(latitude, declination, hourAngle);
    double azimuth = Almanac.azimuthFromSouthDeg(latitude, declination, hourAngle);
    if (id.startsWith("GEO-DB162-Z")) {
      return zenith;
    }
    if (id.startsWith("GEO-DB162-A")) {
      return azimuth;
    }
    double cos =
        Transposition.cosIncidence(
            zenith, azimuth, r.number("slope_deg"), r.number("surf_az_deg_W_of_S"));
    return id.endsWith("COS") ? cos : StrictMath.toDegrees(StrictMath.acos(cos));
  }

  /** What the program takes from FAO-56. */
  @Test
  void worksheets() {
    CheckRows.of("FAO").run(23, AlmanacValidationTest::worksheet);
  }

  /**
   * The program's own vapour pressures against those of FAO-56. Tolerance: 0.15 percent of e0,
   * since its Tetens form lies up to 0.11 percent below the formulation for water that is used
   * here.
   */
  @Test
  void vapourOfTheWorksheets() {
    CheckRows.of("FAO-vapour").run(13, AlmanacValidationTest::vapour);
  }

  private static double vapour(Row r) {
    double t = r.number("T_C");
    return r.id().equals("FAO-17-DEL") ? (kPa(t + 0.05) - kPa(t - 0.05)) / 0.1 : kPa(t);
  }

  private static double worksheet(Row r) {
    if (r.id().startsWith("FAO-W")) {
      return twoMetres(r.number("z_m"));
    }
    return switch (r.id()) {
      case "FAO-08-DR" -> Almanac.faoDistanceFactor((int) r.number("J"));
      case "FAO-08-D" -> Almanac.faoDeclinationRad((int) r.number("J"));
      case "FAO-08-WS" -> StrictMath.toRadians(sunset(r));
      case "FAO-08-RA", "FAO-10-RA", "FAO-15-RA", "FAO-18-RA" ->
          Almanac.faoDailyMJ(r.number("lat_deg"), (int) r.number("J"));
      case "FAO-09-N", "FAO-18-N" -> sunset(r) / 7.5;
      case "FAO-10-RS", "FAO-18-RS" ->
          Disaggregation.sunshineMJ(r.number("n_h"), r.number("N_h"), r.number("Ra"));
      case "FAO-14-U2" -> r.number("uz_ms") * twoMetres(r.number("z_m"));
      case "FAO-15-RS" ->
          Disaggregation.hargreavesMJ(
              r.number("Tmin_C"), r.number("Tmax_C"), r.number("kRs"), r.number("Ra"));
      case "FAO-18-RSO" -> Disaggregation.faoClearMJ(r.number("z_m"), r.number("Ra"));
      case "FAO-19-RA" -> hour(r);
      case "FAO-03" -> 0.5 * (kPa(r.number("Tmax_C")) + kPa(r.number("Tmin_C")));
      case "FAO-05" ->
          0.5
              * (kPa(r.number("Tmin_C")) * r.number("RHmax_pct")
                  + kPa(r.number("Tmax_C")) * r.number("RHmin_pct"))
              / 100;
      case "FAO-05-M" ->
          0.5 * (kPa(r.number("Tmin_C")) + kPa(r.number("Tmax_C"))) * r.number("RHmean_pct") / 100;
      case "FAO-20-EA" -> kPa(r.number("Tmin_C"));
      default -> throw new IllegalArgumentException(r.id());
    };
  }

  private static double kPa(double tC) {
    return MoistAir.saturationWaterPa(tC) / 1000;
  }

  /** The log law over grass of 0.12 m, with the heights counted from two thirds of it. */
  private static double twoMetres(double z) {
    return Wind.logRatio(z - 0.08, 2 - 0.08, 0.123 * 0.12);
  }

  private static double sunset(Row r) {
    double declination = Almanac.faoDeclinationRad((int) r.number("J"));
    return Almanac.sunsetHourAngleDeg(r.number("lat_deg"), StrictMath.toDegrees(declination));
  }

  /** FAO-56 example 19: mid hour 14.5 of a zone at 15 W, place at 16.25 W. */
  private static double hour(Row r) {
    int n = (int) r.number("J");
    // seasonal correction of FAO-56 equations 32 and 33, hours
    double x = 2 * StrictMath.PI * (n - 81) / 364;
    double correction =
        0.1645 * StrictMath.sin(2 * x) - 0.1255 * StrictMath.cos(x) - 0.025 * StrictMath.sin(x);
    double solar = 14.5 + (r.number("Lz_W") - r.number("Lm_W")) / 15 + correction;
    double middle = 15 * (solar - 12);
    return Almanac.faoHourlyMJ(r.number("lat_deg"), n, middle - 7.5, middle + 7.5);
  }

  @Test
  void extraterrestrial() {
    CheckRows.of("ETR").run(22, AlmanacValidationTest::outside);
  }

  private static double outside(Row r) {
    if (r.id().startsWith("ETR-D-")) {
      return Almanac.faoDailyMJ(r.number("lat_deg"), (int) r.number("J"));
    }
    if (r.id().equals("ETR-DB-H0")) {
      int n = (int) r.number("n");
      return Almanac.dailyMJ(
          r.number("lat_deg"),
          Almanac.cooperDeclinationDeg(n),
          r.number("Gsc_W_m2") * Almanac.faoDistanceFactor(n));
    }
    // the precise sun, minute by minute over the local mean solar day
    Place place = new Place(r.number("lat_deg"), r.number("lon_deg"), 0);
    long day = LocalDate.parse(r.text("local_mean_day")).toEpochDay();
    long from = Math.round(day * 86400.0 - place.longitudeDeg() * 240);
    SunTrack sun = new SunTrack(place, from, from + 86400);
    double joule = 0;
    for (int k = 0; k < 1440; k++) {
      double t = from + k * 60 + 30;
      sun.at(t);
      joule += 60 * Math.max(0, sun.up()) * sun.extraterrestrialNormalWM2(t);
    }
    return joule / 1e6;
  }

  @Test
  void hoursOfADay() {
    CheckRows.of("DIS").run(43, AlmanacValidationTest::hours);
  }

  private static double hours(Row r) {
    String id = r.id();
    if (id.startsWith("DIS-PL")) {
      return sineExponential(r);
    }
    if (id.startsWith("DIS-COS")) {
      return Disaggregation.cosineAirC(
          r.number("Tmax_prev"),
          r.number("Tmin"),
          r.number("Tmax"),
          r.number("Tmin_next"),
          r.number("t_h"),
          r.number("sunrise_h"),
          r.number("sunrise_h"));
    }
    if (id.startsWith("DIS-RT-SUM")) {
      double sum = 0;
      for (int k = 0; k < 24000; k++) {
        sum += Disaggregation.globalShare(0.015 * (k + 0.5) - 180, r.number("ws_deg")) / 1000;
      }
      return sum;
    }
    if (id.startsWith("DIS-RD")) {
      return Disaggregation.diffuseShare(15 * r.number("hours_from_noon"), r.number("ws_deg"));
    }
    if (id.startsWith("DIS-RT")) {
      return Disaggregation.globalShare(15 * r.number("hours_from_noon"), r.number("ws_deg"));
    }
    if (id.startsWith("DIS-HS")) {
      return Disaggregation.hargreavesMJ(
          r.number("Tmin"), r.number("Tmax"), r.number("kRs"), r.number("Ra"));
    }
    if (id.startsWith("DIS-BC")) {
      return Disaggregation.bristowCampbell(r.number("dT_K"), r.number("dT_month_mean_K"));
    }
    return id.startsWith("DIS-RH")
        ? Disaggregation.relativeHumidity(r.number("Td_C"), r.number("T_C"))
        : Wind.logRatio(r.number("z1_m"), r.number("z2_m"), r.number("z0_m"));
  }

  private static double sineExponential(Row r) {
    if (r.id().equals("DIS-PL-GAP")) {
      // how far above the low the night ends, at the moment the next day begins
      double end = curve(r, r.number("sunrise_h") + r.number("b") - 1e-9);
      return end - r.number("Tmin");
    }
    return curve(r, r.number("t_h"));
  }

  private static double curve(Row r, double hour) {
    return new Disaggregation.SineExponential(r.number("a"), r.number("b"), r.number("c"))
        .airC(
            r.number("Tmin"), r.number("Tmax"), hour, r.number("sunrise_h"), r.number("sunset_h"));
  }

  /** A year of days made into hours: sums, lows and highs come back. */
  @Test
  void daysComeBackFromTheirHours() {
    java.util.List<DailyWeather.Day> days = new java.util.ArrayList<>();
    for (int k = 0; k < 60; k++) {
      double low = -4 + 0.2 * k;
      days.add(new DailyWeather.Day(low, low + 9, 2 + 0.05 * k, Double.NaN, 1.5, k % 4));
    }
    Place place = new Place(47, 11, 900);
    long first = LocalDate.of(2027, 3, 1).toEpochDay();
    WeatherSeries w = new DailyWeather(place, first, days, "made").toHourly();
    for (int d = 0; d < 60; d++) {
      double kWh = 0;
      double rain = 0;
      double low = 99;
      double high = -99;
      for (int i = 24 * d; i < 24 * d + 24; i++) {
        kWh += w.value(Variable.GHI, i) / 1000;
        rain += w.value(Variable.PRECIPITATION, i);
        low = Math.min(low, w.value(Variable.AIR, i));
        high = Math.max(high, w.value(Variable.AIR, i));
      }
      assertEquals(days.get(d).ghiKWhM2(), kWh, 1e-9);
      assertEquals(days.get(d).precipMm(), rain, 1e-9);
      // the high lies at 14 h and the low at sunrise, within the hour
      assertEquals(days.get(d).highC(), high, 0.1);
      assertEquals(days.get(d).lowC(), low, 0.2);
    }
    assertEquals(0, SeriesCheck.noonOffsetH(w).getAsDouble(), 0.05);
  }
}

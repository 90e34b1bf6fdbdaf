package org.broodbench.sky;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import org.broodbench.matter.MoistAir;
import org.junit.jupiter.api.Test;

/** What a window of weather must keep: energy, rise and set, end values, closure of the light. */
class ForcingVerificationTest {
  private static final Place PLACE = new Place(47, 11, 900);
  private static final long DAY0 = LocalDate.of(2027, 4, 18).toEpochDay();
  private static final long START = DAY0 * 86400;
  private static final WeatherSeries SPRING =
      WeatherGenerator.generate(GeneratorSettings.uplandSpring(2, DAY0, 12));
  private static final List<Plane> PLANES =
      List.of(new Plane(0, 0), new Plane(60, 180), new Plane(90, 90), new Plane(180, 0));

  private static Forcing forcing(long from, long to) {
    return Forcing.of(SPRING, PLACE, from, to, PLANES, ForcingSettings.DEFAULT);
  }

  /** The twelve cells of an hour hold the energy of the hour, to round-off. */
  @Test
  void cellsKeepTheEnergyOfEveryHour() {
    Forcing f = forcing(START + 3 * 3600, START + 9 * 86400L);
    Sample s = new Sample(PLANES.size());
    for (int hour = 0; hour < f.cells() / 12; hour++) {
      double sum = 0;
      for (int c = 0; c < 12; c++) {
        f.sample((hour * 12 + c) * 300.0 + 1, s);
        sum += s.ghiWM2 / 12;
      }
      assertEquals(SPRING.value(Variable.GHI, hour + 3), sum, 1e-9 * Math.max(1, sum));
    }
  }

  /**
   * A window that starts between two records cuts hours in two, and loses nothing of whole ones.
   */
  @Test
  void aWindowThatStartsAnywhereKeepsTheEnergyOfTheDays() {
    Forcing f = forcing(START + 1234, START + 1234 + 8 * 86400L);
    Sample s = new Sample(PLANES.size());
    double cells = 0;
    for (int k = 0; k < f.cells(); k++) {
      f.sample(k * 300.0, s);
      cells += s.ghiWM2 * 300;
    }
    double hours = 0;
    for (int i = 0; i < 8 * 24; i++) {
      hours += SPRING.value(Variable.GHI, i) * 3600;
    }
    // both ends are in the night
    assertEquals(hours, cells, 1e-9 * hours);
  }

  @Test
  void nothingShinesBeforeRiseAndAfterSet() {
    Forcing f = forcing(START, START + 10 * 86400L);
    Sample s = new Sample(PLANES.size());
    for (long d = 0; d < 10; d++) {
      Sun.Day day = Sun.day(DAY0 + d, PLACE);
      long rise = day.riseEpochS().getAsLong();
      long set = day.setEpochS().getAsLong();
      int lit = 0;
      for (long t = (DAY0 + d) * 86400 + 150; t < (DAY0 + d + 1) * 86400; t += 300) {
        f.sample(t - START, s);
        boolean up = t > rise && t < set;
        assertTrue(up || s.ghiWM2 == 0, "light at " + Instant.ofEpochSecond(t));
        lit += s.ghiWM2 > 0 ? 1 : 0;
      }
      assertTrue(lit > 150, "day " + d + " has " + lit + " lit cells");
    }
  }

  /**
   * Global = diffuse + direct on the horizontal; the flat plane sees it, the turned one the ground.
   */
  @Test
  void lightClosesAndPlanesAgreeWithIt() {
    Forcing f = forcing(START, START + 86400L * 10);
    Sample s = new Sample(PLANES.size());
    for (int k = 0; k < f.cells(); k++) {
      f.sample(k * 300.0 + 150, s);
      double sine = Math.max(0, Sun.position(START + k * 300.0 + 150, PLACE).elevationDeg());
      double direct = s.dniWM2 * StrictMath.sin(StrictMath.toRadians(sine));
      assertEquals(s.ghiWM2, s.dhiWM2 + direct, 1e-3 + 1e-6 * s.ghiWM2);
      assertEquals(s.ghiWM2, s.planeWM2[0], 1e-9 + 1e-9 * s.ghiWM2);
      double albedo = s.ghiWM2 > 0 ? s.planeWM2[3] / s.ghiWM2 : 0.2;
      assertTrue(Math.abs(albedo - 0.2) < 1e-9 || Math.abs(albedo - 0.7) < 1e-9, "" + albedo);
    }
  }

  /**
   * Spot values stand at the end of the hour in this record: there the sample equals the record.
   */
  @Test
  void spotValuesAreMetAtTheirInstant() {
    Forcing f = forcing(START, START + 9 * 86400L);
    Sample s = new Sample(PLANES.size());
    double ratio = Wind.logRatio(10, 1, 0.03);
    for (int i = 0; i < 9 * 24; i++) {
      f.sample((i + 1) * 3600.0, s);
      assertEquals(SPRING.value(Variable.AIR, i), s.airC, 1e-9);
      double e = SPRING.value(Variable.HUMIDITY, i) / 100 * MoistAir.saturationWaterPa(s.airC);
      assertEquals(e, s.vapourPa, 1e-6);
      if (i + 1 < 9 * 24) {
        // half way to the next, the vapour is the mean of both
        double after =
            SPRING.value(Variable.HUMIDITY, i + 1)
                / 100
                * MoistAir.saturationWaterPa(SPRING.value(Variable.AIR, i + 1));
        f.sample((i + 1.5) * 3600.0, s);
        double most = MoistAir.saturationWaterPa(s.airC);
        assertEquals(Math.min(most, 0.5 * (e + after)), s.vapourPa, 1e-6);
      }
      f.sample(i * 3600.0 + 1800, s);
      assertEquals(SPRING.value(Variable.WIND, i) * ratio, s.windMS, 1e-9);
      assertTrue(s.skyC < s.airC && s.skyC > s.airC - 35, "sky " + s.skyC + " air " + s.airC);
    }
    assertEquals(MoistAir.standardPressurePa(900), s.pressurePa, 1e-9);
  }

  @Test
  void aWindowBeyondTheRecordIsRefused() {
    NotCovered e = assertThrows(NotCovered.class, () -> forcing(START - 1, START + 86400));
    assertEquals(START, e.seriesFromEpochS());
    assertThrows(NotCovered.class, () -> forcing(START, START + 12 * 86400L + 1));
    double[] holed = new double[SPRING.n()];
    for (int i = 0; i < holed.length; i++) {
      holed[i] = i == 30 ? Double.NaN : SPRING.value(Variable.AIR, i);
    }
    WeatherSeries w =
        SPRING.toBuilder().column(Variable.AIR, holed, SPRING.stand(Variable.AIR)).build();
    NotCovered hole =
        assertThrows(
            NotCovered.class,
            () -> Forcing.of(w, PLACE, START, START + 2 * 86400, PLANES, ForcingSettings.DEFAULT));
    assertEquals(Variable.AIR, hole.missing());
  }

  /**
   * The interpolated track against the full algorithm: 2e-5 degree of elevation is 0.1 s of time.
   */
  @Test
  void theTrackFollowsTheFullAlgorithm() {
    for (Place place : List.of(PLACE, new Place(-35, 149, 600), new Place(65, -20, 10))) {
      SunTrack track = new SunTrack(place, START, START + 40 * 86400L);
      for (double t = START; t < START + 40 * 86400L; t += 4321) {
        Sun.Position p = Sun.position(t, place);
        track.at(t);
        assertEquals(p.elevationDeg(), track.elevationDeg(), 2e-5);
        assertEquals(0, Sun.wrap180(p.azimuthDeg() - track.azimuthDeg()), 2e-4);
      }
    }
  }

  private static WeatherSeries oneDay(double[] ghi, double[] dni, double[] dhi) {
    double[] air = new double[24];
    java.util.Arrays.fill(air, 5);
    WeatherSeries.Builder b =
        new WeatherSeries.Builder(START, 3600, 24)
            .column(Variable.AIR, air, Stand.MEAN)
            .column(Variable.GHI, ghi, Stand.MEAN);
    if (dni != null) {
      b.column(Variable.DNI, dni, Stand.MEAN);
    }
    if (dhi != null) {
      b.column(Variable.DHI, dhi, Stand.MEAN);
    }
    return b.build();
  }

  /** Light that a record has before the sun is up arrives all the same, and is diffuse. */
  @Test
  void twilightIsKeptAsDiffuseLight() {
    double[] ghi = new double[24];
    // the sun rises at 04:25 UTC: hour 3 is dark, hour 4 has 35 minutes of sun
    ghi[3] = 5;
    ghi[4] = 400;
    Forcing f =
        Forcing.of(
            oneDay(ghi, null, null), PLACE, START, START + 86400, PLANES, ForcingSettings.DEFAULT);
    Sample s = new Sample(PLANES.size());
    double third = 0;
    double fourth = 0;
    for (int k = 36; k < 60; k++) {
      f.sample(k * 300.0 + 10, s);
      if (k < 48) {
        third += s.ghiWM2 / 12;
        assertEquals(5, s.dhiWM2, 1e-9);
      } else {
        fourth += s.ghiWM2 / 12;
        assertEquals(s.ghiWM2, s.dhiWM2 + s.dniWM2 * sine(k), 0.05);
      }
    }
    assertEquals(5, third, 1e-9);
    assertEquals(400, fourth, 1e-9);
  }

  private static double sine(int cell) {
    double deg = Sun.position(START + cell * 300.0 + 150, PLACE).elevationDeg();
    return StrictMath.sin(StrictMath.toRadians(Math.max(0, deg)));
  }

  /** A record's own diffuse light is followed; its direct light alone serves as well. */
  @Test
  void theRecordsOwnSplitIsFollowed() {
    double[] ghi = new double[24];
    double[] dni = new double[24];
    double[] dhi = new double[24];
    // from 15 degrees of elevation to noon and back
    double[] beam = new double[24];
    for (int h = 6; h < 17; h++) {
      double mean = 0;
      for (int c = 0; c < 12; c++) {
        mean += sine(12 * h + c) / 12;
      }
      dni[h] = 600;
      beam[h] = 600 * mean;
      dhi[h] = 90;
      ghi[h] = beam[h] + dhi[h];
    }
    for (WeatherSeries w : List.of(oneDay(ghi, null, dhi), oneDay(ghi, dni, null))) {
      Forcing f = Forcing.of(w, PLACE, START, START + 86400, PLANES, ForcingSettings.DEFAULT);
      Sample s = new Sample(PLANES.size());
      for (int h = 6; h < 17; h++) {
        double diffuse = 0;
        double direct = 0;
        for (int c = 0; c < 12; c++) {
          f.sample((12 * h + c) * 300.0, s);
          diffuse += s.dhiWM2 / 12;
          direct += s.dniWM2 * sine(12 * h + c) / 12;
        }
        assertEquals(90, diffuse, 0.5, "hour " + h);
        assertEquals(beam[h], direct, 0.5, "hour " + h);
      }
    }
  }

  /** A cell's planes are those of the published models at its middle. */
  @Test
  void planesFollowTheModels() {
    double[] ghi = new double[24];
    double[] dhi = new double[24];
    java.util.Arrays.fill(ghi, 8, 15, 600);
    java.util.Arrays.fill(dhi, 8, 15, 120);
    for (Transposition.Model model : Transposition.Model.values()) {
      ForcingSettings d = ForcingSettings.DEFAULT;
      ForcingSettings settings =
          new ForcingSettings(
              model, 0.25, 0.7, ForcingSettings.SnowRule.NONE, d.longWave(), 3, 0.03, 1, 1, 2);
      Forcing f = Forcing.of(oneDay(ghi, null, dhi), PLACE, START, START + 86400, PLANES, settings);
      Sample s = new Sample(PLANES.size());
      for (int cell = 8 * 12; cell < 15 * 12; cell += 5) {
        f.sample(cell * 300.0, s);
        double t = START + cell * 300.0 + 150;
        Sun.Position sun = Sun.position(t, PLACE);
        double r = Sun.ephemeris(t, Sun.DELTA_T_S).distanceAu();
        double outside = Irradiance.SOLAR_CONSTANT_W_M2 / (r * r);
        for (int p = 0; p < PLANES.size(); p++) {
          Plane plane = PLANES.get(p);
          double cos =
              Transposition.cosIncidence(
                  sun.zenithDeg(), sun.azimuthDeg(), plane.tiltDeg(), plane.azimuthDeg());
          double cosZ = StrictMath.cos(StrictMath.toRadians(sun.zenithDeg()));
          double sky =
              model == Transposition.Model.ISOTROPIC
                  ? Transposition.isotropicWM2(s.dhiWM2, plane.tiltDeg())
                  : Transposition.hayDaviesWM2(
                      s.dhiWM2, s.dniWM2, outside, cos, cosZ, plane.tiltDeg());
          double expected =
              s.dniWM2 * Math.max(0, cos)
                  + sky
                  + Transposition.groundWM2(s.ghiWM2, 0.25, plane.tiltDeg());
          assertEquals(expected, s.planeWM2[p], 0.01, model + " plane " + p);
        }
      }
    }
  }

  /** Ten millimetres in frost whiten the ground, and three warm days clear it. */
  @Test
  void snowComesAndGoes() {
    int n = 24 * 12;
    double[] air = new double[n];
    double[] ghi = new double[n];
    double[] mm = new double[n];
    for (int i = 0; i < n; i++) {
      air[i] = i < 96 ? -3 : 4;
      ghi[i] = i % 24 >= 8 && i % 24 < 15 ? 300 : 0;
      mm[i] = i >= 40 && i < 50 ? 1 : 0;
    }
    WeatherSeries w =
        new WeatherSeries.Builder(START, 3600, n)
            .column(Variable.AIR, air, Stand.MEAN)
            .column(Variable.GHI, ghi, Stand.MEAN)
            .column(Variable.PRECIPITATION, mm, Stand.MEAN)
            .build();
    Forcing f = Forcing.of(w, PLACE, START, START + n * 3600L, PLANES, ForcingSettings.DEFAULT);
    Sample s = new Sample(PLANES.size());
    // noon of day 1 (bare), 3 (white), 5 (12 mm per day melt: bare again by its end), 8 (bare)
    int[] days = {1, 3, 8};
    double[] albedo = {0.2, 0.7, 0.2};
    for (int k = 0; k < days.length; k++) {
      f.sample(days[k] * 86400 + 11 * 3600.0, s);
      assertEquals(albedo[k], s.planeWM2[3] / s.ghiWM2, 1e-9, "day " + days[k]);
    }
    f.sample(45 * 3600.0, s);
    assertEquals(1, s.precipMmPerH, 1e-12);
  }

  /** Asked for without a wind, a humidity or a pressure, it says what stands in. */
  @Test
  void whatStandsInIsSaid() {
    double[] ghi = new double[24];
    Forcing f =
        Forcing.of(
            oneDay(ghi, null, null), PLACE, START, START + 86400, PLANES, ForcingSettings.DEFAULT);
    String all = String.join("; ", f.assumed());
    for (String part : new String[] {"wind", "humidity", "pressure", "precipitation"}) {
      assertTrue(all.contains(part), part + " in: " + all);
    }
    Sample s = new Sample(PLANES.size());
    f.sample(3600, s);
    assertEquals(2 * Wind.logRatio(10, 1, 0.03), s.windMS, 1e-12);
    assertEquals(MoistAir.saturationWaterPa(5), s.vapourPa, 1e-9);
  }

  /** The night before a dull day is taken as dull: its sky is warmer, but never than the air. */
  @Test
  void nightsTakeTheCloudsOfTheNextDay() {
    double[] clear = new double[24];
    double[] dull = new double[24];
    for (int h = 5; h < 19; h++) {
      double up = Math.max(0, sine(12 * h + 6));
      clear[h] = 950 * up;
      dull[h] = 130 * up;
    }
    double[] sky = new double[2];
    Sample s = new Sample(0);
    for (int k = 0; k < 2; k++) {
      WeatherSeries w = oneDay(k == 0 ? clear : dull, null, null);
      Forcing.of(w, PLACE, START, START + 86400, List.of(), ForcingSettings.DEFAULT)
          .sample(3600, s);
      sky[k] = s.skyC;
    }
    // emissivity 0.80 against 0.92 at 5 degC and saturation is about 10 K
    assertEquals(10, sky[1] - sky[0], 2.5);
    assertTrue(sky[1] < 5);
    assertTrue(LongWave.skyC(LongWave.Model.CLARK_ALLEN, 38, 6000, 1) <= 38 + 1e-9);
  }
}

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
}

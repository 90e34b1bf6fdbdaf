package org.broodbench.calibrate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.function.LongUnaryOperator;
import org.broodbench.sky.GeneratorSettings;
import org.broodbench.sky.MonthlyNormals;
import org.broodbench.sky.Place;
import org.broodbench.sky.Sun;
import org.broodbench.sky.Variable;
import org.broodbench.sky.WeatherGenerator;
import org.broodbench.sky.WeatherSeries;
import org.junit.jupiter.api.Test;

/** Clocks that are wrong, told by the sun in the log or by the outdoor probe. */
class LogClockTest {
  private static final Place SITE = new Place(47, 10, 900);
  private static final int DAYS = 8;
  private static final int STEP_S = 120;

  /** 2027-03-24: the night to the 28th is that of summer time in Europe. */
  private static final long FROM_S = 1_805_846_400L;

  private static final WeatherSeries WEATHER =
      WeatherGenerator.generate(
          new GeneratorSettings(
              5,
              SITE,
              MonthlyNormals.UPLAND_VALLEY,
              FROM_S / 86_400 - 1,
              DAYS + 2,
              java.util.List.of(),
              new GeneratorSettings.Stress(0, 0, 0)));

  private static double air(long atS) {
    double step = WEATHER.stepS();
    double k = (atS - WEATHER.startEpochS() - WEATHER.stand(Variable.AIR).centreS(step)) / step;
    int i = (int) k;
    double f = k - i;
    return (1 - f) * WEATHER.value(Variable.AIR, i) + f * WEATHER.value(Variable.AIR, i + 1);
  }

  /** Light under clouds that come and go: what the sun gives on level ground, times 0.2 to 0.8. */
  private static double light(long atS) {
    double up = StrictMath.sin(StrictMath.toRadians(Sun.position(atS, SITE).elevationDeg()));
    double clouds = 0.5 + 0.3 * StrictMath.sin(atS / 4000.0);
    return Math.max(0, 900 * up * clouds);
  }

  /** A log whose clock shows what the operator makes of the true time. */
  private static FieldLog log(boolean sun, LongUnaryOperator clock) {
    return log(DAYS, sun, clock);
  }

  private static FieldLog log(int days, boolean sun, LongUnaryOperator clock) {
    RawLog raw = new RawLog();
    for (int i = 0; i < days * 86_400 / STEP_S; i++) {
      long t = FROM_S + (long) i * STEP_S;
      double[] row = new double[LogColumn.COUNT];
      Arrays.fill(row, Double.NaN);
      row[LogColumn.BROOD_A.ordinal()] = 33 + StrictMath.sin(i / 300.0);
      row[LogColumn.OUTDOOR.ordinal()] = air(t) + 0.5;
      if (sun) {
        row[LogColumn.SUN.ordinal()] = light(t);
      }
      raw.add(i + 2, clock.applyAsLong(t), row);
    }
    return LogCleaner.clean(raw);
  }

  private static String note(FieldLog log) {
    return log.notes().stream().filter(n -> n.startsWith("clock:")).findFirst().orElse("");
  }

  private static void assertTrueTime(FieldLog righted, double withinS) {
    double[] sun = righted.column(LogColumn.SUN);
    long[] at = righted.epochS();
    double worst = 0;
    // where the light rises and falls steeply, a minute is some watts
    for (int i = 0; i < at.length; i++) {
      if (sun[i] > 100 && sun[i] < 300) {
        double slope = Math.abs(light(at[i] + 60) - light(at[i] - 60)) / 120;
        if (slope > 0.02) {
          worst = Math.max(worst, Math.abs(sun[i] - light(at[i])) / slope);
        }
      }
    }
    assertTrue(worst < withinS, "off by " + worst + " s");
  }

  @Test
  void aRightClockIsLeftAlone() {
    FieldLog log = log(true, t -> t);
    FieldLog righted = LogClock.righted(log, SITE, null);
    assertEquals(log.fromS(), righted.fromS());
    assertEquals(log.rows(), righted.rows());
    assertTrue(note(righted).contains("it is right to"), note(righted));
  }

  @Test
  void summerTimeTakenAsUtcIsTakenOff() {
    FieldLog righted = LogClock.righted(log(true, t -> t + 7200), SITE, null);
    assertEquals(FROM_S, righted.fromS());
    assertTrue(note(righted).contains("as on local time"), note(righted));
    assertTrue(note(righted).contains("clock_ahead = \"2 h\""), note(righted));
  }

  @Test
  void aClockOnTheOtherSideOfTheEarthToo() {
    FieldLog righted = LogClock.righted(log(true, t -> t - 9 * 3600 - 1800), SITE, null);
    assertEquals(FROM_S, righted.fromS());
    assertTrue(note(righted).contains("-9.5 h"), note(righted));
  }

  @Test
  void aClockThatDriftsIsStraightened() {
    // three minutes a day
    FieldLog log = log(true, t -> t + Math.round((t - FROM_S) * 180 / 86_400.0));
    FieldLog righted = LogClock.righted(log, SITE, null);
    assertTrue(note(righted).contains("it drifts"), note(righted));
    assertEquals(FROM_S, righted.fromS(), 180);
    assertTrueTime(righted, 240);
  }

  @Test
  void fewDaysTellALargeDriftAlone() {
    // twelve minutes a day
    FieldLog log = log(5, true, t -> t + Math.round((t - FROM_S) * 720 / 86_400.0));
    FieldLog righted = LogClock.righted(log, SITE, null);
    assertTrue(note(righted).contains("it drifts"), note(righted));
    assertTrueTime(righted, 240);
    // three minutes a day may be clouds at dawn
    FieldLog little = log(5, true, t -> t + Math.round((t - FROM_S) * 180 / 86_400.0));
    assertTrue(!note(LogClock.righted(little, SITE, null)).contains("it drifts"));
  }

  @Test
  void aClockSetToSummerTimeWithinTheLogIsTakenBack() {
    long change = 1_806_195_600L;
    FieldLog log = log(true, t -> t + (t < change ? 3600 : 7200));
    FieldLog righted = LogClock.righted(log, SITE, null);
    assertEquals(FROM_S, righted.fromS());
    assertEquals(FROM_S + DAYS * 86_400L - STEP_S, righted.toS());
    assertTrue(note(righted).contains("as for summer time"), note(righted));
    assertEquals(0, righted.gaps(3000).size());
  }

  @Test
  void theEndOfSummerTimeIsContinuedAndThenTakenOff() {
    long change = 1_806_195_600L;
    FieldLog log = log(true, t -> t + (t < change ? 7200 : 3600));
    assertTrue(log.notes().get(0).startsWith("the clock was set back by an hour"));
    assertEquals(DAYS * 86_400 / STEP_S, log.rows());
    FieldLog righted = LogClock.righted(log, SITE, null);
    assertEquals(FROM_S, righted.fromS());
    assertEquals(FROM_S + DAYS * 86_400L - STEP_S, righted.toS());
  }

  @Test
  void theOutdoorProbeAgainstARecordTellsAZone() {
    FieldLog righted = LogClock.righted(log(false, t -> t + 3 * 3600), SITE, WEATHER);
    assertEquals(FROM_S, righted.fromS(), note(righted));
    assertTrue(note(righted).contains("outdoor probe against the weather record"));
    FieldLog right = LogClock.righted(log(false, t -> t), SITE, WEATHER);
    assertEquals(FROM_S, right.fromS());
  }

  @Test
  void withoutSunAndRecordItIsSaidThatNothingIsKnown() {
    FieldLog righted = LogClock.righted(log(false, t -> t + 7200), SITE, null);
    assertEquals(FROM_S + 7200, righted.fromS());
    assertTrue(note(righted).contains("cannot be checked"), note(righted));
  }
}

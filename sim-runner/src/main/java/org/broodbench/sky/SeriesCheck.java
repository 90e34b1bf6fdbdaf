package org.broodbench.sky;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;

/** Looks over a series for the marks of a wrong clock, a wrong unit or a broken sensor. */
public final class SeriesCheck {
  /** Days that are looked at for the clock; own choice. */
  private static final int SUNNIEST = 40;

  /** Fewer days than this tell nothing. */
  private static final int FEWEST = 5;

  /**
   * Offsets of good records stay below 0.2 h, a stamp at the wrong end of an hour makes 1 h; own
   * choice between.
   */
  private static final double CLOCK_H = 0.4;

  private static final double LONGEST_STEP_K_PER_H = 10;

  private SeriesCheck() {}

  /** All that is odd, one sentence each. */
  public static List<String> warnings(WeatherSeries w) {
    List<String> out = new ArrayList<>();
    OptionalDouble offset = noonOffsetH(w);
    if (offset.isPresent() && Math.abs(offset.getAsDouble()) > CLOCK_H) {
      out.add(
          String.format(
              Locale.ROOT,
              "on sunny days the light is centred %.1f h %s solar noon: the clock, the longitude or"
                  + " the meaning of the time stamps may be wrong, or the horizon is shaded",
              Math.abs(offset.getAsDouble()),
              offset.getAsDouble() > 0 ? "after" : "before"));
    }
    int bright = tooBright(w);
    if (bright > 0) {
      out.add(bright + " irradiances above 1.2 times that outside the air at noon");
    }
    int jumps = jumps(w);
    if (jumps > 0) {
      out.add(jumps + " steps of the air temperature steeper than 10 K in an hour");
    }
    return out;
  }

  /**
   * Mean time of the light, weighted by irradiance, minus true solar noon over the sunniest days,
   * in hours; with right stamps near 0. Empty without a longitude or with fewer than five days of
   * light.
   */
  public static OptionalDouble noonOffsetH(WeatherSeries w) {
    if (w.coordinates().isEmpty()) {
      return OptionalDouble.empty();
    }
    double longitude = w.coordinates().get().longitudeDeg();
    double centre = w.stand(Variable.GHI).centreS(w.stepS());
    double local = w.startEpochS() + centre + longitude * 240;
    double firstDay = Math.floor(local / 86400);
    int days = (int) (Math.floor((local + (double) w.n() * w.stepS()) / 86400) - firstDay) + 1;
    double[] sum = new double[days];
    double[] moment = new double[days];
    for (int i = 0; i < w.n(); i++) {
      double g = w.value(Variable.GHI, i);
      if (g > 0) {
        double t = local + (double) i * w.stepS() - firstDay * 86400;
        int d = (int) (t / 86400);
        sum[d] += g;
        moment[d] += g * (t - d * 86400.0);
      }
    }
    double[] sorted = sum.clone();
    Arrays.sort(sorted);
    double least = sorted[Math.max(0, days - SUNNIEST)];
    double total = 0;
    int count = 0;
    for (int d = 0; d < days; d++) {
      if (sum[d] > 0 && sum[d] >= least) {
        double noon = (firstDay + d + 0.5) * 86400 - longitude * 240;
        total += moment[d] / sum[d] / 3600 - 12 + Sun.equationOfTimeMin(noon) / 60;
        count++;
      }
    }
    return count < FEWEST ? OptionalDouble.empty() : OptionalDouble.of(total / count);
  }

  private static int tooBright(WeatherSeries w) {
    if (w.coordinates().isEmpty()) {
      return 0;
    }
    double latitude = w.coordinates().get().latitudeDeg();
    int count = 0;
    long boundDay = Long.MIN_VALUE;
    double bound = 0;
    for (int i = 0; i < w.n(); i++) {
      double g = w.value(Variable.GHI, i);
      // nothing below this is ever too bright in the season of light
      if (!(g > 20)) {
        continue;
      }
      long day = Math.floorDiv(w.startEpochS() + (long) i * w.stepS(), 86400L);
      if (day != boundDay) {
        boundDay = day;
        int n = Instant.ofEpochSecond(day * 86400).atOffset(ZoneOffset.UTC).getDayOfYear();
        double high = Sun.elevationDeg(latitude, Almanac.cooperDeclinationDeg(n), 0);
        // the short formulas are off by a degree, which is much for a low winter sun
        double sine = StrictMath.sin(StrictMath.toRadians(Math.max(0, high) + 1.5));
        bound = 1.2 * Irradiance.SOLAR_CONSTANT_W_M2 * Irradiance.spencerDistanceFactor(n) * sine;
      }
      if (g > bound) {
        count++;
      }
    }
    return count;
  }

  private static int jumps(WeatherSeries w) {
    int perHour = Math.max(1, 3600 / w.stepS());
    double limit = LONGEST_STEP_K_PER_H * Math.max(1, w.stepS() / 3600.0);
    int count = 0;
    for (int i = perHour; i < w.n(); i += perHour) {
      double d = w.value(Variable.AIR, i) - w.value(Variable.AIR, i - perHour);
      if (Math.abs(d) > limit) {
        count++;
      }
    }
    return count;
  }
}

package org.broodbench.calibrate;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.broodbench.sky.Place;
import org.broodbench.sky.Sun;
import org.broodbench.sky.Variable;
import org.broodbench.sky.WeatherSeries;

/**
 * What a log itself says of its clock: the middle of each day's light against the sun's transit at
 * the site, or, without a sun sensor, the outdoor probe against a measured weather record. A clock
 * on local time, one that was set to summer time halfway, and one that drifts are put right and
 * told; less is only told. All bounds are own choices.
 */
final class LogClock {
  /** A clock that is off by less is taken as right, s. */
  private static final double RIGHT_S = 20 * 60;

  /** From here on it is put right, to the quarter hours that time zones have, s. */
  private static final double ZONE_S = 45 * 60;

  private static final double QUARTER_S = 900;

  /** A drift of the sun's noons over the whole log that is no scatter, s. */
  private static final double DRIFT_S = 8 * 60;

  /** The same of the outdoor probe against a record, which is coarser, s. */
  private static final double DRIFT_OF_AIR_S = 40 * 60;

  /** Days from which on a drift is told by their scatter. */
  private static final int DRIFT_DAYS = 6;

  /** Fewer days have no scatter to judge by: so many tell a drift that clouds cannot feign. */
  private static final int CLEAR_DRIFT_DAYS = 4;

  /** How far clouds at dawn and dusk may move the middle of a day's light, s. */
  private static final double CLOUDS_S = 4 * 60;

  /** Light above this is day, W/m²: what a sensor shows in the dark is less. */
  private static final double LIGHT_W_M2 = 5;

  /** Dark for less is a cloud, s. */
  private static final long CLOUD_S = 3600;

  /** First and last light must be seen to within this, s. */
  private static final long SEEN_S = 1800;

  private static final int BIN_S = 600;

  /** Shifts that are tried against a record: time zones reach from −12 to +14 h. */
  private static final int MOST_BINS = 14 * 3600 / BIN_S;

  private static final double LEAST_CORRELATION = 0.9;

  /** What the deviations must shrink to before a shift against a record is believed. */
  private static final double SHRINKS_TO = 0.7;

  private static final double DAY_S = 86_400;

  /** How far the clock was ahead at a time of its own, s. */
  private record Point(double atS, double aheadS) {}

  private final FieldLog log;
  private final List<String> notes;

  private LogClock(FieldLog log) {
    this.log = log;
    notes = new ArrayList<>(log.notes());
  }

  /**
   * The log with its clock put right where it tells that it is wrong.
   *
   * @param place the site
   * @param record a measured weather record, or null
   */
  static FieldLog righted(FieldLog log, Place place, WeatherSeries record) {
    return log.byHand() ? log : new LogClock(log).righted(place, record);
  }

  private FieldLog righted(Place place, WeatherSeries record) {
    List<Point> noons = log.has(LogColumn.SUN) ? noons(place) : List.of();
    if (noons.size() >= 2) {
      return judge(noons, "the sun in the log", DRIFT_S);
    }
    if (record != null && log.has(LogColumn.OUTDOOR)) {
      List<Point> halves = againstRecord(record);
      if (!halves.isEmpty()) {
        return judge(halves, "the outdoor probe against the weather record", DRIFT_OF_AIR_S);
      }
    }
    notes.add(
        "clock: taken as given; without sun in the log or a measured weather record that its"
            + " outdoor probe follows it cannot be checked");
    return log.at(log.epochS(), notes);
  }

  private FieldLog judge(List<Point> points, String by, double driftS) {
    double[] ahead = points.stream().mapToDouble(Point::aheadS).toArray();
    double middle = Robust.median(ahead);
    FieldLog.Gap step = summerTime(points);
    if (step != null) {
      double before = zone(median(points, Double.NEGATIVE_INFINITY, step.fromS()));
      double after = zone(median(points, step.fromS(), Double.POSITIVE_INFINITY));
      notes.add(
          String.format(
              Locale.ROOT,
              "clock: by %s it was set from %s to %s at %s, as for summer time; both were taken off",
              by,
              words(before),
              words(after),
              Instant.ofEpochSecond(step.toS())));
      return shifted(t -> t <= step.fromS() ? before : after);
    }
    double slope = slope(points);
    double spanS = log.toS() - log.fromS();
    double[] rest = points.stream().mapToDouble(p -> p.aheadS - slope * p.atS).toArray();
    boolean spread = points.get(points.size() - 1).atS - points.get(0).atS > 0.4 * spanS;
    boolean many =
        points.size() >= DRIFT_DAYS || driftS == DRIFT_OF_AIR_S || clearDrift(points, slope);
    double doubt = 4 * Robust.sigma(rest) / Math.sqrt(points.size());
    if (spread && many && Math.abs(slope * spanS) > Math.max(driftS, doubt)) {
      double at0 = Robust.median(rest);
      double first = at0 + slope * log.fromS();
      double last = at0 + slope * log.toS();
      notes.add(
          String.format(
              Locale.ROOT,
              "clock: by %s it was %s at the first row and %s at the last: it drifts. That was taken off; clock_ahead and clock_ahead_at_end in [log] set it by hand",
              by,
              words(first),
              words(last)));
      return shifted(t -> at0 + slope * t);
    }
    if (Math.abs(middle) >= ZONE_S) {
      double zone = zone(middle);
      notes.add(
          String.format(
              Locale.ROOT,
              "clock: by %s it is %s, as on local time; %s was taken off. If so, set clock_ahead = \"%s h\" in [log]; or is the site in the scenario another one?",
              by,
              words(middle),
              words(zone),
              hours(zone)));
      return shifted(t -> zone);
    }
    notes.add(
        String.format(
            Locale.ROOT,
            Math.abs(middle) >= RIGHT_S
                ? "clock: by %s it may be %s; that is too little to be sure and was left"
                : "clock: by %s it is right to %s",
            by,
            Math.abs(middle) >= RIGHT_S
                ? words(middle)
                : String.format(Locale.ROOT, "%.0f min", Math.max(1, Math.abs(middle) / 60))));
    return log.at(log.epochS(), notes);
  }

  private static String hours(double seconds) {
    return String.format(Locale.ROOT, "%.2f", seconds / 3600).replaceFirst("\\.?0+$", "");
  }

  private static double zone(double aheadS) {
    return Math.abs(aheadS) < ZONE_S ? 0 : Math.rint(aheadS / QUARTER_S) * QUARTER_S;
  }

  private static String words(double aheadS) {
    long min = Math.round(Math.abs(aheadS) / 60);
    if (min == 0) {
      return "at UTC";
    }
    String size = min >= 60 ? min / 60 + " h " + min % 60 + " min" : min + " min";
    return size + (aheadS > 0 ? " ahead of UTC" : " behind UTC");
  }

  private static double median(List<Point> points, double fromS, double toS) {
    return Robust.median(
        points.stream()
            .filter(p -> p.atS > fromS && p.atS <= toS)
            .mapToDouble(Point::aheadS)
            .toArray());
  }

  /** A hole of about an hour on whose sides the clock differs by as much; null for none. */
  private FieldLog.Gap summerTime(List<Point> points) {
    for (FieldLog.Gap gap : log.gaps(3000)) {
      double before = median(points, Double.NEGATIVE_INFINITY, gap.fromS());
      double after = median(points, gap.fromS(), Double.POSITIVE_INFINITY);
      if (gap.lengthS() < 4600 + log.stepS() && Math.abs(after - before - 3600) < QUARTER_S) {
        return gap;
      }
    }
    return null;
  }

  /** Middle of the slopes between all pairs (Theil 1950, Sen 1968). */
  private static double slope(List<Point> points) {
    List<Double> slopes = new ArrayList<>();
    for (int i = 0; i < points.size(); i++) {
      for (int j = 0; j < i; j++) {
        double dt = points.get(i).atS - points.get(j).atS;
        slopes.add((points.get(i).aheadS - points.get(j).aheadS) / dt);
      }
    }
    return slopes.isEmpty()
        ? 0
        : Robust.median(slopes.stream().mapToDouble(Double::doubleValue).toArray());
  }

  /** Whether few days drift by four times what clouds make a straight line through them tilt. */
  private static boolean clearDrift(List<Point> points, double slope) {
    double[] at = points.stream().mapToDouble(Point::atS).toArray();
    double middle = Arrays.stream(at).average().orElse(0);
    double square = Arrays.stream(at).map(t -> (t - middle) * (t - middle)).sum();
    return points.size() >= CLEAR_DRIFT_DAYS && Math.abs(slope) * Math.sqrt(square) > 4 * CLOUDS_S;
  }

  private interface Ahead {
    double at(long loggedS);
  }

  private FieldLog shifted(Ahead ahead) {
    long[] at = log.epochS().clone();
    for (int i = 0; i < at.length; i++) {
      at[i] -= Math.round(ahead.at(at[i]));
    }
    return log.at(at, notes);
  }

  // ---- the sun ----

  /** By days of light: how far their middle is from the transit. */
  private List<Point> noons(Place place) {
    double[] sun = log.column(LogColumn.SUN);
    long[] at = log.epochS();
    double bound = Math.max(LIGHT_W_M2, 0.01 * Robust.quantile(sun, 0.98));
    List<Point> out = new ArrayList<>();
    int first = -1;
    int last = -1;
    boolean rose = false;
    int before = -1;
    for (int i = 0; i < at.length; i++) {
      if (Double.isNaN(sun[i])) {
        continue;
      }
      boolean light = sun[i] > bound;
      if (first >= 0 && !light && at[i] - at[last] > CLOUD_S) {
        int dark = last + 1;
        boolean set = at[Math.min(dark, at.length - 1)] - at[last] <= SEEN_S;
        add(out, place, rose && set, at[first], at[last]);
        first = -1;
      }
      if (light) {
        if (first < 0) {
          first = i;
          rose = before >= 0 && at[i] - at[before] <= SEEN_S && !(sun[before] > bound);
        } else if (at[i] - at[last] > 12 * CLOUD_S) {
          // a hole over the night
          first = i;
          rose = false;
        }
        last = i;
      }
      before = i;
    }
    return out;
  }

  private static void add(List<Point> out, Place place, boolean whole, long riseS, long setS) {
    double length = setS - riseS;
    if (!whole || length < 4 * 3600 || length > 20 * 3600) {
      return;
    }
    double middle = riseS + length / 2;
    long day = Math.floorDiv((long) middle, (long) DAY_S);
    double ahead =
        java.util.stream.LongStream.rangeClosed(day - 1, day + 1)
            .mapToDouble(d -> middle - Sun.day(d, place).transitEpochS())
            .boxed()
            .min(Comparator.comparingDouble(Math::abs))
            .orElseThrow();
    out.add(new Point(middle, ahead));
  }

  // ---- the outdoor probe against a record ----

  private List<Point> againstRecord(WeatherSeries record) {
    long from = log.fromS();
    int n = (int) ((log.toS() - from) / BIN_S);
    double[] probe = new double[n];
    int[] count = new int[n];
    double[] v = log.column(LogColumn.OUTDOOR);
    for (int i = 0; i < v.length; i++) {
      int b = (int) ((log.epochS()[i] - from) / BIN_S);
      if (b < n && !Double.isNaN(v[i])) {
        probe[b] += v[i];
        count[b]++;
      }
    }
    for (int b = 0; b < n; b++) {
      probe[b] = count[b] == 0 ? Double.NaN : probe[b] / count[b];
    }
    double whole = best(probe, record, from, 0, n);
    if (Double.isNaN(whole)) {
      return List.of();
    }
    double early = best(probe, record, from, 0, n / 2);
    double late = best(probe, record, from, n / 2, n);
    if (Double.isNaN(early) || Double.isNaN(late)) {
      return List.of(new Point(from + n / 2.0 * BIN_S, whole));
    }
    return List.of(
        new Point(from + n / 4.0 * BIN_S, early), new Point(from + n * 0.75 * BIN_S, late));
  }

  /** The shift at which probe and record agree best, s ahead; not a number where they do not. */
  private static double best(double[] probe, WeatherSeries record, long from, int lo, int hi) {
    double[] left = new double[2 * MOST_BINS + 1];
    double least = Double.NaN;
    int at = -1;
    double correlation = 0;
    for (int s = 0; s < left.length; s++) {
      double[] r = deviation(probe, record, from + (long) (MOST_BINS - s) * BIN_S, lo, hi);
      left[s] = r[0];
      if (!(r[0] >= least)) {
        least = r[0];
        correlation = r[1];
        at = s;
      }
    }
    boolean edge = at <= 0 || at >= left.length - 1;
    if (edge || correlation < LEAST_CORRELATION) {
      return Double.NaN;
    }
    int ahead = at - MOST_BINS;
    if (Math.abs(ahead) * (double) BIN_S >= RIGHT_S && least > SHRINKS_TO * left[MOST_BINS]) {
      return Double.NaN;
    }
    double a = left[at - 1] * left[at - 1];
    double b = least * least;
    double c = left[at + 1] * left[at + 1];
    double bow = a - 2 * b + c;
    return BIN_S * (ahead + (bow > 0 ? 0.5 * (a - c) / bow : 0));
  }

  /** Standard deviation of probe less record, and their correlation, at a start of the record. */
  private static double[] deviation(
      double[] probe, WeatherSeries record, long from, int lo, int hi) {
    double n = 0;
    double x = 0;
    double y = 0;
    double xx = 0;
    double yy = 0;
    double xy = 0;
    for (int b = lo; b < hi; b++) {
      double air = air(record, from + (long) b * BIN_S + BIN_S / 2);
      if (Double.isNaN(air) || Double.isNaN(probe[b])) {
        continue;
      }
      n++;
      x += probe[b];
      y += air;
      xx += probe[b] * probe[b];
      yy += air * air;
      xy += probe[b] * air;
    }
    double vx = xx / n - x / n * (x / n);
    double vy = yy / n - y / n * (y / n);
    double cov = xy / n - x / n * (y / n);
    if (n < 0.5 * (hi - lo) || !(vx > 0) || !(vy > 0)) {
      return new double[] {Double.NaN, 0};
    }
    return new double[] {Math.sqrt(Math.max(0, vx + vy - 2 * cov)), cov / Math.sqrt(vx * vy)};
  }

  /** Air of the record at a time, straight between the middles or edges of its steps. */
  private static double air(WeatherSeries record, double atS) {
    double lead = record.stand(Variable.AIR).centreS(record.stepS()) / record.stepS();
    double k = (atS - record.startEpochS()) / record.stepS() - lead;
    int i = (int) Math.floor(k);
    if (i < 0 || i + 1 >= record.n()) {
      return Double.NaN;
    }
    double f = k - i;
    return (1 - f) * record.value(Variable.AIR, i) + f * record.value(Variable.AIR, i + 1);
  }
}

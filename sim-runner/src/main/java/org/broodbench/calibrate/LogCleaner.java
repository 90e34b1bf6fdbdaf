package org.broodbench.calibrate;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/**
 * Puts a raw log in order: clock resets, rows out of order, duplicates, readings that no probe can
 * have, columns that never change; and refuses what no fit should be made of. The bounds are own
 * choices unless a source is named.
 */
public final class LogCleaner {
  /** A clock that shows an earlier time has lost it, s since 1970: 2010-01-01. */
  private static final long NO_CLOCK_S = 1_262_304_000L;

  /** Error codes of common digital probes: 85 °C at power-up, −127 °C without an answer. */
  private static final double[] ERROR_CODES = {85, -127};

  /** Share of rows behind a later one from which on a file is not in order of time; own choice. */
  private static final double SHUFFLED = 0.25;

  /** How the note of a column that never changes ends. */
  private static final String STUCK = ": stuck, not used";

  private static final long DAY_S = 86_400;
  private static final long HOUR_S = 3600;

  private final RawLog raw;
  private final List<String> notes = new ArrayList<>();

  private LogCleaner(RawLog raw) {
    int late = 0;
    for (int i = 1; i < raw.rows(); i++) {
      late += raw.epochS(i) < raw.epochS(i - 1) ? 1 : 0;
    }
    boolean shuffled = late > SHUFFLED * raw.rows();
    this.raw = shuffled ? inOrder(raw) : raw;
    if (shuffled) {
      notes.add(late + " times a row stood after a later one; the rows were sorted by time");
    }
  }

  /** The rows by time: where many stand askew, their order says nothing of resets of a clock. */
  private static RawLog inOrder(RawLog raw) {
    Integer[] order = new Integer[raw.rows()];
    Arrays.setAll(order, i -> i);
    Arrays.sort(order, Comparator.comparingLong(raw::epochS));
    RawLog out = new RawLog();
    for (int i : order) {
      double[] row = new double[LogColumn.COUNT];
      for (LogColumn c : LogColumn.values()) {
        row[c.ordinal()] = raw.value(c, i);
      }
      out.add(raw.line(i), raw.epochS(i), row);
    }
    return out;
  }

  /**
   * The log in order.
   *
   * @throws LogRefused where it cannot be used
   */
  public static FieldLog clean(RawLog raw) {
    return new LogCleaner(raw).clean();
  }

  private FieldLog clean() {
    if (raw.rows() == 0) {
      throw new LogRefused(
          0, "", "no row", "rows below the header", "Is it the file that the logger wrote?");
    }
    int step = usualStepS();
    long[] at = times(step);
    Integer[] order = new Integer[raw.rows()];
    int late = 0;
    for (int i = 0; i < order.length; i++) {
      order[i] = i;
      late += i > 0 && at[i] < at[i - 1] ? 1 : 0;
    }
    Arrays.sort(order, Comparator.comparingLong(i -> at[i]));
    if (late > 0) {
      notes.add(late + " times a row stood after a later one; the rows were sorted by time");
    }
    int[] kept = once(order, at);
    long[] epochS = new long[kept.length];
    double[][] values = new double[LogColumn.COUNT][kept.length];
    for (int k = 0; k < kept.length; k++) {
      epochS[k] = at[kept[k]];
      for (LogColumn c : LogColumn.values()) {
        values[c.ordinal()][k] = raw.value(c, kept[k]);
      }
    }
    for (LogColumn c : LogColumn.values()) {
      if (c.sort() == LogColumn.Sort.TEMPERATURE) {
        LogUnitsCheck.temperature(c, values[c.ordinal()]);
        dropErrors(c, values[c.ordinal()]);
      }
      dropImpossible(c, values[c.ordinal()]);
    }
    LogMixCheck.twoHives(epochS, values, step);
    FieldLog log = new FieldLog(epochS, values, step, List.of());
    dropConstant(log);
    checkUse(log);
    for (FieldLog.Gap gap : log.gaps(log.byHand() ? 3 * DAY_S : Math.max(1800, 3L * step))) {
      notes.add(
          String.format(
              Locale.ROOT,
              "gap of %.1f h from %s",
              gap.lengthS() / 3600.0,
              Instant.ofEpochSecond(gap.fromS())));
    }
    return new FieldLog(epochS, values, step, notes);
  }

  /** Middle of the steps forward, s. */
  private int usualStepS() {
    double[] steps = new double[raw.rows()];
    int n = 0;
    for (int i = 1; i < raw.rows(); i++) {
      long d = raw.epochS(i) - raw.epochS(i - 1);
      if (d > 0) {
        steps[n++] = d;
      }
    }
    return n == 0 ? 60 : (int) Math.round(Robust.median(Arrays.copyOf(steps, n)));
  }

  /** Whether rows run on evenly but for one hour back at this one. */
  private boolean setBack(int row, int stepS) {
    int around = (int) Math.min(50, HOUR_S / stepS - 1);
    if (around < 3 || row <= around || row + around >= raw.rows()) {
      return false;
    }
    long back = raw.epochS(row - 1) + stepS - raw.epochS(row);
    boolean even = Math.abs(back - HOUR_S) <= stepS;
    for (int i = 1; i < around && even; i++) {
      even =
          evenStep(raw.epochS(row + i) - raw.epochS(row + i - 1), stepS)
              && evenStep(raw.epochS(row - i) - raw.epochS(row - i - 1), stepS);
    }
    return even;
  }

  private static boolean evenStep(long step, int stepS) {
    return step > 0 && step <= 3L * stepS;
  }

  /** Times of all rows, with those of a clock that was lost put in line. */
  private long[] times(int stepS) {
    long[] at = new long[raw.rows()];
    long last = Long.MIN_VALUE;
    int resets = 0;
    long setBackS = 0;
    boolean lost = false;
    for (int i = 0; i < at.length; i++) {
      if (setBack(i, stepS)) {
        setBackS += HOUR_S;
        notes.add(
            "the clock was set back by an hour at "
                + Instant.ofEpochSecond(raw.epochS(i))
                + " in line "
                + raw.line(i)
                + ", as at the end of summer time; the rows from there on were moved on by an hour");
      }
      long t = raw.epochS(i) + (raw.epochS(i) < NO_CLOCK_S ? 0 : setBackS);
      boolean before = lost;
      lost = last != Long.MIN_VALUE && (t < NO_CLOCK_S || t < raw.epochS(0) - DAY_S);
      if (lost) {
        resets += before ? 0 : 1;
        t = last + stepS;
      }
      if (t < NO_CLOCK_S) {
        throw new LogRefused(
            raw.line(i),
            "time",
            Instant.ofEpochSecond(t).toString(),
            "a clock that was set",
            "The log begins before the logger had the time: delete these rows, or set the clock.");
      }
      at[i] = t;
      last = t;
    }
    if (resets > 0) {
      notes.add(
          resets
              + " times the logger lost its clock; the rows until it was right again were put "
              + stepS
              + " s apart behind the last good one");
    }
    return at;
  }

  /** Rows in order, each moment once; the first of several stays. */
  private int[] once(Integer[] order, long[] at) {
    int[] kept = new int[order.length];
    int n = 0;
    int same = 0;
    int differ = 0;
    int first = 0;
    int other = 0;
    for (Integer i : order) {
      if (n > 0 && at[kept[n - 1]] == at[i]) {
        same++;
        if (farApart(kept[n - 1], i)) {
          first = differ == 0 ? kept[n - 1] : first;
          other = differ == 0 ? i : other;
          differ++;
        }
        continue;
      }
      kept[n++] = i;
    }
    if (differ > 10 && differ > 0.05 * n) {
      throw new LogRefused(
          0,
          "",
          differ
              + " moments with two rows that differ by more than 2 K, first in lines "
              + Math.min(raw.line(first), raw.line(other))
              + " and "
              + Math.max(raw.line(first), raw.line(other)),
          "one hive in one log",
          "Two hives seem to be mixed: write each into a file of its own.");
    }
    if (same > 0) {
      notes.add(same + " rows of moments that were there already were dropped");
    }
    return Arrays.copyOf(kept, n);
  }

  private boolean farApart(int a, int b) {
    for (LogColumn c : LogColumn.values()) {
      if (c.inside() && Math.abs(raw.value(c, a) - raw.value(c, b)) > 2) {
        return true;
      }
    }
    return false;
  }

  private void dropErrors(LogColumn c, double[] v) {
    int dropped = 0;
    for (int i = 0; i < v.length; i++) {
      for (double code : ERROR_CODES) {
        // a pan may be at 85 °C only on its way there: a lonely reading is a code
        if (v[i] == code && (i == 0 || !(Math.abs(v[i - 1] - code) < 5))) {
          v[i] = Double.NaN;
          dropped++;
        }
      }
    }
    if (dropped > 0) {
      notes.add(c.key() + ": " + dropped + " error codes of the probe (85 or -127) dropped");
    }
  }

  private void dropImpossible(LogColumn c, double[] v) {
    double low =
        switch (c.sort()) {
          case TEMPERATURE -> -60;
          case VOLTAGE -> 5;
          case CURRENT -> -500;
          default -> 0;
        };
    double high =
        switch (c.sort()) {
          case TEMPERATURE -> c == LogColumn.PAN ? 120 : 70;
          case VOLTAGE -> 35;
          case CURRENT -> 500;
          case PERCENT -> 100.5;
          case STATE -> 1;
          case HOURS -> 400;
          case IRRADIANCE -> 1600;
          case SPEED -> 70;
        };
    int dropped = 0;
    for (int i = 0; i < v.length; i++) {
      if (v[i] < low || v[i] > high) {
        v[i] = Double.NaN;
        dropped++;
      }
    }
    if (dropped > 0) {
      notes.add(
          String.format(
              Locale.ROOT,
              "%s: %d readings outside %.0f to %.0f dropped",
              c.key(),
              dropped,
              low,
              high));
    }
  }

  private void dropConstant(FieldLog log) {
    for (LogColumn c : LogColumn.values()) {
      double[] v = log.column(c);
      boolean relay = c.sort() == LogColumn.Sort.STATE || c == LogColumn.HEATER_HOURS;
      double[] there = Robust.there(v);
      if (relay || c == LogColumn.SUN || there.length < 10) {
        continue;
      }
      double low = Arrays.stream(there).min().orElse(0);
      double high = Arrays.stream(there).max().orElse(0);
      if (high == low) {
        Arrays.fill(v, Double.NaN);
        notes.add(String.format(Locale.ROOT, "%s reads %.2f throughout%s", c.key(), low, STUCK));
      }
    }
  }

  private void checkUse(FieldLog log) {
    boolean inside = false;
    for (LogColumn c : LogColumn.values()) {
      inside |= c.inside() && log.has(c);
    }
    if (!inside) {
      String stuckAt =
          notes.stream()
              .filter(n -> n.endsWith(STUCK))
              .map(n -> n.substring(0, n.length() - STUCK.length()))
              .collect(Collectors.joining("; "));
      boolean stuck = !stuckAt.isEmpty();
      throw new LogRefused(
          0,
          "",
          stuck
              ? "no temperature inside the hive that ever changes: " + stuckAt
              : "no temperature inside the hive",
          "brood_a, brood_b, pan or top",
          stuck ? "A probe that is stuck tells nothing." : "Say in [[log.column]] what is what.");
    }
    double days = (log.toS() - log.fromS()) / (double) DAY_S;
    boolean tooShort = log.byHand() ? log.rows() < 3 : days < 1;
    if (tooShort) {
      throw new LogRefused(
          0,
          "",
          String.format(
              Locale.ROOT, "%d rows over %.1f days (%.2f hours)", log.rows(), days, 24 * days),
          "a day at least; a daily log three rows",
          "A week tells more, three weeks with cold and sunny days nearly all.");
    }
  }
}

package org.broodbench.sky;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;

/**
 * New seasons out of a record by moving blocks: runs of whole days are drawn from the same time of
 * the year of any year of the record and set one after another, so that everything within a run
 * (hours, variables, the weather's memory) stays as it was. Moving-block bootstrap of Kuensch 1989,
 * with the nearest neighbours of Rajagopalan and Lall 1999 at the seams: of the n runs of the
 * season one is drawn from the root of n whose past ends nearest to the temperature at the seam.
 * (To take the best fitting of a few random runs instead favours the temperatures that are
 * frequent: it made a dry upland record 0.3 K too warm.)
 */
public final class BlockResampler {
  private static final long DAY_S = 86400;

  private final WeatherSeries record;
  private final int perDay;
  private final int firstRow;
  private final long firstEpochDay;
  private final int days;
  private final int[] dayOfYear;

  /**
   * For a record without gaps in what is needed.
   *
   * @param record steps that divide the day; at least 40 days
   */
  public BlockResampler(WeatherSeries record) {
    this.record = record;
    if (DAY_S % record.stepS() != 0) {
      throw new IllegalArgumentException("the step must divide the day");
    }
    perDay = (int) (DAY_S / record.stepS());
    long late = Math.floorMod(record.startEpochS(), DAY_S);
    // a series that begins up to half a record before midnight begins with that day
    boolean early = DAY_S - late <= record.stepS() / 2;
    firstRow =
        late == 0 || early ? 0 : (int) ((DAY_S - late + record.stepS() / 2) / record.stepS());
    long firstStart = record.startEpochS() + (long) firstRow * record.stepS();
    firstEpochDay = Math.floorDiv(firstStart + record.stepS() / 2, DAY_S);
    days = (record.n() - firstRow) / perDay;
    if (days < 40) {
      throw new IllegalArgumentException("at least 40 days are needed, not " + days);
    }
    dayOfYear = new int[days];
    for (int d = 0; d < days; d++) {
      dayOfYear[d] = LocalDate.ofEpochDay(firstEpochDay + d).getDayOfYear();
    }
  }

  /**
   * What to draw.
   *
   * @param seed equal seeds give equal weather
   * @param startEpochDay first date of the new season
   * @param days its length
   * @param blockDays length of a run, 1 to 30
   * @param withinDays how far a run may be drawn from its date in the year
   */
  public record Draw(long seed, long startEpochDay, int days, int blockDays, int withinDays) {
    /**
     * A wider search mixes warm and bright with cool and dim parts of a month: within 15 days it
     * doubled the correlation of warmth and sun of a ten-year record. Runs of five days from within
     * 10 days of the date; own choice.
     */
    public static Draw of(long seed, long startEpochDay, int days) {
      return new Draw(seed, startEpochDay, days, 5, 10);
    }

    /** Refuses values out of range. */
    public Draw {
      if (!(days >= 1 && blockDays >= 1 && blockDays <= 30 && withinDays >= 0)) {
        throw new IllegalArgumentException("a draw needs days, and runs of 1 to 30 days");
      }
    }
  }

  /** A new season. */
  public WeatherSeries season(Draw draw) {
    Draws random = new Draws(draw.seed(), 11);
    int n = draw.days() * perDay;
    int[] from = new int[n];
    int done = 0;
    while (done < draw.days()) {
      int block = Math.min(draw.blockDays(), draw.days() - done);
      int start = choose(draw, random, done, block, done == 0 ? -1 : from[done * perDay - 1]);
      for (int i = 0; i < block * perDay; i++) {
        from[done * perDay + i] = firstRow + start * perDay + i;
      }
      done += block;
    }
    long shift = record.startEpochS() + (long) firstRow * record.stepS() - firstEpochDay * DAY_S;
    WeatherSeries.Builder b =
        new WeatherSeries.Builder(draw.startEpochDay() * DAY_S + shift, record.stepS(), n);
    b.about(record);
    byte[] filled = new byte[n];
    for (Variable v : Variable.values()) {
      if (!record.has(v)) {
        continue;
      }
      double[] column = new double[n];
      for (int i = 0; i < n; i++) {
        column[i] = record.value(v, from[i]);
        if (record.quality(v, from[i]) == Quality.FILLED) {
          filled[i] |= (byte) (1 << v.ordinal());
        }
      }
      b.column(v, column, record.stand(v));
    }
    return b.filledBits(filled)
        .typicalYear(false)
        .formatId("resampled")
        .source(
            String.format(
                Locale.ROOT,
                "drawn in runs of %d days, seed %d, from: %s",
                draw.blockDays(),
                draw.seed(),
                record.source()))
        .warnings(List.of("runs of days of a record were put together anew"))
        .build();
  }

  /** First day of the run, counted from the first day of the record. */
  private int choose(Draw draw, Draws random, int done, int block, int rowBefore) {
    int dayOfYear = LocalDate.ofEpochDay(draw.startEpochDay() + done).getDayOfYear();
    int[] day = new int[days];
    double[] gap = new double[days];
    int n = 0;
    for (int d = 0; d + block <= days; d++) {
      int apart = Math.abs(this.dayOfYear[d] - dayOfYear);
      if (Math.min(apart, 365 - apart) <= draw.withinDays()) {
        day[n] = d;
        gap[n++] = rowBefore < 0 ? 0 : seamK(d, rowBefore);
      }
    }
    if (n == 0) {
      throw new IllegalArgumentException(
          "the record has no days within "
              + draw.withinDays()
              + " days of day "
              + dayOfYear
              + " of the year");
    }
    int nearest = rowBefore < 0 ? n : (int) StrictMath.ceil(StrictMath.sqrt(n));
    int rank = random.below(nearest);
    for (int k = 0; k < rank; k++) {
      gap[smallest(gap, n)] = Double.POSITIVE_INFINITY;
    }
    return day[smallest(gap, n)];
  }

  /** How far the hour before a day of the record is from an hour. */
  private double seamK(int d, int rowBefore) {
    int past = Math.max(0, firstRow + d * perDay - 1);
    double k = Math.abs(record.value(Variable.AIR, past) - record.value(Variable.AIR, rowBefore));
    // a run after a gap is the last choice
    return Double.isNaN(k) ? 1e9 : k;
  }

  private static int smallest(double[] x, int n) {
    int best = 0;
    for (int i = 1; i < n; i++) {
      best = x[i] < x[best] ? i : best;
    }
    return best;
  }
}

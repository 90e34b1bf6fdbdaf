package org.broodbench.sky;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Bridges gaps of a record with days drawn from the same season of the record itself ({@link
 * BlockResampler}), every variable of a missing record from the same drawn record, so that they
 * still belong together. Bridged values count as filled.
 */
public final class GapBridge {
  private static final int TRIES = 20;

  private GapBridge() {}

  /**
   * A series without gaps in the variables it has.
   *
   * @param w the record, at least 40 days long
   * @param seed equal seeds give equal bridges
   * @throws IllegalArgumentException where the record is too short to draw from, or has no whole
   *     days of the season
   */
  public static WeatherSeries over(WeatherSeries w, long seed) {
    List<Variable> gappy = new ArrayList<>();
    for (Variable v : Variable.values()) {
      if (w.has(v) && w.missing(v) > 0) {
        gappy.add(v);
      }
    }
    if (gappy.isEmpty()) {
      return w;
    }
    BlockResampler resampler = new BlockResampler(w);
    WeatherSeries.Builder b = w.toBuilder();
    double[][] columns = new double[Variable.values().length][];
    byte[] filled = new byte[w.n()];
    for (Variable v : Variable.values()) {
      if (!w.has(v)) {
        continue;
      }
      columns[v.ordinal()] = new double[w.n()];
      for (int i = 0; i < w.n(); i++) {
        columns[v.ordinal()][i] = w.value(v, i);
        if (w.quality(v, i) == Quality.FILLED) {
          filled[i] |= (byte) (1 << v.ordinal());
        }
      }
      b.column(v, columns[v.ordinal()], w.stand(v));
    }
    int bridged = 0;
    int left = 1;
    for (int attempt = 0; attempt < TRIES && left > 0; attempt++) {
      long firstDay = Math.floorDiv(w.startEpochS(), 86_400L);
      int days = (int) (Math.floorDiv(w.endEpochS() - 1, 86_400L) - firstDay) + 1;
      WeatherSeries drawn =
          resampler.season(BlockResampler.Draw.of(seed + attempt, firstDay, days));
      left = 0;
      for (int i = 0; i < w.n(); i++) {
        long at = w.startEpochS() + (long) i * w.stepS();
        int from = (int) Math.floorDiv(at - drawn.startEpochS(), (long) w.stepS());
        boolean touched = false;
        for (Variable v : gappy) {
          double[] column = columns[v.ordinal()];
          if (!Double.isNaN(column[i])) {
            continue;
          }
          double value = from >= 0 && from < drawn.n() ? drawn.value(v, from) : Double.NaN;
          if (Double.isNaN(value)) {
            left++;
          } else {
            column[i] = value;
            filled[i] |= (byte) (1 << v.ordinal());
            touched = true;
          }
        }
        if (touched) {
          bridged++;
        }
      }
    }
    if (left > 0) {
      throw new IllegalArgumentException(
          "the record has no complete days of the season to bridge its gaps with");
    }
    List<String> warnings = new ArrayList<>(w.warnings());
    warnings.add(
        String.format(
            Locale.ROOT,
            "%.1f h in long gaps were bridged with days drawn from the same season of the record, seed %d",
            bridged * w.stepS() / 3600.0,
            seed));
    return b.filledBits(filled).warnings(warnings).build();
  }
}

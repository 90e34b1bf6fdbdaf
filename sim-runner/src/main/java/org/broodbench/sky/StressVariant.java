package org.broodbench.sky;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** A harder version of a record: colder, cloudier, with its worst spell drawn out. */
public final class StressVariant {
  private static final int SPELL_DAYS = 3;

  private StressVariant() {}

  /**
   * Changes a series. Temperatures are lowered with the relative humidity kept; the light is
   * dimmed, and its own split into direct and diffuse dropped, since cloud takes the direct part
   * first; the hardest three days are repeated as often as they fit into the days of longer spell,
   * and all after them comes so much later.
   *
   * @param w the record; it is not changed
   * @param stress how much harder
   * @param rig which spell is the hardest
   */
  public static WeatherSeries of(WeatherSeries w, GeneratorSettings.Stress stress, RigClass rig) {
    int[] order = order(w, stress.longerSpellDays(), rig);
    WeatherSeries.Builder b =
        new WeatherSeries.Builder(w.startEpochS(), w.stepS(), order.length).about(w);
    byte[] filled = new byte[order.length];
    for (Variable v : Variable.values()) {
      boolean split = v == Variable.DNI || v == Variable.DHI;
      if (!w.has(v) || split && stress.cloudierBy() > 0) {
        continue;
      }
      double[] column = new double[order.length];
      for (int i = 0; i < column.length; i++) {
        double value = w.value(v, order[i]);
        column[i] =
            v == Variable.AIR
                ? value - stress.colderByK()
                : v.isRadiation() ? value * (1 - stress.cloudierBy()) : value;
        if (w.quality(v, order[i]) == Quality.FILLED) {
          filled[i] |= (byte) (1 << v.ordinal());
        }
      }
      b.column(v, column, w.stand(v));
    }
    List<String> warnings = new ArrayList<>(w.warnings());
    warnings.add(
        String.format(
            Locale.ROOT,
            "made harder: colder by %.1f K, %.0f percent of the light taken away, worst spell %d days"
                + " longer",
            stress.colderByK(),
            100 * stress.cloudierBy(),
            stress.longerSpellDays()));
    return b.filledBits(filled).warnings(warnings).build();
  }

  /** Which record of the old series each record of the new one is. */
  private static int[] order(WeatherSeries w, int longerDays, RigClass rig) {
    List<WorstWindows.Window> worst =
        longerDays == 0 ? List.of() : WorstWindows.find(w, SPELL_DAYS, 1, rig, 0);
    int perDay = 86400 / w.stepS();
    int extra = worst.isEmpty() ? 0 : longerDays * perDay;
    int[] order = new int[w.n() + extra];
    int first =
        worst.isEmpty()
            ? w.n()
            : (int) ((worst.get(0).stats().fromEpochS() - w.startEpochS()) / w.stepS());
    int spell = SPELL_DAYS * perDay;
    for (int i = 0; i < order.length; i++) {
      int into = i - first;
      order[i] = into < 0 ? i : into < spell + extra ? first + into % spell : i - extra;
    }
    return order;
  }
}

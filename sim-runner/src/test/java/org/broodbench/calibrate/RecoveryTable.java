package org.broodbench.calibrate;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

/** How well the knobs of made hives were found again. */
final class RecoveryTable {
  /** By knob: cases, cases inside the interval, sum of pulls, sum of their squares, told cases. */
  final double[][] by = new double[Knob.COUNT][5];

  /** Best value minus truth in standard deviations, by knob. */
  private final Map<Knob, List<Double>> pulls = new EnumMap<>(Knob.class);

  /** Cases that were called misfits though they were right. */
  int refused;

  /** Mean error of the prediction, K. */
  double heldOutK;

  private RecoveryTable() {}

  static RecoveryTable of(long firstSeed, int hives, int days)
      throws InterruptedException, ExecutionException {
    RecoveryTable table = new RecoveryTable();
    ExecutorService pool = Executors.newFixedThreadPool(Runtime.getRuntime().availableProcessors());
    try {
      List<Future<Runnable>> cases = new ArrayList<>();
      for (int h = 0; h < hives; h++) {
        long seed = firstSeed + h;
        cases.add(
            pool.submit(
                () -> {
                  MadeLog made = new MadeLog(seed, days);
                  Calibration c = made.fitAlone();
                  return () -> table.book(made, c, hives);
                }));
      }
      for (Future<Runnable> f : cases) {
        f.get().run();
      }
    } finally {
      pool.shutdownNow();
    }
    return table;
  }

  private void book(MadeLog made, Calibration c, int hives) {
    refused += c.fits() ? 0 : 1;
    heldOutK += c.heldOut().rmseK() / hives;
    for (Calibration.Parameter p : c.parameters()) {
      double[] row = by[p.knob().ordinal()];
      double z = made.truth[p.knob().ordinal()];
      double truth = p.knob().value(made.believed, z);
      double pull = (p.z() - z) / p.sigma();
      pulls.computeIfAbsent(p.knob(), k -> new ArrayList<>()).add(pull);
      row[0]++;
      row[1] += truth >= p.low() && truth <= p.high() ? 1 : 0;
      row[2] += pull;
      row[3] += pull * pull;
      row[4] += p.told() ? 1 : 0;
    }
  }

  /** Middle pull of a knob: a fit that went astray does not move it. */
  double bias(Knob k) {
    return Robust.median(pulls.get(k).stream().mapToDouble(x -> x).toArray());
  }

  /** Share of the cases of a knob whose interval holds the truth. */
  double covered(Knob k) {
    return by[k.ordinal()][1] / by[k.ordinal()][0];
  }

  String text() {
    StringBuilder out = new StringBuilder();
    out.append(
        String.format(
            Locale.ROOT,
            "%-20s %5s %8s %6s %6s %5s%n",
            "",
            "cases",
            "covered",
            "bias",
            "rms",
            "told"));
    for (Knob k : Knob.values()) {
      double[] r = by[k.ordinal()];
      if (r[0] > 0) {
        out.append(
            String.format(
                Locale.ROOT,
                "%-20s %5.0f %7.1f%% %6.2f %6.2f %4.0f%%%n",
                k.key(),
                r[0],
                100 * r[1] / r[0],
                r[2] / r[0],
                Math.sqrt(r[3] / r[0]),
                100 * r[4] / r[0]));
      }
    }
    return out
        + String.format(
            Locale.ROOT, "called misfits: %d; predicted to %.2f K%n", refused, heldOutK);
  }
}

package org.broodbench.calibrate;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

/**
 * How well the knobs of made hives were found again. Where the property {@code broodbench.recovery}
 * names a file, each hive that is done is written there at once, one line a hive, and hives that
 * stand there already are not worked out again.
 */
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
      throws InterruptedException, ExecutionException, IOException {
    String file = System.getProperty("broodbench.recovery");
    Map<String, String> done = file == null ? Map.of() : done(Path.of(file));
    ExecutorService pool = Executors.newFixedThreadPool(Runtime.getRuntime().availableProcessors());
    List<Future<String>> cases = new ArrayList<>();
    try {
      for (int h = 0; h < hives; h++) {
        long seed = firstSeed + h;
        String name = seed + " " + days;
        String before = done.get(name);
        cases.add(pool.submit(() -> before == null ? kept(file, name + line(seed, days)) : before));
      }
      RecoveryTable table = new RecoveryTable();
      for (Future<String> f : cases) {
        table.book(f.get(), hives);
      }
      return table;
    } finally {
      pool.shutdownNow();
    }
  }

  /** Lines of whole hives by seed and days. */
  private static Map<String, String> done(Path file) throws IOException {
    Map<String, String> out = new TreeMap<>();
    if (Files.exists(file)) {
      for (String line : Files.readAllLines(file)) {
        if (line.endsWith(" .")) {
          String[] f = line.split(" ");
          out.put(f[0] + " " + f[1], line);
        }
      }
    }
    return out;
  }

  private static synchronized String kept(String file, String line) throws IOException {
    if (file != null) {
      Files.writeString(
          Path.of(file), line + "\n", StandardOpenOption.CREATE, StandardOpenOption.APPEND);
    }
    return line;
  }

  /** Whether it fits, the error of the prediction; by knob: truth, low, high, z, true z, sigma. */
  private static String line(long seed, int days) {
    MadeLog made = new MadeLog(seed, days);
    Calibration c = made.fitAlone();
    StringBuilder out = new StringBuilder();
    out.append(' ').append(c.fits() ? 1 : 0).append(' ').append(c.heldOut().rmseK());
    for (Calibration.Parameter p : c.parameters()) {
      double z = made.truth[p.knob().ordinal()];
      out.append(' ').append(p.knob()).append(' ').append(p.knob().value(made.believed, z));
      out.append(' ').append(p.low()).append(' ').append(p.high());
      out.append(' ').append(p.z()).append(' ').append(z).append(' ').append(p.sigma());
      out.append(' ').append(p.told() ? 1 : 0);
    }
    return out.append(" .").toString();
  }

  private void book(String line, int hives) {
    String[] f = line.split(" ");
    refused += f[2].equals("1") ? 0 : 1;
    heldOutK += Double.parseDouble(f[3]) / hives;
    for (int i = 4; i + 8 <= f.length - 1; i += 8) {
      Knob k = Knob.valueOf(f[i]);
      double[] v = new double[7];
      for (int j = 0; j < v.length; j++) {
        v[j] = Double.parseDouble(f[i + 1 + j]);
      }
      double[] row = by[k.ordinal()];
      double pull = (v[3] - v[4]) / v[5];
      pulls.computeIfAbsent(k, x -> new ArrayList<>()).add(pull);
      row[0]++;
      row[1] += v[0] >= v[1] && v[0] <= v[2] ? 1 : 0;
      row[2] += pull;
      row[3] += pull * pull;
      row[4] += v[6];
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

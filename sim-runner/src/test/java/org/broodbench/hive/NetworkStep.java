package org.broodbench.hive;

import java.io.IOException;
import java.lang.reflect.Field;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.broodbench.matter.SmoothTable;
import org.broodbench.rig.TestRigs;

/**
 * The step of the heat network of the small test rig, driven by a fixed course of weather, heater
 * and one table: what the C program beside the benchmarks repeats operation by operation.
 */
public final class NetworkStep {
  private final HiveLayout layout;
  private final Network net;
  private final SmoothTable table =
      new SmoothTable(-40, 70, 8, c -> 1 / (1 + StrictMath.exp((14 - c) * 0.5)));
  private final double[] ahead;
  private final double[] firstC;
  private final int link;
  private final int[] outer;

  /** At its first state. */
  public NetworkStep() {
    var rig = TestRigs.small(0, 1);
    layout = new HiveLayout(rig.hive(), rig.colony(), rig.heater(), 1200);
    net = layout.network();
    ahead = new double[net.size()];
    firstC = new double[net.size()];
    for (int i = 0; i < firstC.length; i++) {
      firstC[i] = 10 + i;
      net.set(i, firstC[i]);
    }
    link = net.link(layout.nest, layout.air[0]);
    outer = layout.outer.stream().mapToInt(f -> f.layerNode).toArray();
  }

  /** Takes steps from number 0 on. */
  public void run(int steps) {
    int air = layout.air[0];
    for (int i = 0; i < steps; i++) {
      net.ahead(10, ahead);
      net.clear(10);
      double outC = -5 + (i % 1000) * 0.01;
      net.conduct(link, 0.1 + 0.2 * table.at(ahead[air]));
      for (int node : outer) {
        net.bring(node, 1.5, 1.5 * outC);
      }
      double aboveK = ahead[air] - outC;
      net.reach(air, 0.05 + 0.01 * Math.sqrt(aboveK > 0 ? aboveK : 0), outC);
      net.supply(layout.nest, 3);
      net.supply(layout.plate, i / 120 % 2 == 0 ? 25 : 0);
      net.solve();
      net.accept(10);
    }
  }

  /** The present temperatures. */
  public double[] state() {
    double[] y = new double[net.size()];
    for (int i = 0; i < y.length; i++) {
      y[i] = net.start(i);
    }
    return y;
  }

  /** Writes everything that the C program needs. */
  public void write(Path file) throws IOException {
    StringBuilder out = new StringBuilder();
    for (String name : List.of("HALF_GAMMA", "FROM_GAMMA", "FROM_START", "WEIGHT_OUTER")) {
      line(out, (double) value(Network.class, name, null));
    }
    SparseSystem s = (SparseSystem) value(Network.class, "system", net);
    for (int v : new int[] {(int) of(s, "steady"), layout.air[0], layout.nest, layout.plate}) {
      out.append(v).append('\n');
    }
    lines(out, (double[]) value(Network.class, "capacity", net));
    lines(out, firstC);
    lines(out, (double[]) value(Network.class, "fixed", net));
    for (String name :
        List.of(
            "order",
            "neighbourStart",
            "pivotOf",
            "neighbourNode",
            "lowerAt",
            "upperAt",
            "updateStart",
            "updateTarget")) {
      lines(out, (int[]) of(s, name));
    }
    int[] links = (int[]) value(Network.class, "links", net);
    lines(out, java.util.Arrays.copyOfRange(links, link, link + 4));
    lines(out, outer);
    line(out, (double) value(SmoothTable.class, "lowC", table));
    line(out, (double) value(SmoothTable.class, "perK", table));
    lines(out, (double[]) value(SmoothTable.class, "piece", table));
    Files.writeString(file, out);
  }

  private static Object of(SparseSystem s, String name) {
    return value(SparseSystem.class, name, s);
  }

  private static Object value(Class<?> type, String name, Object owner) {
    try {
      Field f = type.getDeclaredField(name);
      f.setAccessible(true);
      return f.get(owner);
    } catch (ReflectiveOperationException e) {
      throw new IllegalStateException(name, e);
    }
  }

  private static void line(StringBuilder out, double v) {
    out.append(Double.toHexString(v)).append('\n');
  }

  private static void lines(StringBuilder out, double[] values) {
    out.append(values.length).append('\n');
    for (double v : values) {
      line(out, v);
    }
  }

  private static void lines(StringBuilder out, int[] values) {
    out.append(values.length).append('\n');
    for (int v : values) {
      out.append(v).append('\n');
    }
  }
}

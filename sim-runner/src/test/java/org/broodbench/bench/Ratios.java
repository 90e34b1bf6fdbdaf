package org.broodbench.bench;

import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.function.IntConsumer;
import org.broodbench.hive.CStep;
import org.broodbench.hive.HiveEquations;
import org.broodbench.hive.HiveModel;
import org.broodbench.hive.NetworkStep;
import org.broodbench.loop.Pace;
import org.broodbench.loop.ReferenceController;
import org.broodbench.loop.Simulation;
import org.broodbench.rig.RandomRigs;
import org.broodbench.rig.Scenario;
import org.broodbench.rig.TestRigs;
import org.broodbench.rig.Window;
import org.broodbench.sky.Forcing;

/**
 * Prints one table of speeds and ratios, all of them measured in this run, in CPU time of the
 * thread (best of the repeats) except where it says otherwise. Run from the folder of the module
 * with the test class path; see DEVELOPERS.md.
 */
public final class Ratios {
  private static final long FEBRUARY = 1_706_745_600L;

  private Ratios() {}

  /** Measures everything; no arguments. */
  public static void main(String[] args) throws Exception {
    Scenario week = TestRigs.small(FEBRUARY, 7);
    Forcing forcing = RandomRigs.forcing(week, 3, 4);
    line("what", "value", "goal");

    double weekS = best(8, i -> simulate(week, forcing));
    line("run with the reference core, tick 1 s, ms a week", weekS * 1e3, "");
    line("simulated years a second a core", 7 / 365.25 / weekS, "1");
    Scenario month = week.withWindow(new Window(FEBRUARY, 28));
    Forcing monthForcing = RandomRigs.forcing(month, 3, 4);
    double monthS = best(4, i -> simulate(month, monthForcing));
    line("four weeks over one week", monthS / weekS, "4");

    double searchS =
        best(
            8,
            i ->
                new Simulation(
                        week,
                        forcing,
                        new ReferenceController(week.controller().settings()),
                        Pace.search(week))
                    .run());
    line("the same at the pace of a search, ms a week", searchS * 1e3, "");
    line("simulated years a second a core", 7 / 365.25 / searchS, "1");

    int[] general = new int[1];
    double[] generalC = new double[1];
    double generalS =
        best(
            2,
            i -> {
              GeneralIntegrator g = new GeneralIntegrator(week, forcing, 40, 1e-6);
              generalC[0] = g.run(7)[g.nest];
              general[0] = g.relay.switches;
            });
    line("thermostat loop, Dormand-Prince 5(4) with events, ms a week", generalS * 1e3, "");
    for (int stepS : new int[] {10, 20, 60}) {
      int[] own = new int[1];
      double[] ownC = new double[1];
      double ownS =
          best(
              8,
              i -> {
                OwnStep o = new OwnStep(week, forcing, 40, stepS);
                ownC[0] = o.run(7);
                own[0] = o.relay.switches;
              });
      line("the same by own steps of " + stepS + " s, ms a week", ownS * 1e3, "");
      line("  switches own / general", own[0] + " / " + general[0], "equal");
      line("  end of the nest, own less general, K", ownC[0] - generalC[0], "");
      line("  general over own", generalS / ownS, "8");
    }

    int steps = 1_000_000;
    NetworkStep network = new NetworkStep();
    double javaNs = best(8, i -> network.run(steps)) * 1e9 / steps;
    line("network step in Java, ns", javaNs, "");
    Path folder = Files.createTempDirectory("network");
    var c = CStep.run(folder, steps, 8);
    if (c.isPresent()) {
      line("network step in C, ns", c.get().nsPerStep(), "");
      line("Java over C", javaNs / c.get().nsPerStep(), "at most 1.25");
    }

    double oneBox = 0;
    for (int boxes = 1; boxes <= 6; boxes++) {
      Scenario rig = week.withHive(TestRigs.insulated(0.05, boxes));
      HiveEquations e = new HiveEquations(rig, forcing);
      HiveModel m = e.model();
      int n = 60_480;
      double ns =
          best(
                  6,
                  r -> {
                    for (int i = 0; i < n; i++) {
                      m.solve(10, i / 500 % 2 * 40, false, 0.6, e.weather(10.0 * i + 5));
                      m.accept();
                    }
                  })
              * 1e9
              / n;
      oneBox = boxes == 1 ? ns : oneBox;
      line(
          String.format(
              Locale.ROOT,
              "hive of %d boxes, %d heat nodes, ns a step",
              boxes,
              m.view().heatNodes()),
          ns,
          "");
    }

    long[] oneThread = times(1, week, forcing);
    long[] twoThreads = times(2, week, forcing);
    line(
        "two threads against one, throughput (idle machine only)",
        2.0 * oneThread[0] / twoThreads[0],
        "1.8");
    line("the same by processor time of the runs", 2.0 * oneThread[1] / twoThreads[1], "1.8");
  }

  private static void simulate(Scenario s, Forcing f) {
    new Simulation(s, f, new ReferenceController(s.controller().settings()), false).run();
  }

  /** Shortest CPU time of a repeat, s. */
  private static double best(int repeats, IntConsumer work) {
    var threads = ManagementFactory.getThreadMXBean();
    long best = Long.MAX_VALUE;
    for (int r = 0; r < repeats; r++) {
      long from = threads.getCurrentThreadCpuTime();
      work.accept(r);
      best = Math.min(best, threads.getCurrentThreadCpuTime() - from);
    }
    return best * 1e-9;
  }

  /**
   * Shortest wall time of five runs on each of some threads, and processor time of a thread, ns.
   */
  private static long[] times(int threads, Scenario s, Forcing f) throws InterruptedException {
    var beans = ManagementFactory.getThreadMXBean();
    long[] best = {Long.MAX_VALUE, Long.MAX_VALUE};
    for (int r = 0; r < 3; r++) {
      Thread[] all = new Thread[threads];
      long[] busy = new long[threads];
      long from = System.nanoTime();
      for (int i = 0; i < threads; i++) {
        int thread = i;
        all[i] =
            new Thread(
                () -> {
                  for (int k = 0; k < 5; k++) {
                    simulate(s, f);
                  }
                  busy[thread] = beans.getCurrentThreadCpuTime();
                });
        all[i].start();
      }
      for (Thread t : all) {
        t.join();
      }
      best[0] = Math.min(best[0], System.nanoTime() - from);
      best[1] = Math.min(best[1], java.util.Arrays.stream(busy).max().orElseThrow());
    }
    return best;
  }

  private static void line(String what, Object value, String goal) {
    String text = value instanceof Double d ? String.format(Locale.ROOT, "%.3g", d) : "" + value;
    System.out.printf(Locale.ROOT, "%-60s %12s %14s%n", what, text, goal);
  }
}

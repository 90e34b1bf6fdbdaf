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
import org.broodbench.loop.ReferenceController;
import org.broodbench.loop.Simulation;
import org.broodbench.rig.RandomRigs;
import org.broodbench.rig.Scenario;
import org.broodbench.rig.TestRigs;
import org.broodbench.rig.Window;
import org.broodbench.sky.Forcing;

/**
 * Prints one table of speeds and ratios, all of them measured in this run, in CPU time of the
 * thread (best of the repeats) except where two threads run at once. Run from the folder of the
 * module with the test class path; see DEVELOPERS.md.
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

    int[] switches = new int[2];
    double ownS =
        best(
            8,
            i -> {
              OwnStep own = new OwnStep(week, forcing, 40);
              own.run(7);
              switches[0] = own.relay.switches;
            });
    double generalS =
        best(
            2,
            i -> {
              GeneralIntegrator general = new GeneralIntegrator(week, forcing, 40, 1e-6);
              general.run(7);
              switches[1] = general.relay.switches;
            });
    line("thermostat loop, own step, ms a week", ownS * 1e3, "");
    line("the same by Dormand-Prince 5(4) with events, ms a week", generalS * 1e3, "");
    line("switches own / general", switches[0] + " / " + switches[1], "equal");
    line("general over own", generalS / ownS, "8");

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
              Locale.ROOT, "hive of %d boxes, %d heat nodes, ns a step", boxes, m.heatNodes()),
          ns,
          "");
    }

    long oneThread = wall(1, week, forcing);
    long twoThreads = wall(2, week, forcing);
    line("two threads against one, throughput", 2.0 * oneThread / twoThreads, "1.8");
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

  /** Wall time of five runs on each of some threads, ns, best of three. */
  private static long wall(int threads, Scenario s, Forcing f) throws InterruptedException {
    long best = Long.MAX_VALUE;
    for (int r = 0; r < 3; r++) {
      Thread[] all = new Thread[threads];
      long from = System.nanoTime();
      for (int i = 0; i < threads; i++) {
        all[i] =
            new Thread(
                () -> {
                  for (int k = 0; k < 5; k++) {
                    simulate(s, f);
                  }
                });
        all[i].start();
      }
      for (Thread t : all) {
        t.join();
      }
      best = Math.min(best, System.nanoTime() - from);
    }
    return best;
  }

  private static void line(String what, Object value, String goal) {
    String text = value instanceof Double d ? String.format(Locale.ROOT, "%.3g", d) : "" + value;
    System.out.printf(Locale.ROOT, "%-60s %12s %14s%n", what, text, goal);
  }
}

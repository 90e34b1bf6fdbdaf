package org.broodbench.study;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.Function;
import java.util.stream.IntStream;
import org.broodbench.loop.Judge;
import org.broodbench.loop.Pace;
import org.broodbench.loop.ReferenceController;
import org.broodbench.loop.RunResult;
import org.broodbench.loop.Simulation;
import org.broodbench.rig.Requirement;
import org.broodbench.rig.Scenario;
import org.broodbench.sky.Forcing;

/**
 * Runs a scenario many times, with the weather of other years and with its uncertain numbers drawn
 * from their ranges by a Latin hypercube (McKay, Beckman and Conover 1979, Technometrics 21).
 *
 * <p>What a value depends on is told by the first-order share of its variance from the same
 * members, by bins of each number (Plischke, Borgonovo and Smith 2013, European Journal of
 * Operational Research 226), less what bins of chance would explain.
 */
public final class SureStudy implements Pieces {
  private static final int BINS = 8;

  private final Scenario scenario;
  private final List<Forcing> seasons;
  private final int members;
  private final Function<List<String>, Scenario> rebuild;
  private final List<Unsure> ranges;
  private final double[][] drawn;

  /**
   * An ensemble.
   *
   * @param s the scenario
   * @param seasons weather of other years, all with the planes of the scenario
   * @param members how many runs; at least 40
   * @param rebuild the scenario with {@code KEY=VALUE} texts on top; called from several threads
   * @param seed equal seeds give equal ensembles
   */
  public SureStudy(
      Scenario s,
      List<Forcing> seasons,
      int members,
      Function<List<String>, Scenario> rebuild,
      long seed) {
    scenario = s;
    this.seasons = seasons;
    this.members = members;
    this.rebuild = rebuild;
    ranges = Unsure.of(s);
    drawn = hypercube(ranges.size() + 1, members, seed);
  }

  /** What one run said of one requirement. */
  private record Told(double value, boolean meets) {
    @Override
    public String toString() {
      return value + " " + meets;
    }

    static Told of(String text) {
      String[] parts = text.split(" ");
      return new Told(Double.parseDouble(parts[0]), Boolean.parseBoolean(parts[1]));
    }
  }

  /** One run: its number, from 0. */
  @Override
  public String of(String name) {
    int member = Integer.parseInt(name);
    List<String> settings = new ArrayList<>();
    for (int k = 0; k < ranges.size(); k++) {
      Unsure u = ranges.get(k);
      settings.add(u.setting(u.low() + drawn[k][member] * (u.high() - u.low())));
    }
    int season = (int) (drawn[ranges.size()][member] * seasons.size());
    Scenario v = rebuild.apply(settings);
    RunResult r =
        new Simulation(
                v,
                seasons.get(season),
                new ReferenceController(v.controller().settings()),
                Pace.search(v))
            .run();
    List<String> told = new ArrayList<>();
    for (Requirement q : scenario.requirements()) {
      Judge.Measured x = Judge.measure(q.kind(), r, scenario);
      told.add(new Told(x.value(), x.meets(q)).toString());
    }
    return String.join(";", told);
  }

  /** Carries it out. */
  public Sure run(Crew crew) {
    String[] lines = new String[members];
    boolean whole =
        crew.run(
            IntStream.range(0, members).mapToObj(String::valueOf).toList(),
            this,
            (member, line) -> lines[member] = line);
    if (!whole) {
      throw new IllegalStateException("the runs were interrupted");
    }
    List<Sure.OfRequirement> judged = new ArrayList<>();
    boolean[] all = new boolean[members];
    Arrays.fill(all, true);
    for (int q = 0; q < scenario.requirements().size(); q++) {
      Told[] told = new Told[members];
      for (int m = 0; m < members; m++) {
        told[m] = Told.of(lines[m].split(";")[q]);
      }
      judged.add(judge(scenario.requirements().get(q), told, all));
    }
    int met = 0;
    for (boolean m : all) {
      met += m ? 1 : 0;
    }
    return new Sure(members, seasons.size(), Sure.Chance.of(met, members), judged, ranges);
  }

  private Sure.OfRequirement judge(Requirement q, Told[] told, boolean[] all) {
    int n = told.length;
    double[] value = new double[n];
    int met = 0;
    for (int m = 0; m < n; m++) {
      value[m] = told[m].value();
      met += told[m].meets() ? 1 : 0;
      all[m] &= told[m].meets();
    }
    List<Sure.Weight> weights = new ArrayList<>();
    for (int k = 0; k <= ranges.size(); k++) {
      boolean weather = k == ranges.size();
      weights.add(
          new Sure.Weight(
              weather ? "weather" : ranges.get(k).key(),
              share(drawn[k], value, weather ? Math.min(seasons.size(), 2 * BINS) : BINS),
              weather ? "nothing: plan for the bad year" : ranges.get(k).settledBy()));
    }
    weights.sort(Comparator.comparingDouble(Sure.Weight::share).reversed());
    double[] sorted = Arrays.stream(value).filter(v -> !Double.isNaN(v)).sorted().toArray();
    return new Sure.OfRequirement(
        q,
        Sure.Chance.of(met, n),
        quantile(sorted, 0.1),
        quantile(sorted, 0.5),
        quantile(sorted, 0.9),
        weights);
  }

  private static double quantile(double[] sorted, double p) {
    return sorted.length == 0
        ? Double.NaN
        : sorted[(int) Math.min(sorted.length - 1, Math.floor(p * sorted.length))];
  }

  /**
   * First-order share of the variance, by bins of equal width of a number that is spread evenly;
   * adjusted as a coefficient of determination is (Ezekiel 1930), so that chance gives 0.
   */
  static double share(double[] x, double[] y, int bins) {
    double[] sum = new double[bins];
    int[] count = new int[bins];
    double total = 0;
    double squares = 0;
    int n = 0;
    for (int i = 0; i < x.length; i++) {
      if (Double.isNaN(y[i])) {
        continue;
      }
      int bin = (int) (x[i] * bins);
      sum[bin] += y[i];
      count[bin]++;
      total += y[i];
      squares += y[i] * y[i];
      n++;
    }
    if (n <= 2 * bins) {
      return 0;
    }
    double all = squares - total * total / n;
    double between = -total * total / n;
    int used = 0;
    for (int b = 0; b < bins; b++) {
      if (count[b] > 0) {
        between += sum[b] * sum[b] / count[b];
        used++;
      }
    }
    if (!(all > 1e-12 * (1 + squares))) {
      return 0;
    }
    double r2 = between / all;
    return Math.max(0, 1 - (1 - r2) * (n - 1) / (n - used));
  }

  /** Each row spreads one number evenly over the members, in an order of its own. */
  private static double[][] hypercube(int numbers, int members, long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    double[][] out = new double[numbers][members];
    for (double[] row : out) {
      for (int m = 0; m < members; m++) {
        row[m] = (m + random.nextDouble()) / members;
      }
      for (int m = members - 1; m > 0; m--) {
        int other = random.nextInt(m + 1);
        double kept = row[m];
        row[m] = row[other];
        row[other] = kept;
      }
    }
    return out;
  }
}

package org.broodbench.stress;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.BooleanSupplier;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.broodbench.controller.Alarm;
import org.broodbench.loop.Pace;
import org.broodbench.loop.ReferenceController;
import org.broodbench.loop.Simulation;
import org.broodbench.rig.EventSpec;
import org.broodbench.rig.FaultKind;
import org.broodbench.rig.Scenario;
import org.broodbench.study.Crew;
import org.broodbench.study.Journal;
import org.broodbench.study.Parallel;
import org.broodbench.study.Pieces;
import org.broodbench.study.Progress;

/**
 * A scenario under every fault in each of some weeks. Every run stands by itself, so the rows do
 * not depend on the number of threads, nor on how often the study was killed and taken up again.
 */
public final class StressStudy implements Pieces {
  /** Faults begin at nightfall of the first day, h of local solar time; own choice. */
  private static final double ONSET_H = 18;

  private static final List<StressCase> NOTHING = List.of(StressCase.NONE);

  private record Run(int week, List<StressCase> cases, HeatLoss loss) {
    String key() {
      String key = week + " " + name(cases);
      return loss.key().equals(HeatLoss.OWN) ? key : key + " " + loss.key();
    }

    /** The same week with nothing broken: what a row is told against. */
    Run without() {
      return new Run(week, NOTHING, loss);
    }
  }

  private final List<StressWeek> weeks;
  private final List<Run> runs = new ArrayList<>();
  private final Map<String, Integer> byKey = new HashMap<>();

  /**
   * @param weeks the weeks, hardest first; at least one
   * @param plan what is tried beside every single fault
   * @throws IllegalArgumentException where a pair of the plan is none of two faults of the rig
   */
  public StressStudy(List<StressWeek> weeks, StressPlan plan) {
    this.weeks = weeks;
    Scenario rig = weeks.get(0).scenario();
    List<StressCase> faults = StressCase.of(rig);
    Map<String, List<StressCase>> everywhere = new LinkedHashMap<>();
    everywhere.put(name(NOTHING), NOTHING);
    faults.forEach(c -> everywhere.put(c.key(), List.of(c)));
    Map<String, List<StressCase>> pairs = pairs(faults);
    for (String pair : plan.pairs()) {
      if (!pairs.containsKey(pair)) {
        throw new IllegalArgumentException("no two faults of the rig are called " + pair);
      }
      everywhere.put(pair, pairs.get(pair));
    }
    Map<String, List<StressCase>> hardest = new LinkedHashMap<>(everywhere);
    if (plan.everyPair()) {
      pairs.forEach(hardest::putIfAbsent);
    }
    for (int w = 0; w < weeks.size(); w++) {
      for (List<StressCase> cases : (w == 0 ? hardest : everywhere).values()) {
        for (HeatLoss loss : HeatLoss.of(rig, plan.allLosses())) {
          Run run = new Run(w, cases, loss);
          byKey.put(run.key(), runs.size());
          runs.add(run);
        }
      }
    }
  }

  private static String name(List<StressCase> cases) {
    return cases.stream().map(StressCase::key).collect(Collectors.joining(StressPlan.AND));
  }

  /** Every two faults by their name; sizes of the same fault are not paired with each other. */
  private static Map<String, List<StressCase>> pairs(List<StressCase> faults) {
    Map<String, List<StressCase>> pairs = new LinkedHashMap<>();
    for (int i = 0; i < faults.size(); i++) {
      for (int j = i + 1; j < faults.size(); j++) {
        if (faults.get(i).kind() != faults.get(j).kind()) {
          List<StressCase> two = List.of(faults.get(i), faults.get(j));
          pairs.put(name(two), two);
        }
      }
    }
    return pairs;
  }

  /** Number of rows. */
  public int planned() {
    return runs.size();
  }

  /** Carries it out on threads of this machine until it is stopped. */
  public List<StressRow> rows(
      Journal journal, int threads, BooleanSupplier stop, Progress progress) {
    return rows(journal, new Parallel(threads, stop), progress);
  }

  /**
   * Carries it out, or the rest of it.
   *
   * @param journal where finished runs are noted and found again
   * @return finished rows, by week, then in the order of the faults, then by heat loss
   */
  public List<StressRow> rows(Journal journal, Crew crew, Progress progress) {
    Shot[] shots = new Shot[runs.size()];
    for (int i = 0; i < shots.length; i++) {
      String line = journal.get(runs.get(i).key());
      shots[i] = line == null ? null : read(line);
    }
    // the weeks without a fault first: all rows are told against them
    List<Integer> open =
        IntStream.range(0, shots.length)
            .filter(i -> shots[i] == null)
            .boxed()
            .sorted(Comparator.comparing(i -> !runs.get(i).cases().equals(NOTHING)))
            .toList();
    int before = shots.length - open.size();
    int[] done = {before};
    progress.at(before, shots.length);
    crew.run(
        open.stream().map(i -> runs.get(i).key()).toList(),
        this,
        (piece, line) -> {
          int i = open.get(piece);
          shots[i] = read(line);
          journal.put(runs.get(i).key(), line);
          progress.at(++done[0], shots.length);
        });
    return rows(shots);
  }

  @Override
  public String of(String name) {
    Integer run = byKey.get(name);
    if (run == null) {
      throw new IllegalArgumentException("no run is called " + name);
    }
    return shoot(runs.get(run)).line();
  }

  private Shot read(String line) {
    return Shot.of(
        line, Failing.values().length, Alarm.COUNT, weeks.get(0).scenario().requirements().size());
  }

  private List<StressRow> rows(Shot[] shots) {
    List<StressRow> rows = new ArrayList<>();
    for (int i = 0; i < shots.length; i++) {
      Run run = runs.get(i);
      Shot without = shots[byKey.get(run.without().key())];
      if (shots[i] != null && without != null) {
        StressWeek week = weeks.get(run.week());
        rows.add(StressRow.of(week, run.cases(), run.loss(), shots[i], without));
      }
    }
    return rows;
  }

  private Shot shoot(Run run) {
    StressWeek week = weeks.get(run.week());
    Scenario s = run.loss().put(week.scenario());
    double onsetS = onsetS(s);
    List<EventSpec> events = new ArrayList<>(s.events());
    boolean boardBreaks = false;
    for (StressCase c : run.cases()) {
      if (c.kind() != null) {
        events.add(new EventSpec.Fault(onsetS, c.kind(), Double.POSITIVE_INFINITY, c.size()));
      }
      boardBreaks |= c.kind() == FaultKind.CONTROLLER_DEAD;
    }
    Watch watch = new Watch(s, onsetS, boardBreaks);
    Simulation simulation =
        new Simulation(
            s.withEvents(events),
            week.forcing(),
            new ReferenceController(s.controller().settings()),
            Pace.search(s),
            watch);
    return watch.shot(simulation.run());
  }

  /** When faults begin, s since the start of a week. */
  static double onsetS(Scenario s) {
    double startH = Math.floorMod(s.window().fromEpochS(), 86_400L) / 3600.0;
    double localH = startH + s.place().longitudeDeg() / 15;
    double untilH = (ONSET_H - localH) % 24;
    return 3600 * (untilH < 0 ? untilH + 24 : untilH);
  }
}

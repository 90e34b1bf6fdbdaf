package org.broodbench.stress;

import java.util.ArrayList;
import java.util.List;
import java.util.function.BooleanSupplier;
import java.util.stream.Collectors;
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

  private record Run(int week, List<StressCase> cases) {
    String key() {
      return week + " " + cases.stream().map(StressCase::key).collect(Collectors.joining("+"));
    }
  }

  private final List<StressWeek> weeks;
  private final List<Run> runs = new ArrayList<>();

  /**
   * @param weeks the weeks, hardest first; at least one
   * @param pairs whether every two faults at once are tried in the first week as well
   */
  public StressStudy(List<StressWeek> weeks, boolean pairs) {
    this.weeks = weeks;
    List<StressCase> cases = StressCase.of(weeks.get(0).scenario());
    // the weeks without a fault first: all rows are told against them
    for (int w = 0; w < weeks.size(); w++) {
      runs.add(new Run(w, List.of(StressCase.NONE)));
    }
    for (int w = 0; w < weeks.size(); w++) {
      for (StressCase c : cases) {
        runs.add(new Run(w, List.of(c)));
      }
    }
    for (int i = 0; pairs && i < cases.size(); i++) {
      for (int j = i + 1; j < cases.size(); j++) {
        if (cases.get(i).kind() != cases.get(j).kind()) {
          runs.add(new Run(0, List.of(cases.get(i), cases.get(j))));
        }
      }
    }
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
   * @return finished rows, by week, then in the order of the faults
   */
  public List<StressRow> rows(Journal journal, Crew crew, Progress progress) {
    Shot[] shots = new Shot[runs.size()];
    List<Integer> open = new ArrayList<>();
    for (int i = 0; i < shots.length; i++) {
      String line = journal.get(runs.get(i).key());
      shots[i] = line == null ? null : read(line);
      if (shots[i] == null) {
        open.add(i);
      }
    }
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
    return runs.stream()
        .filter(r -> r.key().equals(name))
        .findFirst()
        .map(r -> shoot(r).line())
        .orElseThrow(() -> new IllegalArgumentException("no run is called " + name));
  }

  private Shot read(String line) {
    return Shot.of(
        line, Failing.values().length, Alarm.COUNT, weeks.get(0).scenario().requirements().size());
  }

  private List<StressRow> rows(Shot[] shots) {
    List<StressRow> rows = new ArrayList<>();
    for (int w = 0; w < weeks.size(); w++) {
      for (int i = 0; i < shots.length; i++) {
        Run run = runs.get(i);
        if (run.week() == w && shots[i] != null && shots[w] != null) {
          StressWeek week = weeks.get(w);
          rows.add(StressRow.of(week.scenario(), week.label(), run.cases(), shots[i], shots[w]));
        }
      }
    }
    return rows;
  }

  private Shot shoot(Run run) {
    StressWeek week = weeks.get(run.week());
    Scenario s = week.scenario();
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

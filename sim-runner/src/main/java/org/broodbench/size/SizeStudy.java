package org.broodbench.size;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.BooleanSupplier;
import java.util.function.Function;
import org.broodbench.loop.Judge;
import org.broodbench.loop.Pace;
import org.broodbench.loop.ReferenceController;
import org.broodbench.loop.RunResult;
import org.broodbench.loop.Simulation;
import org.broodbench.rig.Requirement;
import org.broodbench.rig.Scenario;
import org.broodbench.rig.SizeSpec;
import org.broodbench.study.Crew;
import org.broodbench.study.Journal;
import org.broodbench.study.Pieces;
import org.broodbench.study.Progress;

/**
 * Finds the cheapest rig that comes through many seasons.
 *
 * <p>Candidates are tried cheapest first. One that fails for want of warmth or charge rules out
 * every other that is weaker in each part and not stronger in any; one that does rules in whatever
 * is stronger. Seasons come hardest first, and a candidate is given up as soon as it cannot reach
 * what is asked any more, so that those that fail cost little. Runs are at {@link Pace#search}, at
 * the scenario's own heat loss of the cluster.
 */
public final class SizeStudy implements Pieces {
  /** Seasons of a candidate that are simulated at once; the answer does not depend on threads. */
  private static final int BLOCK = 4;

  private final SizeSpec spec;
  private final List<SizeSeason> seasons;
  private final Function<List<String>, Scenario> rebuild;
  private final boolean pruned;
  private final Map<String, Trial> known = new LinkedHashMap<>();
  private final List<Candidate> lacking = new ArrayList<>();
  private int allowedToMiss;

  private Crew crew;
  private BooleanSupplier stop;
  private Journal journal;
  private Progress progress;
  private int most;

  /**
   * A study.
   *
   * @param spec what may be bought
   * @param seasons all with the window and the planes of the rig
   * @param rebuild the rig with settings on top; throws where they cannot be used
   * @param pruned false to try every combination, as a check
   */
  public SizeStudy(
      SizeSpec spec,
      List<SizeSeason> seasons,
      Function<List<String>, Scenario> rebuild,
      boolean pruned) {
    this.spec = spec;
    this.seasons = new ArrayList<>(seasons);
    this.seasons.sort(Comparator.comparingDouble(SizeSeason::hardnessKWh).reversed());
    this.rebuild = rebuild;
    this.pruned = pruned;
  }

  /**
   * Carries it out.
   *
   * @param weather what the seasons were made from
   * @param journal finished candidates of an earlier start, and where to note new ones
   * @param crew who runs the seasons of a candidate
   * @param stop whether the crew was stopped
   */
  public SizeReport run(
      String weather, Journal journal, Crew crew, BooleanSupplier stop, Progress progress) {
    this.journal = journal;
    this.stop = stop;
    this.progress = progress;
    this.crew = crew;
    allowedToMiss = (int) Math.floor((1 - spec.reliability()) * seasons.size() + 1e-9);
    List<Candidate> all = Candidate.all(spec);
    most = all.size();
    Candidate best = null;
    for (Candidate c : all) {
      boolean reaches = reaches(c);
      best = best == null && reaches ? c : best;
      if (stop.getAsBoolean() || best != null && pruned) {
        break;
      }
    }
    List<Trial> byFirst = best == null ? List.of() : byFirst(all);
    List<Trial> curve = best == null ? List.of() : curve(best);
    List<Trial> trials = new ArrayList<>(known.values());
    trials.sort(Comparator.comparingDouble(Trial::price).thenComparingDouble(Trial::massKg));
    Scenario s = rebuild.apply(List.of());
    return new SizeReport(
        s,
        weather,
        seasons.size(),
        s.window().days(),
        spec,
        best == null ? null : known.get(best.key()),
        curve,
        byFirst,
        trials,
        all.size(),
        !stop.getAsBoolean());
  }

  /** For each choice of the first part, the cheapest rig that does; those without one are out. */
  private List<Trial> byFirst(List<Candidate> all) {
    List<Trial> found = new ArrayList<>();
    for (int choice = 0; choice < spec.parts().get(0).choices().size(); choice++) {
      for (Candidate c : all) {
        if (c.at()[0] == choice && !stop.getAsBoolean() && reaches(c)) {
          found.add(known.get(c.key()));
          break;
        }
      }
    }
    return found;
  }

  /** For each choice of the last part but one the weakest of the last that does. */
  private List<Trial> curve(Candidate best) {
    int n = spec.parts().size();
    List<Trial> found = new ArrayList<>();
    if (n < 2) {
      return found;
    }
    for (int a = 0; a < spec.parts().get(n - 2).choices().size(); a++) {
      for (int b = 0; b < spec.parts().get(n - 1).choices().size(); b++) {
        Candidate c = best.with(n - 2, a).with(n - 1, b);
        if (!stop.getAsBoolean() && reaches(c)) {
          found.add(known.get(c.key()));
          break;
        }
      }
    }
    return found;
  }

  private boolean reaches(Candidate c) {
    Trial t = known.get(c.key());
    if (t == null) {
      if (pruned && lacking.stream().anyMatch(c::atMost)) {
        return false;
      }
      String before = journal.get(c.key());
      t = before != null ? Trial.of(c, before) : tryOut(c);
      if (t == null) {
        return false;
      }
      if (before == null) {
        journal.put(c.key(), t.line());
      }
      known.put(c.key(), t);
      progress.at(known.size(), most);
    }
    if (!t.met() && t.lack()) {
      lacking.add(c);
    }
    return t.met();
  }

  /** What one season said. */
  private record Told(double shedH, boolean meets, boolean lack, double dailyWh) {
    String line() {
      return shedH + " " + meets + " " + lack + " " + dailyWh;
    }

    static Told of(String line) {
      String[] f = line.split(" ");
      return new Told(
          Double.parseDouble(f[0]),
          Boolean.parseBoolean(f[1]),
          Boolean.parseBoolean(f[2]),
          Double.parseDouble(f[3]));
    }
  }

  /** One season of one candidate: its key, then the name of the season. */
  @Override
  public String of(String name) {
    int end = name.indexOf(']') + 1;
    for (SizeSeason season : seasons) {
      if (season.name().equals(name.substring(end))) {
        Candidate c = Candidate.of(spec, name.substring(0, end));
        return told(rebuild.apply(c.settings()), season).line();
      }
    }
    throw new IllegalArgumentException("no season of a candidate is called " + name);
  }

  private Trial tryOut(Candidate c) {
    Scenario s = rebuild.apply(c.settings());
    double limit = spec.lossOfLoadH() * seasons.size();
    double shed = 0;
    double wh = 0;
    int missed = 0;
    boolean lack = false;
    int tried = 0;
    while (tried < seasons.size()) {
      int end = Math.min(seasons.size(), tried + BLOCK);
      List<String> names =
          seasons.subList(tried, end).stream().map(x -> c.key() + x.name()).toList();
      Told[] told = new Told[names.size()];
      if (!crew.run(names, this, (i, line) -> told[i] = Told.of(line))) {
        return null;
      }
      for (Told t : told) {
        shed += t.shedH();
        wh += t.dailyWh();
        missed += t.meets() ? 0 : 1;
        lack |= t.lack();
      }
      tried = end;
      if (shed > limit || missed > allowedToMiss) {
        break;
      }
    }
    boolean met = shed <= limit && missed <= allowedToMiss;
    return Trial.of(
        c,
        met,
        tried,
        shed / tried,
        tried - missed,
        !met && (lack || shed > limit),
        wh / tried,
        s.pv().powerW(),
        s.battery().capacityAh() * s.battery().nominalV());
  }

  private static Told told(Scenario s, SizeSeason season) {
    RunResult r =
        new Simulation(
                s,
                season.forcing(),
                new ReferenceController(s.controller().settings()),
                Pace.search(s))
            .run();
    boolean meets = true;
    boolean lack = false;
    for (Requirement q : s.requirements()) {
      boolean met = Judge.measure(q.kind(), r, s).meets(q);
      meets &= met;
      lack |= !met && lacks(q.kind(), r);
    }
    double j = r.power().heaterJ + r.power().fanJ + r.power().controllerJ + r.power().otherLoadsJ;
    return new Told(r.hoursShed(), meets, lack, j / 3600 / r.days());
  }

  /** Whether a miss is one of warmth or charge, which a weaker rig has as well. */
  private static boolean lacks(Requirement.Kind kind, RunResult r) {
    return switch (kind) {
      case LOWEST_SOC, HOURS_SHED -> true;
      case BROOD_IN_BAND -> r.brood().hoursBelow() > r.brood().hoursAbove();
      default -> false;
    };
  }
}

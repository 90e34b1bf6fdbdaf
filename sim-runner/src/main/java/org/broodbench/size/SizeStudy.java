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
import org.broodbench.loop.Trace;
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
 * <p>A candidate that fails for want of warmth or charge in more seasons than may be missed rules
 * out every other of the same kinds that is stronger in no part. One that does makes all that is
 * dearer pointless. So the next to be tried is always the one whose answer, whichever it is,
 * decides most. The seasons that failed most often so far come first, then the hardest, and a
 * candidate is given up as soon as it cannot reach what is asked any more, so that those that fail
 * cost little. Runs are at {@link Pace#search}, at the scenario's own heat loss of the cluster.
 */
public final class SizeStudy implements Pieces {
  /** Seasons of a candidate that are simulated at once; the answer does not depend on threads. */
  private static final int BLOCK = 4;

  /** State of charge that is kept where a scenario asks for none: common practice, no source. */
  private static final double LEAD_ACID_LOWEST = 0.5;

  private static final double LITHIUM_LOWEST = 0.2;

  private final SizeSpec spec;
  private final List<SizeSeason> seasons;
  private final Function<List<String>, Scenario> rebuild;
  private final boolean pruned;
  private final Map<String, Trial> known = new LinkedHashMap<>();
  private final List<Candidate> lacking = new ArrayList<>();
  private final List<Candidate> reaching = new ArrayList<>();
  private int[] missedBefore;
  private int allowedToMiss;
  private int ran;

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
    missedBefore = new int[seasons.size()];
    List<Candidate> all = Candidate.all(spec);
    most = all.size();
    if (!pruned) {
      all.forEach(this::reaches);
    }
    Candidate best = cheapest(all);
    List<Trial> byFirst = best == null ? List.of() : byFirst(all, best);
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
        best == null || stop.getAsBoolean() ? null : autonomy(best),
        trials,
        all.size(),
        ran,
        !stop.getAsBoolean());
  }

  /**
   * For each choice of the first part, the cheapest of the last two with which it does, the parts
   * between as in the best; those without are out.
   */
  private List<Trial> byFirst(List<Candidate> all, Candidate best) {
    List<Trial> found = new ArrayList<>();
    for (int choice = 0; choice < spec.parts().get(0).choices().size(); choice++) {
      int first = choice;
      add(
          found,
          cheapest(all.stream().filter(c -> c.at()[0] == first && sameBetween(c, best)).toList()));
    }
    return found;
  }

  private static boolean sameBetween(Candidate c, Candidate best) {
    for (int p = 1; p < c.at().length - 2; p++) {
      if (c.at()[p] != best.at()[p]) {
        return false;
      }
    }
    return true;
  }

  /** For each choice of the last part but one the cheapest of the last that does. */
  private List<Trial> curve(Candidate best) {
    int n = spec.parts().size();
    List<Trial> found = new ArrayList<>();
    if (n < 2) {
      return found;
    }
    for (int a = 0; a < spec.parts().get(n - 2).choices().size(); a++) {
      List<Candidate> row = new ArrayList<>();
      for (int b = 0; b < spec.parts().get(n - 1).choices().size(); b++) {
        row.add(best.with(n - 2, a).with(n - 1, b));
      }
      row.sort(Candidate.CHEAPEST);
      add(found, cheapest(row));
    }
    return found;
  }

  /** By the prices of the list; what is larger is not tried, as it is stronger. */
  private SizeReport.Autonomy autonomy(Candidate best) {
    Scenario s = rebuild.apply(best.settings());
    Pace pace = Pace.search(s);
    Trace trace =
        new Simulation(
                s,
                seasons.get(0).forcing(),
                new ReferenceController(s.controller().settings()),
                new Pace(pace.tickMillis(), pace.stepMillis(), Pace.Keep.TRACE))
            .run()
            .trace();
    double dayWh = hardestDayWh(trace.column("load_w"), trace.intervalS());
    double batteryWh = dayWh / known.get(best.key()).usedShare();
    SizeReport.Autonomy found =
        new SizeReport.Autonomy(dayWh, batteryWh, "", Double.NaN, Double.NaN);
    for (int p = 0; p < spec.parts().size(); p++) {
      for (int i = 0; i < spec.parts().get(p).choices().size(); i++) {
        Candidate c = best.with(p, i);
        double addedWh = batteryWh(rebuild.apply(c.settings())) - batteryWh(s);
        double price = c.price() - best.price();
        if (best.atMost(c) && addedWh >= batteryWh && !(price >= found.price())) {
          found =
              new SizeReport.Autonomy(
                  dayWh,
                  batteryWh,
                  spec.parts().get(p).name() + " " + c.choice(p).label(),
                  price,
                  addedWh / batteryWh);
        }
      }
    }
    return found;
  }

  private static double hardestDayWh(double[] loadW, int intervalS) {
    int rows = 86_400 / intervalS;
    double most = 0;
    for (int from = 0; from + rows <= loadW.length; from += rows) {
      double sum = 0;
      for (int i = from; i < from + rows; i++) {
        sum += loadW[i];
      }
      most = Math.max(most, 24 * sum / rows);
    }
    return most;
  }

  private static double batteryWh(Scenario s) {
    return s.battery().capacityAh() * s.battery().nominalV();
  }

  private void add(List<Trial> found, Candidate c) {
    if (c != null) {
      found.add(known.get(c.key()));
    }
  }

  /**
   * The first that reaches what is asked; null where none does, or the study was stopped before.
   *
   * @param pool cheapest first
   */
  private Candidate cheapest(List<Candidate> pool) {
    List<Candidate> open = new ArrayList<>(pool);
    Candidate found = null;
    while (!stop.getAsBoolean()) {
      open.removeIf(this::fails);
      for (int i = 0; i < open.size(); i++) {
        Trial t = known.get(open.get(i).key());
        if (t != null && t.met()) {
          found = open.get(i);
          open.subList(i, open.size()).clear();
        }
      }
      if (open.isEmpty()) {
        return found;
      }
      reaches(mostTelling(open));
    }
    return null;
  }

  /** Whether it is known, by itself or by a stronger one, not to reach what is asked. */
  private boolean fails(Candidate c) {
    Trial t = known.get(c.key());
    return t != null ? !t.met() : pruned && lacking.stream().anyMatch(c::atMost);
  }

  /**
   * The one with the largest product of what it settles if it fails, all that is weaker, and if it
   * reaches, all that is dearer. What is stronger than one that reaches will most likely reach as
   * well, which takes all seasons to see: of these the cheapest, and after all others.
   */
  private Candidate mostTelling(List<Candidate> open) {
    Candidate telling = open.get(0);
    long most = 0;
    for (int i = 0; i < open.size(); i++) {
      Candidate c = open.get(i);
      long weaker = open.stream().filter(other -> other.atMost(c)).count();
      long settled = weaker * (open.size() - i);
      if (settled > most && reaching.stream().noneMatch(r -> r.atMost(c))) {
        most = settled;
        telling = c;
      }
    }
    return telling;
  }

  private boolean reaches(Candidate c) {
    Trial t = known.get(c.key());
    if (t == null) {
      String before = journal.get(c.key());
      t = before != null ? Trial.of(c, before) : tryOut(c);
      if (t == null) {
        return false;
      }
      if (before == null) {
        journal.put(c.key(), t.line());
      }
      known.put(c.key(), t);
      ran += t.tried();
      for (int season : t.missed()) {
        missedBefore[season]++;
      }
      progress.at(known.size(), most);
      if (t.met()) {
        reaching.add(c);
      } else if (t.lack()) {
        lacking.add(c);
      }
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

  /** Numbers of the seasons, those that failed most often before first, then the hardest. */
  private List<Integer> order() {
    List<Integer> order = new ArrayList<>();
    for (int k = 0; k < seasons.size(); k++) {
      order.add(k);
    }
    order.sort(Comparator.comparingInt(k -> -missedBefore[k]));
    return order;
  }

  private Trial tryOut(Candidate c) {
    Scenario s = rebuild.apply(c.settings());
    double limit = spec.lossOfLoadH() * seasons.size();
    List<Integer> order = order();
    Told[] told = new Told[seasons.size()];
    Tally tally = Tally.of(told);
    int tried = 0;
    while (tried < seasons.size() && !over(tally, limit)) {
      List<Integer> block = order.subList(tried, Math.min(seasons.size(), tried + BLOCK));
      List<String> names = block.stream().map(k -> c.key() + seasons.get(k).name()).toList();
      if (!crew.run(names, this, (i, line) -> told[block.get(i)] = Told.of(line))) {
        return null;
      }
      tried += block.size();
      tally = Tally.of(told);
    }
    return Trial.of(
        c,
        !over(tally, limit),
        tried,
        tally.shedH() / tried,
        tried - tally.missed().size(),
        tally.lacking() > allowedToMiss || tally.shedH() > limit,
        tally.wh() / tried,
        s.pv().powerW(),
        batteryWh(s),
        usedShare(s),
        tally.missed());
  }

  private boolean over(Tally tally, double limit) {
    return tally.shedH() > limit || tally.missed().size() > allowedToMiss;
  }

  /** All seasons that were tried, summed in their own order, whichever they were tried in. */
  private record Tally(double shedH, double wh, int lacking, List<Integer> missed) {
    static Tally of(Told[] told) {
      double shedH = 0;
      double wh = 0;
      int lacking = 0;
      List<Integer> missed = new ArrayList<>();
      for (int k = 0; k < told.length; k++) {
        if (told[k] != null) {
          shedH += told[k].shedH();
          wh += told[k].dailyWh();
          lacking += told[k].lack() ? 1 : 0;
          if (!told[k].meets()) {
            missed.add(k);
          }
        }
      }
      return new Tally(shedH, wh, lacking, missed);
    }
  }

  /** Share of a full battery that may be used: down to what the scenario asks for. */
  private static double usedShare(Scenario s) {
    double lowest = s.battery().chemistry().leadAcid() ? LEAD_ACID_LOWEST : LITHIUM_LOWEST;
    for (Requirement q : s.requirements()) {
      if (q.kind() == Requirement.Kind.LOWEST_SOC) {
        lowest = q.limit() / 100;
      }
    }
    return 1 - lowest;
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
      lack |= !met && lacks(q, r);
    }
    double j = r.power().heaterJ + r.power().fanJ + r.power().controllerJ + r.power().otherLoadsJ;
    return new Told(r.hoursShed(), meets, lack, j / 3600 / r.days());
  }

  /** Whether a miss is one of warmth or charge, which a weaker rig has as well. */
  private static boolean lacks(Requirement q, RunResult r) {
    return switch (q.kind()) {
      case LOWEST_SOC, HOURS_SHED -> true;
      case BROOD_IN_BAND -> {
        // a weaker rig may be too warm for less long, so cold alone must be enough for the miss
        double below = r.brood().hoursBelow();
        double outside = 100 - r.brood().percentInBand();
        yield outside * below / (below + r.brood().hoursAbove()) > 100 - q.limit();
      }
      default -> false;
    };
  }
}

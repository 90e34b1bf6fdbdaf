package org.broodbench.study;

import java.util.ArrayList;
import java.util.List;
import java.util.function.BiConsumer;
import java.util.function.UnaryOperator;
import org.broodbench.controller.Setting;
import org.broodbench.hive.BoxSpec;
import org.broodbench.hive.HiveSpec;
import org.broodbench.loop.ColonyDay;
import org.broodbench.rig.EventSpec;
import org.broodbench.rig.Scenario;
import org.broodbench.rig.Window;
import org.broodbench.sky.Forcing;

/**
 * Makes an {@link Outlook}: the scenario's season with numbers that move, at the three published
 * heat losses, under each treatment; then weaning is tried. Steps are coarser than in a plain run,
 * 30 s for the hive and 5 s for the controller, which moves no temperature by more than a few
 * hundredths.
 */
public final class Outlooks {
  /** Bees on a deep frame that is covered on both sides; from memory. */
  private static final double BEES_A_FRAME = 2200;

  /** Share of the frames occupied when the next box is due; common practice, no source. */
  private static final double BOX_FULL = 0.8;

  /** Worker cells on both sides of a deep frame; from memory. */
  private static final double DEEP_FRAME_CELLS = 6900;

  private static final double DEEP_BOX_M = 0.244;

  /** A tenth more or less is no difference that a keeper could see; own choice. */
  private static final double SEEN = 1.1;

  /** Frames of the smaller box. */
  static final int SMALL_FRAMES = 5;

  private static final double WEAN_STEP_K = 1;
  private static final int WEAN_EVERY_DAYS = 2;
  private static final double WEAN_TO_C = 24;
  private static final double ABORT_H = 6;

  /** Most runs that weaning takes: by halves over half a year, and once at the highest loss. */
  private static final int WEANING_RUNS = 6;

  private Outlooks() {}

  private record Treatment(String key, String what, UnaryOperator<Scenario> change) {}

  /** The season of a scenario as an outlook runs it: so many weeks from its first day. */
  public static Scenario season(Scenario s, int weeks) {
    return s.withWindow(new Window(s.window().fromEpochS(), 7 * weeks))
        .withColony(s.colony().moving());
  }

  /**
   * Runs it.
   *
   * @param season made by {@link #season}
   * @param forcing the weather of all its weeks
   * @param progress told how many runs of how many are done
   */
  public static Outlook of(
      Scenario season, Forcing forcing, int threads, BiConsumer<Integer, Integer> progress) {
    List<Treatment> treatments = treatments(season);
    List<UnaryOperator<Scenario>> runs = new ArrayList<>();
    for (Treatment t : treatments) {
      for (double loss :
          new double[] {
            Evaluation.LOW_LOSS, season.colony().clusterLossFactor(), Evaluation.HIGH_LOSS
          }) {
        runs.add(
            s -> {
              Scenario changed = t.change().apply(s);
              return changed.withColony(changed.colony().withClusterLossFactor(loss));
            });
      }
    }
    int most = runs.size() + (season.heater().powerW() > 0 ? WEANING_RUNS : 0);
    int[] done = {0};
    List<List<ColonyDay>> days =
        Evaluation.lives(season, forcing, runs, threads, () -> progress.accept(++done[0], most));
    List<Course> courses = new ArrayList<>();
    for (int i = 0; i < treatments.size(); i++) {
      Treatment t = treatments.get(i);
      courses.add(
          new Course(t.key(), t.what(), days.get(3 * i), days.get(3 * i + 1), days.get(3 * i + 2)));
    }
    Outlook.Weaning weaning =
        season.heater().powerW() > 0
            ? wean(season, forcing, threads, () -> progress.accept(++done[0], most))
            : null;
    double bees = season.colony().bees();
    for (EventSpec e : season.events()) {
      if (e instanceof EventSpec.InstallColony c && c.atS() < 86_400.0 * season.window().days()) {
        bees += c.bees();
      }
    }
    Outlook.Gain gain = gain(courses, bees);
    return new Outlook(
        season.window().days() / 7,
        season.window().fromEpochS(),
        bees,
        courses,
        gain,
        advice(courses, gain, bees),
        courses.get(0).three().stream().map(Outlooks::nextBox).toList(),
        weaning);
  }

  private static List<Treatment> treatments(Scenario s) {
    List<Treatment> all = new ArrayList<>();
    boolean heated = s.heater().powerW() > 0;
    if (heated) {
      all.add(new Treatment("heat", "as it stands, with heat", x -> x));
    }
    all.add(
        new Treatment(
            "no_heat",
            heated ? "heater unplugged" : "as it stands, without a heater",
            x -> x.withHeater(x.heater().withoutPower())));
    all.add(
        new Treatment(
            "insulation_only",
            "no heat, 50 mm of expanded polystyrene added all round",
            x -> x.withHeater(x.heater().withoutPower()).withHive(Evaluation.insulated(x.hive()))));
    if (s.hive().boxes().get(s.hive().broodBox()).frames() > SMALL_FRAMES) {
      all.add(
          new Treatment(
              "smaller_box",
              "no heat, one box of five frames with the same walls",
              x -> x.withHeater(x.heater().withoutPower()).withHive(smaller(x.hive()))));
    }
    return all;
  }

  /** The brood box alone, narrowed to five frames; it takes along what stores fit in. */
  static HiveSpec smaller(HiveSpec h) {
    BoxSpec b = h.boxes().get(h.broodBox());
    double share = (double) SMALL_FRAMES / b.frames();
    double storesKg = h.boxes().stream().mapToDouble(BoxSpec::storesKg).sum();
    // a deep frame holds 2.9 kg of honey; two of the five are left for brood
    double fitsKg = 3 * 2.9 * b.heightM() / DEEP_BOX_M;
    return h.narrowed(
        h.widthM() * share,
        List.of(new BoxSpec(b.heightM(), SMALL_FRAMES, Math.min(storesKg, fitsKg))));
  }

  /** First day on which the next box is due; −1 for none. */
  static int nextBox(List<ColonyDay> days) {
    for (ColonyDay d : days) {
      double frames = d.combCells() / DEEP_FRAME_CELLS;
      if (d.bees() >= BOX_FULL * frames * BEES_A_FRAME && frames > 0) {
        return d.day();
      }
    }
    return -1;
  }

  private static double best(List<Course> courses, int loss) {
    return courses.stream().skip(1).mapToDouble(c -> Course.strength(c.last(loss))).max().orElse(0);
  }

  static Outlook.Gain gain(List<Course> courses, double bees) {
    Course heat = courses.get(0);
    if (!heat.key().equals("heat")) {
      return Outlook.Gain.NO_HEATER;
    }
    int gains = 0;
    int dwindles = 0;
    for (int loss = 0; loss < 3; loss++) {
      double heated = Course.strength(heat.last(loss));
      dwindles += heated < 0.5 * bees ? 1 : 0;
      gains += heated > SEEN * best(courses, loss) ? 1 : 0;
    }
    if (dwindles >= 2) {
      return Outlook.Gain.DWINDLES;
    }
    return gains == 3
        ? Outlook.Gain.GAINS
        : gains == 0 ? Outlook.Gain.NOTHING : Outlook.Gain.DEPENDS;
  }

  /** The mildest of the treatments that do as well as the best one at the scenario's own loss. */
  static Outlook.Advice advice(List<Course> courses, Outlook.Gain gain, double bees) {
    double bestOther = best(courses, 1);
    if (gain == Outlook.Gain.DWINDLES) {
      boolean otherLives = bestOther >= 0.5 * bees;
      return otherLives ? instead(courses, bestOther) : Outlook.Advice.UNITE;
    }
    if (gain == Outlook.Gain.NOTHING) {
      return instead(courses, bestOther);
    }
    return Outlook.Advice.GO_ON;
  }

  private static Outlook.Advice instead(List<Course> courses, double best) {
    for (Course c : courses.subList(1, courses.size())) {
      if (Course.strength(c.last(1)) * SEEN >= best) {
        return switch (c.key()) {
          case "no_heat" -> Outlook.Advice.UNPLUG;
          case "insulation_only" -> Outlook.Advice.INSULATE;
          default -> Outlook.Advice.CONFINE;
        };
      }
    }
    throw new IllegalStateException("the best is among them");
  }

  /** Tries weaning from week to week, by halves, at the scenario's own heat loss. */
  private static Outlook.Weaning wean(
      Scenario season, Forcing forcing, int threads, Runnable done) {
    double fromC = season.controller().settings().get(Setting.HEAT_SET_POINT_CENTI_C) / 100.0;
    int steps = (int) StrictMath.ceil((fromC - WEAN_TO_C) / WEAN_STEP_K);
    int lasts = Math.max(0, steps - 1) * WEAN_EVERY_DAYS;
    int works = -1;
    boolean tried = false;
    int low = 0;
    int high = StrictMath.floorDiv(season.window().days() - lasts - 7, 7);
    while (steps > 0 && low <= high) {
      tried = true;
      int week = (low + high) / 2;
      Scenario weaned = weaned(season, fromC, steps, 7 * week);
      if (holds(weaned, forcing, threads, done, 7 * week)) {
        works = 7 * week;
        high = week - 1;
      } else {
        low = week + 1;
      }
    }
    boolean always = false;
    if (works >= 0) {
      Scenario weaned = weaned(season, fromC, steps, works);
      always =
          holds(
              weaned.withColony(weaned.colony().withClusterLossFactor(Evaluation.HIGH_LOSS)),
              forcing,
              threads,
              done,
              works);
    }
    double toC = steps > 0 ? Math.max(WEAN_TO_C, fromC - steps * WEAN_STEP_K) : fromC;
    return new Outlook.Weaning(
        tried, works, always, fromC, toC, WEAN_STEP_K, WEAN_EVERY_DAYS, ABORT_H);
  }

  private static Scenario weaned(Scenario season, double fromC, int steps, int day) {
    List<EventSpec> events =
        new ArrayList<>(
            season.events().stream().filter(e -> !(e instanceof EventSpec.SetPoint)).toList());
    for (int k = 1; k <= steps; k++) {
      double atS = 86_400.0 * (day + (k - 1) * WEAN_EVERY_DAYS) + 43_200;
      events.add(new EventSpec.SetPoint(atS, Math.max(WEAN_TO_C, fromC - k * WEAN_STEP_K)));
    }
    return season.withEvents(events);
  }

  private static boolean holds(
      Scenario weaned, Forcing forcing, int threads, Runnable done, int fromDay) {
    List<ColonyDay> days = Evaluation.lives(weaned, forcing, List.of(s -> s), threads, done).get(0);
    return days.stream()
        .filter(d -> d.day() > fromDay)
        .allMatch(d -> d.bees() > 0 && d.coldHours() <= ABORT_H);
  }
}

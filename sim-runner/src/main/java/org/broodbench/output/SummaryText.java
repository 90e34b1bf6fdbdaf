package org.broodbench.output;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.broodbench.loop.Explain;
import org.broodbench.loop.HeldHeat;
import org.broodbench.loop.Lengths;
import org.broodbench.loop.RunResult;
import org.broodbench.rig.Requirement;
import org.broodbench.rig.Scenario;
import org.broodbench.study.Cautions;
import org.broodbench.study.JudgedRequirement;
import org.broodbench.study.Outcome;
import org.broodbench.study.Remedy;

/** The result of a run on a screen of text: the verdict first, then what it rests on. */
public final class SummaryText {
  /** So many remedies are told. */
  private static final int BEST = 3;

  private SummaryText() {}

  /**
   * The text.
   *
   * @param fahrenheit whether temperatures are shown in °F
   */
  public static String of(Outcome o, boolean fahrenheit) {
    Scenario s = o.scenario();
    RunResult r = o.main();
    StringBuilder t = new StringBuilder();
    long missed = o.requirements().stream().filter(q -> !q.met()).count();
    t.append(s.title())
        .append(" (")
        .append(s.fileName())
        .append("), ")
        .append(Counted.of(s.window().days(), "day"))
        .append(" from ")
        .append(Stamps.of(s.window().fromEpochS(), 0), 0, 10)
        .append('\n');
    t.append("Weather: ").append(o.weather().source()).append('\n');
    t.append('\n');
    t.append(
        o.met()
            ? "MET: every requirement is met.\n"
            : "MISSED: " + missed + " of " + o.requirements().size() + " requirements.\n");
    for (JudgedRequirement q : o.requirements()) {
      t.append(q.met() ? "  met     " : q.dependsOnColony() ? "  depends " : "  missed  ");
      line(
          t,
          "%-16s %s, %s %s",
          q.requirement().kind().key(),
          value(q, fahrenheit),
          q.requirement().kind().atLeast() ? "at least" : "at most",
          number(q.requirement().kind(), q.requirement().limit(), fahrenheit));
      line(
          t,
          "          %s%s",
          q.why(),
          q.dependsOnColony()
              ? " (met only at some of the published heat losses of small clusters)"
              : "");
    }
    remedies(t, o, fahrenheit);
    t.append('\n');
    line(
        t,
        "Brood comb   mean %s, lowest %s on %s, highest %s; below the band for %s, above it for %s",
        temperature(r.brood().meanC(), fahrenheit),
        temperature(r.brood().low().value(), fahrenheit),
        Explain.moment(s, r.brood().low().atS()),
        temperature(r.brood().high().value(), fahrenheit),
        Lengths.of(3600 * r.brood().hoursBelow()),
        Lengths.of(3600 * r.brood().hoursAbove()));
    line(
        t,
        "Heater       %s (%.1f a day), on %.0f %% of the time, %.0f Wh; shortest run %s, shortest pause %s",
        Counted.of(r.heaterPowered().starts(), "start"),
        r.heaterPowered().starts() / r.days(),
        100 * r.heaterPowered().onS() / (r.days() * 86_400),
        r.power().heaterJ / 3600,
        Lengths.of(r.heaterPowered().shortestOnS()),
        Lengths.of(r.heaterPowered().shortestOffS()));
    List<HeldHeat> held = HeldHeat.of(r);
    if (!held.isEmpty()) {
      line(
          t,
          "Held off     although heat was wanted: by %s",
          held.stream().map(HeldHeat::words).collect(Collectors.joining("; by ")));
    }
    line(
        t,
        "Battery      lowest %.0f %%, at the end %.0f %%; heat shed for %s; panel gave %.0f Wh of %.0f Wh on offer",
        100 * r.battery().lowestSoc().value(),
        100 * r.battery().finalSoc(),
        Lengths.of(3600 * r.hoursShed()),
        r.power().pvUsedJ / 3600,
        r.power().pvAvailableJ / 3600);
    line(
        t,
        "Air          humidity at the brood %.0f %% on average, lowest %.0f %%; carbon dioxide %.2f %%, highest %.2f %%; condensing for %s",
        r.air().meanRhPercent(),
        r.air().lowRh().value(),
        r.air().meanCo2Percent(),
        r.air().highCo2().value(),
        Lengths.of(3600 * r.air().hoursCondensing()));
    line(
        t,
        "Colony       ate %.0f g; brood damage as a dose of unpublished magnitude: %.0f of %.0f cells by cold, %.0f by heat",
        r.colony().feedEatenG(),
        r.colony().lostToCold(),
        r.colony().broodStart(),
        r.colony().lostToHeat());
    line(
        t,
        "Without heat the brood comb would have been %s at its lowest; with 50 mm more insulation and no heat, %s.",
        temperature(o.noHeat().brood().low().value(), fahrenheit),
        temperature(o.insulationOnly().brood().low().value(), fahrenheit));
    line(
        t,
        "How sure     brood in band at low, own and high heat loss of small clusters: %.1f, %.1f, %.1f %% of hours",
        o.lowLoss().brood().percentInBand(),
        r.brood().percentInBand(),
        o.highLoss().brood().percentInBand());
    o.outlook()
        .ifPresent(
            x -> {
              line(t, "Outlook      %s: %s", OutlookWords.weeks(x), OutlookWords.headline(x));
              for (String sentence : OutlookWords.sentences(x)) {
                line(t, "             %s", sentence);
              }
            });
    o.sure().ifPresent(sure -> SureWords.lines(sure).forEach(l -> line(t, "%s", l)));
    for (String flag : o.flags()) {
      t.append("Note: ").append(flag).append('\n');
    }
    for (String warning : o.weather().warnings()) {
      t.append("Weather: ").append(warning).append('\n');
    }
    line(
        t,
        "%s assumed; the report lists them.",
        o.assumed().size() == 1 ? "1 value was" : o.assumed().size() + " values were");
    t.append("Caution: ").append(Cautions.all().get(0)).append('\n');
    return t.toString();
  }

  /** The best single changes. */
  private static void remedies(StringBuilder t, Outcome o, boolean fahrenheit) {
    if (o.remedies().tried() == 0) {
      return;
    }
    t.append('\n').append("What to change: ").append(RemedyWords.winner(o.remedies())).append('\n');
    Markup m = new Markup(fahrenheit);
    List<Remedy> all = o.remedies().helpful();
    for (int i = 0; i < Math.min(BEST, all.size()); i++) {
      Remedy r = all.get(i);
      line(
          t,
          "  %d. %s: %s",
          i + 1,
          Markup.plain(r.change().what(), fahrenheit),
          RemedyWords.options(r));
      List<String> told = new ArrayList<>();
      for (Remedy.Effect e : RemedyWords.told(r)) {
        told.add(Markup.bare(RemedyWords.effect(e, m)));
      }
      String reach = RemedyWords.reach(r);
      line(t, "     %s%s", String.join("; ", told), reach.isEmpty() ? "" : "; " + reach);
    }
    line(t, "     %s", RemedyWords.how(o.remedies()));
  }

  private static String value(JudgedRequirement q, boolean fahrenheit) {
    return Double.isNaN(q.value())
        ? "never happened"
        : number(q.requirement().kind(), q.value(), fahrenheit);
  }

  private static String number(Requirement.Kind kind, double value, boolean fahrenheit) {
    return switch (kind.unit()) {
      case "percent_of_hours" -> format("%.1f %% of hours", value);
      case "percent" -> format("%.1f %%", value);
      case "s" -> Lengths.of(value);
      case "per_day" -> format("%.1f a day", value);
      case "degC" -> temperature(value, fahrenheit);
      default -> format("%.1f %s", value, kind.unit());
    };
  }

  static String temperature(double c, boolean fahrenheit) {
    return fahrenheit ? format("%.1f °F", c * 1.8 + 32) : format("%.1f °C", c);
  }

  private static void line(StringBuilder t, String pattern, Object... values) {
    t.append(format(pattern, values)).append('\n');
  }

  private static String format(String pattern, Object... values) {
    return String.format(Locale.ROOT, pattern, values);
  }
}

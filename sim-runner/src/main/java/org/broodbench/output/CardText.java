package org.broodbench.output;

import java.util.Locale;
import org.broodbench.card.Expectation;
import org.broodbench.card.FieldCard;
import org.broodbench.card.Tonight;
import org.broodbench.study.Cautions;

/** Field card and tonight's answer on a screen of text. */
public final class CardText {
  private CardText() {}

  /** What stands on the card, in short. */
  public static String of(FieldCard card, boolean fahrenheit) {
    StringBuilder t = new StringBuilder();
    line(t, "Field card: %s", card.scenario().title());
    line(t, "Weather: %s; %s", card.weather(), Counted.of(card.days(), "day"));
    t.append('\n');
    for (Expectation e : card.expected()) {
      line(
          t,
          "%-5s %2d nights, lowest %s to %s: dusk %s V, dawn %s V; heater %s h and %s starts a night",
          e.sort().name().toLowerCase(Locale.ROOT),
          e.nights(),
          SummaryText.temperature(e.lowC().low(), fahrenheit),
          SummaryText.temperature(e.lowC().high(), fahrenheit),
          CardPage.range(e.duskV(), "%.2f"),
          CardPage.range(e.dawnV(), "%.2f"),
          CardPage.range(e.nightHeaterH(), "%.1f"),
          CardPage.range(e.nightStarts(), "%.0f"));
    }
    t.append("\nAfter the harvest fails you have\n");
    for (FieldCard.AfterHarvest h : card.afterHarvest()) {
      line(t, "  %s", CardPage.harvest(h));
    }
    card.plan()
        .ifPresent(
            plan -> {
              line(t, "Season plan");
              PlanWords.lines(plan).forEach(l -> line(t, "  %s", l));
            });
    line(t, "Does not come back by itself: %s.", String.join(", ", card.notBack()));
    line(t, "Caution: %s", Cautions.all().get(0));
    return t.toString();
  }

  /** Tonight's answer. */
  public static String of(Tonight.Answer a, boolean fahrenheit) {
    StringBuilder t = new StringBuilder();
    line(
        t,
        "Tonight, from %.2f V at dusk and a low of %s: %s.",
        a.volts(),
        SummaryText.temperature(a.lowC(), fahrenheit),
        a.wholeNight()
            ? String.format(Locale.ROOT, "heat for the whole night of %.1f h", a.nightH())
            : String.format(
                Locale.ROOT,
                "%s h of heat, of a night of %.1f h",
                CardPage.range(a.heatH(), "%.1f"),
                a.nightH()));
    line(t, "Shed level at dawn: %s.", CardPage.levels(a.dawnLevel()));
    line(t, "Battery at dawn: %s V.", CardPage.range(a.dawnV(), "%.2f"));
    line(
        t,
        "The range holds the published heat losses of small clusters and a gauge error of %.2f V in 12 V.",
        0.05);
    return t.toString();
  }

  private static void line(StringBuilder t, String pattern, Object... values) {
    t.append(String.format(Locale.ROOT, pattern, values)).append('\n');
  }
}

package org.broodbench.loop;

import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import org.broodbench.controller.Reason;
import org.broodbench.controller.ShedLevel;
import org.broodbench.rig.Requirement;
import org.broodbench.rig.Scenario;

/** Says in words why a requirement came out as it did. */
public final class Explain {
  private static final double HOUR_S = 3600;

  private static final DateTimeFormatter MOMENT =
      DateTimeFormatter.ofPattern("d MMMM 'at' HH:mm 'UTC'", Locale.ENGLISH)
          .withZone(ZoneOffset.UTC);

  private Explain() {}

  /** A moment of a run as people read it. */
  public static String moment(Scenario s, double atS) {
    return MOMENT.format(Instant.ofEpochSecond(s.window().fromEpochS() + (long) atS));
  }

  /** One sentence about a requirement, met or not. */
  public static String why(Requirement requirement, RunResult r, Scenario s) {
    Judge.Measured m = Judge.measure(requirement.kind(), r, s);
    if (Double.isNaN(m.value())) {
      return "nothing of the kind happened";
    }
    String worst = m.atS() >= 0 ? ", worst on " + moment(s, m.atS()) : "";
    return switch (requirement.kind()) {
      case BROOD_IN_BAND -> broodWords(r, s);
      case SHORTEST_OFF -> "the shortest pause lasted " + Lengths.of(m.value()) + worst;
      case SHORTEST_ON -> "the shortest run lasted " + Lengths.of(m.value()) + worst;
      case STARTS_PER_DAY ->
          format(
              "%d %s in %.0f %s",
              r.heaterCommanded().starts(),
              r.heaterCommanded().starts() == 1 ? "start" : "starts",
              r.days(),
              r.days() == 1 ? "day" : "days");
      case LOWEST_SOC ->
          format("the battery came down to %.1f %%", m.value())
              + worst
              + format(
                  "; the panel gave %.0f Wh, the heater took %.0f Wh",
                  r.power().pvUsedJ / 3600, r.power().heaterJ / 3600);
      case HIGHEST_PAN -> format("the thermal mass reached %.1f °C", m.value()) + worst;
      case HIGHEST_BROOD -> format("the brood comb reached %.1f °C", m.value()) + worst;
      case HIGHEST_CO2 ->
          format("carbon dioxide between the brood combs reached %.2f %%", m.value()) + worst;
      case LOWEST_HUMIDITY ->
          format("humidity between the brood combs fell to %.0f %%", m.value()) + worst;
      case HOURS_CONDENSING -> "water condensed for " + Lengths.of(m.value() * HOUR_S);
      case HOURS_SHED ->
          "the heater was shed for "
              + Lengths.of(m.value() * HOUR_S)
              + (m.atS() >= 0 ? ", first on " + moment(s, m.atS()) : "");
    };
  }

  private static String broodWords(RunResult r, Scenario s) {
    double low = s.run().bandLowC();
    double high = s.run().bandHighC();
    StringBuilder words = new StringBuilder();
    if (r.brood().hoursBelow() > 0) {
      words.append(
          format(
              "the brood comb was below %.0f °C for %s, worst on %s (%.1f °C)",
              low,
              Lengths.of(r.brood().hoursBelow() * HOUR_S),
              moment(s, r.brood().low().atS()),
              r.brood().low().value()));
      words.append(", ").append(cause(r, s));
    }
    if (r.brood().hoursAbove() > 0) {
      words.append(words.isEmpty() ? "the brood comb was " : "; it was ");
      words.append(
          format(
              "above %.0f °C for %s, worst on %s (%.1f °C)",
              high,
              Lengths.of(r.brood().hoursAbove() * HOUR_S),
              moment(s, r.brood().high().atS()),
              r.brood().high().value()));
    }
    return words.isEmpty()
        ? format("the brood comb stayed between %.0f and %.0f °C throughout", low, high)
        : words.toString();
  }

  /** What stood in the way of heat when the brood was coldest. */
  private static String cause(RunResult r, Scenario s) {
    RunResult.Moment w = r.worst();
    if (w == null) {
      return "right at the start";
    }
    if (s.heater().powerW() == 0) {
      return "because there is no heater";
    }
    if (w.dead()) {
      return "because the battery could not carry the loads";
    }
    if (w.shedLevel() >= ShedLevel.HEAT_SHED) {
      return "because heat was shed to spare the battery, first on " + moment(s, r.firstShedAtS());
    }
    if (w.shedLevel() > ShedLevel.FULL) {
      return "because the battery was low and the set point had been lowered ("
          + ShedLevel.name(w.shedLevel()).replace('_', ' ')
          + ")";
    }
    if (w.heaterOn() && w.heaterOnForS() > 3600) {
      return "although the heater had been on for "
          + Lengths.of(w.heaterOnForS())
          + " without a break";
    }
    if (w.heaterReason() != Reason.NONE) {
      return "because " + ReasonWords.of(w.heaterReason(), w.heldLeftS());
    }
    if (w.heaterOn()) {
      return "soon after the heater had come on";
    }
    return "while the thermostat did not ask for heat";
  }

  private static String format(String pattern, Object... values) {
    return String.format(Locale.ROOT, pattern, values);
  }
}

package org.broodbench.output;

import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.broodbench.loop.ColonyDay;
import org.broodbench.study.Course;
import org.broodbench.study.Outlook;

/** An outlook in plain words, a sentence or two each. */
final class OutlookWords {
  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("d MMMM", Locale.ENGLISH).withZone(ZoneOffset.UTC);

  private OutlookWords() {}

  /** The answer in one line. */
  static String headline(Outlook o) {
    return switch (o.gain()) {
      case NO_HEATER -> "There is no heater to judge.";
      case GAINS -> "Heating gains bees and brood, whatever the heat loss of the cluster.";
      case DEPENDS ->
          "Whether heating gains anything depends on the heat loss of this cluster, which nobody knows beforehand.";
      case NOTHING -> "Heating gains nothing here: " + instead(o.advice()) + ".";
      case DWINDLES ->
          "The colony dwindles in spite of the heat. Heating gains nothing here: "
              + instead(o.advice())
              + ".";
    };
  }

  private static String instead(Outlook.Advice a) {
    return switch (a) {
      case GO_ON -> "go on as it is";
      case UNPLUG -> "unplug the heater, the colony does as well without";
      case INSULATE -> "insulate instead";
      case CONFINE -> "confine the colony to a smaller box instead";
      case UNITE -> "unite it with another colony, or confine it and hope";
    };
  }

  /** The paragraph under the headline. */
  static List<String> sentences(Outlook o) {
    List<String> all = new ArrayList<>();
    int end = 7 * o.weeks() - 1;
    for (Course c : o.courses()) {
      all.add(
          Markup.capital(c.what())
              + ": "
              + span(c.low(end, ColonyDay::bees), c.high(end, ColonyDay::bees))
              + " bees and "
              + span(c.low(end, ColonyDay::brood), c.high(end, ColonyDay::brood))
              + " brood cells after "
              + weeks(o)
              + ".");
    }
    all.add(nextBox(o));
    if (o.weaning() != null) {
      all.add(weaning(o));
    }
    all.add(food(o));
    if (o.broodlessHeatedDays() > 0) {
      all.add(
          "For "
              + o.broodlessHeatedDays()
              + " days a colony without brood was held warm: it eats more and gains nothing.");
    }
    all.add(
        "Ranges are over the three published heat losses of small clusters alone; numbers of brood"
            + " lost to cold or heat hang on doses whose magnitude is unpublished; forage and the"
            + " losses of old bees are guesses that the scenario can change.");
    all.add(
        "Mites are not modelled. In a published trial heated weak colonies had significantly more"
            + " mites: monitor and treat.");
    return all;
  }

  static String nextBox(Outlook o) {
    List<Integer> due = o.nextBox();
    int last = due.stream().mapToInt(d -> d).max().orElse(-1);
    int first = due.stream().filter(d -> d >= 0).mapToInt(d -> d).min().orElse(-1);
    if (first < 0) {
      return "No further box is due within these weeks.";
    }
    boolean all = due.stream().allMatch(d -> d >= 0);
    String when =
        first == last && all
            ? "on " + day(o, first)
            : all
                ? "between " + day(o, first) + " and " + day(o, last)
                : "from " + day(o, first) + " on at the earliest, or not within these weeks";
    return "The next box is due " + when + ", when bees cover four fifths of the frames.";
  }

  static String weaning(Outlook o) {
    Outlook.Weaning w = o.weaning();
    String rule =
        " Lower the set point by "
            + Quantity.plain(w.stepK(), 0)
            + " K every "
            + w.everyDays()
            + " days, down to "
            + Quantity.plain(w.toC(), 0)
            + " °C, then unplug. Stop rule: where the brood nest is below 32 °C for more than "
            + Quantity.plain(w.abortHours(), 0)
            + " h in a day, go back two steps and wait a week.";
    if (!w.tried()) {
      return "Weaning was not tried: these weeks are too few, or the set point is low already."
          + rule;
    }
    if (w.startDay() < 0) {
      return "Weaning did not hold the brood nest in any of these weeks." + rule;
    }
    int rests = o.heaterRestsFrom();
    return "Weaning can begin "
        + (w.startDay() == 0 ? "at once" : "about " + day(o, w.startDay()))
        + (w.atHighLossToo()
            ? ", whatever the heat loss of the cluster."
            : ", but not where the cluster loses much heat.")
        + rule
        + (rests > 0 ? " Left alone, the heater rests from " + day(o, rests) + " on." : "");
  }

  private static String food(Outlook o) {
    List<ColonyDay> own = o.first().own();
    ColonyDay end = own.get(own.size() - 1);
    double flightH = own.stream().mapToDouble(ColonyDay::flightHours).sum();
    double leastKg = own.stream().mapToDouble(ColonyDay::storesKg).min().orElse(0);
    String empty =
        own.stream()
            .filter(d -> d.storesKg() < 0.05)
            .findFirst()
            .map(d -> " The stores are empty on " + day(o, d.day()) + ": feed before.")
            .orElse("");
    return "Flight weather: "
        + Quantity.plain(flightH / own.size(), 1)
        + " h a day. Feed left: "
        + Quantity.plain(end.storesKg(), 1)
        + " kg, least "
        + Quantity.plain(leastKg, 1)
        + " kg."
        + empty
        + " Water needed for brood and cooling: "
        + Quantity.plain(1000 * end.waterKg() / own.size(), 0)
        + " g a day; pollen: "
        + Quantity.plain(1000 * end.pollenEatenKg() / own.size(), 0)
        + " g a day, "
        + Quantity.plain(1000 * end.pollenKg(), 0)
        + " g left.";
  }

  /** Its length, such as "8 weeks". */
  static String weeks(Outlook o) {
    return Counted.of(o.weeks(), "week");
  }

  /** The date after so many days. */
  static String day(Outlook o, int day) {
    return DAY.format(Instant.ofEpochSecond(o.fromEpochS() + 86_400L * day));
  }

  /** A range of bees or cells, two figures. */
  static String span(double low, double high) {
    String a = count(low);
    String b = count(high);
    return a.equals(b) ? a : a + " to " + b;
  }

  /** Bees or cells, rounded to what one can know. */
  static String count(double n) {
    double step = n >= 10_000 ? 500 : n >= 1000 ? 100 : 10;
    return Quantity.plain(Math.rint(n / step) * step, 0);
  }
}

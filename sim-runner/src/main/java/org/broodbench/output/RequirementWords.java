package org.broodbench.output;

import org.broodbench.loop.Lengths;
import org.broodbench.rig.Requirement;

/** Names and numbers of requirements as a keeper reads them. */
final class RequirementWords {
  private RequirementWords() {}

  static String name(Requirement.Kind kind) {
    return switch (kind) {
      case BROOD_IN_BAND -> "Brood comb inside its band";
      case SHORTEST_OFF -> "Shortest pause of the heater";
      case SHORTEST_ON -> "Shortest run of the heater";
      case STARTS_PER_DAY -> "Heater starts in a day";
      case LOWEST_SOC -> "Lowest state of charge";
      case HIGHEST_PAN -> "Hottest moment of the thermal mass";
      case HIGHEST_BROOD -> "Hottest moment of the brood comb";
      case HIGHEST_CO2 -> "Most carbon dioxide at the brood";
      case LOWEST_HUMIDITY -> "Driest air at the brood";
      case HOURS_CONDENSING -> "Hours with water condensing";
      case HOURS_SHED -> "Hours with the heater shed";
    };
  }

  /** A short name for lists of effects. */
  static String brief(Requirement.Kind kind) {
    return switch (kind) {
      case BROOD_IN_BAND -> "brood in band";
      case SHORTEST_OFF -> "shortest pause";
      case SHORTEST_ON -> "shortest run";
      case STARTS_PER_DAY -> "starts";
      case LOWEST_SOC -> "lowest charge";
      case HIGHEST_PAN -> "hottest pan";
      case HIGHEST_BROOD -> "hottest brood";
      case HIGHEST_CO2 -> "most carbon dioxide";
      case LOWEST_HUMIDITY -> "driest air";
      case HOURS_CONDENSING -> "condensing";
      case HOURS_SHED -> "heat shed";
    };
  }

  /** A value of the requirement with its unit. */
  static String value(Requirement.Kind kind, double value, Markup m) {
    if (Double.isNaN(value)) {
      return "none";
    }
    return switch (kind) {
      case BROOD_IN_BAND -> Quantity.plain(value, 1) + " % of hours";
      case SHORTEST_OFF, SHORTEST_ON -> Lengths.of(value);
      case STARTS_PER_DAY -> Quantity.plain(value, 1) + " a day";
      case LOWEST_SOC -> Quantity.plain(value, 1) + " %";
      case HIGHEST_PAN, HIGHEST_BROOD -> m.amount(Quantity.TEMPERATURE, value, 1);
      case HIGHEST_CO2 -> Quantity.plain(value, 2) + " %";
      case LOWEST_HUMIDITY -> Quantity.plain(value, 0) + " %";
      case HOURS_CONDENSING, HOURS_SHED -> Quantity.hours(value);
    };
  }

  /** The distance between value and limit, without a sign. */
  static String margin(Requirement r, double value, Markup m) {
    double apart = Math.abs(value - r.limit());
    return switch (r.kind()) {
      case BROOD_IN_BAND, LOWEST_SOC -> Quantity.plain(apart, 1) + " points";
      case SHORTEST_OFF, SHORTEST_ON -> Lengths.of(apart);
      case STARTS_PER_DAY -> Quantity.plain(apart, 1) + " a day";
      case HIGHEST_PAN, HIGHEST_BROOD -> m.amount(Quantity.DIFFERENCE, apart, 1);
      case HIGHEST_CO2 -> Quantity.plain(apart, 2) + " points";
      case LOWEST_HUMIDITY -> Quantity.plain(apart, 0) + " points";
      case HOURS_CONDENSING, HOURS_SHED -> Quantity.hours(apart);
    };
  }

  /** The limit, as in "at least 95 % of hours". */
  static String wanted(Requirement r, Markup m) {
    return (r.kind().atLeast() ? "at least " : "at most ") + value(r.kind(), r.limit(), m);
  }
}

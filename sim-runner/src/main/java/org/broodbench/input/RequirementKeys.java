package org.broodbench.input;

import java.util.ArrayList;
import java.util.List;
import org.broodbench.matter.Dimension;
import org.broodbench.rig.Requirement;
import org.broodbench.rig.Requirement.Kind;

/**
 * Keys of what a run must meet. One key for each kind of requirement; left out, it is not asked.
 */
final class RequirementKeys {
  private RequirementKeys() {}

  static void declare(Keys.Builder keys) {
    keys.table("requirement", "What the run must meet; a requirement left out is not judged.");
    for (Kind kind : Kind.values()) {
      KeyDraft draft =
          switch (kind.unit()) {
            case "percent", "percent_of_hours" ->
                keys.quantity(path(kind), "%", Dimension.RATIO).between("0 %", "100 %");
            case "s" -> keys.quantity(path(kind), "s", Dimension.TIME).between("0 s", "24 h");
            case "h" -> keys.quantity(path(kind), "h", Dimension.TIME).between("0 h", "9600 h");
            case "degC" ->
                keys.quantity(path(kind), "degC", Dimension.TEMPERATURE)
                    .between("-20 degC", "90 degC");
            default ->
                keys.plain(path(kind), org.broodbench.input.Kind.NUMBER).between("0", "2000");
          };
      draft.optional("not judged").help(help(kind));
    }
  }

  private static String path(Kind kind) {
    return "requirement." + kind.key();
  }

  private static String help(Kind kind) {
    return switch (kind) {
      case BROOD_IN_BAND -> "Least share of hours with the brood comb inside its band.";
      case SHORTEST_OFF -> "Least time between two runs of the heater.";
      case SHORTEST_ON -> "Least length of a run of the heater that no protection ended.";
      case STARTS_PER_DAY -> "Most heater starts a day, mean over the run.";
      case LOWEST_SOC -> "Least state of charge of the battery.";
      case HIGHEST_PAN -> "Highest temperature of the pan.";
      case HIGHEST_BROOD -> "Highest temperature of the brood comb.";
      case HIGHEST_CO2 -> "Highest share of carbon dioxide at the brood, by volume.";
      case LOWEST_HUMIDITY -> "Least relative humidity at the brood.";
      case HOURS_CONDENSING -> "Most hours with water condensing inside.";
      case HOURS_SHED -> "Most hours with the heater off for want of charge.";
    };
  }

  static List<Requirement> requirements(Values v) {
    List<Requirement> list = new ArrayList<>();
    for (Kind kind : Kind.values()) {
      if (v.has(path(kind))) {
        double value = v.number(path(kind));
        list.add(new Requirement(kind, inUnitOfKind(kind, value)));
      }
    }
    return list;
  }

  private static double inUnitOfKind(Kind kind, double base) {
    return switch (kind.unit()) {
      case "percent", "percent_of_hours" -> base * 100;
      case "h" -> base / 3600;
      default -> base;
    };
  }
}

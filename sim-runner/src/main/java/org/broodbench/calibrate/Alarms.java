package org.broodbench.calibrate;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * What in a fit wants attention. A change between the halves counts where its 90 % interval leaves
 * 1 and it is large enough to matter; all bounds are own choices.
 */
final class Alarms {
  private Alarms() {}

  static List<Calibration.Finding> of(
      List<Calibration.Parameter> parameters, List<Calibration.Trend> trends) {
    List<Calibration.Finding> out = new ArrayList<>();
    // one change is told: what is there shows through the other knobs too
    for (Calibration.Trend t : trends.subList(0, Math.min(1, trends.size()))) {
      boolean fell = t.high() < 1 && t.ratio() < 0.92;
      boolean rose = t.low() > 1 && t.ratio() > 1.08;
      String why =
          String.format(
              Locale.ROOT,
              "second half over first %.2f, 90 %% between %.2f and %.2f",
              t.ratio(),
              t.low(),
              t.high());
      if (t.knob() == Knob.HEATER_POWER && fell) {
        out.add(
            finding(
                "heater_weakening",
                "The heater gives less and less: look at plugs, fuse and element.",
                why));
      } else if (t.knob() == Knob.HIVE_LOSS && rose) {
        out.add(
            finding(
                "insulation_wet",
                "The hive loses more and more heat: look for wet insulation, a shifted lid, an open gap.",
                why));
      } else if (t.knob() == Knob.COLONY_BEES && fell) {
        out.add(
            finding(
                "colony_falling",
                "The colony makes less and less heat: it dwindles. Count the frames with bees, look for the queen, think of uniting.",
                why));
      } else if (t.knob() == Knob.COLONY_BEES && rose) {
        out.add(
            finding(
                "colony_rising",
                "The colony makes more and more heat: time to open the next box, or to lower the set point.",
                why));
      } else if (t.knob() == Knob.BATTERY_CAPACITY && fell
          || t.knob() == Knob.BATTERY_RESISTANCE && t.low() > 1 && t.ratio() > 1.3) {
        out.add(finding("battery_ageing", "The battery holds less and less.", why));
      }
    }
    for (Calibration.Parameter p : parameters) {
      level(p, out);
    }
    return out;
  }

  /** What was so from the start of the log, against the scenario. */
  private static void level(Calibration.Parameter p, List<Calibration.Finding> out) {
    if (!p.told()) {
      return;
    }
    String why =
        String.format(
            Locale.ROOT,
            "%.4g %s, 90 %% between %.4g and %.4g; the scenario says %.4g",
            p.value(),
            p.knob().unit(),
            p.low(),
            p.high(),
            p.before());
    switch (p.knob()) {
      case HEATER_POWER -> {
        if (p.high() < 0.9 * p.before()) {
          out.add(finding("heater_weak", "The heater gives less than it is rated for.", why));
        }
      }
      case HIVE_LOSS -> {
        if (p.low() > 1.2 * p.before()) {
          out.add(
              finding(
                  "hive_leaky",
                  "The hive loses more heat than its walls should: wet insulation, gaps or a draught.",
                  why));
        }
      }
      case BATTERY_CAPACITY -> {
        if (p.high() < 0.85 * p.before()) {
          out.add(
              finding(
                  "battery_aged", "The battery holds less than it is rated for: it is aged.", why));
        }
      }
      case BATTERY_RESISTANCE -> {
        if (p.low() > 1.5 * p.before()) {
          out.add(
              finding(
                  "battery_resistance",
                  "Battery, leads and clips resist more than they should: clean and tighten, then suspect the battery.",
                  why));
        }
      }
      case PANEL_FACTOR -> {
        if (p.high() < 0.85 * p.before()) {
          out.add(
              finding(
                  "panel_weak",
                  "The panel gives less than it is rated for: dirt, shade or tilt.",
                  why));
        }
      }
      default -> {}
    }
  }

  private static Calibration.Finding finding(String name, String text, String why) {
    return new Calibration.Finding(name, text, why);
  }
}

package org.broodbench.calibrate;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * What in a fit wants attention. A change between the halves counts where its 90 % interval leaves
 * none and it is large enough to matter. One change is told, since what is there shows through the
 * other knobs too; where another explains the log nearly as well, both are named. All bounds are
 * own choices.
 */
final class Alarms {
  /** A change that explains less of the best cause's is none. */
  private static final double LEAST = 0.5;

  /** A log does not tell causes apart that explain this share of what the told one does. */
  private static final double NEARLY = 0.8;

  /** What may have changed, what it is called, and what to look at. */
  private enum Cause {
    HEATER(
        "heater_weakening",
        "The heater gives less and less: look at plugs, fuse and element.",
        "a weaker heater (look at plugs, fuse and element)"),
    LOSS(
        "insulation_wet",
        "The hive loses more and more heat: look for wet insulation, a shifted lid, an open gap.",
        "more heat lost (look for wet insulation, a shifted lid, an open gap)"),
    FEWER(
        "colony_falling",
        "The colony makes less and less heat: it dwindles. Count the frames with bees, look for the queen, think of uniting.",
        "less heat from the colony (count the frames with bees, look for the queen)"),
    MORE(
        "colony_rising",
        "The colony makes more and more heat: time to open the next box, or to lower the set point.",
        "more heat from the colony (count the frames with bees: time for the next box, or a lower set point)"),
    LESS_LOSS(
        "",
        "",
        "less heat lost (walls that dried, a cover, narrower openings: see that none is blocked)"),
    BATTERY("battery_ageing", "The battery holds less and less.", "a battery that holds less"),
    PROBE("probe_moved", "", "a probe that reads otherwise (see that it hangs where it did)");

    private final String name;
    private final String text;
    private final String words;

    Cause(String name, String text, String words) {
      this.name = name;
      this.text = text;
      this.words = words;
    }

    boolean colder() {
      return this == HEATER || this == LOSS || this == FEWER;
    }

    boolean warmer() {
      return this == MORE || this == LESS_LOSS;
    }
  }

  private Alarms() {}

  static List<Calibration.Finding> of(
      List<Calibration.Parameter> parameters, List<Calibration.Trend> trends) {
    List<Calibration.Finding> out = new ArrayList<>();
    changed(trends, out);
    for (Calibration.Parameter p : parameters) {
      level(p, out);
    }
    return out;
  }

  /** What the change of a knob means; null for one that is too small to be told or to matter. */
  private static Cause cause(Calibration.Trend t) {
    if (t.knob().isOffset()) {
      boolean moved = Math.abs(t.change()) > 0.5 && t.low() * t.high() > 0;
      return moved ? Cause.PROBE : null;
    }
    boolean fell = t.high() < 1 && t.change() < 0.92;
    boolean rose = t.low() > 1 && t.change() > 1.08;
    return switch (t.knob()) {
      case HEATER_POWER -> fell ? Cause.HEATER : null;
      case HIVE_LOSS -> rose ? Cause.LOSS : fell ? Cause.LESS_LOSS : null;
      // openings hardly matter to the heat of a hive: a third is little
      case AIR_LEAKAGE ->
          rose && t.change() > 1.5
              ? Cause.LOSS
              : fell && t.change() < 0.67 ? Cause.LESS_LOSS : null;
      case COLONY_BEES -> fell ? Cause.FEWER : rose ? Cause.MORE : null;
      case BATTERY_CAPACITY -> fell ? Cause.BATTERY : null;
      case BATTERY_RESISTANCE -> rose && t.change() > 1.3 ? Cause.BATTERY : null;
      default -> null;
    };
  }

  private static void changed(List<Calibration.Trend> trends, List<Calibration.Finding> out) {
    Calibration.Trend told = null;
    Set<Cause> causes = EnumSet.noneOf(Cause.class);
    List<String> figures = new ArrayList<>();
    for (Calibration.Trend t : trends) {
      Cause c = cause(t);
      boolean first = told == null && (t.explains() >= LEAST || t.open());
      boolean nearly = told != null && (t.explains() >= NEARLY * told.explains() || t.open());
      if (c != null && (first || nearly)) {
        told = told == null ? t : told;
        causes.add(c);
        figures.add(figures(t));
      }
    }
    if (told == null) {
      return;
    }
    Cause best = cause(told);
    if (best != Cause.PROBE) {
      // shifts that nobody expects stay in the figures
      causes.remove(Cause.PROBE);
    }
    causes.removeIf(c -> c.colder() != best.colder() || c.warmer() != best.warmer());
    String why = String.join("; or ", figures);
    if (causes.size() > 1) {
      out.add(
          finding(
              best.colder() ? "hive_colder" : "hive_warmer",
              (best.colder() ? "The hive is colder" : "The hive is warmer")
                  + " for its weather than in the first half, and this log cannot tell why: "
                  + causes.stream().map(c -> c.words).collect(Collectors.joining(", or "))
                  + ".",
              why));
    } else if (best == Cause.PROBE) {
      out.add(
          finding(
              best.name,
              "The probe "
                  + told.knob().key().replace("_offset", "")
                  + " reads otherwise than in the first half: see that it hangs where it did, dry and out of the sun.",
              why));
    } else if (best != Cause.LESS_LOSS) {
      out.add(finding(best.name, best.text, why));
    }
  }

  private static String figures(Calibration.Trend t) {
    boolean shift = t.knob().isOffset();
    return String.format(
        Locale.ROOT,
        shift
            ? "%s: second half less first %+.1f K, 90 %% between %+.1f and %+.1f"
            : "%s: second half over first %.2f, 90 %% between %.2f and %.2f",
        t.knob().key(),
        t.change(),
        t.low(),
        t.high());
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

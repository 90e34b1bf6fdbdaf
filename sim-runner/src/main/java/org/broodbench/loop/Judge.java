package org.broodbench.loop;

import org.broodbench.rig.Requirement;
import org.broodbench.rig.Scenario;

/** Measures a run against one requirement. */
public final class Judge {
  private Judge() {}

  /**
   * A measured value.
   *
   * @param value in the unit of the requirement; not a number where nothing of the kind happened
   * @param atS when it was worst, s since the start; −1 where no moment applies
   */
  public record Measured(double value, double atS) {
    /** Whether it meets a requirement; what never happened does not miss one. */
    public boolean meets(Requirement r) {
      return Double.isNaN(value) || r.kind().met(value, r.limit());
    }
  }

  /** The value that a requirement is about. */
  public static Measured measure(Requirement.Kind kind, RunResult r, Scenario s) {
    return switch (kind) {
      case BROOD_IN_BAND -> {
        double below = s.run().bandLowC() - r.brood().low().value();
        double above = r.brood().high().value() - s.run().bandHighC();
        yield new Measured(
            r.brood().percentInBand(),
            above > below ? r.brood().high().atS() : r.brood().low().atS());
      }
      case SHORTEST_OFF ->
          new Measured(r.heaterCommanded().shortestOffS(), r.heaterCommanded().shortestOffAtS());
      case SHORTEST_ON ->
          new Measured(r.heaterCommanded().shortestOnS(), r.heaterCommanded().shortestOnAtS());
      case STARTS_PER_DAY -> new Measured(r.heaterCommanded().starts() / r.days(), -1);
      case LOWEST_SOC ->
          new Measured(100 * r.battery().lowestSoc().value(), r.battery().lowestSoc().atS());
      case HIGHEST_PAN -> new Measured(r.pan().value(), r.pan().atS());
      case HIGHEST_BROOD -> new Measured(r.brood().high().value(), r.brood().high().atS());
      case HIGHEST_CO2 -> new Measured(r.air().highCo2().value(), r.air().highCo2().atS());
      case LOWEST_HUMIDITY -> new Measured(r.air().lowRh().value(), r.air().lowRh().atS());
      case HOURS_CONDENSING -> new Measured(r.air().hoursCondensing(), -1);
      case HOURS_SHED -> new Measured(r.hoursShed(), r.firstShedAtS());
    };
  }
}

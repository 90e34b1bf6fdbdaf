package org.broodbench.rig;

/**
 * One requirement of a scenario.
 *
 * @param kind what is judged
 * @param limit the limit in the unit of the kind
 */
public record Requirement(Kind kind, double limit) {
  /** What can be required. */
  public enum Kind {
    /** Share of hours with the brood comb inside its band. */
    BROOD_IN_BAND("brood_in_band", "percent_of_hours", true),
    /** Shortest time between two runs of the heater. */
    SHORTEST_OFF("shortest_off", "s", true),
    /** Shortest run of the heater that no protection ended. */
    SHORTEST_ON("shortest_on", "s", true),
    /** Heater starts a day, mean over the run. */
    STARTS_PER_DAY("starts_per_day", "per_day", false),
    /** Lowest state of charge. */
    LOWEST_SOC("lowest_soc", "percent", true),
    /** Highest temperature of the thermal mass. */
    HIGHEST_PAN("highest_pan", "degC", false),
    /** Highest temperature of the brood comb. */
    HIGHEST_BROOD("highest_brood", "degC", false),
    /** Highest share of carbon dioxide at the brood, in volume. */
    HIGHEST_CO2("highest_co2", "percent", false),
    /** Lowest relative humidity at the brood. */
    LOWEST_HUMIDITY("lowest_humidity", "percent", true),
    /** Hours with water condensing inside. */
    HOURS_CONDENSING("hours_condensing", "h", false),
    /** Hours with the heater shed for want of charge. */
    HOURS_SHED("hours_shed", "h", false);

    private final String key;
    private final String unit;
    private final boolean atLeast;

    Kind(String key, String unit, boolean atLeast) {
      this.key = key;
      this.unit = unit;
      this.atLeast = atLeast;
    }

    /** Name in scenario files and results. */
    public String key() {
      return key;
    }

    /** Unit of value and limit in results. */
    public String unit() {
      return unit;
    }

    /** Whether the value must be at least the limit; otherwise at most. */
    public boolean atLeast() {
      return atLeast;
    }

    /** Whether a value meets a limit. */
    public boolean met(double value, double limit) {
      return atLeast ? value >= limit : value <= limit;
    }
  }
}

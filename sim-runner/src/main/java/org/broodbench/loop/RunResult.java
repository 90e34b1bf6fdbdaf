package org.broodbench.loop;

import java.util.List;
import java.util.Map;
import org.broodbench.hive.HeaterSpec;
import org.broodbench.hive.HiveLedger;
import org.broodbench.hive.HiveSection;
import org.broodbench.power.PowerLedger;
import org.broodbench.power.SupplyUse;
import org.broodbench.rig.ProbeSpec;

/**
 * What one run measured. Numbers that never came to be are not-a-number, times −1.
 *
 * @param days length, d
 * @param heaterCommanded the heater relay as commanded
 * @param heaterPowered the element as it drew power
 * @param fan the fan
 * @param earlyStops stops sooner than minimum on by their cause
 * @param brood temperatures of the brood comb
 * @param air humidity and carbon dioxide between the brood combs
 * @param battery battery
 * @param colony colony
 * @param pan highest temperature of the top of the thermal mass, which bees can touch, °C
 * @param plate highest temperature of the heater plate, °C
 * @param hot filling, plate and what bees touch against their limits
 * @param hoursShed time with the heater shed, h
 * @param sheds how often the heater was shed
 * @param firstShedAtS when it was shed first, s since the start; −1 if never
 * @param worst what stood when the brood was coldest
 * @param hive balances of heat, water and carbon dioxide
 * @param coldest the hive cut open when the brood was coldest; null if it never cooled, or where
 *     figures alone were kept
 * @param films water on every inner surface
 * @param ways heat by its ways out of the hive
 * @param probes what the temperature probes told against the truth
 * @param power balances of energy and charge
 * @param supply what the parts of the supply chain did
 * @param alarms alarms by first appearance
 * @param events everything that switched or happened; empty where figures alone were kept
 * @param life the colony day by day; empty where its numbers stay
 * @param trace rows by interval; null where none was asked for
 */
public record RunResult(
    double days,
    SwitchCount heaterCommanded,
    SwitchCount heaterPowered,
    SwitchCount fan,
    Map<String, Integer> earlyStops,
    Brood brood,
    Air air,
    BatteryUse battery,
    ColonyEnd colony,
    Extreme pan,
    Extreme plate,
    HotParts hot,
    double hoursShed,
    int sheds,
    double firstShedAtS,
    Moment worst,
    HiveLedger hive,
    HiveSection coldest,
    List<HiveSection.Film> films,
    List<HiveSection.Way> ways,
    List<ProbeTruth> probes,
    PowerLedger power,
    SupplyUse supply,
    List<AlarmSpan> alarms,
    List<EventRow> events,
    List<ColonyDay> life,
    Trace trace) {

  /** Temperatures of the brood comb: °C, hours and kelvin-hours. */
  public record Brood(
      double meanC,
      Extreme low,
      Extreme high,
      double hoursBelow,
      double hoursAbove,
      double degreeHoursBelow,
      double degreeHoursAbove,
      double percentInBand) {}

  /**
   * The heater's surfaces.
   *
   * @param filling highest temperature inside the thermal mass, °C
   * @param plateWM2 highest heat flux of the plate, W/m²
   * @param hoursPlateOver time with the plate above its limit, h
   * @param hoursContactOver time with what bees touch above its limit, h
   * @param limits what they were judged by
   */
  public record HotParts(
      Extreme filling,
      Extreme plateWM2,
      double hoursPlateOver,
      double hoursContactOver,
      HeaterSpec.Limits limits) {
    /** Whether the plate stayed within its limits of temperature and flux. */
    public boolean plateWithin() {
      return hoursPlateOver == 0 && !(plateWM2.value() > limits.plateWM2());
    }

    /** Whether what bees and comb touch stayed within its limit. */
    public boolean contactWithin() {
      return hoursContactOver == 0;
    }
  }

  /**
   * One temperature probe, before noise, offset and rounding.
   *
   * @param role which reading it feeds
   * @param place where it hangs
   * @param meanC mean of what it shows, °C
   * @param aboveBroodK that less the mean of the brood comb, K
   * @param mostBehindK furthest that it lagged behind its own place, K
   */
  public record ProbeTruth(
      ProbeSpec.Role role,
      ProbeSpec.Place place,
      double meanC,
      double aboveBroodK,
      double mostBehindK) {}

  /** Air between the brood combs, percent and hours. */
  public record Air(
      double meanRhPercent,
      Extreme lowRh,
      double meanCo2Percent,
      Extreme highCo2,
      double hoursCondensing) {}

  /** The battery; days since full are not a number when it never was. */
  public record BatteryUse(
      Extreme lowestSoc,
      Extreme lowestV,
      double finalSoc,
      double fullCycles,
      double daysSinceFull,
      boolean wentDead) {}

  /** The colony at start and end. */
  public record ColonyEnd(
      double beesStart,
      double beesEnd,
      double broodStart,
      double broodEnd,
      double lostToCold,
      double lostToHeat,
      double feedEatenG) {}

  /**
   * What stood at a moment.
   *
   * @param atS when, s since the start
   * @param heaterReason reason code of the heater
   * @param shedLevel shed level
   * @param heaterOn whether the heater ran
   * @param heaterOnForS for how long it had been running, s
   * @param dead whether the bus was dead
   * @param outdoorC outdoor air, °C
   * @param sinceS since when the reason had stood, s since the start
   * @param heldLeftS what was left of the time for which the reason holds the heater as it is, s; 0
   *     where none is known
   */
  public record Moment(
      double atS,
      int heaterReason,
      int shedLevel,
      boolean heaterOn,
      double heaterOnForS,
      boolean dead,
      double outdoorC,
      double sinceS,
      double heldLeftS) {}
}

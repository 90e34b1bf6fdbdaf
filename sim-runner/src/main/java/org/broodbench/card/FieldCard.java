package org.broodbench.card;

import java.util.List;
import java.util.Optional;
import org.broodbench.rig.Scenario;
import org.broodbench.study.BatteryAlone;
import org.broodbench.study.Outlook;

/**
 * What hangs on the hive.
 *
 * @param scenario the rig
 * @param weather what the season was taken from, in words
 * @param days length of the season
 * @param settings what to key in
 * @param expected gauges and counters by sort of day
 * @param tonight answers by volts at dusk and lowest temperature, a list a low, colder first
 * @param afterHarvest how long heat lasts without panel and mains
 * @param signs what is odd and what calls for a hand
 * @param notBack what does not come back by itself once it has opened
 * @param plan what comes when in the season; empty where none was asked for
 */
public record FieldCard(
    Scenario scenario,
    String weather,
    int days,
    List<KeyedIn> settings,
    List<Expectation> expected,
    List<List<Tonight.Answer>> tonight,
    List<AfterHarvest> afterHarvest,
    List<Sign> signs,
    List<String> notBack,
    Optional<Plan> plan) {
  /** The same with a plan of the season. */
  public FieldCard withPlan(Plan found) {
    return new FieldCard(
        scenario,
        weather,
        days,
        settings,
        expected,
        tonight,
        afterHarvest,
        signs,
        notBack,
        Optional.of(found));
  }

  /**
   * The season.
   *
   * @param outlook what becomes of the colony
   * @param alone from when on the battery does without mains
   */
  public record Plan(Outlook outlook, BatteryAlone alone) {}

  /**
   * A setting.
   *
   * @param label what it is
   * @param metric value and unit
   * @param us value and unit in US units; the same where there is no other
   */
  public record KeyedIn(String label, String metric, String us) {}

  /**
   * From dusk of a typical night on, no harvest, in the same weather day after day.
   *
   * @param sort sort of day
   * @param dusk charge at that dusk, 0 to 1
   * @param heatH hours until the heat is shed, over the heat losses; not a number where it lasts
   *     longer than looked at
   * @param fullH of these, hours at the set point itself: until it is lowered to spare the battery
   * @param boardH hours until the controller itself has no power
   * @param lookedH how long was looked at
   */
  public record AfterHarvest(
      Expectation.Sort sort, double dusk, Range heatH, Range fullH, Range boardH, double lookedH) {}

  /** A line of the table of signs. */
  public record Sign(String gauge, String odd, String actNow, String then) {}
}

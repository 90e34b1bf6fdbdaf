package org.broodbench.study;

import java.util.List;
import java.util.Optional;
import org.broodbench.loop.RunResult;
import org.broodbench.rig.Scenario;

/**
 * A scenario run at the three published heat losses of small clusters, and its two baselines.
 *
 * @param scenario what was run
 * @param weather the weather that it was run in
 * @param main at the scenario's own value
 * @param lowLoss at the lowest published value
 * @param highLoss at the highest published value
 * @param noHeat the same hive with the heater unplugged
 * @param insulationOnly the heater unplugged and 50 mm of insulation added all round
 * @param requirements judged over the three
 * @param assumed what was assumed
 * @param flags things that the keeper should know about the run as a whole
 * @param remedies single changes that help, where something was missed and they were searched for
 * @param outlook what becomes of the colony, where it was asked for
 * @param sure what an ensemble over weather and uncertain numbers showed; empty where none was
 *     asked for
 */
public record Outcome(
    Scenario scenario,
    WeatherNote weather,
    RunResult main,
    RunResult lowLoss,
    RunResult highLoss,
    RunResult noHeat,
    RunResult insulationOnly,
    List<JudgedRequirement> requirements,
    List<String> assumed,
    List<String> flags,
    RemedySearch remedies,
    Optional<Outlook> outlook,
    Optional<Sure> sure) {
  /** Without an outlook. */
  public Outcome(
      Scenario scenario,
      WeatherNote weather,
      RunResult main,
      RunResult lowLoss,
      RunResult highLoss,
      RunResult noHeat,
      RunResult insulationOnly,
      List<JudgedRequirement> requirements,
      List<String> assumed,
      List<String> flags,
      RemedySearch remedies) {
    this(
        scenario,
        weather,
        main,
        lowLoss,
        highLoss,
        noHeat,
        insulationOnly,
        requirements,
        assumed,
        flags,
        remedies,
        Optional.empty(),
        Optional.empty());
  }

  /** Whether every requirement is met. */
  public boolean met() {
    return requirements.stream().allMatch(JudgedRequirement::met);
  }

  /** The same with what came of a search for remedies. */
  public Outcome withRemedies(RemedySearch found) {
    return with(found, outlook, sure);
  }

  /** The same with an outlook. */
  public Outcome withOutlook(Outlook found) {
    return with(remedies, Optional.of(found), sure);
  }

  /** The same with what an ensemble showed. */
  public Outcome withSure(Sure found) {
    return with(remedies, outlook, Optional.of(found));
  }

  private Outcome with(
      RemedySearch otherRemedies, Optional<Outlook> otherOutlook, Optional<Sure> otherSure) {
    return new Outcome(
        scenario,
        weather,
        main,
        lowLoss,
        highLoss,
        noHeat,
        insulationOnly,
        requirements,
        assumed,
        flags,
        otherRemedies,
        otherOutlook,
        otherSure);
  }

  /**
   * The weather of a run.
   *
   * @param source what it is, in words
   * @param format id of the file format, or "generated"
   * @param filledHours hours that were missing and filled
   * @param warnings what its reader had to say
   */
  public record WeatherNote(
      String source, String format, double filledHours, List<String> warnings) {}
}

package org.broodbench.calibrate;

import java.util.List;
import org.broodbench.rig.Scenario;

/**
 * What a log says.
 *
 * @param log the log, cleaned
 * @param logName its name for people
 * @param scenario the scenario that it was held against, in the log's time
 * @param relay how the heater's relay is known
 * @param parameters the knobs, those that shift a reading last
 * @param correlation between the knobs in their order
 * @param channels what was compared
 * @param heldOut how the last third came out
 * @param starts sums of squares that the fits from several starts ended at
 * @param misfit why this log does not look like this hive; empty where it does
 * @param trend the same knobs in the first and the second half
 * @param alarms what wants attention
 * @param advice what to do next
 * @param conform the log's decisions against the reference; null where the log has none
 * @param readings of a log written by hand, each with its range; empty for others
 * @param notes what was done to the log, where the weather came from
 */
public record Calibration(
    FieldLog log,
    String logName,
    Scenario scenario,
    Relay relay,
    List<Parameter> parameters,
    double[][] correlation,
    List<Channel> channels,
    HeldOut heldOut,
    double[] starts,
    List<String> misfit,
    List<Trend> trend,
    List<Finding> alarms,
    List<Advised> advice,
    Decisions conform,
    List<Reading> readings,
    List<String> notes) {

  /** Copies the lists. */
  public Calibration {
    parameters = List.copyOf(parameters);
    channels = List.copyOf(channels);
    misfit = List.copyOf(misfit);
    trend = List.copyOf(trend);
    alarms = List.copyOf(alarms);
    advice = List.copyOf(advice);
    readings = List.copyOf(readings);
    notes = List.copyOf(notes);
  }

  /** Whether the log looks like the hive of the scenario. */
  public boolean fits() {
    return misfit.isEmpty();
  }

  /**
   * One knob.
   *
   * @param before the scenario's value
   * @param value the best value
   * @param low lower end of its 90 % interval
   * @param high upper end
   * @param z best value in units of the prior
   * @param sigma standard deviation in units of the prior: 1 where the log says nothing
   * @param told whether the log tells it
   * @param want what to log so that it is told; empty where it is
   */
  public record Parameter(
      Knob knob,
      double before,
      double value,
      double low,
      double high,
      double z,
      double sigma,
      boolean told,
      String want) {}

  /**
   * A reading written by hand.
   *
   * @param low lower end of what is to be expected in that weather, 5 % of the hives below
   * @param high upper end
   * @param mark expected, odd or alarming
   */
  public record Reading(
      long epochS, LogColumn column, double value, double low, double high, String mark) {}

  /**
   * A compared column.
   *
   * @param epochS middles of the bins
   * @param measured means of the log less the fitted offset
   * @param simulated means of the simulation
   * @param rms root mean square of the deviations
   * @param sigma scatter that the fit counted with
   * @param tauBins bins from one independent deviation to the next
   * @param lagOne autocorrelation of neighbouring deviations
   */
  public record Channel(
      LogColumn column,
      long[] epochS,
      double[] measured,
      double[] simulated,
      double rms,
      double sigma,
      double tauBins,
      double lagOne) {}

  /**
   * The last third, predicted by a fit to what came before.
   *
   * @param fromS where it begins
   * @param rmse root mean square error, by compared column
   * @param rmseK of all temperatures inside, K; not a number where there is none
   */
  public record HeldOut(long fromS, double[] rmse, double rmseK) {}

  /**
   * How the relay is known.
   *
   * @param how in words
   * @param confidence share of the steps whose state is likely right, 0.5 to 1
   */
  public record Relay(String how, double confidence) {}

  /**
   * A knob in the halves of the log, if it were what changed.
   *
   * @param first value in the first half
   * @param second value in the second half
   * @param change second over first; of a shift second less first
   * @param low lower end of its 90 % interval
   * @param high upper end
   * @param explains how much of what the fit leaves over it explains, as a share of what the best
   *     cause does
   * @param open whether it may be the cause for all that: derivatives put it first, and the
   *     simulation did not follow them
   */
  public record Trend(
      Knob knob,
      double first,
      double second,
      double change,
      double low,
      double high,
      double explains,
      boolean open) {}

  /**
   * A sentence for the keeper.
   *
   * @param name for programs
   * @param text what it is
   * @param why the figures behind it
   */
  public record Finding(String name, String text, String why) {}

  /**
   * A figure with the span of the hives that the log allows.
   *
   * @param best for the best fit
   */
  public record Range(double best, double low, double high) {}

  /**
   * What a change would have done over the weather of the log, with the controller in the loop.
   *
   * @param name for programs
   * @param text for the keeper, with the figures
   * @param why what the figures rest on, or empty
   * @param heaterWhDay heat more, Wh a day
   * @param bandPoints time with the nest at or above the band more, points of a hundred
   * @param chargePoints lowest charge higher, points of a hundred
   */
  public record Advised(
      String name,
      String text,
      String why,
      Range heaterWhDay,
      Range bandPoints,
      Range chargePoints) {}

  /**
   * Heater commands of the log against the reference.
   *
   * @param rows rows judged
   * @param startsLogged heater starts in the log
   * @param startsReference with the reference core on the same readings
   * @param differedH hours of disagreements that lasted longer than a log's coarseness explains
   * @param differences what differs, in words; empty for nothing
   * @param rests what could not be judged, or empty
   * @param toleranceMin how long a disagreement may last, min
   */
  public record Decisions(
      long rows,
      int startsLogged,
      int startsReference,
      double differedH,
      List<String> differences,
      String rests,
      double toleranceMin) {
    /** Copies the list. */
    public Decisions {
      differences = List.copyOf(differences);
    }

    /** What differs, or that nothing does; what could not be judged. */
    public List<String> words() {
      List<String> words = new java.util.ArrayList<>(differences);
      if (words.isEmpty()) {
        words.add(
            String.format(
                java.util.Locale.ROOT,
                "Log and reference never disagree for longer than %.0f min, and no pause and no run is shorter than the settings allow.",
                toleranceMin));
      }
      if (!rests.isEmpty()) {
        words.add(rests);
      }
      return words;
    }
  }
}

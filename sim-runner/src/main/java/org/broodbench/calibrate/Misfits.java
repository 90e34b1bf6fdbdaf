package org.broodbench.calibrate;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Why a log does not look like the hive of a scenario. The bounds are own choices: wide enough that
 * hives of the right kind pass, whatever the guesses in their scenario.
 */
final class Misfits {
  /** No knob of the right hive is so many standard deviations of its prior from its middle. */
  private static final double FAR = 3.3;

  /** Nor all of them together: Σz² over their number. */
  private static final double FAR_TOGETHER = 2.5;

  /** Means inside the hive that the best fit still misses by more than this, K. */
  private static final double OFF_K = 1.5;

  /** A prediction that is worse than this has not caught the hive, K. */
  private static final double WRONG_K = 2.5;

  private Misfits() {}

  static List<String> of(
      List<Calibration.Parameter> parameters,
      List<Calibration.Channel> channels,
      Calibration.HeldOut heldOut) {
    List<String> out = new ArrayList<>();
    double sum = 0;
    for (Calibration.Parameter p : parameters) {
      sum += p.z() * p.z();
      if (Math.abs(p.z()) > FAR) {
        out.add(
            String.format(
                Locale.ROOT,
                "%s would have to be %.3g %s instead of %.3g: %.1f standard deviations of what is usual",
                p.knob().key(),
                p.value(),
                p.knob().unit(),
                p.before(),
                Math.abs(p.z())));
      }
    }
    if (sum > FAR_TOGETHER * parameters.size()) {
      out.add(
          String.format(
              Locale.ROOT,
              "all figures of the scenario together would have to be %.1f times as far off as usual",
              Math.sqrt(sum / parameters.size())));
    }
    for (Calibration.Channel c : channels) {
      if (c.column().inside() && c.rms() > OFF_K) {
        out.add(
            String.format(
                Locale.ROOT,
                "%s: the best fit still misses it by %.1f K",
                c.column().key(),
                c.rms()));
      }
    }
    // a row a day is predicted by straight lines through few readings
    double wrongK = channels.isEmpty() ? 2 * WRONG_K : WRONG_K;
    if (heldOut.rmseK() > wrongK) {
      out.add(
          String.format(
              Locale.ROOT,
              "the last third, predicted from what came before, came out %.1f K off",
              heldOut.rmseK()));
    }
    return out;
  }
}

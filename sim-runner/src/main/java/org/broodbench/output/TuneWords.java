package org.broodbench.output;

import java.util.Locale;
import org.broodbench.tune.Aim;

/** How scores are told. */
final class TuneWords {
  private TuneWords() {}

  static String head(Aim aim) {
    return switch (aim) {
      case OUT_OF_BAND -> "out of band, h";
      case ENERGY -> "energy, Wh";
      case STARTS -> "starts";
      case BATTERY_WEAR -> "battery wear, %";
      case LOSS_OF_LOAD -> "heat shed, h";
      case BROOD_LOST -> "brood lost, cells";
    };
  }

  /** A sentence about trade-offs that did not hold; empty for none. */
  static String refused(int count) {
    return count == 0
        ? ""
        : " "
            + count
            + (count == 1 ? " trade-off that looked" : " trade-offs that looked")
            + " better did not hold on seasons that the search had not seen.";
  }

  static String score(Aim aim, double x) {
    return String.format(
        Locale.ROOT,
        switch (aim) {
          case BATTERY_WEAR -> "%.2f";
          case OUT_OF_BAND, LOSS_OF_LOAD -> "%.1f";
          default -> "%.0f";
        },
        x);
  }
}

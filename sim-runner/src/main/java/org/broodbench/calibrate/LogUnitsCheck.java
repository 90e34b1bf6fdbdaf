package org.broodbench.calibrate;

import java.util.Arrays;
import java.util.Locale;

/** Tells Fahrenheit read as Celsius, and the other way round, by what a hive can have. */
final class LogUnitsCheck {
  private LogUnitsCheck() {}

  /**
   * Looks at a column of temperatures in °C, as the mapping had them.
   *
   * @throws LogRefused where they are of the other scale
   */
  static void temperature(LogColumn c, double[] celsius) {
    double[] v = Arrays.stream(Robust.there(celsius)).filter(x -> x != 85 && x != -127).toArray();
    if (v.length < 3) {
      return;
    }
    double middle = Robust.median(v);
    double high = Robust.quantile(v, 0.98);
    double low = Robust.quantile(v, 0.02);
    // combs melt at 62 °C and no air shade is at 50 °C; a pan may be hot, but not for half its time
    boolean tooHot = c == LogColumn.OUTDOOR ? high > 50 : middle > 62;
    if (tooHot && (middle - 32) / 1.8 < 62 && (low - 32) / 1.8 > -60) {
      throw new LogRefused(
          0,
          c.key(),
          String.format(
              Locale.ROOT,
              "values around %.1f, read as degrees Celsius: as Fahrenheit they are %.1f degC",
              middle,
              (middle - 32) / 1.8),
          "the unit that the logger writes",
          "Set unit = \"degF\" for this column in [[log.column]].");
    }
    double written = middle * 1.8 + 32;
    // a brood nest or pan read as °F from Celsius figures comes out near freezing and hardly varies
    boolean tooCold =
        (c == LogColumn.BROOD_A || c == LogColumn.BROOD_B)
            && middle < 4
            && written > 20
            && high < 8;
    if (tooCold && low > -15) {
      throw new LogRefused(
          0,
          c.key(),
          String.format(
              Locale.ROOT,
              "values around %.1f degC: written were about %.1f, which is a brood nest in Celsius",
              middle,
              written),
          "the unit that the logger writes",
          "If the column is in Fahrenheit, no brood is there; else set unit = \"degC\".");
    }
  }
}

package org.broodbench.audit;

import java.util.Locale;

/** Texts with numbers put in, the same on every machine. */
final class Words {
  private Words() {}

  static String of(String pattern, Object... values) {
    return String.format(Locale.ROOT, pattern, values);
  }

  /** A number as short as it may be written with some decimals: 12.5, 40, 0.25. */
  static String number(double value, int decimals) {
    String text = of("%." + decimals + "f", value);
    return decimals == 0 ? text : text.replaceAll("0+$", "").replaceAll("\\.$", "");
  }

  static String set(String key, double value, int decimals, String unit) {
    return key + "=" + number(value, decimals) + " " + unit;
  }

  /** Up to the next multiple of a step. */
  static double up(double value, double step) {
    return Math.ceil(value / step - 1e-9) * step;
  }

  /** Down to the last multiple of a step. */
  static double down(double value, double step) {
    return Math.floor(value / step + 1e-9) * step;
  }
}

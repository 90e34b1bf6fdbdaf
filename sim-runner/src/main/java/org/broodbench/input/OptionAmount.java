package org.broodbench.input;

import java.util.List;
import java.util.Locale;
import org.broodbench.matter.Dimension;

/** Quantities that stand in options of the command line, with or without their unit. */
public final class OptionAmount {
  private OptionAmount() {}

  /**
   * Reads one.
   *
   * @param usual unit of a bare number
   * @param problems takes what is wrong; the value is then not a number
   * @return value in the base unit of the dimension
   */
  public static double read(
      String option,
      String text,
      Dimension dimension,
      String usual,
      double low,
      double high,
      List<Problem> problems) {
    boolean bare = text.strip().matches("[+-]?[\\d.]+");
    String allowed = String.format(Locale.ROOT, "%.4g to %.4g %s", low, high, usual);
    try {
      double value = Quantity.parse(bare ? text + " " + usual : text, dimension).base();
      if (value >= low && value <= high) {
        return value;
      }
      problems.add(new Problem(option, 0, 0, "", text, allowed, ""));
    } catch (QuantityRefused e) {
      problems.add(new Problem(option, 0, 0, "", text, e.allowed(), e.hint()));
    }
    return Double.NaN;
  }
}

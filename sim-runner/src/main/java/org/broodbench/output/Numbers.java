package org.broodbench.output;

/** Numbers as text, the same on every machine and in every locale. */
final class Numbers {
  private static final long[] POWERS = {1, 10, 100, 1000, 10_000, 100_000};

  private Numbers() {}

  /**
   * Appends a number with at most some decimals, without trailing zeros; nothing where it is not a
   * number.
   */
  static void append(StringBuilder out, double value, int decimals) {
    if (Double.isNaN(value)) {
      return;
    }
    long scaled = Math.round(value * POWERS[decimals]);
    if (scaled < 0) {
      out.append('-');
      scaled = -scaled;
    }
    long whole = scaled / POWERS[decimals];
    long part = scaled % POWERS[decimals];
    out.append(whole);
    if (part != 0) {
      out.append('.');
      int left = decimals;
      while (left > 0) {
        left--;
        out.append((char) ('0' + part / POWERS[left]));
        part %= POWERS[left];
        if (part == 0) {
          break;
        }
      }
    }
  }
}

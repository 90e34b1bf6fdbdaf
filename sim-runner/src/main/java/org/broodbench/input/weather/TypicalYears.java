package org.broodbench.input.weather;

/**
 * Typical years take their months from different years. Their rows are put on one calendar without
 * a 29 February; the year number is a label alone.
 */
final class TypicalYears {
  /** Not a leap year; own choice. */
  static final int LABEL = 2001;

  private TypicalYears() {}

  /** Seconds since 1970 of a month, day, hour (24 allowed) and minute of the label year. */
  static long stamp(int month, int day, int hour, int minute) {
    return Stamps.epochS(LABEL, month, day, hour, minute, 0);
  }
}

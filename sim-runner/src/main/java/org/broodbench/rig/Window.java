package org.broodbench.rig;

/**
 * The simulated time, half-open.
 *
 * @param fromEpochS start, seconds since 1970-01-01T00:00Z
 * @param days whole days
 */
public record Window(long fromEpochS, int days) {
  /** End, seconds since 1970-01-01T00:00Z; not part of the window. */
  public long toEpochS() {
    return fromEpochS + 86_400L * days;
  }
}

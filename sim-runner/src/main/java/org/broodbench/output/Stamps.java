package org.broodbench.output;

import java.time.Instant;

/** Times of a run as ISO 8601 in UTC. */
final class Stamps {
  private Stamps() {}

  /** The stamp of a time of the run, to the whole second. */
  static String of(long fromEpochS, double atS) {
    return Instant.ofEpochSecond(fromEpochS + (long) atS).toString();
  }
}

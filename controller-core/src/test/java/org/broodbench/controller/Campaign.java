package org.broodbench.controller;

/** How much of the slow campaigns is done: all, or a share for a machine with little time. */
final class Campaign {
  private Campaign() {}

  /**
   * The share of a whole campaign that the system property {@code broodbench.campaign.percent} asks
   * for, one at least; all of it where the property is not set.
   */
  static long share(long whole) {
    return Math.max(1, whole * Integer.getInteger("broodbench.campaign.percent", 100) / 100);
  }
}

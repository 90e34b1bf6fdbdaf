package org.broodbench.controller;

/** How much of the slow campaigns is done: all, or a share for a machine with little time. */
final class Campaign {
  private Campaign() {}

  /**
   * The share of a whole campaign that the system property {@code broodbench.campaign.percent} asks
   * for; all of it where it is not set.
   */
  static long share(long whole) {
    return whole * Integer.getInteger("broodbench.campaign.percent", 100) / 100;
  }
}

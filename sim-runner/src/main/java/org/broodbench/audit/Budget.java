package org.broodbench.audit;

import java.util.List;

/**
 * What a day takes and gives over a stretch of weather, at the bus, Wh a day.
 *
 * @param stretch name of the weather
 * @param days its length
 * @param takes what takes it
 * @param leastWh all of it in the favourable case of the heat
 * @param ownWh at the scenario's own heat loss
 * @param mostWh in the unfavourable case
 * @param panelWh what the panel gives behind its charge controller
 * @param shoreWh what the mains charger gives
 * @param gives the arithmetic of both
 */
public record Budget(
    String stretch,
    int days,
    List<Take> takes,
    double leastWh,
    double ownWh,
    double mostWh,
    double panelWh,
    double shoreWh,
    String gives) {
  /** Copies the list. */
  public Budget {
    takes = List.copyOf(takes);
  }

  /**
   * One taker.
   *
   * @param name what takes it
   * @param whDay Wh a day at the scenario's own heat loss
   * @param arithmetic with the numbers put in
   */
  public record Take(String name, double whDay, String arithmetic) {}

  /** Panel and charger, Wh a day. */
  public double givesWh() {
    return panelWh + shoreWh;
  }
}

package org.broodbench.power;

/**
 * How a battery is charged, at 25 °C and for the whole bank.
 *
 * @param absorptionV volts of bulk and absorption, V
 * @param floatV volts of float, V
 * @param compensationVPerK change of both with battery temperature, V/K, not positive
 * @param absorptionS longest absorption, s
 * @param tailA charge current that ends absorption, A
 * @param rebulkV volts under which charging starts over, V
 * @param rebulkDelayS time under them, s
 */
public record ChargeProfile(
    double absorptionV,
    double floatV,
    double compensationVPerK,
    double absorptionS,
    double tailA,
    double rebulkV,
    double rebulkDelayS) {

  /**
   * The usual profile of a chemistry: float 13.5 V (flooded), 13.6 (glass mat, gel, lithium) on a
   * 12 V bank; −30 mV/K flooded, −24 glass mat, −18 gel, none for lithium (data sheets and manuals;
   * −5, −4 and −3 mV a cell); absorption of 2 h, 30 min for lithium; tail 2 % of the capacity (from
   * memory); 13.2 V for 30 min starts over (a manual).
   */
  public static ChargeProfile usual(
      Chemistry chemistry, double absorptionV, double capacityAh, double nominalV) {
    double scale = nominalV / 12;
    return new ChargeProfile(
        absorptionV,
        scale * (chemistry == Chemistry.FLOODED ? 13.5 : 13.6),
        scale
            * switch (chemistry) {
              case FLOODED -> -0.030;
              case AGM -> -0.024;
              case GEL -> -0.018;
              case LFP -> 0;
            },
        chemistry.leadAcid() ? 7200 : 1800,
        0.02 * capacityAh,
        scale * 13.2,
        1800);
  }
}

package org.broodbench.rig;

/**
 * How a run is carried out and written.
 *
 * @param seed seed of all noise
 * @param stepS longest step of the plant, s
 * @param traceIntervalS time between rows of the trace, s; a multiple of 10
 * @param bandLowC lower end of the brood band, °C
 * @param bandHighC upper end of the brood band, °C
 * @param visitEveryS how often the keeper comes, s
 */
public record RunSpec(
    long seed,
    double stepS,
    int traceIntervalS,
    double bandLowC,
    double bandHighC,
    double visitEveryS) {
  /** With a keeper who comes once a day. */
  public RunSpec(long seed, double stepS, int traceIntervalS, double bandLowC, double bandHighC) {
    this(seed, stepS, traceIntervalS, bandLowC, bandHighC, 86_400);
  }
}

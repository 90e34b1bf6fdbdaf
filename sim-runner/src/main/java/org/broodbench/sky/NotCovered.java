package org.broodbench.sky;

/** A weather record does not hold what a window of time asks for. */
public final class NotCovered extends RuntimeException {
  private static final long serialVersionUID = 1L;

  private final long fromEpochS;
  private final long toEpochS;
  private final long seriesFromEpochS;
  private final long seriesToEpochS;
  private final Variable missing;

  NotCovered(
      String message, long fromEpochS, long toEpochS, WeatherSeries series, Variable missing) {
    super(message);
    this.fromEpochS = fromEpochS;
    this.toEpochS = toEpochS;
    this.seriesFromEpochS = series.startEpochS();
    this.seriesToEpochS = series.endEpochS();
    this.missing = missing;
  }

  /** Start of what was asked for. */
  public long fromEpochS() {
    return fromEpochS;
  }

  /** End of what was asked for. */
  public long toEpochS() {
    return toEpochS;
  }

  /** Start of what the series covers. */
  public long seriesFromEpochS() {
    return seriesFromEpochS;
  }

  /** End of what the series covers. */
  public long seriesToEpochS() {
    return seriesToEpochS;
  }

  /** The variable that is missing inside the window, or null where the window reaches beyond. */
  public Variable missing() {
    return missing;
  }
}

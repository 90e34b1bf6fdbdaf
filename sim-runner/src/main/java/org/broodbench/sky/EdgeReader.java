package org.broodbench.sky;

/**
 * One variable of a series along time: values at their instants, straight lines in between, the
 * nearest value before the first and after the last and beside a missing one; NaN where both
 * neighbours are missing.
 */
final class EdgeReader {
  private final WeatherSeries series;
  private final Variable variable;
  private final double firstInstant;

  EdgeReader(WeatherSeries series, Variable variable) {
    this.series = series;
    this.variable = variable;
    firstInstant = series.startEpochS() + series.stand(variable).centreS(series.stepS());
  }

  double at(double epochS) {
    double x = (epochS - firstInstant) / series.stepS();
    int last = series.n() - 1;
    if (x <= 0) {
      return series.value(variable, 0);
    }
    if (x >= last) {
      return series.value(variable, last);
    }
    int i = (int) x;
    double a = series.value(variable, i);
    double b = series.value(variable, i + 1);
    if (Double.isNaN(a)) {
      return b;
    }
    return Double.isNaN(b) ? a : a + (x - i) * (b - a);
  }
}

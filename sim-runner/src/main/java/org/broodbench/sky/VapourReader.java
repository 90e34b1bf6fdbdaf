package org.broodbench.sky;

import org.broodbench.matter.MoistAir;

/**
 * Vapour pressure along time. Relative humidity is turned into vapour pressure at its own instants
 * and that is joined by straight lines, since vapour changes slowly where relative humidity swings
 * with the temperature.
 *
 * <p>Where there is no humidity the dew point is taken as the lowest temperature within 12 hours
 * either side (FAO Irrigation and Drainage Paper 56, equation 48, for the day around the instant).
 */
final class VapourReader {
  private static final double HALF_DAY_S = 43200;

  private final WeatherSeries series;
  private final EdgeReader air;
  private final double firstInstant;
  private boolean guessed;

  private int cached = -1;
  private double cachedPa;
  private double cachedNextPa;

  VapourReader(WeatherSeries series, EdgeReader air) {
    this.series = series;
    this.air = air;
    firstInstant = series.startEpochS() + series.stand(Variable.HUMIDITY).centreS(series.stepS());
  }

  double at(double epochS) {
    double x = (epochS - firstInstant) / series.stepS();
    int last = series.n() - 1;
    if (x <= 0 || last == 0) {
      return recordPa(0);
    }
    if (x >= last) {
      return recordPa(last);
    }
    int i = (int) x;
    if (i != cached) {
      cachedPa = i == cached + 1 && cached >= 0 ? cachedNextPa : recordPa(i);
      cachedNextPa = recordPa(i + 1);
      cached = i;
    }
    return cachedPa + (x - i) * (cachedNextPa - cachedPa);
  }

  private double recordPa(int i) {
    double t = firstInstant + (double) i * series.stepS();
    double percent = series.value(Variable.HUMIDITY, i);
    if (!Double.isNaN(percent)) {
      return Math.max(percent, 1) / 100 * MoistAir.saturationWaterPa(air.at(t));
    }
    guessed = true;
    double lowest = air.at(t);
    for (double d = -HALF_DAY_S; d <= HALF_DAY_S; d += series.stepS()) {
      double c = air.at(t + d);
      if (c < lowest) {
        lowest = c;
      }
    }
    return MoistAir.saturationWaterPa(lowest);
  }

  boolean guessed() {
    return guessed;
  }
}

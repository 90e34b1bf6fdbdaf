package org.broodbench.sky;

/**
 * A series day by day, of whole UTC days; NaN where a day has no value of a kind.
 *
 * @param firstEpochDay first whole day
 * @param meanC mean temperature
 * @param lowC lowest
 * @param highC highest
 * @param ghiKWhM2 global irradiation
 * @param precipMm precipitation
 * @param windMS mean wind as the series has it
 */
record DailySums(
    long firstEpochDay,
    double[] meanC,
    double[] lowC,
    double[] highC,
    double[] ghiKWhM2,
    double[] precipMm,
    double[] windMS) {

  static DailySums of(WeatherSeries w) {
    long first = -Math.floorDiv(-(w.startEpochS() - w.stepS() / 2), 86400L);
    int n = Math.max(0, (int) (Math.floorDiv(w.endEpochS() + w.stepS() / 2, 86400L) - first));
    DailySums d =
        new DailySums(
            first,
            new double[n],
            new double[n],
            new double[n],
            new double[n],
            new double[n],
            new double[n]);
    for (int k = 0; k < n; k++) {
      double at = (double) ((first + k) * 86400 - w.startEpochS()) / w.stepS();
      int a = Math.max(0, (int) Math.round(at));
      int b = Math.min(w.n(), (int) Math.round(at + 86400.0 / w.stepS()));
      WindowStats s = WindowStats.of(w, a, b);
      d.meanC[k] = s.meanAirC();
      d.lowC[k] = s.minAirC();
      d.highC[k] = s.maxAirC();
      d.ghiKWhM2[k] = s.ghiKWhM2Day();
      d.precipMm[k] = s.precipMm();
      d.windMS[k] = s.meanWindMS();
    }
    return d;
  }

  int days() {
    return meanC.length;
  }
}

package org.broodbench.stress;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;

/**
 * What one run of one week under one fault gave; all that rows are made of. It can be written as a
 * line and read back without losing a bit.
 *
 * @param values measured for each requirement in the scenario's order; not a number where nothing
 *     of the kind happened
 * @param failedAtS first time of each {@link Failing} since the onset, s; not a number if never
 * @param alarmAtS first time that each alarm was raised since the onset, s; not a number if never
 * @param harmAtS when harm was done, s since the onset; not a number if never
 * @param gauge what the display showed at the visit
 * @param figures further figures
 */
record Shot(
    List<Double> values,
    List<Double> failedAtS,
    List<Double> alarmAtS,
    double harmAtS,
    Gauge gauge,
    Figures figures) {
  /**
   * Figures of the whole week.
   *
   * @param inBandPercent share of hours with the brood comb in band
   * @param broodLowC lowest of the brood comb, °C
   * @param broodHighC highest, °C
   * @param lowestSocPercent lowest state of charge
   * @param heaterWh heat of the element
   * @param beesEnd adults alive at the end
   */
  record Figures(
      double inBandPercent,
      double broodLowC,
      double broodHighC,
      double lowestSocPercent,
      double heaterWh,
      double beesEnd) {}

  private static final int GAUGE_AND_FIGURES = 14;

  /** As one line of numbers. */
  String line() {
    DoubleStream rest =
        DoubleStream.of(
            harmAtS,
            gauge.dark() ? 1 : 0,
            gauge.broodC(),
            gauge.broodLowC(),
            gauge.broodHighC(),
            gauge.volts(),
            gauge.heaterH(),
            gauge.alarms(),
            figures.inBandPercent(),
            figures.broodLowC(),
            figures.broodHighC(),
            figures.lowestSocPercent(),
            figures.heaterWh(),
            figures.beesEnd());
    return DoubleStream.concat(
            rest,
            DoubleStream.concat(
                numbers(failedAtS), DoubleStream.concat(numbers(alarmAtS), numbers(values))))
        .mapToObj(Double::toString)
        .collect(Collectors.joining(" "));
  }

  private static DoubleStream numbers(List<Double> list) {
    return list.stream().mapToDouble(Double::doubleValue);
  }

  /** Reads a line that {@link #line} wrote; null where it has another number of numbers. */
  static Shot of(String line, int failings, int alarms, int requirements) {
    String[] words = line.split(" ");
    if (words.length != GAUGE_AND_FIGURES + failings + alarms + requirements) {
      return null;
    }
    double[] x = Arrays.stream(words).mapToDouble(Double::parseDouble).toArray();
    int a = GAUGE_AND_FIGURES + failings;
    return new Shot(
        part(x, a + alarms, x.length),
        part(x, GAUGE_AND_FIGURES, a),
        part(x, a, a + alarms),
        x[0],
        new Gauge(x[1] == 1, x[2], x[3], x[4], x[5], x[6], (int) x[7]),
        new Figures(x[8], x[9], x[10], x[11], x[12], x[13]));
  }

  private static List<Double> part(double[] x, int from, int to) {
    return Arrays.stream(x, from, to).boxed().toList();
  }
}

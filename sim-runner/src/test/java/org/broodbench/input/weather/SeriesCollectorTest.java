package org.broodbench.input.weather;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import org.broodbench.input.BadInput;
import org.broodbench.sky.Stand;
import org.broodbench.sky.Variable;
import org.broodbench.sky.WeatherSeries;
import org.junit.jupiter.api.Test;

class SeriesCollectorTest {
  private final double[] row = new double[Variable.values().length];
  private final ReadContext context =
      new ReadContext(new ProblemList("w.csv"), ReadOptions.DEFAULT, false, List.of());

  private double[] row(double air, double ghi, double mm) {
    Arrays.fill(row, Double.NaN);
    row[Variable.AIR.ordinal()] = air;
    row[Variable.GHI.ordinal()] = ghi;
    row[Variable.PRECIPITATION.ordinal()] = mm;
    return row;
  }

  private static Stand[] stands(Stand air) {
    Stand[] stands = new Stand[Variable.values().length];
    Arrays.fill(stands, Stand.MEAN);
    stands[Variable.AIR.ordinal()] = air;
    return stands;
  }

  /**
   * More rows than are kept become longer records, twice over, that hold the same means and sums.
   */
  @Test
  void aVeryLongFileIsJoinedWhileItIsRead() {
    int n = 40_003;
    SeriesCollector c = new SeriesCollector(context, 60, 1009);
    for (int i = 0; i < n; i++) {
      c.add(60L * i, i + 1, row(i % 11, i % 7, 0.25));
    }
    WeatherSeries w = c.finish(stands(Stand.instant(60))).build();
    assertEquals(3600, w.stepS());
    assertEquals(n / 60, w.n());
    assertEquals(Stand.instant(60 + 29.5 * 60), w.stand(Variable.AIR));
    for (int g = 0; g < w.n(); g++) {
      double air = 0;
      double ghi = 0;
      for (int i = 60 * g; i < 60 * g + 60; i++) {
        air += (i % 11) / 60.0;
        ghi += (i % 7) / 60.0;
      }
      assertEquals(air, w.value(Variable.AIR, g), 1e-12, "record " + g);
      assertEquals(ghi, w.value(Variable.GHI, g), 1e-12, "record " + g);
      assertEquals(15, w.value(Variable.PRECIPITATION, g), 1e-12, "record " + g);
    }
    assertTrue(w.warnings().get(0).contains("joined"), w.warnings().toString());
  }

  @Test
  void twoRecordsDecadesApartAreNotOneFile() {
    SeriesCollector c = new SeriesCollector(context, 3600);
    c.add(0, 1, row(1, 0, 0));
    c.add(3600L * 300_000, 2, row(1, 0, 0));
    BadInput bad = assertThrows(BadInput.class, () -> c.finish(stands(Stand.MEAN)));
    assertTrue(bad.problems().get(0).found().startsWith("a jump"), "" + bad.problems());
  }

  /** Bridging uses the two neighbours, at an end the one; and is marked value by value. */
  @Test
  void gapsOfUpToThreeHoursAreStraightLines() {
    SeriesCollector c = new SeriesCollector(context, 3600);
    double[] air = {Double.NaN, 4, Double.NaN, Double.NaN, Double.NaN, 8, Double.NaN};
    for (int i = 0; i < air.length; i++) {
      c.add(3600L * i, i + 1, row(air[i], 100, Double.NaN));
    }
    WeatherSeries w = c.finish(stands(Stand.MEAN)).build();
    double[] expected = {4, 4, 5, 6, 7, 8, 8};
    for (int i = 0; i < air.length; i++) {
      assertEquals(expected[i], w.value(Variable.AIR, i), 1e-12);
    }
    assertEquals(5, w.filledHours(), 0.0);
  }
}

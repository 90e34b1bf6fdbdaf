package org.broodbench.sky;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class ClimateTest {
  private static final int YEARS = 8;

  private static WeatherSeries eightYears(Climate climate, Place place) {
    long first = LocalDate.of(2001, 1, 1).toEpochDay();
    int days = (int) (LocalDate.of(2001 + YEARS, 1, 1).toEpochDay() - first);
    return WeatherGenerator.generate(
        new GeneratorSettings(
            5, place, climate.normals(), first, days, List.of(), GeneratorSettings.Stress.NONE));
  }

  /** Every month has its low below its high and shares that are shares. */
  @ParameterizedTest
  @EnumSource
  void everyMonthIsPossible(Climate climate) {
    assertSame(climate, Climate.of(climate.word()));
    for (MonthlyNormals.Month m : climate.normals().months()) {
      assertTrue(m.meanMinC() + 5 * 0.5 < m.meanMaxC(), "a day has a range: " + m);
      assertTrue(m.dailySdK() >= 1.5 && m.dailySdK() <= 8, m.toString());
      assertTrue(m.clearness() >= 0.2 && m.clearness() <= 0.7, m.toString());
      assertTrue(m.wetDays() > 0 && m.wetDays() < 0.6 && m.wetDayMm() > 0, m.toString());
      assertTrue(m.windMS() >= 1 && m.windMS() <= 5, m.toString());
    }
  }

  /**
   * Eight generated years have their months' mean temperature, and the summer is where it belongs.
   * The mean of some 250 days with a memory of 0.7 scatters by 0.15 of the daily standard
   * deviation, of which three are allowed; straight lines between months cut peaks by up to 0.7 K.
   */
  @Test
  void generatedYearsKeepTheNormals() {
    Place[] places = {
      new Place(47, 10, 900),
      new Place(65, 25, 150),
      new Place(34, 58, 1400),
      new Place(-42, 110, 150),
      new Place(52, 1, 40),
      new Place(43, -97, 400)
    };
    for (Climate climate : Climate.values()) {
      WeatherSeries w = eightYears(climate, places[climate.ordinal()]);
      double[] sumC = new double[12];
      int[] n = new int[12];
      LocalDate first = LocalDate.of(2001, 1, 1);
      for (int day = 0; day < w.n() / 24; day++) {
        int month = first.plusDays(day).getMonthValue() - 1;
        double low = 99;
        double high = -99;
        for (int i = 24 * day; i < 24 * day + 24; i++) {
          low = Math.min(low, w.value(Variable.AIR, i));
          high = Math.max(high, w.value(Variable.AIR, i));
        }
        sumC[month] += 0.5 * (low + high);
        n[month]++;
      }
      for (int month = 0; month < 12; month++) {
        MonthlyNormals.Month m = climate.normals().months().get(month);
        double expectedC = 0.5 * (m.meanMaxC() + m.meanMinC());
        double toleranceK = 0.7 + 0.45 * m.dailySdK();
        assertEquals(
            expectedC, sumC[month] / n[month], toleranceK, climate + " month " + (month + 1));
      }
      boolean southern = places[climate.ordinal()].latitudeDeg() < 0;
      assertEquals(southern, sumC[0] / n[0] > sumC[6] / n[6], climate.toString());
    }
  }

  /** In the warm half of the year dull days are the cooler ones, south of the equator as well. */
  @Test
  void dullSummerDaysAreCoolOnBothSidesOfTheEquator() {
    assertTrue(coolnessOfDullDaysK(Climate.UPLAND, new Place(47, 10, 900), 7) > 1);
    assertTrue(coolnessOfDullDaysK(Climate.SOUTHERN, new Place(-42, 110, 150), 1) > 1);
  }

  /** Mean temperature of the brighter half of a month's days minus that of the duller half, K. */
  private static double coolnessOfDullDaysK(Climate climate, Place place, int month) {
    WeatherSeries w = eightYears(climate, place);
    LocalDate first = LocalDate.of(2001, 1, 1);
    double meanLight = 0;
    int days = 0;
    double[] light = new double[w.n() / 24];
    double[] air = new double[w.n() / 24];
    for (int d = 0; d < light.length; d++) {
      for (int i = 24 * d; i < 24 * d + 24; i++) {
        light[d] += w.value(Variable.GHI, i);
        air[d] += w.value(Variable.AIR, i) / 24;
      }
      if (first.plusDays(d).getMonthValue() == month) {
        meanLight += light[d];
        days++;
      }
    }
    meanLight /= days;
    double[] sum = new double[2];
    int[] n = new int[2];
    for (int d = 0; d < light.length; d++) {
      if (first.plusDays(d).getMonthValue() == month) {
        int bright = light[d] > meanLight ? 1 : 0;
        sum[bright] += air[d];
        n[bright]++;
      }
    }
    return sum[1] / n[1] - sum[0] / n[0];
  }
}

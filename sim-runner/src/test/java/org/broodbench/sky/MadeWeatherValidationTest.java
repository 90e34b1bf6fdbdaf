package org.broodbench.sky;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Made weather against what it is made from. */
class MadeWeatherValidationTest {
  private static final long FIRST = LocalDate.of(2030, 1, 1).toEpochDay();
  private static final Place PLACE = new Place(47, 11, 900);

  /** Ten years of the generator stand for a record of an invented valley. */
  private static final WeatherSeries RECORD = generate(1, MonthlyNormals.UPLAND_VALLEY, 3650);

  private static WeatherSeries generate(long seed, MonthlyNormals normals, int days) {
    return WeatherGenerator.generate(
        new GeneratorSettings(
            seed, PLACE, normals, FIRST, days, List.of(), GeneratorSettings.Stress.NONE));
  }

  /** The normals of ten generated years are those that went in. */
  @Test
  void normalsComeBack() {
    MonthlyNormals got = MonthlyNormals.of(RECORD);
    for (int m = 0; m < 12; m++) {
      MonthlyNormals.Month a = MonthlyNormals.UPLAND_VALLEY.months().get(m);
      MonthlyNormals.Month b = got.months().get(m);
      // 300 days with a memory of three days are about 90 independent ones: sd 4.5 / 9.5 = 0.5 K
      assertEquals(a.meanMaxC(), b.meanMaxC(), 1.6, "high " + m);
      assertEquals(a.meanMinC(), b.meanMinC(), 1.6, "low " + m);
      assertEquals(1, b.dailySdK() / a.dailySdK(), 0.25, "sd " + m);
      assertEquals(1, b.clearness() / a.clearness(), 0.12, "clearness " + m);
      assertEquals(a.wetDays(), b.wetDays(), 0.1, "wet " + m);
      assertEquals(1, b.wetDayMm() / a.wetDayMm(), 0.3, "mm " + m);
      assertEquals(1, b.windMS() / a.windMS(), 0.15, "wind " + m);
    }
  }

  /** A resampled decade keeps level, spread, memory and dependence of the record. */
  @Test
  void resamplingKeepsTheStatistics() {
    WeatherSeries drawn = new BlockResampler(RECORD).season(BlockResampler.Draw.of(5, FIRST, 3650));
    WeatherStatistics a = WeatherStatistics.of(RECORD);
    WeatherStatistics b = WeatherStatistics.of(drawn);
    assertEquals(a.meanC(), b.meanC(), 0.5);
    assertEquals(1, b.dailySdK() / a.dailySdK(), 0.1);
    assertEquals(a.memory(), b.memory(), 0.06);
    assertEquals(1, b.ghiKWhM2Day() / a.ghiKWhM2Day(), 0.04);
    assertEquals(a.warmSun(), b.warmSun(), 0.08);
    assertEquals(a.wetDays(), b.wetDays(), 0.03);
    assertEquals(1, b.hardestWeekKWh() / a.hardestWeekKWh(), 0.15);
    assertTrue(drawn.source().contains("seed 5"), drawn.source());
    assertEquals(FIRST * 86400, drawn.startEpochS());
    // the light still follows the sun of the new dates
    assertEquals(0, SeriesCheck.noonOffsetH(drawn).getAsDouble(), 0.2);
  }

  @Test
  void equalDrawsAreEqualAndSeedsDiffer() {
    BlockResampler r = new BlockResampler(RECORD);
    WeatherSeries a = r.season(BlockResampler.Draw.of(5, FIRST, 30));
    WeatherSeries b = r.season(BlockResampler.Draw.of(5, FIRST, 30));
    WeatherSeries c = r.season(BlockResampler.Draw.of(6, FIRST, 30));
    int same = 0;
    for (int i = 0; i < a.n(); i++) {
      assertEquals(a.value(Variable.AIR, i), b.value(Variable.AIR, i), 0.0);
      same += a.value(Variable.AIR, i) == c.value(Variable.AIR, i) ? 1 : 0;
    }
    assertTrue(same < a.n() / 4, same + " equal hours");
    assertThrows(
        IllegalArgumentException.class,
        () -> new BlockResampler(generate(1, MonthlyNormals.UPLAND_VALLEY, 20)));
  }

  /** A spell that is made longer is longer, colder and darker. */
  @Test
  void stressLengthensTheBadSpell() {
    GeneratorSettings s = GeneratorSettings.uplandSpring(2, FIRST + 105, 20);
    GeneratorSettings hard =
        new GeneratorSettings(
            2,
            s.place(),
            s.normals(),
            s.firstEpochDay(),
            20,
            s.spells(),
            new GeneratorSettings.Stress(0, 0, 4));
    double usual = WorstWindows.find(WeatherGenerator.generate(s), 1).get(0).hardnessKWh();
    double worse = WorstWindows.find(WeatherGenerator.generate(hard), 1).get(0).hardnessKWh();
    assertTrue(worse > usual * 1.1, worse + " against " + usual);
  }

  /** A typical year laid over two winters, with a leap day in between. */
  @Test
  void aTypicalYearCoversAnyWindow() {
    WeatherSeries year =
        WeatherGenerator.generate(
            new GeneratorSettings(
                3,
                PLACE,
                MonthlyNormals.UPLAND_VALLEY,
                LocalDate.of(2001, 1, 1).toEpochDay(),
                365,
                List.of(),
                GeneratorSettings.Stress.NONE));
    long from = Instant.parse("2027-11-20T05:00:00Z").getEpochSecond();
    long to = Instant.parse("2028-03-05T00:00:00Z").getEpochSecond();
    WeatherSeries w = TypicalYear.covering(year, from, to);
    assertTrue(w.startEpochS() <= from - 86400 && w.endEpochS() >= to + 86400);
    for (String[] pair :
        new String[][] {
          {"2027-12-31T23:00:00Z", "2001-12-31T23:00:00Z"},
          {"2028-01-01T00:00:00Z", "2001-01-01T00:00:00Z"},
          {"2028-02-29T12:00:00Z", "2001-02-28T12:00:00Z"},
          {"2028-03-01T12:00:00Z", "2001-03-01T12:00:00Z"}
        }) {
      int i = (int) ((Instant.parse(pair[0]).getEpochSecond() - w.startEpochS()) / 3600);
      int k = (int) ((Instant.parse(pair[1]).getEpochSecond() - year.startEpochS()) / 3600);
      assertEquals(year.value(Variable.AIR, k), w.value(Variable.AIR, i), 0.0, pair[0]);
    }
    Forcing.of(w, PLACE, from, to, List.of(), ForcingSettings.DEFAULT);
  }

  @Test
  void joiningRecordsKeepsMeansAndSums() {
    WeatherSeries day = Resample.coarser(RECORD, 24);
    WindowStats a = WindowStats.of(RECORD, 0, RECORD.n() / 24 * 24);
    WindowStats b = WindowStats.of(day, 0, day.n());
    assertEquals(a.meanAirC(), b.meanAirC(), 1e-9);
    assertEquals(a.ghiKWhM2Day(), b.ghiKWhM2Day(), 1e-9);
    assertEquals(a.precipMm(), b.precipMm(), 1e-6);
    // the mean of spot values at 1, 2, ... 24 h stands at 12.5 h
    assertEquals(Stand.instant(12.5 * 3600), day.stand(Variable.AIR));
    assertEquals(Stand.MEAN, day.stand(Variable.GHI));
  }

  /** A record made harder: level, light, and the hardest three days twice over. */
  @Test
  void aRecordIsMadeHarder() {
    WeatherSeries year = generate(4, MonthlyNormals.UPLAND_VALLEY, 365);
    WeatherSeries hard =
        StressVariant.of(year, new GeneratorSettings.Stress(4, 0.25, 3), RigClass.SMALL);
    assertEquals(year.n() + 72, hard.n());
    WindowStats worst = WorstWindows.find(year, 3, 1, RigClass.SMALL, 0).get(0).stats();
    int first = (int) ((worst.fromEpochS() - year.startEpochS()) / 3600);
    for (int i = 0; i < 72; i++) {
      for (int k : new int[] {first + i, first + 72 + i}) {
        assertEquals(year.value(Variable.AIR, first + i) - 4, hard.value(Variable.AIR, k), 1e-12);
        assertEquals(
            0.75 * year.value(Variable.GHI, first + i), hard.value(Variable.GHI, k), 1e-12);
      }
    }
    assertEquals(
        year.value(Variable.AIR, first + 72) - 4, hard.value(Variable.AIR, first + 144), 1e-12);
    assertEquals(
        year.value(Variable.AIR, year.n() - 1) - 4, hard.value(Variable.AIR, hard.n() - 1), 1e-12);
    assertTrue(
        WorstWindows.find(hard, 1).get(0).hardnessKWh()
            > WorstWindows.find(year, 1).get(0).hardnessKWh());
    assertTrue(hard.warnings().get(hard.warnings().size() - 1).contains("made harder"));
  }

  /** Windows are in order of hardness and none shares a day with another; gaps are left out. */
  @Test
  void windowsDoNotOverlap() {
    WeatherSeries year = generate(4, MonthlyNormals.UPLAND_VALLEY, 365);
    List<WorstWindows.Window> found = WorstWindows.find(year, 7, 20, RigClass.SMALL, 0);
    assertEquals(20, found.size());
    for (int a = 0; a < 20; a++) {
      for (int b = a + 1; b < 20; b++) {
        long apart = Math.abs(found.get(a).fromEpochS() - found.get(b).fromEpochS());
        assertTrue(apart >= 7 * 86400, a + " and " + b);
        assertTrue(found.get(a).hardnessKWh() >= found.get(b).hardnessKWh());
      }
    }
    double[] air = new double[year.n()];
    int worst = (int) ((found.get(0).fromEpochS() - year.startEpochS()) / 3600);
    for (int i = 0; i < air.length; i++) {
      air[i] = i == worst + 80 ? Double.NaN : year.value(Variable.AIR, i);
    }
    WeatherSeries holed =
        year.toBuilder().column(Variable.AIR, air, year.stand(Variable.AIR)).build();
    for (WorstWindows.Window w : WorstWindows.find(holed, 7, 20, RigClass.SMALL, 0)) {
      long hole = year.startEpochS() + (worst + 80) * 3600L;
      assertTrue(hole < w.fromEpochS() || hole >= w.fromEpochS() + 7 * 86400);
    }
  }
}

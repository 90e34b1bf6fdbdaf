package org.broodbench.stress;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.broodbench.plant.Plant;
import org.broodbench.rig.FaultKind;
import org.broodbench.rig.Scenario;
import org.broodbench.rig.TestRigs;
import org.broodbench.sky.Forcing;
import org.broodbench.sky.ForcingSettings;
import org.broodbench.sky.GeneratorSettings;
import org.broodbench.sky.WeatherGenerator;
import org.broodbench.sky.WeatherSeries;
import org.broodbench.sky.WindowStats;
import org.broodbench.study.Journal;
import org.broodbench.study.Progress;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class StressStudyTest {
  private static final long FROM_EPOCH_S = 20_560L * 86_400;
  private static final int DAYS = 4;

  @TempDir private Path folder;

  private static StressWeek week(int seed) {
    Scenario s = TestRigs.small(FROM_EPOCH_S, DAYS).withHive(TestRigs.insulated(0.02, 1));
    WeatherSeries series =
        WeatherGenerator.generate(
            GeneratorSettings.uplandSpring(seed, FROM_EPOCH_S / 86_400, DAYS));
    Forcing forcing =
        Forcing.of(
            series,
            s.place(),
            s.window().fromEpochS(),
            s.window().toEpochS(),
            Plant.planes(s),
            ForcingSettings.DEFAULT);
    return new StressWeek(
        "seed " + seed,
        s,
        forcing,
        WindowStats.between(series, series.startEpochS(), series.endEpochS()));
  }

  private List<StressRow> rows(StressStudy study, String name, int threads, int stopAfter)
      throws IOException {
    try (Journal journal = Journal.open(folder.resolve(name), "a study")) {
      int[] done = {0};
      return study.rows(journal, threads, () -> done[0] >= stopAfter, (at, of) -> done[0]++);
    }
  }

  private static StressRow find(List<StressRow> rows, String fault) {
    return rows.stream().filter(r -> r.fault().equals(fault)).findFirst().orElseThrow();
  }

  @Test
  void threadsAndInterruptionsDoNotChangeARow() throws IOException {
    StressStudy study = new StressStudy(List.of(week(3), week(4)), false);
    List<StressRow> whole = rows(study, "one", 1, Integer.MAX_VALUE);
    assertEquals(study.planned(), whole.size());
    assertEquals(whole, rows(study, "two", 3, Integer.MAX_VALUE), "three threads");

    List<StressRow> part = rows(study, "part", 2, 21);
    assertTrue(part.size() >= 20 && part.size() <= 22, "stopped at " + part.size());
    assertTrue(whole.containsAll(part), "what is there is as in the whole");
    int[] run = {0};
    try (Journal journal = Journal.open(folder.resolve("part"), "a study")) {
      Progress counts = (at, of) -> run[0]++;
      assertEquals(whole, study.rows(journal, 2, () -> false, counts), "taken up again");
    }
    // once at the beginning, then once a run that was still open
    assertEquals(study.planned() - part.size() + 1, run[0]);
  }

  @Test
  void aRigWithEverythingBreaksInAtLeast25Ways() {
    Scenario s = week(3).scenario();
    List<StressCase> cases = StressCase.of(s);
    assertTrue(cases.size() >= 25, "ways: " + cases.size());
    assertTrue(cases.stream().noneMatch(c -> c.kind() == FaultKind.INVERTER_TRIPPED));
    long carried = cases.stream().filter(c -> c.carry().isBlank()).count();
    assertEquals(0, carried, "each says what to carry");
  }

  @Test
  void rowsTellWhatFailsWhichAlarmAndWhetherItIsSeen() throws IOException {
    List<StressRow> rows =
        rows(new StressStudy(List.of(week(3)), false), "rows", 2, Integer.MAX_VALUE);
    StressRow none = find(rows, "none");
    assertNull(none.firstFails(), "nothing fails that does not fail without a fault");
    assertTrue(none.sees().isEmpty());

    StressRow open = find(rows, "probe_open");
    assertEquals("brood_probe", open.alarm());
    assertTrue(open.sees().contains("alarm brood_probe"), open.sees().toString());

    StressRow dead = find(rows, "battery_gone");
    assertEquals(Failing.BOARD_DEAD, dead.firstFails());
    assertTrue(dead.gauge().dark());
    assertNull(dead.alarm(), "a dead board raises no alarm");

    StressRow hot = find(rows, "controller_hangs");
    assertEquals(Failing.PAN_HOT, hot.firstFails());
    assertTrue(hot.figures().heaterWh() > 2 * none.figures().heaterWh());

    StressRow lid = find(rows, "lid_off");
    assertTrue(lid.sees().get(0).contains("by eye"));
    assertTrue(lid.figures().inBandPercent() < none.figures().inBandPercent());
  }

  @Test
  void pairsAreBothFaultsAtOnce() throws IOException {
    StressStudy study = new StressStudy(List.of(week(3)), true);
    int singles = StressCase.of(week(3).scenario()).size();
    // kinds that come in two sizes are not paired with themselves
    assertTrue(study.planned() > 1 + singles + singles * (singles - 1) / 2 - 5);
    List<StressRow> some = rows(study, "pairs", 2, singles + 60);
    StressRow pair = find(some, "probe_open+probe_stuck");
    assertEquals("brood probe open and brood probe stuck", pair.title());
  }

  @Test
  void faultsBeginAtNightfallOfTheSun() {
    Scenario s = week(3).scenario();
    double localH = StressStudy.onsetS(s) / 3600 + s.place().longitudeDeg() / 15;
    assertEquals(18, localH % 24, 1e-9);
  }

  @Test
  void aShotIsReadBackBitForBit() throws IOException {
    Shot shot =
        new Shot(
            List.of(Double.NaN, 1.0 / 3),
            List.of(1e-300, Double.NaN),
            List.of(2.0 / 7),
            Double.NaN,
            new Gauge(false, 33.1, 20.07, 34, Double.NaN, 5.0 / 9, 6),
            new Shot.Figures(90.1, 20, 36, 50.5, 123.4, 2500));
    assertEquals(shot, Shot.of(shot.line(), 2, 1, 2));
    assertNull(Shot.of(shot.line(), 2, 1, 3), "a line of another study is refused");
  }
}

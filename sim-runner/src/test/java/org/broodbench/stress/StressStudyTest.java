package org.broodbench.stress;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
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
import org.broodbench.study.Evaluation;
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
    StressStudy study = new StressStudy(List.of(week(3), week(4)), StressPlan.SINGLES);
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
        rows(new StressStudy(List.of(week(3)), StressPlan.SINGLES), "rows", 2, Integer.MAX_VALUE);
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
    StressStudy study = new StressStudy(List.of(week(3)), new StressPlan(true, List.of(), false));
    int singles = StressCase.of(week(3).scenario()).size();
    // kinds that come in two sizes are not paired with themselves
    assertTrue(study.planned() > 1 + singles + singles * (singles - 1) / 2 - 5);
    List<StressRow> some = rows(study, "pairs", 2, singles + 60);
    StressRow pair = find(some, "probe_open+probe_stuck");
    assertEquals("brood probe open and brood probe stuck", pair.title());
  }

  @Test
  void aNamedPairComesInEveryWeekAndIsWorseThanEither() throws IOException {
    StressPlan plan = new StressPlan(false, List.of("relay_open+lid_off"), false);
    StressStudy study = new StressStudy(List.of(week(3), week(4)), plan);
    assertEquals(2 * (2 + StressCase.of(week(3).scenario()).size()), study.planned());
    List<StressRow> rows = rows(study, "named", 2, Integer.MAX_VALUE);
    for (String week : List.of("seed 3", "seed 4")) {
      List<StressRow> ofWeek = rows.stream().filter(r -> r.week().equals(week)).toList();
      StressRow pair = find(ofWeek, "relay_open+lid_off");
      for (String single : List.of("relay_open", "lid_off")) {
        StressRow one = find(ofWeek, single);
        assertTrue(pair.figures().broodLowC() < one.figures().broodLowC(), single);
        boolean never = Double.isNaN(one.hoursToHarm());
        assertTrue(never || pair.hoursToHarm() <= one.hoursToHarm(), single);
      }
      assertEquals(
          find(ofWeek, "relay_open").figures().heaterWh(),
          pair.figures().heaterWh(),
          "no heat after the onset, and the same before it");
      assertTrue(pair.sees().get(0).contains("lid off, by eye"), pair.sees().toString());
    }
    StressPlan both = new StressPlan(true, List.of("relay_open+lid_off"), false);
    assertEquals(
        new StressStudy(List.of(week(3)), new StressPlan(true, List.of(), false)).planned(),
        new StressStudy(List.of(week(3)), both).planned(),
        "a pair that is named as well is run once");
    for (String wrong : List.of("lid_off+relay_open", "relay_open", "relay_open+none")) {
      StressPlan odd = new StressPlan(false, List.of(wrong), false);
      assertThrows(
          IllegalArgumentException.class, () -> new StressStudy(List.of(week(3)), odd), wrong);
    }
  }

  @Test
  void everyRowComesAtThreeLossesToldAgainstTheSameLoss() throws IOException {
    StressStudy one = new StressStudy(List.of(week(3)), StressPlan.SINGLES);
    StressStudy three = new StressStudy(List.of(week(3)), new StressPlan(false, List.of(), true));
    assertEquals(3 * one.planned(), three.planned());
    List<StressRow> rows = rows(three, "three", 2, Integer.MAX_VALUE);
    List<StressRow> own = rows.stream().filter(r -> r.loss().key().equals("own")).toList();
    assertEquals(rows(one, "one", 2, Integer.MAX_VALUE), own, "its own loss is as without");
    for (int i = 0; i < rows.size(); i += 3) {
      List<StressRow> group = rows.subList(i, i + 3);
      assertEquals(1, group.stream().map(StressRow::fault).distinct().count());
      assertEquals(List.of("low", "own", "high"), group.stream().map(r -> r.loss().key()).toList());
      for (int k = 0; k < 3; k++) {
        // the first three rows are those with nothing broken, in the same order of losses
        assertEquals(
            rows.get(k).figures().inBandPercent(), group.get(k).figures().inBandWithoutPercent());
        assertEquals(rows.get(k).hoursToHarm(), group.get(k).hoursToHarmWithout());
      }
    }
    List<StressRow> cold = rows.stream().filter(r -> r.fault().equals("relay_open")).toList();
    assertTrue(
        cold.get(0).figures().broodLowC() > cold.get(1).figures().broodLowC()
            && cold.get(1).figures().broodLowC() > cold.get(2).figures().broodLowC(),
        "the more a colony loses, the colder it is without heat");
  }

  @Test
  void aLossThatIsTheScenariosOwnIsRunOnce() {
    Scenario s = week(3).scenario();
    assertEquals(List.of("own"), keys(s, false));
    assertEquals(List.of("low", "own", "high"), keys(s, true));
    assertEquals(List.of("own", "high"), keys(lossOf(s, Evaluation.LOW_LOSS), true));
    assertEquals(List.of("low", "own"), keys(lossOf(s, Evaluation.HIGH_LOSS), true));
  }

  private static Scenario lossOf(Scenario s, double factor) {
    return s.withColony(s.colony().withClusterLossFactor(factor));
  }

  private static List<String> keys(Scenario s, boolean all) {
    return HeatLoss.of(s, all).stream().map(HeatLoss::key).toList();
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

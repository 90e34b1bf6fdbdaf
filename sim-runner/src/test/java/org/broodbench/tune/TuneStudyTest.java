package org.broodbench.tune;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.BooleanSupplier;
import java.util.function.Predicate;
import org.broodbench.controller.Setting;
import org.broodbench.controller.Settings;
import org.broodbench.plant.Plant;
import org.broodbench.rig.Scenario;
import org.broodbench.rig.TestRigs;
import org.broodbench.rig.TuneSpec;
import org.broodbench.rig.TuneSpec.Knob;
import org.broodbench.sky.Forcing;
import org.broodbench.sky.ForcingSettings;
import org.broodbench.sky.GeneratorSettings;
import org.broodbench.sky.WeatherGenerator;
import org.broodbench.study.Journal;
import org.broodbench.study.Progress;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class TuneStudyTest {
  private static final long FROM_EPOCH_S = 20_560L * 86_400;
  private static final int DAYS = 3;
  private static final Scenario RIG =
      TestRigs.small(FROM_EPOCH_S, DAYS).withHive(TestRigs.insulated(0.02, 1));
  private static final List<Knob> KNOBS =
      List.of(
          new Knob("a", Setting.HEAT_SET_POINT_CENTI_C, 3000, 3500, 10, 100, "c"),
          new Knob("b", Setting.HEAT_DIFFERENTIAL_CENTI_K, 30, 300, 10, 100, "k"));
  private static final TuneSpec SPEC = new TuneSpec(KNOBS, 5, 2, DAYS, 10_000, 150, 1, 1);

  @TempDir private Path folder;

  private static List<Season> seasons(int first, int count) {
    List<Season> seasons = new ArrayList<>();
    for (int i = first; i < first + count; i++) {
      Forcing forcing =
          Forcing.of(
              WeatherGenerator.generate(
                  GeneratorSettings.uplandSpring(i, FROM_EPOCH_S / 86_400, DAYS)),
              RIG.place(),
              RIG.window().fromEpochS(),
              RIG.window().toEpochS(),
              Plant.planes(RIG),
              ForcingSettings.DEFAULT);
      seasons.add(Season.of("season " + i, RIG, forcing));
    }
    return seasons;
  }

  private TuneReport run(
      String name, int threads, BooleanSupplier stop, Progress heard, Predicate<Settings> permitted)
      throws IOException {
    TuneStudy study = new TuneStudy(RIG, SPEC, seasons(1, 5), seasons(6, 2), permitted);
    try (Journal journal = Journal.open(folder.resolve(name), "a search")) {
      return study.run("made", journal, threads, stop, heard);
    }
  }

  @Test
  void threadsAndInterruptionsDoNotChangeTheFinding() throws IOException {
    TuneReport whole = run("one", 1, () -> false, Progress.NONE, s -> true);
    assertEquals(whole, run("three", 3, () -> false, Progress.NONE, s -> true));

    int[] heard = {0};
    TuneReport part = run("part", 2, () -> heard[0] >= 40, (at, of) -> heard[0]++, s -> true);
    assertTrue(part.stopped());
    assertTrue(part.evaluations() >= 40 && part.evaluations() <= 42);
    assertNotNull(part.recommended(), "what is there can be used");
    assertNull(part.unseenNow());
    TuneReport again = run("part", 2, () -> false, Progress.NONE, s -> true);
    assertEquals(whole, again, "taken up again it ends the same");
  }

  @Test
  void whatItFindsIsBeatenByNothingItTriedAndRacingIsCheap() throws IOException {
    TuneReport r = run("front", 2, () -> false, Progress.NONE, s -> true);
    for (Judged a : r.front()) {
      assertTrue(r.front().stream().noneMatch(b -> b.scores().beats(a.scores())));
    }
    assertTrue(r.front().contains(r.recommended()));
    assertFalse(r.now().scores().beats(r.recommended().scores()));
    assertTrue(
        r.recommended().scores().get(Aim.OUT_OF_BAND)
            <= r.now().scores().get(Aim.OUT_OF_BAND) + Aim.OUT_OF_BAND.grain());
    assertTrue(
        r.evaluations() < 0.7 * r.candidates() * SPEC.seasons(),
        r.evaluations() + " evaluations of " + r.candidates() + " candidates");
    assertNotNull(r.unseenRecommended());
  }

  @Test
  void whatIsNotPermittedIsNeverRecommended() throws IOException {
    Predicate<Settings> cool = s -> s.get(Setting.HEAT_SET_POINT_CENTI_C) <= 3150;
    TuneReport r = run("cool", 2, () -> false, Progress.NONE, cool);
    for (Judged j : r.front()) {
      assertTrue(j.candidate().counts().get(0) <= 3150, j.toString());
    }
    TuneReport none = run("none", 2, () -> false, Progress.NONE, s -> false);
    assertNull(none.recommended());
    assertTrue(none.front().isEmpty());
  }

  @Test
  void theTradeOffThatSavesMostEnergyIsNotTheWarmestAndCostsHours() throws IOException {
    TuneReport r = run("apart", 2, () -> false, Progress.NONE, s -> true);
    Judged least =
        r.front().stream()
            .min(java.util.Comparator.comparingDouble(j -> j.scores().get(Aim.ENERGY)))
            .orElseThrow();
    Judged most =
        r.front().stream()
            .max(java.util.Comparator.comparingDouble(j -> j.scores().get(Aim.ENERGY)))
            .orElseThrow();
    assertTrue(least.candidate().counts().get(0) <= most.candidate().counts().get(0));
    assertTrue(least.scores().get(Aim.ENERGY) < 0.8 * most.scores().get(Aim.ENERGY));
    assertTrue(
        least.scores().get(Aim.OUT_OF_BAND) > most.scores().get(Aim.OUT_OF_BAND),
        "less energy costs hours out of band");
  }
}

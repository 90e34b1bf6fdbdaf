package org.broodbench.input;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.broodbench.controller.Setting;
import org.broodbench.rig.Scenario;
import org.broodbench.rig.TuneSpec;
import org.junit.jupiter.api.Test;

class TuningTest {
  private static final Path DEMO = Path.of("..", "scenarios", "late-split.toml");

  private static byte[] with(String more) throws IOException {
    return (Files.readString(DEMO) + more).getBytes(StandardCharsets.UTF_8);
  }

  private static TuneSpec spec(String more) throws IOException {
    byte[] bytes = with(more);
    return Tuning.spec(ScenarioReader.read("a.toml", bytes, List.of()), bytes, List.of());
  }

  @Test
  void sixSettingsAroundTheirValuesWhereNothingIsSaid() throws IOException {
    TuneSpec spec = spec("");
    assertEquals(6, spec.knobs().size());
    assertEquals(30, spec.seasons());
    assertEquals(56, spec.seasonDays());
    TuneSpec.Knob k = spec.knobs().get(0);
    assertEquals("controller.heat.set_point_c", k.resultName());
    assertTrue(k.low() < 3350 && k.high() > 3350);
  }

  @Test
  void readsWhatMayChange() throws IOException {
    TuneSpec spec =
        spec(
            """

            [tune]
            seasons = 9

            [[tune.setting]]
            key = "controller.heat.min_on"
            low = "2 min"
            high = "10 min"

            [[tune.setting]]
            key = "controller.shed.heat_enter_volts"
            low = "11.8 V"
            high = "12.2 V"
            """);
    assertEquals(9, spec.seasons());
    assertEquals(
        List.of(
            new TuneSpec.Knob(
                "controller.heat.min_on",
                Setting.RELAY_MIN_ON_MILLIS,
                120_000,
                600_000,
                10_000,
                1000,
                "s"),
            new TuneSpec.Knob(
                "controller.shed.heat_enter_volts",
                Setting.SHED_HEAT_ENTER_MILLI_V,
                11_800,
                12_200,
                10,
                1000,
                "v")),
        spec.knobs());
  }

  @Test
  void tellsEveryMistakeAtOnce() throws IOException {
    byte[] bytes =
        with(
            """

            [[tune.setting]]
            key = "controller.heat.setpoint"
            low = "30 degC"
            high = "34 degC"

            [[tune.setting]]
            key = "controller.heat.set_point"
            low = "34 degC"
            high = "30 degC"

            [[tune.setting]]
            key = "controller.heat.differential"
            low = "1 V"
            high = "90 K"
            """);
    BadInput bad =
        assertThrows(BadInput.class, () -> ScenarioReader.read("a.toml", bytes, List.of()));
    assertEquals(
        List.of(
            "tune.setting.0.key",
            "tune.setting.1.high",
            "tune.setting.2.low",
            "tune.setting.2.high"),
        bad.problems().stream().map(Problem::key).toList());
  }

  @Test
  void theTunedTextKeepsItsCommentsAndReadsAsTuned() throws IOException {
    byte[] bytes = with("");
    Scenario s = ScenarioReader.read("a.toml", bytes, List.of());
    TuneSpec spec = Tuning.spec(s, bytes, List.of());
    List<Integer> counts = List.of(3240, 80, 420_000, 150, 12_170, 50);
    String tuned = Tuning.text(new String(bytes, StandardCharsets.UTF_8), spec.knobs(), counts);
    Scenario read =
        ScenarioReader.read("a.toml", tuned.getBytes(StandardCharsets.UTF_8), List.of());
    for (int i = 0; i < counts.size(); i++) {
      assertEquals(counts.get(i), read.controller().settings().get(spec.knobs().get(i).setting()));
    }
    long comments = Files.readAllLines(DEMO).stream().filter(l -> l.contains("#")).count();
    assertEquals(comments, tuned.lines().filter(l -> l.contains("#")).count());
    assertTrue(tuned.contains("set_point = \"32.4 degC\""), tuned);
  }
}

package org.broodbench.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.broodbench.input.ScenarioReader;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class TuneCommandTest {
  @TempDir private Path folder;

  private Program tune(String... more) {
    List<String> args = new ArrayList<>(List.of("tune", "--out", folder.toString(), "--json"));
    for (String set : List.of("seasons=3", "season_days=7", "unseen_seasons=2")) {
      args.add("--set");
      args.add("tune." + set);
    }
    args.addAll(List.of(more));
    return Program.run(args.toArray(String[]::new));
  }

  @Test
  void writesWhatTheContractSaysAndAScenarioThatReads() throws IOException {
    Program p = tune("--evaluations", "60");
    assertEquals(0, p.code, p.err);
    JsonNode json = new ObjectMapper().readTree(p.out);
    assertEquals("broodbench-tune/1", json.get("format").asText());
    assertEquals(3, json.get("seasons").asInt());
    assertTrue(json.get("evaluations").asInt() >= 60);
    assertTrue(json.get("recommended").has("controller.heat.set_point_c"));
    assertTrue(json.get("front").size() >= 1);
    assertTrue(json.get("front").get(0).get("scores").has("brood_lost_cells"));
    for (String of : List.of("now", "recommended")) {
      assertTrue(json.get("unseen_seasons").get(of).get("energy_wh").isNumber(), of);
    }
    Path tuned = folder.resolve("late-split-tuned.toml");
    double setPointC = json.get("recommended").get("controller.heat.set_point_c").asDouble();
    assertEquals(
        Math.round(100 * setPointC),
        ScenarioReader.read(tuned, List.of())
            .controller()
            .settings()
            .get(org.broodbench.controller.Setting.HEAT_SET_POINT_CENTI_C));
    assertEquals(p.out, Files.readString(folder.resolve("tune.json")));
    assertEquals(
        json.get("front").size() + 2, Files.readAllLines(folder.resolve("tune.csv")).size());
    assertTrue(Files.readString(folder.resolve("tune.html")).contains("Best trade-offs"));
    assertFalse(Files.exists(folder.resolve("tune.journal")));
  }

  /** The tick is that of the seasons that the search looks at; the unseen ones keep theirs. */
  @Test
  void ticksAsToldOnTheSeasonsThatItLooksAt() throws IOException {
    JsonNode usual = json(tune("--evaluations", "3"));
    JsonNode coarse = json(tune("--evaluations", "3", "--set", "tune.tick=60 s"));
    assertEquals(20, usual.get("tick_s").asDouble());
    assertEquals(60, coarse.get("tick_s").asDouble());
    assertNotEquals(usual.get("now").get("scores"), coarse.get("now").get("scores"));
    assertEquals(usual.get("unseen_seasons").get("now"), coarse.get("unseen_seasons").get("now"));
    JsonNode longer = json(tune("--evaluations", "3", "--set", "controller.tick=30 s"));
    assertEquals(30, longer.get("tick_s").asDouble());
  }

  private static JsonNode json(Program p) throws IOException {
    assertTrue(p.code < 2, p.err);
    return new ObjectMapper().readTree(p.out);
  }

  @Test
  void refusesWhatCannotBeTuned() {
    Program p = tune("--set", "tune.setting.0.key=controller.heat.warmth");
    assertEquals(2, p.code);
    assertTrue(p.err.contains("a key of the controller's settings"), p.err);
  }
}

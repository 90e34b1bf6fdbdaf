package org.broodbench.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SizeCommandTest {
  @TempDir Path folder;

  private Path scenario(String more) throws IOException {
    try (InputStream in = SizeCommandTest.class.getResourceAsStream("/scenarios/late-split.toml")) {
      String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      return Files.writeString(folder.resolve("rig.toml"), text + "\n" + more);
    }
  }

  private static String choice(String part, String set, int price) {
    return "[[size.choice]]\npart = \""
        + part
        + "\"\nset = \""
        + set
        + "\"\nprice = \""
        + price
        + " EUR\"\n";
  }

  private static String list() {
    return choice("insulation", "hive.insulation=0 mm", 0)
        + choice("insulation", "hive.insulation=50 mm", 40)
        + choice("panel", "pv.power=20 W", 30)
        + choice("panel", "pv.power=100 W", 75)
        + choice("panel", "pv.power=300 W", 195)
        + choice("battery", "battery.capacity=20 Ah", 60)
        + choice("battery", "battery.capacity=80 Ah", 160)
        + choice("battery", "battery.capacity=200 Ah", 370);
  }

  private JsonNode size(int code, Path rig, String... more) throws IOException {
    List<String> args = new ArrayList<>(List.of("size", rig.toString(), "--json"));
    args.addAll(List.of(more));
    args.addAll(List.of("--out", folder.resolve("out").toString()));
    Program run = Program.run(args.toArray(String[]::new));
    assertEquals(code, run.code, run.err);
    return new ObjectMapper().readTree(run.out);
  }

  /** What is left out as following from others would not have changed the choice. */
  @Test
  void pruningDoesNotChangeTheChoice() throws IOException {
    Path rig = scenario(list());
    String[] season = {"--seasons", "2", "--weeks", "1", "--set", "size.loss_of_load=1 h"};
    JsonNode pruned = size(0, rig, season);
    String[] all = {"--seasons", "2", "--weeks", "1", "--set", "size.loss_of_load=1 h", "--every"};
    JsonNode every = size(0, rig, all);
    assertEquals(18, every.get("choices").size());
    assertTrue(pruned.get("choices").size() < 18, "something is pruned");
    assertEquals(every.get("best"), pruned.get("best"));
    assertEquals(every.get("curve"), pruned.get("curve"));
    assertEquals(every.get("cheapest_by_first_part"), pruned.get("cheapest_by_first_part"));
    double cheapest = Double.POSITIVE_INFINITY;
    for (JsonNode c : every.get("choices")) {
      if (c.get("met").booleanValue()) {
        cheapest = Math.min(cheapest, c.get("price").doubleValue());
      }
    }
    assertEquals(cheapest, every.get("best").get("price").doubleValue());
    assertTrue(Files.exists(folder.resolve("out/size.html")));
    assertFalse(Files.exists(folder.resolve("out/size.journal")));
  }

  /** Insulation, panels and lead-acid batteries of the usual list: 6 x 6 x 4. */
  private static String grid() {
    StringBuilder list = new StringBuilder();
    int[][] boards = {{0, 0}, {20, 15}, {40, 25}, {60, 35}};
    int[][] panels = {{10, 18}, {20, 25}, {40, 40}, {80, 65}, {160, 110}, {320, 200}};
    int[][] batteries = {{7, 22}, {12, 35}, {20, 55}, {40, 95}, {80, 160}, {160, 300}};
    for (int[] b : boards) {
      list.append(choice("insulation", "hive.insulation=" + b[0] + " mm", b[1]));
    }
    for (int[] p : panels) {
      list.append(choice("panel", "pv.power=" + p[0] + " W", p[1]));
    }
    for (int[] b : batteries) {
      list.append(choice("battery", "battery.capacity=" + b[0] + " Ah", b[1]));
    }
    return list.toString();
  }

  /** The same on a grid of 144 combinations over thirty seasons, as they are when left out. */
  @Test
  @Tag("campaign")
  void pruningDoesNotChangeTheChoiceOnTheWholeGrid() throws IOException {
    Assumptions.assumeTrue(
        Integer.getInteger("broodbench.campaign.percent", 100) == 100,
        "a share of the campaigns leaves the whole grid out");
    Path rig = scenario(grid());
    JsonNode pruned = size(0, rig);
    JsonNode every = size(0, rig, "--every");
    assertEquals(30, every.get("seasons").intValue());
    assertEquals(144, every.get("choices").size());
    assertTrue(
        3 * pruned.get("seasons_simulated").intValue()
            < 2 * every.get("seasons_simulated").intValue(),
        "a third of the seasons is saved at least");
    assertEquals(every.get("best"), pruned.get("best"));
    assertEquals(every.get("curve"), pruned.get("curve"));
    assertEquals(every.get("cheapest_by_first_part"), pruned.get("cheapest_by_first_part"));
  }

  /** Heaters, pans and chemistries, of which none is simply stronger, rule each other out never. */
  @Test
  void pruningKeepsWhatCannotBeCompared() throws IOException {
    String list =
        choice("insulation", "hive.insulation=20 mm", 15)
            + choice("insulation", "hive.insulation=40 mm", 25)
            + choice("heater", "heater.power=3 W", 10)
            + choice("heater", "heater.power=20 W", 15)
            + choice("panel", "pv.power=20 W", 25)
            + choice("panel", "pv.power=160 W", 110)
            + choice("battery", "battery.chemistry=agm | battery.capacity=12 Ah", 35)
            + choice("battery", "battery.chemistry=agm | battery.capacity=40 Ah", 95)
            + choice("battery", "battery.chemistry=lfp | battery.capacity=12 Ah", 60);
    Path rig = scenario(list);
    String[] season = {"--seasons", "2", "--weeks", "1"};
    JsonNode pruned = size(0, rig, season);
    JsonNode every = size(0, rig, "--seasons", "2", "--weeks", "1", "--every");
    assertEquals(24, every.get("choices").size());
    assertTrue(pruned.get("choices").size() < 24, "something is pruned");
    assertEquals(every.get("best"), pruned.get("best"));
    assertEquals(every.get("curve"), pruned.get("curve"));
    assertEquals(every.get("cheapest_by_first_part"), pruned.get("cheapest_by_first_part"));
    assertEquals(every.get("one_more_day"), pruned.get("one_more_day"));
    assertTrue(
        every.get("one_more_day").get("hardest_day_wh").doubleValue() > 14, "controller alone");
  }

  @Test
  void badListsAreToldBeforeAnythingRuns() throws IOException {
    Path rig =
        scenario(
            list()
                + choice("panel", "pv.powr=10 W", 3)
                + choice("panel", "pv.power=10 km", 3).replace("EUR", "EUR"));
    Program run = Program.run("size", rig.toString(), "--out", folder.resolve("none").toString());
    assertEquals(2, run.code, run.out);
    assertTrue(run.err.contains("pv.powr"), run.err);
    assertTrue(run.err.contains("10 km"), run.err);
    assertFalse(Files.exists(folder.resolve("none")));
    Path mixed = scenario(list() + choice("panel", "pv.power=10 W", 3).replace("EUR", "USD"));
    Program money = Program.run("run", mixed.toString(), "--out", folder.resolve("m").toString());
    assertEquals(2, money.code);
    assertTrue(money.err.contains("currencies"), money.err);
  }
}

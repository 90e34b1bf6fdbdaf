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

  /** The same on the usual list of 144 combinations. */
  @Test
  @Tag("campaign")
  void pruningDoesNotChangeTheChoiceOnTheWholeGrid() throws IOException {
    Assumptions.assumeTrue(
        Integer.getInteger("broodbench.campaign.percent", 100) == 100,
        "a share of the campaigns leaves the whole grid out");
    Path rig = scenario("");
    JsonNode pruned = size(0, rig, "--seasons", "10", "--weeks", "4");
    JsonNode every = size(0, rig, "--seasons", "10", "--weeks", "4", "--every");
    assertEquals(144, every.get("choices").size());
    assertEquals(every.get("best"), pruned.get("best"));
    assertEquals(every.get("curve"), pruned.get("curve"));
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

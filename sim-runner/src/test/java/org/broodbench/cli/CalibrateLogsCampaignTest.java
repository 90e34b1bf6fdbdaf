package org.broodbench.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Logs with the faults of loggers, read and fitted as a user does it. */
class CalibrateLogsCampaignTest {
  private static final String SCENARIO = "../scenarios/late-split.toml";

  @TempDir static Path folder;

  private static Program calibrate(List<String> lines, String... more) throws IOException {
    Path file = folder.resolve("log.csv");
    Files.write(file, lines);
    List<String> words =
        new ArrayList<>(List.of("calibrate", SCENARIO, "--log", file.toString(), "--json"));
    words.addAll(List.of("--out", folder.resolve("out").toString()));
    words.addAll(List.of(more));
    return Program.run(words.toArray(String[]::new));
  }

  private static JsonNode fitted(Program a) throws IOException {
    assertEquals(0, a.code, a.err + a.out);
    return new ObjectMapper().readTree(a.out);
  }

  /** The heater is 16 W in every log of this class, 20 W in the scenario. */
  private static void theHeaterIsFound(JsonNode json) {
    for (JsonNode p : json.get("parameters")) {
      if (p.get("name").asText().equals("heater_power")) {
        // half a watt: the relay is known to the minute, the clock to some minutes
        assertEquals(16, p.get("value").asDouble(), 0.5);
        assertTrue(p.get("told_by_log").asBoolean());
      }
    }
  }

  @Test
  @Tag("campaign")
  void aLogOfAnotherHiveExitsWithOneAndTheReasons() throws IOException {
    List<String> log = FieldLogs.made(folder, 3);
    Program a =
        calibrate(
            log,
            "--set",
            "heater.power=80 W",
            "--set",
            "colony.bees=30000",
            "--set",
            "hive.loss_factor=4");
    assertEquals(1, a.code, a.err + a.out);
    JsonNode json = new ObjectMapper().readTree(a.out);
    assertTrue(json.get("misfit").size() > 0, a.out);
    assertTrue(json.get("misfit").get(0).asText().length() > 30, a.out);
  }

  @Test
  @Tag("campaign")
  void shuffledRowsOfAClockThatGainsWithoutARelayAreFitted() throws IOException {
    List<String> log = FieldLogs.made(folder, 5, "--set", "heater.power=16 W");
    long from = FieldLogs.at(log, 1);
    List<String> drifting = FieldLogs.stamped(log, t -> t + (t - from) / 120);
    List<String> rows = new ArrayList<>();
    for (int i = 1; i < drifting.size(); i++) {
      rows.add(FieldLogs.with(drifting, i, "heater_on", ""));
    }
    Collections.shuffle(rows, new Random(1));
    rows.add(0, drifting.get(0));
    JsonNode json = fitted(calibrate(rows));
    String notes = json.get("notes").toString();
    assertTrue(notes.contains("the rows were sorted by time"), notes);
    // 12 minutes a day over five days
    assertTrue(notes.contains("it drifts"), notes);
    assertTrue(json.get("relay").get("confidence").asDouble() > 0.9, json.get("relay").toString());
    theHeaterIsFound(json);
  }

  @Test
  @Tag("campaign")
  void summerTimeAndAGapOfThreeDaysAreTakenOff() throws IOException {
    List<String> log = FieldLogs.made(folder, 9, "--set", "heater.power=16 W");
    long change = FieldLogs.at(log, 1) + 2 * 86_400;
    List<String> stamped = FieldLogs.stamped(log, t -> t + (t < change ? 3600 : 7200));
    List<String> rows = new ArrayList<>(stamped.subList(0, 1 + 4 * 1440));
    rows.addAll(stamped.subList(1 + 7 * 1440, stamped.size()));
    JsonNode json = fitted(calibrate(rows));
    String notes = json.get("notes").toString();
    assertTrue(notes.contains("as for summer time"), notes);
    assertTrue(notes.contains("gap of 7"), notes);
    theHeaterIsFound(json);
  }
}

package org.broodbench.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class StressCommandTest {
  @TempDir private Path folder;

  @Test
  void writesWhatTheContractSays() throws IOException {
    Program p = Program.run("stress", "--weeks", "1", "--json", "--out", folder.toString());
    assertEquals(1, p.code, p.err);
    assertEquals("", p.err, "no progress where there is no terminal");
    JsonNode json = new ObjectMapper().readTree(p.out);
    assertEquals("broodbench-stress/1", json.get("format").asText());
    assertTrue(json.get("whole").asBoolean());
    assertTrue(json.get("rows").size() >= 26);
    for (JsonNode row : json.get("rows")) {
      for (String key : List.of("fault", "week", "met", "hours_to_harm", "alarm", "carry")) {
        assertTrue(row.has(key), key);
      }
    }
    assertEquals("none", json.get("rows").get(0).get("fault").asText());
    assertEquals(p.out, Files.readString(folder.resolve("stress.json")));
    List<String> csv = Files.readAllLines(folder.resolve("stress.csv"));
    assertEquals(json.get("rows").size() + 1, csv.size());
    String page = Files.readString(folder.resolve("stress.html"));
    assertTrue(page.contains("heater relay welded"));
    assertFalse(page.contains("<script"));
    assertFalse(Files.exists(folder.resolve("stress.journal")), "the study is whole");
  }

  @Test
  void refusesWhatItCannotDo() {
    Program p = Program.run("stress", "--weeks", "0", "--out", folder.toString());
    assertEquals(2, p.code);
    assertTrue(p.err.contains("1 to 100"), p.err);
    assertEquals(2, Program.run("stress", "--threads", "0", "--out", folder.toString()).code);
  }

  @Test
  void twoNamedFaultsAtEveryLoss() throws IOException {
    Path out = folder.resolve("pairs");
    Program p =
        Program.run(
            "stress",
            "--weeks",
            "1",
            "--pair",
            "probe_stuck+relay_welded",
            "--pair",
            "relay_welded + probe_stuck",
            "--all-losses",
            "--out",
            out.toString());
    assertEquals(1, p.code, p.err);
    List<String> csv = Files.readAllLines(out.resolve("stress.csv"));
    assertTrue(csv.get(0).endsWith(",carry,heat_loss,heat_loss_factor"), csv.get(0));
    List<String> pair =
        csv.stream().filter(l -> l.startsWith("probe_stuck+relay_welded,")).toList();
    assertEquals(3, pair.size(), "the same pair twice counts once");
    assertTrue(pair.get(0).endsWith(",low,1.0"), pair.get(0));
    assertTrue(pair.get(1).endsWith(",own,2.0"), pair.get(1));
    assertTrue(pair.get(2).endsWith(",high,2.85"), pair.get(2));
    JsonNode json = new ObjectMapper().readTree(out.resolve("stress.json").toFile());
    assertEquals(csv.size() - 1, json.get("rows").size());
    assertEquals(2.85, json.get("rows").get(2).get("heat_loss_factor").asDouble());
    List<String> told =
        p.out.lines().filter(l -> l.startsWith("brood probe stuck and heater relay")).toList();
    assertEquals(1, told.size(), p.out);
    assertTrue(told.get(0).matches(".* (low|own|high)"), told.get(0));
    assertTrue(
        Files.readString(out.resolve("stress.html"))
            .contains("heater relay welded, high heat loss"));
  }

  @Test
  void pairsThatAreNoneAreRefusedAllAtOnce() {
    Path out = folder.resolve("none");
    Program p =
        Program.run(
            "stress",
            "--pair",
            "relay_weld+lid_off",
            "--pair",
            "lid_off",
            "--pair",
            "probe_reads_low+probe_reads_high",
            "--pair",
            "inverter_tripped+zzz",
            "--out",
            out.toString());
    assertEquals(2, p.code);
    for (String words :
        List.of(
            "found relay_weld, allowed the name of a fault",
            "Did you mean relay_welded?",
            "found lid_off, allowed two faults joined by a plus",
            "allowed two faults of different things",
            "found inverter_tripped, allowed what this rig has: probe_open, ",
            "found zzz",
            "Known: probe_open, ",
            "5 problems; nothing was run.")) {
      assertTrue(p.err.contains(words), words + " in " + p.err);
    }
    assertFalse(Files.exists(out));
  }

  @Test
  void theLineTellsHowLongItStillTakes() {
    assertEquals("10 of 110", ProgressLine.words(10, 110, 10, 3));
    assertEquals("60 of 110, 50 s left", ProgressLine.words(60, 110, 10, 50));
    assertEquals("20 of 1010, 9 min left", ProgressLine.words(20, 1010, 10, 5.4));
  }
}

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
import org.broodbench.firmware.Firmwares;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ConformCommandTest {
  private static final ObjectMapper JSON = new ObjectMapper();

  @TempDir Path folder;

  private Program conform(Path firmware, String... more) {
    List<String> args =
        new java.util.ArrayList<>(
            List.of("conform", "--process", firmware.toString(), "--out", out().toString()));
    args.addAll(List.of(more));
    return Program.run(args.toArray(String[]::new));
  }

  private Path out() {
    return folder.resolve("out");
  }

  @Test
  void theCFormIsEqual() throws IOException {
    Path firmware = Firmwares.reference(folder);
    Program run = conform(firmware, "--json", "--ticks", "60000");
    assertEquals(0, run.code, run.err + run.out);
    JsonNode v = JSON.readTree(run.out);
    assertEquals("broodbench-conform/1", v.get("format").textValue());
    assertTrue(v.get("equal").booleanValue());
    assertTrue(v.get("fault").isNull());
    assertTrue(v.get("steps").intValue() >= 60_000, run.out);
    assertTrue(v.get("first_difference").isNull());
    assertTrue(v.get("shortest_steps").isNull());
    assertTrue(v.get("shortest_file").isNull());
    assertTrue(v.get("rules").get("exercised").size() > 85, run.out);
    assertFalse(Files.exists(out()), "nothing to write");
  }

  /** A few things that people get wrong; each rule named is the one that was broken. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '\0',
      textBlock =
          """
          bb_basics.c | r->min_off_remaining_millis == 0 && starts_left | r->min_off_remaining_millis <= 1 && starts_left | R3
          bb_heater.c | d->working_centi_c += parts / BB_HOUR_MILLIS; | d->working_centi_c += 2 * (parts / BB_HOUR_MILLIS); | H3
          bb_heater.c | brood->stop_centi_c >= d->working_centi_c | brood->stop_centi_c > d->working_centi_c | H6
          bb_power.c | milli_a * s[BB_BATTERY_MILLI_OHM] | -milli_a * s[BB_BATTERY_MILLI_OHM] | B1
          bb_basics.c | t->backwards = difference > INT32_MAX | t->backwards = now_millis < t->last_millis | T2
          """)
  void aBugIsFoundNamedAndMadeShort(String file, String right, String wrong, String rule)
      throws IOException {
    Path firmware = Firmwares.changed(folder, file, right, wrong);
    Program run = conform(firmware, "--json", "--ticks", "60000");
    assertEquals(1, run.code, run.err + run.out);
    JsonNode v = JSON.readTree(run.out);
    assertFalse(v.get("equal").booleanValue());
    assertTrue(v.get("fault").isNull(), run.out);
    JsonNode d = v.get("first_difference");
    assertFalse(d.get("expected").equals(d.get("got")));
    if (!rule.equals("T2")) { // what a wrong difference of time leads to may be anything
      assertEquals(rule, d.get("rule").textValue(), run.out);
    }
    // a ramp over hours needs a step a minute: no gap releases more than 60 s (rule T3)
    int most = rule.equals("H6") ? 150 : 30;
    assertTrue(v.get("shortest_steps").intValue() <= most, run.out);
    Path shortest = Path.of(v.get("shortest_file").textValue());
    Program again = conform(firmware, "--json", "--vectors", shortest.toString());
    JsonNode w = JSON.readTree(again.out);
    assertEquals(1, again.code, again.err);
    assertEquals(
        d.get("field").textValue(),
        w.get("first_difference").get("field").textValue(),
        "the file replays the difference");
    assertEquals(
        v.get("shortest_steps").intValue() - 1, w.get("first_difference").get("step").intValue());
    assertEquals(0, conform(Firmwares.reference(folder), "--vectors", shortest.toString()).code);
  }

  @Test
  void theFirstDifferenceIsTold() {
    Path firmware =
        Firmwares.changed(
            folder,
            "bb_basics.c",
            "r->min_off_remaining_millis == 0 && starts_left",
            "r->min_off_remaining_millis <= 1000 && starts_left");
    Program run = conform(firmware);
    for (String words :
        List.of(
            "NOT EQUAL",
            ": expected off, got on.",
            "of SPEC.md: ",
            "off since step",
            "min_off",
            "Shortest sequence found that still shows it:",
            "shortest.csv",
            "Violated: ",
            "R3")) {
      assertTrue(run.out.contains(words), words + "\n" + run.out);
    }
  }

  @Test
  void whatCannotBeStartedIsBadInput() {
    for (String missing :
        List.of("/no/such/program", folder.toString(), "sh -c /no/such/program")) {
      Program run = Program.run("conform", "--process", missing);
      assertEquals(2, run.code, missing + ": " + run.out + run.err);
      assertEquals("", run.out);
      assertTrue(run.err.contains("Cannot be started"), run.err);
    }
    for (String[] args :
        new String[][] {
          {"conform"},
          {"conform", "--process", ""},
          {"conform", "--process", "a 'b"},
          {"conform", "--process", "true", "--ticks", "0"},
          {"conform", "--process", "true", "--timeout", "0"},
          {"conform", "--process", "true", "--vectors", "no-such.csv"}
        }) {
      Program run = Program.run(args);
      assertEquals(2, run.code, String.join(" ", args) + run.out);
      assertFalse(run.err.isBlank());
    }
  }
}

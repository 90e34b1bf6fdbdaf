package org.broodbench.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.broodbench.firmware.Firmwares;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Vector files, recorded logs and the closed loop of {@code conform}. */
class ConformFilesTest {
  private static final ObjectMapper JSON = new ObjectMapper();

  @TempDir static Path folder;
  private static Path vectors;
  private static Program written;

  @BeforeAll
  static void writeVectorsOnce() {
    vectors = folder.resolve("vectors");
    written = Program.run("conform", "--write-vectors", vectors.toString(), "--ticks", "2000");
  }

  private static List<String> week() throws IOException {
    return Files.readAllLines(vectors.resolve("week.csv"));
  }

  @Test
  void vectorsAreWrittenAndTheCFormPlaysThem() throws IOException {
    assertEquals(0, written.code, written.err);
    List<String> args =
        new ArrayList<>(
            List.of("conform", "--process", Firmwares.reference(folder).toString(), "--json"));
    try (Stream<Path> files = Files.list(vectors)) {
      for (Path file : files.sorted().toList()) {
        assertEquals("format,broodbench-vector/1", Files.readAllLines(file).get(0));
        if (!file.toString().contains("changes-box") && !file.toString().contains("lithium")) {
          args.addAll(List.of("--vectors", file.toString()));
        }
      }
    }
    assertTrue(args.size() > 30, args.toString());
    Program run = Program.run(args.toArray(String[]::new));
    assertEquals(0, run.code, run.err + run.out);
    JsonNode v = JSON.readTree(run.out);
    assertTrue(v.get("steps").intValue() > 40_000, run.out);
    assertTrue(week().stream().filter(l -> l.startsWith("step,")).count() > 7 * 1440);
  }

  @Test
  void everyMistakeInAVectorFileIsToldWithItsPlace() throws IOException {
    List<String> lines = new ArrayList<>(week().subList(0, 150));
    lines.set(2, "place,attic");
    lines.set(5, "setting,no_such_setting,1");
    lines.set(6, "setting,fitted_pan,often");
    lines.add("jump,1");
    Path file = Files.write(folder.resolve("wrong.csv"), lines);
    Program run = Program.run("conform", "--process", "true", "--vectors", file.toString());
    assertEquals(2, run.code, run.out);
    for (String words :
        List.of(":3:7", "attic", "brood_comb", ":6:", "no_such_setting", ":7:", "often", ":151:")) {
      assertTrue(run.err.contains(words), words + "\n" + run.err);
    }
    Path other = Files.writeString(folder.resolve("other.csv"), "a,b\n1,2\n");
    run = Program.run("conform", "--process", "true", "--vectors", other.toString());
    assertEquals(2, run.code);
    assertTrue(run.err.contains("format,broodbench-vector/1"), run.err);
  }

  // ---- logs ----

  /** A week of the reference as a logger with a row a minute would have it. */
  private static Path log(String name, int shiftRows, int stuckFrom) throws IOException {
    List<String> lines = week();
    String[] columns =
        lines.stream().filter(l -> l.startsWith("columns,")).findFirst().orElseThrow().split(",");
    List<String> rows = lines.stream().filter(l -> l.startsWith("step,")).toList();
    int heater = List.of(columns).indexOf("heater");
    List<String> out = new ArrayList<>();
    out.add(
        "time_ms,brood_a_c,pan_c,outdoor_c,humidity_percent,battery_v,battery_current_a,charger_full,heater,fan");
    for (int i = 0; i < rows.size(); i++) {
      String[] c = rows.get(i).split(",", -1);
      String[] shifted = rows.get(Math.max(0, i - shiftRows)).split(",", -1);
      boolean stuck = stuckFrom > 0 && i >= stuckFrom;
      out.add(
          String.join(
              ",",
              String.valueOf(60_000L * i),
              cell(c, columns, "brood_a_centi_c", 100),
              cell(c, columns, "pan_centi_c", 100),
              cell(c, columns, "outdoor_centi_c", 100),
              cell(c, columns, "humidity_permille", 10),
              cell(c, columns, "battery_milli_v", 1000),
              cell(c, columns, "battery_current_milli_a", 1000),
              c[List.of(columns).indexOf("charger_full")],
              stuck ? "1" : shifted[heater],
              shifted[List.of(columns).indexOf("fan")]));
    }
    return Files.write(folder.resolve(name), out);
  }

  private static String cell(String[] row, String[] columns, String name, int scale) {
    String text = row[List.of(columns).indexOf(name)];
    return text.isEmpty() ? "" : String.valueOf(Integer.parseInt(text) / (double) scale);
  }

  @Test
  void aLogOfTheReferenceAgreesWithinTheTolerance() throws IOException {
    Path exact = log("exact.csv", 0, 0);
    String[] minutes = {"--set", "controller.tick=60 s"};
    Program run =
        Program.run(
            "conform", "--log", exact.toString(), minutes[0], minutes[1], "--tolerance", "0");
    assertEquals(0, run.code, run.out + run.err);
    Path late = log("late.csv", 1, 0);
    run = Program.run("conform", "--log", late.toString(), minutes[0], minutes[1]);
    assertEquals(0, run.code, run.out + run.err);
    assertTrue(run.out.contains("up to 2 min 0 s"), run.out);
    run =
        Program.run(
            "conform", "--log", late.toString(), minutes[0], minutes[1], "--tolerance", "0");
    assertEquals(1, run.code, "a minute late is too late without tolerance");
  }

  @Test
  void aLogOfAHeaterThatStaysOnDisagrees() throws IOException {
    Path stuck = log("stuck.csv", 0, 3000);
    Program run =
        Program.run(
            "conform", "--log", stuck.toString(), "--set", "controller.tick=60 s", "--json");
    assertEquals(1, run.code, run.out + run.err);
    JsonNode d = JSON.readTree(run.out).get("first_difference");
    assertEquals("heater", d.get("field").textValue());
    assertEquals("0", d.get("expected").textValue());
    assertEquals("1", d.get("got").textValue());
    assertTrue(d.get("line").intValue() >= 3002, run.out);
    assertTrue(d.get("lasted_ms").longValue() > 120_000, run.out);
  }

  @Test
  void aLogThatCannotBeReadIsRefused() throws IOException {
    Path bad = Files.writeString(folder.resolve("bad.csv"), "time,pan_c\nyesterday,warm\n");
    Program run = Program.run("conform", "--log", bad.toString());
    assertEquals(2, run.code);
    for (String words : List.of("heater", "brood_a", "yesterday", "warm")) {
      assertTrue(run.err.contains(words), words + "\n" + run.err);
    }
    assertEquals(2, Program.run("conform", "--log", "no-such-log.csv").code);
    Path trace =
        Files.writeString(
            folder.resolve("trace.csv"),
            "time,brood_c,probe_a_c,heater_on\n2027-04-20T00:00:00Z,34,34.06,0\n");
    run = Program.run("conform", "--log", trace.toString());
    assertEquals(2, run.code);
    assertTrue(run.err.contains("calibrate reads it"), run.err);
  }

  // ---- closed loop ----

  private static Program driven(Path firmware, String... more) {
    List<String> args =
        new ArrayList<>(
            List.of(
                "conform",
                "../scenarios/late-split.toml",
                "--process",
                firmware.toString(),
                "--days",
                "2",
                "--set",
                "controller.tick=20 s",
                "--out",
                folder.resolve("loop").toString(),
                "--ticks",
                "2000",
                "--json"));
    args.addAll(List.of(more));
    return Program.run(args.toArray(String[]::new));
  }

  @Test
  void theCFormDrivesTheHiveAsTheReferenceDoes() throws IOException {
    Program run = driven(Firmwares.reference(folder));
    assertEquals(0, run.code, run.out + run.err);
    JsonNode loop = JSON.readTree(run.out).get("closed_loop");
    assertTrue(loop.get("requirements").size() > 3);
    for (JsonNode r : loop.get("requirements")) {
      assertEquals(r.get("reference"), r.get("firmware"), r.toString());
      assertEquals(r.get("reference_met"), r.get("firmware_met"), r.toString());
    }
  }

  @Test
  void aSilentFirmwareIsJudgedByWhatBecomesOfTheHive() throws IOException {
    Path silent =
        Firmwares.changed(
            folder,
            "bb_link.c",
            "      l->last_millis = l->now_millis;",
            "      l->last_millis = l->now_millis; if (l->next == 4000) { for (volatile int i = 0;; i++) { } }");
    Program run = driven(silent, "--timeout", "0.5");
    assertEquals(1, run.code, run.out + run.err);
    JsonNode v = JSON.readTree(run.out);
    assertEquals("hang", v.get("fault").textValue());
    assertTrue(v.get("heater_failed_off").isBoolean());
    assertTrue(v.get("closed_loop").get("requirements").size() > 3);
  }
}

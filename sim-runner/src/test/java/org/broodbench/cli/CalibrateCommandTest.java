package org.broodbench.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The verb as a user types it, on the trace of a run as a log. */
class CalibrateCommandTest {
  @TempDir static Path folder;

  private static Path scenario;
  private static Path log;

  /** The demo's hive as it is: a fifth less heater than the keeper believes. */
  @BeforeAll
  static void log() throws IOException {
    scenario = Path.of("../scenarios/late-split.toml");
    Path made = folder.resolve("made");
    Program.run(
        "run",
        scenario.toString(),
        "--days",
        "5",
        "--set",
        "heater.power=16 W",
        "--out",
        made.toString());
    log = made.resolve("trace.csv");
  }

  @Test
  void theWeakHeaterIsFoundAndTheFittedScenarioRuns() throws IOException {
    Path out = folder.resolve("out");
    Program a =
        Program.run(
            "calibrate",
            scenario.toString(),
            "--log",
            log.toString(),
            "--set",
            "fan.power=1.3 W",
            "--threads",
            "2",
            "--out",
            out.toString(),
            "--json");
    assertEquals(0, a.code, a.err + a.out);
    JsonNode json = new ObjectMapper().readTree(a.out);
    assertEquals("broodbench-calibrate/1", json.get("format").asText());
    assertEquals(a.out, Files.readString(out.resolve("calibration.json")));
    for (JsonNode p : json.get("parameters")) {
      if (p.get("name").asText().equals("heater_power")) {
        // within half a watt: the log has the relay every minute only
        assertEquals(16, p.get("value").asDouble(), 0.5);
        assertTrue(p.get("told_by_log").asBoolean());
        assertTrue(p.get("high").asDouble() < 20);
      }
    }
    // readings are rounded to a sixteenth and the nest follows slowly: half a kelvin is well caught
    assertTrue(json.get("held_out_rmse_k").asDouble() < 0.5);
    // the log was made by the scenario's own controller, which is the reference
    JsonNode decisions = json.get("decisions");
    assertEquals(0, decisions.get("differences").size(), decisions.toString());
    assertTrue(json.get("notes").toString().contains("clock: by the sun in the log it is right"));
    fittedLinesSayWhereTheyComeFrom(Files.readString(out.resolve("calibrated.toml")));
    Program again =
        Program.run(
            "run",
            out.resolve("calibrated.toml").toString(),
            "--days",
            "1",
            "--out",
            folder.resolve("again").toString());
    assertTrue(again.code <= 1, again.err);
  }

  private static void fittedLinesSayWhereTheyComeFrom(String fitted) throws IOException {
    assertTrue(fitted.startsWith("# Fitted to the log trace.csv"), fitted);
    List<String> lines = fitted.lines().toList();
    String heater =
        "power = \"1[56][.0-9]* W\"  # told by the log: 90 % between 1[56][.0-9]* and 1[67][.0-9]* W,"
            + " before 20.*";
    assertTrue(lines.stream().anyMatch(l -> l.matches(heater)), fitted);
    assertTrue(lines.contains("power = \"1.3 W\"  # set on the command line"), fitted);
    assertTrue(fitted.contains("# steep, for the low sun and to shed snow"), fitted);
    for (String line : Files.readAllLines(scenario)) {
      if (line.startsWith("#")) {
        assertTrue(lines.contains(line), line);
      }
    }
  }

  @Test
  void aLogInFahrenheitIsRefusedWithTheColumn() throws IOException {
    List<String> lines = Files.readAllLines(log);
    StringBuilder text = new StringBuilder("time,brood_a_c,outdoor_c,ghi_w_m2\n");
    for (String line : lines.subList(1, lines.size())) {
      String[] c = line.split(",");
      text.append(c[0])
          .append(',')
          .append(Double.parseDouble(c[2]) * 1.8 + 32)
          .append(",10,")
          .append(c[9])
          .append('\n');
    }
    Path f = folder.resolve("f.csv");
    Files.writeString(f, text);
    Program a = Program.run("calibrate", scenario.toString(), "--log", f.toString());
    assertEquals(2, a.code);
    assertTrue(a.err.contains("as Fahrenheit they are"), a.err);
    assertEquals("", a.out);
  }

  @Test
  void aMappingReadsAnotherTable() throws IOException {
    List<String> lines = Files.readAllLines(log);
    StringBuilder text = new StringBuilder("made by a logger\nday;hour;T1;T2;Sun;Relay\n");
    for (String line : lines.subList(1, 3 * 1440)) {
      String[] c = line.split(",");
      // summer time, two hours ahead of UTC
      c[0] = Instant.parse(c[0]).plusSeconds(7200).toString();
      String[] day = c[0].substring(0, 10).split("-");
      text.append(day[2] + "." + day[1] + "." + day[0])
          .append(';')
          .append(c[0], 11, 16)
          .append(';')
          .append(String.valueOf(Double.parseDouble(c[2]) * 1.8 + 32).replace('.', ','))
          .append(';')
          .append(c[8].replace('.', ','))
          .append(';')
          .append(c[9].replace('.', ','))
          .append(c[12].equals("1") ? ";on" : ";off")
          .append('\n');
    }
    Path table = folder.resolve("table.csv");
    Files.writeString(table, text);
    Path map = folder.resolve("map.toml");
    Files.writeString(
        map,
        """
        [log]
        separator = ";"
        decimal_comma = true
        skip_lines = 1
        time_columns = "day|hour"
        time_order = "dmyhn"
        [[log.column]]
        name = "T1"
        what = "brood_a"
        unit = "degF"
        [[log.column]]
        name = "T2"
        what = "outdoor"
        [[log.column]]
        name = "Sun"
        what = "sun"
        [[log.column]]
        name = "Relay"
        what = "heater"
        """);
    Program a =
        Program.run(
            "calibrate",
            scenario.toString(),
            "--log",
            table.toString(),
            "--map",
            map.toString(),
            "--out",
            folder.resolve("mapped").toString());
    assertEquals(0, a.code, a.err + a.out);
    assertTrue(a.out.contains("table.csv against Late split"), a.out);
    assertTrue(a.out.contains("2 h 0 min ahead of UTC was taken off"), a.out);
    assertTrue(a.out.contains("rows, 2027-04-20T00:00:00Z to"), a.out);
  }

  @Test
  void aMissingColumnIsNamedWithWhatIsThere() throws IOException {
    Path f = folder.resolve("strange.csv");
    Files.writeString(f, "when,T1\n2027-04-20T00:00:00Z,3\n");
    Program a = Program.run("calibrate", scenario.toString(), "--log", f.toString());
    assertEquals(2, a.code);
    assertTrue(a.err.contains("time"), a.err);
    assertTrue(a.err.contains("when, T1") || a.err.contains("T1, when"), a.err);
  }

  /**
   * A process whose standard error is no terminal: the stages are told where they are asked for.
   */
  @Test
  void stagesAreToldWhereTheyAreAskedFor() throws Exception {
    assertEquals("", stages("0"));
    String told = stages("1");
    assertTrue(told.contains("calibrate: fit to the whole log"), told);
    assertTrue(told.lines().allMatch(l -> l.startsWith("calibrate: ")), told);
  }

  private static String stages(String asked) throws Exception {
    Path some =
        Files.write(folder.resolve("some.csv"), Files.readAllLines(log).subList(0, 1 + 2160));
    Path err = folder.resolve("stages");
    ProcessBuilder builder =
        new ProcessBuilder(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-cp",
            System.getProperty("java.class.path"),
            Main.class.getName(),
            "calibrate",
            scenario.toString(),
            "--log",
            some.toString(),
            "--out",
            folder.resolve("staged").toString());
    builder.environment().put(ProgressLine.ALWAYS, asked);
    Process p =
        builder.redirectOutput(ProcessBuilder.Redirect.DISCARD).redirectError(err.toFile()).start();
    assertTrue(p.waitFor(5, TimeUnit.MINUTES), "it does not end");
    return Files.readString(err);
  }
}

package org.broodbench.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RunCommandTest {
  private static final ObjectMapper JSON = new ObjectMapper();

  @TempDir static Path shared;
  private static Path demo;
  private static Program demoRun;

  @BeforeAll
  static void runTheDemoOnce() {
    demo = shared.resolve("demo");
    demoRun = Program.run("run", "--days", "3", "--out", demo.toString());
  }

  private static JsonNode verdict(Path folder) throws IOException {
    return JSON.readTree(folder.resolve("verdict.json").toFile());
  }

  @Test
  void theDemoRunsWithoutAnArgumentAndSaysWhatItFound() throws IOException {
    JsonNode v = verdict(demo);
    assertEquals(v.get("met").booleanValue() ? 0 : 1, demoRun.code, demoRun.err);
    assertTrue(demoRun.out.contains("Late split"), demoRun.out);
    assertTrue(demoRun.out.contains("planning aid"), demoRun.out);
    assertEquals("broodbench-verdict/1", v.get("format").textValue());
    assertEquals("late-split.toml", v.get("scenario").get("file").textValue());
    for (String file : List.of("verdict.json", "trace.csv", "events.csv", "report.html")) {
      assertTrue(Files.size(demo.resolve(file)) > 100, file);
    }
    try (var files = Files.list(demo)) {
      assertEquals(4, files.count(), "nothing but the four results is left behind");
    }
  }

  /**
   * Every key of the contract, with its type: o object, a array, n number, t text, b truth value, -
   * may be null.
   */
  @Test
  void theVerdictHoldsEveryKeyOfTheContract() throws IOException {
    JsonNode v = verdict(demo);
    List<String> missing = new ArrayList<>();
    for (String line :
        """
        format met seed scenario.title scenario.file scenario.sha256
        weather.source weather.format weather.from weather.to weather.filled_hours weather.warnings
        heater.starts heater.commanded_starts heater.starts_per_day heater.shortest_on_s heater.shortest_off_s heater.duty
        heater.early_stops.limit heater.early_stops.trust heater.early_stops.effect heater.early_stops.shed
        heater.early_stops.supply heater.early_stops.cooling heater.early_stops.service fan.starts fan.duty
        brood.band_low_c brood.band_high_c brood.mean_c brood.min_c brood.max_c brood.hours_below_band
        brood.hours_above_band brood.degree_hours_below brood.degree_hours_above
        battery.lowest_soc battery.lowest_v battery.final_soc battery.sheds battery.hours_shed
        battery.equivalent_full_cycles battery.days_since_full
        energy_wh.pv_available energy_wh.pv_used energy_wh.shore energy_wh.battery_change energy_wh.heater energy_wh.fan
        energy_wh.controller energy_wh.other_loads energy_wh.charge_loss energy_wh.battery_loss
        energy_wh.inverter_loss energy_wh.wiring_loss energy_wh.residual
        charge_ah.in charge_ah.out charge_ah.lost charge_ah.stored_change charge_ah.residual
        heat_wh.heater heat_wh.colony heat_wh.sun heat_wh.electronics heat_wh.latent_released heat_wh.lost_walls
        heat_wh.lost_air heat_wh.latent_taken heat_wh.stored_change heat_wh.residual
        water_g.made water_g.fetched water_g.in water_g.out water_g.drained water_g.condensed water_g.stored_change
        water_g.residual co2_g.made co2_g.in co2_g.out co2_g.stored_change co2_g.residual
        air.brood_rh_mean_percent air.brood_rh_min_percent air.co2_mean_percent air.co2_max_percent air.hours_condensing
        colony.bees_start colony.bees_end colony.brood_start colony.brood_end colony.brood_lost_to_cold
        colony.brood_lost_to_heat colony.feed_eaten_g baselines.no_heat baselines.insulation_only remedies alarms sure
        assumed cautions requirements"""
            .split("\\s+")) {
      if (v.at("/" + line.replace('.', '/')).isMissingNode()) {
        missing.add(line);
      }
    }
    assertEquals(List.of(), missing);
    for (JsonNode q : v.get("requirements")) {
      for (String key :
          List.of(
              "name",
              "met",
              "depends_on_colony",
              "value",
              "limit",
              "sense",
              "unit",
              "worst_at",
              "why")) {
        assertTrue(q.has(key), q + " lacks " + key);
      }
    }
    assertTrue(v.get("assumed").size() > 10);
    assertTrue(v.get("cautions").size() >= 4);
  }

  @Test
  void aMissedRunNamesWhatWouldMendItUnlessToldNotTo() throws IOException {
    Path out = shared.resolve("mended");
    String[] run = {
      "run", "--days", "3", "--set", "requirement.brood_in_band=100 %", "--out", out.toString()
    };
    Program missed =
        Program.run(
            java.util.stream.Stream.concat(
                    java.util.Arrays.stream(run),
                    java.util.stream.Stream.of("--set", "controller.heat.set_point=31 degC"))
                .toArray(String[]::new));
    JsonNode v = verdict(out);
    assertEquals(1, missed.code, missed.err);
    assertTrue(v.get("remedies").size() > 0, missed.out);
    JsonNode best = v.get("remedies").get(0);
    assertTrue(best.get("set").get(0).textValue().contains("="), best.toString());
    JsonNode effect = best.get("effects").get(0);
    assertEquals("brood_in_band", effect.get("name").textValue());
    assertTrue(effect.get("after").doubleValue() > effect.get("before").doubleValue());
    assertTrue(missed.out.contains("What to change: "), missed.out);
    assertTrue(missed.out.contains("--set "), missed.out);
    assertTrue(
        Files.readString(out.resolve("report.html")).contains("<h3 id=\"change\">What to change"));
    Program quick =
        Program.run(
            java.util.stream.Stream.concat(
                    java.util.Arrays.stream(run),
                    java.util.stream.Stream.of(
                        "--set", "controller.heat.set_point=31 degC", "--no-remedies"))
                .toArray(String[]::new));
    assertEquals(0, verdict(out).get("remedies").size());
    assertFalse(quick.out.contains("What to change"), quick.out);
  }

  /** |residual| ≤ 1e-6 of the sum of the absolute terms, in every ledger. */
  @Test
  void everyLedgerCloses() throws IOException {
    JsonNode v = verdict(demo);
    for (String ledger : List.of("energy_wh", "charge_ah", "heat_wh", "water_g", "co2_g")) {
      double sum = 0;
      for (var term : v.get(ledger).properties()) {
        if (!term.getKey().equals("residual")) {
          sum += Math.abs(term.getValue().doubleValue());
        }
      }
      assertTrue(sum > 0, ledger);
      double residual = v.get(ledger).get("residual").doubleValue();
      assertTrue(Math.abs(residual) <= 1e-6 * sum, ledger + ": " + residual + " of " + sum);
    }
  }

  @Test
  void equalRunsGiveEqualBytes() throws IOException {
    Path again = shared.resolve("again");
    Program second = Program.run("run", "--days", "3", "--out", again.toString());
    assertEquals(demoRun.code, second.code);
    for (String file : List.of("verdict.json", "trace.csv", "events.csv", "report.html")) {
      assertArrayEquals(
          Files.readAllBytes(demo.resolve(file)), Files.readAllBytes(again.resolve(file)), file);
    }
    assertFalse(
        Files.readString(demo.resolve("verdict.json")).contains(shared.toString()),
        "no absolute path in a result");
  }

  @Test
  void jsonOnStandardOutputIsTheVerdictAndNothingElse() throws IOException {
    Path out = shared.resolve("json");
    Program run = Program.run("run", "--days", "3", "--out", out.toString(), "--json");
    assertEquals(Files.readString(out.resolve("verdict.json")), run.out);
    assertEquals("", run.err);
  }

  @Test
  void theTraceHasARowAMinuteAndTheColumnsOfTheContract() throws IOException {
    List<String> lines = Files.readAllLines(demo.resolve("trace.csv"));
    assertEquals(3 * 1440 + 2, lines.size(), "head, start and one row a minute");
    List<String> head = List.of(lines.get(0).split(","));
    assertEquals("time", head.get(0));
    assertTrue(
        head.containsAll(
            List.of(
                "brood_c",
                "probe_a_c",
                "pan_c",
                "top_c",
                "outdoor_c",
                "ghi_w_m2",
                "heater_w",
                "heater_on",
                "fan_on",
                "shed_level",
                "soc",
                "battery_v",
                "pv_w",
                "load_w",
                "brood_rh_percent",
                "co2_percent")),
        lines.get(0));
    assertTrue(lines.get(1).startsWith("2027-04-20T00:00:00Z,"), lines.get(1));
    assertTrue(lines.get(2).startsWith("2027-04-20T00:01:00Z,"), lines.get(2));
    assertTrue(
        Files.readAllLines(demo.resolve("events.csv")).get(0).equals("time,what,from,to,reason"));
  }

  /** Powers are means of the interval, so their sum is the ledger's heater energy. */
  @Test
  void theTraceAddsUpToTheLedger() throws IOException {
    List<String> lines = Files.readAllLines(demo.resolve("trace.csv"));
    int column = List.of(lines.get(0).split(",")).indexOf("heater_w");
    double wh = 0;
    for (String line : lines.subList(2, lines.size())) {
      wh += Double.parseDouble(line.split(",", -1)[column]) / 60;
    }
    double ledgerWh = verdict(demo).get("energy_wh").get("heater").doubleValue();
    assertEquals(ledgerWh, wh, 1e-4 * ledgerWh + 0.01, "three decimals of a watt in the trace");
  }

  @Test
  void aSettingOnTheCommandLineChangesTheRun() throws IOException {
    Path out = shared.resolve("set");
    Program.run(
        "run",
        "--days",
        "3",
        "--out",
        out.toString(),
        "--set",
        "heater.power=0 W",
        "--set",
        "hive.insulation=0 mm");
    JsonNode v = verdict(out);
    assertEquals(0, v.get("energy_wh").get("heater").doubleValue());
    assertTrue(v.get("heater").get("shortest_on_s").isNull(), "what never happened is null");
    assertTrue(
        v.get("brood").get("min_c").doubleValue()
            < verdict(demo).get("brood").get("min_c").doubleValue() - 2);
  }

  @Test
  void aWeekOfMeasuredWinterIsReplayed() throws IOException {
    Path file = RealWeather.file("uurgeg_260_2000.txt");
    Path out = shared.resolve("knmi");
    Program run =
        Program.run(
            "run",
            "--weather",
            file.toString(),
            "--from",
            "2000-12-24",
            "--days",
            "7",
            "--out",
            out.toString());
    assertEquals(1, run.code, run.err);
    JsonNode v = verdict(out);
    assertEquals("knmi_hourly", v.get("weather").get("format").textValue());
    assertEquals("2000-12-24T00:00:00Z", v.get("weather").get("from").textValue());
    assertEquals("2000-12-31T00:00:00Z", v.get("weather").get("to").textValue());
    List<String> lines = Files.readAllLines(out.resolve("trace.csv"));
    int outdoor = List.of(lines.get(0).split(",")).indexOf("outdoor_c");
    int ghi = List.of(lines.get(0).split(",")).indexOf("ghi_w_m2");
    double sumC = 0;
    double sumWhM2 = 0;
    for (String line : lines.subList(2, lines.size())) {
      String[] cells = line.split(",", -1);
      sumC += Double.parseDouble(cells[outdoor]);
      sumWhM2 += Double.parseDouble(cells[ghi]) / 60;
    }
    // the record's own week: -0.1 °C on average and 0.50 kWh/m² a day
    assertEquals(-0.1, sumC / (lines.size() - 2), 0.1);
    assertEquals(0.50, sumWhM2 / 7000, 0.02);
    assertTrue(run.out.contains("weather is of winter"), run.out);
  }

  @Test
  void badInputIsRefusedWithExitCode2AndLeavesNothing() throws IOException {
    Path knmi = Files.writeString(shared.resolve("not-weather.csv"), "a,b\n1,2\n");
    String[][] cases = {
      {"run", "no-such-file.toml"},
      {"run", "--weather", "no-such-weather.csv"},
      {"run", "--weather", knmi.toString()},
      {"run", "--set", "heater.power=40 V"},
      {"run", "--set", "heater.powr=40 W"},
      {"run", "--set", "controller.fan.on_above=20 degC"},
      {"run", "--set", "nonsense"},
      {"run", "--from", "24.12.2000"},
      {"run", "--days", "0"},
      {"run", "--days", "many"},
      {"run", "--colour"},
      {"walk"},
    };
    for (int i = 0; i < cases.length; i++) {
      List<String> args = new ArrayList<>(List.of(cases[i]));
      Path out = shared.resolve("refused-" + i);
      if (args.get(0).equals("run")) {
        args.add("--out");
        args.add(out.toString());
      }
      Program run = Program.run(args.toArray(String[]::new));
      assertEquals(2, run.code, args + ": " + run.err);
      assertFalse(run.err.isBlank(), args.toString());
      assertFalse(run.err.contains("Exception"), run.err);
      assertEquals("", run.out, args.toString());
      assertFalse(Files.exists(out), args.toString());
    }
    assertTrue(
        Program.run("run", "--set", "heater.powr=40 W").err.contains("heater.power"),
        "did you mean");
  }

  @Test
  void weatherThatDoesNotCoverTheWindowIsRefused() {
    Path file = RealWeather.file("uurgeg_260_2000.txt");
    Path out = shared.resolve("uncovered");
    Program run =
        Program.run(
            "run", "--weather", file.toString(), "--from", "2001-12-24", "--out", out.toString());
    assertEquals(2, run.code);
    assertTrue(run.err.contains("2000-12-31") || run.err.contains("2001-01-01"), run.err);
    assertFalse(Files.exists(out));
  }

  @Test
  void aFileInTheWayOfTheFolderIsRefusedBeforeTheRun() throws IOException {
    Path inTheWay = Files.writeString(shared.resolve("in-the-way"), "x");
    Program run = Program.run("run", "--out", inTheWay.toString());
    assertEquals(2, run.code);
    assertTrue(run.err.contains("--out"), run.err);
  }

  /** An ensemble is repeatable, and a rig with no heater is surely out of band. */
  @Test
  void howSureIsToldByAnEnsemble() throws IOException {
    JsonNode sure = null;
    for (int k = 0; k < 2; k++) {
      Program run =
          Program.run(
              "run",
              "--days",
              "3",
              "--no-remedies",
              "--sure",
              "40",
              "--json",
              "--set",
              "heater.power=0 W",
              "--out",
              shared.resolve("sure" + k).toString());
      assertEquals(1, run.code, run.err);
      JsonNode found = new ObjectMapper().readTree(run.out).get("sure");
      assertTrue(k == 0 || found.equals(sure));
      sure = found;
    }
    assertEquals(40, sure.get("members").intValue());
    for (JsonNode q : sure.get("requirements")) {
      double share = q.get("met").get("share").doubleValue();
      assertTrue(q.get("met").get("low").doubleValue() <= share, q.toString());
      assertTrue(q.get("met").get("high").doubleValue() >= share, q.toString());
      if (q.get("name").textValue().equals("brood_in_band")) {
        // a warm spring and a cluster that loses little may do without
        assertTrue(share < 0.2, q.toString());
      }
    }
  }
}

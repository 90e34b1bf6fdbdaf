package org.broodbench.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.broodbench.firmware.Firmwares;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Makes one result of every kind with small budgets and holds its keys, with kind and unit, against
 * the page. With {@code -Dbroodbench.rewrite=true} the page is brought up to date.
 */
@Tag("campaign")
class ResultsPageCampaignTest {
  private static final String DEMO = "../scenarios/late-split.toml";

  @TempDir private Path folder;

  private final Map<String, Map<String, TreeSet<String>>> found = new LinkedHashMap<>();

  private void add(String... command) throws Exception {
    Program p = Program.run(command);
    assertTrue(p.code <= 1, Arrays.toString(command) + p.err);
    JsonNode json = new ObjectMapper().readTree(p.out);
    walk("", json, found.computeIfAbsent(json.get("format").asText(), f -> new LinkedHashMap<>()));
  }

  private static void walk(String path, JsonNode node, Map<String, TreeSet<String>> into) {
    if (node.isObject()) {
      for (Map.Entry<String, JsonNode> e : node.properties()) {
        walk(path.isEmpty() ? e.getKey() : path + "." + e.getKey(), e.getValue(), into);
      }
    } else if (node.isArray()) {
      if (node.isEmpty()) {
        into.computeIfAbsent(path + "[]", p -> new TreeSet<>());
      }
      node.forEach(e -> walk(path + "[]", e, into));
    } else {
      into.computeIfAbsent(path, p -> new TreeSet<>()).add(kind(path, node));
    }
  }

  private static String kind(String path, JsonNode node) {
    if (node.isNull()) {
      return "null";
    }
    if (node.isBoolean()) {
      return "true, false";
    }
    if (node.isTextual()) {
      return node.asText().matches("\\d{4}-\\d\\d-\\d\\dT.*Z") ? "time, UTC" : "text";
    }
    return unit(path, node.isIntegralNumber());
  }

  /** The unit as the end of a name tells it. */
  private static String unit(String path, boolean whole) {
    String name = path.substring(path.lastIndexOf('.') + 1).replace("[]", "");
    if (name.startsWith("hours_") || name.endsWith("_hours") || name.equals("hours")) {
      return "h";
    }
    if (name.endsWith("soc") || name.equals("duty")) {
      return "share, 0 to 1";
    }
    if (path.startsWith("energy_wh.") || path.startsWith("heat_wh.")) {
      return "Wh";
    }
    if (path.startsWith("water_g.") || path.startsWith("co2_g.")) {
      return "g";
    }
    if (path.startsWith("charge_ah.")) {
      return "Ah";
    }
    String[][] ends = {
      {"_w_m2", "W/m²"},
      {"_kwh_m2", "kWh/m²"},
      {"_m2", "m²"},
      {"_wh_day", "Wh a day"},
      {"_l_min", "l/min"},
      {"_g_h", "g/h"},
      {"_kwh", "kWh"},
      {"_wh", "Wh"},
      {"_ah", "Ah"},
      {"_ms", "ms"},
      {"_mm", "mm"},
      {"_m_s", "m/s"},
      {"_percent", "%"},
      {"_deg", "°"},
      {"_c", "°C"},
      {"_k", "K"},
      {"_v", "V"},
      {"volts", "V"},
      {"_a", "A"},
      {"_w", "W"},
      {"_g", "g"},
      {"_s", "s"},
      {"_h", "h"},
      {"_m", "m"},
      {"_days", "d"},
      {"_pa", "Pa"}
    };
    for (String[] end : ends) {
      if (name.endsWith(end[0])) {
        return end[1];
      }
    }
    return whole ? "whole number" : "number";
  }

  private static List<String> lines(Map<String, TreeSet<String>> all) {
    Map<String, TreeSet<String>> keys = new LinkedHashMap<>(all);
    // a list that is empty in one result only
    keys.keySet()
        .removeIf(
            list ->
                list.endsWith("[]")
                    && all.keySet().stream().anyMatch(path -> path.startsWith(list + ".")));
    int width = keys.keySet().stream().mapToInt(String::length).max().orElse(0);
    List<String> lines = new ArrayList<>();
    keys.forEach(
        (path, kinds) -> {
          TreeSet<String> told = new TreeSet<>(kinds);
          boolean none = told.remove("null");
          if (told.contains("number")) {
            told.remove("whole number"); // a number that happens to be whole
          }
          String text = told.isEmpty() && !none ? "empty here" : String.join(" or ", told);
          if (none) {
            text = text.isEmpty() ? "null here" : text + ", or null";
          }
          lines.add(path + " ".repeat(width - path.length() + 2) + text);
        });
    return lines;
  }

  private void makeThemAll() throws Exception {
    String out = folder.resolve("out").toString();
    add("audit", DEMO, "--json");
    add(
        "run",
        DEMO,
        "--days",
        "3",
        "--sure=40",
        "--outlook",
        "2",
        "--json",
        "--out",
        out,
        "--set",
        "requirement.brood_in_band=100 %",
        "--set",
        "hive.insulation=0 mm");
    add("stress", DEMO, "--weeks", "1", "--json", "--out", out);
    add("tune", DEMO, "--evaluations", "20", "--set", "tune.seasons=2", "--json", "--out", out);
    add("size", DEMO, "--seasons", "2", "--weeks", "1", "--json", "--out", out);
    // a list without a larger battery
    Path rig =
        Files.writeString(
            folder.resolve("rig.toml"),
            Files.readString(Path.of(DEMO))
                + """

                [[size.choice]]
                part = "battery"
                set = "battery.capacity=200 Ah"
                price = "370 EUR"
                """);
    add("size", rig.toString(), "--seasons", "2", "--weeks", "1", "--json", "--out", out);
    add("card", DEMO, "--days", "7", "--plan", "2", "--json", "--out", out);
    add("card", DEMO, "--days", "7", "--tonight", "12.4", "-5", "--json", "--out", out);

    Path normals = folder.resolve("normals.csv");
    String table = null;
    for (Pages.Fence fence : Pages.fences(Path.of("docs", "weather.md"))) {
      if (fence.lines().get(0).startsWith("# broodbench monthly normals")) {
        table = String.join("\n", fence.lines()) + "\n";
      }
    }
    Files.writeString(normals, table);
    add("weather", normals.toString(), "--make", "2", "--json");

    Firmwares.need("cc");
    Path sound = Firmwares.reference(folder);
    add(
        "conform",
        DEMO,
        "--process",
        sound.toString(),
        "--days",
        "1",
        "--ticks",
        "2000",
        "--json",
        "--out",
        out);
    Path odd =
        Firmwares.changed(
            folder,
            "bb_basics.c",
            "r->min_off_remaining_millis == 0 && starts_left",
            "r->min_off_remaining_millis <= 1000 && starts_left");
    add("conform", "--process", odd.toString(), "--ticks", "60000", "--json", "--out", out);

    Program ran = Program.run("run", DEMO, "--days", "3", "--no-remedies", "--out", out);
    assertTrue(ran.code <= 1, ran.err);
    String trace = Files.readString(Path.of(out).resolve("trace.csv"));
    String head = trace.substring(0, trace.indexOf('\n'));
    String log = folder.resolve("log.csv").toString();
    Files.writeString(
        Path.of(log),
        head.replace("probe_a_c", "brood_a_c").replace("heater_on", "heater")
            + trace.substring(head.length()));
    add("conform", DEMO, "--log", log, "--json", "--out", out);
    add("calibrate", DEMO, "--log", log, "--json", "--out", out + "-calibrated");
  }

  @Test
  void theKeysOfRealResultsAreThoseOfThePage() throws Exception {
    Assumptions.assumeTrue(
        Integer.getInteger("broodbench.campaign.percent", 100) == 100, "whole campaign only");
    makeThemAll();
    List<String> page = Pages.lines(ResultsPageTest.PAGE);
    List<String> fresh = new ArrayList<>();
    String format = "";
    boolean inside = false;
    for (String line : page) {
      if (line.startsWith("## ")) {
        format = line.replaceAll("^## `([^`]*)`.*", "$1");
      }
      if (inside && line.equals("```")) {
        inside = false;
      }
      if (!inside) {
        fresh.add(line);
      }
      if (line.equals("```text") && found.containsKey(format)) {
        inside = true;
        fresh.addAll(lines(found.get(format)));
      }
    }
    if (Boolean.getBoolean("broodbench.rewrite")) {
      Files.writeString(ResultsPageTest.PAGE, String.join("\n", fresh) + "\n");
    }
    assertEquals(String.join("\n", page), String.join("\n", fresh));
  }
}

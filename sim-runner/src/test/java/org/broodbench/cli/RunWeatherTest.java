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
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Weather as a scenario or the command line brings it: tables, gaps, harder variants, records in
 * parts.
 */
class RunWeatherTest {
  @TempDir Path folder;

  private JsonNode run(String... more) throws IOException {
    Path out = folder.resolve("out" + Math.abs(List.of(more).hashCode()));
    String[] args = new String[more.length + 3];
    args[0] = "run";
    args[1] = "--out";
    args[2] = out.toString();
    System.arraycopy(more, 0, args, 3, more.length);
    Program run = Program.run(args);
    assertTrue(run.code <= 1, run.err);
    return new ObjectMapper().readTree(out.resolve("verdict.json").toFile());
  }

  private double outdoorMeanC(String... more) throws IOException {
    Path out = folder.resolve("out" + Math.abs(List.of(more).hashCode()));
    List<String> lines = Files.readAllLines(out.resolve("trace.csv"));
    int column = List.of(lines.get(0).split(",")).indexOf("outdoor_c");
    return lines.stream()
        .skip(2)
        .mapToDouble(l -> Double.parseDouble(l.split(",", -1)[column]))
        .average()
        .orElseThrow();
  }

  /**
   * A home logger's table in °F, hour-ending, one hour ahead of UTC, read by a block of the
   * scenario.
   */
  @Test
  void aTableOfAnyLayoutIsReadByAMappingInTheScenario() throws IOException {
    StringBuilder table = new StringBuilder("my logger\nday;clock;out_f;sun;damp\n");
    for (int h = 1; h <= 72; h++) {
      int day = 1 + h / 24;
      table.append(
          String.format(
              Locale.ROOT,
              "%02d.03.2021;%02d:00;41,0;%d;70\n",
              day,
              h % 24,
              h % 24 > 8 && h % 24 < 18 ? 200 : 0));
    }
    Files.writeString(folder.resolve("logger.csv"), table);
    String scenario =
        Files.readString(Path.of("../scenarios/late-split.toml"))
                .replace("[weather]", "[weather]\nfile = \"logger.csv\"")
                .replaceFirst("from = 2027-04-20", "from = 2021-03-02")
                .replaceFirst("days = 14", "days = 1")
                .replaceAll("(?s)\\[\\[event\\]\\].*", "")
            + """

            [weather.table]
            separator = ";"
            decimal_comma = true
            skip_lines = 1
            time_columns = "day | clock"
            time_order = "dmyhn"
            clock_ahead = "1 h"

            [[weather.column]]
            name = "out_f"
            what = "air"
            unit = "degF"
            spot = true

            [[weather.column]]
            name = "sun"
            what = "global"
            unit = "W/m2"

            [[weather.column]]
            name = "damp"
            what = "humidity"
            unit = "percent"
            spot = true
            """;
    Path file = Files.writeString(folder.resolve("mine.toml"), scenario);
    JsonNode v = run(file.toString());
    assertEquals("2021-03-02T00:00:00Z", v.get("weather").get("from").textValue());
    // 41 °F is 5 °C
    assertEquals(5.0, outdoorMeanC(file.toString()), 1e-6);
  }

  @Test
  void weatherCanBeMadeColder() throws IOException {
    String[] usual = {"--days", "2"};
    String[] colder = {"--days", "2", "--set", "weather.colder_by=4 K"};
    run(usual);
    JsonNode v = run(colder);
    assertEquals(outdoorMeanC(usual) - 4, outdoorMeanC(colder), 1e-3);
    assertTrue(v.get("weather").get("warnings").toString().contains("colder"));
  }

  @Test
  void longGapsAreRefusedOrBridgedOnRequest() throws IOException {
    Path file = RealWeather.file("CRNH0203-2018-CO_Dinosaur_2_E.txt");
    List<String> gap =
        List.of("run", "--weather", file.toString(), "--from", "2018-08-22", "--days", "4");
    Path out = folder.resolve("refused");
    Program refused = Program.run(concat(gap, List.of("--out", out.toString())));
    assertEquals(2, refused.code, refused.err);
    assertTrue(refused.err.contains("weather.longest_gap"), refused.err);
    assertFalse(Files.exists(out));
    String[] bridged = {
      "--weather",
      file.toString(),
      "--from",
      "2018-08-22",
      "--days",
      "4",
      "--set",
      "weather.long_gaps=bridge"
    };
    JsonNode v = run(bridged);
    assertTrue(v.get("weather").get("warnings").toString().contains("bridged"), v.toString());
    assertTrue(v.get("weather").get("filled_hours").doubleValue() >= 4);
  }

  @Test
  void yearsThatFollowOneAnotherMakeOneRecord() throws IOException {
    Path first = RealWeather.file("CRNH0203-2018-CO_Dinosaur_2_E.txt");
    Path second = RealWeather.file("CRNH0203-2019-CO_Dinosaur_2_E.txt");
    String[] week = {
      "--weather",
      first.toString(),
      "--weather",
      second.toString(),
      "--from",
      "2018-12-28",
      "--days",
      "7"
    };
    JsonNode v = run(week);
    assertEquals("uscrn_hourly02", v.get("weather").get("format").textValue());
    // the record's own week over the turn of the year: -11.5 °C
    assertEquals(-11.5, outdoorMeanC(week), 0.2);
    assertTrue(v.get("assumed").toString().contains("wind"), "no wind in these files: said");
  }

  private static String[] concat(List<String> a, List<String> b) {
    java.util.ArrayList<String> all = new java.util.ArrayList<>(a);
    all.addAll(b);
    return all.toArray(String[]::new);
  }
}

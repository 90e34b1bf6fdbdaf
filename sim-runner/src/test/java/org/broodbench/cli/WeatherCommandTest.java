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

class WeatherCommandTest {
  @TempDir Path folder;

  @Test
  void aMeasuredYearIsDescribedWithItsHardestWeeks() throws IOException {
    Path file = RealWeather.file("uurgeg_260_2000.txt");
    Program run = Program.run("weather", file.toString(), "--json");
    assertEquals(0, run.code, run.err);
    JsonNode v = new ObjectMapper().readTree(run.out);
    assertEquals("broodbench-weather/1", v.get("format").textValue());
    assertEquals("knmi_hourly", v.get("file_format").textValue());
    assertEquals(8784, v.get("rows").intValue());
    assertEquals(3600, v.get("step_s").intValue());
    assertEquals("2000-01-01T00:00:00Z", v.get("from").textValue());
    assertEquals("2001-01-01T00:00:00Z", v.get("to").textValue());
    assertEquals(0, v.get("missing").get("air").intValue());
    assertEquals(12, v.get("monthly").size());
    assertEquals(10, v.get("worst").size());
    JsonNode worst = v.get("worst").get(0);
    assertEquals("2000-12-22T00:00:00Z", worst.get("from").textValue());
    assertEquals(-1.0, worst.get("mean_air_c").doubleValue(), 0.05);
    assertEquals(0.62, worst.get("ghi_kwh_m2_day").doubleValue(), 0.005);
    assertEquals(8.8, worst.get("precip_mm").doubleValue(), 0.05);
  }

  /** What is written out is read back, and the hardest week can be run by its rank. */
  @Test
  void windowsAreWrittenAsTidyFilesThatRunAgain() throws IOException {
    Path file = RealWeather.file("uurgeg_260_2000.txt");
    Path windows = folder.resolve("windows");
    Path picture = folder.resolve("year.svg");
    Program weather =
        Program.run(
            "weather",
            file.toString(),
            "--count",
            "2",
            "--windows",
            windows.toString(),
            "--picture",
            picture.toString());
    assertEquals(0, weather.code, weather.err);
    assertTrue(Files.readString(picture).startsWith("<svg"));
    Path tidy = windows.resolve("hard-01-2000-12-22.csv");
    Path byFile = folder.resolve("by-file");
    Path byRank = folder.resolve("by-rank");
    Program first =
        Program.run(
            "run",
            "--weather",
            tidy.toString(),
            "--from",
            "2000-12-22",
            "--days",
            "7",
            "--out",
            byFile.toString());
    Program second =
        Program.run(
            "run",
            "--weather",
            file.toString(),
            "--worst",
            "1",
            "--days",
            "7",
            "--out",
            byRank.toString());
    assertEquals(first.code, second.code, first.err + second.err);
    JsonNode a = new ObjectMapper().readTree(byFile.resolve("verdict.json").toFile());
    JsonNode b = new ObjectMapper().readTree(byRank.resolve("verdict.json").toFile());
    assertEquals("tidy_csv", a.get("weather").get("format").textValue());
    assertEquals(a.get("weather").get("from"), b.get("weather").get("from"));
    // the tidy file carries the numbers to the last digit that matters
    assertEquals(
        a.get("brood").get("mean_c").doubleValue(),
        b.get("brood").get("mean_c").doubleValue(),
        1e-3);
  }

  @Test
  void badInputIsRefused() throws IOException {
    Path junk = Files.writeString(folder.resolve("junk.txt"), "nothing of the kind\n");
    for (List<String> args :
        List.of(
            List.of("weather"),
            List.of("weather", "no-such-file"),
            List.of("weather", folder.toString()),
            List.of("weather", junk.toString()),
            List.of("weather", junk.toString(), "--days", "0"),
            List.of("run", "--worst", "1", "--from", "2000-01-01"))) {
      Program run = Program.run(args.toArray(String[]::new));
      assertEquals(2, run.code, args + run.err);
      assertFalse(run.err.contains("Exception"), run.err);
      assertEquals("", run.out);
    }
  }
}

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

  /** Three measured years, then six made of them: their statistics, written and read again. */
  @Test
  void madeYearsResembleTheMeasuredOnes() throws IOException {
    String[] years = new String[3];
    for (int k = 0; k < 3; k++) {
      String name = "CRNH0203-" + (2018 + k) + "-CO_Dinosaur_2_E.txt";
      years[k] = RealWeather.file(name).toString();
    }
    Path made = folder.resolve("made.csv");
    Program run =
        Program.run(
            "weather",
            years[0],
            years[1],
            years[2],
            "--make",
            "6",
            "--seed",
            "4",
            "--first-year",
            "2031",
            "--made",
            made.toString(),
            "--json");
    assertEquals(0, run.code, run.err);
    JsonNode compared = new ObjectMapper().readTree(run.out).get("compared");
    assertEquals(3, compared.size());
    JsonNode record = compared.get(0);
    assertEquals(1096, record.get("days").intValue());
    for (int way = 1; way <= 2; way++) {
      JsonNode other = compared.get(way);
      String name = other.get("weather").textValue();
      // six years have a mean that is good to half a kelvin, and the spread of days to a tenth
      within(record, other, "mean_air_c", 0.7, name);
      within(record, other, "daily_sd_k", 0.45, name);
      within(record, other, "day_to_day_correlation", 0.08, name);
      within(record, other, "ghi_kwh_m2_day", 0.25, name);
      within(record, other, "wet_sun_correlation", 0.2, name);
      within(record, other, "year_low_c", 3, name);
      within(record, other, "cold_dim_spell_days", 3.5, name);
      within(record, other, "hardest_week_kwh", 0.35, name);
    }
    within(record, compared.get(1), "warm_sun_correlation", 0.12, "runs");
    Program again = Program.run("weather", made.toString(), "--json");
    assertEquals(0, again.code, again.err);
    JsonNode back = new ObjectMapper().readTree(again.out);
    assertEquals("2031-01-01T00:00:00Z", back.get("from").textValue().substring(0, 20));
    assertEquals(52_608, back.get("rows").intValue());
    Program wrong =
        Program.run(
            "weather", years[0], "nowhere.csv", "--make", "101", "--by", "dice", "--days", "0");
    assertEquals(2, wrong.code);
    for (String part : new String[] {"runs, normals", "--make", "--days", "nowhere.csv"}) {
      assertTrue(wrong.err.contains(part), wrong.err);
    }
    assertTrue(wrong.err.contains("4 problems"), wrong.err);
  }

  /** A hive that loses much and harvests much finds other weeks hard than a small one. */
  @Test
  void theRigDecidesWhatIsHard() throws IOException {
    String file = RealWeather.file("uurgeg_260_2000.txt").toString();
    Program dark = Program.run("weather", file, "--json", "--heat-loss", "0.1", "--harvest", "5");
    JsonNode worst = new ObjectMapper().readTree(dark.out).get("worst").get(0);
    // with hardly any loss the darkest week counts, not the coldest
    assertTrue(worst.get("ghi_kwh_m2_day").doubleValue() < 0.4, worst.toString());
    assertTrue(worst.get("mean_air_c").doubleValue() > 0, worst.toString());
  }

  private static void within(JsonNode a, JsonNode b, String name, double by, String what) {
    assertEquals(a.get(name).doubleValue(), b.get(name).doubleValue(), by, what + " " + name);
  }
}

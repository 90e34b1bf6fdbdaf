package org.broodbench.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code run --outlook} as a keeper meets it. */
class RunOutlookTest {
  @TempDir Path folder;

  private Program run(String... more) {
    String[] args = new String[more.length + 6];
    String[] first = {"run", "--out", folder.resolve("out").toString(), "--no-remedies", "--days"};
    System.arraycopy(first, 0, args, 0, 5);
    args[5] = "1";
    System.arraycopy(more, 0, args, 6, more.length);
    return Program.run(args);
  }

  @Test
  void theOutlookStandsInVerdictSummaryAndReport() throws IOException {
    Program p = run("--outlook", "1");
    assertTrue(p.code <= 1, p.err);
    assertEquals("", p.err);
    assertTrue(p.out.contains("Outlook      1 week: "), p.out);
    JsonNode o =
        new ObjectMapper().readTree(folder.resolve("out/verdict.json").toFile()).get("outlook");
    assertEquals(1, o.get("weeks").asInt());
    assertEquals(4, o.get("courses").size());
    JsonNode week = o.get("courses").get(0).get("own");
    assertEquals(1, week.size());
    assertEquals(7, week.get(0).get("day").asInt());
    assertTrue(week.get(0).get("bees").asDouble() > 1000);
    assertTrue(o.get("words").toString().contains("Mites are not modelled"));
    String page = Files.readString(folder.resolve("out/report.html"));
    assertTrue(page.contains("<section id=\"outlook\""));
    assertTrue(page.contains("class=\"band insulation_only\""));
  }

  @Test
  void withoutTheOptionNothingIsSaid() throws IOException {
    Program p = run();
    assertTrue(p.code <= 1, p.err);
    assertFalse(Files.readString(folder.resolve("out/verdict.json")).contains("\"outlook\""));
    assertFalse(Files.readString(folder.resolve("out/report.html")).contains("#outlook"));
  }

  @Test
  void weeksOutOfRangeAreRefused() {
    Program p = run("--outlook", "27");
    assertEquals(2, p.code);
    assertTrue(p.err.contains("1 to 26 whole weeks"), p.err);
  }

  /** A record that ends too soon is told before anything is run. */
  @Test
  void aRecordThatEndsTooSoonIsTold() throws IOException {
    StringBuilder table =
        new StringBuilder("# broodbench weather 1\n# step_s: 3600\nfrom_utc,air_c,ghi_w_m2\n");
    for (int h = 0; h < 5 * 24; h++) {
      table.append(
          String.format(
              Locale.ROOT, "2027-04-%02dT%02d:00:00Z,8,%d\n", 20 + h / 24, h % 24, 10 * (h % 24)));
    }
    Path file = Files.writeString(folder.resolve("short.csv"), table.toString());
    Program p = run("--weather", file.toString(), "--from", "2027-04-20", "--outlook", "1");
    assertEquals(2, p.code, p.out + p.err);
    assertTrue(p.err.contains("--outlook") && p.err.contains("fewer weeks"), p.err);
    assertFalse(Files.exists(folder.resolve("out/verdict.json")));
  }
}

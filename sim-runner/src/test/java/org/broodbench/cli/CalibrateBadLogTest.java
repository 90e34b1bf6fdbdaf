package org.broodbench.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Logs that are no good, or of another hive, as a user hands them over. */
class CalibrateBadLogTest {
  private static final String SCENARIO = "../scenarios/late-split.toml";

  @TempDir static Path folder;

  private static List<String> log;

  @BeforeAll
  static void log() throws IOException {
    log = FieldLogs.made(folder, 2);
  }

  private static Program calibrate(List<String> lines, String... more) throws IOException {
    Path file = folder.resolve("log.csv");
    Files.write(file, lines);
    List<String> words =
        new ArrayList<>(List.of("calibrate", SCENARIO, "--log", file.toString(), "--out"));
    words.add(folder.resolve("out").toString());
    words.addAll(List.of(more));
    return Program.run(words.toArray(String[]::new));
  }

  private static void refused(Program a, String why) {
    assertEquals(2, a.code, a.err + a.out);
    assertTrue(a.err.contains(why), a.err);
    assertEquals("", a.out);
    assertFalse(Files.exists(folder.resolve("out")));
  }

  @Test
  void rowsOfTwoHivesAreRefused() throws IOException {
    List<String> mixed = new ArrayList<>(log.subList(0, 1));
    for (int i = 1; i < log.size(); i++) {
      mixed.add(i % 2 == 0 ? log.get(i) : FieldLogs.with(log, i, "probe_a_c", "21.5"));
    }
    refused(calibrate(mixed), "two hives");
    refused(calibrate(mixed), "first at 2027-04-20T00:0");
  }

  @Test
  void anEmptyLogIsRefused() throws IOException {
    refused(calibrate(log.subList(0, 1)), "log.csv");
  }

  @Test
  void aLogThatNeverChangesIsRefused() throws IOException {
    List<String> same = new ArrayList<>(log.subList(0, 1));
    for (int i = 1; i < log.size(); i++) {
      String[] row = log.get(1).split(",");
      row[0] = log.get(i).split(",")[0];
      same.add(String.join(",", row));
    }
    refused(calibrate(same), "brood_a reads");
  }
}

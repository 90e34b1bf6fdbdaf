package org.broodbench.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A process is killed (on POSIX systems by SIGKILL, which it cannot hear) in the midst of a study,
 * begun again, killed again; then the same command goes on and ends with the same bytes as one that
 * was left alone.
 */
class KilledStudyTest {
  private static final int MORE_PIECES = 8;

  @TempDir private Path folder;

  @Test
  void stressGoesOnAfterKills() throws Exception {
    goesOnAfterKills("stress", "--weeks", "1", "--season", "--pair", "lid_off+relay_open");
  }

  @Test
  void tuneGoesOnAfterKills() throws Exception {
    goesOnAfterKills(
        "tune",
        "--evaluations",
        "40",
        "--set",
        "tune.seasons=3",
        "--set",
        "tune.season_days=7",
        "--set",
        "tune.unseen_seasons=2");
  }

  private void goesOnAfterKills(String... study) throws Exception {
    Path killed = folder.resolve("killed");
    Path journal = killed.resolve(study[0] + ".journal");
    long first = startAndKill(journal, MORE_PIECES, study);
    long second = startAndKill(journal, first + MORE_PIECES, study);
    assertTrue(second >= first + MORE_PIECES, "the second start added to what the first had done");
    List<String> lines = Files.readAllLines(journal);
    assertEquals(lines.size(), Set.copyOf(lines).size(), "and did nothing of it again");
    assertEquals(
        List.of(study[0] + ".journal"), names(killed), "nothing half-written beside the journal");

    Program again = run(killed, study);
    Path whole = folder.resolve("whole");
    Program atOnce = run(whole, study);
    assertEquals(atOnce.out, again.out);
    assertEquals(atOnce.code, again.code);
    assertEquals(names(whole), names(killed));
    assertTrue(names(whole).size() >= 3, names(whole).toString());
    for (String file : names(whole)) {
      assertEquals(-1L, Files.mismatch(whole.resolve(file), killed.resolve(file)), file);
    }
  }

  private static Program run(Path out, String... study) {
    List<String> args = new ArrayList<>(List.of(study));
    args.addAll(List.of("--json", "--out", out.toString()));
    return Program.run(args.toArray(String[]::new));
  }

  /** Kills when the journal has so many lines; how many it had when that had happened. */
  private long startAndKill(Path journal, long lines, String... study) throws Exception {
    List<String> command =
        new ArrayList<>(
            List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-cp",
                System.getProperty("java.class.path"),
                "org.broodbench.cli.Main"));
    command.addAll(List.of(study));
    command.addAll(List.of("--threads", "1", "--out", journal.getParent().toString()));
    Path log = folder.resolve("log");
    Process process =
        new ProcessBuilder(command).redirectErrorStream(true).redirectOutput(log.toFile()).start();
    try {
      for (int i = 0; i < 24_000 && lines(journal) < lines && process.isAlive(); i++) {
        Thread.sleep(5);
      }
      assertTrue(process.isAlive(), () -> "it ended before it was killed: " + read(log));
    } finally {
      process.destroyForcibly();
      process.waitFor(10, TimeUnit.SECONDS);
    }
    assertFalse(process.isAlive());
    assertTrue(lines(journal) >= lines, () -> "nothing was killed in the midst: " + read(log));
    return lines(journal);
  }

  private static String read(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException e) {
      return e.toString();
    }
  }

  private static long lines(Path file) throws IOException {
    try (Stream<String> lines = Files.lines(file)) {
      return lines.count();
    } catch (java.nio.file.NoSuchFileException e) {
      return 0;
    }
  }

  private static List<String> names(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.map(f -> f.getFileName().toString()).sorted().toList();
    }
  }
}

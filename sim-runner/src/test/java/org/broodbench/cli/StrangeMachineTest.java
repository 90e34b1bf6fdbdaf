package org.broodbench.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.TimeZone;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Other languages, clocks, years and names of folders; disks that are full or cannot be written.
 */
class StrangeMachineTest {
  private static final String[] SHORT = {"run", "--days", "1", "--no-remedies"};

  @TempDir static Path home;
  private static Path plain;
  private static String said;

  @BeforeAll
  static void runOnAPlainMachine() {
    plain = home.resolve("plain");
    Program run = Program.run(with(SHORT, "--out", plain.toString()));
    assertTrue(run.code <= 1, run.err);
    said = run.out.replace(plain.toString(), "X");
  }

  private static String[] with(String[] words, String... more) {
    return Stream.concat(Stream.of(words), Stream.of(more)).toArray(String[]::new);
  }

  private static void assertSame(Path one, Path other) throws IOException {
    try (Stream<Path> files = Files.list(one)) {
      for (Path f : files.toList()) {
        assertArrayEquals(
            Files.readAllBytes(f),
            Files.readAllBytes(other.resolve(f.getFileName())),
            f.toString());
      }
    }
  }

  /** One clear message, no trace of a stack, and nothing written but what is named. */
  private static void assertRefused(int code, String err, Path out) throws IOException {
    assertTrue(code == Main.BAD_INPUT || code == Main.FAULT, code + err);
    assertFalse(err.isBlank());
    assertFalse(err.contains("\tat ") || err.contains("Exception"), err);
    assertTrue(err.lines().count() <= 5, err);
    if (Files.isDirectory(out)) {
      try (Stream<Path> files = Files.list(out)) {
        assertEquals(List.of(), files.toList());
      }
    }
  }

  // ---- languages, clocks, years ----

  /** Turkish has an i of its own, German a decimal comma, Egypt digits of its own. */
  @ParameterizedTest
  @CsvSource({"tr-TR, Europe/Istanbul", "de-DE, Europe/Berlin", "ar-EG-u-nu-arab, Pacific/Apia"})
  void everyLanguageAndZoneGivesTheSameBytes(String language, String zone) throws IOException {
    Locale before = Locale.getDefault();
    TimeZone zoneBefore = TimeZone.getDefault();
    Path out = home.resolve(language);
    try {
      Locale.setDefault(Locale.forLanguageTag(language));
      TimeZone.setDefault(TimeZone.getTimeZone(zone));
      Program run = Program.run(with(SHORT, "--out", out.toString()));
      assertEquals(said, run.out.replace(out.toString(), "X"));
      assertEquals(2, Program.run("run", "--set", "heater.power=I").code);
    } finally {
      Locale.setDefault(before);
      TimeZone.setDefault(zoneBefore);
    }
    assertSame(plain, out);
  }

  /** Before the clocks of computers begin, and 2100, which has no 29 February. */
  @ParameterizedTest
  @ValueSource(strings = {"1969-12-31", "2100-02-28"})
  void anyYearWillDo(String from) throws IOException {
    Path out = home.resolve(from);
    Program run =
        Program.run("run", "--from", from, "--days", "2", "--no-remedies", "--out", out.toString());
    assertTrue(run.code <= 1, run.err);
    List<String> rows = Files.readAllLines(out.resolve("trace.csv"));
    assertTrue(rows.get(1).startsWith(from + "T00:00:00Z"), rows.get(1));
    String day = java.time.LocalDate.parse(from).plusDays(1).toString();
    assertTrue(rows.stream().anyMatch(r -> r.startsWith(day + "T00:00:00Z")), day);
  }

  /** A record of an old or a far year, made by the program and read by it. */
  @ParameterizedTest
  @ValueSource(ints = {1970, 2100})
  void weatherOfAnyYearIsRead(int year) throws IOException {
    StringBuilder text =
        new StringBuilder(
            "# broodbench weather 1\n# step_s: 3600\n# latitude_deg: 47\n# longitude_deg: 11\n"
                + "# altitude_m: 900\nfrom_utc,air_c,rh_percent,wind_m_s,ghi_w_m2\n");
    for (int h = 0; h < 96; h++) {
      int g = h % 24 > 6 && h % 24 < 18 ? 300 : 0;
      text.append(
          String.format(
              Locale.ROOT, "%d-03-%02dT%02d:00:00Z,%d,80,1,%d\n", year, 1 + h / 24, h % 24, 5, g));
    }
    Path weather = Files.writeString(home.resolve("w" + year + ".csv"), text);
    Path out = home.resolve("out" + year);
    Program run =
        Program.run(
            "run",
            "--weather",
            weather.toString(),
            "--from",
            year + "-03-02",
            "--days",
            "2",
            "--no-remedies",
            "--out",
            out.toString());
    assertTrue(run.code <= 1, run.err);
    assertTrue(run.out.contains(String.valueOf(year)), run.out);
  }

  // ---- names ----

  @Test
  void foldersMayHaveSpacesAndAnyLetters() throws IOException {
    Charset names = Charset.forName(System.getProperty("sun.jnu.encoding", "UTF-8"));
    String letters = "Bienen stöcke, ığüş 蜂";
    Assumptions.assumeTrue(
        names.newEncoder().canEncode(letters),
        "this machine's file names are in " + names + ": skipped");
    Path folder = Files.createDirectories(home.resolve(letters));
    Path rig = folder.resolve("späte Ableger.toml");
    Files.write(rig, ScenarioOptions.demo());
    Path out = folder.resolve("er gebnis");
    Program run =
        Program.run("run", rig.toString(), "--days", "1", "--no-remedies", "--out", out.toString());
    assertTrue(run.code <= 1, run.err);
    assertTrue(run.out.contains("späte Ableger.toml"), run.out);
    assertArrayEquals(
        Files.readAllBytes(plain.resolve("trace.csv")),
        Files.readAllBytes(out.resolve("trace.csv")));
  }

  // ---- folders and disks that refuse ----

  @Test
  void aFileInTheWayIsNotOverwritten() throws IOException {
    Path file = Files.writeString(home.resolve("taken"), "mine");
    for (String verb : List.of("run", "stress", "size", "tune", "card")) {
      Program run = Program.run(verb, "--out", file.toString());
      assertRefused(run.code, run.err, file);
      assertEquals(2, run.code, verb);
    }
    assertEquals("mine", Files.readString(file));
  }

  /** Nobody, root neither, may make a folder there, though its permissions say so. */
  @Test
  void aFolderThatRefusesIsToldOf() throws IOException {
    Path proc = Path.of("/proc/broodbench");
    Assumptions.assumeTrue(Files.isDirectory(proc.getParent()), "no /proc: skipped");
    Program run = Program.run(with(SHORT, "--out", proc.toString()));
    assertRefused(run.code, run.err, proc);
    assertTrue(run.err.contains("/proc/broodbench"), run.err);
    run = Program.run("stress", "--weeks", "1", "--out", proc.toString());
    assertRefused(run.code, run.err, proc);
  }

  @Test
  void aFolderWithoutPermissionIsToldOf() throws IOException {
    Path folder = Files.createDirectories(home.resolve("locked"));
    Assumptions.assumeTrue(folder.toFile().setWritable(false), "no permissions here: skipped");
    Assumptions.assumeFalse(Files.isWritable(folder), "root may write anywhere: skipped");
    Program run = Program.run(with(SHORT, "--out", folder.resolve("out").toString()));
    assertRefused(run.code, run.err, folder);
    assertTrue(folder.toFile().setWritable(true));
  }

  @Test
  void aFolderGivenAsAFileIsToldOf() throws IOException {
    String folder = home.toString();
    Path none = home.resolve("none");
    for (List<String> words :
        List.of(
            List.of("run", folder),
            List.of("run", "--weather", folder),
            List.of("weather", folder),
            List.of("conform", "--log", folder),
            List.of("conform", "--process", "true", "--vectors", folder),
            List.of("calibrate", "--log", folder))) {
      Program run = Program.run(words.toArray(String[]::new));
      assertRefused(run.code, run.err, none);
      assertTrue(run.err.contains("a folder"), words + run.err);
    }
  }

  private static String[] child(String script, String... words) {
    List<String> command = new ArrayList<>(List.of("sh", "-c", script, "sh"));
    command.addAll(
        List.of(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-XX:+UseSerialGC",
            "-XX:TieredStopAtLevel=1",
            "-cp",
            System.getProperty("java.class.path"),
            Main.class.getName()));
    command.addAll(List.of(words));
    return command.toArray(String[]::new);
  }

  private static Program finished(File err, String... command) throws Exception {
    Process p = new ProcessBuilder(command).redirectError(err).redirectOutput(err).start();
    assertTrue(p.waitFor(120, TimeUnit.SECONDS), "it does not end");
    return Program.ended(p.exitValue(), Files.readString(err.toPath()));
  }

  /** A limit on the size of files does to a run what a full disk does: it ends in the middle. */
  @Test
  void aDiskThatIsFullLeavesNothingHalfWritten() throws Exception {
    Assumptions.assumeTrue(File.separatorChar == '/', "no limits on file sizes here: skipped");
    Path out = home.resolve("full");
    File err = home.resolve("full.txt").toFile();
    Program run =
        finished(err, child("ulimit -f 100 && exec \"$@\"", with(SHORT, "--out", out.toString())));
    assertRefused(run.code, run.err, out);
    assertTrue(run.err.contains("trace.csv"), run.err);
  }

  @Test
  void standardOutputThatTakesNothingIsToldOf() throws Exception {
    Assumptions.assumeTrue(Files.exists(Path.of("/dev/full")), "no /dev/full: skipped");
    File err = home.resolve("out.txt").toFile();
    Program run = finished(err, child("exec \"$@\" >/dev/full", "--help"));
    assertEquals(Main.FAULT, run.code, run.err);
    assertTrue(run.err.startsWith("Standard output could not be written"), run.err);
  }

  @Test
  void filesOfTheProgramAreUtf8Everywhere() throws IOException {
    String page = Files.readString(plain.resolve("report.html"), StandardCharsets.UTF_8);
    assertTrue(page.contains("°C"));
  }
}

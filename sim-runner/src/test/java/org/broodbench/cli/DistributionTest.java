package org.broodbench.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the zip holds besides the program: its start scripts and its list of licences. */
class DistributionTest {
  private static final Path DIST = Path.of("src", "dist");

  @TempDir private Path folder;

  private static String posix() throws Exception {
    return Files.readString(DIST.resolve("bin/broodbench"));
  }

  private static String windows() throws Exception {
    return Files.readString(DIST.resolve("bin/broodbench.cmd"), StandardCharsets.US_ASCII);
  }

  private static String only(String pattern, String text) {
    Matcher found = Pattern.compile(pattern, Pattern.MULTILINE | Pattern.UNIX_LINES).matcher(text);
    assertTrue(found.find(), pattern);
    String first = found.group(1);
    assertFalse(found.find(), "twice: " + pattern);
    return first;
  }

  /** The Windows script cannot be run here, so its one line is held against the other's. */
  @Test
  void bothStartScriptsHandOverTheSame() throws Exception {
    String sh = posix();
    String common = only("^common=\"(.*)\"$", sh);
    String start = only("^exec (.*)$", sh);
    String expected =
        start
            .replace("$common", common)
            .replace(" $tier", "") // quicker for short commands, no need
            .replace(" \"$share\"", "") // the archive is made on POSIX systems alone
            .replace("\"$java\"", "JAVA")
            .replace("${BROODBENCH_JAVA_OPTS:-}", "OPTIONS")
            .replace("\"$jar\"", "JAR")
            .replace("\"$@\"", "ARGUMENTS");
    String given =
        only("^(\"%BROODBENCH_JAVA%\".*?)\\r$", windows())
            .replace("\"%BROODBENCH_JAVA%\"", "JAVA")
            .replace("%BROODBENCH_JAVA_OPTS%", "OPTIONS")
            .replace("\"%~dp0..\\lib\\broodbench.jar\"", "JAR")
            .replace("%*", "ARGUMENTS");
    assertEquals(expected, given);
    assertTrue(given.startsWith("JAVA ") && given.endsWith(" OPTIONS -jar JAR ARGUMENTS"), given);
    assertTrue(sh.contains("lib=$(CDPATH='' cd -- \"$(dirname -- \"$script\")/../lib\" && pwd)"));
    assertTrue(sh.contains("\njar=$lib/broodbench.jar\n"));
  }

  @Test
  void theWindowsScriptQuotesItsPathsAndHandsOnTheExitCode() throws Exception {
    String cmd = windows();
    assertTrue(cmd.endsWith("\r\nexit /b %ERRORLEVEL%\r\n"), cmd);
    assertEquals(cmd, cmd.replace("\r", "").replace("\n", "\r\n"), "line ends of Windows");
    for (String line : cmd.split("\r\n")) {
      if (line.startsWith("rem ")) {
        continue;
      }
      assertEquals(0, line.chars().filter(c -> c == '"').count() % 2, line);
      assertFalse(line.contains("("), "a bracket in a path would end a block: " + line);
      boolean quoted = false;
      for (String part : line.split("\"", -1)) {
        if (!quoted) {
          assertFalse(part.contains("%~dp0") || part.contains("%JAVA_HOME%"), line);
        }
        quoted = !quoted;
      }
    }
    assertTrue(cmd.contains("if defined JAVA_HOME set \"BROODBENCH_JAVA=%JAVA_HOME%\\bin\\java\""));
  }

  @Test
  void theVerbsThatTheScriptNamesExist() throws Exception {
    PrintStream nowhere = new PrintStream(OutputStream.nullOutputStream(), true, "UTF-8");
    var verbs = Main.line(nowhere, nowhere).getSubcommands().keySet();
    String named = only("^  (.*)\\) tier= ;;$", posix());
    for (String verb : named.split(" \\| ")) {
      assertTrue(verbs.contains(verb), verb);
    }
  }

  @Test
  void everyLibraryHasItsLineInTheListOfLicences() throws Exception {
    String paths = Files.readString(Path.of("target", "runtime-libraries.txt")).trim();
    TreeSet<String> used = new TreeSet<>();
    for (String path : paths.split(Pattern.quote(File.pathSeparator))) {
      String name = Path.of(path).getFileName().toString();
      if (name.endsWith(".jar") && !name.startsWith("controller-core-")) {
        used.add(name.replaceAll("-[0-9][^-]*\\.jar$", ""));
      }
    }
    TreeSet<String> listed = new TreeSet<>();
    for (String line : Files.readAllLines(DIST.resolve("THIRD-PARTY.md"))) {
      Matcher row = Pattern.compile("^\\| ([A-Za-z0-9-]+) \\| .*https://.* \\|$").matcher(line);
      if (row.matches()) {
        listed.add(row.group(1));
      }
    }
    assertEquals(used, listed);
  }

  /** A Java that writes down what it was given, and ends with 7. */
  private Path writingJava() throws Exception {
    Path java = Files.createDirectories(folder.resolve("a java/bin")).resolve("java");
    Files.writeString(
        java,
        "#!/bin/sh\nprintf '%s\\n' \"locale ${LC_ALL:-}\" \"$PWD\" \"$@\" >>\"$TOLD\"\n"
            + "printf 'end\\n' >>\"$TOLD\"\nexit 7\n");
    assertTrue(java.toFile().setExecutable(true));
    return java;
  }

  private List<List<String>> start(Path script, String... arguments) throws Exception {
    Path told = folder.resolve("told");
    Files.deleteIfExists(told);
    List<String> words = new ArrayList<>(List.of(script.toString()));
    words.addAll(Arrays.asList(arguments));
    ProcessBuilder builder = new ProcessBuilder(words).redirectErrorStream(true);
    builder.directory(Files.createDirectories(folder.resolve("els ewhere")).toFile());
    builder.environment().put("JAVA_HOME", folder.resolve("a java").toString());
    builder.environment().put("TOLD", told.toString());
    builder.environment().put("LC_ALL", "C");
    builder.environment().remove("BROODBENCH_JAVA_OPTS");
    Process process = builder.start();
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertTrue(process.waitFor(20, TimeUnit.SECONDS));
    assertEquals(7, process.exitValue(), said);
    assertEquals("", said);
    List<List<String>> starts = new ArrayList<>(List.of(new ArrayList<>()));
    for (String line : Files.readAllLines(told)) {
      if (line.equals("end")) {
        starts.add(new ArrayList<>());
      } else {
        starts.get(starts.size() - 1).add(line);
      }
    }
    starts.remove(starts.size() - 1);
    return starts;
  }

  @Test
  void thePosixScriptStartsFromAnywhereThroughLinksWithArgumentsAndExitCodeWhole()
      throws Exception {
    writingJava();
    Path home = folder.resolve("Bienen & Völker");
    Path script = Files.createDirectories(home.resolve("bin")).resolve("broodbench");
    Files.copy(DIST.resolve("bin/broodbench"), script);
    assertTrue(script.toFile().setExecutable(true));
    Path lib = Files.createDirectories(home.resolve("lib"));
    Files.writeString(lib.resolve("broodbench.jar"), "no jar");
    assertTrue(lib.resolve("broodbench.jar").toFile().setLastModified(1_000_000_000_000L));
    Path link = folder.resolve("link");
    Files.createSymbolicLink(link, Path.of("Bienen & Völker", "bin", "broodbench"));

    List<List<String>> first = start(link, "run", "my rig.toml", "--set", "pv.power=95 W", "");
    assertEquals(2, first.size(), "an archive is tried, then the command runs");
    assertTrue(first.get(0).stream().anyMatch(w -> w.startsWith("-XX:ArchiveClassesAtExit=")));
    List<String> command = first.get(1);
    int jar = command.indexOf("-jar");
    assertEquals(
        List.of(
            home.toRealPath().resolve("lib/broodbench.jar").toString(),
            "run",
            "my rig.toml",
            "--set",
            "pv.power=95 W",
            ""),
        command.subList(jar + 1, command.size()));
    assertEquals(folder.toRealPath().resolve("els ewhere").toString(), command.get(1));
    assertEquals("locale C.UTF-8", command.get(0), "or Java cannot open the path");
    assertTrue(command.contains("-XX:TieredStopAtLevel=1"));
    assertFalse(String.join(" ", command).contains("SharedArchiveFile"));

    List<List<String>> second = start(script, "tune");
    assertEquals(1, second.size(), "what failed once is not tried at every start");
    assertFalse(second.get(0).contains("-XX:TieredStopAtLevel=1"));

    Files.writeString(lib.resolve("broodbench.jsa"), "an archive");
    List<List<String>> third = start(script, "--version");
    assertEquals(1, third.size());
    assertTrue(
        third
            .get(0)
            .contains("-XX:SharedArchiveFile=" + home.toRealPath() + "/lib/broodbench.jsa"));

    Files.writeString(lib.resolve("broodbench.jar"), "a newer jar");
    assertEquals(2, start(script, "--version").size(), "another program, another archive");
    try (var left = Files.list(lib)) {
      assertEquals(
          List.of("broodbench.jar", "broodbench.jsa", "broodbench.jsa.for"),
          left.map(p -> p.getFileName().toString()).sorted().toList());
    }
  }
}

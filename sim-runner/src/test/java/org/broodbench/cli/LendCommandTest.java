package org.broodbench.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LendCommandTest {
  @TempDir private Path folder;

  private final List<Process> started = new ArrayList<>();

  /** A process that lends one thread, and where. */
  private record Lent(Process process, String address) {}

  @AfterEach
  void endAll() throws InterruptedException {
    for (Process p : started) {
      p.destroyForcibly();
      p.waitFor(10, TimeUnit.SECONDS);
    }
  }

  private Process start(String classPath, String... args) throws IOException {
    List<String> command =
        new ArrayList<>(
            List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-XX:+UseSerialGC",
                "-cp",
                classPath,
                "org.broodbench.cli.Main"));
    command.addAll(List.of(args));
    ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
    builder.environment().remove(SecretFile.VARIABLE);
    Process process = builder.start();
    started.add(process);
    return process;
  }

  private static String classPath() {
    return System.getProperty("java.class.path");
  }

  private Process begin(Path secret) throws IOException {
    return start(
        classPath(),
        "lend",
        "--listen",
        "127.0.0.1:0",
        "--threads",
        "1",
        "--secret",
        secret.toString());
  }

  /** Waits until it listens. */
  private static Lent listening(Process process) throws IOException {
    BufferedReader out = process.inputReader(StandardCharsets.UTF_8);
    String line = out.readLine();
    assertTrue(line != null && line.startsWith("Lends 1 thread on 127.0.0.1:"), line);
    return new Lent(process, line.replaceAll(".* on ([0-9.:]+)\\. .*", "$1"));
  }

  private Path secret(String name) {
    Path file = folder.resolve(name);
    assertEquals(0, Program.run("lend", "--new-secret", file.toString()).code);
    return file;
  }

  private static Program run(Path out, String... args) {
    List<String> all = new ArrayList<>(Arrays.asList(args));
    all.addAll(List.of("--json", "--out", out.toString()));
    return Program.run(all.toArray(String[]::new));
  }

  private static void assertSameFiles(Path one, Path other) throws IOException {
    try (Stream<Path> files = Files.list(one)) {
      for (Path f : files.toList()) {
        assertEquals(-1L, Files.mismatch(f, other.resolve(f.getFileName())), f.toString());
      }
    }
  }

  /**
   * Two processes carry out a study; one is killed on the way, and the other is as well when it has
   * done its share. What comes out is what threads of this process give, byte for byte.
   */
  @Test
  void theAnswerIsThatOfThreadsThoughMembersAreKilled() throws Exception {
    Path secret = secret("secret");
    Process first = begin(secret);
    Process second = begin(secret);
    Path alone = folder.resolve("alone");
    String[] study = {"stress", "--weeks", "1"};
    Program threads = run(alone, study);
    Lent one = listening(first);
    Lent two = listening(second);

    Path out = folder.resolve("spread");
    Path journal = out.resolve("stress.journal");
    Set<Integer> before = listeningPorts(ProcessHandle.current().pid());
    CompletableFuture<Program> spread =
        CompletableFuture.supplyAsync(
            () ->
                run(
                    out,
                    "stress",
                    "--weeks",
                    "1",
                    "--threads",
                    "0",
                    "--members",
                    one.address() + "," + two.address(),
                    "--secret",
                    secret.toString()));
    long killedAt = killAfter(one.process(), journal, 5, spread);
    assertEquals(before, listeningPorts(ProcessHandle.current().pid()), "who asks does not listen");
    killAfter(two.process(), journal, killedAt + 6, spread);
    Program p = spread.get(120, TimeUnit.SECONDS);

    assertEquals(threads.code, p.code, p.err);
    List<String> said = p.err.lines().toList();
    assertEquals(2, said.size(), p.err);
    assertTrue(said.get(0).startsWith("Member " + one.address() + " is out: "), p.err);
    assertTrue(said.get(0).endsWith("Its work goes to the others."), p.err);
    assertTrue(said.get(1).startsWith("Member " + two.address() + " is out: "), p.err);
    assertTrue(said.get(1).endsWith("this machine goes on alone."), p.err);
    assertEquals(threads.out, p.out);
    assertSameFiles(alone, out);
  }

  /** Kills when the journal has so many lines; how many it had. */
  private static long killAfter(Process process, Path journal, long lines, CompletableFuture<?> run)
      throws Exception {
    for (int i = 0; i < 12_000 && lines(journal) < lines && !run.isDone(); i++) {
      Thread.sleep(5);
    }
    assertFalse(run.isDone(), () -> "ended too early: " + run);
    process.destroyForcibly();
    return lines(journal);
  }

  private static long lines(Path file) throws IOException {
    try {
      return Files.readAllLines(file).size();
    } catch (java.nio.file.NoSuchFileException e) {
      return 0;
    }
  }

  /** All four verbs on two members that stay; a share of the campaigns takes the first of them. */
  @Test
  @Tag("campaign")
  void everyStudyGivesTheSame() throws Exception {
    Path secret = secret("secret");
    Process first = begin(secret);
    Process second = begin(secret);
    String members = listening(first).address() + "," + listening(second).address();
    List<List<String>> studies =
        List.of(
            List.of("run", "--days", "3", "--no-remedies", "--sure", "40"),
            List.of("tune", "--evaluations", "60", "--set", "tune.season_days=7"),
            List.of("size", "--seasons", "2", "--weeks", "1"),
            List.of(
                "stress",
                "--weeks",
                "1",
                "--season",
                "--pair",
                "lid_off+relay_open",
                "--all-losses"));
    int share =
        (studies.size() * Integer.getInteger("broodbench.campaign.percent", 100) + 99) / 100;
    for (List<String> study : studies.subList(0, share)) {
      Path alone = folder.resolve(study.get(0));
      Path out = folder.resolve(study.get(0) + " spread");
      Program threads = run(alone, study.toArray(String[]::new));
      List<String> more = new ArrayList<>(study);
      more.addAll(List.of("--members", members, "--secret", secret.toString()));
      Program spread = run(out, more.toArray(String[]::new));
      assertEquals("", spread.err);
      assertEquals(threads.code, spread.code);
      assertTrue(spread.code < 2, threads.err);
      assertEquals(threads.out, spread.out);
      assertSameFiles(alone, out);
    }
  }

  @Test
  void whoCannotProveItselfIsRefused() throws Exception {
    Lent lent = listening(begin(secret("secret")));
    Path out = folder.resolve("out");
    Program other =
        run(
            out,
            "stress",
            "--members",
            lent.address() + ",127.0.0.1:1",
            "--secret",
            secret("other").toString());
    assertEquals(2, other.code);
    assertTrue(
        other.err.contains(lent.address() + ": it refused us: it has another secret"), other.err);
    assertTrue(other.err.contains("127.0.0.1:1: nobody answers there"), other.err);
    assertFalse(Files.exists(out));

    // the words with which callers of the engine, its members and a browser begin
    int port = Integer.parseInt(lent.address().replaceAll(".*:", ""));
    for (String words : List.of("CP2", "HZC", "GET /hazelcast/health HTTP/1.1\r\n\r\n")) {
      try (Socket socket = new Socket("127.0.0.1", port)) {
        socket.setSoTimeout(20_000);
        socket.getOutputStream().write(words.getBytes(StandardCharsets.US_ASCII));
        socket.getOutputStream().write(new byte[200]);
        InputStream in = socket.getInputStream();
        byte[] heard = heard(in);
        assertTrue(heard.length <= 44, "greeting and number alone, not " + heard.length);
      }
    }
    assertTrue(lent.process().isAlive());
    if (Files.isReadable(Path.of("/proc/net/tcp"))) {
      assertEquals(Set.of(port), listeningPorts(lent.process().pid()), "one port");
    }
  }

  /** Everything until it hangs up, which may be a reset. */
  private static byte[] heard(InputStream in) throws IOException {
    byte[] all = new byte[1000];
    int length = 0;
    try {
      for (int n = in.read(all); n >= 0; n = in.read(all, length, all.length - length)) {
        length += n;
      }
    } catch (java.net.SocketException e) {
      // reset: it hung up with words of ours unread
    }
    return Arrays.copyOf(all, length);
  }

  @Test
  void nothingListensUnlessAskedTo() throws Exception {
    Assumptions.assumeTrue(Files.isReadable(Path.of("/proc/net/tcp")), "a system without /proc");
    Path out = folder.resolve("out");
    Process study =
        start(classPath(), "stress", "--weeks", "1", "--threads", "1", "--out", out.toString());
    int looks = 0;
    for (int i = 0; i < 12_000 && lines(out.resolve("stress.journal")) < 4; i++) {
      assertTrue(study.isAlive());
      assertEquals(Set.of(), listeningPorts(study.pid()));
      looks++;
      Thread.sleep(5);
    }
    assertTrue(looks > 5, "looked " + looks + " times while it ran");
  }

  /** TCP ports that a process listens on, by the tables of the kernel. */
  private static Set<Integer> listeningPorts(long pid) throws IOException {
    Set<String> own = new TreeSet<>();
    try (Stream<Path> open = Files.list(Path.of("/proc", String.valueOf(pid), "fd"))) {
      for (Path fd : open.toList()) {
        try {
          own.add(Files.readSymbolicLink(fd).toString().replaceAll("socket:\\[(\\d+)]", "$1"));
        } catch (IOException e) {
          continue; // closed meanwhile
        }
      }
    }
    Set<Integer> ports = new TreeSet<>();
    for (String table : List.of("/proc/net/tcp", "/proc/net/tcp6")) {
      for (String line : Files.readAllLines(Path.of(table))) {
        String[] f = line.strip().split("\\s+");
        if (f.length > 9 && f[3].equals("0A") && own.contains(f[9])) {
          ports.add(Integer.parseInt(f[1].substring(f[1].lastIndexOf(':') + 1), 16));
        }
      }
    }
    return ports;
  }

  @Test
  void withoutTheLibraryItSaysWhatToDo() throws Exception {
    String without =
        Arrays.stream(classPath().split(File.pathSeparator))
            .filter(p -> !Path.of(p).getFileName().toString().startsWith("hazelcast-"))
            .collect(Collectors.joining(File.pathSeparator));
    assertTrue(without.length() < classPath().length(), "the library is there in tests");
    Process lend = start(without, "lend");
    Process study = start(without, "stress", "--members", "127.0.0.1:5701");
    for (Process p : List.of(lend, study)) {
      String said = new String(p.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
      assertEquals(2, p.waitFor(), said);
      assertTrue(said.contains("without the extra library"), said);
      assertTrue(said.contains("mvn -Pmembers"), said);
    }
  }

  @Test
  void badOptionsAreRefused() throws IOException {
    Path secret = secret("secret");
    assertEquals("rw-------", PosixFilePermissions.toString(Files.getPosixFilePermissions(secret)));
    assertRefused("which is there already", "lend", "--new-secret", secret.toString());
    assertRefused("HOST:PORT", "lend", "--listen", "127.0.0.1", "--secret", secret.toString());
    assertRefused("1 to 256", "lend", "--threads", "0", "--secret", secret.toString());
    assertRefused("which is not there", "lend", "--secret", folder.resolve("none").toString());
    Path open = Files.writeString(folder.resolve("open"), "x".repeat(40));
    Files.setPosixFilePermissions(open, PosixFilePermissions.fromString("rw-r-----"));
    assertRefused("nobody but its owner", "lend", "--secret", open.toString());
    Path brief = Files.writeString(folder.resolve("brief"), "password1\n");
    Files.setPosixFilePermissions(brief, PosixFilePermissions.fromString("rw-------"));
    assertRefused("9 characters", "lend", "--secret", brief.toString());
    // an address of a network for documentation, which no machine has
    assertRefused(
        "an address of this machine",
        "lend",
        "--listen",
        "192.0.2.1:5701",
        "--secret",
        secret.toString());
    assertRefused(
        "each machine once", "tune", "--members", "a:1,a:1", "--secret", secret.toString());
    assertRefused("0 to 256", "size", "--threads", "-1", "--members", "a:1");
    assertRefused("--sure beside it", "run", "--members", "a:1");
  }

  private static void assertRefused(String words, String... args) {
    Program p = Program.run(args);
    assertEquals(2, p.code, p.out);
    assertTrue(p.err.contains(words), p.err);
  }

  @Test
  void addressesAreReadAsPeopleWriteThem() {
    assertEquals("hive-2.local:5701", MemberOptions.address("hive-2.local:5701").toString());
    assertEquals("[::1]:5701", MemberOptions.address("[::1]:5701").toString());
    assertEquals("::1", MemberOptions.address("[::1]:5701").host());
    for (String bad : List.of("::1", "a", "a:", ":5", "a:65536", "a b:1", "a:1x", "/etc:5")) {
      assertEquals(null, MemberOptions.address(bad), bad);
    }
  }
}

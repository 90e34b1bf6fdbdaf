package org.broodbench.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The program is killed (SIGKILL, no chance to tidy up) while it works and while it writes: every
 * file is whole or not there, and a study that goes on ends with the bytes of one that was left in
 * peace. Stress and tune are killed in {@link KilledStudyTest} as well.
 */
class KillTest {
  private static final List<String> RUN = List.of("run", "--days", "1", "--no-remedies");
  private static final List<String> STRESS =
      List.of("stress", "--weeks", "1", "--set", "run.days=1", "--threads", "1");
  private static final List<String> TUNE =
      List.of(
          "tune",
          "--evaluations",
          "30",
          "--threads",
          "1",
          "--set",
          "tune.seasons=2",
          "--set",
          "tune.season_days=7",
          "--set",
          "tune.unseen_seasons=1");

  /** Longest that anything here may take on a busy machine, s. */
  private static final int PATIENCE_S = 240;

  @TempDir Path folder;

  private final SplittableRandom random = new SplittableRandom(20_270_420);

  // ---- processes ----

  private Process start(List<String> words, Path out) throws IOException {
    List<String> command =
        new ArrayList<>(
            List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:+UseSerialGC",
                "-XX:TieredStopAtLevel=1",
                "-cp",
                System.getProperty("java.class.path"),
                Main.class.getName()));
    command.addAll(words);
    if (out != null) {
      command.addAll(List.of("--out", out.toString()));
    }
    return new ProcessBuilder(command)
        .directory(folder.toFile())
        .redirectErrorStream(true)
        .redirectOutput(folder.resolve("said").toFile())
        .start();
  }

  private int finish(List<String> words, Path out) throws Exception {
    Process p = start(words, out);
    assertTrue(p.waitFor(PATIENCE_S, TimeUnit.SECONDS), "it does not end");
    assertTrue(p.exitValue() <= 1, Files.readString(folder.resolve("said")));
    return p.exitValue();
  }

  /** Kills as soon as something is so; false where it ended before. */
  private static boolean kill(Process p, BooleanSupplier when) throws InterruptedException {
    for (long waited = 0; p.isAlive() && !when.getAsBoolean(); waited++) {
      assertTrue(waited < 1000L * PATIENCE_S, "it does not end");
      Thread.sleep(1);
    }
    boolean alive = p.isAlive();
    p.destroyForcibly();
    assertTrue(p.waitFor(PATIENCE_S, TimeUnit.SECONDS), "it cannot be killed");
    return alive;
  }

  // ---- files ----

  private static List<String> names(Path out) {
    if (!Files.isDirectory(out)) {
      return List.of();
    }
    try (Stream<Path> files = Files.list(out)) {
      return files.map(f -> f.getFileName().toString()).sorted().toList();
    } catch (IOException e) {
      return List.of(); // it was taken away while it was listed
    }
  }

  private static Map<String, byte[]> results(Path out) throws IOException {
    Map<String, byte[]> found = new TreeMap<>();
    for (String name : names(out)) {
      if (!name.contains(".journal") && !name.startsWith(".")) {
        found.put(name, Files.readAllBytes(out.resolve(name)));
      }
    }
    return found;
  }

  private static void assertWhole(Map<String, byte[]> whole, Path out) throws IOException {
    results(out)
        .forEach(
            (name, bytes) -> {
              assertTrue(whole.containsKey(name), "a file of another name: " + name);
              assertArrayEquals(whole.get(name), bytes, name);
            });
  }

  private static long lines(Path journal) {
    try {
      return Files.exists(journal)
          ? Files.readAllBytes(journal).length == 0 ? 0 : Files.readString(journal).lines().count()
          : 0;
    } catch (IOException e) {
      return 0; // it was renamed while it was read
    }
  }

  private static boolean writing(Path out) {
    return names(out).stream().anyMatch(n -> n.endsWith(".part") || n.endsWith(".new"));
  }

  // ---- runs ----

  private void killRuns(int kills) throws Exception {
    Path whole = folder.resolve("whole");
    finish(RUN, whole);
    Map<String, byte[]> files = results(whole);
    assertEquals(4, files.size(), files.keySet().toString());
    Path out = folder.resolve("killed");
    int killed = 0;
    for (int i = 0; i < kills; i++) {
      Process p = start(RUN, out);
      int whenSo = random.nextInt(3);
      int there = random.nextInt(4);
      int after = random.nextInt(2000);
      long[] waited = {0};
      killed +=
          kill(
                  p,
                  switch (whenSo) {
                    case 0 -> () -> writing(out);
                    case 1 -> () -> results0(out) > there;
                    default -> () -> waited[0]++ > after;
                  })
              ? 1
              : 0;
      assertWhole(files, out);
    }
    assertTrue(killed > 0, "it was never killed");
    finish(RUN, out);
    assertEquals(files.keySet(), results(out).keySet());
    assertWhole(files, out);
    assertFalse(writing(out), "what killed ones left is cleared away: " + names(out));
  }

  private static int results0(Path out) {
    return (int) names(out).stream().filter(n -> !n.startsWith(".")).count();
  }

  @Test
  void aRunLeavesWholeFilesOrNone() throws Exception {
    killRuns(2);
  }

  // ---- studies ----

  private void killStudy(List<String> words, int kills, int mostPieces) throws Exception {
    String verb = words.get(0);
    Path whole = folder.resolve("whole-" + verb);
    int code = finish(words, whole);
    Map<String, byte[]> files = results(whole);
    assertFalse(files.isEmpty());
    Path out = folder.resolve("killed-" + verb);
    Path journal = out.resolve(verb + ".journal");
    int killed = 0;
    for (int i = 0; i < kills; i++) {
      long pieces = lines(journal) + 1 + random.nextInt(mostPieces);
      boolean atOnce = random.nextInt(4) == 0;
      Process p = start(words, out);
      killed +=
          kill(p, () -> lines(journal) > pieces || (atOnce && names(out).contains(".new"))) ? 1 : 0;
      assertWhole(files, out);
    }
    assertTrue(killed > 0, "it was never killed");
    assertEquals(code, finish(words, out));
    assertEquals(files.keySet(), results(out).keySet());
    assertWhole(files, out);
    assertFalse(Files.exists(journal), "the study is whole");
  }

  @Test
  void aSizingGoesOnToTheSameBytes() throws Exception {
    killStudy(sizing(), 1, 1);
  }

  private List<String> sizing() throws IOException {
    Path rig = folder.resolve("rig.toml");
    if (!Files.exists(rig)) {
      StringBuilder text =
          new StringBuilder(new String(ScenarioOptions.demo(), StandardCharsets.UTF_8));
      for (String c :
          List.of(
              "panel|pv.power=20 W|30",
              "panel|pv.power=100 W|75",
              "battery|battery.capacity=20 Ah|60",
              "battery|battery.capacity=80 Ah|160")) {
        String[] w = c.split("\\|");
        text.append("[[size.choice]]\npart = \"" + w[0] + "\"\nset = \"" + w[1] + "\"\n");
        text.append("price = \"" + w[2] + " EUR\"\n");
      }
      Files.writeString(rig, text);
    }
    return List.of("size", rig.toString(), "--seasons", "2", "--weeks", "1", "--threads", "1");
  }

  // ---- the live page ----

  /** The page's process is killed while it carries out a study: that ends as well, in order. */
  @Test
  void aStudyOfAKilledPageEndsAndCanGoOn() throws Exception {
    Process page =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp",
                System.getProperty("java.class.path"),
                Main.class.getName(),
                "serve",
                "--days",
                "1")
            .directory(folder.toFile())
            .redirectError(ProcessBuilder.Redirect.DISCARD)
            .start();
    Path out = folder.resolve("broodbench-out/late-split");
    try (BufferedReader said =
        new BufferedReader(new InputStreamReader(page.getInputStream(), StandardCharsets.UTF_8))) {
      URI url = URI.create(said.readLine());
      HttpClient client = HttpClient.newHttpClient();
      String cookie =
          client
              .send(HttpRequest.newBuilder(url).build(), HttpResponse.BodyHandlers.discarding())
              .headers()
              .firstValue("Set-Cookie")
              .orElseThrow()
              .split(";")[0];
      String home = "http://127.0.0.1:" + url.getPort();
      HttpResponse<String> begun =
          client.send(
              HttpRequest.newBuilder(URI.create(home + "/api/study/start?tab=a"))
                  .header("Cookie", cookie)
                  .header("Origin", home)
                  .POST(HttpRequest.BodyPublishers.ofString("stress"))
                  .build(),
              HttpResponse.BodyHandlers.ofString());
      assertEquals(200, begun.statusCode(), begun.body());
      List<ProcessHandle> children = page.descendants().toList();
      assertEquals(1, children.size());
      assertTrue(kill(page, () -> lines(out.resolve("stress.journal")) > 2), "the page ended");
      // it is given the time that Ctrl-C is given
      for (int i = 0; children.get(0).isAlive(); i++) {
        assertTrue(i < 10 * PATIENCE_S, "the study goes on without its page");
        Thread.sleep(100);
      }
    } finally {
      page.destroyForcibly();
    }
    assertTrue(lines(out.resolve("stress.journal")) > 2, names(out).toString());
    assertFalse(writing(out), names(out).toString());
  }

  @Test
  @Tag("campaign")
  void manyKills() throws Exception {
    int kills = Math.max(1, 20 * Integer.getInteger("broodbench.campaign.percent", 100) / 100);
    killRuns(kills);
    killStudy(STRESS, kills, 8);
    killStudy(sizing(), kills, 1);
    killStudy(TUNE, kills, 8);
  }
}

package org.broodbench.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Types the tutorial from its first line to its last and holds what is printed against the page.
 * With {@code -Dbroodbench.rewrite=true} the page is brought up to date.
 */
@Tag("campaign")
class TutorialCampaignTest {
  @TempDir private Path folder;

  /** What the commands of a step print, on both streams, in the order of a terminal. */
  private List<String> printed(Tutorial.Step step) throws Exception {
    Files.writeString(folder.resolve("my-rig.toml"), step.scenario());
    List<String> lines = new ArrayList<>();
    for (String command : step.commands()) {
      List<String> words =
          new ArrayList<>(
              List.of(
                  Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                  "-XX:+UseSerialGC",
                  "-Dorg.slf4j.simpleLogger.defaultLogLevel=off",
                  "-cp",
                  System.getProperty("java.class.path"),
                  "org.broodbench.cli.Main"));
      List<String> typed = Arrays.asList(command.split(" +"));
      assertEquals("broodbench", typed.get(0));
      words.addAll(typed.subList(1, typed.size()));
      Process process =
          new ProcessBuilder(words).directory(folder.toFile()).redirectErrorStream(true).start();
      process.getOutputStream().close();
      String all = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
      int code = process.waitFor();
      boolean refused = step.scenario().isEmpty();
      assertTrue(refused ? code == 2 : code <= 1, command + " ended with " + code + "\n" + all);
      lines.addAll(all.lines().toList());
    }
    return lines;
  }

  /** The lines that the page shows: ranges of the first command's words, or so many of the last. */
  private static List<String> shown(String ranges, List<String> printed) {
    List<String> shown = new ArrayList<>();
    int next = 1;
    for (String range : ranges.split(" +")) {
      if (range.equals("last")) {
        continue;
      }
      int from;
      int to;
      if (ranges.startsWith("last")) {
        from = Math.max(1, printed.size() - Integer.parseInt(range) + 1);
        to = printed.size();
      } else {
        from = Integer.parseInt(range.split("-")[0]);
        to = Math.min(printed.size(), Integer.parseInt(range.split("-")[1]));
        from = Math.min(from, to);
      }
      if (from > next) {
        shown.add("...");
      }
      shown.addAll(printed.subList(from - 1, to));
      next = to + 1;
    }
    if (next <= printed.size()) {
      shown.add("...");
    }
    return shown;
  }

  /** In a share of the campaigns the studies, and what follows on them, are taken from the page. */
  private static boolean leftOut(Tutorial.Step step) {
    return Integer.getInteger("broodbench.campaign.percent", 100) < 100
        && step.commands().stream().anyMatch(c -> c.matches(".*(stress|tune).*"));
  }

  @Test
  void printsWhatThePageShows() throws Exception {
    List<String> page = Pages.lines(Tutorial.PAGE);
    List<String> fresh = new ArrayList<>();
    int at = 0;
    for (Tutorial.Step step : Tutorial.steps()) {
      int end = step.fence().line() + step.commands().size() + 1; // behind the closing fence
      fresh.addAll(page.subList(at, end));
      int open = end + 2;
      assertTrue(page.get(end + 1).startsWith("<!-- shown: "), page.get(end + 1));
      assertEquals("```text", page.get(open));
      fresh.addAll(page.subList(end, open + 1));
      if (leftOut(step)) {
        at = open + 1;
        continue;
      }
      String ranges = page.get(end + 1).replace("<!-- shown: ", "").replace(" -->", "");
      fresh.addAll(shown(ranges, printed(step)));
      at = open + 1;
      while (!page.get(at).equals("```")) {
        at++;
      }
    }
    fresh.addAll(page.subList(at, page.size()));
    if (Boolean.getBoolean("broodbench.rewrite")) {
      Files.writeString(Tutorial.PAGE, String.join("\n", fresh) + "\n");
    }
    assertEquals(String.join("\n", page), String.join("\n", fresh));
  }
}

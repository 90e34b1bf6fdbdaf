package org.broodbench.serve;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.broodbench.output.LivePicture;

/**
 * Studies of many runs that the page starts: each is the program itself in a process of its own, so
 * that its files are those of the command line, and that stopping it is what Ctrl-C does. One at a
 * time.
 */
public final class Studies implements AutoCloseable {
  /** Verbs that may be started. */
  static final List<String> VERBS = List.of("stress", "tune", "size");

  /** Text of a study that is kept, characters. */
  private static final int MOST_TEXT = 20_000;

  private static final Pattern POLICY =
      Pattern.compile("http-equiv=\"Content-Security-Policy\" content=\"([^\"\r\n]*)\"");

  /** Allows no script: for a report that does not bring its own policy. */
  private static final String STILL =
      "default-src 'none'; style-src 'unsafe-inline'; img-src data:";

  private final List<String> program;
  private final Path folder;
  private final Map<String, Path> reports = new LinkedHashMap<>();
  private final StringBuilder printed = new StringBuilder();
  private Process process;
  private String verb = "";
  private String progress = "";
  private boolean stopped;

  /**
   * Starts nothing yet.
   *
   * @param program words that start the program, up to its verb
   * @param folder where results go
   */
  public Studies(List<String> program, Path folder) {
    this.program = List.copyOf(program);
    this.folder = folder;
  }

  /** Starts one; false where one is running, or cannot be started. */
  synchronized boolean start(String which, Bench.Source source, List<String> settings) {
    if (!VERBS.contains(which) || running()) {
      return false;
    }
    List<String> words = new ArrayList<>(program);
    words.add(which);
    if (source.folder() != null) {
      words.add(source.name());
    }
    source.weather().forEach(w -> words.addAll(List.of("--weather", w.toString())));
    source.settings().forEach(s -> words.addAll(List.of("--set", s)));
    settings.forEach(s -> words.addAll(List.of("--set", s)));
    words.addAll(List.of("--out", folder.toString()));
    int threads = Math.max(1, Runtime.getRuntime().availableProcessors() - 1);
    words.addAll(List.of("--threads", String.valueOf(threads)));
    ProcessBuilder builder = new ProcessBuilder(words);
    builder.environment().put("BROODBENCH_PROGRESS", "1");
    // its standard input stays open as long as this process lives, however that ends
    builder.environment().put("BROODBENCH_ENDS_WITH_INPUT", "1");
    verb = which;
    progress = "";
    stopped = false;
    printed.setLength(0);
    try {
      process = builder.start();
    } catch (IOException e) {
      printed.append("cannot be started: ").append(e.getMessage());
      return false;
    }
    reports.put(which, folder.resolve(which + ".html"));
    listen(process.getErrorStream(), true);
    listen(process.getInputStream(), false);
    return true;
  }

  private void listen(InputStream in, boolean messages) {
    Thread t = new Thread(() -> read(in, messages), "words of a study");
    t.setDaemon(true);
    t.start();
  }

  /** A line that ends with a return is written over: it tells how far the study has come. */
  private void read(InputStream in, boolean messages) {
    StringBuilder line = new StringBuilder();
    try (java.io.Reader r = new java.io.InputStreamReader(in, StandardCharsets.UTF_8)) {
      for (int c = r.read(); c >= 0; c = r.read()) {
        line.append((char) c);
        if (c == '\n' || c == '\r' || line.length() > 2000) {
          heard(line.toString(), messages);
          line.setLength(0);
        }
      }
    } catch (IOException e) {
      heard(e.getMessage() + "\n", messages);
    }
    heard(line.toString(), messages);
  }

  private synchronized void heard(String line, boolean message) {
    if (message && line.strip().matches("\\d+ of \\d+.*")) {
      progress = line.strip();
    } else if (printed.length() < MOST_TEXT && !line.isBlank()) {
      printed.append(line.replace("\r", ""));
    }
  }

  /** Ends it in order: what is there is written out. */
  public synchronized void stop() {
    if (running()) {
      stopped = true;
      process.toHandle().destroy(); // Process.destroy would close what it still says
    }
  }

  private boolean running() {
    return process != null && process.isAlive();
  }

  /** How it stands, as JSON. */
  synchronized String state() {
    int code = process == null || running() ? -1 : process.exitValue();
    return "{\"verb\":"
        + LivePicture.string(verb)
        + ",\"running\":"
        + running()
        + ",\"stopped\":"
        + stopped
        + ",\"code\":"
        + code
        + ",\"progress\":"
        + LivePicture.string(progress)
        + ",\"printed\":"
        + LivePicture.string(printed.toString())
        + ",\"folder\":"
        + LivePicture.string(folder.toString())
        + ",\"report\":"
        + (!verb.isEmpty() && !running() && Files.isRegularFile(folder.resolve(verb + ".html")))
        + "}";
  }

  /** The report of a study that was started here; null where there is none. */
  synchronized Answer report(String path) {
    Path file =
        path.startsWith("/study/") && path.endsWith(".html")
            ? reports.get(path.substring("/study/".length(), path.length() - ".html".length()))
            : null;
    if (file == null || !Files.isRegularFile(file)) {
      return null;
    }
    try {
      byte[] page = Files.readAllBytes(file);
      Matcher own = POLICY.matcher(new String(page, StandardCharsets.UTF_8));
      String policy = own.find() ? own.group(1) : STILL;
      return new Answer(200, Answer.HTML, page, null, policy + "; frame-ancestors 'none'");
    } catch (IOException e) {
      return Answer.refused(404, "The report cannot be read.");
    }
  }

  @Override
  public void close() {
    stop();
  }
}

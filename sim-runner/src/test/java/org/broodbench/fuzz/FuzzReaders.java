package org.broodbench.fuzz;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Fuzzes every reader, one after the other, each in a process of its own: {@code mvn -Pfuzz}. What
 * it learns stays in {@code target/fuzz}, so that a later run goes on from there; an input that
 * makes a reader fail is put beside the seeds, where {@code ReaderSeedsTest} finds it.
 */
public final class FuzzReaders {
  private static final Path SEEDS = Path.of("src/test/resources/fuzz");
  private static final Path WORK = Path.of("target/fuzz");

  /** Memory of a process and of its heap: a reader that asks for more has failed. */
  private static final int MOST_MB = 2500;

  private static final String HEAP = "-Xmx1000m";

  /** An input that takes longer has failed, s. */
  private static final int LONGEST_S = 60;

  private static final Pattern COUNTS =
      Pattern.compile("#(\\d+)\\s+(INITED|DONE)\\s+cov: (\\d+) ft: (\\d+) corp: (\\d+)/.*");

  private FuzzReaders() {}

  /**
   * Runs.
   *
   * @param args seconds for each reader, then which readers, all when none is named
   */
  public static void main(String[] args) throws IOException, InterruptedException {
    int seconds = Integer.parseInt(args[0]);
    List<String> only = new ArrayList<>();
    for (int i = 1; i < args.length; i++) {
      only.addAll(List.of(args[i].split("[ ,]+")));
    }
    only.removeIf(String::isBlank);
    System.out.printf(
        Locale.ROOT,
        "%-16s %11s %10s %10s %10s %8s %8s%n",
        "reader",
        "processor s",
        "tries",
        "edges from",
        "to",
        "kept",
        "failures");
    int failures = 0;
    for (Reader reader : Reader.values()) {
      if (only.isEmpty() || only.contains(reader.folder())) {
        failures += fuzz(reader, seconds);
      }
    }
    System.exit(failures == 0 ? 0 : 1);
  }

  private static int fuzz(Reader reader, int seconds) throws IOException, InterruptedException {
    Path work = WORK.resolve(reader.folder());
    Path kept = Files.createDirectories(work.resolve("kept"));
    Path failed = Files.createDirectories(work.resolve("failed"));
    Path said = work.resolve("said.txt");
    List<String> command =
        List.of(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            HEAP,
            "-XX:+UseSerialGC",
            "-XX:TieredStopAtLevel=1",
            "-D" + FuzzTarget.PROPERTY + "=" + reader.folder(),
            "-cp",
            System.getProperty("java.class.path"),
            "com.code_intelligence.jazzer.Jazzer",
            "--target_class=" + FuzzTarget.class.getName(),
            "--instrumentation_includes=org.broodbench.**",
            "--disabled_hooks=com.code_intelligence.jazzer.sanitizers.*",
            "--keep_going=5",
            "-max_total_time=" + seconds,
            "-timeout=" + LONGEST_S,
            "-rss_limit_mb=" + MOST_MB,
            "-artifact_prefix=" + failed.toAbsolutePath() + "/",
            "--reproducer_path=" + failed.toAbsolutePath(),
            kept.toString(),
            SEEDS.resolve(reader.folder()).toString());
    Process process =
        new ProcessBuilder(command).redirectErrorStream(true).redirectOutput(said.toFile()).start();
    long processorS = 0;
    while (!process.waitFor(1, TimeUnit.SECONDS)) {
      // the clock of a busy machine tells little
      processorS = process.info().totalCpuDuration().map(Duration::toSeconds).orElse(processorS);
    }
    int code = process.exitValue();
    long tries = 0;
    String from = "?";
    String to = "?";
    String corpus = "?";
    for (String line : Files.readAllLines(said, java.nio.charset.StandardCharsets.ISO_8859_1)) {
      Matcher counts = COUNTS.matcher(line);
      if (counts.matches()) {
        tries = Long.parseLong(counts.group(1));
        from = counts.group(2).equals("INITED") ? counts.group(3) : from;
        to = counts.group(3);
        corpus = counts.group(5);
      }
    }
    int failures = keep(reader, failed);
    System.out.printf(
        Locale.ROOT,
        "%-16s %11d %10d %10s %10s %8s %8d%s%n",
        reader.folder(),
        processorS,
        tries,
        from,
        to,
        corpus,
        failures,
        code == 0 ? "" : "  see " + said);
    return code == 0 ? failures : Math.max(1, failures);
  }

  /** A slow input is told of in the same place, and tells of a busy machine as a rule. */
  private static boolean failure(Path file) {
    String name = file.getFileName().toString();
    return !name.endsWith(".java") && !name.startsWith("slow-unit");
  }

  /** Puts inputs that failed beside the seeds. */
  private static int keep(Reader reader, Path failed) throws IOException {
    int n = 0;
    try (Stream<Path> files = Files.list(failed)) {
      for (Path file : files.filter(FuzzReaders::failure).toList()) {
        Files.move(
            file,
            SEEDS.resolve(reader.folder()).resolve(file.getFileName()),
            java.nio.file.StandardCopyOption.REPLACE_EXISTING);
        n++;
      }
    }
    return n;
  }
}

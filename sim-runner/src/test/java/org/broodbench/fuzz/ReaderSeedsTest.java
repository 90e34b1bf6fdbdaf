package org.broodbench.fuzz;

import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What the fuzzer begins with, and every input that ever made a reader fail. */
class ReaderSeedsTest {
  /** For all inputs of one reader, of which each takes milliseconds; a busy machine is slower. */
  private static final Duration IN_TIME = Duration.ofSeconds(60);

  static List<Path> seeds(Reader reader) {
    try (Stream<Path> files = Files.list(Path.of("src/test/resources/fuzz", reader.folder()))) {
      return files.sorted().toList();
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  @ParameterizedTest
  @EnumSource
  void everySeedIsReadOrRefused(Reader reader) {
    List<Path> seeds = seeds(reader);
    assertTrue(!seeds.isEmpty(), "no seed");
    for (Path seed : seeds) {
      assertTimeoutPreemptively(
          IN_TIME,
          () -> {
            try {
              reader.read(Files.readAllBytes(seed));
            } catch (RuntimeException | Error e) {
              throw new AssertionError(seed.toString(), e);
            }
          });
    }
  }
}

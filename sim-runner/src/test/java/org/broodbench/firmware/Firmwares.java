package org.broodbench.firmware;

import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;

/** Compiles firmware for tests: the C form as it is, or with one text replaced by another. */
public final class Firmwares {
  private static final Path SOURCES = Path.of("../controller-core/src/main/c");

  private static final Path OBJECTS = Path.of("target/firmware-objects");

  private Firmwares() {}

  /** Skips the calling test where a program is missing. */
  public static void need(String program) {
    boolean there =
        Stream.of(System.getenv("PATH").split(File.pathSeparator))
            .anyMatch(folder -> Files.isExecutable(Path.of(folder, program)));
    if (!there) {
      System.out.println(program + " is not installed: skipped");
    }
    Assumptions.assumeTrue(there, program + " is not installed");
  }

  /** A source file of the C form. */
  public static String source(String name) {
    try {
      return Files.readString(SOURCES.resolve(name));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The C form as shipped. */
  public static Path reference(Path folder) {
    return changed(folder, "host_main.c");
  }

  /**
   * The C form with texts replaced: a file, then pairs of right and wrong text, maybe another file
   * with pairs of its own. Every right text has to be there.
   */
  public static Path changed(Path folder, String file, String... changes) {
    need("cc");
    try {
      Path program = Files.createTempFile(folder, "fw", "");
      Path sources = Files.createTempDirectory(folder, "c");
      try (Stream<Path> files = Files.list(SOURCES)) {
        for (Path f : files.filter(f -> f.toString().matches(".*\\.[ch]")).toList()) {
          Files.copy(f, sources.resolve(f.getFileName()));
        }
      }
      Path name = sources.resolve(file);
      for (int i = 0; i < changes.length; i += 2) {
        if (changes[i].matches("\\w+\\.[ch]")) {
          name = sources.resolve(changes[i]);
          i--;
          continue;
        }
        String text = Files.readString(name);
        if (!text.contains(changes[i])) {
          throw new AssertionError(name + " lacks: " + changes[i]);
        }
        Files.writeString(name, text.replace(changes[i], changes[i + 1]));
      }
      List<String> command = new ArrayList<>(List.of("cc", "-o", program.toString()));
      int headers = 0;
      try (Stream<Path> files = Files.list(sources)) {
        for (Path f : files.filter(f -> f.toString().endsWith(".h")).sorted().toList()) {
          headers = 31 * headers + Files.readString(f).hashCode();
        }
      }
      try (Stream<Path> files = Files.list(sources)) {
        for (Path f : files.filter(f -> f.toString().endsWith(".c")).toList()) {
          command.add(object(f, headers).toString());
        }
      }
      run(command);
      return program;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** What did not change since it was compiled last is not compiled again. */
  private static Path object(Path source, int headers) throws IOException {
    Files.createDirectories(OBJECTS);
    String content = Files.readString(source);
    Path object =
        OBJECTS.resolve(
            String.format(
                "%s-%08x%08x-%d.o",
                source.getFileName(), headers, content.hashCode(), content.length()));
    if (!Files.exists(object)) {
      Path fresh = Files.createTempFile(OBJECTS, "new", ".o");
      run(List.of("cc", "-std=c99", "-O1", "-c", source.toString(), "-o", fresh.toString()));
      Files.move(fresh, object, java.nio.file.StandardCopyOption.REPLACE_EXISTING);
    }
    return object;
  }

  /** A small program of its own. */
  public static Path compiled(Path folder, String source) {
    need("cc");
    try {
      Path file = Files.createTempFile(folder, "own", ".c");
      Path program = Files.createTempFile(folder, "own", "");
      Files.writeString(file, source);
      run(List.of("cc", "-o", program.toString(), file.toString()));
      return program;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void run(List<String> command) throws IOException {
    Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
    String said = new String(process.getInputStream().readAllBytes());
    try {
      if (process.waitFor() != 0) {
        throw new AssertionError(said);
      }
    } catch (InterruptedException e) {
      throw new AssertionError(e);
    }
  }
}

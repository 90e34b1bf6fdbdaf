package org.broodbench.controller;

import java.io.DataInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;

/** Compiles the C form of the core with a test harness and talks to it in 32-bit words. */
final class CPort implements AutoCloseable {
  static final Path SOURCES = Path.of("src/main/c");
  private static final Path HARNESSES = Path.of("src/test/c");
  private static final Path PROGRAMS = Path.of("target/c");

  /** Warnings are errors; undefined behaviour and bad addresses end the program. */
  static final List<String> CHECKED =
      List.of(
          "-O1",
          "-g",
          "-fsanitize=undefined,address",
          "-fno-sanitize-recover=all",
          "-fno-omit-frame-pointer");

  /** The same without a library of the compiler, which not every machine has: a trap. */
  static final List<String> TRAPPED =
      List.of("-O2", "-fsanitize=undefined", "-fsanitize-trap=undefined");

  private final Process process;
  private final OutputStream out;
  private final DataInputStream in;
  private final ByteBuffer requests = ByteBuffer.allocate(1 << 20).order(ByteOrder.LITTLE_ENDIAN);

  private CPort(Path program) throws IOException {
    process =
        new ProcessBuilder(program.toString())
            .redirectError(ProcessBuilder.Redirect.INHERIT)
            .start();
    out = process.getOutputStream();
    in = new DataInputStream(new java.io.BufferedInputStream(process.getInputStream(), 1 << 16));
  }

  /** Skips the calling test where a program is missing. */
  static void need(String program) {
    boolean there =
        Stream.of(System.getenv("PATH").split(java.io.File.pathSeparator))
            .anyMatch(folder -> Files.isExecutable(Path.of(folder, program)));
    if (!there) {
      System.out.println(program + " is not installed: skipped");
    }
    Assumptions.assumeTrue(there, program + " is not installed");
  }

  /** The core's own sources: everything but the link and the program for this machine. */
  static List<Path> core() {
    try (Stream<Path> files = Files.list(SOURCES)) {
      return files
          .filter(f -> f.toString().endsWith(".c"))
          .filter(f -> !f.endsWith("host_main.c") && !f.endsWith("bb_link.c"))
          .sorted()
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Compiles the core with a harness; any message of the compiler fails the test. */
  static CPort start(String compiler, String harness, List<String> flags) {
    try {
      Files.createDirectories(PROGRAMS);
      Path program =
          PROGRAMS.resolve(harness + "-" + compiler + "-" + Integer.toHexString(flags.hashCode()));
      List<String> command = new ArrayList<>(List.of(compiler, "-std=c99"));
      command.addAll(List.of("-Wall", "-Wextra", "-Werror", "-pedantic"));
      command.addAll(flags);
      command.addAll(List.of("-I", SOURCES.toString(), "-o", program.toString()));
      core().forEach(f -> command.add(f.toString()));
      command.add(HARNESSES.resolve(harness + ".c").toString());
      if (!upToDate(program)) {
        String said = run(command);
        if (!said.isEmpty()) {
          throw new AssertionError(said);
        }
      }
      return new CPort(program);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static boolean upToDate(Path program) throws IOException {
    if (!Files.exists(program)) {
      return false;
    }
    for (Path folder : List.of(SOURCES, HARNESSES)) {
      try (Stream<Path> files = Files.list(folder)) {
        for (Path file : files.toList()) {
          if (Files.getLastModifiedTime(file).compareTo(Files.getLastModifiedTime(program)) >= 0) {
            return false;
          }
        }
      }
    }
    return true;
  }

  /** Runs a command to its end; what it printed. */
  static String run(List<String> command) throws IOException {
    Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
    process.getOutputStream().close();
    String said = new String(process.getInputStream().readAllBytes());
    try {
      if (!process.waitFor(60, TimeUnit.SECONDS)) {
        process.destroyForcibly();
        throw new AssertionError("no end of " + command);
      }
    } catch (InterruptedException e) {
      throw new AssertionError(e);
    }
    if (process.exitValue() != 0) {
      throw new AssertionError(String.join(" ", command) + "\n" + said);
    }
    return said;
  }

  CPort put(int... words) {
    for (int word : words) {
      requests.putInt(word);
    }
    return this;
  }

  /** Sends what was put. */
  void flush() {
    try {
      out.write(requests.array(), 0, requests.position());
      out.flush();
      requests.clear();
    } catch (IOException e) {
      throw new AssertionError("the C program ended: " + ended(), e);
    }
  }

  int[] take(int count) {
    byte[] bytes = new byte[4 * count];
    try {
      in.readFully(bytes);
    } catch (EOFException e) {
      throw new AssertionError("the C program ended: " + ended(), e);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    int[] words = new int[count];
    ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN).asIntBuffer().get(words);
    return words;
  }

  private String ended() {
    try {
      return process.waitFor(5, TimeUnit.SECONDS) ? "exit " + process.exitValue() : "not at all";
    } catch (InterruptedException e) {
      throw new AssertionError(e);
    }
  }

  @Override
  public void close() {
    try {
      out.close();
      if (!process.waitFor(5, TimeUnit.SECONDS)) {
        process.destroyForcibly();
        throw new AssertionError("the C program does not end");
      }
      if (process.exitValue() != 0) {
        throw new AssertionError("the C program ended with " + process.exitValue());
      }
    } catch (IOException | InterruptedException e) {
      throw new AssertionError(e);
    }
  }
}

package org.broodbench.output;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;

/** Writes a file whole or not at all: under a temporary name beside it, then renamed. */
public final class WholeFile {
  private static final String END = ".part";

  private WholeFile() {}

  /**
   * Writes bytes.
   *
   * @throws IOException where the folder cannot be written; no partial file is left
   */
  public static void write(Path file, byte[] bytes) throws IOException {
    // a plain new file rather than a private temporary one, so that the usual permissions apply
    String start = "." + file.getFileName() + ".";
    Path temporary = file.resolveSibling(start + ProcessHandle.current().pid() + END);
    dropLeftovers(temporary.toAbsolutePath().getParent(), start);
    try {
      Files.write(temporary, bytes);
      try {
        Files.move(
            temporary, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
      } catch (AtomicMoveNotSupportedException e) {
        Files.move(temporary, file, StandardCopyOption.REPLACE_EXISTING);
      }
    } catch (IOException e) {
      throw new IOException(file + ": " + reason(e), e);
    } finally {
      Files.deleteIfExists(temporary);
    }
  }

  /** Without the name of the temporary file, which nobody knows. */
  private static String reason(IOException e) {
    if (e instanceof AccessDeniedException) {
      return "permission denied";
    }
    if (e instanceof NoSuchFileException) {
      return "no such folder";
    }
    String why = e instanceof FileSystemException f ? f.getReason() : e.getMessage();
    return why == null ? e.getClass().getSimpleName() : why;
  }

  /** What a process that was killed while it wrote has left: nobody else clears it away. */
  private static void dropLeftovers(Path folder, String start) {
    try (DirectoryStream<Path> all =
        Files.newDirectoryStream(folder, f -> f.getFileName().toString().startsWith(start))) {
      for (Path f : all) {
        String name = f.getFileName().toString();
        String pid = name.substring(start.length()).replace(END, "");
        boolean left =
            name.endsWith(END)
                && pid.matches("\\d{1,18}")
                && ProcessHandle.of(Long.parseLong(pid)).isEmpty();
        if (left) {
          Files.deleteIfExists(f);
        }
      }
    } catch (IOException | DirectoryIteratorException e) {
      return; // a folder that cannot be looked into may still be written to
    }
  }
}

package org.broodbench.output;

import java.io.IOException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;

/** Writes a file whole or not at all: under a temporary name beside it, then renamed. */
public final class WholeFile {
  private WholeFile() {}

  /**
   * Writes bytes.
   *
   * @throws IOException where the folder cannot be written; no partial file is left
   */
  public static void write(Path file, byte[] bytes) throws IOException {
    // a plain new file rather than a private temporary one, so that the usual permissions apply
    Path temporary =
        file.resolveSibling(
            "." + file.getFileName() + "." + ProcessHandle.current().pid() + ".part");
    try {
      Files.write(temporary, bytes);
      try {
        Files.move(
            temporary, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
      } catch (AtomicMoveNotSupportedException e) {
        Files.move(temporary, file, StandardCopyOption.REPLACE_EXISTING);
      }
    } finally {
      Files.deleteIfExists(temporary);
    }
  }
}

package org.broodbench.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.broodbench.output.WholeFile;

/** Where a verb writes its files. */
final class Results {
  private Results() {}

  /** Writes all files, each whole or not at all. */
  static void write(Path folder, Map<String, byte[]> files) {
    try {
      Files.createDirectories(folder);
      for (Map.Entry<String, byte[]> f : files.entrySet()) {
        WholeFile.write(folder.resolve(f.getKey()), f.getValue());
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e); // something was run, so it is not said to be bad input
    }
  }
}

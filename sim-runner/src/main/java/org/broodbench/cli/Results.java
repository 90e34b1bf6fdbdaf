package org.broodbench.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.broodbench.input.BadInput;
import org.broodbench.input.Problem;
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
      throw new BadInput(
          List.of(
              new Problem(
                  "--out",
                  0,
                  0,
                  "",
                  folder + ": " + e.getMessage(),
                  "a folder that can be written",
                  "The run is lost; choose another folder.")));
    }
  }
}

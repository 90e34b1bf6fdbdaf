package org.broodbench.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Assumptions;

/**
 * Real weather files, in a folder named by the property broodbench.weather or the variable
 * BROODBENCH_WEATHER.
 */
final class RealWeather {
  private RealWeather() {}

  static Path file(String name) {
    String folder = System.getProperty("broodbench.weather", System.getenv("BROODBENCH_WEATHER"));
    Assumptions.assumeTrue(
        folder != null, "no weather folder named: skipped; set BROODBENCH_WEATHER to run it");
    Path file = Path.of(folder, name);
    Assumptions.assumeTrue(Files.exists(file), "no " + name + " in the weather folder: skipped");
    return file;
  }
}

package org.broodbench.input.weather;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Assumptions;

/**
 * Real files of weather services, which the project does not ship: tests find them in the folder
 * that the system property {@code broodbench.weather} or the environment variable {@code
 * BROODBENCH_WEATHER} names, and are skipped, saying so, where there is none.
 */
final class WeatherFolder {
  private WeatherFolder() {}

  static Path file(String name) {
    String folder = System.getProperty("broodbench.weather", System.getenv("BROODBENCH_WEATHER"));
    Assumptions.assumeTrue(
        folder != null && !folder.isBlank(),
        "no weather folder: set broodbench.weather or BROODBENCH_WEATHER");
    Path file = Path.of(folder, name);
    Assumptions.assumeTrue(Files.exists(file), "the weather folder has no " + name);
    return file;
  }
}

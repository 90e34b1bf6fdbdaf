package org.broodbench.input.weather;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import org.junit.jupiter.api.Test;

/** Each layout that is read has its page, and the list of pages names each. */
class WeatherPagesTest {
  private static final Path PAGES = Path.of("docs", "weather");

  @Test
  void everyLayoutHasAPage() throws IOException {
    String list = Files.readString(PAGES.resolve("README.md"));
    assertEquals(WeatherFiles.formatIds().size(), new HashSet<>(WeatherFiles.formatIds()).size());
    for (String id : WeatherFiles.formatIds()) {
      String page = Files.readString(PAGES.resolve(id + ".md"));
      assertTrue(page.startsWith("# `" + id + "`"), id);
      for (String part : new String[] {"Clock and stamps", "Missing", "| column |", "Source"}) {
        assertTrue(page.contains(part), id + " lacks " + part);
      }
      assertTrue(list.contains("(" + id + ".md)"), id + " is not in the list");
    }
  }
}

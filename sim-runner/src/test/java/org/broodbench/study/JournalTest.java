package org.broodbench.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class JournalTest {
  @TempDir private Path folder;

  private Path written() throws IOException {
    Path file = folder.resolve("a.journal");
    try (Journal j = Journal.open(file, "study one")) {
      j.put("first", "1.5 NaN");
      j.put("second", "2.5");
      j.put("third", "3.5");
    }
    return file;
  }

  @Test
  void whatWasFinishedIsFoundAgain() throws IOException {
    try (Journal j = Journal.open(written(), "study one")) {
      assertEquals(3, j.size());
      assertEquals("1.5 NaN", j.get("first"));
      assertNull(j.get("fourth"));
    }
  }

  @Test
  void anotherStudyBeginsAnew() throws IOException {
    Path file = written();
    try (Journal j = Journal.open(file, "study two")) {
      assertEquals(0, j.size());
    }
    try (Journal j = Journal.open(file, "study one")) {
      assertEquals(0, j.size());
    }
  }

  /** A kill can cut a line anywhere; what stood before it counts, the line itself does not. */
  @Test
  void aLineThatWasCutCountsAsNotWrittenAndDoesNotSpoilTheNext() throws IOException {
    String whole = Files.readString(written());
    int second = whole.indexOf("second");
    for (int cut = second + 6; cut < whole.indexOf('\n', second); cut++) {
      Path file = folder.resolve("cut.journal");
      Files.writeString(file, whole.substring(0, cut));
      try (Journal j = Journal.open(file, "study one")) {
        assertEquals(1, j.size(), "cut at " + cut);
        j.put("second", "again");
      }
      try (Journal j = Journal.open(file, "study one")) {
        assertEquals("again", j.get("second"));
        assertEquals(2, j.size());
      }
    }
  }

  @Test
  void aDamagedLineIsPassedOver() throws IOException {
    Path file = written();
    String damaged = Files.readString(file).replace("2.5", "2.6");
    assertTrue(damaged.contains("2.6"));
    Files.writeString(file, damaged);
    try (Journal j = Journal.open(file, "study one")) {
      assertNull(j.get("second"));
      assertEquals("3.5", j.get("third"));
    }
  }
}

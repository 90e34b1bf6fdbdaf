package org.broodbench.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A sound heater under a heavy pan is not taken for dead; a dead one is, until it is mended. */
class HeaterEffectTest {
  private static final Path SEASON = Path.of("../scenarios/eight-weeks.toml");

  @TempDir Path folder;

  private List<String> alarms() throws IOException {
    return Files.readAllLines(folder.resolve("events.csv")).stream()
        .filter(row -> row.contains("alarm effect"))
        .toList();
  }

  private Program run(Path scenario, String... settings) {
    String[] args = new String[6 + 2 * settings.length];
    args[0] = "run";
    args[1] = scenario.toString();
    args[2] = "--days";
    args[3] = "2";
    args[4] = "--out";
    args[5] = folder.toString();
    for (int i = 0; i < settings.length; i++) {
      args[6 + 2 * i] = "--set";
      args[7 + 2 * i] = "controller.effect." + settings[i];
    }
    return Program.run(args);
  }

  @Test
  void timesTooShortForTheirPanAreTold() throws IOException {
    Program short5 = run(SEASON, "judge=20 min", "share_on=5 min", "share_window=20 min");
    assertEquals(1, alarms().size(), "raised, and never cleared");
    assertTrue(short5.out.contains("it lifts this pan by 1.5 K at most"), short5.out);
  }

  @Test
  void theShippedTimesLetASoundHeaterProveItself() throws IOException {
    Program shipped = run(SEASON);
    assertEquals(List.of(), alarms());
    assertFalse(shipped.out.contains("without effect"), shipped.out);
  }

  @Test
  void aDeadHeaterIsFoundWithinAnHourAndClearedAfterRepair() throws IOException {
    Path dead = folder.resolve("dead.toml");
    Files.writeString(
        dead,
        Files.readString(SEASON)
            + """

            [[event]]
            at = "18 h"
            what = "element_burnt"
            lasts = "8 h"
            """);
    Program run = run(dead);
    assertEquals(2, alarms().size(), run.out);
    Instant broken = Instant.parse("2027-04-12T18:00:00Z");
    assertWithin(broken, Duration.ofHours(1), alarms().get(0), "raised,");
    assertWithin(broken.plus(Duration.ofHours(8)), Duration.ofHours(2), alarms().get(1), "clear,");
  }

  private static void assertWithin(Instant from, Duration most, String row, String to) {
    Instant at = Instant.parse(row.substring(0, row.indexOf(',')));
    assertTrue(row.contains("," + to), row);
    assertTrue(at.isAfter(from) && !at.isAfter(from.plus(most)), row);
  }
}

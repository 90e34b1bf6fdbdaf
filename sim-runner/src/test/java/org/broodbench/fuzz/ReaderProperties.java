package org.broodbench.fuzz;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.statistics.Statistics;

/** What files go through on their way: each is read, or refused in words; nothing else happens. */
class ReaderProperties {
  /** Readers of text in lines and cells; a scenario is read some hundred times slower. */
  private static final List<Reader> OF_TABLES =
      List.copyOf(
          EnumSet.of(
              Reader.WEATHER, Reader.LOG, Reader.FIELD_LOG, Reader.MAPPED_LOG, Reader.VECTORS));

  private static final List<Reader> OF_KEYS =
      List.of(Reader.SCENARIO, Reader.SETTINGS, Reader.MAPPED_WEATHER);

  private static final List<Reader> OF_WIRES =
      List.of(
          Reader.FIRMWARE,
          Reader.QUESTION,
          Reader.ANSWER,
          Reader.HANDSHAKE,
          Reader.RECIPE,
          Reader.JOURNAL);

  /** Cells and values that no logger, spreadsheet or person should write. */
  private static final List<String> ODD =
      List.of(
          "NaN",
          "nan",
          "-Infinity",
          "1e308",
          "-1e999",
          "9223372036854775808",
          "-2147483649",
          "0x10",
          "1d",
          "١٢",
          "--",
          "\"",
          "'",
          "\0",
          "",
          " ",
          "9999-12-31T23:59:59Z",
          "+999999999-01-01T00:00:00Z",
          "0000-00-00",
          "[",
          "{",
          "\u2028",
          "=1+1");

  private enum Damage {
    BYTES_FLIPPED,
    LINE_DROPPED,
    LINE_DOUBLED,
    LINES_SWAPPED,
    CUT,
    COLUMNS_SWAPPED,
    ODD_CELL,
    MARK_OF_BYTE_ORDER,
    WIDE_LETTERS,
    LINE_ENDS,
    LONG_LINE,
    MANY_COLUMNS,
    BEGINNING_TWICE
  }

  @Property(tries = 600)
  void damagedTables(
      @ForAll @IntRange(max = 1 << 20) int which, @ForAll @IntRange(min = 1, max = 3) int often) {
    damage(OF_TABLES, which, often);
  }

  @Property(tries = 80)
  void damagedScenarios(
      @ForAll @IntRange(max = 1 << 20) int which, @ForAll @IntRange(min = 1, max = 3) int often) {
    damage(OF_KEYS, which, often);
  }

  @Property(tries = 300)
  void damagedMessages(
      @ForAll @IntRange(max = 1 << 20) int which, @ForAll @IntRange(min = 1, max = 3) int often) {
    damage(OF_WIRES, which, often);
  }

  private static void damage(List<Reader> readers, int which, int often) {
    Random random = new Random(which);
    Reader reader = readers.get(random.nextInt(readers.size()));
    List<Path> seeds = ReaderSeedsTest.seeds(reader);
    byte[] bytes;
    try {
      bytes = Files.readAllBytes(seeds.get(random.nextInt(seeds.size())));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    for (int i = 0; i < often; i++) {
      Damage damage = Damage.values()[random.nextInt(Damage.values().length)];
      Statistics.label("damage").collect(damage);
      bytes = damaged(bytes, damage, random);
    }
    Statistics.label("outcome").collect(reader.read(bytes) ? "read" : "refused");
  }

  private static byte[] damaged(byte[] bytes, Damage damage, Random random) {
    // a byte a letter, so that nothing is changed but what is meant to be
    String text = new String(bytes, StandardCharsets.ISO_8859_1);
    List<String> lines = new ArrayList<>(List.of(text.split("(?<=\n)", -1)));
    int at = random.nextInt(lines.size());
    switch (damage) {
      case BYTES_FLIPPED -> {
        byte[] flipped = bytes.clone();
        for (int i = 0; i < 3 && flipped.length > 0; i++) {
          flipped[random.nextInt(flipped.length)] ^= (byte) (1 << random.nextInt(8));
        }
        return flipped;
      }
      case LINE_DROPPED -> lines.remove(at);
      case LINE_DOUBLED -> lines.add(at, lines.get(at));
      case LINES_SWAPPED -> Collections.swap(lines, at, random.nextInt(lines.size()));
      case CUT -> {
        return java.util.Arrays.copyOf(bytes, random.nextInt(bytes.length + 1));
      }
      case COLUMNS_SWAPPED, ODD_CELL -> {
        String sign = text.indexOf(';') >= 0 ? ";" : text.indexOf(',') >= 0 ? "," : " ";
        List<String> cells = new ArrayList<>(List.of(lines.get(at).split(sign, -1)));
        int cell = random.nextInt(cells.size());
        if (damage == Damage.ODD_CELL) {
          byte[] odd = ODD.get(random.nextInt(ODD.size())).getBytes(StandardCharsets.UTF_8);
          cells.set(cell, new String(odd, StandardCharsets.ISO_8859_1));
        } else {
          Collections.swap(cells, cell, random.nextInt(cells.size()));
        }
        lines.set(at, String.join(sign, cells));
      }
      case MARK_OF_BYTE_ORDER -> lines.add(0, "\u00ef\u00bb\u00bf");
      case WIDE_LETTERS -> {
        return text.getBytes(
            random.nextBoolean() ? StandardCharsets.UTF_16 : StandardCharsets.UTF_16LE);
      }
      case LINE_ENDS ->
          lines.replaceAll(l -> l.replace("\n", random.nextBoolean() ? "\r\n" : "\r"));
      case LONG_LINE -> lines.add(at, "x".repeat(1 << (10 + random.nextInt(11))));
      case MANY_COLUMNS -> lines.add(at, ",".repeat(1 << random.nextInt(15)) + "\n");
      default -> lines.addAll(0, List.copyOf(lines.subList(0, at)));
    }
    return String.join("", lines).getBytes(StandardCharsets.ISO_8859_1);
  }

  // ---- size ----

  private static byte[] repeated(String head, String again, int times) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.writeBytes(head.getBytes(StandardCharsets.UTF_8));
    byte[] some = again.getBytes(StandardCharsets.UTF_8);
    for (int i = 0; i < times; i++) {
      out.writeBytes(some);
    }
    return out.toByteArray();
  }

  /** Files that would ask for all memory or all day: refused, soon. */
  @Property(tries = 1)
  void filesThatAreTooMuchAreRefused() {
    assertEquals(false, Reader.SCENARIO.read(repeated("", "a = 1\n", 200_000)), "longer than any");
    assertEquals(false, Reader.SCENARIO.read(repeated("", "a = 1\n", 20_000)), "one key twice");
    assertEquals(false, Reader.SCENARIO.read(repeated("a = ", "[", 100_000)), "lists in lists");
    assertEquals(false, Reader.SCENARIO.read(repeated("", "a.", 100_000)), "tables in tables");
    assertEquals(false, Reader.LOG.read(repeated("time,heater,", ",", 2_000_000)), "one line");
    assertEquals(false, Reader.FIELD_LOG.read(repeated("", "1", 2_000_000)), "one line");
    assertEquals(false, Reader.VECTORS.read(repeated("format,", "x", 2_000_000)), "one line");
    String json = "{\"latitude\":47,\"utc_offset_seconds\":0,\"hourly\":{\"time\":[],";
    assertEquals(
        false, Reader.WEATHER.read(repeated(json, "\"a\":[1],", 20_000)), "columns without end");
    assertEquals(false, Reader.WEATHER.read(repeated(json + "\"a\":", "[", 20_000)), "in lists");
    assertTrue(Reader.JOURNAL.read(repeated("", "0\t0\t0\n", 100_000)), "damage alone");
  }
}

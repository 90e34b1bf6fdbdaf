package org.broodbench.input;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Locale;
import org.broodbench.calibrate.FieldLog;
import org.broodbench.calibrate.LogColumn;
import org.broodbench.calibrate.LogMapping;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Tables as loggers and spreadsheets write them. */
class FieldLogReaderTest {
  private static final long FROM_S = Instant.parse("2027-04-20T00:00:00Z").getEpochSecond();
  private static final int ROWS = 1500;

  @TempDir Path folder;

  private static double brood(int i) {
    return 33 + Math.rint(10 * StrictMath.sin(i / 200.0)) / 10;
  }

  private interface Line {
    String of(int i, Instant at);
  }

  private Path file(String head, String end, Charset charset, Line line) throws IOException {
    StringBuilder text = new StringBuilder(head).append(end);
    for (int i = 0; i < ROWS; i++) {
      text.append(line.of(i, Instant.ofEpochSecond(FROM_S + 60L * i))).append(end);
    }
    Path path = folder.resolve("log.csv");
    Files.write(path, text.toString().getBytes(charset));
    return path;
  }

  private Path own(String end) throws IOException {
    return file("time,brood_a_c", end, StandardCharsets.UTF_8, (i, at) -> at + "," + brood(i));
  }

  private static void assertRead(FieldLog log) {
    assertEquals(ROWS, log.rows(), log.notes().toString());
    assertEquals(FROM_S, log.fromS());
    assertEquals(brood(777), log.column(LogColumn.BROOD_A)[777], 0.06);
  }

  private LogMapping mapping(String text) throws IOException {
    Path map = folder.resolve("map.toml");
    Files.writeString(map, text);
    return FieldLogReader.mapping(map);
  }

  private BadInput refused(Path path, LogMapping mapping) {
    return assertThrows(BadInput.class, () -> FieldLogReader.read(path, mapping));
  }

  @Test
  void anyEndOfLineWillDo() throws IOException {
    for (String end : new String[] {"\n", "\r\n", "\r"}) {
      assertRead(FieldLogReader.read(own(end), LogMapping.OWN));
    }
  }

  @Test
  void aMarkOfByteOrderIsPassedOver() throws IOException {
    Path path = own("\n");
    Files.writeString(path, "\uFEFF" + Files.readString(path));
    assertRead(FieldLogReader.read(path, LogMapping.OWN));
  }

  @Test
  void quotesHoldDecimalCommasBetweenCommas() throws IOException {
    Path path =
        file(
            "\"time, UTC\",\"T \"\"brood\"\"\",note",
            "\r\n",
            StandardCharsets.UTF_8,
            (i, at) ->
                String.format(
                    Locale.ROOT,
                    "\"%s\",\"%s\",\"fine, dry\"",
                    at,
                    String.valueOf(brood(i)).replace('.', ',')));
    FieldLog log =
        FieldLogReader.read(
            path,
            mapping(
                """
                [log]
                decimal_comma = true
                time_columns = "time, UTC"
                [[log.column]]
                name = 'T "brood"'
                what = "brood_a"
                """));
    assertRead(log);
  }

  @Test
  void oldLoggersWriteTheDegreeSignAsOneByte() throws IOException {
    Path path =
        file(
            "Zeit;T °F",
            "\n",
            StandardCharsets.ISO_8859_1,
            (i, at) -> at + ";" + String.format(Locale.ROOT, "%.1f", brood(i) * 1.8 + 32));
    FieldLog log =
        FieldLogReader.read(
            path,
            mapping(
                """
                [log]
                separator = ";"
                time_columns = "Zeit"
                [[log.column]]
                name = "T °F"
                what = "brood_a"
                unit = "degF"
                """));
    assertRead(log);
  }

  @Test
  void textOfTwoBytesALetterIsRefusedWithWhatToDo() throws IOException {
    Path path = file("time,brood_a_c", "\n", StandardCharsets.UTF_16LE, (i, at) -> at + ",33");
    BadInput e = refused(path, LogMapping.OWN);
    assertTrue(e.problems().get(0).hint().contains("UTF-8"), e.problems().toString());
  }

  @Test
  void aWrongSeparatorIsGuessed() throws IOException {
    Path path = file("time;brood_a_c", "\n", StandardCharsets.UTF_8, (i, at) -> at + ";33");
    BadInput e = refused(path, LogMapping.OWN);
    assertEquals(1, e.problems().get(0).line());
    assertTrue(e.problems().get(0).hint().contains("separator = \";\""), e.toString());
  }

  @Test
  void decimalCommasAreGuessed() throws IOException {
    Path path = file("time;brood_a_c", "\n", StandardCharsets.UTF_8, (i, at) -> at + ";33,5");
    BadInput e = refused(path, mapping("[log]\nseparator = \";\"\n"));
    Problem first = e.problems().get(0);
    assertEquals(2, first.line());
    assertEquals("brood_a", first.key());
    assertEquals("33,5", first.found());
    assertTrue(first.hint().contains("decimal_comma"), first.hint());
  }

  @Test
  void theOrderOfADateIsGuessedAndNotToldForEveryLine() throws IOException {
    Path path =
        file(
            "time,brood_a_c",
            "\n",
            StandardCharsets.UTF_8,
            (i, at) -> at.toString().replaceAll("(\\d+)-(\\d+)-(\\d+)T(.*)Z", "$3.$2.$1 $4,33"));
    BadInput e = refused(path, LogMapping.OWN);
    assertEquals(3, e.problems().size(), e.problems().toString());
    assertEquals("20.04.2027 00:00:00", e.problems().get(0).found());
    assertEquals("Set time_order = \"dmyhns\" in [log].", e.problems().get(0).hint());
  }

  @Test
  void aColumnOfTimesIsGuessed() throws IOException {
    Path path = file("Date,brood_a_c", "\n", StandardCharsets.UTF_8, (i, at) -> at + ",33");
    Problem first = refused(path, LogMapping.OWN).problems().get(0);
    assertTrue(first.hint().contains("time_columns = \"Date\""), first.hint());
  }

  @Test
  void aWordForNoReadingIsNamedInTheHint() throws IOException {
    Path path =
        file(
            "time,brood_a_c",
            "\n",
            StandardCharsets.UTF_8,
            (i, at) -> at + "," + (i == 5 ? "ERR" : "" + brood(i)));
    Problem first = refused(path, LogMapping.OWN).problems().get(0);
    assertEquals(7, first.line());
    assertTrue(first.hint().contains("missing = \"ERR\""), first.hint());
    assertRead(FieldLogReader.read(path, mapping("[log]\nmissing = \"ERR\"\n")));
  }

  /** A logger that lost power leaves some lines that are cut short. */
  @Test
  void someDamagedLinesAreNoReasonToRefuse() throws IOException {
    Path path =
        file(
            "time,brood_a_c",
            "\n",
            StandardCharsets.UTF_8,
            (i, at) -> i % 200 == 99 ? "2027-0" : at + "," + brood(i));
    assertEquals(ROWS - 8, FieldLogReader.read(path, LogMapping.OWN).rows());
  }

  @Test
  void aHeaderAloneIsRefused() throws IOException {
    Path path = folder.resolve("head.csv");
    Files.writeString(path, "time,brood_a_c\n");
    assertEquals("no row", refused(path, LogMapping.OWN).problems().get(0).found());
    Files.writeString(path, "");
    assertEquals("nothing", refused(path, LogMapping.OWN).problems().get(0).found());
  }
}

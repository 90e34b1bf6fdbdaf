package org.broodbench.input.weather;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.broodbench.input.BadInput;
import org.broodbench.input.Problem;
import org.broodbench.rig.CsvMapping;
import org.broodbench.sky.Variable;
import org.broodbench.sky.WeatherSeries;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What files look like after bad copies, spreadsheets, loggers and clocks. */
class DamagedFilesTest {
  private static final String HEAD =
      "# broodbench weather 1\n# step_s: 3600\n# latitude_deg: 47\n# longitude_deg: 11\n"
          + "# altitude_m: 900\nfrom_utc,air_c,rh_percent,wind_m_s,ghi_w_m2\n";

  @TempDir Path folder;

  private static String row(int hour) {
    return String.format(
        Locale.ROOT, "2027-04-%02dT%02d:00:00Z,%d,80,1.5,0\n", 20 + hour / 24, hour % 24, hour);
  }

  private static String rows(int from, int to) {
    StringBuilder b = new StringBuilder();
    for (int h = from; h < to; h++) {
      b.append(row(h));
    }
    return b.toString();
  }

  private Path write(String text) throws IOException {
    return Files.write(folder.resolve("w.csv"), text.getBytes(StandardCharsets.ISO_8859_1));
  }

  private WeatherSeries read(String text) throws IOException {
    return WeatherFiles.read(write(text));
  }

  private BadInput refused(String text) throws IOException {
    Path file = write(text);
    return assertThrows(BadInput.class, () -> WeatherFiles.read(file));
  }

  @Test
  void everyKindOfLineEndAndMarkIsUnderstood() throws IOException {
    String text = HEAD + rows(0, 6);
    for (String version :
        new String[] {
          text,
          text.replace("\n", "\r\n"),
          text.replace("\n", "\r"),
          "\u00ef\u00bb\u00bf" + text,
          text.substring(0, text.length() - 1),
          text + "\n\n",
          text.replace("\n2027-04-20T03", "\n\0\0\0\0\n\0\0\n2027-04-20T03"),
          text.replace("80,1.5", "\"80\", 1.5 ")
        }) {
      WeatherSeries w = read(version);
      assertEquals(6, w.n());
      assertEquals(5, w.value(Variable.AIR, 5), 0.0);
    }
  }

  /** Cutting a file anywhere gives either its whole rows or a problem, never something else. */
  @Test
  void aFileCutAnywhereIsRefusedOrShorter() throws IOException {
    String text = HEAD + rows(0, 8);
    int shorter = 0;
    int refused = 0;
    for (int cut = 0; cut < text.length(); cut++) {
      Path file = write(text.substring(0, cut));
      try {
        WeatherSeries w = WeatherFiles.read(file);
        assertTrue(w.n() <= 8);
        shorter++;
      } catch (BadInput e) {
        refused++;
      }
    }
    // a cut inside the last number cannot be told from a shorter number
    assertTrue(shorter < 40, shorter + " cuts were read");
    assertTrue(refused > text.length() - 40, refused + " cuts were refused");
  }

  @Test
  void anHourTwiceAndOneOutOfOrderAreNamed() throws IOException {
    Problem twice = refused(HEAD + rows(0, 3) + row(2) + rows(3, 5)).problems().get(0);
    assertEquals(10, twice.line());
    assertTrue(twice.found().contains("second time"), twice.found());
    assertTrue(twice.hint().contains("daylight saving"), twice.hint());
    Problem early = refused(HEAD + rows(5, 8) + row(2) + rows(8, 9)).problems().get(0);
    assertTrue(early.found().contains("earlier"), early.found());
  }

  /** Local clock without zone: in March an hour is missing, in October one comes twice. */
  @Test
  void aClockWithDaylightSavingIsRefusedInAutumn() throws IOException {
    CsvMapping local =
        new CsvMapping(
            ',',
            false,
            0,
            java.util.List.of("t"),
            "ymdhn",
            3600,
            CsvMapping.Stamped.START,
            3600,
            java.util.List.of(
                new CsvMapping.Column("air", Variable.AIR, "degC", false),
                new CsvMapping.Column("sun", Variable.GHI, "W/m2", false)),
            java.util.List.of(),
            10,
            java.util.Optional.empty(),
            "");
    Path file =
        write(
            "t,air,sun\n2026-10-25 01:00,5,0\n2026-10-25 02:00,5,0\n2026-10-25 02:00,4,0\n"
                + "2026-10-25 03:00,4,0\n");
    BadInput bad =
        assertThrows(BadInput.class, () -> WeatherFiles.read(file, local, ReadOptions.DEFAULT));
    assertEquals(4, bad.problems().get(0).line());
    assertTrue(bad.problems().get(0).hint().contains("daylight saving"));
  }

  @Test
  void aLeapDayIsADayAndAnInventedOneIsNot() throws IOException {
    String leap =
        "# broodbench weather 1\n# step_s: 43200\nfrom_utc,air_c,ghi_w_m2\n"
            + "2024-02-28T12:00:00Z,1,0\n2024-02-29T00:00:00Z,1,0\n2024-02-29T12:00:00Z,1,0\n"
            + "2024-03-01T00:00:00Z,1,0\n";
    assertEquals(4, read(leap).n());
    assertEquals(2, refused(leap.replace("2024", "2023")).problems().size());
  }

  @Test
  void zerosPicturesAndOtherTextsAreRefused() throws IOException {
    assertEquals(
        "nothing but blanks or zeros", refused("\0".repeat(5000)).problems().get(0).found());
    assertEquals(1, refused("\u0089PNG\r\n\u001a\n" + "x".repeat(2000)).problems().size());
    assertEquals("text in UTF-16", refused("\u00ff\u00fef\0r\0o\0m\0").problems().get(0).found());
    assertEquals(1, refused("a,b,c\n1,2,3\n").problems().size());
    assertEquals("a damaged archive", refused("PK\u0003\u0004broken").problems().get(0).found());
    String nothing = refused(HEAD).problems().get(0).found();
    assertEquals("no row of data", nothing);
  }

  @Test
  void theListOfProblemsEndsAtFifty() throws IOException {
    StringBuilder b = new StringBuilder(HEAD);
    for (int h = 0; h < 200; h++) {
      b.append(row(h % 24).replace(",80,", ",wet,"));
    }
    assertEquals(50, refused(b.toString()).problems().size());
  }

  @Test
  void aLineWithoutEndIsNoText() throws IOException {
    Problem p = refused(HEAD + "1".repeat(1_200_000)).problems().get(0);
    assertTrue(p.found().contains("million"), p.found());
  }

  /** A clock that is three hours off is told by the sun; the right one says nothing. */
  @Test
  void aWrongClockIsToldByTheSun() throws IOException {
    for (int wrong : new int[] {0, 3}) {
      StringBuilder b = new StringBuilder(HEAD);
      for (int h = 0; h < 240; h++) {
        double solar = (h % 24) + 0.5 + 11 / 15.0 - wrong;
        double g = Math.max(0, 800 * Math.cos((solar - 12) * Math.PI / 12));
        b.append(
            String.format(
                Locale.ROOT, "2027-04-%02dT%02d:00:00Z,10,80,1.5,%.1f\n", 11 + h / 24, h % 24, g));
      }
      WeatherSeries w = read(b.toString());
      boolean warned = w.warnings().stream().anyMatch(t -> t.contains("solar noon"));
      assertEquals(wrong != 0, warned, w.warnings().toString());
    }
  }
}

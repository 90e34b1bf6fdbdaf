package org.broodbench.input.weather;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import org.broodbench.input.BadInput;
import org.broodbench.input.Problem;
import org.broodbench.sky.GeneratorSettings;
import org.broodbench.sky.Quality;
import org.broodbench.sky.Stand;
import org.broodbench.sky.Variable;
import org.broodbench.sky.WeatherGenerator;
import org.broodbench.sky.WeatherSeries;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class TidyCsvTest {
  private static final String HEAD =
      "# broodbench weather 1\n# step_s: 3600\n# latitude_deg: 47\n# longitude_deg: 11\n"
          + "# altitude_m: 900\nfrom_utc,air_c,rh_percent,wind_m_s,ghi_w_m2\n";

  @TempDir Path folder;

  private WeatherSeries read(String text) throws IOException {
    return WeatherFiles.read(write(text));
  }

  private Path write(String text) throws IOException {
    return Files.writeString(folder.resolve("w.csv"), text, StandardCharsets.UTF_8);
  }

  private Problem only(String text) throws IOException {
    Path file = write(text);
    BadInput bad = assertThrows(BadInput.class, () -> WeatherFiles.read(file));
    assertEquals(1, bad.problems().size(), bad.problems().toString());
    return bad.problems().get(0);
  }

  private static String rows(int from, int to) {
    StringBuilder b = new StringBuilder();
    for (int h = from; h < to; h++) {
      b.append(String.format("2027-04-%02dT%02d:00:00Z,%d,80,1.5,0%n", 20 + h / 24, h % 24, h));
    }
    return b.toString();
  }

  @Test
  void whatIsWrittenReadsBackTheSame() throws IOException {
    WeatherSeries made =
        WeatherGenerator.generate(
            GeneratorSettings.uplandSpring(7, LocalDate.of(2027, 4, 18).toEpochDay(), 5));
    StringWriter out = new StringWriter();
    TidyCsv.write(made, out);
    WeatherSeries back = read(out.toString());
    assertEquals(made.n(), back.n());
    assertEquals(made.place(), back.place());
    assertEquals(made.source(), back.source());
    assertEquals("tidy_csv", back.formatId());
    for (Variable v : Variable.values()) {
      assertEquals(made.stand(v), back.stand(v));
      for (int i = 0; i < made.n(); i++) {
        assertEquals(made.value(v, i), back.value(v, i), 0.0);
      }
    }
    StringWriter again = new StringWriter();
    TidyCsv.write(back, again);
    assertEquals(out.toString(), again.toString());
  }

  @Test
  void shortGapsAreBridgedAndMarkedAndSurviveWriting() throws IOException {
    WeatherSeries w = read(HEAD + rows(0, 5) + rows(8, 12));
    assertEquals(12, w.n());
    assertEquals(3, w.filledHours());
    assertEquals(6.0, w.value(Variable.AIR, 6), 1e-12);
    assertEquals(Quality.FILLED, w.quality(Variable.AIR, 6));
    assertEquals(Quality.MEASURED, w.quality(Variable.AIR, 4));
    assertEquals(Quality.MISSING, w.quality(Variable.PRECIPITATION, 4));
    StringWriter out = new StringWriter();
    TidyCsv.write(w, out);
    WeatherSeries back = read(out.toString());
    assertEquals(Quality.FILLED, back.quality(Variable.AIR, 6));
    assertEquals(3, back.filledHours());
  }

  @Test
  void aLongGapIsNamedWithItsFirstAndLastStamp() throws IOException {
    Path file = write(HEAD + rows(0, 5) + rows(9, 12));
    BadInput bad = assertThrows(BadInput.class, () -> WeatherFiles.read(file));
    assertEquals(4, bad.problems().size(), "air, ghi, humidity, wind");
    Problem p = bad.problems().get(0);
    assertEquals(12, p.line());
    assertTrue(p.found().contains("2027-04-20T05:00:00Z"), p.found());
    assertEquals(Double.NaN, WeatherFiles.read(file, ReadOptions.DESCRIBE).value(Variable.AIR, 6));
  }

  @Test
  void everyMistakeIsReportedAtItsPlace() throws IOException {
    Path file =
        write(
            HEAD
                + rows(0, 2)
                + "2027-04-20T02:00:00Z,warm,80,1.5,0\n"
                + "2027-04-20T03:00:00,1,80,1.5,0\n"
                + "2027-04-20T03:00:00Z,1,80\n"
                + "2027-04-20T03:00:00Z,-200,80,1.5,0\n"
                + "2027-04-20T03:00:00Z,1,80,1.5,0\n"
                + "2027-04-20T04:30:00Z,1,80,1.5,0\n");
    BadInput bad = assertThrows(BadInput.class, () -> WeatherFiles.read(file));
    int[][] places = {{9, 22}, {10, 1}, {11, 1}, {12, 22}, {13, 1}, {14, 1}};
    assertEquals(places.length, bad.problems().size(), bad.problems().toString());
    for (int i = 0; i < places.length; i++) {
      assertEquals(places[i][0], bad.problems().get(i).line());
      assertEquals(places[i][1], bad.problems().get(i).column());
    }
    assertEquals("air_c", bad.problems().get(0).key());
    assertEquals("warm", bad.problems().get(0).found());
  }

  @Test
  void missingIsNeverZeroAndNightOffsetsAreClipped() throws IOException {
    WeatherSeries w =
        read(
            HEAD
                + "2027-04-20T00:00:00Z,1,103,,-3.5\n"
                + "2027-04-20T01:00:00Z,1,80,2,\n"
                + "2027-04-20T02:00:00Z,1,80,2,10\n");
    assertEquals(0, w.value(Variable.GHI, 0), 0.0);
    assertEquals(5, w.value(Variable.GHI, 1), 1e-12);
    assertEquals(2, w.value(Variable.WIND, 0), 0.0);
    assertEquals(100, w.value(Variable.HUMIDITY, 0), 0.0);
    assertEquals(Double.NaN, w.value(Variable.PRECIPITATION, 0));
  }

  @Test
  void standsAreReadAndCheckedAndTheStepIsNeeded() throws IOException {
    WeatherSeries w = read("# stand air_c: instant 3600\n" + HEAD + rows(0, 4));
    assertEquals(Stand.instant(3600), w.stand(Variable.AIR));
    assertEquals(Stand.MEAN, w.stand(Variable.GHI));
    assertEquals("stand air_c", only("# stand air_c: at end\n" + HEAD + rows(0, 4)).key());
    assertEquals("step_s", only(HEAD.replace("# step_s: 3600\n", "") + rows(0, 4)).key());
  }

  @Test
  void anUnknownFileIsRefusedWithWhatCouldBeRead() throws IOException {
    Problem p = only("<html>not found</html>\n");
    assertTrue(p.allowed().contains("tidy CSV") && p.allowed().contains("KNMI"), p.allowed());
    assertEquals("an empty file", only("").found());
    BadInput none =
        assertThrows(BadInput.class, () -> WeatherFiles.read(folder.resolve("nowhere.csv")));
    assertEquals("no such file", none.problems().get(0).found());
  }
}

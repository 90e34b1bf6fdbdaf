package org.broodbench.input.weather;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import org.broodbench.input.BadInput;
import org.broodbench.sky.Stand;
import org.broodbench.sky.Variable;
import org.broodbench.sky.WeatherSeries;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class KnmiHourlyTest {
  private static final String HEAD =
      "Preamble\r\nYYYYMMDD = date\r\n\r\n"
          + "# STN,YYYYMMDD,   HH,   FH,    T,    Q,   RH,    P,    U\r\n\r\n";

  @TempDir Path folder;

  private Path write(String rows) throws IOException {
    return Files.writeString(folder.resolve("uurgeg.txt"), HEAD + rows.replace("\n", "\r\n"));
  }

  @Test
  void unitsAndHours() throws IOException {
    WeatherSeries w =
        WeatherFiles.read(
            write(
                "  260,20000101,    1,   30,   49,    0,   -1,10215,   96\n"
                    + "  260,20000101,    2,   25,  -12,   36,   14,10214,     \n"
                    + "  260,20000101,    3,   20,    5,   72,    0,10213,   90\n"));
    assertEquals("knmi_hourly", w.formatId());
    assertEquals(Instant.parse("2000-01-01T00:00:00Z").getEpochSecond(), w.startEpochS());
    assertEquals(-1.2, w.value(Variable.AIR, 1), 0.0);
    assertEquals(Stand.instant(3600), w.stand(Variable.AIR));
    // 36 J/cm2 in an hour are 100 W/m2
    assertEquals(100, w.value(Variable.GHI, 1), 1e-9);
    assertEquals(2.5, w.value(Variable.WIND, 1), 0.0);
    assertEquals(0, w.value(Variable.PRECIPITATION, 0), 0.0);
    assertEquals(1.4, w.value(Variable.PRECIPITATION, 1), 0.0);
    assertEquals(93, w.value(Variable.HUMIDITY, 1), 1e-12);
    // 1.9 m above the sea take 23 Pa
    assertEquals(102127, w.value(Variable.PRESSURE, 0), 1);
    assertEquals(52.1, w.place().get().latitudeDeg(), 0.0);
  }

  @Test
  void twoStationsAreRefused() throws IOException {
    Path file =
        write(
            "  260,20000101,    1,   30,   49,    0,   -1,10215,   96\n"
                + "  344,20000101,    2,   30,   49,    0,   -1,10215,   96\n");
    BadInput bad = assertThrows(BadInput.class, () -> WeatherFiles.read(file));
    assertEquals("STN", bad.problems().get(0).key());
    assertEquals(7, bad.problems().get(0).line());
  }

  @Test
  void hourZeroAndTheThirtiethOfFebruaryAreRefused() throws IOException {
    Path file =
        write(
            "  260,20000101,    0,   30,   49,    0,   -1,10215,   96\n"
                + "  260,20000230,    1,   30,   49,    0,   -1,10215,   96\n");
    BadInput bad = assertThrows(BadInput.class, () -> WeatherFiles.read(file));
    assertEquals(7, bad.problems().get(1).line());
  }

  /** Week of 24 to 30 December 2000 at De Bilt, summed apart from this program. */
  @Test
  void theWetColdWeekOfDeBilt() {
    WeatherSeries w = WeatherFiles.read(WeatherFolder.file("uurgeg_260_2000.txt"));
    assertEquals(8784, w.n());
    assertEquals(0, w.filledHours());
    long from = Instant.parse("2000-12-24T00:00:00Z").getEpochSecond();
    int first = (int) ((from - w.startEpochS()) / 3600);
    double[] sum = new double[Variable.values().length];
    double lowest = 99;
    for (int i = first; i < first + 168; i++) {
      for (Variable v : Variable.values()) {
        sum[v.ordinal()] += w.value(v, i);
      }
      lowest = Math.min(lowest, w.value(Variable.AIR, i));
    }
    assertEquals(-0.1, sum[Variable.AIR.ordinal()] / 168, 0.05);
    assertEquals(-4.4, lowest, 0.0);
    assertEquals(0.50, sum[Variable.GHI.ordinal()] / 7000, 0.005);
    assertEquals(22.8, sum[Variable.PRECIPITATION.ordinal()], 0.05);
    assertEquals(90, sum[Variable.HUMIDITY.ordinal()] / 168, 0.5);
    assertEquals(4.1, sum[Variable.WIND.ordinal()] / 168, 0.05);
  }
}

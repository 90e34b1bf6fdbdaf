package org.broodbench.output;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.broodbench.calibrate.Calibration;
import org.broodbench.calibrate.FieldLog;
import org.broodbench.calibrate.Knob;
import org.broodbench.calibrate.LogColumn;
import org.broodbench.rig.TestRigs;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;

/** The page of a calibration as a keeper meets it, with one of everything on it. */
@Tag("browser")
class CalibrationPageBrowserTest {
  private static final long FROM_S = 1_800_000_000L;
  private static final int BINS = 900;
  private static final String HOSTILE = "<img src=x onerror=alert(1)>.csv";

  @TempDir static Path profile;

  private static Chromium browser;

  @BeforeAll
  static void start() {
    browser = Chromium.start(profile);
  }

  @AfterAll
  static void stop() {
    if (browser != null) {
      browser.close();
    }
  }

  private static Calibration.Channel channel(LogColumn c, double middle, double swing) {
    long[] at = new long[BINS];
    double[] measured = new double[BINS];
    double[] simulated = new double[BINS];
    for (int b = 0; b < BINS; b++) {
      at[b] = FROM_S + 600L * b;
      simulated[b] = middle + swing * StrictMath.sin(b / 23.0);
      measured[b] = b > 300 && b < 340 ? Double.NaN : simulated[b] + 0.1 * StrictMath.sin(b / 3.0);
    }
    return new Calibration.Channel(c, at, measured, simulated, 0.07, 0.08, 6, 0.7);
  }

  private static Calibration calibration(String name, List<String> misfit) {
    double[][] values = new double[LogColumn.COUNT][2];
    FieldLog log = new FieldLog(new long[] {FROM_S, FROM_S + 600L * BINS}, values, 60, List.of());
    Calibration.Range one = new Calibration.Range(-59, -68, -50);
    return new Calibration(
        log,
        name,
        TestRigs.small(FROM_S, 6),
        new Calibration.Relay("not logged: told from how fast the pan warms", 0.93),
        List.of(
            new Calibration.Parameter(Knob.HIVE_LOSS, 1, 1.2, 1.1, 1.3, 0.7, 0.2, true, ""),
            new Calibration.Parameter(Knob.HEATER_POWER, 40, 31, 29, 33, -2.5, 0.3, true, ""),
            new Calibration.Parameter(
                Knob.STORES, 4, 4.2, 2.4, 7, 0.1, 0.9, false, "the weight of the hive")),
        new double[][] {{1, 0.8, 0.1}, {0.8, 1, 0.2}, {0.1, 0.2, 1}},
        List.of(channel(LogColumn.BROOD_A, 33, 1.5), channel(LogColumn.BATTERY_V, 12.8, 0.4)),
        new Calibration.HeldOut(FROM_S + 400L * BINS, new double[] {0.2, 0.05}, 0.2),
        new double[] {812, 820, 1304},
        misfit,
        List.of(new Calibration.Trend(Knob.HEATER_POWER, 38, 29, 0.76, 0.7, 0.82, 1, false)),
        List.of(
            new Calibration.Finding(
                "heater_weakening",
                "The heater gives less and less: look at plugs, fuse and element.",
                "second half over first 0.76, 90 % between 0.70 and 0.82")),
        List.of(
            new Calibration.Advised(
                "more_insulation", "20 mm more board all round: less heat.", "", one, one, one)),
        new Calibration.Decisions(
            5000, 41, 20, 3.4, List.of("From 2027-01-16T02:00:00Z the log ..."), "", 30),
        List.of(
            new Calibration.Reading(FROM_S, LogColumn.BROOD_A, 29, 31, 36, "alarming"),
            new Calibration.Reading(FROM_S, LogColumn.PAN, 35, 30, 40, "expected")),
        List.of("sun: the log's own"));
  }

  private static void show(String name, Calibration c, int widthPx) {
    browser.show(name, CalibrationPage.html(c), widthPx, 900);
  }

  @Test
  void whoeverReadsItCanInLightAndDark() {
    for (String scheme : List.of("light", "dark")) {
      browser.prefer(scheme);
      show("calibration", calibration("log.csv", List.of("hive_loss lies far out")), 1280);
      assertEquals(List.of(), browser.complaints());
      assertEquals("", browser.accessibility(), scheme);
      browser.keep("calibration-" + scheme);
    }
    browser.prefer("light");
  }

  @Test
  void onATelephoneNothingSticksOut() {
    show("calibration-narrow", calibration("log.csv", List.of()), 390);
    assertEquals(390L, browser.js("return Math.max(390, document.documentElement.scrollWidth)"));
    browser.keep("calibration-narrow");
  }

  @Test
  void alarmsAndAdviceComeBeforeFiguresAndCautionsAreThere() {
    show("calibration", calibration("log.csv", List.of()), 1280);
    List<String> heads =
        browser.driver().findElements(By.tagName("h2")).stream().map(e -> e.getText()).toList();
    assertEquals("Alarms", heads.get(0));
    assertEquals("What to do next", heads.get(1));
    assertTrue(heads.contains("Cautions"), heads.toString());
    assertTrue(heads.contains("What the log tells"), heads.toString());
    String cautions =
        browser.text("return document.querySelector('main').lastElementChild.innerText");
    assertTrue(cautions.contains("thermal cut-out"), cautions);
    assertEquals(2L, browser.js("return document.querySelectorAll('svg[role=img]').length"));
  }

  @Test
  void aLogThatIsNotOfThisHiveIsSaidFirst() {
    show("calibration-misfit", calibration("log.csv", List.of("2.4 K off inside")), 1280);
    String first = browser.text("return document.querySelector('h2').innerText");
    assertEquals("This log does not look like this hive", first);
  }

  @Test
  void hostileNamesAreShownAsWords() {
    show("calibration-hostile", calibration(HOSTILE, List.of()), 1280);
    assertTrue(browser.text("return document.querySelector('h1').innerText").contains(HOSTILE));
    assertEquals(0L, browser.js("return document.querySelectorAll('img').length"));
    assertEquals(List.of(), browser.complaints());
  }
}

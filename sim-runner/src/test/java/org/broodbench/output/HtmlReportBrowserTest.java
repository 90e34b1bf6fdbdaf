package org.broodbench.output;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.zip.DataFormatException;
import java.util.zip.Inflater;
import org.broodbench.loop.Trace;
import org.broodbench.study.Outcome;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.interactions.Actions;

/** The report as a reader meets it: drawn, pressed, tabbed through, printed. */
@Tag("browser")
class HtmlReportBrowserTest {
  private static final String RANGES =
      "return [...document.querySelectorAll('.plot')].map(p => p.dataset.shown)";

  @TempDir static Path profile;

  private static Chromium browser;
  private static Outcome outcome;
  private static String page;

  @BeforeAll
  static void start() {
    browser = Chromium.start(profile);
    outcome = TestOutcomes.withRemedies();
    page = HtmlReport.html(outcome, false);
  }

  @AfterAll
  static void stop() {
    if (browser != null) {
      browser.close();
    }
  }

  @BeforeEach
  void open() {
    browser.prefer("light");
    browser.show("report", page, 1280, 900);
  }

  @Test
  void thePageDrawsWithoutComplaintAndLoadsNothing() {
    assertEquals(List.of(), browser.complaints());
    assertEquals(7L, browser.js("return document.querySelectorAll('.plot canvas').length"));
    assertEquals(0L, browser.js("return performance.getEntriesByType('resource').length"));
    browser.keep("wide-light");
  }

  @Test
  void aRunThatDiedIsDrawnToo() {
    browser.show("report-ruin", HtmlReport.html(TestOutcomes.ruin(), false), 1280, 900);
    assertEquals(List.of(), browser.complaints());
    assertTrue(readable().contains("The battery could not carry the loads"));
    press("worst");
    onlyRange();
    browser.keep("ruin");
  }

  /** Own choice of what still feels prompt, with much room for a slow machine. */
  @Test
  void eightWeeksOpenAndZoomPromptly() {
    browser.show("report-long", HtmlReport.html(TestOutcomes.eightWeeks(), false), 1280, 900);
    double zoomMs =
        ((Number)
                browser
                    .driver()
                    .executeAsyncScript(
                        "const done = arguments[0], t = performance.now();"
                            + "document.getElementById('worst').click();"
                            + "requestAnimationFrame(() => requestAnimationFrame(() =>"
                            + " done(performance.now() - t)));"))
            .doubleValue();
    double loadMs =
        ((Number) browser.js("return performance.getEntriesByType('navigation')[0].loadEventEnd"))
            .doubleValue();
    assertTrue(loadMs < 10_000, "open " + loadMs + " ms");
    assertTrue(zoomMs < 4000, "zoom " + zoomMs + " ms");
    browser.keep("eight-weeks");
  }

  @Test
  void hostileWordsAreShownAsWords() {
    assertEquals(TestOutcomes.HOSTILE, browser.driver().findElement(By.tagName("h1")).getText());
    assertEquals(0L, browser.js("return document.querySelectorAll('img').length"));
  }

  @Test
  void thePolicyForbidsTheNetwork() {
    Object blocked =
        browser
            .driver()
            .executeAsyncScript(
                "const done = arguments[0];"
                    + "addEventListener('securitypolicyviolation', e => done(e.violatedDirective));"
                    + "fetch('https://example.invalid/').catch(() => 0);");
    assertEquals("connect-src", blocked);
  }

  @Test
  void packedNumbersComeBackAsTheyWere() {
    Trace t = outcome.main().trace();
    for (int row : new int[] {0, 1, 777, 4000, t.rows() - 1}) {
      browser.js(
          "const s = document.getElementById('moment'); s.step = 1; s.value = arguments[0];"
              + "s.dispatchEvent(new Event('input'))",
          row);
      browser.settle();
      assertNear(t.column("brood_c")[row], shownNow("brood", "Brood comb, true"), 0.06, row);
      assertNear(t.column("outdoor_c")[row], shownNow("around", "Outdoors"), 0.08, row);
      assertNear(t.column("battery_v")[row], shownNow("battery", "Volts"), 0.0101, row);
      assertNear(100 * t.column("soc")[row], shownNow("battery", "State of charge"), 0.11, row);
      assertNear(t.column("brood_rh_percent")[row], shownNow("humidity", "Humidity"), 0.61, row);
      assertNear(t.column("co2_percent")[row], shownNow("co2", "Carbon dioxide"), 0.0081, row);
    }
  }

  @Test
  void theHiveCutOpenFollowsTheCursor() {
    SectionData data = new SectionData(outcome);
    String nest = "return document.querySelector('#section svg [data-n=nest]').textContent";
    String fill = "return document.querySelector('#section [data-c=nest]').getAttribute('fill')";
    assertEquals(Quantity.plain(data.worst("nest"), 1) + " °C", browser.text(nest));
    assertTrue((Boolean) browser.js("return !document.getElementById('section-worst').hidden"));
    String coldest = browser.text(fill);
    assertEquals(data.heatScale().colour(data.worst("nest")), coldest);
    Trace t = outcome.main().trace();
    int row = 40;
    browser.js(
        "const s = document.getElementById('moment'); s.step = 1; s.value = arguments[0];"
            + "s.dispatchEvent(new Event('input'))",
        (row + 1) * Trace.SECTION_INTERVAL_S / t.intervalS());
    browser.settle();
    double expected = t.sections().get(row).nestC();
    double shown = Double.parseDouble(browser.text(nest).split(" ")[0]);
    assertEquals(expected, shown, 0.08);
    assertNotEquals(coldest, browser.text(fill));
    assertFalse((Boolean) browser.js("return !document.getElementById('section-worst').hidden"));
    double air = t.sections().get(row).boxes().get(0).airC();
    String cell = "return document.querySelector('#section td [data-n=air0]').textContent";
    double told = Double.parseDouble(browser.text(cell).replace('−', '-').split(" ")[0]);
    assertEquals(air, told, 0.08);
  }

  /** Nothing of a drawing lies outside its frame, in either set of units. */
  @Test
  void drawingsStayInsideTheirFrames() {
    for (String units : List.of("metric", "us")) {
      browser.js("document.querySelector('input[value=' + arguments[0] + ']').click()", units);
      browser.settle();
      Object out =
          browser.js(
              "return [...document.querySelectorAll('svg.section, svg.energy')].flatMap(s => {"
                  + " const f = s.getBoundingClientRect();"
                  + " return [...s.querySelectorAll('text, rect, ellipse')].filter(e => {"
                  + "  const r = e.getBoundingClientRect(); return e.closest('defs') === null &&"
                  + "  (r.right > f.right + 1 || r.left < f.left - 1 || r.bottom > f.bottom + 1);"
                  + " }).map(e => e.outerHTML); }).join(' ')");
      assertEquals("", out);
    }
  }

  @Test
  void theSupplyChainAndTheRemediesAreThere() {
    assertTrue(
        browser.text("return document.querySelector('#supply svg').textContent").contains("Bus"));
    assertEquals(
        3L, browser.js("return document.querySelectorAll('#change ~ ol')[0].children.length"));
    String remedies = browser.text("return document.getElementById('verdict').innerText");
    assertTrue(remedies.contains("Insulate with 50 mm all round instead of none."), remedies);
    assertTrue(remedies.contains("--set heater.power=30"), remedies);
  }

  private static void assertNear(double expected, double shown, double within, int row) {
    assertEquals(expected, shown, within, "row " + row);
  }

  private static double shownNow(String chart, String label) {
    String text =
        browser.text(
            "return [...document.querySelectorAll('#chart-' + arguments[0] + ' .key button')]"
                + ".find(b => b.querySelector('span').textContent === arguments[1])"
                + ".querySelector('.now').textContent",
            chart,
            label);
    return Double.parseDouble(text.replace('−', '-').split(" ")[0]);
  }

  @Test
  void buttonsMoveAllChartsTogether() {
    String whole = onlyRange();
    press("zoom-in");
    String closer = onlyRange();
    assertEquals(length(whole) / 2, length(closer), 1);
    press("later");
    String later = onlyRange();
    assertEquals(length(closer), length(later), 1);
    assertTrue(start(later) > start(closer));
    press("worst");
    double coldest = outcome.scenario().window().fromEpochS() + outcome.main().brood().low().atS();
    String night = onlyRange();
    assertTrue(start(night) <= coldest && coldest <= start(night) + length(night));
    assertEquals(86_400, length(night), 1);
    browser.keep("coldest-night");
    press("whole");
    assertEquals(whole, onlyRange());
  }

  @Test
  void aDayOfTheDiaryOpensInTheCharts() {
    browser.js("document.querySelectorAll('button.day')[2].click()");
    browser.settle();
    long third = outcome.scenario().window().fromEpochS() + 2 * 86_400;
    assertEquals(third, start(onlyRange()), 1);
    assertEquals(86_400, length(onlyRange()), 1);
  }

  @Test
  void draggingAcrossOneChartZoomsAll() {
    String whole = onlyRange();
    WebElement over = browser.driver().findElement(By.cssSelector("#chart-battery .u-over"));
    browser.js("arguments[0].scrollIntoView({block: 'center', behavior: 'instant'})", over);
    new Actions(browser.driver())
        .moveToElement(over, -200, 0)
        .clickAndHold()
        .moveByOffset(150, 0)
        .moveByOffset(50, 0)
        .release()
        .perform();
    browser.settle();
    String dragged = onlyRange();
    double share = 200.0 / over.getSize().width;
    assertEquals(length(whole) * share, length(dragged), 0.02 * length(whole));
  }

  @Test
  void unitsChangeEveryNumberOnThePage() {
    String axisBefore = label("brood");
    assertTrue(axisBefore.contains("°C"), axisBefore);
    browser.js("document.querySelector('input[value=us]').click()");
    browser.settle();
    assertTrue(label("brood").contains("°F"), label("brood"));
    double bandLowF = outcome.scenario().run().bandLowC() * 1.8 + 32;
    double[] axis = axis("brood");
    assertTrue(axis[0] < bandLowF && bandLowF < axis[1], label("brood"));
    browser.js("document.querySelectorAll('details').forEach(d => d.open = true)");
    browser.settle();
    String switched = readable();
    assertFalse(switched.contains("°C "), "a °C is left");
    // a page made in US units must read word for word like one that was switched to them
    browser.show("report-us", HtmlReport.html(outcome, true), 1280, 900);
    browser.js("document.querySelectorAll('details').forEach(d => d.open = true)");
    browser.settle();
    assertEquals(switched, readable());
    browser.keep("wide-us");
    browser.js("document.querySelector('input[value=metric]').click()");
    browser.settle();
    assertEquals(axisBefore, label("brood"));
  }

  private static String readable() {
    return browser.text("return document.getElementById('main').innerText");
  }

  @Test
  void eventsCanBeListedAndFiltered() {
    browser.js("document.getElementById('event-list').open = true");
    browser.settle();
    long all = rows();
    assertEquals(Math.min(200, outcome.main().events().size()), all);
    browser.js(
        "const k = document.getElementById('event-kind'); k.value = 'lid';"
            + "k.dispatchEvent(new Event('change'))");
    assertEquals(2L, rows());
    assertTrue(
        browser
            .text("return document.getElementById('event-rows').innerText")
            .contains("the keeper looks in"));
  }

  private static long rows() {
    return (Long) browser.js("return document.querySelectorAll('#event-rows tr').length");
  }

  @Test
  void darkAndLightFollowTheReaderAndTheButton() {
    String ground = "return getComputedStyle(document.body).backgroundColor";
    String ink = "return document.querySelector('#chart-co2 canvas').toDataURL()";
    String light = browser.text(ground);
    String lightInk = browser.text(ink);
    press("theme");
    String dark = browser.text(ground);
    assertNotEquals(light, dark);
    assertNotEquals(lightInk, browser.text(ink));
    browser.keep("wide-dark");
    press("theme");
    assertEquals(light, browser.text(ground));
    assertEquals(lightInk, browser.text(ink));
    browser.show("report", page, 1280, 900);
    browser.prefer("dark");
    assertEquals(dark, browser.text(ground));
  }

  @Test
  void theKeyboardAloneReachesAndWorksEverything() {
    Set<String> reached = new HashSet<>();
    Actions keys = new Actions(browser.driver());
    keys.sendKeys(Keys.TAB).perform();
    assertEquals("skip", browser.text("return document.activeElement.className"));
    for (int i = 0; i < 200; i++) {
      reached.add(
          browser.text(
              "const a = document.activeElement; return a.id || a.className || a.value || a.name"));
      assertNotEquals(
          "none",
          browser.text("return getComputedStyle(document.activeElement).outlineStyle"),
          "focus cannot be seen on " + browser.text("return document.activeElement.outerHTML"));
      new Actions(browser.driver()).sendKeys(Keys.TAB).perform();
      if (browser.text("return document.activeElement.className").equals("skip")
          || browser.text("return document.activeElement.tagName").equals("BODY")) {
        break;
      }
    }
    assertTrue(
        reached.containsAll(
            Set.of("theme", "zoom-in", "zoom-out", "worst", "whole", "moment", "day", "wide")),
        reached.toString());
    String whole = onlyRange();
    browser.js("document.getElementById('zoom-in').focus()");
    new Actions(browser.driver()).sendKeys(Keys.ENTER).perform();
    browser.settle();
    assertTrue(length(onlyRange()) < length(whole));
    browser.js("document.getElementById('moment').focus()");
    String before = browser.text("return document.getElementById('moment-text').textContent");
    new Actions(browser.driver()).sendKeys(Keys.ARROW_RIGHT).perform();
    browser.settle();
    assertNotEquals(
        before, browser.text("return document.getElementById('moment-text').textContent"));
  }

  @Test
  void aPhoneScrollsDownOnly() {
    browser.show("report", page, 360, 800);
    browser.js("document.querySelectorAll('details').forEach(d => d.open = true)");
    browser.settle();
    long width = (Long) browser.js("return document.documentElement.scrollWidth");
    assertTrue(width <= 360, width + " px wide");
    browser.keep("phone-light");
    press("theme");
    browser.keep("phone-dark");
  }

  @Test
  void paperShowsTheCharts() {
    browser.prefer("dark");
    int a4 = strokes(browser.print("paper-a4", 8.27, 11.69));
    int letter = strokes(browser.print("paper-letter", 8.5, 11));
    // after printing the screen is as before
    assertFalse(
        (Boolean) browser.js("return document.documentElement.classList.contains('paper')"));
    assertEquals(
        browser.js("return document.querySelector('.plot').clientWidth"),
        browser.js("return document.querySelector('.plot .uplot').clientWidth"));
    browser.js("document.querySelectorAll('canvas').forEach(c => c.remove())");
    int bare = strokes(browser.print("paper-without-charts", 8.27, 11.69));
    assertTrue(a4 > bare + 5000, a4 + " strokes with charts, " + bare + " without");
    assertTrue(letter > bare + 5000, letter + " strokes with charts, " + bare + " without");
  }

  /** Straight strokes drawn on all pages of a document; charts have thousands. */
  private static int strokes(byte[] pdf) {
    String raw = new String(pdf, StandardCharsets.ISO_8859_1);
    assertTrue(raw.startsWith("%PDF"));
    Pattern stroke = Pattern.compile("[\\d.]+ [\\d.]+ l\\s");
    int found = 0;
    int at = raw.indexOf("stream\n");
    while (at >= 0) {
      int from = at + 7;
      int to = raw.indexOf("endstream", from);
      found += (int) stroke.matcher(inflated(pdf, from, to)).results().count();
      at = raw.indexOf("stream\n", to + 9);
    }
    return found;
  }

  /** A stream of a document in the clear; empty where it is not packed as pages are. */
  private static String inflated(byte[] pdf, int from, int to) {
    Inflater inflater = new Inflater();
    inflater.setInput(pdf, from, to - from);
    byte[] clear = new byte[1 << 24];
    try {
      return new String(clear, 0, inflater.inflate(clear), StandardCharsets.ISO_8859_1);
    } catch (DataFormatException e) {
      return "";
    } finally {
      inflater.end();
    }
  }

  @Test
  void accessibilityRulesFindNothing() throws IOException {
    browser.js("document.querySelectorAll('details').forEach(d => d.open = true)");
    browser.js(axe());
    for (String scheme : List.of("light", "dark")) {
      browser.prefer(scheme);
      Object found =
          browser
              .driver()
              .executeAsyncScript(
                  "const done = arguments[0];"
                      + "axe.run(document, {resultTypes: ['violations', 'incomplete']}).then(r =>"
                      + " done(r.violations.map(v => v.id + ': ' + v.help + ' '"
                      + " + v.nodes.slice(0, 4).map(n => n.html + ' ' + n.failureSummary)).join('\\n')"
                      + " + '|' + r.passes.length));");
      String[] parts = String.valueOf(found).split("\\|(?=\\d+$)");
      assertEquals("", parts[0], scheme);
      assertTrue(Integer.parseInt(parts[1]) > 20, "rules that looked at something: " + parts[1]);
    }
  }

  private static String axe() throws IOException {
    try (InputStream in = HtmlReportBrowserTest.class.getResourceAsStream("/axe.min.js")) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  private static void press(String id) {
    browser.js("document.getElementById(arguments[0]).click()", id);
    browser.settle();
  }

  /** The one range that all charts show. */
  private static String onlyRange() {
    Object shown = browser.js(RANGES);
    Set<Object> ranges = new HashSet<>((List<?>) shown);
    assertEquals(1, ranges.size(), "charts apart: " + ranges);
    return String.valueOf(ranges.iterator().next());
  }

  private static double start(String range) {
    return Double.parseDouble(range.split(" ")[0]);
  }

  private static double length(String range) {
    return Double.parseDouble(range.split(" ")[1]) - start(range);
  }

  private static String label(String chart) {
    return browser.text(
        "return document.querySelector('.plot[data-chart=' + arguments[0] + ']').ariaLabel", chart);
  }

  private static double[] axis(String chart) {
    String[] words = label(chart).replaceAll(".*scale from ", "").split("[ ;]");
    return new double[] {
      Double.parseDouble(words[0].replace('−', '-')), Double.parseDouble(words[2].replace('−', '-'))
    };
  }
}

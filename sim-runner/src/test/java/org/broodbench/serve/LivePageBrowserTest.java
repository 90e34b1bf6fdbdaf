package org.broodbench.serve;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.broodbench.input.ScenarioReader;
import org.broodbench.output.Chromium;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WindowType;
import org.openqa.selenium.interactions.Actions;
import org.openqa.selenium.support.ui.WebDriverWait;

/** The live page as a keeper meets it: turned, played, broken, reloaded, by mouse and by keys. */
@Tag("browser")
class LivePageBrowserTest {
  private static final String FAULT_OF_PROBE = "#faults button:nth-child(1)";

  @TempDir static Path profile;
  @TempDir static Path downloads;
  @TempDir static Path results;

  private static Chromium browser;
  private static LiveServer server;

  @BeforeAll
  static void start() throws IOException {
    browser = Chromium.start(profile);
    Bench bench =
        new Bench(
            new Bench.Source(
                "late-split.toml", Wire.demo(), null, List.of(), List.of("run.days=10")),
            2);
    Studies studies =
        new Studies(
            List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-cp",
                System.getProperty("java.class.path"),
                "org.broodbench.cli.Main"),
            results);
    server = LiveServer.start(0, new Live(bench, studies));
    browser
        .driver()
        .executeCdpCommand(
            "Browser.setDownloadBehavior",
            Map.of("behavior", "allow", "downloadPath", downloads.toAbsolutePath().toString()));
  }

  @AfterAll
  static void stop() {
    if (browser != null) {
      browser.close();
    }
    if (server != null) {
      server.close();
    }
  }

  /** A tab as new: its name and what it prefers are forgotten. */
  @BeforeEach
  void open() {
    browser.prefer("light");
    browser.open(server.url(), 1280, 900);
    browser.js("sessionStorage.clear(); localStorage.clear()");
    browser.open(server.url(), 1280, 900);
    ready();
  }

  @AfterEach
  void nothingIsSaidOnTheConsole() {
    assertEquals(List.of(), browser.complaints());
  }

  private static void until(String condition) {
    new WebDriverWait(browser.driver(), Duration.ofSeconds(60), Duration.ofMillis(40))
        .withMessage(condition)
        .until(d -> (Boolean) browser.js("return Boolean(" + condition + ")"));
  }

  private static void ready() {
    until("document.documentElement.dataset.drawn");
  }

  private static long drawn() {
    return Long.parseLong(browser.text("return document.documentElement.dataset.drawn"));
  }

  private static void inFull() {
    until("document.getElementById('state').textContent.startsWith('Run in full')");
  }

  private static String words(String id) {
    return browser.text("return document.getElementById(arguments[0]).textContent", id);
  }

  private static String shown() {
    return browser.text("return document.getElementById('requirements').innerText");
  }

  private static void press(String selector) {
    browser.js("document.querySelector(arguments[0]).click()", selector);
  }

  /** Moves a slider as a hand does, and waits for the picture. */
  private static void slide(String path, double value) {
    long last = drawn();
    browser.js(
        "const s = document.getElementById('k-' + arguments[0].replaceAll('.', '-'));"
            + "s.value = arguments[1]; s.dispatchEvent(new Event('input'));"
            + "s.dispatchEvent(new Event('change'))",
        path,
        value);
    until("Number(document.documentElement.dataset.drawn) > " + last);
  }

  private static void pressAndWait(String selector) {
    long last = drawn();
    press(selector);
    until("Number(document.documentElement.dataset.drawn) > " + last);
  }

  @Test
  void aSliderChangesTheVerdictAndUndoBringsItBack() {
    inFull();
    browser.keep("live-first");
    assertTrue(words("headline").startsWith("Missed"), words("headline"));
    assertFalse(shown().contains("was"), shown());
    slide("hive.insulation", 50);
    assertTrue(shown().contains("better now"), shown());
    inFull();
    assertEquals("Met: all 7 requirements hold", words("headline"));
    assertTrue(shown().contains("better now"), shown());
    assertTrue(words("changed").contains("Insulation all round 50 mm"), words("changed"));
    assertTrue(
        browser
            .text("return document.getElementById('command').value")
            .contains("--set 'hive.insulation=50 mm'"));
    browser.keep("live-board");
    pressAndWait("#undo");
    inFull();
    assertTrue(words("headline").startsWith("Missed"), words("headline"));
    pressAndWait("#redo");
    pressAndWait("#reset");
    assertEquals("Nothing is changed.", words("changed"));
  }

  @Test
  void aRemedyCanBeTriedByItsButton() {
    until("document.querySelectorAll('#mend-list button').length > 0");
    pressAndWait("#mend-list button");
    inFull();
    assertEquals("Met: all 7 requirements hold", words("headline"));
    until("document.getElementById('mend-words').textContent === 'Nothing is missed.'");
  }

  @Test
  void aValueThatCannotBeIsRefusedInWordsAndTheLastPictureStays() {
    String headline = words("headline");
    long last = drawn();
    browser.js(
        "const f = document.getElementById('k-heater-power-field'); f.value = '900';"
            + "f.dispatchEvent(new Event('change'))");
    until("Number(document.documentElement.dataset.drawn) > " + last);
    assertFalse((Boolean) browser.js("return document.getElementById('trouble').hidden"));
    assertTrue(words("trouble").contains("heater.power"), words("trouble"));
    assertEquals(headline, words("headline"));
    pressAndWait("#undo");
    assertTrue((Boolean) browser.js("return document.getElementById('trouble').hidden"));
  }

  @Test
  void theFilmPlaysAndJumpsAndTellsWhatTheControllerThinks() {
    inFull();
    press("#worst");
    assertTrue(words("thoughts").contains("It reads"), words("thoughts"));
    browser.js(
        "document.getElementById('moment').value = 0;"
            + "document.getElementById('moment').dispatchEvent(new Event('input'))");
    String begin = words("when");
    String nest = "return document.querySelector('#cut svg [data-n=nest]').textContent";
    String first = browser.text(nest);
    browser.js("document.getElementById('speed').value = '21600'");
    press("#play");
    assertEquals("Pause", words("play"));
    until("Number(document.getElementById('moment').value) > 700");
    press("#play");
    assertNotEquals(begin, words("when"));
    assertNotEquals(first, browser.text(nest));
    String paused = words("when");
    browser.settle();
    assertEquals(paused, words("when"));
    press("#on");
    assertNotEquals(paused, words("when"));
    press("#back");
    assertEquals(paused, words("when"));
    browser.js("document.getElementById('kind').value = 'heater'");
    press("#later");
    assertTrue(words("event").contains("heater from"), words("event"));
    browser.keep("live-film");
  }

  @Test
  void ticksAreSteppedOneByOneAndTheirTimersRunDown() {
    inFull();
    browser.js("document.getElementById('kind').value = 'heater'");
    press("#later");
    press("#on"); // the switching is inside the minute that begins at the moment found
    assertTrue(words("thoughts").contains("Minimum"), words("thoughts") + words("event"));
    press("#tick");
    until("document.getElementById('event').textContent.startsWith('Tick at')");
    String one = words("event");
    String thought = words("thoughts");
    press("#tick");
    until("document.getElementById('event').textContent !== '" + one + "'");
    press("#tick");
    until("document.getElementById('thoughts').textContent !== '" + thought + "'");
    assertTrue(words("thoughts").contains("left"), words("thoughts"));
  }

  @Test
  void aFaultIsThrownInAtTheMomentShownAndTakenOutAgain() {
    inFull();
    String at = words("when");
    pressAndWait(FAULT_OF_PROBE);
    assertEquals(at, words("when"));
    assertTrue(words("broken").contains("Brood probe out at " + at), words("broken"));
    inFull();
    browser.js("document.getElementById('kind').value = ''");
    browser.js(
        "document.getElementById('moment').value = 0;"
            + "document.getElementById('moment').dispatchEvent(new Event('input'))");
    browser.js("document.getElementById('kind').value = 'fault probe_open'");
    press("#later");
    assertTrue(words("event").contains("fault probe open"), words("event"));
    for (int i = 0; i < 10; i++) {
      press("#on");
    }
    assertTrue(words("thoughts").contains("trusts no brood probe"), words("thoughts"));
    assertTrue(words("thoughts").contains("Alarm: brood probe"), words("thoughts"));
    browser.keep("live-fault");
    pressAndWait("#broken button:last-child");
    assertEquals("", words("broken"));
  }

  @Test
  void aReloadLosesNothing() {
    slide("heater.power", 35);
    browser.js(
        "document.getElementById('moment').value = 4321;"
            + "document.getElementById('moment').dispatchEvent(new Event('input'))");
    String when = words("when");
    // what the tab keeps is sent a moment later
    browser.driver().executeAsyncScript("setTimeout(arguments[0], 1500)");
    browser.driver().navigate().refresh();
    ready();
    assertTrue(words("changed").contains("Heater 35 W"), words("changed"));
    assertEquals(when, words("when"));
    pressAndWait("#undo");
    assertEquals("Nothing is changed.", words("changed"));
  }

  @Test
  void twoTabsDoNotDisturbEachOther() {
    slide("heater.power", 35);
    String first = browser.driver().getWindowHandle();
    browser.driver().switchTo().newWindow(WindowType.TAB);
    try {
      browser.driver().get(server.url());
      ready();
      assertEquals("Nothing is changed.", words("changed"));
      slide("hive.insulation", 60);
      inFull();
      assertEquals(List.of(), browser.complaints());
    } finally {
      browser.driver().close();
      browser.driver().switchTo().window(first);
    }
    inFull();
    assertTrue(words("changed").contains("Heater 35 W"), words("changed"));
    assertFalse(words("changed").contains("Insulation"), words("changed"));
  }

  @Test
  void theSavedFileIsTheSameRigWithItsComments() throws IOException {
    slide("hive.insulation", 45);
    pressAndWait(FAULT_OF_PROBE);
    press("#save");
    until("document.getElementById('taken').textContent.startsWith('Handed')");
    Path file = downloads.resolve("changed-late-split.toml");
    new WebDriverWait(browser.driver(), Duration.ofSeconds(10)).until(d -> Files.exists(file));
    String text = Files.readString(file);
    assertTrue(text.contains("# spruce boards"), text);
    var s = ScenarioReader.read("x.toml", Files.readAllBytes(file), List.of());
    assertEquals(3, s.events().size());
    assertEquals(10, s.window().days());
    assertEquals(
        0.045 + 0.022, s.hive().wall().stream().mapToDouble(l -> l.thicknessM()).sum(), 1e-9);
  }

  @Test
  void aStudyIsStartedStoppedWithItsPartsWrittenAndItsReportOpens() {
    press("#study-start");
    until("/^stress: [1-9]\\d* of/.test(document.getElementById('study-state').textContent)");
    browser.keep("live-study");
    press("#study-stop");
    until("document.getElementById('study-state').textContent.startsWith('stress stopped')");
    assertTrue(Files.exists(results.resolve("stress.json")));
    assertTrue(Files.exists(results.resolve("stress.csv")));
    until("document.getElementById('study-text').textContent.includes('Written:')");
    String first = browser.driver().getWindowHandle();
    String report = browser.text("return document.getElementById('study-report').href");
    browser.driver().switchTo().newWindow(WindowType.TAB);
    try {
      browser.driver().get(server.url());
      browser.driver().get(report);
      assertTrue(browser.text("return document.querySelector('h1').innerText").length() > 3);
      assertEquals(List.of(), browser.complaints());
    } finally {
      browser.driver().close();
      browser.driver().switchTo().window(first);
    }
  }

  @Test
  void unitsChangeEverywhereAndStay() {
    press("input[value=us]");
    assertEquals(
        "92.3",
        browser.text("return document.getElementById('k-controller-heat-set_point-field').value"));
    assertTrue(words("thoughts").contains("°F"), words("thoughts"));
    assertFalse(words("cut").contains("°C"), words("cut"));
    slide("controller.heat.set_point", 34);
    assertTrue(words("changed").contains("93.2 degF"), words("changed"));
    browser.keep("live-us");
    browser.driver().navigate().refresh();
    ready();
    assertTrue(words("thoughts").contains("°F"), words("thoughts"));
  }

  @Test
  void theKeyboardAloneReachesAndWorksEverything() {
    inFull();
    Set<String> reached = new HashSet<>();
    new Actions(browser.driver()).sendKeys(Keys.TAB).perform();
    assertEquals("skip", browser.text("return document.activeElement.className"));
    for (int i = 0; i < 200; i++) {
      reached.add(
          browser.text("const a = document.activeElement; return a.id || a.className || a.value"));
      assertNotEquals(
          "none",
          browser.text("return getComputedStyle(document.activeElement).outlineStyle"),
          "focus cannot be seen on " + browser.text("return document.activeElement.outerHTML"));
      new Actions(browser.driver()).sendKeys(Keys.TAB).perform();
      if (browser.text("return document.activeElement.tagName").equals("BODY")
          || browser.text("return document.activeElement.className").equals("skip")) {
        break;
      }
    }
    assertTrue(
        reached.containsAll(
            Set.of(
                "theme",
                "undo",
                "redo",
                "reset",
                "save",
                "copy",
                "play",
                "on",
                "back",
                "moment",
                "speed",
                "worst",
                "kind",
                "earlier",
                "later",
                "fault-add",
                "k-heater-power")),
        reached.toString());
    long last = drawn();
    browser.js("document.getElementById('k-heater-power').focus()");
    new Actions(browser.driver()).sendKeys(Keys.ARROW_RIGHT).perform();
    until("Number(document.documentElement.dataset.drawn) > " + last);
    assertTrue(words("changed").contains("Heater 21 W"), words("changed"));
    browser.js("document.getElementById('play').focus()");
    String when = words("when");
    new Actions(browser.driver()).sendKeys(Keys.SPACE).perform();
    until("document.getElementById('when').textContent !== '" + when + "'");
    new Actions(browser.driver()).sendKeys(Keys.SPACE).perform();
    assertEquals("Play", words("play"));
  }

  @Test
  void accessibilityRulesFindNothing() {
    inFull();
    pressAndWait(FAULT_OF_PROBE);
    inFull();
    browser.js("document.querySelectorAll('details').forEach(d => d.open = true)");
    for (String scheme : List.of("light", "dark")) {
      browser.prefer(scheme);
      assertEquals("", browser.accessibility(), scheme);
      browser.keep("live-" + scheme);
    }
  }

  @Test
  void aPhoneScrollsDownOnlyAndALargeScreenIsUsed() {
    inFull();
    browser.size(360, 780);
    browser.settle();
    long width = (Long) browser.js("return document.documentElement.scrollWidth");
    assertTrue(width <= 360, width + " px wide");
    browser.keep("live-phone");
    browser.size(3840, 2160);
    browser.settle();
    assertTrue((Long) browser.js("return document.querySelector('main').clientWidth") > 2000);
    browser.keep("live-large");
  }

  @Test
  void withoutMotionTheFilmGoesInStepsOfHalfASecond() {
    browser
        .driver()
        .executeCdpCommand(
            "Emulation.setEmulatedMedia",
            Map.of(
                "features", List.of(Map.of("name", "prefers-reduced-motion", "value", "reduce"))));
    press("#play");
    Object moves =
        browser
            .driver()
            .executeAsyncScript(
                "const done = arguments[0]; const el = document.getElementById('when');"
                    + "let last = el.textContent, moves = 0, frames = 0;"
                    + "const look = () => { if (el.textContent !== last) { moves++; last = el.textContent; }"
                    + "if (++frames < 90) requestAnimationFrame(look); else done(moves); };"
                    + "requestAnimationFrame(look);");
    press("#play");
    long count = ((Number) moves).longValue();
    assertTrue(count >= 1 && count <= 45, count + " moves in 90 frames");
  }

  @Test
  void thePolicyForbidsScriptsWrittenIntoThePageAndTheNetwork() {
    Object blocked =
        browser
            .driver()
            .executeAsyncScript(
                "const done = arguments[0]; const seen = [];"
                    + "addEventListener('securitypolicyviolation', e => { seen.push(e.effectiveDirective);"
                    + " if (seen.length === 2) done(seen.sort().join()); });"
                    + "fetch('https://example.invalid/').catch(() => 0);"
                    + "const s = document.createElement('script'); s.textContent = 'window.bad = 1';"
                    + "document.head.append(s);");
    assertEquals("connect-src,script-src-elem", blocked);
    assertEquals("undefined", browser.text("return typeof window.bad"));
    browser.complaints();
  }
}

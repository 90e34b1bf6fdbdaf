package org.broodbench.output;

import static org.junit.jupiter.api.Assertions.fail;
import static org.junit.jupiter.api.Assumptions.abort;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.logging.Level;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.logging.LogEntry;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.logging.LoggingPreferences;
import org.openqa.selenium.net.PortProber;

/**
 * A headless browser for one test class. Without a browser the tests are skipped, unless the
 * environment variable BROODBENCH_REQUIRE_BROWSER is 1: then they fail.
 */
public final class Chromium implements AutoCloseable {
  private static final List<String> BROWSERS =
      List.of("/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome");
  private static final List<String> DRIVERS =
      List.of("/usr/bin/chromedriver", "/usr/lib/chromium-browser/chromedriver");
  private static final Path SHOTS = Path.of("target", "screenshots");

  private final ChromeDriver driver;

  private Chromium(ChromeDriver driver) {
    this.driver = driver;
  }

  /** Starts a browser, or skips or fails the test class. */
  public static Chromium start(Path profile) {
    Path browser = find("a browser", BROWSERS);
    Path chromedriver = find("a browser driver", DRIVERS);
    ChromeOptions options = new ChromeOptions();
    options.setBinary(browser.toFile());
    options.addArguments(
        "--headless=new",
        "--no-sandbox",
        "--disable-gpu",
        "--disable-quic",
        "--disable-dev-shm-usage",
        "--no-first-run",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
        "--hide-scrollbars",
        "--force-device-scale-factor=1",
        "--user-data-dir=" + profile);
    LoggingPreferences logs = new LoggingPreferences();
    logs.enable(LogType.BROWSER, Level.ALL);
    options.setCapability("goog:loggingPrefs", logs);
    try {
      int port = PortProber.findFreePort();
      ChromeDriverService service =
          new ChromeDriverService(
              chromedriver.toFile(),
              port,
              Duration.ofSeconds(30),
              List.of("--port=" + port, "--silent"),
              Map.of());
      return new Chromium(new ChromeDriver(service, options));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Path find(String what, List<String> places) {
    for (String p : places) {
      if (Files.isExecutable(Path.of(p))) {
        return Path.of(p);
      }
    }
    String message = "no " + what.substring(2) + " at " + places;
    if ("1".equals(System.getenv("BROODBENCH_REQUIRE_BROWSER"))) {
      return fail(message);
    }
    return abort(message);
  }

  /** The driver itself. */
  public ChromeDriver driver() {
    return driver;
  }

  /** Runs a script and gives its value. */
  public Object js(String script, Object... arguments) {
    return driver.executeScript(script, arguments);
  }

  /** Runs a script and gives its value as a text. */
  public String text(String script, Object... arguments) {
    return String.valueOf(js(script, arguments));
  }

  /** Opens an address at a size. */
  public void open(String url, int widthPx, int heightPx) {
    size(widthPx, heightPx);
    driver.get(url);
  }

  /** What the accessibility rules of axe-core find on the page as it is; empty for nothing. */
  public String accessibility() {
    try (java.io.InputStream in = Chromium.class.getResourceAsStream("/axe.min.js")) {
      js(new String(in.readAllBytes(), java.nio.charset.StandardCharsets.UTF_8));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    Object found =
        driver.executeAsyncScript(
            "const done = arguments[0];"
                + "axe.run(document, {resultTypes: ['violations']}).then(r =>"
                + " done(r.passes.length < 20 ? 'few rules looked' : r.violations.map(v => v.id + ' '"
                + " + v.nodes.slice(0, 4).map(n => n.html + ' ' + n.failureSummary)).join('\\n')));");
    return String.valueOf(found);
  }

  /** Shows a page, written to the screenshots' folder, at a size; all its drawing is done. */
  void show(String name, String html, int widthPx, int heightPx) {
    size(widthPx, heightPx);
    try {
      Files.createDirectories(SHOTS);
      Path file = SHOTS.resolve(name + ".html");
      Files.writeString(file, html);
      driver.get(file.toAbsolutePath().toUri().toString());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    settle();
  }

  /** The size of the window. */
  public void size(int widthPx, int heightPx) {
    driver.executeCdpCommand(
        "Emulation.setDeviceMetricsOverride",
        Map.of("width", widthPx, "height", heightPx, "deviceScaleFactor", 1, "mobile", false));
  }

  /** Lets the page believe that its reader prefers dark or light. */
  public void prefer(String scheme) {
    driver.executeCdpCommand(
        "Emulation.setEmulatedMedia",
        Map.of("features", List.of(Map.of("name", "prefers-color-scheme", "value", scheme))));
    settle();
  }

  /** Waits for two frames, after which what was asked for is drawn. */
  public void settle() {
    driver.executeAsyncScript(
        "const done = arguments[0]; requestAnimationFrame(() => requestAnimationFrame(done));");
  }

  /** Keeps a picture of the whole page. */
  public void keep(String name) {
    settle();
    Object bytes =
        driver
            .executeCdpCommand(
                "Page.captureScreenshot", Map.of("format", "png", "captureBeyondViewport", true))
            .get("data");
    write(name + ".png", OutputType.BYTES.convertFromBase64Png(String.valueOf(bytes)));
  }

  /** Prints the page and keeps the document. */
  byte[] print(String name, double widthIn, double heightIn) {
    Object data =
        driver
            .executeCdpCommand(
                "Page.printToPDF",
                Map.of(
                    "paperWidth",
                    widthIn,
                    "paperHeight",
                    heightIn,
                    "printBackground",
                    false,
                    "preferCSSPageSize",
                    false))
            .get("data");
    byte[] pdf = java.util.Base64.getDecoder().decode(String.valueOf(data));
    write(name + ".pdf", pdf);
    return pdf;
  }

  private static void write(String name, byte[] bytes) {
    try {
      Files.createDirectories(SHOTS);
      Files.write(SHOTS.resolve(name), bytes);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** What the page has said on the console since the last call, warnings and worse. */
  public List<String> complaints() {
    return driver.manage().logs().get(LogType.BROWSER).getAll().stream()
        .filter(e -> e.getLevel().intValue() >= Level.WARNING.intValue())
        .map(LogEntry::getMessage)
        .toList();
  }

  @Override
  public void close() {
    driver.quit();
  }
}

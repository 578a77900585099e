package dev.loopgauge.report.html;

import static org.junit.jupiter.api.Assertions.assertNotNull;

import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.logging.Level;
import org.openqa.selenium.By;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.ScriptTimeoutException;
import org.openqa.selenium.StaleElementReferenceException;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.logging.LoggingPreferences;

/** A real browser without a window, that asks nobody for anything but what a page asks it to. */
public final class Browser implements AutoCloseable {
  private static final int ANY_HEIGHT = 900;

  private final ChromeDriver driver;

  private Browser(ChromeDriver driver) {
    this.driver = driver;
  }

  /** Starts one that keeps its own data in a folder. */
  public static Browser start(Path data) {
    LoggingPreferences logs = new LoggingPreferences();
    logs.enable(LogType.BROWSER, Level.ALL);
    logs.enable(LogType.PERFORMANCE, Level.ALL);
    ChromeOptions options = new ChromeOptions();
    options.setBinary(program("chromium"));
    options.setCapability("goog:loggingPrefs", logs);
    options.addArguments(
        "--headless",
        "--no-sandbox",
        "--disable-gpu",
        "--disable-dev-shm-usage",
        "--no-first-run",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
        "--user-data-dir=" + data);
    ChromeDriverService service =
        new ChromeDriverService.Builder()
            .usingDriverExecutable(program("chromedriver"))
            .usingAnyFreePort()
            .build();
    return new Browser(new ChromeDriver(service, options));
  }

  private static File program(String name) {
    return Arrays.stream(System.getenv("PATH").split(File.pathSeparator, -1))
        .map(folder -> Path.of(folder, name))
        .filter(Files::isExecutable)
        .findFirst()
        .orElseThrow()
        .toFile();
  }

  /** Shows an address. */
  public void open(String address) {
    driver.get(address);
  }

  /** Presses a button as a hand would, once it can be pressed. */
  public void click(String id) {
    await("document.querySelector('#" + id + ":not(:disabled)')");
    try {
      driver.findElement(By.id(id)).click();
    } catch (StaleElementReferenceException renewed) {
      click(id);
    }
  }

  /** Presses keys where the focus is. */
  public void press(CharSequence... keys) {
    driver.switchTo().activeElement().sendKeys(keys);
  }

  /** Types into a field. */
  public void type(String id, String text) {
    driver.findElement(By.id(id)).sendKeys(text);
  }

  /** Chooses from a list by a value, as if by hand, once something can be chosen from it. */
  public void choose(String id, String value) {
    await("document.querySelector('#" + id + ":not(:disabled)')");
    try {
      driver.findElement(By.cssSelector("#" + id + " option[value=\"" + value + "\"]")).click();
    } catch (StaleElementReferenceException renewed) {
      choose(id, value);
    }
  }

  /**
   * Waits until an expression of the page is true; fails with what the page says where it isn't.
   */
  public void await(String expression) {
    try {
      driver.executeAsyncScript(
          "const done = arguments[arguments.length - 1];"
              + "const look = () => ("
              + expression
              + ") ? done() : setTimeout(look, 10); look();");
    } catch (ScriptTimeoutException e) {
      String page = String.valueOf(driver.executeScript("return document.body.innerText"));
      throw new AssertionError("never true: " + expression + "\non this page:\n" + page, e);
    }
  }

  /** What a script hands to {@code done}. */
  public double number(String script) {
    Object answer =
        driver.executeAsyncScript("const done = arguments[arguments.length - 1]; " + script);
    return ((Number) answer).doubleValue();
  }

  /** Shows a file. */
  public void open(Path page) {
    driver.get(page.toUri().toString());
  }

  /**
   * Looks at the page that is open in another way.
   *
   * @param width in CSS pixels
   * @param media screen or print
   * @param scheme light or dark
   */
  public void look(int width, String media, String scheme) {
    look(width, ANY_HEIGHT, media, scheme);
  }

  /** The same in a window of this height, in CSS pixels. */
  public void look(int width, int height, String media, String scheme) {
    driver.executeCdpCommand(
        "Emulation.setDeviceMetricsOverride",
        Map.of("width", width, "height", height, "deviceScaleFactor", 1, "mobile", false));
    driver.executeCdpCommand(
        "Emulation.setEmulatedMedia",
        Map.of(
            "media",
            media,
            "features",
            List.of(Map.of("name", "prefers-color-scheme", "value", scheme))));
  }

  /** What the window shows, as a PNG. */
  public byte[] picture() {
    return driver.getScreenshotAs(OutputType.BYTES);
  }

  /** The page that is open as a PDF, on the paper that it asks for. */
  byte[] printed() {
    Map<String, Object> printed =
        driver.executeCdpCommand("Page.printToPDF", Map.of("preferCSSPageSize", true));
    return Base64.getDecoder().decode((String) printed.get("data"));
  }

  /** Unfolds all that is folded, or folds it again. */
  void unfold(boolean open) {
    driver.executeScript(
        "document.querySelectorAll('details').forEach(part => { part.open = arguments[0]; })",
        open);
  }

  /** What a script in the page answers, as lines of text. */
  public List<String> ask(String script) {
    return lines(driver.executeScript(script));
  }

  /** What the accessibility checker finds wrong with the page, once its colours have settled. */
  public List<String> accessibilityFaults() throws IOException {
    await("document.getAnimations().length === 0");
    driver.executeScript(resource("/axe.min.js"));
    return lines(driver.executeAsyncScript(resource("axe-run.js")));
  }

  /** The addresses that were asked for since the last time, and what was complained of. */
  public List<String> log(String kind) {
    return driver.manage().logs().get(kind).getAll().stream()
        .map(entry -> entry.getMessage())
        .toList();
  }

  private static List<String> lines(Object answer) {
    return ((List<?>) answer).stream().map(String::valueOf).toList();
  }

  /** A script beside this class, or from the root. */
  public static String resource(String name) throws IOException {
    try (InputStream in = Browser.class.getResourceAsStream(name)) {
      assertNotNull(in, name);
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  @Override
  public void close() {
    driver.quit();
  }
}

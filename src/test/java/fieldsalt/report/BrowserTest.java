package fieldsalt.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import fieldsalt.report.input.PageInput;
import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.logging.Level;
import java.util.logging.Logger;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.logging.LoggingPreferences;

/** The page in a real browser, wide and on a telephone. Skipped where there is none. */
class BrowserTest {
  private static final File BROWSER = new File("/usr/bin/chromium");
  private static final File DRIVER = new File("/usr/bin/chromedriver");
  private static final Logger SELENIUM = Logger.getLogger("org.openqa.selenium");
  private static ChromeDriver chrome;
  @TempDir Path folder;

  @BeforeAll
  static void start() {
    boolean here = BROWSER.canExecute() && DRIVER.canExecute();
    if (System.getenv("CI") != null) {
      assertThat(here).as("CI has chromium and chromedriver").isTrue();
    }
    assumeTrue(here, "chromium or chromedriver is not installed: the page was not opened");
    SELENIUM.setLevel(Level.SEVERE);
    ChromeOptions options = new ChromeOptions().setBinary(BROWSER);
    options.addArguments(
        "--headless=new",
        "--no-sandbox",
        "--disable-gpu",
        "--disable-background-networking",
        "--disable-dev-shm-usage");
    LoggingPreferences logs = new LoggingPreferences();
    logs.enable(LogType.BROWSER, Level.ALL);
    logs.enable(LogType.PERFORMANCE, Level.ALL);
    options.setCapability("goog:loggingPrefs", logs);
    chrome =
        new ChromeDriver(
            new ChromeDriverService.Builder().usingDriverExecutable(DRIVER).build(), options);
  }

  @AfterAll
  static void stop() {
    if (chrome != null) {
      chrome.quit();
    }
  }

  private void open(PageInput input, int width) throws IOException {
    Path file = folder.resolve("report.html");
    Files.writeString(file, Report.html(input), StandardCharsets.UTF_8);
    chrome.executeCdpCommand(
        "Emulation.setDeviceMetricsOverride",
        Map.of("width", width, "height", 800, "deviceScaleFactor", 1, "mobile", width < 600));
    chrome.manage().logs().get(LogType.PERFORMANCE);
    chrome.get(file.toUri().toString());
  }

  private long number(String script) {
    return ((Number) chrome.executeScript("return " + script)).longValue();
  }

  private void assertFits() {
    assertThat(number("document.documentElement.scrollWidth"))
        .as("nothing sticks out to the right")
        .isLessThanOrEqualTo(number("window.innerWidth"));
  }

  @Test
  void fitsATelephone() throws IOException {
    open(new PageFixture().input(), 360);
    assertThat(number("window.innerWidth")).isEqualTo(360);
    assertFits();
    assertThat(number("document.querySelectorAll('td').length")).isGreaterThan(50);
    assertThat(
            number(
                "[...document.querySelectorAll('h1,h2,p,td,th,li,svg,text')].filter(e=>"
                    + "e.getBoundingClientRect().right>361&&!e.closest('thead,defs')).length"))
        .isZero();
  }

  @Test
  void asksNoNetworkAndReportsNoError() throws IOException {
    open(new PageFixture().input(), 1280);
    List<String> asked =
        chrome.manage().logs().get(LogType.PERFORMANCE).getAll().stream()
            .map(e -> e.getMessage())
            .filter(m -> m.contains("Network.requestWillBeSent\""))
            .filter(m -> !m.contains("\"url\":\"file:") && !m.contains("\"url\":\"data:"))
            .toList();
    assertThat(asked).isEmpty();
    assertThat(chrome.manage().logs().get(LogType.BROWSER).getAll()).isEmpty();
    assertFits();
  }

  @Test
  void everyPictureAndLegendIsThere() throws IOException {
    PageFixture fixture = new PageFixture();
    PageInput input = fixture.input();
    open(input, 1280);
    assertThat(number("document.querySelectorAll('svg.map').length")).isEqualTo(2);
    assertThat(number("document.querySelectorAll('svg.map a .zone').length"))
        .isEqualTo(input.zones().size());
    assertThat(number("document.querySelectorAll('svg.map .zone').length")).isGreaterThan(8);
    assertThat(number("document.querySelectorAll('svg.map .site').length"))
        .isEqualTo(2L * input.sites().sites().size());
    assertThat(number("document.querySelectorAll('svg.map .scale').length")).isEqualTo(2);
    assertThat(number("document.querySelectorAll('svg.map .north').length")).isEqualTo(2);
    assertThat(number("document.querySelectorAll('figcaption .legend').length")).isEqualTo(4);
    assertThat(number("document.querySelectorAll('svg.chart').length")).isEqualTo(3);
    assertThat(
            number(
                "[...document.querySelectorAll('svg.map,svg.chart,svg.swatch,svg.ramp')]"
                    + ".filter(e=>e.getBoundingClientRect().height<10).length"))
        .isZero();
  }

  @Test
  void thePictureOfTheSurfaceCanBeDecoded() throws IOException {
    open(new PageFixture().input(), 1280);
    Object size =
        chrome.executeAsyncScript(
            "const done=arguments[arguments.length-1];const i=new Image();"
                + "i.onload=()=>done(i.naturalWidth+'x'+i.naturalHeight);i.onerror=()=>done('no');"
                + "i.src=document.querySelector('svg.map image').getAttribute('href')");
    assertThat(size).isEqualTo("95x48");
  }

  @Test
  void everyLinkLeadsSomewhereAndKeysReachTheZones() throws IOException {
    open(new PageFixture().input(), 1280);
    assertThat(
            number(
                "[...document.querySelectorAll('a[href]')].filter(a=>!document.getElementById("
                    + "a.getAttribute('href').slice(1))).length"))
        .isZero();
    assertThat(
            number(
                "[...document.querySelectorAll('svg.map a')].filter(a=>a.tabIndex<0||"
                    + "!a.getAttribute('aria-label')).length"))
        .isZero();
    String ids = "[...document.querySelectorAll('[id]:not(pattern)')].map(e=>e.id)";
    assertThat(number("new Set(" + ids + ").size"))
        .as("ids are unique, but for the patterns each map brings")
        .isEqualTo(number(ids + ".length"));
  }

  @Test
  void hostileNamesBreakNothing() throws IOException {
    PageFixture fixture = new PageFixture();
    fixture.ranchName = "<script>document.title='taken'</script>";
    fixture.renamed.put("north", "x".repeat(300));
    fixture.renamed.put("creek", "\u202E\u05D0\u05D1\"'><img src=x onerror=alert(1)>");
    fixture.findings.add(
        new fieldsalt.finding.Finding(
            fieldsalt.finding.Code.UNUSUAL,
            fieldsalt.finding.Place.file("a".repeat(400)),
            "<b onmouseover=x>" + "\uD83C\uDF3E".repeat(200),
            "kept"));
    open(fixture.input(), 360);
    assertFits();
    assertThat(number("document.querySelectorAll('script,img,[onerror],[onmouseover]').length"))
        .isZero();
    assertThat(chrome.getTitle()).startsWith("<script>");
    assertThat(chrome.manage().logs().get(LogType.BROWSER).getAll()).isEmpty();
  }
}

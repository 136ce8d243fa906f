package nullplane.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The pages of judge and compare in a real browser: nothing on the console, nothing asked of the
 * network, no page wider than its window, and names that look like markup shown as they are. Left
 * out where no Chromium is installed; {@code .ci/run} installs it.
 */
class ReportsInBrowserIT {
  private static final String MARKUP = "<img src=x onerror=alert(1)>";
  private static final String FORMULA = "=HYPERLINK(1)";
  private static final String HEADER =
      "name,nominal [mm],sd [cm2],re [ohm],fs [Hz],qms,qes,mms [g],travel [mm],le [mH],power [W]\n";

  @TempDir private static Path folder;
  private static Browser browser;

  @BeforeAll
  static void makePages() throws Exception {
    Optional<Path> installed = Browser.installed();
    assumeTrue(installed.isPresent(), "no Chromium on this machine");
    Files.writeString(folder.resolve("room.yaml"), CliSpecs.READING_ROOM);
    Files.writeString(
        folder.resolve("woofers.csv"),
        HEADER
            + MARKUP
            + ",300,531,5.6,28,6,0.36,74,7,1,180\n"
            + "\""
            + FORMULA
            + "\",300,531,5.6,30,6,1.2,74,7,1,180\n"
            + "No fs,300,531,5.6,,6,1.2,74,7,1,180\n");
    run(
        "judge",
        "room.yaml",
        "--woofers",
        "woofers.csv",
        "--evaluations",
        "1000",
        "--out",
        "judged");
    run(
        "compare",
        "room.yaml",
        "woofers.csv#" + MARKUP,
        "woofers.csv#" + FORMULA,
        "--out",
        "compared");
    browser = Browser.start(installed.orElseThrow());
  }

  private static void run(String... words) throws Exception {
    ProgramRun.Ended ended = ProgramRun.start(folder, ProgramRun.QUICK, words).end();
    assertThat(ended.exitCode()).as(ended.err()).isZero();
  }

  @AfterAll
  static void closeBrowser() throws Exception {
    if (browser != null) {
      browser.close();
    }
  }

  @ParameterizedTest
  @CsvSource({"judged,1280", "judged,390", "compared,1280", "compared,390"})
  void aPageIsWholeByItself(String run, int widthPx) throws Exception {
    Path page = folder.resolve(run).resolve("index.html");
    Browser.Seen seen =
        browser.open(
            page,
            widthPx,
            "({wide: document.scrollingElement.scrollWidth, text: document.body.innerText,"
                + " strangers: document.querySelectorAll('img,script,iframe,link').length,"
                + " small: Math.min(...[...document.querySelectorAll('p,li,td')]"
                + ".map(e => parseFloat(getComputedStyle(e).fontSize)))})");
    assertThat(seen.faults()).isEmpty();
    assertThat(seen.requests()).containsExactly(page.toUri().toString());
    assertThat(seen.answer().path("wide").asInt()).isLessThanOrEqualTo(widthPx);
    assertThat(seen.answer().path("strangers").asInt()).isZero();
    assertThat(seen.answer().path("text").asText()).contains(MARKUP).contains("HYPERLINK(1)");
    assertThat(seen.answer().path("small").asDouble()).isGreaterThanOrEqualTo(11);
  }
}

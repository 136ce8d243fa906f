package nullplane.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import nullplane.scoring.Assessment;
import nullplane.scoring.DesignSpec;
import nullplane.search.SearchOutcome;
import org.junit.jupiter.api.Test;

class DesignReportTest {
  private static final DesignSpec SPEC = InventedRun.spec();
  private static final SearchOutcome OUTCOME = InventedRun.outcome(SPEC);
  private static final SortedMap<String, byte[]> FILES =
      DesignReport.files(SPEC, OUTCOME, InventedRun.INFO);

  @Test
  void everyWooferHasItsSheetAndPictures() {
    List<String> expected = new ArrayList<>(List.of("index.html", "index.md"));
    for (String stem :
        List.of(
            "trade-output-margin",
            "trade-correction",
            "trade-material",
            "trade-yield",
            "convergence")) {
      expected.add(stem + ".png");
      expected.add(stem + ".svg");
    }
    for (int rank = 1; rank <= 5; rank++) {
      for (String file :
          List.of(
              "sheet.md",
              "sheet.html",
              "level.png",
              "level.svg",
              "loudest.png",
              "loudest.svg",
              "impedance.png",
              "impedance.svg",
              "excursion.png",
              "excursion.svg")) {
        expected.add("woofer-" + rank + "/" + file);
      }
      expected.add("woofer-" + rank + "/window.svg");
      for (String ending : List.of(".html", "-a4.pdf", "-letter.pdf")) {
        expected.add("woofer-" + rank + "/brief-" + rank + ending);
      }
    }
    assertThat(FILES.keySet()).containsExactlyInAnyOrderElementsOf(expected);
  }

  @Test
  void filesMadeOnSeveralThreadsAreTheSame() {
    Map<String, byte[]> parallel = new ConcurrentHashMap<>();
    DesignReport.parts(SPEC, OUTCOME, InventedRun.INFO).entrySet().parallelStream()
        .forEach(part -> parallel.put(part.getKey(), part.getValue().get()));
    assertThat(parallel.keySet()).isEqualTo(FILES.keySet());
    FILES.forEach((path, bytes) -> assertThat(parallel.get(path)).as(path).isEqualTo(bytes));
  }

  @Test
  void linksOfThePagesLeadToFiles() {
    Pattern markdown = Pattern.compile("\\]\\(([^)]*)\\)");
    FILES.keySet().stream()
        .filter(path -> path.endsWith(".md"))
        .forEach(
            path -> {
              String folder = path.substring(0, path.lastIndexOf('/') + 1);
              Matcher link = markdown.matcher(text(path));
              int links = 0;
              while (link.find()) {
                assertThat(FILES).containsKey(folder + link.group(1));
                links++;
              }
              assertThat(links).as(path).isGreaterThanOrEqualTo(4);
            });
    Matcher href = Pattern.compile("href=\"([^\"]*)\"").matcher(text("index.html"));
    while (href.find()) {
      assertThat(FILES).containsKey(href.group(1));
    }
    assertThat(text("index.html")).contains("woofer-5/sheet.html");
  }

  @Test
  void picturesOnOnePageKeepTheirNamesApart() {
    Matcher id = Pattern.compile(" id=\"([^\"]*)\"").matcher(text("woofer-1/sheet.html"));
    List<String> names = new ArrayList<>();
    while (id.find()) {
      names.add(id.group(1));
    }
    assertThat(names).hasSizeGreaterThanOrEqualTo(4).doesNotHaveDuplicates();
  }

  @Test
  void noMoreThanFiveSheets() {
    List<Assessment> many = new ArrayList<>(OUTCOME.ranked());
    many.addAll(OUTCOME.ranked());
    SearchOutcome outcome =
        new SearchOutcome(many, OUTCOME.front(), 10, 1, 0, OUTCOME.history(), "the time was up", 1);
    assertThat(DesignReport.parts(SPEC, outcome, InventedRun.INFO).keySet())
        .isEqualTo(FILES.keySet());
  }

  @Test
  void aSearchWithoutResultStillHasAnIndex() {
    SearchOutcome nothing =
        new SearchOutcome(List.of(), List.of(), 10, 1, 0, List.of(), "interrupted", 1);
    SortedMap<String, byte[]> files = DesignReport.files(SPEC, nothing, InventedRun.INFO);
    assertThat(files.keySet()).containsExactly("index.html", "index.md");
    assertThat(new String(files.get("index.md"), StandardCharsets.UTF_8))
        .contains("No woofer was found");
  }

  @Test
  void runInfoChecksItsDigest() {
    assertThatThrownBy(() -> new RunInfo("xyz", 1, "0.1.0"))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("hexadecimal");
    assertThat(InventedRun.INFO.shortDigest()).isEqualTo("0123456789ab");
  }

  private static String text(String path) {
    return new String(FILES.get(path), StandardCharsets.UTF_8);
  }
}

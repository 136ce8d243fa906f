package nullplane.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import nullplane.scoring.DesignSpec;
import nullplane.search.SearchOutcome;
import org.junit.jupiter.api.Test;

class TerminalSummaryTest {
  private static String summary(DesignSpec spec, boolean colour) {
    return TerminalSummary.of(
        spec, InventedRun.outcome(spec), InventedRun.INFO, "results/village-hall", colour);
  }

  @Test
  void noLineIsWiderThanATerminal() {
    DesignSpec spec =
        InventedRun.spec(
            "A title that goes on and on ".repeat(5),
            "a stack with a name that nobody would give it, " + "but somebody does ".repeat(4),
            "pair",
            "x".repeat(200));
    summary(spec, false)
        .lines()
        .forEach(line -> assertThat(line.length()).as(line).isLessThanOrEqualTo(80));
  }

  @Test
  void fiveFiguresFirstFilesLast() {
    List<String> all = summary(InventedRun.spec(), false).lines().toList();
    // before them stands only what concerns the whole run, here that no woofer meets the corridor
    int first = all.indexOf("Woofer 1, best of the run");
    assertThat(all.get(0)).startsWith("No ranked woofer meets the corridor in every stack");
    assertThat(first).isPositive();
    List<String> lines = all.subList(first, all.size());
    assertThat(lines.get(1)).startsWith("  Level deviation, rms").contains("1.23 dB");
    assertThat(String.join("\n", lines.subList(1, 7)))
        .contains("Loudest-level margin")
        .contains("Correction needed")
        .contains("Least load")
        .contains("Mass left for the cone");
    assertThat(lines.get(lines.size() - 1)).isEqualTo("Files: results/village-hall");
    assertThat(lines.get(lines.size() - 2))
        .isEqualTo("Village hall: spec 0123456789ab, seed 42, version 0.1.0");
  }

  @Test
  void everyStackAndWooferHasItsRow() {
    String text = summary(InventedRun.spec(), false);
    for (String start : List.of("single", "pair", "four", "Woofer 2 ", "Woofer 5 ")) {
      assertThat(text.lines()).as(start).anyMatch(line -> line.startsWith(start));
    }
    assertThat(text).contains("stack single misses by 0.76 dB at");
    assertThat(text).contains("rms dB").contains("ohm").contains("Hz").contains("mm");
  }

  @Test
  void colourOnlyWhenAsked() {
    assertThat(summary(InventedRun.spec(), false)).doesNotContain("\u001b");
    String coloured = summary(InventedRun.spec(), true);
    assertThat(coloured).contains("\u001b[1mWoofer 1");
    assertThat(coloured.replaceAll("\u001b\\[[01]m", ""))
        .isEqualTo(summary(InventedRun.spec(), false));
  }

  @Test
  void namesCannotSteerTheTerminal() {
    DesignSpec spec = InventedRun.spec("t\u001b]0;x\u0007", "\u001b[2Jsingle", "pair", "four");
    assertThat(summary(spec, false)).doesNotContain("\u001b").doesNotContain("\u0007");
  }

  @Test
  void aSearchWithoutResultSaysWhatToDo() {
    DesignSpec spec = InventedRun.spec();
    SearchOutcome nothing =
        new SearchOutcome(List.of(), List.of(), 10, 1, 0, List.of(), "stopped", 1);
    String text = TerminalSummary.of(spec, nothing, InventedRun.INFO, "results/x", false);
    assertThat(text).startsWith("No woofer was found").endsWith("Files: results/x\n");
  }
}

package nullplane.validation;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** The page of comparisons as text: written from rows, and read back into rows. */
final class ValidationPage {
  private static final Pattern SOURCE = Pattern.compile("(\\d+)\\. (.*) Test: `(\\w+)`\\.");
  private static final String HEAD =
      "| source | what | expected | computed | deviation | allowed |";

  /** A chapter of the page and the packages whose tests stand in it. */
  enum Subject {
    AIR("Air and units", "units io", "Properties of air, and the units that a spec may use."),
    DRIVER(
        "Driver parameters",
        "driver",
        "Small-signal parameters, completion of data sheets, heat, travel and rated impedance."),
    MOTOR("Windings and motor", "motor", "Coils of stock wire, flux and magnet."),
    NETWORK(
        "Networks",
        "network",
        "Preferred values, air-core coils, alignments, and branches against nodal analysis."),
    ACOUSTICS(
        "Acoustics of panels",
        "acoustics",
        "The panel solver against closed forms, conservation laws and two independent solutions."
            + " \"Computed\" comes from the usual accuracy, on two grids."),
    SCORING(
        "Stacks, sums and limits",
        "scoring",
        "Whole stacks against circuits and sums that the tests write out for themselves."),
    JUDGING(
        "Comparison of woofers", "judging", "Shares of parameters, and how a cone comes to rest."),
    FIT("Fit of impedance sweeps", "fit", "Fits of computed sweeps whose parameters are known."),
    TOLERANCE(
        "Tolerances and inspection",
        "tolerance",
        "Chance, sensitivities, windows and sampling plans. Draws are seeded, so they do not change."),
    SAMPLE("Samples and briefs", "sample", "Test conditions of a brief, and what rounds teach."),
    CAUTIONS("Cautions", "report", "Figures behind the cautions of the sheets."),
    SEARCH(
        "Search",
        "search",
        "Problems whose best fronts are known. A front found is at best as large as the known one."
            + " Where a figure hangs on chance, no deviation is stated.");

    private final String title;
    private final List<String> packages;
    private final String about;

    Subject(String title, String packages, String about) {
      this.title = title;
      this.packages = List.of(packages.split(" "));
      this.about = about;
    }
  }

  private ValidationPage() {}

  /** A row as a page has it: its source and its cells. */
  record Printed(String testClass, String source, List<String> cells) {
    String key() {
      return testClass + ": " + cells.get(0);
    }
  }

  /**
   * Writes the page.
   *
   * @param rows all rows in order
   * @param packageOf last part of the package name of each test class
   */
  static String write(List<Row> rows, Map<String, String> packageOf) {
    StringBuilder page = new StringBuilder();
    page.append(
        """
        # What the numbers are checked against

        Every line below is a comparison with something outside the program: a published value, a
        standard, a closed form, or an independent calculation. There are %d of them. The tests make them
        on every build and this page is written from the tests, so the two cannot differ.

        *Expected* is what the source says. *Computed* is what the program's own code gives for the same
        case. *Deviation* is the distance between them and *allowed* the largest one that the test lets
        pass: a unit or so of the last printed digit where the source prints few digits, the known error of
        the method elsewhere. Where a line stands for a set of values, its worst case is shown.

        Row names such as TS08 are those of `src/test/resources/reference/handbook_checks.csv`. Figures
        marked "recalled from memory" were not read again in the source; what could be recomputed from the
        stated inputs was. A comparison shows that formulas and code agree with their sources. It does not
        show that a real panel is rigid or a real cone stiff: a measured sample does that.
        """
            .formatted(rows.size()));
    for (Subject subject : Subject.values()) {
      Map<String, List<Row>> bySource = new LinkedHashMap<>();
      for (Row row : rows) {
        if (subject.packages.contains(packageOf.get(row.testClass()))) {
          String source = row.source() + " Test: `" + row.testClass() + "`.";
          bySource.computeIfAbsent(source, key -> new ArrayList<>()).add(row);
        }
      }
      if (!bySource.isEmpty()) {
        chapter(subject, bySource, page);
      }
    }
    return page.toString();
  }

  private static void chapter(
      Subject subject, Map<String, List<Row>> bySource, StringBuilder page) {
    page.append("\n## ").append(subject.title).append("\n\n").append(subject.about);
    page.append("\n\n").append(HEAD).append("\n|---:|---|---:|---:|---:|---:|\n");
    int number = 0;
    for (List<Row> rows : bySource.values()) {
      number++;
      for (Row row : rows) {
        page.append("| ").append(number).append(line(row.cells())).append('\n');
      }
    }
    page.append("\nSources:\n\n");
    number = 0;
    for (String source : bySource.keySet()) {
      number++;
      page.append(number).append(". ").append(source).append('\n');
    }
  }

  private static String line(List<String> cells) {
    return cells.stream()
        .map(cell -> cell.replace("|", "\\|"))
        .collect(Collectors.joining(" | ", " | ", " |"));
  }

  /** Reads the rows of a page. */
  static List<Printed> read(String page) {
    List<Printed> rows = new ArrayList<>();
    List<List<String>> chapter = new ArrayList<>();
    for (String text : page.lines().toList()) {
      Matcher source = SOURCE.matcher(text);
      if (source.matches()) {
        for (List<String> cells : chapter) {
          if (cells.get(0).equals(source.group(1))) {
            rows.add(new Printed(source.group(3), source.group(2), cells.subList(1, cells.size())));
          }
        }
      } else if (text.startsWith("## ")) {
        chapter.clear();
      } else if (isRow(text)) {
        List<String> cells = new ArrayList<>();
        for (String cell : text.substring(2, text.length() - 2).split(" \\| ", -1)) {
          cells.add(cell.replace("\\|", "|"));
        }
        chapter.add(List.copyOf(cells));
      }
    }
    return rows;
  }

  /** The page without its rows. */
  static List<String> frame(String page) {
    return page.lines().filter(text -> !isRow(text)).toList();
  }

  private static boolean isRow(String text) {
    return text.startsWith("| ") && !text.equals(HEAD);
  }
}

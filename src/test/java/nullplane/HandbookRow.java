package nullplane;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import nullplane.validation.Check;
import nullplane.validation.Validation;

/**
 * One row of reference/handbook_checks.csv. Checks state their figures beside the assertion and
 * take them through {@link #figure}, which fails if the table says something else.
 */
public final class HandbookRow {
  private static final String TABLE = "/reference/handbook_checks.csv";
  private final String id;
  private final List<String> cells;

  private HandbookRow(String id, List<String> cells) {
    this.id = id;
    this.cells = cells;
  }

  /** Returns the row with an id; fails if there is none. */
  public static HandbookRow of(String id) {
    try (InputStream stream =
        Objects.requireNonNull(HandbookRow.class.getResourceAsStream(TABLE), TABLE)) {
      return new String(stream.readAllBytes(), StandardCharsets.UTF_8)
          .lines()
          .filter(line -> line.startsWith(id + ","))
          .findFirst()
          .map(line -> new HandbookRow(id, split(line)))
          .orElseThrow(() -> new AssertionError(TABLE + " has no row " + id));
    } catch (IOException problem) {
      throw new AssertionError(TABLE, problem);
    }
  }

  /** Returns a figure that stands as a whole number token in the row's inputs or expectation. */
  public double figure(String text) {
    String quoted = java.util.regex.Pattern.quote(text);
    assertThat(cells.get(2) + " ; " + cells.get(3))
        .as("row %s states %s", id, text)
        .containsPattern("(?<![0-9.])" + quoted + "(?![0-9]|[.][0-9])");
    return Double.parseDouble(text);
  }

  /** Starts a comparison that bears the row's id and source; see {@link Validation#check}. */
  public Check check(String title) {
    String source =
        cells.get(5).substring(0, 1).toUpperCase(Locale.ROOT) + cells.get(5).substring(1);
    return Validation.check(id + ": " + title, source + " (row " + id + ", " + cells.get(6) + ").");
  }

  /** Returns the expectation as whole numbers parted by spaces. */
  public List<Integer> wholeNumbers() {
    return List.of(cells.get(3).split(" ")).stream().map(Integer::valueOf).toList();
  }

  private static List<String> split(String line) {
    List<String> cells = new ArrayList<>();
    StringBuilder cell = new StringBuilder();
    boolean quoted = false;
    for (char c : line.toCharArray()) {
      if (c == '"') {
        quoted = !quoted;
      } else if (c == ',' && !quoted) {
        cells.add(cell.toString());
        cell.setLength(0);
      } else {
        cell.append(c);
      }
    }
    cells.add(cell.toString());
    return cells;
  }
}

package nullplane.validation;

import java.util.List;

/**
 * One line of the page.
 *
 * @param testClass simple name of the class that compares
 * @param source where the expected value comes from
 * @param title what is compared
 * @param expected what the source says
 * @param computed what the program says, as printed; then other texts that the last bits may give
 * @param deviation how far apart, as printed; then other texts that the last bits may give
 * @param allowed the largest deviation that the test lets pass
 */
record Row(
    String testClass,
    String source,
    String title,
    String expected,
    List<String> computed,
    List<String> deviation,
    String allowed) {

  /** Tells one row from all others. */
  String key() {
    return testClass + ": " + title;
  }

  /** The cells of the page, first to last. */
  List<String> cells() {
    return List.of(title, expected, computed.get(0), deviation.get(0), allowed);
  }

  /** Whether the cells of a page say the same, but for what the last bits may change. */
  boolean saidBy(String pageSource, List<String> cells) {
    return pageSource.equals(source)
        && cells.get(1).equals(expected)
        && computed.contains(cells.get(2))
        && deviation.contains(cells.get(3))
        && cells.get(4).equals(allowed);
  }
}

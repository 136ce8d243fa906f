package nullplane.validation;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.junit.jupiter.api.Tag;

/** The rows of all comparisons that this machine has made since it started. */
final class Recorder {
  private static final Map<String, Row> ROWS = new ConcurrentHashMap<>();

  private Recorder() {}

  static void add(Row row) {
    Row earlier = ROWS.putIfAbsent(row.key(), row);
    if (earlier != null && !earlier.saidBy(row.source(), row.cells())) {
      throw new AssertionError("two comparisons have one name: " + row.key());
    }
  }

  /** All rows by class, then by title, numbers in their order. */
  static List<Row> rows() {
    return ROWS.values().stream()
        .sorted(
            Comparator.comparing(Row::testClass)
                .thenComparing(row -> sortable(row.title()))
                .thenComparing(Row::title))
        .toList();
  }

  /** Pads the numbers of a title, so that 20 comes before 100. */
  private static String sortable(String title) {
    return java.util.regex.Pattern.compile("\\d+(\\.\\d+)?")
        .matcher(title)
        .replaceAll(
            number ->
                String.format(
                    java.util.Locale.ROOT, "%020.6f", Double.parseDouble(number.group())));
  }

  /** The reference test that is running. */
  static String testClass() {
    return StackWalker.getInstance(StackWalker.Option.RETAIN_CLASS_REFERENCE)
        .walk(
            frames ->
                frames
                    .map(frame -> (Class<?>) frame.getDeclaringClass().getNestHost())
                    .filter(Recorder::isReference)
                    .findFirst())
        .map(Class::getSimpleName)
        .orElseThrow(() -> new AssertionError("only a test tagged reference records comparisons"));
  }

  static boolean isReference(Class<?> type) {
    Tag tag = type.getAnnotation(Tag.class);
    return tag != null && tag.value().equals("reference");
  }
}

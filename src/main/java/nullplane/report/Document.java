package nullplane.report;

import java.util.List;

/**
 * A page of text, tables and pictures, before it becomes Markdown or HTML. All texts are plain:
 * whatever looks like markup in them is shown as it is.
 *
 * @param title the page's title
 * @param blocks what stands on it
 * @param foot one line at its end that tells two prints apart
 */
record Document(String title, List<Block> blocks, String foot) {
  Document {
    blocks = List.copyOf(blocks);
  }

  /** One part of a page. */
  sealed interface Block permits Heading, Paragraph, Bullets, Table, Figure, Link {}

  /** A heading of level 2 or 3; the page's title is level 1. In print it may start a page. */
  record Heading(int level, String text, boolean startsPage) implements Block {
    Heading(int level, String text) {
      this(level, text, false);
    }
  }

  /** A paragraph; the verdict is set off. */
  record Paragraph(String text, boolean verdict) implements Block {
    Paragraph(String text) {
      this(text, false);
    }
  }

  /** A list of sentences. */
  record Bullets(List<String> items) implements Block {
    Bullets {
      items = List.copyOf(items);
    }
  }

  /**
   * A table. Empty cells become "not determined".
   *
   * @param head column heads
   * @param rows cells
   * @param numeric whether a column is set flush right
   * @param widths width of each column in percent; empty to leave it to the page
   */
  record Table(
      List<String> head, List<List<String>> rows, List<Boolean> numeric, List<Integer> widths)
      implements Block {
    Table(List<String> head, List<List<String>> rows, List<Boolean> numeric) {
      this(head, rows, numeric, List.of());
    }

    Table {
      widths = List.copyOf(widths);
      head = List.copyOf(head);
      numeric = List.copyOf(numeric);
      int columns = head.size();
      rows =
          rows.stream()
              .map(
                  row ->
                      row.stream()
                          .map(cell -> cell.isBlank() ? Figures.NOT_DETERMINED : cell)
                          .toList())
              .toList();
      if (!widths.isEmpty() && widths.size() != columns) {
        throw new IllegalArgumentException("table widths differ in number from the head");
      }
      if (numeric.size() != columns || rows.stream().anyMatch(row -> row.size() != columns)) {
        throw new IllegalArgumentException("table rows differ in length from the head");
      }
    }
  }

  /**
   * A picture in its own file next to the page.
   *
   * @param path relative path of the SVG
   * @param caption what it shows
   */
  record Figure(String path, String caption) implements Block {}

  /** A link to another page of the run, on a line of its own. */
  record Link(String path, String text) implements Block {}
}

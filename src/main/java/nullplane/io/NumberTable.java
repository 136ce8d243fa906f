package nullplane.io;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Pattern;

/**
 * A plain text table of numbers: columns parted by commas, semicolons, tabs or blanks; comment
 * lines; lines of words above the first row. Where semicolons, tabs or blanks part the columns,
 * numbers may have a decimal comma.
 */
final class NumberTable {
  /** More rows than this are no sweep. */
  static final int MOST_LINES = 50_000;

  private static final String WRITE = "write one row as: 20.0; 6.13; 24.5";
  private static final String NUMBER = "[+-]?(?:\\d+\\.?\\d*|\\.\\d+)(?:[eE][+-]?\\d{1,2})?";
  private static final String COMMA_NUMBER = "[+-]?(?:\\d+,?\\d*|,\\d+)(?:[eE][+-]?\\d{1,2})?";
  private static final Pattern POINTED = Pattern.compile(NUMBER);
  private static final Pattern COMMAED = Pattern.compile(COMMA_NUMBER);
  private static final Pattern WITH_COMMA = Pattern.compile("[+-]?\\d*,\\d+(?:[eE][+-]?\\d{1,2})?");
  private static final Pattern NOT_FINITE = Pattern.compile("(?i)[+-]?(nan|inf|infinity|#n/a|-)");
  private static final Pattern START =
      Pattern.compile("[+-]?[.,]?\\d[\\d.,]*(?:[eE][+-]?\\d{1,2})?(?:[\\s;,].*)?");
  private static final Pattern COMMENT = Pattern.compile("(?:[#%*!;'].*|//.*|--.*)");

  /** How columns are parted. */
  enum Parting {
    SEMICOLON(";"),
    COMMA(","),
    BLANK("\\s+");

    private final Pattern pattern;

    Parting(String pattern) {
      this.pattern = Pattern.compile(pattern);
    }

    List<String> cells(String line) {
      // blanks are stripped, not matched: many of them before a mark would be tried over and over
      List<String> cells = new ArrayList<>();
      for (String cell : pattern.split(line.strip(), -1)) {
        cells.add(cell.strip());
      }
      if (cells.size() > 1 && cells.get(cells.size() - 1).isEmpty()) {
        cells.remove(cells.size() - 1); // a separator at the end of the line
      }
      return cells;
    }
  }

  /** A row and where it stands. */
  record Row(int line, List<Double> values, String text) {
    Row {
      values = List.copyOf(values);
    }
  }

  /** A line that is not a row. */
  record Line(int number, String text) {}

  private final List<Row> rows = new ArrayList<>();
  private final List<Line> heads = new ArrayList<>();
  private final List<Line> comments = new ArrayList<>();
  private final Parting parting;

  private NumberTable(Parting parting) {
    this.parting = parting;
  }

  /**
   * Reads a table; every fault goes to the list.
   *
   * @throws nullplane.faults.InvalidInputException if nothing can be made of the file at all
   */
  static NumberTable of(InputText input, FaultList faults) {
    List<Line> data = new ArrayList<>();
    List<Line> heads = new ArrayList<>();
    List<Line> comments = new ArrayList<>();
    List<String> lines = input.text().lines().toList();
    if (lines.size() > MOST_LINES) {
      throw FaultList.fatal(
          input.fileName(),
          MOST_LINES + 1,
          "",
          "the file has too many lines",
          MOST_LINES + " at most",
          "a sweep needs some hundred points");
    }
    for (int i = 0; i < lines.size(); i++) {
      String text = lines.get(i).replace("\"", "").replace('\u2212', '-').strip();
      if (text.isEmpty()) {
        continue;
      }
      Line line = new Line(i + 1, text);
      if (START.matcher(text).matches()) {
        data.add(line);
      } else if (COMMENT.matcher(text).matches()) {
        if (data.isEmpty()) {
          comments.add(line);
        }
      } else if (data.isEmpty()) {
        heads.add(line);
      } else {
        faults.add(
            i + 1,
            "",
            text,
            "this is not a row of numbers",
            "",
            "put # in front of it, or delete it");
      }
    }
    if (data.isEmpty()) {
      throw FaultList.fatal(
          input.fileName(),
          0,
          "",
          "no row of numbers was found",
          "columns of frequency, magnitude and phase",
          WRITE);
    }
    NumberTable table = new NumberTable(parting(data));
    table.heads.addAll(heads);
    table.comments.addAll(comments);
    table.readRows(data, input.fileName(), faults);
    return table;
  }

  private static Parting parting(List<Line> data) {
    if (data.stream().anyMatch(line -> line.text().indexOf(';') >= 0)) {
      return Parting.SEMICOLON;
    }
    boolean blanks =
        data.stream()
            .allMatch(
                line -> {
                  List<String> cells = Parting.BLANK.cells(line.text());
                  return cells.size() > 1
                      && cells.stream()
                          .allMatch(
                              cell -> cell.indexOf(',') < 0 || WITH_COMMA.matcher(cell).matches());
                });
    boolean commas = data.stream().anyMatch(line -> line.text().indexOf(',') >= 0);
    return blanks || !commas ? Parting.BLANK : Parting.COMMA;
  }

  private void readRows(List<Line> data, String file, FaultList faults) {
    boolean points = false;
    boolean commas = false;
    int columns = parting.cells(data.get(0).text()).size();
    for (Line line : data) {
      for (String cell : parting.cells(line.text())) {
        points |= cell.indexOf('.') >= 0;
        commas |= cell.indexOf(',') >= 0;
      }
    }
    if (points && commas) {
      Line first =
          data.stream().filter(l -> l.text().indexOf(',') >= 0).findFirst().orElse(data.get(0));
      throw FaultList.fatal(
          file,
          first.number(),
          first.text(),
          "points and commas are mixed in the numbers",
          "one decimal mark, no thousands marks",
          "write 1234.5");
    }
    if (parting == Parting.COMMA && !points && columns >= 4 && columns % 2 == 0) {
      throw FaultList.fatal(
          file,
          data.get(0).number(),
          data.get(0).text(),
          "commas may part columns or be decimal marks here",
          "",
          WRITE);
    }
    Pattern number = commas ? COMMAED : POINTED;
    for (Line line : data) {
      List<String> cells = parting.cells(line.text());
      if (cells.size() != columns) {
        faults.add(
            line.number(),
            "",
            line.text(),
            "the row has " + cells.size() + " columns, the first has " + columns,
            "",
            "give every row the same columns");
        continue;
      }
      List<Double> values = new ArrayList<>();
      for (String cell : cells) {
        double value =
            number.matcher(cell).matches()
                ? Double.parseDouble(cell.replace(',', '.'))
                : NOT_FINITE.matcher(cell).matches() ? Double.NaN : Double.POSITIVE_INFINITY;
        if (Double.isInfinite(value)) {
          faults.add(line.number(), "", cell, "this is not a number", "", WRITE);
          values.clear();
          break;
        }
        values.add(value);
      }
      if (!values.isEmpty()) {
        rows.add(new Row(line.number(), values, line.text()));
      }
    }
  }

  List<Row> rows() {
    return List.copyOf(rows);
  }

  /** Returns the lines of words above the first row. */
  List<Line> heads() {
    return List.copyOf(heads);
  }

  /** Returns the comments above the first row. */
  List<Line> comments() {
    return List.copyOf(comments);
  }

  /** Returns the names in a head line, split as the columns are. */
  List<String> names(String head, int columns) {
    List<String> cells = parting.cells(head);
    if (parting == Parting.BLANK && cells.size() != columns) {
      List<String> wide = Arrays.asList(head.strip().split("\\t+|\\s{2,}", -1));
      if (wide.size() == columns) {
        return List.copyOf(wide);
      }
      for (String mark : List.of(";", ",")) {
        String[] marked = head.strip().split(mark, -1);
        if (marked.length == columns) {
          return Arrays.stream(marked).map(String::strip).toList();
        }
      }
      return withUnits(cells);
    }
    return List.copyOf(cells);
  }

  /** Joins a bracketed unit to the name before it. */
  private static List<String> withUnits(List<String> cells) {
    List<String> joined = new ArrayList<>();
    for (String cell : cells) {
      boolean unit = cell.startsWith("[") || cell.startsWith("(");
      if (unit && !joined.isEmpty()) {
        joined.set(joined.size() - 1, joined.get(joined.size() - 1) + " " + cell);
      } else {
        joined.add(cell);
      }
    }
    return List.copyOf(joined);
  }
}

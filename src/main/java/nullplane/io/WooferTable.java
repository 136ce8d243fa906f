package nullplane.io;

import com.fasterxml.jackson.databind.MappingIterator;
import com.fasterxml.jackson.dataformat.csv.CsvMapper;
import com.fasterxml.jackson.dataformat.csv.CsvParser;
import com.fasterxml.jackson.dataformat.csv.CsvSchema;
import java.io.IOException;
import java.text.DecimalFormatSymbols;
import java.util.ArrayList;
import java.util.IllformedLocaleException;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import nullplane.faults.InvalidInputException;

/**
 * Reads a table of woofers: one row each, the keys of a woofer's YAML file in the header with their
 * units, as "fs [Hz]". Columns stand in any order; comma, semicolon or tab separates them; an empty
 * cell states nothing; lines before the header that begin with # are remarks. A remark of the form
 * "locale: de" makes the decimal mark that of the locale.
 *
 * <p>Source: RFC 4180 for rows and quotes.
 */
final class WooferTable {
  /** Most rows that are read. */
  static final int MOST_ROWS = 20_000;

  private static final Pattern HEADING = Pattern.compile("([a-z0-9-]+)\\s*(?:\\[([^\\[\\]]*)\\])?");
  private static final Pattern LOCALE = Pattern.compile("#\\s*locale:\\s*(\\S+)\\s*");
  private static final List<String> TEXTS = List.of("name", "mounting");

  /** One row as a block of keys. */
  record Row(int line, YamlNode.Mapping keys) {}

  /** A column: a key, and the unit that its cells leave out. */
  private record Column(String key, String unit) {}

  private final InputText input;
  private final FaultList faults;
  private final List<String> lines;
  private char decimalMark = '.';

  private WooferTable(InputText input) {
    this.input = input;
    this.faults = new FaultList(input.fileName());
    this.lines = input.text().lines().toList();
  }

  /**
   * Reads the rows of a table.
   *
   * @param input the file
   * @param known the keys a column may have
   * @throws InvalidInputException if the header is wrong, with all its faults
   */
  static List<Row> rows(InputText input, List<String> known) {
    return new WooferTable(input).read(known);
  }

  private List<Row> read(List<String> known) {
    int headerAt = 0;
    while (headerAt < lines.size() && isRemark(lines.get(headerAt))) {
      takeLocale(lines.get(headerAt), headerAt + 1);
      headerAt++;
    }
    if (headerAt == lines.size()) {
      throw noHeader();
    }
    List<String[]> cells = new ArrayList<>();
    List<Integer> numbers = new ArrayList<>();
    split(headerAt, cells, numbers);
    if (cells.isEmpty()) {
      throw noHeader();
    }
    List<Optional<Column>> columns = columns(cells.get(0), headerAt + 1, known);
    faults.throwIfAny();
    List<Row> rows = new ArrayList<>();
    for (int i = 1; i < cells.size(); i++) {
      rows.add(row(cells.get(i), numbers.get(i), columns));
    }
    if (rows.isEmpty()) {
      throw FaultList.fatal(
          input.fileName(), headerAt + 1, "", "the table has no rows", "1 or more", "add a woofer");
    }
    return rows;
  }

  private InvalidInputException noHeader() {
    return FaultList.fatal(
        input.fileName(),
        0,
        "",
        "the table has no header",
        "a first row of keys with units",
        "write name,nominal [mm],sd [cm2],re [ohm],fs [Hz],qms,qes,mms [g],travel [mm]");
  }

  private static boolean isRemark(String line) {
    return line.isBlank() || line.stripLeading().startsWith("#");
  }

  private void takeLocale(String line, int number) {
    Matcher matcher = LOCALE.matcher(line);
    if (!matcher.matches()) {
      return;
    }
    try {
      Locale locale = new Locale.Builder().setLanguageTag(matcher.group(1)).build();
      decimalMark = DecimalFormatSymbols.getInstance(locale).getDecimalSeparator();
    } catch (IllformedLocaleException e) {
      faults.add(
          number,
          "locale",
          Excerpt.of(matcher.group(1)),
          "this is no locale",
          "a language tag of BCP 47, as de or fr-CH",
          "write # locale: de");
    }
  }

  /** The mark that separates columns: the first of tab, semicolon, comma that the header holds. */
  private static char separatorOf(String header) {
    return header.indexOf('\t') >= 0 ? '\t' : header.indexOf(';') >= 0 ? ';' : ',';
  }

  private void split(int headerAt, List<String[]> cells, List<Integer> numbers) {
    CsvSchema schema =
        CsvSchema.emptySchema().withColumnSeparator(separatorOf(lines.get(headerAt)));
    String text = String.join("\n", lines.subList(headerAt, lines.size())) + "\n";
    CsvMapper mapper = new CsvMapper();
    try (MappingIterator<String[]> rows =
        mapper
            .readerFor(String[].class)
            .with(CsvParser.Feature.WRAP_AS_ARRAY)
            .with(CsvParser.Feature.TRIM_SPACES)
            .with(CsvParser.Feature.SKIP_EMPTY_LINES)
            .with(schema)
            .readValues(text)) {
      while (rows.hasNextValue()) {
        int line = headerAt + rows.getCurrentLocation().getLineNr();
        String[] row = rows.nextValue();
        if (row.length > 0 && row[0].startsWith("#")) {
          continue;
        }
        cells.add(row);
        numbers.add(line);
        if (cells.size() > MOST_ROWS + 1) {
          throw FaultList.fatal(
              input.fileName(),
              line,
              "",
              "the table is too long",
              "1 to " + MOST_ROWS + " rows",
              "split the file");
        }
      }
    } catch (IOException e) {
      throw FaultList.fatal(
          input.fileName(),
          headerAt + 1,
          "",
          "the rows cannot be told apart: " + Excerpt.of(String.valueOf(e.getMessage())),
          "columns separated by comma, semicolon or tab; quotes in pairs",
          "look for a lone quotation mark");
    }
  }

  private List<Optional<Column>> columns(String[] header, int line, List<String> known) {
    List<Optional<Column>> columns = new ArrayList<>();
    List<String> seen = new ArrayList<>();
    for (String cell : header) {
      Matcher matcher = HEADING.matcher(cell.strip().toLowerCase(Locale.ROOT));
      String key = matcher.matches() ? matcher.group(1) : cell;
      if (!matcher.matches() || !known.contains(key)) {
        faults.add(
            line,
            Excerpt.of(cell),
            "",
            "unknown column",
            String.join(", ", known),
            NearestKey.of(key, known)
                .map(near -> "did you mean " + near + "?")
                .orElse("leave the column out"));
        columns.add(Optional.empty());
      } else if (seen.contains(key)) {
        faults.add(
            line, key, "", "the column stands here twice", "each once", "leave one of them out");
        columns.add(Optional.empty());
      } else {
        seen.add(key);
        // a unit keeps its capitals: mm and Mm differ
        Matcher asWritten = Pattern.compile("\\[([^\\[\\]]*)\\]").matcher(cell);
        columns.add(
            Optional.of(new Column(key, asWritten.find() ? asWritten.group(1).strip() : "")));
      }
    }
    return columns;
  }

  private Row row(String[] cells, int line, List<Optional<Column>> columns) {
    List<YamlNode.Entry> entries = new ArrayList<>();
    for (int c = 0; c < cells.length; c++) {
      String cell = cells[c].strip();
      if (cell.isEmpty()) {
        continue;
      }
      if (c >= columns.size()) {
        entries.add(new YamlNode.Entry(line, "column " + (c + 1), new YamlNode.Scalar(line, cell)));
        break; // one fault says it all
      }
      Column column = columns.get(c).orElseThrow();
      entries.add(
          new YamlNode.Entry(line, column.key(), new YamlNode.Scalar(line, value(cell, column))));
    }
    return new Row(line, new YamlNode.Mapping(line, entries));
  }

  private String value(String cell, Column column) {
    if (TEXTS.contains(column.key())) {
      return cell;
    }
    String number = decimalMark == '.' ? cell : cell.replace(decimalMark, '.');
    return column.unit().isEmpty() ? number : number + " " + column.unit();
  }
}

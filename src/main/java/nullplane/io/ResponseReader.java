package nullplane.io;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import nullplane.faults.InvalidInputException;
import nullplane.units.Curve;

/**
 * Reads a driver's measured response from a plain text table; see {@link NumberTable} for its form.
 * The line of names above the rows, or the last comment there, says what the columns hold; without
 * one they are frequency in Hz, level in dB and phase in degrees.
 */
final class ResponseReader {
  private static final double HIGHEST_HZ = 1e6;
  private static final double LOWEST_DB = -100;
  private static final double HIGHEST_DB = 200;
  private static final double LARGEST_RAD = 1e5;
  private static final String HEADER =
      "write a first line such as: f [Hz]; level [dB]; phase [deg]";
  private static final String CHECK = "check the order of the columns and the unit";

  private static final Set<String> FREQUENCY = Set.of("f", "freq", "frequency", "hz", "khz");
  private static final Set<String> LEVEL =
      Set.of("level", "l", "spl", "db", "dbspl", "mag", "magnitude", "modulus", "response");
  private static final Set<String> PHASE =
      Set.of("phase", "phi", "angle", "arg", "φ", "theta", "deg", "degrees", "rad");
  private static final Set<String> DECIBELS = Set.of("db", "dbspl");
  private static final Set<String> DEGREES = Set.of("deg", "degs", "degree", "degrees", "°");
  private static final Set<String> RADIANS = Set.of("rad", "rads", "radian", "radians");
  private static final Pattern BETWEEN_WORDS = Pattern.compile("[\\s,;:/_()\\[\\]{}=.-]+");
  private static final Pattern COMMENT_MARK = Pattern.compile("^(?:[#%*!;']+|//|--)\\s*");

  private final String file;
  private final FaultList faults;

  private ResponseReader(String file) {
    this.file = file;
    this.faults = new FaultList(file);
  }

  /**
   * A response as it was read.
   *
   * @param frequencyHz frequencies (Hz), rising, two or more
   * @param levelDb levels (dB re 20 uPa)
   * @param phaseRad phases (rad)
   * @param digest SHA-256 of the file's bytes, hexadecimal
   */
  record Response(Curve frequencyHz, Curve levelDb, Curve phaseRad, String digest) {}

  private enum Kind {
    FREQUENCY,
    LEVEL,
    PHASE
  }

  /** Where a quantity stands in a row, and what one unit of it is (Hz, dB, rad). */
  private record Column(int index, double factor) {}

  /**
   * Reads a file.
   *
   * @param path the file
   * @throws InvalidInputException if it is missing, too large, or no response; with every fault
   */
  static Response read(Path path) {
    String name = path.toString();
    if (Files.isDirectory(path)) {
      throw FaultList.fatal(name, 0, "", "this is a folder", "a text table", "name a file in it");
    }
    return of(InputText.bytes(path), name);
  }

  /**
   * Reads the bytes of a file.
   *
   * @param bytes UTF-8
   * @param fileName the file as the user named it
   * @throws InvalidInputException if they are too many or no response; with every fault
   */
  static Response of(byte[] bytes, String fileName) {
    InputText text = InputText.of(bytes, fileName);
    return new ResponseReader(fileName).response(text);
  }

  private Response response(InputText text) {
    NumberTable table = NumberTable.of(text, faults);
    faults.throwIfAny();
    Map<Kind, Column> columns = columns(table);
    List<NumberTable.Row> rows = table.rows();
    double[] hz = new double[rows.size()];
    double[] level = new double[rows.size()];
    double[] phase = new double[rows.size()];
    for (int i = 0; i < rows.size(); i++) {
      NumberTable.Row row = rows.get(i);
      hz[i] = value(row, columns, Kind.FREQUENCY);
      level[i] = value(row, columns, Kind.LEVEL);
      phase[i] = value(row, columns, Kind.PHASE);
      if (!(hz[i] > 0 && hz[i] <= HIGHEST_HZ)) {
        fault(row, "frequency", "the frequency is out of range", "above 0 Hz .. 1 MHz", CHECK);
      } else if (i > 0 && !(hz[i] > hz[i - 1])) {
        fault(
            row,
            "frequency",
            "the frequency does not rise from the row before",
            "rising frequencies, each once",
            "sort the rows");
      }
      if (!(level[i] >= LOWEST_DB && level[i] <= HIGHEST_DB)) {
        fault(row, "level", "the level is out of range", "-100 dB .. 200 dB", CHECK);
      }
      if (!(Math.abs(phase[i]) <= LARGEST_RAD)) {
        fault(row, "phase", "the phase is out of range", "a number of degrees", CHECK);
      }
    }
    if (rows.size() < 2) {
      fault(rows.get(0), "", "one row is no response", "two rows or more", "measure a sweep");
    }
    faults.throwIfAny();
    return new Response(Curve.of(hz), Curve.of(level), Curve.of(phase), text.digest());
  }

  private void fault(NumberTable.Row row, String key, String problem, String allowed, String hint) {
    faults.add(row.line(), key, row.text(), problem, allowed, hint);
  }

  private static double value(NumberTable.Row row, Map<Kind, Column> columns, Kind kind) {
    Column column = columns.get(kind);
    return column == null ? Double.NaN : row.values().get(column.index()) * column.factor();
  }

  private Map<Kind, Column> columns(NumberTable table) {
    NumberTable.Row first = table.rows().get(0);
    int width = first.values().size();
    List<NumberTable.Line> lines = new ArrayList<>(table.comments());
    lines.addAll(table.heads());
    for (int i = lines.size() - 1; i >= 0; i--) {
      NumberTable.Line line = lines.get(i);
      String text = COMMENT_MARK.matcher(line.text()).replaceFirst("");
      Map<Kind, Column> found = named(table.names(text, width), line);
      if (found.containsKey(Kind.FREQUENCY) && found.size() > 1) {
        for (Kind kind : Kind.values()) {
          if (!found.containsKey(kind)) {
            throw headFault(line, "no column holds the " + word(kind));
          }
        }
        if (table.names(text, width).size() != width) {
          throw headFault(line, "the line does not name as many columns as the rows have");
        }
        return found;
      }
    }
    if (width != 3) {
      throw FaultList.fatal(
          file,
          first.line(),
          first.text(),
          "there is no line of names, and the rows have " + width + " columns",
          "3 columns without names: frequency, level, phase",
          HEADER);
    }
    Map<Kind, Column> usual = new EnumMap<>(Kind.class);
    usual.put(Kind.FREQUENCY, new Column(0, 1));
    usual.put(Kind.LEVEL, new Column(1, 1));
    usual.put(Kind.PHASE, new Column(2, SweepColumn.DEGREE));
    return usual;
  }

  private Map<Kind, Column> named(List<String> names, NumberTable.Line line) {
    Map<Kind, Column> found = new EnumMap<>(Kind.class);
    boolean unitMissing = false;
    for (int i = 0; i < names.size(); i++) {
      Set<String> words =
          BETWEEN_WORDS
              .splitAsStream(names.get(i).toLowerCase(Locale.ROOT))
              .filter(word -> !word.isEmpty())
              .collect(Collectors.toSet());
      Optional<Kind> kind = kind(words);
      if (kind.isPresent()) {
        if (found.put(kind.get(), new Column(i, factor(kind.get(), words))) != null) {
          throw headFault(line, "two columns hold the " + word(kind.get()));
        }
        boolean bracket = names.get(i).indexOf('[') >= 0 || names.get(i).indexOf('(') >= 0;
        unitMissing |= bracket && !stated(kind.get(), words);
      }
    }
    if (unitMissing && found.containsKey(Kind.FREQUENCY) && found.size() > 1) {
      throw headFault(line, "a column has a unit that is not read");
    }
    return found;
  }

  private static Optional<Kind> kind(Set<String> words) {
    if (words.stream().anyMatch(PHASE::contains)) {
      return Optional.of(Kind.PHASE);
    }
    if (words.stream().anyMatch(DECIBELS::contains)) {
      return Optional.of(Kind.LEVEL);
    }
    if (words.stream().anyMatch(FREQUENCY::contains)) {
      return Optional.of(Kind.FREQUENCY);
    }
    return words.stream().anyMatch(LEVEL::contains) ? Optional.of(Kind.LEVEL) : Optional.empty();
  }

  private static boolean stated(Kind kind, Set<String> words) {
    return words.stream()
        .anyMatch(
            word ->
                switch (kind) {
                  case FREQUENCY -> word.equals("hz") || word.equals("khz");
                  case LEVEL -> DECIBELS.contains(word);
                  case PHASE -> DEGREES.contains(word) || RADIANS.contains(word);
                });
  }

  private static double factor(Kind kind, Set<String> words) {
    return switch (kind) {
      case FREQUENCY -> words.contains("khz") ? 1e3 : 1;
      case LEVEL -> 1;
      case PHASE -> words.stream().anyMatch(RADIANS::contains) ? 1 : SweepColumn.DEGREE;
    };
  }

  private static String word(Kind kind) {
    return kind.name().toLowerCase(Locale.ROOT);
  }

  private InvalidInputException headFault(NumberTable.Line line, String problem) {
    return FaultList.fatal(
        file,
        line.number(),
        line.text(),
        problem,
        "frequency [Hz], level [dB], phase [deg]",
        HEADER);
  }
}

package nullplane.io;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import nullplane.faults.InvalidInputException;
import nullplane.fit.ImpedanceSweep;
import nullplane.units.Curve;
import nullplane.units.FiniteText;

/**
 * Reads a measured impedance from a plain text table; see {@link NumberTable} for its form. The
 * line of names above the rows, or the last comment there, says what the columns hold and in which
 * units; without one, two columns are frequency and magnitude, three are frequency, magnitude and
 * phase in degrees.
 */
public final class SweepReader {
  private static final double LOWEST_OHM = 0.01;
  private static final double HIGHEST_OHM = 1e5;
  private static final double HIGHEST_HZ = 1e6;
  private static final int MOST_COLUMNS = 100;
  private static final int MOST_PROBLEMS = 4;
  private static final String HEADER = "write a first line such as: f [Hz]; |Z| [ohm]; phase [deg]";

  private final String file;
  private final FaultList faults;
  private final List<String> warnings = new ArrayList<>();

  private SweepReader(String file) {
    this.file = file;
    this.faults = new FaultList(file);
  }

  /** One measured point; phase NaN without one. */
  private record Point(double hz, double ohm, double rad) {}

  /**
   * Reads a file.
   *
   * @param path the file
   * @throws InvalidInputException if it is missing, too large, or not a sweep; with every fault
   */
  public static ReadSweep read(Path path) {
    String name = path.toString();
    if (Files.isDirectory(path)) {
      throw FaultList.fatal(name, 0, "", "this is a folder", "a text table", "name a file in it");
    }
    return of(InputText.bytes(path), name);
  }

  /**
   * Reads the bytes of a file.
   *
   * @param bytes UTF-8, or else ISO 8859-1
   * @param fileName the file as the user named it
   * @throws InvalidInputException if they are too many or not a sweep; with every fault
   */
  public static ReadSweep of(byte[] bytes, String fileName) {
    SweepReader reader = new SweepReader(fileName);
    InputText text = InputText.of(reader.asUtf8(bytes), fileName);
    NumberTable table = NumberTable.of(text, reader.faults);
    reader.faults.throwIfAny();
    return new ReadSweep(reader.sweep(table), reader.warnings, Sha256.hex(bytes));
  }

  /** Bytes that are not UTF-8 are mostly a degree or ohm sign of an older character set. */
  private byte[] asUtf8(byte[] bytes) {
    boolean wide = bytes.length > 1 && (bytes[0] & 0xFE) == 0xFE && (bytes[1] & 0xFE) == 0xFE;
    if (bytes.length > InputText.LARGEST || wide) {
      return bytes; // refused with its own reason
    }
    try {
      StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes));
      return bytes;
    } catch (CharacterCodingException e) {
      warnings.add("the file is not UTF-8 text; it was read as ISO 8859-1");
      return new String(bytes, StandardCharsets.ISO_8859_1).getBytes(StandardCharsets.UTF_8);
    }
  }

  private ImpedanceSweep sweep(NumberTable table) {
    int width = table.rows().get(0).values().size();
    Map<SweepColumn.Kind, Integer> at = new EnumMap<>(SweepColumn.Kind.class);
    List<SweepColumn> columns = columns(table, width);
    for (int i = 0; i < columns.size(); i++) {
      if (columns.get(i).kind() != SweepColumn.Kind.OTHER) {
        at.put(columns.get(i).kind(), i);
      }
    }
    List<Point> points = new ArrayList<>();
    int skipped = 0;
    double widest = 0;
    for (NumberTable.Row row : table.rows()) {
      Optional<Point> point = point(row, columns, at);
      if (point.isEmpty()) {
        skipped++;
      } else {
        points.add(point.get());
        widest = Math.max(widest, Math.abs(point.get().rad()));
      }
    }
    faults.throwIfAny();
    if (skipped > 0) {
      warnings.add(skipped + " rows without a number or at 0 Hz are left out");
    }
    if (points.isEmpty()) {
      throw FaultList.fatal(file, 0, "", "no row holds a whole point", "", HEADER);
    }
    Integer phase = at.get(SweepColumn.Kind.PHASE);
    if (phase != null
        && !columns.get(phase).unitStated()
        && widest <= 1.6 * SweepColumn.DEGREE
        && points.size() > 2) {
      warnings.add(
          "the phase was read in degrees and stays within 1.6; if it is in radians, name"
              + " the column 'phase [rad]'");
    }
    return merged(points);
  }

  private List<SweepColumn> columns(NumberTable table, int width) {
    List<SweepColumn> named = named(table, width);
    if (!named.isEmpty()) {
      return named;
    }
    NumberTable.Row first = table.rows().get(0);
    if (width < 2 || width > 3) {
      throw FaultList.fatal(
          file,
          first.line(),
          first.text(),
          "there is no line of names, and " + width + " columns",
          "2 or 3 columns without names",
          HEADER);
    }
    warnings.add(
        "no line names the columns: read as frequency in Hz, magnitude in ohm"
            + (width == 3 ? ", phase in degrees" : ""));
    List<SweepColumn> columns = new ArrayList<>();
    columns.add(new SweepColumn(SweepColumn.Kind.FREQUENCY, 1, false, ""));
    columns.add(new SweepColumn(SweepColumn.Kind.MAGNITUDE, 1, false, ""));
    if (width == 3) {
      columns.add(new SweepColumn(SweepColumn.Kind.PHASE, SweepColumn.DEGREE, false, ""));
    }
    return columns;
  }

  /** Returns the columns that a head line or comment names; empty if none does. */
  private List<SweepColumn> named(NumberTable table, int width) {
    List<NumberTable.Line> lines = new ArrayList<>(table.comments());
    lines.addAll(table.heads());
    OptionalInt used = OptionalInt.empty();
    List<SweepColumn> found = List.of();
    for (int i = lines.size() - 1; i >= 0 && used.isEmpty(); i--) {
      NumberTable.Line line = lines.get(i);
      String text = line.text().replaceFirst("^(?:[#%*!;']+|//|--)\\s*", "");
      List<String> names = table.names(text, width);
      Optional<List<SweepColumn>> columns =
          names.size() > MOST_COLUMNS ? Optional.empty() : understood(names, line);
      if (columns.isPresent()) {
        used = OptionalInt.of(line.number());
        found = columns.get();
        if (names.size() != width) {
          throw FaultList.fatal(
              file,
              line.number(),
              text,
              "the line names " + names.size() + " columns, the rows have " + width,
              "",
              "name every column, parted as the rows are");
        }
      }
    }
    for (NumberTable.Line head : table.heads()) {
      if (used.isEmpty() || used.getAsInt() != head.number()) {
        warnings.add("line " + head.number() + " is not read: " + Excerpt.of(head.text()));
      }
    }
    return found;
  }

  /** Returns the columns of a line that names a frequency and something else of a sweep. */
  private Optional<List<SweepColumn>> understood(List<String> names, NumberTable.Line line) {
    List<SweepColumn> columns = new ArrayList<>();
    Map<SweepColumn.Kind, String> kinds = new EnumMap<>(SweepColumn.Kind.class);
    List<String> problems = new ArrayList<>();
    for (String name : names) {
      try {
        SweepColumn column = SweepColumn.of(name);
        columns.add(column);
        String before = kinds.put(column.kind(), name);
        if (before != null && column.kind() != SweepColumn.Kind.OTHER) {
          problems.add("two columns hold the " + column.kind().word());
        }
      } catch (SweepColumn.UnknownUnitException e) {
        problems.add(String.valueOf(e.getMessage()));
        columns.add(new SweepColumn(e.kind(), 1, true, name));
        kinds.put(e.kind(), name);
      }
    }
    if (!kinds.containsKey(SweepColumn.Kind.FREQUENCY) || names.size() < 2) {
      return Optional.empty();
    }
    boolean units = columns.stream().anyMatch(SweepColumn::unitStated);
    if (!units && kinds.containsKey(SweepColumn.Kind.OTHER)) {
      return Optional.empty(); // rather a title
    }
    boolean polar = kinds.containsKey(SweepColumn.Kind.MAGNITUDE);
    boolean complex =
        kinds.containsKey(SweepColumn.Kind.REAL) && kinds.containsKey(SweepColumn.Kind.IMAGINARY);
    if (problems.isEmpty() && !polar && !complex) {
      problems.add("the columns name no impedance");
    }
    if (!problems.isEmpty()) {
      throw FaultList.fatal(
          file,
          line.number(),
          line.text(),
          problems.stream().distinct().limit(MOST_PROBLEMS).collect(Collectors.joining("; ")),
          "Hz, kHz; ohm, mohm, kohm; deg, rad",
          HEADER);
    }
    for (SweepColumn column : columns) {
      if (column.kind() == SweepColumn.Kind.OTHER) {
        warnings.add("the column '" + Excerpt.of(column.name()) + "' is left out");
      }
    }
    return Optional.of(columns);
  }

  private Optional<Point> point(
      NumberTable.Row row, List<SweepColumn> columns, Map<SweepColumn.Kind, Integer> at) {
    double hz = value(row, columns, at, SweepColumn.Kind.FREQUENCY);
    double ohm = value(row, columns, at, SweepColumn.Kind.MAGNITUDE);
    double rad = value(row, columns, at, SweepColumn.Kind.PHASE);
    boolean phased = at.containsKey(SweepColumn.Kind.PHASE);
    if (at.containsKey(SweepColumn.Kind.REAL) && at.containsKey(SweepColumn.Kind.IMAGINARY)) {
      double re = value(row, columns, at, SweepColumn.Kind.REAL);
      double im = value(row, columns, at, SweepColumn.Kind.IMAGINARY);
      ohm = Math.hypot(re, im);
      rad = Math.atan2(im, re);
      phased = true;
    }
    if (Double.isNaN(hz) || Double.isNaN(ohm) || (phased && Double.isNaN(rad)) || hz == 0) {
      return Optional.empty();
    }
    if (!(hz > 0 && hz <= HIGHEST_HZ)) {
      faults.add(
          row.line(),
          "frequency",
          row.text(),
          "the frequency is out of range",
          "above 0 Hz .. 1 MHz",
          "check the order of the columns and the unit");
    } else if (!(ohm >= LOWEST_OHM && ohm <= HIGHEST_OHM)) {
      faults.add(
          row.line(),
          "impedance",
          row.text(),
          "the impedance is out of range",
          "0.01 ohm .. 100 kohm",
          "check the order of the columns and the unit");
    }
    return Optional.of(new Point(hz, ohm, rad));
  }

  private static double value(
      NumberTable.Row row,
      List<SweepColumn> columns,
      Map<SweepColumn.Kind, Integer> at,
      SweepColumn.Kind kind) {
    Integer index = at.get(kind);
    return index == null ? Double.NaN : row.values().get(index) * columns.get(index).factor();
  }

  /** Puts points in order and joins those of one frequency. */
  private ImpedanceSweep merged(List<Point> points) {
    boolean ordered = true;
    boolean falling = true;
    for (int i = 1; i < points.size(); i++) {
      ordered &= points.get(i).hz() >= points.get(i - 1).hz();
      falling &= points.get(i).hz() <= points.get(i - 1).hz();
    }
    if (!ordered) {
      warnings.add(
          falling
              ? "the frequencies fall; the rows are read from the end"
              : "the rows are not in order of frequency; they are sorted");
    }
    List<Point> sorted = new ArrayList<>(points);
    sorted.sort(Comparator.comparingDouble(Point::hz));
    int count = 0;
    int joined = 0;
    double worst = 0;
    double[] hz = new double[sorted.size()];
    double[] ohm = new double[sorted.size()];
    double[] rad = new double[sorted.size()];
    boolean phased = !Double.isNaN(sorted.get(0).rad());
    int from = 0;
    while (from < sorted.size()) {
      int to = from;
      double re = 0;
      double im = 0;
      double modulus = 0;
      while (to < sorted.size() && sorted.get(to).hz() == sorted.get(from).hz()) {
        Point p = sorted.get(to++);
        modulus += p.ohm();
        re += p.ohm() * Math.cos(p.rad());
        im += p.ohm() * Math.sin(p.rad());
        worst = Math.max(worst, Math.abs(Math.log(p.ohm() / sorted.get(from).ohm())));
      }
      int times = to - from;
      joined += times - 1;
      hz[count] = sorted.get(from).hz();
      boolean single = times == 1;
      ohm[count] =
          single ? sorted.get(from).ohm() : (phased ? Math.hypot(re, im) : modulus) / times;
      rad[count] = single ? sorted.get(from).rad() : Math.atan2(im, re);
      count++;
      from = to;
    }
    if (joined > 0) {
      warnings.add(
          FiniteText.of(
              "%d rows repeat a frequency; their mean is taken (they differ by up to %.2g %%)",
              joined, 100 * Math.expm1(worst)));
    }
    return new ImpedanceSweep(
        Curve.of(Arrays.copyOf(hz, count)),
        Curve.of(Arrays.copyOf(ohm, count)),
        phased ? Optional.of(Curve.of(Arrays.copyOf(rad, count))) : Optional.empty());
  }
}

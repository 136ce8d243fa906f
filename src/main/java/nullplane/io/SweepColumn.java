package nullplane.io;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What a column of a sweep holds and in which unit, read from its name.
 *
 * @param kind what it holds
 * @param factor what one unit is in SI (Hz, ohm, rad; 1 for a column that is left out)
 * @param unitStated whether the name states the unit
 * @param name the name as written
 */
record SweepColumn(Kind kind, double factor, boolean unitStated, String name) {
  /** What a column can hold. */
  enum Kind {
    FREQUENCY("frequency"),
    MAGNITUDE("magnitude"),
    PHASE("phase"),
    REAL("real part"),
    IMAGINARY("imaginary part"),
    OTHER("other");

    private final String word;

    Kind(String word) {
      this.word = word;
    }

    String word() {
      return word;
    }
  }

  /** Radians per degree. */
  static final double DEGREE = Math.PI / 180;

  private static final Set<String> FREQUENCY = Set.of("f", "freq", "frequency");
  private static final Set<String> PHASE =
      Set.of("phase", "phi", "angle", "arg", "\u03c6", "theta");
  private static final Set<String> REAL = Set.of("re", "real", "r", "resistance");
  private static final Set<String> IMAGINARY = Set.of("im", "imag", "imaginary", "x", "reactance");
  private static final Set<String> MAGNITUDE =
      Set.of("z", "|z|", "mag", "magnitude", "modulus", "impedance", "abs");
  private static final Set<String> DEGREES = Set.of("deg", "degs", "degree", "degrees", "\u00b0");
  private static final Set<String> RADIANS = Set.of("rad", "rads", "radian", "radians");
  private static final Set<String> DECIBELS = Set.of("db", "dbohm");
  private static final Pattern BRACKET = Pattern.compile("[\\[(]([^\\])]*)[\\])]");
  private static final Pattern WORD = Pattern.compile("[^\\s,;:/_()\\[\\]{}=.-]+");

  /** A name that is understood in part only. */
  static final class UnknownUnitException extends Exception {
    private static final long serialVersionUID = 1L;

    private final Kind kind;

    UnknownUnitException(Kind kind) {
      super(kind.word() + " in a unit that is not read");
      this.kind = kind;
    }

    Kind kind() {
      return kind;
    }
  }

  /**
   * Reads a column's name.
   *
   * @throws UnknownUnitException if it names a quantity of a sweep in a unit that is not read
   */
  static SweepColumn of(String name) throws UnknownUnitException {
    List<String> words = words(name);
    Optional<Unit> unit = Optional.empty();
    for (String word : words) {
      unit = unit.or(() -> Unit.of(word));
    }
    Kind kind = kind(words, unit);
    if (kind == Kind.OTHER) {
      return new SweepColumn(kind, 1, false, name);
    }
    boolean decibels = words.stream().anyMatch(w -> DECIBELS.contains(w.toLowerCase(Locale.ROOT)));
    boolean wrong = unit.isPresent() && !unit.get().fits(kind);
    if (decibels || wrong || (unit.isEmpty() && bracketsHoldMore(name))) {
      throw new UnknownUnitException(kind);
    }
    double usual = kind == Kind.PHASE ? DEGREE : 1;
    return new SweepColumn(kind, unit.map(Unit::factor).orElse(usual), unit.isPresent(), name);
  }

  /** A unit and the quantity it belongs to. */
  private record Unit(Kind quantity, double factor) {
    static Optional<Unit> of(String word) {
      String lower = word.toLowerCase(Locale.ROOT);
      if (DEGREES.contains(lower)) {
        return Optional.of(new Unit(Kind.PHASE, DEGREE));
      }
      if (RADIANS.contains(lower)) {
        return Optional.of(new Unit(Kind.PHASE, 1));
      }
      String plain = Dimension.normalised(word);
      Optional<BigDecimal> frequency = Dimension.FREQUENCY.factor(plain);
      if (frequency.isPresent()) {
        return Optional.of(new Unit(Kind.FREQUENCY, frequency.get().doubleValue()));
      }
      return Dimension.RESISTANCE
          .factor(plain)
          .map(factor -> new Unit(Kind.MAGNITUDE, factor.doubleValue()));
    }

    boolean fits(Kind kind) {
      return kind == quantity
          || (quantity == Kind.MAGNITUDE && (kind == Kind.REAL || kind == Kind.IMAGINARY));
    }
  }

  private static Kind kind(List<String> words, Optional<Unit> unit) {
    List<String> lower = words.stream().map(w -> w.toLowerCase(Locale.ROOT)).toList();
    if (lower.stream().anyMatch(PHASE::contains)) {
      return Kind.PHASE;
    }
    boolean inOhm = unit.isPresent() && unit.get().quantity() == Kind.MAGNITUDE; // Z(f) [ohm]
    if (!inOhm && lower.stream().anyMatch(FREQUENCY::contains)) {
      return Kind.FREQUENCY;
    }
    if (lower.stream().anyMatch(REAL::contains)) {
      return Kind.REAL;
    }
    if (lower.stream().anyMatch(IMAGINARY::contains)) {
      return Kind.IMAGINARY;
    }
    if (lower.stream().anyMatch(MAGNITUDE::contains)) {
      return Kind.MAGNITUDE;
    }
    // a column named by its unit alone
    return words.size() == 1 ? unit.map(Unit::quantity).orElse(Kind.OTHER) : Kind.OTHER;
  }

  /** Whether a bracket holds something that is neither a unit nor part of Re(Z). */
  private static boolean bracketsHoldMore(String name) {
    Matcher bracket = BRACKET.matcher(name);
    while (bracket.find()) {
      String inside = bracket.group(1).strip().toLowerCase(Locale.ROOT);
      if (!inside.isEmpty() && !MAGNITUDE.contains(inside) && !FREQUENCY.contains(inside)) {
        return true;
      }
    }
    return false;
  }

  private static List<String> words(String name) {
    List<String> words = new ArrayList<>();
    Matcher word = WORD.matcher(name);
    while (word.find()) {
      words.add(word.group());
    }
    return words;
  }
}

package nullplane.validation;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * One comparison with something outside the project, of one value or of a set of them. The last
 * call asserts, and records the row that stands on the page of comparisons.
 */
public final class Check {
  private static final int DIGITS = 6;

  /** A figure that may move by more than this share is too much of chance for a deviation. */
  private static final double MOST_NOISE = 0.015;

  private final String testClass;
  private final String title;
  private final String source;
  private final List<Pair> pairs = new ArrayList<>();
  private String unit = "";
  private int digits = DIGITS;
  private double noiseShare = 1e-6;
  private Optional<double[]> expected = Optional.empty();

  Check(String testClass, String title, String source) {
    this.testClass = testClass;
    this.title = title;
    this.source = source;
  }

  /** Expected and computed; a real number has no imaginary part. */
  private record Pair(double[] expected, double[] computed) {
    double distance() {
      double re = expected[0] - computed[0];
      return computed.length == 1 ? Math.abs(re) : Math.hypot(re, expected[1] - computed[1]);
    }

    double size() {
      return modulus(expected);
    }

    double largest() {
      return Math.max(size(), modulus(computed));
    }
  }

  private static double modulus(double[] number) {
    return number.length == 1 ? Math.abs(number[0]) : Math.hypot(number[0], number[1]);
  }

  /** What the source says. */
  public Check expected(double value, String ofUnit) {
    expected = Optional.of(new double[] {value});
    unit = ofUnit;
    return this;
  }

  /** What the source says, a complex number. */
  public Check expected(double re, double im, String ofUnit) {
    expected = Optional.of(new double[] {re, im});
    unit = ofUnit;
    return this;
  }

  /** What the program says. */
  public Check computed(double value) {
    pairs.add(new Pair(expected.orElseThrow(), new double[] {value}));
    return this;
  }

  /** What the program says, a complex number. */
  public Check computed(double re, double im) {
    pairs.add(new Pair(expected.orElseThrow(), new double[] {re, im}));
    return this;
  }

  /** The unit of a set that is filled by {@link #add}. */
  public Check in(String ofUnit) {
    unit = ofUnit;
    return this;
  }

  /** One value of a set. */
  public Check add(double ofSource, double ofProgram) {
    pairs.add(new Pair(new double[] {ofSource}, new double[] {ofProgram}));
    return this;
  }

  /** One complex value of a set. */
  public Check add(double ofSourceRe, double ofSourceIm, double re, double im) {
    pairs.add(new Pair(new double[] {ofSourceRe, ofSourceIm}, new double[] {re, im}));
    return this;
  }

  /**
   * Prints fewer digits, of a figure that another machine's sines may move. The page then takes
   * figures that differ by this share.
   */
  public Check coarse(int significantDigits, double share) {
    digits = significantDigits;
    noiseShare = share;
    return this;
  }

  /** Allows a deviation in percent of what is expected. */
  public void withinPercent(double percent) {
    int worst = worst(percent / 100, true);
    Pair pair = pairs.get(worst);
    boolean holds = pair.distance() <= pair.size() * percent / 100;
    finish(
        worst,
        holds,
        pair.size() * percent / 100,
        100 / pair.size(),
        Figures.shortest(percent) + " %");
  }

  /** Allows a deviation in the unit of what is expected. */
  public void within(double allowed) {
    int worst = worst(allowed, false);
    boolean holds = pairs.get(worst).distance() <= allowed;
    finish(worst, holds, allowed, 1, Figures.withUnit(Figures.shortest(allowed), unit));
  }

  /** Allows no deviation. */
  public void exactly() {
    int worst = worst(1, false);
    boolean holds = pairs.get(worst).distance() == 0;
    finish(worst, holds, 0, 1, "none");
  }

  /** Holds the computed values between two bounds. */
  public void between(double least, double most) {
    bounded(
        least,
        most,
        Figures.shortest(least) + " to " + Figures.withUnit(Figures.shortest(most), unit));
  }

  /** Holds the computed values to a least one. */
  public void atLeast(double least) {
    bounded(least, Double.MAX_VALUE, Figures.withUnit(Figures.shortest(least), unit) + " or more");
  }

  /** Holds the computed values to a greatest one. */
  public void atMost(double most) {
    bounded(-Double.MAX_VALUE, most, Figures.withUnit(Figures.shortest(most), unit) + " or less");
  }

  private void bounded(double least, double most, String allowed) {
    int worst = worst(1, false);
    boolean holds = true;
    for (Pair pair : pairs) {
      holds &= pair.computed()[0] >= least && pair.computed()[0] <= most;
    }
    Pair pair = pairs.get(worst);
    double scale = pair.size() > 0 ? pair.size() * 0.05 : Math.min(Math.abs(most), Math.abs(least));
    finish(worst, holds, scale, 1, allowed);
  }

  /** The pair that takes the largest share of what is allowed; of near equals, the first. */
  private int worst(double allowed, boolean relative) {
    if (pairs.isEmpty()) {
      throw new AssertionError(title + ": nothing was compared");
    }
    int worst = 0;
    double most = -1;
    for (int i = 0; i < pairs.size(); i++) {
      Pair pair = pairs.get(i);
      double share = pair.distance() / (relative ? allowed * pair.size() : allowed);
      if (Double.isNaN(share) && pair.distance() > 0 || Double.isNaN(pair.distance())) {
        return i;
      }
      if (share > most + 1e-3) {
        worst = i;
        most = share;
      }
    }
    // near equals must not hide one that is beyond
    for (int i = 0; i < pairs.size(); i++) {
      Pair pair = pairs.get(i);
      if (pair.distance() > (relative ? allowed * pair.size() : allowed)
          && pairs.get(worst).distance()
              <= (relative ? allowed * pairs.get(worst).size() : allowed)) {
        return i;
      }
    }
    return worst;
  }

  private void finish(
      int worst, boolean holds, double allowed, double perUnit, String allowedText) {
    Pair pair = pairs.get(worst);
    if (!holds) {
      throw new AssertionError(
          String.format(
              Locale.ROOT,
              "%s: expected %s, computed %s %s; off by %s, allowed %s. Source: %s",
              title,
              java.util.Arrays.toString(pair.expected()),
              java.util.Arrays.toString(pair.computed()),
              unit,
              pair.distance() * perUnit,
              allowedText,
              source));
    }
    String deviationUnit = perUnit == 1 ? unit : "%";
    double noise = noiseShare * pair.largest() + 1e-3 * allowed;
    double floor =
        perUnit == 1
            ? Figures.floor(allowed, noiseShare * largest())
            : Figures.floor(allowed * perUnit, noiseShare * 100) / perUnit;
    List<String> deviations = new ArrayList<>();
    List<String> computed = new ArrayList<>();
    boolean same = pair.distance() < floor || pair.distance() == 0;
    for (double off : new double[] {0, -noise, noise}) {
      double distance = Math.max(0, pair.distance() + off);
      deviations.add(
          allowedText.equals("none")
              ? "none"
              : noiseShare > MOST_NOISE
                  ? "not stated"
                  : Figures.deviation(distance * perUnit, floor * perUnit, deviationUnit));
      computed.add(
          pairs.size() > 1 && same
              ? "the same"
              : Figures.number(pair.computed(), off, floor, pair.size() == 0 ? 2 : digits, unit));
    }
    Recorder.add(
        new Row(
            testClass,
            source,
            title,
            expectedText(pair, same),
            List.copyOf(computed),
            List.copyOf(deviations),
            allowedText));
  }

  /** Over all pairs, so that the last bits of one do not move what is worth telling. */
  private double largest() {
    return pairs.stream().mapToDouble(Pair::largest).max().orElseThrow();
  }

  private String expectedText(Pair pair, boolean same) {
    if (pairs.size() == 1) {
      return Figures.number(pair.expected(), 0, 0, digits, unit);
    }
    if (!same) {
      return Figures.number(pair.expected(), 0, 0, digits, unit)
          + " (worst of "
          + Figures.count(pairs.size())
          + ")";
    }
    double least = Double.MAX_VALUE;
    double most = -Double.MAX_VALUE;
    for (Pair one : pairs) {
      double value = one.expected().length == 1 ? one.expected()[0] : one.size();
      least = Math.min(least, value);
      most = Math.max(most, value);
    }
    String range = Figures.number(new double[] {least}, 0, 0, 4, "");
    if (most - least > 1e-9 * Math.abs(most)) {
      range += " to " + Figures.number(new double[] {most}, 0, 0, 4, "");
    }
    return Figures.count(pairs.size()) + " values, " + Figures.withUnit(range, unit);
  }
}

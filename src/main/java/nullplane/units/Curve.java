package nullplane.units;

import java.util.Arrays;
import java.util.stream.DoubleStream;

/** An immutable sequence of numbers, one per point of a frequency axis. */
public final class Curve {
  private final double[] values;

  private Curve(double[] values) {
    this.values = values;
  }

  /** Returns a curve with a copy of the values (unit as stated where the curve is declared). */
  public static Curve of(double... values) {
    return new Curve(values.clone());
  }

  /**
   * Returns logarithmically spaced points from lower to upper, both included.
   *
   * @param lower first point, above 0
   * @param upper last point, above lower
   * @param points number of points, at least 2
   * @throws IllegalArgumentException if the arguments are out of range
   */
  public static Curve logSpaced(double lower, double upper, int points) {
    if (!(lower > 0) || !(upper > lower) || points < 2) {
      throw new IllegalArgumentException(
          "log spacing from " + lower + " to " + upper + " in " + points + " points");
    }
    double[] values = new double[points];
    double ratio = Math.log(upper / lower);
    for (int i = 0; i < points; i++) {
      values[i] = lower * Math.exp(ratio * i / (points - 1));
    }
    values[points - 1] = upper;
    return new Curve(values);
  }

  /** Returns the number of points. */
  public int size() {
    return values.length;
  }

  /** Returns the value at a point, counted from 0. */
  public double at(int index) {
    return values[index];
  }

  /** Returns a copy of the values. */
  public double[] toArray() {
    return values.clone();
  }

  /** Returns the values as a stream. */
  public DoubleStream stream() {
    return Arrays.stream(values);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Curve curve && Arrays.equals(values, curve.values);
  }

  @Override
  public int hashCode() {
    return Arrays.hashCode(values);
  }

  @Override
  public String toString() {
    return Arrays.toString(values);
  }
}

package nullplane.network;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import nullplane.units.Checks;

/**
 * Coils in series and capacitors across, in turn from an amplifier without resistance to a
 * resistive load, that make a filter of stated alignment. The first part is a coil.
 *
 * <p>Symbols: R load, wc = 2 pi fc, D(s) = M(s) + N(s) the alignment's denominator, parted into
 * even and odd powers.
 *
 * <p>Source: circuit theory (Cauer's continued fraction of a singly terminated ladder): the
 * quotients of M/N, or N/M for odd orders, are the parts from the load to the source, times R/wc
 * for a coil and 1/(R wc) for a capacitor. First and second order close: L = R/wc; L = R/(Q wc), C
 * = Q/(R wc).
 *
 * @param coilsH inductances from the amplifier on (H)
 * @param capacitorsF capacitances from the amplifier on (F)
 */
public record LowPassLadder(List<Double> coilsH, List<Double> capacitorsF) {
  /** Copies the lists. */
  public LowPassLadder {
    coilsH = List.copyOf(coilsH);
    capacitorsF = List.copyOf(capacitorsF);
  }

  /**
   * Returns the ladder of an alignment.
   *
   * @param filter shape and corner
   * @param loadOhm load resistance R (ohm)
   */
  public static LowPassLadder of(CrossoverFilter filter, double loadOhm) {
    Checks.positive(loadOhm, "load resistance", "ohm");
    double omega = 2 * Math.PI * filter.cornerHz();
    double[] denominator = filter.alignment().polynomial();
    int order = denominator.length - 1;
    double[] upper = everySecond(denominator, order);
    double[] lower = everySecond(denominator, order - 1);
    List<Double> coils = new ArrayList<>();
    List<Double> capacitors = new ArrayList<>();
    // from the load on: the n-th part from the amplifier is a coil for odd n
    for (int n = order; n >= 1; n--) {
      double quotient = upper[n] / lower[n - 1];
      if (n % 2 == 1) {
        coils.add(quotient * loadOhm / omega);
      } else {
        capacitors.add(quotient / (loadOhm * omega));
      }
      double[] rest = upper.clone();
      for (int power = 1; power <= n; power++) {
        rest[power] -= quotient * lower[power - 1];
      }
      upper = lower;
      lower = rest;
    }
    Collections.reverse(coils);
    Collections.reverse(capacitors);
    return new LowPassLadder(coils, capacitors);
  }

  private static double[] everySecond(double[] polynomial, int highest) {
    double[] part = new double[polynomial.length];
    for (int power = highest; power >= 0; power -= 2) {
      part[power] = polynomial[power];
    }
    return part;
  }
}

package nullplane.network;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.function.Supplier;

/**
 * Shapes of low-pass and high-pass filters.
 *
 * <p>Source: S. Butterworth, Wireless Engineer 7 (1930) 536, poles on a circle; S. H. Linkwitz, J.
 * Audio Eng. Soc. 24(1) (1976) 2: two equal Butterworth filters in a row, both 6.02 dB down at the
 * corner; the sum of low-pass and high-pass has modulus 1 at every frequency, for the second order
 * with one of them inverted.
 */
public enum FilterAlignment {
  /** Butterworth, first order. */
  BUTTERWORTH_1("Butterworth, 1st order", 1),
  /** Butterworth, second order. */
  BUTTERWORTH_2("Butterworth, 2nd order", 2),
  /** Butterworth, third order. */
  BUTTERWORTH_3("Butterworth, 3rd order", 3),
  /** Butterworth, fourth order. */
  BUTTERWORTH_4("Butterworth, 4th order", 4),
  /** Linkwitz-Riley, second order. */
  LINKWITZ_RILEY_2("Linkwitz-Riley, 2nd order", 2),
  /** Linkwitz-Riley, fourth order. */
  LINKWITZ_RILEY_4("Linkwitz-Riley, 4th order", 4);

  private final String label;
  private final int order;

  FilterAlignment(String label, int order) {
    this.label = label;
    this.order = order;
  }

  /** Returns the name in plain words. */
  public String label() {
    return label;
  }

  /** Returns the order. */
  public int order() {
    return order;
  }

  /** Returns the Q of each pair of poles (1). */
  public List<Double> qualityFactors() {
    return switch (this) {
      case BUTTERWORTH_1 -> List.of();
      case BUTTERWORTH_2 -> List.of(Math.sqrt(0.5));
      case BUTTERWORTH_3 -> List.of(1.0);
      case BUTTERWORTH_4 -> List.of(0.5 / Math.cos(Math.PI / 8), 0.5 / Math.sin(Math.PI / 8));
      case LINKWITZ_RILEY_2 -> List.of(0.5);
      case LINKWITZ_RILEY_4 -> List.of(Math.sqrt(0.5), Math.sqrt(0.5));
    };
  }

  /** Returns whether there is a pole on the real axis besides the pairs. */
  public boolean hasSimplePole() {
    return order % 2 == 1;
  }

  List<AnalogueSection> lowPass(double cornerHz) {
    return sections(
        () -> AnalogueSection.lowPass(cornerHz), q -> AnalogueSection.lowPass(cornerHz, q));
  }

  List<AnalogueSection> highPass(double cornerHz) {
    return sections(
        () -> AnalogueSection.highPass(cornerHz), q -> AnalogueSection.highPass(cornerHz, q));
  }

  private List<AnalogueSection> sections(
      Supplier<AnalogueSection> simple, Function<Double, AnalogueSection> pair) {
    List<AnalogueSection> sections = new ArrayList<>();
    if (hasSimplePole()) {
      sections.add(simple.get());
    }
    qualityFactors().forEach(q -> sections.add(pair.apply(q)));
    return sections;
  }

  /** Returns the denominator's coefficients with corner 1 rad/s, the constant term first. */
  double[] polynomial() {
    double[] product = {1};
    if (hasSimplePole()) {
      product = times(product, 1, 1);
    }
    for (double q : qualityFactors()) {
      product = times(product, 1, 1 / q, 1);
    }
    return product;
  }

  private static double[] times(double[] a, double... b) {
    double[] product = new double[a.length + b.length - 1];
    for (int i = 0; i < a.length; i++) {
      for (int j = 0; j < b.length; j++) {
        product[i + j] += a[i] * b[j];
      }
    }
    return product;
  }
}

package nullplane.sample;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.distribution.TDistribution;

/**
 * How one value scatters over the samples of a batch.
 *
 * @param value the value asked for
 * @param count samples that show it
 * @param mean mean (SI)
 * @param deviation standard deviation of a unit (SI); measurement included
 * @param least least value (SI)
 * @param greatest greatest value (SI)
 * @param capability Cpk (1); empty for fewer than 5 samples or without scatter
 * @param capabilityLower lower end of the two-sided 95 % interval of Cpk (1)
 * @param outlier the sample that stands apart, if one does
 */
public record BatchSpread(
    BriefValue value,
    int count,
    double mean,
    double deviation,
    double least,
    double greatest,
    OptionalDouble capability,
    OptionalDouble capabilityLower,
    Optional<String> outlier) {
  /** Fewest samples that a capability is stated for. Common practice; 30 would be good. */
  public static final int FEWEST_FOR_CAPABILITY = 5;

  private static final int FEWEST_FOR_OUTLIERS = 4;
  private static final double OUTLIER_LEVEL = 0.05;

  /**
   * Returns the spread of a value.
   *
   * <p>Source: ISO 22514-2 and usual: Cpk = min(U - m, m - L)/(3 s), of the limits there are; its
   * interval from A. F. Bissell, Applied Statistics 39 (1990) 331: variance 1/(9 n) + Cpk^2/(2(n -
   * 1)). Valid for values that are normally distributed.
   *
   * @param value the value asked for, with its window
   * @param names names of the samples
   * @param values what they show (SI), one each, two or more
   */
  public static BatchSpread of(BriefValue value, List<String> names, List<Double> values) {
    int n = values.size();
    if (n < 2 || names.size() != n) {
      throw new IllegalArgumentException(n + " values of " + names.size() + " samples");
    }
    double mean = values.stream().mapToDouble(x -> x).average().orElseThrow();
    double squares = values.stream().mapToDouble(x -> (x - mean) * (x - mean)).sum();
    double deviation = Math.sqrt(squares / (n - 1));
    OptionalDouble cpk = OptionalDouble.empty();
    OptionalDouble cpkLower = OptionalDouble.empty();
    if (n >= FEWEST_FOR_CAPABILITY && deviation > 0 && value.window().limits()) {
      double room =
          Math.min(
              value.window().upper().orElse(Double.POSITIVE_INFINITY) - mean,
              mean - value.window().lower().orElse(Double.NEGATIVE_INFINITY));
      double index = room / (3 * deviation);
      double reach =
          new NormalDistribution().inverseCumulativeProbability(0.975)
              * Math.sqrt(1.0 / (9 * n) + index * index / (2.0 * (n - 1)));
      cpk = OptionalDouble.of(index);
      cpkLower = OptionalDouble.of(index - reach);
    }
    return new BatchSpread(
        value,
        n,
        mean,
        deviation,
        values.stream().mapToDouble(x -> x).min().orElseThrow(),
        values.stream().mapToDouble(x -> x).max().orElseThrow(),
        cpk,
        cpkLower,
        outlier(names, values, mean, deviation));
  }

  /**
   * Returns whether the scatter is too wide for the window wherever its mean lies: six standard
   * deviations are more than the window's width, Cp below 1. Source: ISO 22514-2.
   */
  public boolean tooWide() {
    BriefWindow window = value.window();
    return window.lower().isPresent()
        && window.upper().isPresent()
        && 6 * deviation > window.upper().getAsDouble() - window.lower().getAsDouble();
  }

  private static Optional<String> outlier(
      List<String> names, List<Double> values, double mean, double deviation) {
    int n = values.size();
    if (n < FEWEST_FOR_OUTLIERS || deviation == 0) {
      return Optional.empty();
    }
    int farthest = 0;
    for (int i = 1; i < n; i++) {
      if (Math.abs(values.get(i) - mean) > Math.abs(values.get(farthest) - mean)) {
        farthest = i;
      }
    }
    double distance = Math.abs(values.get(farthest) - mean) / deviation;
    return distance > grubbs(n) ? Optional.of(names.get(farthest)) : Optional.empty();
  }

  /**
   * Returns the distance from the mean, in standard deviations, beyond which the farthest of some
   * values stands apart at the 5 % level, two-sided (1).
   *
   * <p>Source: F. E. Grubbs, Technometrics 11(1) (1969) 1: G = (n - 1)/sqrt(n) sqrt(t^2/(n - 2 +
   * t^2)), t at 0.05/(2 n) with n - 2 degrees of freedom. Valid for one outlier among normally
   * distributed values.
   *
   * @param count number of values, 3 or more
   */
  public static double grubbs(int count) {
    double t =
        -new TDistribution(count - 2.0).inverseCumulativeProbability(OUTLIER_LEVEL / (2 * count));
    return (count - 1) / Math.sqrt(count) * Math.sqrt(t * t / (count - 2 + t * t));
  }

  /**
   * Returns the spread of every value with a window that two samples or more show.
   *
   * @param samples the samples
   */
  static List<BatchSpread> all(List<SampleResult> samples) {
    List<BatchSpread> spreads = new ArrayList<>();
    if (samples.size() < 2) {
      return spreads;
    }
    for (ValueCheck first : samples.get(0).checks()) {
      List<String> names = new ArrayList<>();
      List<Double> values = new ArrayList<>();
      for (SampleResult sample : samples) {
        sample
            .estimate(first.value().key())
            .ifPresent(
                estimate -> {
                  names.add(sample.name());
                  values.add(estimate.value());
                });
      }
      if (values.size() >= 2) {
        spreads.add(of(first.value(), names, values));
      }
    }
    return spreads;
  }
}

package nullplane.tolerance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.HashSet;
import java.util.Set;
import java.util.SplittableRandom;
import nullplane.validation.Check;
import nullplane.validation.Validation;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.stat.correlation.PearsonsCorrelation;
import org.apache.commons.math3.stat.descriptive.SummaryStatistics;
import org.apache.commons.math3.stat.inference.KolmogorovSmirnovTest;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

@Tag("reference")
class UnitChanceReference {
  /** Source: java.util.SplittableRandom is SplitMix64; its n-th output is the counted one. */
  @Test
  void countsWhatSplitMixDraws() {
    for (long seed : new long[] {0, 1, -7, 0x123456789ABCDEFL}) {
      SplittableRandom drawn = new SplittableRandom(seed);
      for (int n = 1; n <= 1000; n++) {
        assertThat(UnitChance.output(seed, n)).isEqualTo(drawn.nextLong());
      }
    }
  }

  /**
   * A normal distribution cut off at 3: mean 0, variance 1 - 6 phi(3)/(2 Phi(3) - 1) = 0.9733.
   * Source: closed form of the truncated normal distribution. Tolerances: four standard errors of
   * 200,000 draws.
   */
  @Test
  void normalDeviatesAreNormalUpToTheLimit() {
    UnitChance chance = new UnitChance(5, UnitChance.Purpose.PRODUCTION, 2);
    NormalDistribution normal = new NormalDistribution(null, 0, 1);
    double expected = 1 - 6 * normal.density(3) / (2 * normal.cumulativeProbability(3) - 1);
    SummaryStatistics seen = new SummaryStatistics();
    for (int unit = 0; unit < 200_000; unit++) {
      seen.addValue(chance.normal(unit, 0));
    }
    String cut = "Closed form of a normal distribution cut off at 3.";
    Validation.check("mean of 200,000 deviates", cut)
        .expected(0, "")
        .computed(seen.getMean())
        .coarse(2, 1e-4)
        .within(0.009);
    Validation.check("variance of 200,000 deviates", cut)
        .expected(expected, "")
        .computed(seen.getVariance())
        .within(0.012);
    Check deviates = Validation.check("deviates at five shares of the distribution", cut);
    assertThat(seen.getMax()).isBetween(2.9, 3.0);
    for (double share : new double[] {0.001, 0.1, 0.5, 0.77, 0.999}) {
      double p = normal.cumulativeProbability(-3);
      double z = normal.inverseCumulativeProbability(p + share * (1 - 2 * p));
      deviates.add(z, UnitChance.normalAt(share));
    }
    deviates.within(1e-9);
  }

  /** 53 bits: among 6000 deviates no two are alike but by fault, 2e-9 by chance. */
  @Test
  void noTwoDeviatesAreOne() {
    UnitChance chance = new UnitChance(5, UnitChance.Purpose.WINDOWS, 3);
    Set<Double> seen = new HashSet<>();
    for (int unit = 0; unit < 2_000; unit++) {
      for (int quantity = 0; quantity < 3; quantity++) {
        seen.add(chance.even(unit, quantity));
      }
    }
    assertThat(seen).hasSize(6_000);
  }

  /** Quantities and purposes do not know of each other; even deviates pass a standard test. */
  @Test
  void deviatesAreEvenAndIndependent() {
    int units = 20_000;
    UnitChance chance = new UnitChance(5, UnitChance.Purpose.WINDOWS, 3);
    UnitChance other = new UnitChance(5, UnitChance.Purpose.CHECK, 3);
    double[][] seen = new double[4][units];
    for (int unit = 0; unit < units; unit++) {
      for (int quantity = 0; quantity < 3; quantity++) {
        seen[quantity][unit] = chance.even(unit, quantity);
      }
      seen[3][unit] = other.even(unit, 0);
    }
    for (int i = 0; i < 4; i++) {
      double pValue =
          new KolmogorovSmirnovTest()
              .kolmogorovSmirnovTest(
                  new org.apache.commons.math3.distribution.UniformRealDistribution(null, 0, 1),
                  seen[i]);
      assertThat(pValue).isGreaterThan(1e-3);
      for (int j = 0; j < i; j++) {
        // four standard errors
        assertThat(new PearsonsCorrelation().correlation(seen[i], seen[j]))
            .isCloseTo(0, within(4 / Math.sqrt(units)));
      }
    }
  }
}

package nullplane.tolerance;

import java.util.List;
import org.apache.commons.math3.distribution.BinomialDistribution;

/**
 * A single sampling plan for normal inspection: so many units are tested of a lot, which is taken
 * if no more than Ac of them are bad and refused from Re on.
 *
 * <p>Table 2-A of the standard is built on diagonals: each step to the next larger sample goes with
 * the next smaller acceptance quality limit. On a diagonal, from the smallest sample on: arrows
 * that lead to the plan with Ac 0, that plan, an arrow back up to it, an arrow down to the next,
 * then Ac 1, 2, 3, 5, 7, 10, 14, 21, and beyond that arrows back up. The diagonal with Ac 0 runs
 * from letter A at 6.5 to letter K at 0.10.
 *
 * <p>Source: ISO 2859-1:1999, tables 1 and 2-A; acceptance quality limits 0.10 to 6.5 here.
 *
 * @param lotSize units of the lot
 * @param level inspection level
 * @param quality acceptance quality limit
 * @param lotLetter code letter that the lot size gives
 * @param planLetter code letter of the plan used, after the table's arrows
 * @param sampleSize units to test; never more than the lot
 * @param acceptanceNumber Ac, bad units in the sample with which the lot is still taken
 * @param rejectionNumber Re, bad units from which on the lot is refused
 */
public record SamplingPlan(
    int lotSize,
    InspectionLevel level,
    AcceptanceQuality quality,
    char lotLetter,
    char planLetter,
    int sampleSize,
    int acceptanceNumber,
    int rejectionNumber) {
  private static final String LETTERS = "ABCDEFGHJKLMNPQR";
  private static final int[] SAMPLE_SIZES = {
    2, 3, 5, 8, 13, 20, 32, 50, 80, 125, 200, 315, 500, 800, 1250, 2000
  };

  /** Ac along a diagonal, from the letter with Ac 0 on; the two arrows after it are -1. */
  private static final int[] ALONG_DIAGONAL = {0, -1, -1, 1, 2, 3, 5, 7, 10, 14, 21};

  /** A lot up to this size is small enough to test every unit of it. Common practice. */
  private static final int SMALL_LOT = 500;

  /** Bad lots that a plan may let pass: one in ten, the usual consumer's risk. Common practice. */
  private static final double CONSUMERS_RISK = 0.10;

  /**
   * Returns the plan of a lot.
   *
   * @param lotSize units of the lot, 2 or more
   * @param level inspection level
   * @param quality acceptance quality limit
   * @throws IllegalArgumentException if the lot is smaller
   */
  public static SamplingPlan of(int lotSize, InspectionLevel level, AcceptanceQuality quality) {
    char letter = level.codeLetter(lotSize);
    int row = LETTERS.indexOf(letter);
    List<AcceptanceQuality> qualities = List.of(AcceptanceQuality.values());
    int zeroRow = qualities.size() - 1 - qualities.indexOf(quality);
    int step = Math.max(0, row - zeroRow);
    if (step == 1) {
      step = 0;
    } else if (step == 2) {
      step = 3;
    }
    step = Math.min(step, ALONG_DIAGONAL.length - 1);
    int planRow = zeroRow + step;
    int accept = ALONG_DIAGONAL[step];
    return new SamplingPlan(
        lotSize,
        level,
        quality,
        letter,
        LETTERS.charAt(planRow),
        Math.min(lotSize, SAMPLE_SIZES[planRow]),
        accept,
        accept + 1);
  }

  /**
   * Returns how likely a lot is to be taken: the operating characteristic.
   *
   * <p>Source: binomial distribution, which holds for lots much larger than the sample; for others
   * the plan is a little sharper than this.
   *
   * @param badShare share of bad units in the lot (1), 0 to 1
   */
  public double acceptanceProbability(double badShare) {
    return passing(sampleSize, acceptanceNumber, badShare);
  }

  /**
   * Returns the probability that a sample holds no more bad units than a plan accepts (1).
   *
   * <p>Source: the binomial distribution, as used for the operating characteristics of plans of ISO
   * 2859-1. Valid for lots that are large against the sample.
   *
   * @param sample units drawn, n, 1 or more
   * @param accepted bad units accepted among them, Ac, 0 or more
   * @param badShare share of bad units in the lot (1), 0 to 1
   * @throws IllegalArgumentException if one of them is out of range
   */
  public static double passing(int sample, int accepted, double badShare) {
    if (sample < 1 || accepted < 0 || !(badShare >= 0 && badShare <= 1)) {
      throw new IllegalArgumentException(
          "plan n = " + sample + ", Ac = " + accepted + ", faulty share " + badShare);
    }
    if (badShare == 0 || accepted >= sample) {
      return 1;
    }
    if (badShare == 1) {
      return 0;
    }
    // no random generator: none is needed for the distribution's sum
    return new BinomialDistribution(null, sample, badShare).cumulativeProbability(accepted);
  }

  /** Returns whether the plan tests the whole lot. */
  public boolean testsEveryUnit() {
    return sampleSize == lotSize;
  }

  /**
   * Returns whether every unit should be tested instead: the lot has no more than 500 units, and
   * the plan would take a bad lot more often than one time in ten.
   *
   * @param badShare share of bad units that makes a lot bad (1)
   */
  public boolean everyUnitBetter(double badShare) {
    return testsEveryUnit()
        || (lotSize <= SMALL_LOT && acceptanceProbability(badShare) > CONSUMERS_RISK);
  }
}

package nullplane.sample;

/** How often a sampling plan lets a lot pass. */
public final class LotOdds {
  private LotOdds() {}

  /**
   * Returns the probability that a sample holds no more faulty units than the plan accepts (1).
   *
   * <p>Source: the binomial distribution, as used for the operating characteristics of plans of ISO
   * 2859-1. Valid for lots that are large against the sample.
   *
   * @param sample units drawn, n, 1 or more
   * @param accepted faulty units accepted among them, Ac, 0 or more
   * @param faulty share of faulty units in the lot (1), 0 to 1
   */
  public static double passing(int sample, int accepted, double faulty) {
    if (sample < 1 || accepted < 0 || !(faulty >= 0 && faulty <= 1)) {
      throw new IllegalArgumentException(
          "plan n = " + sample + ", Ac = " + accepted + ", faulty share " + faulty);
    }
    if (faulty == 0 || accepted >= sample) {
      return 1;
    }
    if (faulty == 1) {
      return 0;
    }
    double term = Math.pow(1 - faulty, sample);
    double sum = term;
    for (int k = 1; k <= accepted; k++) {
      term *= (sample - k + 1.0) / k * faulty / (1 - faulty);
      sum += term;
    }
    return Math.min(1, sum);
  }
}

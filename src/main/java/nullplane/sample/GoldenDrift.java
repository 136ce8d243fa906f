package nullplane.sample;

import java.util.ArrayList;
import java.util.List;
import nullplane.fit.Finding;
import nullplane.sample.LedgerEntry.SampleEntry;

/**
 * How far a golden sample, a reference that nobody changes and that is measured again each round,
 * is from what it was: if it moves, the bench or its surroundings did, or it ages.
 *
 * @param sample the sample
 * @param figure the figure
 * @param rounds how many earlier fits there are
 * @param earlier their mean, each weighted by its certainty (SI; dB re 20 uPa for the level)
 * @param now the present fit (same unit)
 * @param drift present less earlier (same unit)
 * @param standardError standard uncertainty of the drift (same unit)
 */
public record GoldenDrift(
    String sample,
    BenchFigure figure,
    int rounds,
    double earlier,
    double now,
    double drift,
    double standardError) {
  /** Two-sided 95 % point of the normal distribution. */
  private static final double NORMAL_95 = 1.959964;

  /** A drift below this share of the value is rounding (1). */
  private static final double ROUNDING = 1e-9;

  /**
   * Returns the drift that is significant from here on, at 95 % (same unit): a sample that has not
   * moved passes it in one of twenty cases.
   */
  public double limit95() {
    return NORMAL_95 * standardError;
  }

  /** Returns whether the drift is significant at 95 %. */
  public boolean significant() {
    return Math.abs(drift) > Math.max(limit95(), ROUNDING * Math.abs(earlier));
  }

  /**
   * Returns the drift of one figure.
   *
   * <p>Source: JCGM 100:2008, sec. 5.1 (difference of independent results); weighted mean by
   * inverse variance (P. R. Bevington, Data Reduction, ch. 4). Valid for errors that are
   * independent from round to round and normally distributed.
   *
   * @param sample the sample
   * @param figure the figure
   * @param earlier its earlier fits, one or more
   * @param now the present fit
   */
  public static GoldenDrift of(
      String sample, BenchFigure figure, List<Finding.Estimate> earlier, Finding.Estimate now) {
    if (earlier.isEmpty()) {
      throw new IllegalArgumentException("no earlier fit of " + sample);
    }
    double weights = 0;
    double sum = 0;
    for (Finding.Estimate estimate : earlier) {
      double least = Math.max(Math.abs(estimate.value()), Double.MIN_NORMAL) * 1e-12;
      double error = Math.max(estimate.standardError(), least);
      weights += 1 / (error * error);
      sum += estimate.value() / (error * error);
    }
    double mean = sum / weights;
    double own = now.standardError();
    return new GoldenDrift(
        sample,
        figure,
        earlier.size(),
        mean,
        now.value(),
        now.value() - mean,
        Math.sqrt(own * own + 1 / weights));
  }

  /**
   * Returns the drift of every figure of the golden samples of a round. A golden sample's earlier
   * fits are those under its name that were golden too, and the last one before it became golden.
   *
   * @param earlier the rounds before
   * @param present the samples of the round
   */
  public static List<GoldenDrift> all(RoundHistory earlier, List<SampleEntry> present) {
    List<GoldenDrift> all = new ArrayList<>();
    for (SampleEntry sample : present) {
      if (!sample.golden()) {
        continue;
      }
      List<SampleEntry> same = new ArrayList<>();
      for (ProjectRound round : earlier.rounds()) {
        for (SampleEntry old : round.samples()) {
          if (old.name().equals(sample.name())) {
            if (!old.golden()) {
              same.clear();
            }
            same.add(old);
          }
        }
      }
      for (BenchFigure figure : BenchFigure.values()) {
        List<Finding.Estimate> fits =
            same.stream()
                .filter(old -> old.values().containsKey(figure))
                .map(old -> old.values().get(figure))
                .toList();
        Finding.Estimate now = sample.values().get(figure);
        if (now != null && !fits.isEmpty()) {
          all.add(of(sample.name(), figure, fits, now));
        }
      }
    }
    return all;
  }
}

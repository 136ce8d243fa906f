package nullplane.acoustics;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import nullplane.units.Checks;
import nullplane.units.Curve;

/**
 * Chooses the frequencies at which a panel has to be solved so that everything between them can be
 * interpolated.
 *
 * <p>It starts with a few frequencies, a constant ratio apart, and halves intervals: the solution
 * at an interval's middle is compared with what the others predict there, and where the two differ
 * by more than the tolerance both halves are halved again. The solution in the middle then joins
 * the others, so what is left between frequencies is far smaller than the tolerance; a test holds
 * it to a tenth.
 *
 * <p>The caller solves, so that it can do so on several threads:
 *
 * <pre>
 *   while (!(wanted = sweep.wanted()).isEmpty()) sweep.accept(solve each of wanted, in order);
 *   sweep.on(axis)
 * </pre>
 */
public final class AdaptiveSweep {
  private static final int FIRST_INTERVALS = 8;
  private static final int MOST_SOLUTIONS = 400;

  private final double tolerance;
  private final List<FieldPoint> points;
  private final double speedOfSound;
  private final List<PanelSolution> solutions = new ArrayList<>();
  private final List<Double> wanted = new ArrayList<>();
  private double largestMiss;

  /**
   * @param lowestHz lowest frequency (Hz)
   * @param highestHz highest frequency (Hz), above the lowest
   * @param tolerance largest difference between prediction and solution that is not followed up, as
   *     a share of the largest entry (1)
   * @param points the points the pressures are solved at
   * @param speedOfSoundMPerS speed of sound (m/s)
   */
  public AdaptiveSweep(
      double lowestHz,
      double highestHz,
      double tolerance,
      List<FieldPoint> points,
      double speedOfSoundMPerS) {
    this.tolerance = Checks.positive(tolerance, "sweep tolerance", "1");
    this.points = List.copyOf(points);
    this.speedOfSound = Checks.positive(speedOfSoundMPerS, "speed of sound", "m/s");
    Curve first = Curve.logSpaced(lowestHz, highestHz, FIRST_INTERVALS + 1);
    first.stream().forEach(wanted::add);
  }

  /**
   * A sweep that was finished before.
   *
   * @param known its solutions
   * @param points the points the pressures were solved at
   * @param speedOfSoundMPerS speed of sound (m/s)
   * @throws IllegalArgumentException if there are fewer than two solutions
   */
  public static AdaptiveSweep finished(
      List<PanelSolution> known, List<FieldPoint> points, double speedOfSoundMPerS) {
    if (known.size() < 2) {
      throw new IllegalArgumentException("a sweep of " + known.size() + " solutions");
    }
    double lowest = known.get(0).frequencyHz();
    double highest = known.get(known.size() - 1).frequencyHz();
    AdaptiveSweep sweep = new AdaptiveSweep(lowest, highest, 1, points, speedOfSoundMPerS);
    sweep.wanted.clear();
    sweep.solutions.addAll(known);
    return sweep;
  }

  /** Returns the frequencies to solve next (Hz); empty when the sweep is finished. */
  public List<Double> wanted() {
    return List.copyOf(wanted);
  }

  /**
   * Takes the solutions of the frequencies wanted.
   *
   * @param solved one per frequency, in the order of {@link #wanted}
   * @throws IllegalArgumentException if they are others
   */
  public void accept(List<PanelSolution> solved) {
    if (solved.size() != wanted.size()) {
      throw new IllegalArgumentException(
          wanted.size() + " solutions wanted, " + solved.size() + " given");
    }
    List<Double> bounds = solutions.stream().map(PanelSolution::frequencyHz).toList();
    List<Double> missed = new ArrayList<>();
    boolean first = solutions.isEmpty();
    if (!first) {
      SolutionInterpolant before = new SolutionInterpolant(solutions, points, speedOfSound);
      for (PanelSolution solution : solved) {
        double frequency = solution.frequencyHz();
        double miss =
            missOf(
                before.at(frequency),
                solution,
                before.at(neighbour(bounds, frequency, false)),
                before.at(neighbour(bounds, frequency, true)));
        if (miss > tolerance) {
          missed.add(solution.frequencyHz());
        } else {
          largestMiss = Math.max(largestMiss, miss);
        }
      }
    }
    solutions.addAll(solved);
    solutions.sort(Comparator.comparingDouble(PanelSolution::frequencyHz));
    wanted.clear();
    if (first) {
      for (int i = 1; i < solutions.size(); i++) {
        addMiddle(solutions.get(i - 1).frequencyHz(), solutions.get(i).frequencyHz());
      }
    } else if (solutions.size() < MOST_SOLUTIONS) {
      for (double middle : missed) {
        addMiddle(neighbour(bounds, middle, false), middle);
        addMiddle(middle, neighbour(bounds, middle, true));
      }
    }
  }

  /**
   * Difference between prediction and solution, each kind of quantity as a share of its largest
   * entry here or at the interval's ends: in a narrow null an error counts by what surrounds it.
   */
  private static double missOf(
      PanelSolution predicted, PanelSolution solved, PanelSolution low, PanelSolution high) {
    return Math.max(
        missOf(predicted.impedance(), solved.impedance(), low.impedance(), high.impedance()),
        Math.max(
            missOf(predicted.pressure(), solved.pressure(), low.pressure(), high.pressure()),
            missOf(predicted.farField(), solved.farField(), low.farField(), high.farField())));
  }

  private static double missOf(
      ComplexMatrix predicted, ComplexMatrix solved, ComplexMatrix low, ComplexMatrix high) {
    double around = Math.max(low.largestModulus(), high.largestModulus());
    return solved.largestDifference(predicted, around);
  }

  private void addMiddle(double low, double high) {
    wanted.add(Math.sqrt(low * high));
  }

  /** The bound of the old interval that a frequency lies in. */
  private static double neighbour(List<Double> bounds, double frequency, boolean above) {
    double found = above ? bounds.get(bounds.size() - 1) : bounds.get(0);
    for (double bound : bounds) {
      if (above ? bound > frequency && bound < found : bound < frequency && bound > found) {
        found = bound;
      }
    }
    return found;
  }

  /** Returns the solutions so far, by rising frequency. */
  public List<PanelSolution> solutions() {
    return List.copyOf(solutions);
  }

  /** Returns the largest difference between prediction and solution that was let pass (1). */
  public double largestMiss() {
    return largestMiss;
  }

  /**
   * Returns the panel's response on an axis.
   *
   * @param frequencyHz the axis (Hz), within the sweep
   * @throws IllegalStateException if the sweep is not finished
   */
  public PanelResponse on(Curve frequencyHz) {
    if (!wanted.isEmpty()) {
      throw new IllegalStateException("the sweep still wants " + wanted.size() + " solutions");
    }
    SolutionInterpolant between = new SolutionInterpolant(solutions, points, speedOfSound);
    return new PanelResponse(frequencyHz, frequencyHz.stream().mapToObj(between::at).toList());
  }
}

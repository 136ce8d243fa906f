package nullplane.fit;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * One form of inductance fitted to the sweeps, and the choice among them.
 *
 * <p>Source: K. P. Burnham and D. R. Anderson, Model Selection and Multimodel Inference (2002),
 * sec. 2.4 (AICc) and 2.6 (differences of 4 to 7 leave considerably less support): the simplest
 * form within 6 of the least AICc is taken.
 */
final class Trial {
  /** What a richer form has to gain. */
  private static final double MARGIN = 6;

  /** Mean squared distance below this is rounding, and no ground to choose on. */
  private static final double ROUNDING = 1e-18;

  /** Points that suffice to find the way. */
  private static final int ROUGH_POINTS = 64;

  private static final double LOWEST_EXPONENT = 0.5;

  private final Circuit circuit;
  private final LeastSquares.Solution solution;

  private Trial(Circuit circuit, LeastSquares.Solution solution) {
    this.circuit = circuit;
    this.solution = solution;
  }

  /** Fits every form that has enough points: many starts on few points, the best one on all. */
  static List<Trial> fromScratch(FitSetup setup) {
    FitSetup rough =
        setup.withSweeps(setup.sweeps().stream().map(s -> s.thinned(ROUGH_POINTS)).toList());
    List<Trial> trials = new ArrayList<>();
    for (CoilForm form : CoilForm.values()) {
      Circuit few = rough.circuit(form, 0, 0);
      Circuit all = setup.circuit(form, 0, 0);
      if (few.rows() < few.parameters() + 2) {
        continue;
      }
      List<LeastSquares.Solution> found = new ArrayList<>();
      for (double[] start : StartValues.of(all, setup.addedMassKg())) {
        found.add(LeastSquares.search(few, start, LeastSquares.Effort.ROUGH));
      }
      found.sort(Comparator.comparingDouble(LeastSquares.Solution::sumOfSquares));
      trials.add(
          new Trial(all, LeastSquares.search(all, found.get(0).theta(), LeastSquares.Effort.FAIR)));
    }
    return trials;
  }

  /** Fits the same forms to other points, each from where it ended before. */
  static List<Trial> again(List<Trial> before, FitSetup setup) {
    return before.stream()
        .map(
            trial -> {
              Circuit circuit = setup.circuit(trial.circuit.coil(), 0, 0);
              return new Trial(
                  circuit, LeastSquares.search(circuit, trial.theta(), LeastSquares.Effort.FAIR));
            })
        .toList();
  }

  /** Returns the simplest form that explains the sweeps about as well as the best. */
  static Trial chosen(List<Trial> trials) {
    List<Trial> valid = trials.stream().filter(Trial::isValid).toList();
    double least = valid.stream().mapToDouble(Trial::criterion).min().orElseThrow();
    return valid.stream()
        .filter(trial -> trial.criterion() <= least + MARGIN)
        .findFirst()
        .orElseThrow();
  }

  private boolean isValid() {
    if (circuit.coil() != CoilForm.SEMI) {
      return true;
    }
    double n = solution.theta()[Circuit.COIL + 1];
    return n >= LOWEST_EXPONENT && n <= 1;
  }

  /** Returns the same fit, driven to the end. */
  Trial finished() {
    return new Trial(circuit, LeastSquares.search(circuit, theta(), LeastSquares.Effort.FULL));
  }

  /** Returns AICc, for least squares n ln(RSS/n) + 2k + 2k(k+1)/(n-k-1), the noise counted in k. */
  double criterion() {
    double n = circuit.rows();
    double k = circuit.parameters() + 1;
    double mean = Math.max(solution.sumOfSquares() / n, ROUNDING);
    return n * Math.log(mean) + 2 * k + 2 * k * (k + 1) / Math.max(n - k - 1, 1e-3);
  }

  Circuit circuit() {
    return circuit;
  }

  double[] theta() {
    return solution.theta();
  }

  double sumOfSquares() {
    return solution.sumOfSquares();
  }

  /**
   * Returns the same fit with modulus and phase weighted by their own noise, if these differ by so
   * much that it matters.
   */
  Trial weighted() {
    double[] distance = circuit.residuals(theta());
    double modulus = 0;
    double phase = 0;
    int moduli = 0;
    int phases = 0;
    int row = 0;
    for (PreparedSweep sweep : circuit.sweeps()) {
      for (int i = 0; i < sweep.size(); i++) {
        modulus += distance[row] * distance[row];
        moduli++;
        row++;
        if (sweep.hasPhase()) {
          phase += distance[row] * distance[row];
          phases++;
          row++;
        }
      }
    }
    if (phases < 10) {
      return this;
    }
    double first = Math.sqrt(modulus / moduli);
    double second = Math.sqrt(phase / phases);
    boolean alike = first < 1.3 * second && second < 1.3 * first;
    if (alike || Math.min(first, second) < 1e-7) {
      return this;
    }
    Circuit other = circuit.withWeights(1 / first, 1 / second);
    return new Trial(other, LeastSquares.search(other, theta(), LeastSquares.Effort.FULL));
  }
}

package nullplane.search;

import java.util.ArrayList;
import java.util.List;
import nullplane.units.Curve;
import org.moeaframework.algorithm.NSGAII;
import org.moeaframework.core.PRNG;
import org.moeaframework.core.Solution;
import org.moeaframework.core.constraint.LessThanOrEqual;
import org.moeaframework.core.initialization.RandomInitialization;
import org.moeaframework.core.population.NondominatedSortingPopulation;
import org.moeaframework.core.spi.OperatorFactory;
import org.moeaframework.core.variable.RealVariable;
import org.moeaframework.problem.AbstractProblem;

/**
 * The NSGA-II of a general library on our problems, with the library's own operators and settings
 * for real genes. Its source of chance is one for all, so one run at a time.
 */
final class LibraryNsga2 {
  private LibraryNsga2() {}

  /**
   * Returns the objectives of the feasible front that the library's NSGA-II ends with.
   *
   * @param problem what is searched
   * @param population candidates that live at once
   * @param evaluations candidates to evaluate
   * @param seed seed of the library's chance
   */
  static List<Curve> front(ParetoProblem problem, int population, int evaluations, long seed) {
    PRNG.setSeed(seed);
    AbstractProblem posed = new Posed(problem);
    NSGAII algorithm =
        new NSGAII(
            posed,
            population,
            new NondominatedSortingPopulation(),
            null,
            null,
            OperatorFactory.getInstance().getVariation(posed),
            new RandomInitialization(posed));
    algorithm.run(evaluations);
    List<Curve> front = new ArrayList<>();
    for (Solution solution : algorithm.getResult()) {
      if (solution.isFeasible()) {
        front.add(Curve.of(solution.getObjectiveValues()));
      }
    }
    return front;
  }

  private static final class Posed extends AbstractProblem {
    private final ParetoProblem problem;

    Posed(ParetoProblem problem) {
      super(problem.genes(), problem.objectives(), 1);
      this.problem = problem;
    }

    @Override
    public void evaluate(Solution solution) {
      Merit merit = problem.evaluate(List.of(RealVariable.getReal(solution))).get(0);
      solution.setObjectiveValues(merit.objectives().toArray());
      solution.setConstraintValue(0, merit.violation());
    }

    @Override
    public Solution newSolution() {
      Solution solution =
          new Solution(getNumberOfVariables(), getNumberOfObjectives(), getNumberOfConstraints());
      for (int i = 0; i < getNumberOfVariables(); i++) {
        solution.setVariable(i, new RealVariable(0, 1));
      }
      solution.setConstraint(0, LessThanOrEqual.to(0));
      return solution;
    }
  }
}

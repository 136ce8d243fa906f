package nullplane.driver;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Finds how each figure follows from those that a set is completed from: formula by formula, always
 * the next figure that gathers the least error, so that each takes the way with the least.
 *
 * <p>Errors are added by their amounts: that of a result is the sum over a formula's inputs of
 * their errors times the power they enter with.
 */
final class RouteFinder {
  private final SetEquations equations;
  private final double[] x;
  private final List<Parameter> basis;
  private final RowSpace space;
  private final RowSpace structure = SetEquations.structure();
  private final Map<Parameter, Double> errors = new EnumMap<>(Parameter.class);
  private final Map<Parameter, Route.Step> steps = new EnumMap<>(Parameter.class);

  /**
   * @param equations the equations
   * @param x their solution
   * @param basis the figures it was solved from
   * @param basisErrors error of each of them, as logarithm (1)
   */
  RouteFinder(SetEquations equations, double[] x, List<Parameter> basis, double[] basisErrors) {
    this.equations = equations;
    this.x = x;
    this.basis = basis;
    this.space = equations.spaceAt(basis, x);
    basis.forEach(known -> structure.add(equations.structureOf(known)));
    for (int i = 0; i < basisErrors.length; i++) {
      errors.put(basis.get(i), basisErrors[i]);
    }
    while (formulaStep() || jointStep(basisErrors)) {}
  }

  /** What may come next. */
  private record Next(Route.Step step, double error) {}

  private boolean formulaStep() {
    Optional<Next> best = Optional.empty();
    for (Relation relation : Relation.values()) {
      Optional<Parameter> result = onlyUnknown(relation);
      if (result.isPresent()) {
        best = less(best, next(relation, result.orElseThrow()));
      }
    }
    return taken(best);
  }

  /** Returns the one member of a relation that is not known yet, if it is one. */
  private Optional<Parameter> onlyUnknown(Relation relation) {
    Optional<Parameter> unknown = Optional.empty();
    for (Parameter member : relation.members()) {
      if (!errors.containsKey(member)) {
        if (unknown.isPresent()) {
          return Optional.empty();
        }
        unknown = Optional.of(member);
      }
    }
    return unknown;
  }

  private Next next(Relation relation, Parameter result) {
    List<Parameter> inputs = new ArrayList<>(relation.members());
    inputs.remove(result);
    double weight = equations.weight(relation, result, x);
    double error = 0;
    for (Parameter input : inputs) {
      error += Math.abs(equations.weight(relation, input, x) / weight) * errorOf(input);
    }
    return new Next(step(result, Optional.of(relation), inputs), error);
  }

  /** Takes a figure that no single formula gives, but all together do. */
  private boolean jointStep(double[] basisErrors) {
    Optional<Next> best = Optional.empty();
    for (Parameter result : Parameter.values()) {
      if (errors.containsKey(result) || !determined(result)) {
        continue;
      }
      Optional<double[]> parts = space.parts(equations.gradient(result, x));
      if (parts.isEmpty()) {
        continue;
      }
      double error = 0;
      List<Parameter> inputs = new ArrayList<>();
      for (int i = 0; i < basisErrors.length; i++) {
        double part = Math.abs(parts.orElseThrow()[i]);
        error += part * basisErrors[i];
        if (part > 1e-9) {
          inputs.add(basis.get(i));
        }
      }
      best = less(best, new Next(step(result, Optional.empty(), inputs), error));
    }
    return taken(best);
  }

  private boolean determined(Parameter parameter) {
    return structure.contains(equations.structureOf(parameter));
  }

  private Route.Step step(Parameter result, Optional<Relation> relation, List<Parameter> inputs) {
    return new Route.Step(result, result.fromLog(equations.log(result, x)), relation, inputs);
  }

  private static Optional<Next> less(Optional<Next> best, Next next) {
    return best.isEmpty() || next.error() < best.orElseThrow().error() ? Optional.of(next) : best;
  }

  private boolean taken(Optional<Next> next) {
    next.ifPresent(
        found -> {
          errors.put(found.step().result(), found.error());
          steps.put(found.step().result(), found.step());
        });
    return next.isPresent();
  }

  private double errorOf(Parameter parameter) {
    return errors.getOrDefault(parameter, 0.0);
  }

  /** Returns the figures that follow, those it started from included. */
  Set<Parameter> known() {
    Set<Parameter> known = EnumSet.noneOf(Parameter.class);
    known.addAll(errors.keySet());
    return known;
  }

  /** Returns the way to a figure; without steps if it started from it. */
  Route to(Parameter parameter) {
    List<Route.Step> way = new ArrayList<>();
    gather(parameter, way);
    return new Route(way);
  }

  private void gather(Parameter parameter, List<Route.Step> way) {
    Route.Step step = steps.get(parameter);
    if (step == null || way.contains(step)) {
      return;
    }
    step.inputs().forEach(input -> gather(input, way));
    way.add(step);
  }
}

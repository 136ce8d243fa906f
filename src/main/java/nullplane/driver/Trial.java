package nullplane.driver;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import nullplane.units.Curve;

/**
 * Some of a sheet's figures, solved: a woofer from independent ones among them, and how the others
 * fit it.
 *
 * @param equations the equations
 * @param basis independent figures, the most trusted ones
 * @param solution the unknowns, in logarithms
 * @param tests every other figure against the woofer
 */
record Trial(SetEquations equations, List<Parameter> basis, Curve solution, List<Test> tests) {
  private static final double THREE_DIGITS = 0.005;
  private static final double COARSEST = 0.05;
  private static final double NO_PART = 1e-9;
  private static final double COARSEST_LEVEL_DB = 0.5;

  /**
   * A figure against what the others give.
   *
   * @param parameter the figure
   * @param deviation stated over given, as a logarithm (1)
   * @param tolerance how far they may lie apart (1)
   */
  record Test(Parameter parameter, double deviation, double tolerance) {
    boolean fails() {
      return !(Math.abs(deviation) <= tolerance);
    }
  }

  Trial {
    basis = List.copyOf(basis);
    tests = List.copyOf(tests);
  }

  /**
   * Solves figures of a sheet; nothing if no woofer has the independent ones.
   *
   * @param equations the equations
   * @param set the sheet
   * @param used which of its figures to take, in the order of trust
   */
  static Optional<Trial> of(SetEquations equations, StatedSet set, List<Parameter> used) {
    List<Parameter> basis = equations.independent(used);
    Optional<double[]> solved = solve(equations, set, basis);
    List<Test> tests = new ArrayList<>();
    for (Parameter bounded : List.of(Parameter.TOTAL_Q, Parameter.BARE_MASS)) {
      if (solved.isEmpty() && basis.contains(bounded)) {
        List<Parameter> fewer = new ArrayList<>(basis);
        fewer.remove(bounded);
        Optional<double[]> without = solve(equations, set, fewer);
        Optional<Test> test = without.flatMap(x -> onLimit(equations, set, fewer, x, bounded));
        if (test.isPresent()) {
          basis = fewer;
          solved = without;
          tests.add(test.orElseThrow());
        }
      }
    }
    if (solved.isEmpty()) {
      return Optional.empty();
    }
    List<Parameter> others = new ArrayList<>(used);
    others.removeAll(basis);
    tests.forEach(test -> others.remove(test.parameter()));
    double[] x = solved.orElseThrow();
    for (Parameter parameter : others) {
      tests.add(
          new Test(
              parameter,
              logOf(set, parameter) - equations.log(parameter, x),
              tolerance(equations, set, basis, x, parameter)));
    }
    return Optional.of(new Trial(equations, basis, Curve.of(x), tests));
  }

  private static Optional<double[]> solve(
      SetEquations equations, StatedSet set, List<Parameter> basis) {
    return equations.solve(
        basis, basis.stream().mapToDouble(parameter -> logOf(set, parameter)).toArray());
  }

  /**
   * Returns a figure against the limit that the others set for it, if rounding alone may have moved
   * it beyond; nothing otherwise. Such a figure says no more than that it lies at the limit.
   */
  private static Optional<Test> onLimit(
      SetEquations equations, StatedSet set, List<Parameter> basis, double[] x, Parameter bounded) {
    return limitOf(equations, basis, x, bounded)
        .map(
            limit ->
                new Test(
                    bounded,
                    logOf(set, bounded) - equations.log(limit, x),
                    roundingOf(equations, set, basis, x, limit) + uncertainty(set, bounded)))
        .filter(test -> !test.fails());
  }

  /**
   * Returns the figure that another one cannot exceed, if it is known: the lower of Qms and Qes for
   * Qts, the mass with air for the bare one.
   */
  static Optional<Parameter> limitOf(
      SetEquations equations, List<Parameter> basis, double[] x, Parameter bounded) {
    RowSpace structure = SetEquations.structure();
    basis.forEach(known -> structure.add(equations.structureOf(known)));
    Stream<Parameter> limits =
        switch (bounded) {
          case TOTAL_Q -> Stream.of(Parameter.MECHANICAL_Q, Parameter.ELECTRICAL_Q);
          case BARE_MASS -> Stream.of(Parameter.MOVING_MASS);
          default -> Stream.empty();
        };
    return limits
        .filter(limit -> structure.contains(equations.structureOf(limit)))
        .min(Comparator.comparingDouble(limit -> equations.log(limit, x)));
  }

  private static double logOf(StatedSet set, Parameter parameter) {
    return parameter.toLog(set.value(parameter).orElseThrow());
  }

  /**
   * Returns how far a stated figure may lie from what others give, as a logarithm (1): the leeway
   * of its kind, or what the rounding of all figures that take part can add up to, if that is more.
   */
  static double tolerance(
      SetEquations equations,
      StatedSet set,
      List<Parameter> basis,
      double[] x,
      Parameter parameter) {
    return Math.max(parameter.leeway(), roundingOf(equations, set, basis, x, parameter));
  }

  /** Returns what the rounding of a figure, and of all that give it, can add up to (1). */
  static double roundingOf(
      SetEquations equations,
      StatedSet set,
      List<Parameter> basis,
      double[] x,
      Parameter parameter) {
    Optional<double[]> parts = equations.spaceAt(basis, x).parts(equations.gradient(parameter, x));
    double sum = uncertainty(set, parameter);
    if (basis.contains(parameter)) {
      return sum;
    }
    if (parts.isPresent()) {
      for (int i = 0; i < basis.size(); i++) {
        sum += Math.abs(parts.orElseThrow()[i]) * uncertainty(set, basis.get(i));
      }
    }
    return sum;
  }

  /** Returns how far a figure may be off by rounding and by the air its author took (1). */
  static double uncertainty(StatedSet set, Parameter parameter) {
    StatedSet.Figure figure = set.figures().get(parameter);
    double rounding = figure == null ? 0 : figure.rounding();
    if (parameter.level()) {
      double db = Math.min(COARSEST_LEVEL_DB, rounding);
      return Math.max(THREE_DIGITS, parameter.toLog(db)) + parameter.airLeeway();
    }
    return Math.min(COARSEST, Math.max(THREE_DIGITS, rounding)) + parameter.airLeeway();
  }

  double[] logs() {
    return solution.toArray();
  }

  boolean agrees() {
    return tests.stream().noneMatch(Test::fails);
  }

  long failures() {
    return tests.stream().filter(Test::fails).count();
  }

  /**
   * Returns, for each figure that misses, the figure and those that give it. They cannot all be
   * right, so whatever makes the rest agree takes one of them away.
   */
  List<Set<Parameter>> quarrels() {
    List<Set<Parameter>> quarrels = new ArrayList<>();
    double[] x = logs();
    RowSpace space = equations.spaceAt(basis, x);
    for (Test test : tests) {
      Optional<double[]> parts = space.parts(equations.gradient(test.parameter(), x));
      if (test.fails() && parts.isPresent()) {
        Set<Parameter> quarrel = EnumSet.of(test.parameter());
        for (int i = 0; i < basis.size(); i++) {
          if (Math.abs(parts.orElseThrow()[i]) > NO_PART) {
            quarrel.add(basis.get(i));
          }
        }
        quarrels.add(quarrel);
      }
    }
    return quarrels;
  }

  /** Returns the ways from its basis to every figure that follows. */
  RouteFinder routes(StatedSet set) {
    return new RouteFinder(
        equations,
        logs(),
        basis,
        basis.stream().mapToDouble(parameter -> uncertainty(set, parameter)).toArray());
  }
}

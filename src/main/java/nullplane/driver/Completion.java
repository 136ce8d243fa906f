package nullplane.driver;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import nullplane.units.Air;

/**
 * Completes a data sheet: derives every figure that follows from those stated, and finds those that
 * contradict the rest.
 *
 * <p>A sheet states more than it needs. From the most trusted independent figures (see {@link
 * Parameter}) a woofer is solved (see {@link SetEquations}), and every other statement is held
 * against it. Where one misses by more than leeway and rounding explain, the fewest statements are
 * sought whose removal makes the rest agree. Of equally few, those are taken that a known slip
 * explains (see {@link Cause}), then the least trusted. Each is then compared with what the rest
 * gives, so one slip is reported once, however many formulas it upsets.
 */
public final class Completion {
  private static final int MOST_AT_ONCE = 3;

  /** The easiest to measure first: ruler, ohmmeter, one sweep, a second one with an added mass. */
  private static final List<Parameter> BY_EFFORT =
      List.of(
          Parameter.DIAMETER,
          Parameter.AREA,
          Parameter.RESISTANCE,
          Parameter.RESONANCE,
          Parameter.MECHANICAL_Q,
          Parameter.ELECTRICAL_Q,
          Parameter.MOVING_MASS,
          Parameter.BARE_MASS,
          Parameter.FORCE_FACTOR,
          Parameter.TOTAL_Q,
          Parameter.LOSS,
          Parameter.COMPLIANCE,
          Parameter.STIFFNESS,
          Parameter.VOLUME,
          Parameter.LEVEL_VOLTAGE,
          Parameter.LEVEL_ONE_WATT,
          Parameter.EFFICIENCY);

  /** How often its error a substitute may bring into the figure it stands for (1). */
  private static final double WORST_SUBSTITUTE = 12;

  /** The same for the piston's size, which a ruler gives: masses are no substitute for it (1). */
  private static final double WORST_FOR_PISTON = 3;

  private final StatedSet set;
  private final Air air;
  private final SetEquations equations;

  private Completion(StatedSet set, Air air) {
    this.set = set;
    this.air = air;
    this.equations = new SetEquations(set.mounting(), air);
  }

  /**
   * Returns the completed set.
   *
   * <p>Valid where the piston is small against the wavelength. Where two woofers have the stated
   * figures, the one is meant whose coil damps more than its suspension and whose air weighs less
   * than twice its moving parts.
   *
   * @param set what a sheet states
   * @param air the air
   */
  public static CompletedSet of(StatedSet set, Air air) {
    return new Completion(set, air).complete();
  }

  /**
   * Returns what a sheet leaves open of the woofer, travel aside, each with what would settle it.
   *
   * @param stated what the sheet states, whatever the values
   */
  public static List<Gap> gaps(Set<Parameter> stated) {
    SetEquations any = new SetEquations(Mounting.FREE_AIR, Air.standard());
    RowSpace space = SetEquations.structure();
    List<Parameter> basis = new ArrayList<>();
    for (Parameter parameter : Parameter.values()) {
      if (stated.contains(parameter) && BY_EFFORT.contains(parameter)) {
        take(any, space, basis, parameter);
      }
    }
    List<Gap> gaps = new ArrayList<>();
    for (Parameter cheapest : BY_EFFORT) {
      if (space.contains(any.structureOf(cheapest))) {
        continue;
      }
      List<Parameter> instead = new ArrayList<>();
      for (Parameter other : BY_EFFORT) {
        if (other != cheapest && replaces(any, basis, other, cheapest)) {
          instead.add(other);
        }
      }
      gaps.add(new Gap(cheapest, instead));
      take(any, space, basis, cheapest);
    }
    return gaps;
  }

  private static void take(
      SetEquations any, RowSpace space, List<Parameter> basis, Parameter parameter) {
    if (space.add(any.structureOf(parameter))) {
      basis.add(parameter);
    }
  }

  private static boolean replaces(
      SetEquations any, List<Parameter> basis, Parameter other, Parameter cheapest) {
    RowSpace space = SetEquations.structure();
    basis.forEach(known -> space.add(any.structureOf(known)));
    if (!space.add(any.structureOf(other))) {
      return false;
    }
    Optional<double[]> parts = space.parts(any.structureOf(cheapest));
    double worst =
        cheapest == Parameter.DIAMETER || cheapest == Parameter.AREA
            ? WORST_FOR_PISTON
            : WORST_SUBSTITUTE;
    return parts.isPresent() && Math.abs(parts.orElseThrow()[basis.size()]) <= worst;
  }

  private CompletedSet complete() {
    List<Parameter> all = List.copyOf(set.figures().keySet());
    List<Parameter> removed = contradicted(all);
    List<Parameter> kept = without(all, removed);
    Trial trial = Trial.of(equations, set, kept).orElseThrow();
    Verdict verdict = verdict(trial, removed);
    RouteFinder routes = trial.routes(set);
    Map<Parameter, CompletedValue> values = new EnumMap<>(Parameter.class);
    double[] x = trial.logs();
    for (Parameter parameter : routes.known()) {
      double solved = parameter.fromLog(equations.log(parameter, x));
      OptionalDouble stated = set.value(parameter);
      boolean holds = stated.isPresent() && !removed.contains(parameter);
      double consistent = trial.basis().contains(parameter) ? stated.orElseThrow() : solved;
      values.put(
          parameter,
          new CompletedValue(
              parameter,
              holds ? stated.getAsDouble() : solved,
              consistent,
              holds
                  ? CompletedValue.Origin.STATED
                  : stated.isPresent()
                      ? CompletedValue.Origin.CORRECTED
                      : CompletedValue.Origin.DERIVED,
              routes.to(parameter)));
    }
    return new CompletedSet(
        set, values, verdict.contradictions(), agreements(trial), gaps(values.keySet()));
  }

  private List<Agreement> agreements(Trial trial) {
    List<Agreement> agreements = new ArrayList<>();
    for (Trial.Test test : trial.tests()) {
      agreements.add(
          new Agreement(
              test.parameter(),
              shown(test.parameter(), test.deviation()),
              shown(test.parameter(), test.tolerance())));
    }
    return agreements;
  }

  /** Returns a logarithm of a ratio as a share over 1; as dB for levels. */
  private static double shown(Parameter parameter, double log) {
    return parameter.level() ? parameter.fromLog(log) : Math.expm1(log);
  }

  /** Returns the statements that have to go for the rest to agree, in the order of trust. */
  private List<Parameter> contradicted(List<Parameter> all) {
    Optional<Trial> whole = Trial.of(equations, set, all);
    if (whole.map(Trial::agrees).orElse(false)) {
      return List.of();
    }
    List<Set<Parameter>> quarrels = whole.map(Trial::quarrels).orElse(List.of());
    for (int size = 1; size <= Math.min(MOST_AT_ONCE, all.size()); size++) {
      Optional<List<Parameter>> best =
          choices(all, size).stream()
              .filter(
                  choice ->
                      quarrels.stream().noneMatch(quarrel -> Collections.disjoint(quarrel, choice)))
              .filter(choice -> agree(without(all, choice)))
              .max(Comparator.comparing(choice -> merit(all, choice)));
      if (best.isPresent()) {
        return best.orElseThrow();
      }
    }
    return oneByOne(all);
  }

  private boolean agree(List<Parameter> used) {
    return Trial.of(equations, set, used).map(Trial::agrees).orElse(false);
  }

  /** Returns what speaks for removing statements: slips first, then little trust. */
  private double merit(List<Parameter> all, List<Parameter> choice) {
    Trial rest = Trial.of(equations, set, without(all, choice)).orElseThrow();
    double trust = 0;
    for (Parameter parameter : choice) {
      trust += all.indexOf(parameter);
    }
    return verdict(rest, choice).weight() * 1000.0 + trust;
  }

  /** Removes the statement that leaves the fewest misses, until the rest agrees. */
  private List<Parameter> oneByOne(List<Parameter> all) {
    EnumSet<Parameter> removed = EnumSet.noneOf(Parameter.class);
    List<Parameter> kept = all;
    while (!agree(kept)) {
      List<Parameter> now = kept;
      Parameter worst =
          now.stream()
              .min(
                  Comparator.comparing((Parameter parameter) -> misses(now, parameter))
                      .thenComparing(Comparator.reverseOrder()))
              .orElseThrow();
      removed.add(worst);
      kept = without(all, List.copyOf(removed));
    }
    return List.copyOf(removed);
  }

  private long misses(List<Parameter> used, Parameter removed) {
    return Trial.of(equations, set, without(used, List.of(removed)))
        .map(Trial::failures)
        .orElse(Long.MAX_VALUE);
  }

  private static List<Parameter> without(List<Parameter> all, List<Parameter> removed) {
    return all.stream().filter(parameter -> !removed.contains(parameter)).toList();
  }

  private static List<List<Parameter>> choices(List<Parameter> all, int size) {
    List<List<Parameter>> choices = new ArrayList<>();
    choose(all, 0, size, List.of(), choices);
    return choices;
  }

  private static void choose(
      List<Parameter> all,
      int from,
      int more,
      List<Parameter> chosen,
      List<List<Parameter>> choices) {
    if (more == 0) {
      choices.add(chosen);
      return;
    }
    for (int i = from; i <= all.size() - more; i++) {
      List<Parameter> next = new ArrayList<>(chosen);
      next.add(all.get(i));
      choose(all, i + 1, more - 1, List.copyOf(next), choices);
    }
  }

  /** Contradictions, and how well known slips explain them. */
  private record Verdict(List<Contradiction> contradictions, int weight) {}

  private Verdict verdict(Trial rest, List<Parameter> removed) {
    double[] x = rest.logs();
    RouteFinder routes = rest.routes(set);
    Set<Parameter> known = routes.known();
    List<Contradiction> contradictions = new ArrayList<>();
    int weight = 0;
    for (Parameter parameter : removed) {
      if (!known.contains(parameter)) {
        Contradiction impossible = impossible(rest, routes, parameter);
        contradictions.add(impossible);
        weight += impossible.found().isPresent() ? -1 : -2;
        continue;
      }
      double stated = set.value(parameter).orElseThrow();
      double tolerance = Trial.tolerance(equations, set, rest.basis(), x, parameter);
      double found = parameter.fromLog(equations.log(parameter, x));
      Slips.Likely likely =
          Slips.of(
              set,
              air,
              other ->
                  known.contains(other)
                      ? OptionalDouble.of(other.fromLog(equations.log(other, x)))
                      : OptionalDouble.empty(),
              parameter,
              found,
              Trial.roundingOf(equations, set, rest.basis(), x, parameter));
      weight += likely.weight();
      contradictions.add(
          new Contradiction(
              parameter,
              stated,
              OptionalDouble.of(found),
              shown(parameter, tolerance),
              routes.to(parameter),
              likely.cause()));
    }
    return new Verdict(contradictions, weight);
  }

  /** Returns a contradiction of a figure that no woofer can have, with its limit if known. */
  private Contradiction impossible(Trial rest, RouteFinder routes, Parameter parameter) {
    double[] x = rest.logs();
    OptionalDouble limit = OptionalDouble.empty();
    Route route = Route.stated();
    String why = "no woofer has this figure together with the others";
    Optional<Parameter> above = Trial.limitOf(equations, rest.basis(), x, parameter);
    if (above.isPresent()) {
      limit = OptionalDouble.of(Math.exp(equations.log(above.orElseThrow(), x)));
      route = routes.to(above.orElseThrow());
      why =
          parameter == Parameter.TOTAL_Q
              ? "no woofer is like that: Qts lies below both Qms and Qes"
              : "no woofer is like that: the mass without air is less than that with it";
    } else if (parameter == Parameter.MOVING_MASS && routes.known().contains(Parameter.AREA)) {
      limit = OptionalDouble.of(Math.exp(equations.logAirMass(x)));
      route = routes.to(Parameter.AREA);
      why = "no woofer is like that: the air alone that moves with this cone weighs more";
    }
    return new Contradiction(
        parameter,
        set.value(parameter).orElseThrow(),
        limit,
        shown(parameter, parameter.leeway()),
        route,
        new Cause(Cause.Kind.IMPOSSIBLE, why));
  }
}

package nullplane.driver;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * The way from stated figures to a derived one, step by step; the last step gives the figure.
 *
 * @param steps the steps in order; none for a figure that is stated
 */
public record Route(List<Step> steps) {

  /**
   * One step.
   *
   * @param result what it gives
   * @param value the value it gives (SI; dB for levels)
   * @param relation the formula; nothing where several formulas have to be solved together
   * @param inputs what it is computed from
   */
  public record Step(
      Parameter result, double value, Optional<Relation> relation, List<Parameter> inputs) {
    /** Copies the list. */
    public Step {
      inputs = List.copyOf(inputs);
    }

    /** Returns the step in words: what gives what, by which formula. */
    public String words() {
      return symbols(inputs)
          + (inputs.size() == 1 ? " gives " : " give ")
          + result.symbol()
          + relation
              .map(known -> " (" + known.formula() + ")")
              .orElse(" (their formulas solved together)");
    }
  }

  /** Copies the list. */
  public Route {
    steps = List.copyOf(steps);
  }

  /** Returns the way of a figure that is stated. */
  static Route stated() {
    return new Route(List.of());
  }

  /** Returns the steps in words. */
  public String words() {
    return String.join("; ", steps.stream().map(Step::words).toList());
  }

  /** Returns the figures it starts from, in the order of first use. */
  public List<Parameter> origins() {
    Set<Parameter> results = new LinkedHashSet<>();
    steps.forEach(step -> results.add(step.result()));
    Set<Parameter> origins = new LinkedHashSet<>();
    steps.forEach(step -> origins.addAll(step.inputs()));
    origins.removeAll(results);
    return List.copyOf(origins);
  }

  /** Returns the symbols of figures, "fs, Mms and Cms". */
  public static String symbols(List<Parameter> parameters) {
    List<String> symbols = new ArrayList<>(parameters.stream().map(Parameter::symbol).toList());
    if (symbols.size() < 2) {
      return String.join("", symbols);
    }
    String last = symbols.remove(symbols.size() - 1);
    return String.join(", ", symbols) + " and " + last;
  }
}

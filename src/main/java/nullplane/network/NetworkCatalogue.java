package nullplane.network;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import nullplane.units.Range;

/**
 * The passive networks a stack may be given: every combination of the listed parts that does
 * something, and none. Index 0 of a list is "none", index k its k-th entry, so that neighbouring
 * indices are neighbouring values, and the least value is the neighbour of none.
 *
 * <p>A choice is canonical if it means what it says: parts across the stack only with a part in
 * series, damping only with a capacitor. Other choices mean the canonical one that {@link
 * #canonical} gives, so that every string of genes is a network.
 *
 * @param resistors series resistors, rising
 * @param coils series coils, rising
 * @param capacitors shunt capacitors, rising
 * @param dampings damping resistors, rising
 * @param resonances conjugates of the resonance, in an order of the caller's
 * @param zobels conjugates of the inductance, in an order of the caller's
 */
public record NetworkCatalogue(
    List<Resistor> resistors,
    List<SeriesCoil> coils,
    List<Capacitor> capacitors,
    List<Resistor> dampings,
    List<MotionalConjugate> resonances,
    List<ZobelNetwork> zobels) {
  /** Copies the lists and checks that those of single parts rise. */
  public NetworkCatalogue {
    resistors = rising(resistors, "series resistors");
    coils = rising(coils, "series coils");
    capacitors = rising(capacitors, "shunt capacitors");
    dampings = rising(dampings, "damping resistors");
    resonances = List.copyOf(resonances);
    zobels = List.copyOf(zobels);
  }

  private static <P extends Part> List<P> rising(List<P> parts, String name) {
    double last = 0;
    for (P part : parts) {
      if (!(part.value() > last)) {
        throw new IllegalArgumentException(
            name + " hold " + part.value() + " after " + last + "; allowed: rising, above 0");
      }
      last = part.value();
    }
    return List.copyOf(parts);
  }

  /**
   * Returns the catalogue of one coil, one capacitor and one damping resistor at most.
   *
   * @param make how coils are made
   * @param coilSeries series of the coils
   * @param inductanceH their range (H)
   * @param capacitorSeries series of the capacitors
   * @param capacitanceF their range (F)
   * @param dampingSeries series of the damping resistors
   * @param dampingOhm their range (ohm)
   */
  public static NetworkCatalogue of(
      CoilMake make,
      PreferredValues coilSeries,
      Range inductanceH,
      PreferredValues capacitorSeries,
      Range capacitanceF,
      PreferredValues dampingSeries,
      Range dampingOhm) {
    return new NetworkCatalogue(
        List.of(),
        coilSeries.between(inductanceH.lower(), inductanceH.upper()).stream()
            .map(make::coil)
            .toList(),
        capacitorSeries.between(capacitanceF.lower(), capacitanceF.upper()).stream()
            .map(Capacitor::new)
            .toList(),
        resistorsBetween(dampingSeries, dampingOhm),
        List.of(),
        List.of());
  }

  /**
   * Returns what a workshop keeps for woofers: coils E12 0.1 mH to 33 mH of 1.4 mm copper,
   * capacitors E6 10 uF to 680 uF, damping E6 1 ohm to 10 ohm. The limits are common practice.
   */
  public static NetworkCatalogue standard() {
    return of(
        CoilMake.standard(),
        PreferredValues.E12,
        new Range(1e-4, 33e-3),
        PreferredValues.E6,
        new Range(10e-6, 680e-6),
        PreferredValues.E6,
        new Range(1, 10));
  }

  private static List<Resistor> resistorsBetween(PreferredValues series, Range ohm) {
    return series.between(ohm.lower(), ohm.upper()).stream().map(Resistor::new).toList();
  }

  /** Returns this catalogue with other series resistors. */
  public NetworkCatalogue withResistors(PreferredValues series, Range ohm) {
    return new NetworkCatalogue(
        resistorsBetween(series, ohm), coils, capacitors, dampings, resonances, zobels);
  }

  /** Returns this catalogue with other conjugates of the resonance. */
  public NetworkCatalogue withResonances(List<MotionalConjugate> others) {
    return new NetworkCatalogue(resistors, coils, capacitors, dampings, others, zobels);
  }

  /** Returns this catalogue with other conjugates of the inductance. */
  public NetworkCatalogue withZobels(List<ZobelNetwork> others) {
    return new NetworkCatalogue(resistors, coils, capacitors, dampings, resonances, others);
  }

  /** Returns the number of choices on an axis, "none" included. */
  public int options(CatalogueAxis axis) {
    return 1
        + switch (axis) {
          case RESISTOR -> resistors.size();
          case COIL -> coils.size();
          case CAPACITOR -> capacitors.size();
          case DAMPING -> dampings.size();
          case RESONANCE -> resonances.size();
          case ZOBEL -> zobels.size();
        };
  }

  /** Returns the choice that means the same and names no part that does nothing. */
  public NetworkChoice canonical(NetworkChoice choice) {
    if (choice.resistor() == 0 && choice.coil() == 0) {
      return NetworkChoice.NONE;
    }
    return choice.capacitor() == 0 && choice.damping() != 0
        ? choice.with(CatalogueAxis.DAMPING, 0)
        : choice;
  }

  /** Returns the number of canonical choices, {@link NetworkChoice#NONE} included. */
  public long size() {
    long series = (long) (resistors.size() + 1) * (coils.size() + 1) - 1;
    long shunts = 1 + (long) capacitors.size() * (dampings.size() + 1);
    return 1 + series * shunts * (resonances.size() + 1) * (zobels.size() + 1);
  }

  /**
   * Returns the number of canonical choices of no more than a number of parts, {@link
   * NetworkChoice#NONE} included: the product of how many ways each place can be filled, sorted by
   * parts.
   *
   * @param mostParts most parts, 0 or more
   */
  public long sizeWithin(int mostParts) {
    long[] series = {
      0, (long) resistors.size() + coils.size(), (long) resistors.size() * coils.size()
    };
    long[] capacitor = {1, capacitors.size(), (long) capacitors.size() * dampings.size()};
    long damped = resonances.stream().filter(c -> c.resistor().isPresent()).count();
    long[] resonance = {1, 0, resonances.size() - damped, damped};
    long[] zobel = {1, 0, zobels.size()};
    long[] ways = product(product(product(series, capacitor), resonance), zobel);
    long sum = 1;
    for (int parts = 0; parts < ways.length && parts <= mostParts; parts++) {
      sum += ways[parts];
    }
    return sum;
  }

  private static long[] product(long[] a, long[] b) {
    long[] product = new long[a.length + b.length - 1];
    for (int i = 0; i < a.length; i++) {
      for (int j = 0; j < b.length; j++) {
        product[i + j] += a[i] * b[j];
      }
    }
    return product;
  }

  /**
   * Returns every canonical choice once, none first, the axes as digits in the order of {@link
   * CatalogueAxis}: choices that differ in the coil alone follow each other and share a load.
   */
  public Stream<NetworkChoice> choices() {
    return every(1);
  }

  /**
   * Returns the canonical choices on every step-th value of each list, from the first, with "none"
   * on each axis as well: a coarse net over the catalogue, in the order of {@link #choices}. From
   * here {@link #around} leads to the nearest best network; capacitor and damping trade against
   * each other, so start from several, of each number of parts.
   *
   * @param step 1 or more
   */
  public List<NetworkChoice> coarse(int step) {
    if (step < 1) {
      throw new IllegalArgumentException("step is " + step + "; allowed: 1 or more");
    }
    return every(step).toList();
  }

  private Stream<NetworkChoice> every(int step) {
    Stream<NetworkChoice> choices = Stream.of(NetworkChoice.NONE);
    for (CatalogueAxis axis : CatalogueAxis.values()) {
      int options = options(axis);
      choices =
          choices.flatMap(
              c ->
                  Stream.iterate(0, i -> i < options, i -> i == 0 ? 1 : i + step)
                      .map(i -> c.with(axis, i)));
    }
    return choices.filter(c -> canonical(c).equals(c));
  }

  /**
   * Returns the choices of the same parts, each value left, or moved a number of steps either way
   * where the list goes on: the next finer net round a choice. The choice itself comes first.
   *
   * @param choice a canonical choice
   * @param step 1 or more
   */
  public List<NetworkChoice> around(NetworkChoice choice, int step) {
    List<NetworkChoice> found = List.of(checked(choice));
    for (CatalogueAxis axis : CatalogueAxis.values()) {
      int at = choice.on(axis);
      if (at == 0) {
        continue;
      }
      List<NetworkChoice> more = new ArrayList<>(found);
      for (int other : new int[] {at - step, at + step}) {
        if (other >= 1 && other < options(axis)) {
          found.forEach(c -> more.add(c.with(axis, other)));
        }
      }
      found = more;
    }
    return found;
  }

  /**
   * Returns the canonical choices one step away on one axis, where the step may add the least part
   * or take it away; never the choice itself. For mutation and local search.
   *
   * @param choice a canonical choice
   */
  public List<NetworkChoice> neighbours(NetworkChoice choice) {
    checked(choice);
    Set<NetworkChoice> found = new LinkedHashSet<>();
    for (CatalogueAxis axis : CatalogueAxis.values()) {
      int at = choice.on(axis);
      for (int other : new int[] {at - 1, at + 1}) {
        if (other >= 0 && other < options(axis)) {
          found.add(canonical(choice.with(axis, other)));
        }
      }
    }
    found.remove(choice);
    return List.copyOf(found);
  }

  private NetworkChoice checked(NetworkChoice choice) {
    for (CatalogueAxis axis : CatalogueAxis.values()) {
      if (choice.on(axis) >= options(axis)) {
        throw new IllegalArgumentException(
            "choice " + choice.on(axis) + " of " + axis + "; allowed: 0 .. " + (options(axis) - 1));
      }
    }
    return choice;
  }

  /**
   * Returns the network of a choice, canonical or not.
   *
   * @throws IllegalArgumentException if an index is beyond its list
   */
  public LowPassBranch branch(NetworkChoice choice) {
    NetworkChoice c = canonical(checked(choice));
    return new LowPassBranch(
        pick(resistors, c.resistor()),
        c.coil() == 0 ? SeriesCoil.NONE : coils.get(c.coil() - 1),
        pick(capacitors, c.capacitor())
            .map(k -> new ShuntCapacitor(k, pick(dampings, c.damping()))),
        pick(resonances, c.resonance()),
        pick(zobels, c.zobel()));
  }

  private static <T> Optional<T> pick(List<T> list, int index) {
    return index == 0 ? Optional.empty() : Optional.of(list.get(index - 1));
  }
}

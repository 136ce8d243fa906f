package nullplane.io;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import nullplane.network.Capacitor;
import nullplane.network.CoilMake;
import nullplane.network.NetworkCatalogue;
import nullplane.network.NetworkOffer;
import nullplane.network.Part;
import nullplane.network.PreferredValues;
import nullplane.network.Resistor;
import nullplane.network.SeriesCoil;
import nullplane.units.ConductorMaterial;
import nullplane.units.Range;

/**
 * Reads the passive parts that may stand before a stack. What is left out is as in {@link
 * NetworkOffer#standard}.
 */
final class PassiveSection {
  private static final QuantityKey MOST_PARTS =
      QuantityKey.of("most-parts", Dimension.NUMBER, "1 .. 4", "2");
  private static final String COILS = "coils";
  private static final String CAPACITORS = "capacitors";
  private static final String RESISTORS = "resistors";
  private static final String DAMPING = "damping";

  static final List<String> KEYS =
      List.of(MOST_PARTS.name(), COILS, CAPACITORS, RESISTORS, DAMPING);

  private static final QuantityKey INDUCTANCE =
      QuantityKey.of("range", Dimension.INDUCTANCE, "0.01 mH .. 200 mH", "0.1 mH .. 33 mH");
  private static final QuantityKey CAPACITANCE =
      QuantityKey.of("range", Dimension.CAPACITANCE, "0.1 uF .. 10000 uF", "10 uF .. 680 uF");
  private static final QuantityKey RESISTANCE =
      QuantityKey.of("range", Dimension.RESISTANCE, "0.01 ohm .. 100 ohm", "0.47 ohm .. 10 ohm");
  private static final QuantityKey WIRE =
      QuantityKey.of("wire", Dimension.LENGTH, "0.2 mm .. 4 mm", "1.4 mm");
  private static final QuantityKey PER_INDUCTANCE =
      QuantityKey.of(
          "resistance", Dimension.RESISTANCE_PER_INDUCTANCE, "0 ohm/mH .. 10 ohm/mH", "0.3 ohm/mH");
  private static final WordKey<ConductorMaterial> MATERIAL = CoilBriefSection.conductor("material");
  private static final WordKey<PreferredValues> SERIES =
      new WordKey<PreferredValues>("series")
          .with("E6", PreferredValues.E6)
          .with("E12", PreferredValues.E12)
          .with("E24", PreferredValues.E24);

  private static final List<String> PART_KEYS = List.of(SERIES.name(), INDUCTANCE.name());
  private static final List<String> COIL_KEYS =
      List.of(
          SERIES.name(), INDUCTANCE.name(), WIRE.name(), MATERIAL.name(), PER_INDUCTANCE.name());
  private static final NetworkOffer.Passive USUAL = NetworkOffer.standard();

  private final Section section;

  private PassiveSection(Section section) {
    this.section = section;
  }

  /** Returns the offer, or nothing when a value is at fault or there are too many networks. */
  static Optional<NetworkOffer.Passive> read(Section section) {
    return new PassiveSection(section).offer();
  }

  private Optional<NetworkOffer.Passive> offer() {
    NetworkCatalogue usual = USUAL.catalogue();
    Optional<Integer> most = mostParts();
    Optional<List<SeriesCoil>> coils = coils(usual.coils());
    Optional<List<Capacitor>> capacitors =
        parts(CAPACITORS, "{series: E6, range: 10 uF .. 680 uF}", CAPACITANCE, usual.capacitors())
            .map(values -> values.stream().map(Capacitor::new).toList());
    Optional<List<Resistor>> resistors =
        parts(RESISTORS, "{series: E6, range: 0.47 ohm .. 10 ohm}", RESISTANCE, usual.resistors())
            .map(values -> values.stream().map(Resistor::new).toList());
    Optional<List<Resistor>> dampings =
        parts(DAMPING, "{series: E6, range: 1 ohm .. 10 ohm}", RESISTANCE, usual.dampings())
            .map(values -> values.stream().map(Resistor::new).toList());
    if (most.isEmpty()
        || coils.isEmpty()
        || capacitors.isEmpty()
        || resistors.isEmpty()
        || dampings.isEmpty()) {
      return Optional.empty();
    }
    NetworkCatalogue catalogue =
        new NetworkCatalogue(
            resistors.orElseThrow(),
            coils.orElseThrow(),
            capacitors.orElseThrow(),
            dampings.orElseThrow(),
            usual.resonances(),
            usual.zobels());
    return canBeTried(catalogue, most.orElseThrow())
        ? Optional.of(new NetworkOffer.Passive(catalogue, most.orElseThrow()))
        : Optional.empty();
  }

  private Optional<Integer> mostParts() {
    if (!section.has(MOST_PARTS.name())) {
      return Optional.of(USUAL.mostParts());
    }
    OptionalDouble stated = section.optional(MOST_PARTS);
    if (stated.isEmpty()) {
      return Optional.empty();
    }
    if (stated.getAsDouble() != Math.rint(stated.getAsDouble())) {
      section.fault(
          MOST_PARTS.name(), "a whole number is needed", "1, 2, 3, 4", MOST_PARTS.write());
      return Optional.empty();
    }
    return Optional.of((int) stated.getAsDouble());
  }

  private Optional<List<SeriesCoil>> coils(List<SeriesCoil> usual) {
    String example = "{series: E12, range: 0.1 mH .. 33 mH, wire: 1.4 mm, material: copper}";
    if (!section.has(COILS)) {
      return Optional.of(usual);
    }
    if (CrossoverSection.isNone(section, COILS)) {
      return Optional.of(List.of());
    }
    Optional<Section> block = CrossoverSection.block(section, COILS, example, COIL_KEYS);
    Optional<List<Double>> values =
        block.flatMap(b -> values(b, INDUCTANCE, PreferredValues.E12, spanOf(usual)));
    Optional<CoilMake> make = block.flatMap(PassiveSection::make);
    return values.isPresent() && make.isPresent()
        ? values.map(list -> list.stream().map(make.orElseThrow()::coil).toList())
        : Optional.empty();
  }

  /** How coils are made: wound from a wire, or with a stated resistance. */
  private static Optional<CoilMake> make(Section block) {
    CoilMake.Wound usual = CoilMake.standard();
    boolean stated = block.has(PER_INDUCTANCE.name());
    boolean wound = block.has(WIRE.name()) || block.has(MATERIAL.name());
    OptionalDouble resistance = block.optional(PER_INDUCTANCE);
    OptionalDouble wire = block.optional(WIRE);
    Optional<ConductorMaterial> material = MATERIAL.one(block);
    if (stated && wound) {
      block.fault(
          PER_INDUCTANCE.name(),
          "the resistance follows from wire and material already",
          "resistance alone, or wire and material",
          "leave resistance out, or the others");
      return Optional.empty();
    }
    if (stated) {
      return resistance.isPresent()
          ? Optional.of(new CoilMake.Stated(resistance.getAsDouble(), 0))
          : Optional.empty();
    }
    if ((wire.isEmpty() && block.has(WIRE.name()))
        || (material.isEmpty() && block.has(MATERIAL.name()))) {
      return Optional.empty();
    }
    return Optional.of(
        new CoilMake.Wound(wire.orElse(usual.wireDiameterM()), material.orElse(usual.material())));
  }

  private Optional<List<Double>> parts(
      String key, String example, QuantityKey range, List<? extends Part> usual) {
    if (!section.has(key)) {
      return Optional.of(usual.stream().map(Part::value).toList());
    }
    if (CrossoverSection.isNone(section, key)) {
      return Optional.of(List.of());
    }
    return CrossoverSection.block(section, key, example, PART_KEYS)
        .flatMap(block -> values(block, range, PreferredValues.E6, spanOf(usual)));
  }

  private static Range spanOf(List<? extends Part> parts) {
    return new Range(parts.get(0).value(), parts.get(parts.size() - 1).value());
  }

  /** The values of a series within a range; a fault if there is none. */
  private static Optional<List<Double>> values(
      Section block, QuantityKey key, PreferredValues usualSeries, Range usualRange) {
    Optional<PreferredValues> series = SERIES.one(block);
    Optional<Range> range = block.optionalRange(key);
    if ((series.isEmpty() && block.has(SERIES.name()))
        || (range.isEmpty() && block.has(key.name()))) {
      return Optional.empty();
    }
    PreferredValues among = series.orElse(usualSeries);
    Range within = range.orElse(usualRange);
    List<Double> values = among.between(within.lower(), within.upper());
    if (values.isEmpty()) {
      double nearest = among.nearest(Math.sqrt(within.lower() * within.upper()));
      block.fault(
          key.name(),
          "no value of " + among + " lies in this range",
          "a range that holds a value, such as " + shown(nearest, key),
          key.write());
      return Optional.empty();
    }
    return Optional.of(values);
  }

  private static String shown(double value, QuantityKey key) {
    String unit = key.dimension().usualUnit();
    double factor =
        key.dimension().factor(unit).orElseThrow(IllegalStateException::new).doubleValue();
    return Quantity.digits(value / factor) + " " + unit;
  }

  private boolean canBeTried(NetworkCatalogue catalogue, int mostParts) {
    if (catalogue.coils().isEmpty() && catalogue.resistors().isEmpty()) {
      section.fault(
          COILS,
          "no network can be made with neither coils nor resistors in series",
          "coils or resistors",
          "write kind: none if no network is wanted");
      return false;
    }
    long networks = catalogue.sizeWithin(mostParts);
    if (networks > NetworkOffer.Passive.MOST_NETWORKS) {
      tooMany(
          catalogue,
          networks + " networks of up to " + mostParts + " parts are too many to try",
          NetworkOffer.Passive.MOST_NETWORKS,
          "lower most-parts");
      return false;
    }
    if (catalogue.size() > NetworkOffer.Passive.MOST_IN_CATALOGUE) {
      tooMany(
          catalogue,
          catalogue.size() + " networks are too many, before most-parts leaves any out",
          NetworkOffer.Passive.MOST_IN_CATALOGUE,
          "write damping: none");
      return false;
    }
    return true;
  }

  /** The fault stands at the longest list, and names the lists by length. */
  private void tooMany(NetworkCatalogue catalogue, String problem, long most, String otherWay) {
    Map<String, Integer> lengths = new LinkedHashMap<>();
    lengths.put(COILS, catalogue.coils().size());
    lengths.put(CAPACITORS, catalogue.capacitors().size());
    lengths.put(RESISTORS, catalogue.resistors().size());
    lengths.put(DAMPING, catalogue.dampings().size());
    List<Map.Entry<String, Integer>> longest = new ArrayList<>(lengths.entrySet());
    longest.sort(Map.Entry.comparingByValue(Comparator.reverseOrder()));
    String lists =
        longest.stream()
            .filter(list -> list.getValue() > 0)
            .map(list -> list.getKey() + " (" + list.getValue() + " values)")
            .collect(Collectors.joining(", "));
    section.fault(
        longest.get(0).getKey(),
        problem,
        most + " at most",
        "shorten a range or take a coarser series: " + lists + "; or " + otherWay);
  }
}

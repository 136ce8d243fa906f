package nullplane.io;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import nullplane.network.ActiveBranch;
import nullplane.network.Capacitor;
import nullplane.network.Correction;
import nullplane.network.CrossoverFilter;
import nullplane.network.FilterAlignment;
import nullplane.network.LowPassBranch;
import nullplane.network.MotionalConjugate;
import nullplane.network.Part;
import nullplane.network.PartPlace;
import nullplane.network.Resistor;
import nullplane.network.SeriesCoil;
import nullplane.network.ShuntCapacitor;
import nullplane.network.StackNetwork;
import nullplane.network.ZobelNetwork;

/** Reads a network back that {@link NetworkJson} wrote. */
final class BriefNetwork {
  private final Map<PartPlace, Part> parts = new EnumMap<>(PartPlace.class);

  private BriefNetwork() {}

  /**
   * Returns the network; empty if a kind, place or filter is not known, or a number is missing.
   *
   * @param node the object that holds it
   * @throws IllegalArgumentException if a value is out of range, or parts do not make a network
   */
  static Optional<StackNetwork> of(YamlNode node) {
    return switch (BriefReader.text(node, "kind")) {
      case "passive" -> new BriefNetwork().passive(node);
      case "active" -> active(node);
      default -> Optional.empty();
    };
  }

  private Optional<StackNetwork> passive(YamlNode node) {
    if (!(BriefReader.find(node, "parts") instanceof YamlNode.Sequence list)) {
      return Optional.empty();
    }
    for (YamlNode item : list.items()) {
      Optional<PartPlace> place = placeOf(BriefReader.text(item, "designator"));
      if (place.isEmpty() || parts.containsKey(place.get())) {
        return Optional.empty();
      }
      parts.put(place.get(), part(place.get(), item));
    }
    LowPassBranch branch =
        new LowPassBranch(
            resistor(PartPlace.SERIES_RESISTOR),
            coil(PartPlace.SERIES_COIL),
            capacitor(PartPlace.SHUNT_CAPACITOR)
                .map(c -> new ShuntCapacitor(c, resistor(PartPlace.DAMPING_RESISTOR))),
            capacitor(PartPlace.RESONANCE_CAPACITOR)
                .map(
                    c ->
                        new MotionalConjugate(
                            resistor(PartPlace.RESONANCE_RESISTOR),
                            coil(PartPlace.RESONANCE_COIL),
                            c)),
            capacitor(PartPlace.ZOBEL_CAPACITOR)
                .flatMap(c -> resistor(PartPlace.ZOBEL_RESISTOR).map(r -> new ZobelNetwork(r, c))));
    boolean allUsed = branch.partCount() == parts.size();
    return allUsed ? Optional.of(branch) : Optional.empty();
  }

  private static Optional<PartPlace> placeOf(String designator) {
    return List.of(PartPlace.values()).stream()
        .filter(place -> place.designator().equals(designator))
        .findFirst();
  }

  private static Part part(PartPlace place, YamlNode item) {
    return switch (place.kind()) {
      case RESISTOR -> new Resistor(number(item, "resistanceOhm"));
      case CAPACITOR -> new Capacitor(number(item, "capacitanceF"));
      case COIL ->
          new SeriesCoil(
              number(item, "inductanceH"), number(item, "resistanceOhm"), number(item, "copperKg"));
    };
  }

  private Optional<Resistor> resistor(PartPlace place) {
    return parts.get(place) instanceof Resistor resistor ? Optional.of(resistor) : Optional.empty();
  }

  private Optional<Capacitor> capacitor(PartPlace place) {
    return parts.get(place) instanceof Capacitor capacitor
        ? Optional.of(capacitor)
        : Optional.empty();
  }

  private SeriesCoil coil(PartPlace place) {
    return parts.get(place) instanceof SeriesCoil coil ? coil : SeriesCoil.NONE;
  }

  private static Optional<StackNetwork> active(YamlNode node) {
    Optional<CrossoverFilter> lowPass = Optional.empty();
    Optional<YamlNode> filter = BriefReader.child(node, "lowPass");
    if (filter.isPresent()) {
      lowPass =
          List.of(FilterAlignment.values()).stream()
              .filter(a -> a.label().equals(BriefReader.text(filter.get(), "shape")))
              .findFirst()
              .map(a -> new CrossoverFilter(a, number(filter.get(), "cornerHz")));
      if (lowPass.isEmpty()) {
        return Optional.empty();
      }
    }
    Optional<Correction> correction = Optional.empty();
    Optional<YamlNode> bend = BriefReader.child(node, "correction");
    if (bend.isPresent()) {
      double hz = number(bend.get(), "frequencyHz");
      double gain = number(bend.get(), "gain");
      switch (BriefReader.text(bend.get(), "kind")) {
        case "shelf" -> correction = Optional.of(new Correction.Shelf(hz, gain));
        case "peak" ->
            correction = Optional.of(new Correction.Peaking(hz, number(bend.get(), "q"), gain));
        default -> {
          return Optional.empty();
        }
      }
    }
    return Optional.of(new ActiveBranch(number(node, "gain"), lowPass, correction));
  }

  private static double number(YamlNode node, String field) {
    String text = BriefReader.text(node, field);
    try {
      double value = Double.parseDouble(text);
      if (Double.isFinite(value)) {
        return value;
      }
    } catch (NumberFormatException e) {
      // told below
    }
    throw new IllegalArgumentException(
        "the network's " + field + " is \"" + Excerpt.of(text) + "\"; allowed: a number");
  }
}

package nullplane.io;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import nullplane.motor.CoilBrief;
import nullplane.motor.MagnetMaterial;
import nullplane.motor.WindingCatalogue;
import nullplane.units.ConductorMaterial;
import nullplane.units.Range;

/** Reads what the coil and motor of a spec's woofer may be made from. */
final class CoilBriefSection {
  private static final WordKey<ConductorMaterial> WIRE = conductor("wire");
  private static final WordKey<MagnetMaterial> MAGNET =
      new WordKey<MagnetMaterial>("magnet")
          .with("ferrite", MagnetMaterial.FERRITE)
          .with("neodymium", MagnetMaterial.NEODYMIUM);

  private final Section section;
  private final Optional<Section> ranges;
  private final Optional<Range> resistance;
  private final Optional<Range> flux;
  private final Optional<List<Double>> gaps;
  private final Optional<List<Double>> formers;
  private final Optional<MagnetMaterial> magnet;
  private final List<ConductorMaterial> wires;

  /** Returns a key that names what wire is made of. */
  static WordKey<ConductorMaterial> conductor(String key) {
    return new WordKey<ConductorMaterial>(key)
        .with("copper", ConductorMaterial.COPPER)
        .with("aluminium", ConductorMaterial.ALUMINIUM)
        .with("copper-clad", ConductorMaterial.COPPER_CLAD_ALUMINIUM);
  }

  /**
   * Reads the keys; each that is wrong is a fault.
   *
   * @param section the woofer
   * @param ranges its block of ranges, if there is one
   */
  CoilBriefSection(Section section, Optional<Section> ranges) {
    this.section = section;
    this.ranges = ranges;
    resistance = section.optionalRange(WooferKeys.RE);
    flux = section.optionalRange(WooferKeys.FLUX);
    gaps = gapHeights();
    formers = lengths(WooferKeys.FORMER, "one value or a list, not a range");
    magnet = MAGNET.one(section);
    wires = WIRE.several(section);
  }

  /**
   * Returns the brief, or nothing when a value is at fault or no coil can be wound within it.
   *
   * @param usual what the spec may leave out
   * @param travelM one-way travel asked for (m)
   */
  Optional<CoilBrief> brief(SizeDefaults usual, Range travelM) {
    if (isFaulty(WooferKeys.RE, resistance)
        || isFaulty(WooferKeys.FLUX, flux)
        || isFaulty(WooferKeys.GAP_HEIGHT, gaps)
        || isFaulty(WooferKeys.FORMER, formers)
        || (magnet.isEmpty() && section.has(MAGNET.name()))
        || (wires.isEmpty() && section.has(WIRE.name()))) {
      return Optional.empty();
    }
    MagnetMaterial metal = magnet.orElse(MagnetMaterial.FERRITE);
    CoilBrief brief =
        new CoilBrief(
            resistance.orElse(Range.pinned(SizeDefaults.RESISTANCE_OHM)),
            flux.map(range -> range.isPinned() ? CoilBrief.fluxUpTo(range.upper()) : range)
                .orElseGet(() -> CoilBrief.fluxUpTo(metal.usualFluxT())),
            gaps.orElse(usual.gapHeightsM()),
            formers.orElse(usual.formersM()),
            wires.isEmpty() ? List.of(ConductorMaterial.COPPER) : wires,
            CoilBrief.USUAL_LAYERS,
            metal);
    return isWindable(brief, travelM) ? Optional.of(brief) : Optional.empty();
  }

  private boolean isFaulty(QuantityKey key, Optional<?> value) {
    return value.isEmpty() && section.has(key.name());
  }

  /** Gap heights: one, a list, or the stock plates within a range. */
  private Optional<List<Double>> gapHeights() {
    QuantityKey key = WooferKeys.GAP_HEIGHT;
    if (section.node(key.name()).filter(YamlNode.Sequence.class::isInstance).isPresent()) {
      return lengths(key, "values, not ranges");
    }
    Optional<Range> range = section.optionalRange(key);
    if (range.isEmpty() || range.orElseThrow().isPinned()) {
      return range.map(value -> List.of(value.lower()));
    }
    List<Double> within =
        SizeDefaults.STOCK_GAPS_M.stream().filter(range.orElseThrow()::contains).toList();
    if (within.isEmpty()) {
      section.fault(
          key.name(),
          "no plate from stock is that thick",
          "3, 4, 5, 6, 8, 10, 12, 14, 15, 16 mm and so on within the range",
          "widen the range, or write one value");
      return Optional.empty();
    }
    return Optional.of(within);
  }

  /** One length or a list of them; nothing if it is absent or at fault. */
  private Optional<List<Double>> lengths(QuantityKey key, String allowed) {
    List<YamlNode> items = WordKey.items(section, key.name());
    List<Double> values = new ArrayList<>();
    for (YamlNode item : items) {
      if (!(item instanceof YamlNode.Scalar scalar)) {
        fault(item, key.name(), "a length is needed here", key.limits().words(), key.write());
        continue;
      }
      try {
        Range value = Quantity.parseRange(scalar.text(), key.form());
        if (!value.isPinned()) {
          fault(item, key.name(), "a single length is needed", allowed, key.write());
        } else if (!key.limits().range().contains(value.lower())) {
          fault(item, key.name(), "out of range", key.limits().words(), key.write());
        } else {
          values.add(value.lower());
        }
      } catch (UnreadableQuantityException e) {
        fault(item, key.name(), e.problem(), key.limits().words(), e.hint());
      }
    }
    return items.isEmpty() || values.size() < items.size()
        ? Optional.empty()
        : Optional.of(values.stream().distinct().sorted().toList());
  }

  private void fault(YamlNode item, String key, String problem, String allowed, String hint) {
    section.faultAt(item.line(), section.path(key), item.kind(), problem, allowed, hint);
  }

  /** Whether any stock wire gives Re and travel at once; if not, which limit to widen. */
  private boolean isWindable(CoilBrief brief, Range travelM) {
    if (!WindingCatalogue.of(brief, travelM).windings().isEmpty()) {
      return true;
    }
    Range resistance = CoilBrief.windowOf(brief.resistanceOhm());
    Range travel = CoilBrief.windowOf(travelM);
    WindingCatalogue.Nearest nearest = WindingCatalogue.nearest(brief, travelM);
    List<String> ways = new ArrayList<>();
    if (nearest.resistanceOhm().isPresent()) {
      ways.add("re to " + digits(nearest.resistanceOhm().getAsDouble()) + " ohm");
    }
    if (nearest.travelM().isPresent()) {
      ways.add("range.travel to " + digits(nearest.travelM().getAsDouble() * 1e3) + " mm");
    }
    String problem =
        "no coil of stock wire has both "
            + digits(resistance.lower())
            + " to "
            + digits(resistance.upper())
            + " ohm and a travel of "
            + digits(travel.lower() * 1e3)
            + " to "
            + digits(travel.upper() * 1e3)
            + " mm on these formers and gap heights";
    String hint =
        (ways.isEmpty() ? "widen" : "widen " + String.join(", or ", ways) + ", or allow")
            + " other values of former, gap-height or wire";
    if (ranges.isPresent() && ranges.orElseThrow().has("travel") && !section.has("re")) {
      ranges.orElseThrow().fault("travel", problem, "", hint);
    } else {
      section.fault("re", problem, "", hint);
    }
    return false;
  }

  private static String digits(double value) {
    return Quantity.digits(Math.round(value * 1000) / 1000.0);
  }
}

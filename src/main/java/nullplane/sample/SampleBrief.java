package nullplane.sample;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import nullplane.driver.RoundWireCoil;
import nullplane.driver.Woofer;
import nullplane.motor.Former;
import nullplane.motor.Winding;
import nullplane.network.StackNetwork;
import nullplane.scoring.Wiring;
import nullplane.units.ConductorMaterial;

/**
 * What a sample is held against: the part of a {@link MakerBrief} that outlives its run.
 *
 * @param title title of the panel system
 * @param name what the woofer is called
 * @param rank its place in its run, from 1
 * @param specDigest digest of the spec, hexadecimal
 * @param woofer the nominal woofer
 * @param values every value, in the order of the sheet
 * @param stacks wiring and series coil of each stack, in the spec's order
 */
public record SampleBrief(
    String title,
    String name,
    int rank,
    String specDigest,
    Woofer woofer,
    List<BriefValue> values,
    List<StackParts> stacks) {

  /**
   * What stands in front of the woofers of one stack.
   *
   * @param name the stack
   * @param wiring how its woofers are wired
   * @param network its network
   */
  public record StackParts(String name, Wiring wiring, StackNetwork network) {}

  /** Copies the lists. */
  public SampleBrief {
    values = List.copyOf(values);
    stacks = List.copyOf(stacks);
  }

  /**
   * Returns what of a brief a sample is held against.
   *
   * @param brief the brief
   */
  public static SampleBrief of(MakerBrief brief) {
    return new SampleBrief(
        brief.title(),
        brief.name(),
        brief.rank(),
        brief.specDigest(),
        brief.woofer(),
        brief.values(),
        brief.stacks().stream()
            .map(stack -> new StackParts(stack.brief().name(), stack.wiring(), stack.network()))
            .toList());
  }

  /** Returns the value of a key, if the brief has one. */
  public Optional<BriefValue> value(String key) {
    return values.stream().filter(value -> value.key().equals(key)).findFirst();
  }

  /** Returns the window of a key; one without limits if the brief has none. */
  public BriefWindow window(String key) {
    return value(key).map(BriefValue::window).orElse(BriefWindow.NONE);
  }

  /**
   * Returns the winding that the brief describes, if it describes one: layers, turns, wire, heights
   * and former. Turns that do not fill the layers evenly, or a coil that does not fit its former,
   * count as not described. The former's wall is taken as {@link Former#USUAL_WALL_M}.
   */
  public Optional<Winding> winding() {
    OptionalDouble layers = target("layers");
    OptionalDouble turns = target("turns");
    OptionalDouble wire = target("wire-diameter");
    OptionalDouble height = target("winding-height");
    OptionalDouble gap = target("gap-height");
    OptionalDouble inside = target("former-diameter");
    Optional<ConductorMaterial> metal = metal();
    if (layers.isEmpty()
        || turns.isEmpty()
        || wire.isEmpty()
        || height.isEmpty()
        || gap.isEmpty()
        || inside.isEmpty()
        || metal.isEmpty()) {
      return Optional.empty();
    }
    int layerCount = (int) Math.round(layers.getAsDouble());
    double pitch = height.getAsDouble() * layerCount / turns.getAsDouble();
    try {
      Former former = Former.ofNominal(inside.getAsDouble());
      return Optional.of(
          new Winding(
              former,
              new RoundWireCoil(
                  layerCount,
                  former.outsideDiameterM() + layerCount * pitch,
                  height.getAsDouble(),
                  wire.getAsDouble(),
                  pitch,
                  metal.orElseThrow()),
              gap.getAsDouble()));
    } catch (IllegalArgumentException e) {
      return Optional.empty(); // the brief's figures do not make a coil
    }
  }

  private Optional<ConductorMaterial> metal() {
    Optional<BriefValue> wire = value("wire-diameter");
    for (ConductorMaterial material : ConductorMaterial.values()) {
      if (wire.isPresent() && wire.orElseThrow().condition().equals(material.word())) {
        return Optional.of(material);
      }
    }
    return Optional.empty();
  }

  private OptionalDouble target(String key) {
    return value(key).map(BriefValue::target).orElse(OptionalDouble.empty());
  }
}

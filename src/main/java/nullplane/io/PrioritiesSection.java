package nullplane.io;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import nullplane.scoring.GradeWeights;

/** Reads a designer's priorities: multipliers on {@link GradeWeights#STANDARD}. */
final class PrioritiesSection {
  static final String EXAMPLE = "{shape: 1, output: 1, correction: 2, material: 0.5}";

  private static final QuantityKey SHAPE = priority("shape");
  private static final QuantityKey OUTPUT = priority("output");
  private static final QuantityKey CORRECTION = priority("correction");
  private static final QuantityKey MATERIAL = priority("material");
  private static final QuantityKey WORST_STACK =
      QuantityKey.of("worst-stack", Dimension.NUMBER, "0 .. 1", "0.8");

  static final List<String> KEYS =
      List.of(SHAPE.name(), OUTPUT.name(), CORRECTION.name(), MATERIAL.name(), WORST_STACK.name());

  private PrioritiesSection() {}

  private static QuantityKey priority(String name) {
    return QuantityKey.of(name, Dimension.NUMBER, "0 .. 10", "1");
  }

  /** Returns the weights, or nothing when a value is at fault. */
  static Optional<GradeWeights> read(Section section) {
    OptionalDouble shape = or(section, SHAPE, 1);
    OptionalDouble output = or(section, OUTPUT, 1);
    OptionalDouble correction = or(section, CORRECTION, 1);
    OptionalDouble material = or(section, MATERIAL, 1);
    OptionalDouble worst = or(section, WORST_STACK, GradeWeights.STANDARD.shareOfWorst());
    if (shape.isEmpty()
        || output.isEmpty()
        || correction.isEmpty()
        || material.isEmpty()
        || worst.isEmpty()) {
      return Optional.empty();
    }
    double heard = shape.getAsDouble();
    double loud = output.getAsDouble();
    if (heard == 0 && loud == 0) {
      section.fault(
          SHAPE.name(),
          "neither shape nor output counts, so that no woofer is better than another to hear",
          "shape or output above 0",
          SHAPE.write());
      return Optional.empty();
    }
    double bent = correction.getAsDouble();
    double bought = material.getAsDouble();
    GradeWeights usual = GradeWeights.STANDARD;
    return Optional.of(
        new GradeWeights(
            heard * usual.perDbDeviation(),
            heard * usual.perDbOutside(),
            loud * usual.perDbOutputLack(),
            bent * usual.perDbCorrection(),
            bought * usual.perGramOfWoofer(),
            bought * usual.perJouleOfGap(),
            bent * usual.perPart(),
            bought * usual.perKilogramOfCopper(),
            bought * usual.perMillifarad(),
            worst.getAsDouble()));
  }

  /** Returns a value, what it is if it is left out, or nothing if it is at fault. */
  private static OptionalDouble or(Section section, QuantityKey key, double usual) {
    return section.has(key.name()) ? section.optional(key) : OptionalDouble.of(usual);
  }
}

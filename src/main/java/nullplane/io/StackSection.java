package nullplane.io;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import nullplane.acoustics.Panel;
import nullplane.acoustics.Piston;
import nullplane.scoring.PanelStand;
import nullplane.scoring.StackBrief;
import nullplane.scoring.Wiring;

/** Reads one stack of a spec: panel, woofers, levels and wiring. */
final class StackSection {
  static final String EXAMPLE =
      "{name: single, panel: {width: 44 cm, height: 110 cm}, woofers: [{x: 0 cm, y: -25 cm}]}";
  static final List<String> KEYS =
      List.of("name", "panel", "woofers", "level", "loudest", "upper-corner", "wiring");
  static final QuantityKey LEVEL =
      QuantityKey.of("level", Dimension.LEVEL, "30 dB .. 130 dB", "78 dB");
  static final QuantityKey LOUDEST =
      QuantityKey.of("loudest", Dimension.LEVEL, "40 dB .. 140 dB", "95 dB");

  static final QuantityKey LOW_CORNER =
      QuantityKey.of("low-corner", Dimension.FREQUENCY, "15 Hz .. 500 Hz", "40 Hz");
  static final QuantityKey UPPER_CORNER =
      QuantityKey.of("upper-corner", Dimension.FREQUENCY, "30 Hz .. 1000 Hz", "200 Hz");

  /** Most woofers one stack may have. */
  static final int MOST_WOOFERS = 16;

  /** Two lengths nearer than this are the same (m); far below what anybody can cut. */
  private static final double SAME_LENGTH_M = 1e-9;

  /** A stack's own corner is read in millihertz; finer steps are the same to hear (1/Hz). */
  private static final double CORNER_STEPS_PER_HZ = 1000;

  private static final double CORNER_STEP_HZ = 1 / CORNER_STEPS_PER_HZ;

  private static final String WOOFER_EXAMPLE = "{x: 0 cm, y: -25 cm}";
  private static final QuantityKey X = QuantityKey.of("x", Dimension.LENGTH, "-5 m .. 5 m", "0 cm");
  private static final QuantityKey Y =
      QuantityKey.of("y", Dimension.LENGTH, "-5 m .. 5 m", "-25 cm");
  private static final QuantityKey STRINGS =
      QuantityKey.of("strings", Dimension.NUMBER, "1 .. " + MOST_WOOFERS, "2");
  private static final String WIRING_FORMS = "parallel, series, or {strings: 2}";

  private final FaultList faults;
  private final Section section;
  private final OptionalDouble pistonM;

  /**
   * @param faults where faults go
   * @param section the stack
   * @param pistonM effective diameter of the woofers (m), if known
   */
  StackSection(FaultList faults, Section section, OptionalDouble pistonM) {
    this.faults = faults;
    this.section = section;
    this.pistonM = pistonM;
  }

  /**
   * Returns the stack, or nothing when a value it needs is at fault.
   *
   * @param target the target, for the levels a stack does not state itself; nothing if the target
   *     itself is at fault
   */
  Optional<StackBrief> read(Optional<Section> target) {
    Optional<String> name = section.requiredText("name", "single");
    Optional<Section> panelSection =
        section.requiredSection("panel", PanelSection.EXAMPLE, PanelSection.KEYS);
    Optional<Panel> panel = panelSection.flatMap(PanelSection::read);
    PanelStand stand = panelSection.map(PanelSection::stand).orElse(PanelStand.UNKNOWN);
    List<YamlNode> nodes =
        section.requiredList("woofers", MOST_WOOFERS, "[" + WOOFER_EXAMPLE + "]");
    List<Centre> centres = centres(nodes);
    if (pistonM.isPresent()) {
      panel.ifPresent(known -> checkInside(known, centres, pistonM.getAsDouble()));
      checkApart(centres, pistonM.getAsDouble());
    }
    Optional<Wiring> wiring = wiring(nodes.size());
    OptionalDouble level = level(LEVEL, target);
    OptionalDouble loudest = level(LOUDEST, target);
    OptionalDouble upperCorner = upperCorner(target);
    checkLevels(level, loudest);
    if (name.isEmpty()
        || panel.isEmpty()
        || nodes.isEmpty()
        || centres.size() < nodes.size()
        || pistonM.isEmpty()
        || level.isEmpty()
        || loudest.isEmpty()) {
      return Optional.empty();
    }
    double radius = pistonM.getAsDouble() / 2;
    return Optional.of(
        new StackBrief(
            name.orElseThrow(),
            panel.orElseThrow(),
            centres.stream().map(c -> new Piston(c.xM(), c.yM(), radius)).toList(),
            level.getAsDouble(),
            loudest.getAsDouble(),
            wiring.filter(fixed -> fixed.woofers() == nodes.size()),
            upperCorner,
            Optional.empty(),
            stand));
  }

  private List<Centre> centres(List<YamlNode> nodes) {
    List<Centre> centres = new ArrayList<>();
    for (int i = 0; i < nodes.size(); i++) {
      YamlNode node = nodes.get(i);
      String path = section.path("woofers[" + i + "]");
      Optional<Section> woofer = Section.of(faults, path, node, WOOFER_EXAMPLE, List.of("x", "y"));
      if (woofer.isPresent()) {
        OptionalDouble x = woofer.orElseThrow().required(X);
        OptionalDouble y = woofer.orElseThrow().required(Y);
        if (x.isPresent() && y.isPresent()) {
          centres.add(new Centre(i + 1, node.line(), path, x.getAsDouble(), y.getAsDouble()));
        }
      }
    }
    return centres;
  }

  private void checkInside(Panel panel, List<Centre> centres, double diameter) {
    for (Centre centre : centres) {
      double over = diameter / 2 - panel.outline().distanceToRim(centre.xM(), centre.yM());
      if (over > SAME_LENGTH_M) {
        faults.add(
            centre.line(),
            centre.path(),
            centre.inWords(),
            "woofer "
                + centre.number()
                + stackName()
                + " reaches over the panel's rim by "
                + Quantity.centimetres(over),
            "its centre at least " + Quantity.centimetres(diameter / 2) + " inside the rim",
            "move the woofer or enlarge the panel");
      }
    }
  }

  private void checkApart(List<Centre> centres, double diameter) {
    for (int i = 0; i < centres.size(); i++) {
      for (int j = 0; j < i; j++) {
        Centre one = centres.get(j);
        Centre other = centres.get(i);
        double overlap = diameter - Math.hypot(one.xM() - other.xM(), one.yM() - other.yM());
        if (overlap > SAME_LENGTH_M) {
          faults.add(
              other.line(),
              other.path(),
              other.inWords(),
              "woofers "
                  + one.number()
                  + " and "
                  + other.number()
                  + stackName()
                  + " overlap by "
                  + Quantity.centimetres(overlap),
              "centres at least " + Quantity.centimetres(diameter) + " apart",
              "move one of them");
        }
      }
    }
  }

  private String stackName() {
    return section
        .node("name")
        .filter(YamlNode.Scalar.class::isInstance)
        .map(node -> " of stack \"" + node.kind() + "\"")
        .orElse("");
  }

  private Optional<Wiring> wiring(int count) {
    Optional<YamlNode> node = section.node("wiring");
    if (node.isEmpty() || count == 0) {
      return Optional.empty();
    }
    if (node.orElseThrow() instanceof YamlNode.Scalar scalar) {
      return switch (scalar.text().strip()) {
        case "parallel" -> Optional.of(new Wiring(count, 1));
        case "series" -> Optional.of(new Wiring(1, count));
        default -> {
          section.fault("wiring", "unknown wiring", WIRING_FORMS, "write wiring: parallel");
          yield Optional.empty();
        }
      };
    }
    Optional<Section> form =
        section.optionalSection("wiring", "{strings: 2}", List.of(STRINGS.name()));
    if (form.isEmpty()) {
      return Optional.empty();
    }
    OptionalDouble strings = form.orElseThrow().required(STRINGS);
    if (strings.isEmpty()) {
      return Optional.empty();
    }
    double number = strings.getAsDouble();
    if (count % number != 0) {
      form.orElseThrow()
          .fault(
              STRINGS.name(),
              "the " + count + " woofers of this stack do not divide into that many equal strings",
              divisors(count),
              "write strings: " + (count % 2 == 0 ? 2 : 1));
      return Optional.empty();
    }
    return Optional.of(new Wiring((int) number, count / (int) number));
  }

  private static String divisors(int count) {
    List<String> divisors = new ArrayList<>();
    for (int i = 1; i <= count; i++) {
      if (count % i == 0) {
        divisors.add(Integer.toString(i));
      }
    }
    return String.join(", ", divisors);
  }

  private OptionalDouble level(QuantityKey key, Optional<Section> target) {
    if (section.has(key.name())) {
      return section.optional(key);
    }
    if (target.isEmpty()) {
      return OptionalDouble.empty();
    }
    Section common = target.orElseThrow();
    if (!common.has(key.name())) {
      section.fault(
          key.name(),
          "neither this stack nor the target states " + key.name(),
          key.limits().words(),
          key.write() + " here or in target");
      return OptionalDouble.empty();
    }
    return common.quiet(key);
  }

  /**
   * The stack's own upper corner, in whole millihertz, if it is not the target's. All corners are
   * points of one axis, so that two must not lie closer than can be told apart.
   */
  private OptionalDouble upperCorner(Optional<Section> target) {
    OptionalDouble own = section.optional(UPPER_CORNER);
    if (own.isEmpty() || target.isEmpty()) {
      return OptionalDouble.empty();
    }
    double corner = Math.rint(own.getAsDouble() * CORNER_STEPS_PER_HZ) / CORNER_STEPS_PER_HZ;
    OptionalDouble low = target.orElseThrow().quiet(LOW_CORNER);
    if (low.isPresent() && !(corner > low.getAsDouble() + CORNER_STEP_HZ)) {
      section.fault(
          UPPER_CORNER.name(),
          "the upper corner must lie above the target's low corner",
          "above " + Quantity.digits(low.getAsDouble()) + " Hz",
          "raise it, or lower target.low-corner");
    }
    OptionalDouble common = target.orElseThrow().quiet(UPPER_CORNER);
    boolean same = common.isPresent() && Math.abs(corner - common.getAsDouble()) < CORNER_STEP_HZ;
    return same ? OptionalDouble.empty() : OptionalDouble.of(corner);
  }

  private void checkLevels(OptionalDouble level, OptionalDouble loudest) {
    if (level.isPresent() && loudest.isPresent() && loudest.getAsDouble() < level.getAsDouble()) {
      section.fault(
          LOUDEST.name(),
          "the loudest level, "
              + Quantity.digits(loudest.getAsDouble())
              + " dB, lies below the level asked for",
          "at least " + Quantity.digits(level.getAsDouble()) + " dB",
          "raise loudest or lower level");
    }
  }

  /** A woofer's place on its panel, and where that is written. */
  private record Centre(int number, int line, String path, double xM, double yM) {
    String inWords() {
      return "x " + Quantity.centimetres(xM) + ", y " + Quantity.centimetres(yM);
    }
  }
}

package nullplane.io;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import nullplane.acoustics.FieldPoint;
import nullplane.faults.InvalidInputException;
import nullplane.scoring.Amplifier;
import nullplane.scoring.DesignSpec;
import nullplane.scoring.Listening;
import nullplane.scoring.StackBrief;
import nullplane.scoring.Target;
import nullplane.scoring.WooferBrief;

/** Reads a spec from YAML. All faults of a file are told at once, each with line and key. */
public final class SpecReader {
  private static final List<String> KEYS =
      List.of("title", "date", "woofer", "stacks", "listening", "target", "amplifier");
  private static final List<String> TARGET_KEYS =
      List.of("level", "voltage", "low-corner", "upper-corner", "corridor", "loudest");

  private static final String DATE_EXAMPLE = "2026-11-25";

  /** Most stacks one spec may have. */
  private static final int MOST_STACKS = 12;

  private static final double USUAL_TARGET_VOLTAGE_V = 2.83;
  private static final double USUAL_CORRIDOR_DB = 2;

  /** Steepest view of the panel's centre from the listening point: 60 degrees (1). */
  private static final double STEEPEST = Math.tan(Math.toRadians(60));

  private static final QuantityKey DISTANCE =
      QuantityKey.of("distance", Dimension.LENGTH, "30 cm .. 30 m", "3 m");
  private static final QuantityKey HEIGHT =
      QuantityKey.of("height", Dimension.LENGTH, "0 m .. 10 m", "1 m");
  private static final QuantityKey TARGET_VOLTAGE =
      QuantityKey.of("voltage", Dimension.VOLTAGE, "0.1 V .. 100 V", "2.83 V");
  private static final QuantityKey LOW_CORNER =
      QuantityKey.of("low-corner", Dimension.FREQUENCY, "20 Hz .. 500 Hz", "40 Hz");
  private static final QuantityKey UPPER_CORNER =
      QuantityKey.of("upper-corner", Dimension.FREQUENCY, "30 Hz .. 1000 Hz", "200 Hz");
  private static final QuantityKey CORRIDOR =
      QuantityKey.of("corridor", Dimension.LEVEL, "0.1 dB .. 20 dB", "2 dB");
  private static final QuantityKey AMPLIFIER_VOLTAGE =
      QuantityKey.of("voltage", Dimension.VOLTAGE, "0.5 V .. 200 V", "28 V");
  private static final QuantityKey LOWEST_LOAD =
      QuantityKey.of("lowest-load", Dimension.RESISTANCE, "0.5 ohm .. 64 ohm", "3 ohm");

  private final FaultList faults;
  private final Section root;

  private SpecReader(FaultList faults, Section root) {
    this.faults = faults;
    this.root = root;
  }

  /**
   * Reads a spec file.
   *
   * @param file the file
   * @throws InvalidInputException with every fault of the file
   */
  public static ReadSpec read(Path file) {
    return read(InputText.read(file));
  }

  /**
   * Reads a spec from the bytes of a file.
   *
   * @param bytes the bytes
   * @param fileName the file as the user named it, for messages
   * @throws InvalidInputException with every fault of the file
   */
  public static ReadSpec read(byte[] bytes, String fileName) {
    return read(InputText.of(bytes, fileName));
  }

  private static ReadSpec read(InputText input) {
    FaultList faults = new FaultList(input.fileName());
    Optional<SpecReader> reader =
        Section.of(faults, "", YamlTree.of(input), "title: Reading-room range", KEYS)
            .map(root -> new SpecReader(faults, root));
    Optional<LocalDate> date = reader.flatMap(SpecReader::date);
    Optional<DesignSpec> spec = reader.flatMap(SpecReader::spec);
    faults.throwIfAny();
    return new ReadSpec(spec.orElseThrow(), input.digest(), input.fileName(), date);
  }

  /** Reads the date that the spec bears. Source: ISO 8601, calendar date. */
  private Optional<LocalDate> date() {
    Optional<String> text = root.optionalText("date", DATE_EXAMPLE);
    try {
      return text.map(LocalDate::parse);
    } catch (DateTimeParseException e) {
      root.fault(
          "date",
          "this is no date: " + Excerpt.of(text.orElse("")),
          "year-month-day",
          "write date: " + DATE_EXAMPLE);
      return Optional.empty();
    }
  }

  private Optional<DesignSpec> spec() {
    Optional<String> title = root.requiredText("title", "Reading-room range");
    Optional<WooferBrief> woofer =
        root.requiredSection("woofer", WooferBriefSection.EXAMPLE, WooferBriefSection.KEYS)
            .flatMap(WooferBriefSection::read);
    Optional<Section> targetSection =
        root.requiredSection(
            "target",
            "{level: 78 dB, loudest: 95 dB, low-corner: 40 Hz, upper-corner: 200 Hz}",
            TARGET_KEYS);
    Optional<Target> target = targetSection.flatMap(this::target);
    Optional<Amplifier> amplifier =
        root.requiredSection(
                "amplifier",
                "{voltage: 28 V, lowest-load: 3 ohm}",
                List.of("voltage", "lowest-load"))
            .flatMap(section -> amplifier(section, target));
    List<StackBrief> stacks = stacks(targetSection);
    Optional<Listening> listening =
        root.requiredSection(
                "listening", "{distance: 3 m, height: 1 m}", List.of("distance", "height"))
            .flatMap(section -> listening(section, stacks));
    if (!faults.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        new DesignSpec(
            title.orElseThrow(),
            woofer.orElseThrow(),
            stacks,
            listening.orElseThrow(),
            target.orElseThrow(),
            amplifier.orElseThrow()));
  }

  private Optional<Target> target(Section section) {
    section.optional(StackSection.LEVEL);
    section.optional(StackSection.LOUDEST);
    OptionalDouble voltage = section.optional(TARGET_VOLTAGE);
    OptionalDouble corridor = section.optional(CORRIDOR);
    OptionalDouble low = section.required(LOW_CORNER);
    OptionalDouble upper = section.required(UPPER_CORNER);
    if (low.isEmpty() || upper.isEmpty()) {
      return Optional.empty();
    }
    if (!(upper.getAsDouble() > low.getAsDouble())) {
      section.fault(
          "upper-corner",
          "the upper corner must lie above the low corner",
          "above " + Quantity.digits(low.getAsDouble()) + " Hz",
          "exchange the two, or raise upper-corner");
      return Optional.empty();
    }
    return Optional.of(
        new Target(
            voltage.orElse(USUAL_TARGET_VOLTAGE_V),
            low.getAsDouble(),
            upper.getAsDouble(),
            corridor.orElse(USUAL_CORRIDOR_DB)));
  }

  private static Optional<Amplifier> amplifier(Section section, Optional<Target> target) {
    OptionalDouble voltage = section.required(AMPLIFIER_VOLTAGE);
    OptionalDouble load = section.required(LOWEST_LOAD);
    if (voltage.isEmpty() || load.isEmpty()) {
      return Optional.empty();
    }
    if (target.isPresent() && voltage.getAsDouble() < target.orElseThrow().voltageV()) {
      String asked = Quantity.digits(target.orElseThrow().voltageV()) + " V";
      section.fault(
          "voltage",
          "the amplifier cannot give the target's voltage of " + asked,
          "at least " + asked,
          "raise it, or lower target.voltage");
    }
    return Optional.of(new Amplifier(voltage.getAsDouble(), load.getAsDouble()));
  }

  private List<StackBrief> stacks(Optional<Section> target) {
    // Geometry is judged whenever the piston's size is readable, whatever else is wrong.
    Optional<Section> sizes =
        root.node("woofer")
            .flatMap(node -> Section.of(new FaultList(""), "", node, "", WooferBriefSection.KEYS));
    OptionalDouble piston = size(sizes, WooferKeys.EFFECTIVE_DIAMETER);
    List<YamlNode> nodes =
        root.requiredList("stacks", MOST_STACKS, "[" + StackSection.EXAMPLE + "]");
    List<StackBrief> stacks = new ArrayList<>();
    Map<String, Integer> lines = new LinkedHashMap<>();
    for (int i = 0; i < nodes.size(); i++) {
      Optional<Section> section =
          Section.of(
              faults, "stacks[" + i + "]", nodes.get(i), StackSection.EXAMPLE, StackSection.KEYS);
      if (section.isPresent()) {
        checkName(section.orElseThrow(), lines);
        new StackSection(faults, section.orElseThrow(), piston).read(target).ifPresent(stacks::add);
      }
    }
    return stacks;
  }

  private static OptionalDouble size(Optional<Section> sizes, QuantityKey key) {
    return sizes.isPresent() ? sizes.orElseThrow().quiet(key) : OptionalDouble.empty();
  }

  private static void checkName(Section section, Map<String, Integer> lines) {
    Optional<YamlNode> node = section.node("name");
    if (node.isPresent() && node.orElseThrow() instanceof YamlNode.Scalar scalar) {
      Integer earlier = lines.putIfAbsent(scalar.text().strip(), scalar.line());
      if (earlier != null && !scalar.text().isBlank()) {
        section.fault(
            "name",
            "another stack has this name, in line " + earlier,
            "a name of its own for each stack",
            "write another name");
      }
    }
  }

  private static Optional<Listening> listening(Section section, List<StackBrief> stacks) {
    OptionalDouble distance = section.required(DISTANCE);
    OptionalDouble height = section.required(HEIGHT);
    if (distance.isEmpty() || height.isEmpty()) {
      return Optional.empty();
    }
    Listening listening = new Listening(distance.getAsDouble(), height.getAsDouble());
    for (StackBrief stack : stacks) {
      FieldPoint point = listening.pointFor(stack.panel());
      if (Math.abs(point.yM()) > STEEPEST * point.zM()) {
        section.fault(
            "height",
            "the listening point sees the panel of stack \""
                + Excerpt.of(stack.name())
                + "\" from more than 60 degrees "
                + (point.yM() > 0 ? "above" : "below"),
            Quantity.centimetres(STEEPEST * point.zM())
                + " at most above or below the panel's centre, which is "
                + Quantity.centimetres(stack.panel().centreHeightM())
                + " high",
            "move the point away from the panel or nearer to its centre's height");
      }
    }
    return Optional.of(listening);
  }
}

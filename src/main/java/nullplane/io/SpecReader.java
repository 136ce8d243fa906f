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
import nullplane.faults.InputFault;
import nullplane.faults.InvalidInputException;
import nullplane.network.NetworkOffer;
import nullplane.scoring.Amplifier;
import nullplane.scoring.DesignSpec;
import nullplane.scoring.GradeWeights;
import nullplane.scoring.Listening;
import nullplane.scoring.StackBrief;
import nullplane.scoring.Target;
import nullplane.scoring.WooferBrief;
import nullplane.units.Range;

/** Reads a spec from YAML. All faults of a file are told at once, each with line and key. */
public final class SpecReader {
  private static final List<String> KEYS =
      List.of(
          "title",
          "date",
          "woofer",
          "stacks",
          "listening",
          "target",
          "amplifier",
          "crossover",
          "main-driver",
          "priorities");
  private static final List<String> TARGET_KEYS =
      List.of(
          "level", "voltage", "low-corner", "upper-corner", "upper-slope", "corridor", "loudest");

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
  private static final QuantityKey UPPER_SLOPE =
      QuantityKey.of("upper-slope", Dimension.SLOPE, "6 dB/oct .. 24 dB/oct", "12 dB/oct");

  /** What each order of a slope is worth (dB per octave). */
  private static final double DB_PER_ORDER = 6;

  private static final QuantityKey CORRIDOR =
      QuantityKey.of("corridor", Dimension.LEVEL, "0.1 dB .. 20 dB", "2 dB");
  private static final QuantityKey AMPLIFIER_VOLTAGE =
      QuantityKey.of("voltage", Dimension.VOLTAGE, "0.5 V .. 200 V", "28 V");
  private static final QuantityKey LOWEST_LOAD =
      QuantityKey.of("lowest-load", Dimension.RESISTANCE, "0.5 ohm .. 64 ohm", "3 ohm");

  private final FaultList faults;
  private final Section root;
  private final NamedFiles files;

  private SpecReader(FaultList faults, Section root, NamedFiles files) {
    this.faults = faults;
    this.root = root;
    this.files = files;
  }

  /**
   * Reads a spec file and the files it names, which lie in its folder or below.
   *
   * @param file the file
   * @throws InvalidInputException with every fault of every file
   */
  public static ReadSpec read(Path file) {
    return read(InputText.read(file), NamedFiles.beside(file));
  }

  /**
   * Reads a spec from the bytes of a file. It can name no other file.
   *
   * @param bytes the bytes
   * @param fileName the file as the user named it, for messages
   * @throws InvalidInputException with every fault of the file
   */
  public static ReadSpec read(byte[] bytes, String fileName) {
    return read(InputText.of(bytes, fileName), NamedFiles.none());
  }

  private static ReadSpec read(InputText input, NamedFiles files) {
    FaultList faults = new FaultList(input.fileName());
    Optional<SpecReader> reader =
        Section.of(faults, "", YamlTree.of(input), "title: Reading-room range", KEYS)
            .map(root -> new SpecReader(faults, root, files));
    Optional<LocalDate> date = reader.flatMap(SpecReader::date);
    Optional<DesignSpec> spec = reader.flatMap(SpecReader::spec);
    List<InputFault> all = new ArrayList<>(faults.inOrder());
    all.addAll(files.faults());
    if (!all.isEmpty()) {
      throw new InvalidInputException(all);
    }
    return new ReadSpec(
        spec.orElseThrow(), files.digestWith(input.digest()), input.fileName(), date);
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
    Optional<Range> corners = target.map(known -> upperCornersHz(stacks, known));
    Optional<NetworkOffer> networks =
        root.optionalSection("crossover", CrossoverSection.EXAMPLE, CrossoverSection.KEYS)
            .flatMap(section -> CrossoverSection.read(section, corners));
    Optional<MainDriverSection> main =
        root.optionalSection("main-driver", MainDriverSection.EXAMPLE, MainDriverSection.KEYS)
            .map(section -> MainDriverSection.read(section, files));
    if (main.isPresent() && target.isPresent()) {
      checkMain(main.orElseThrow(), target.orElseThrow(), corners, targetSection);
    }
    Optional<GradeWeights> weights =
        root.optionalSection("priorities", PrioritiesSection.EXAMPLE, PrioritiesSection.KEYS)
            .flatMap(PrioritiesSection::read);
    if (!faults.isEmpty() || !files.faults().isEmpty()) {
      return Optional.empty();
    }
    Target held = target.orElseThrow();
    double distanceM = listening.orElseThrow().distanceM();
    return Optional.of(
        new DesignSpec(
            title.orElseThrow(),
            woofer.orElseThrow(),
            stacks.stream()
                .map(s -> main.map(known -> known.above(s, held, distanceM)).orElse(s))
                .toList(),
            listening.orElseThrow(),
            held,
            amplifier.orElseThrow(),
            networks.orElseGet(NetworkOffer::standard),
            weights.orElse(GradeWeights.STANDARD)));
  }

  /** Returns the lowest and the highest upper corner (Hz). */
  private static Range upperCornersHz(List<StackBrief> stacks, Target target) {
    double lowest = Double.POSITIVE_INFINITY;
    double highest = 0;
    for (StackBrief stack : stacks) {
      double corner = stack.upperCornerHz().orElse(target.upperCornerHz());
      lowest = Math.min(lowest, corner);
      highest = Math.max(highest, corner);
    }
    return stacks.isEmpty() ? Range.pinned(target.upperCornerHz()) : new Range(lowest, highest);
  }

  /** The sum is judged from the low corner to an octave above the highest upper one. */
  private static void checkMain(
      MainDriverSection main,
      Target target,
      Optional<Range> corners,
      Optional<Section> targetSection) {
    double highest = corners.map(Range::upper).orElse(target.upperCornerHz());
    double top = Target.BEYOND * highest;
    if (top > target.lowCornerHz()) {
      main.checkBand(new Range(target.lowCornerHz(), top));
    }
    targetSection
        .filter(section -> section.node(UPPER_SLOPE.name()).isPresent())
        .ifPresent(
            section ->
                section.fault(
                    UPPER_SLOPE.name(),
                    "with a main driver the sum of both is held to the level, not the woofers alone",
                    "upper-slope, or main-driver",
                    "leave one of them out"));
  }

  private Optional<Target> target(Section section) {
    section.optional(StackSection.LEVEL);
    section.optional(StackSection.LOUDEST);
    OptionalDouble voltage = section.optional(TARGET_VOLTAGE);
    OptionalDouble corridor = section.optional(CORRIDOR);
    Optional<Integer> order = upperOrder(section);
    OptionalDouble low = section.required(StackSection.LOW_CORNER);
    OptionalDouble upper = section.required(StackSection.UPPER_CORNER);
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
            corridor.orElse(USUAL_CORRIDOR_DB),
            order.orElse(0)));
  }

  /** The order of the slope above the upper corner; nothing if none is asked for. */
  private static Optional<Integer> upperOrder(Section section) {
    OptionalDouble slope = section.optional(UPPER_SLOPE);
    if (slope.isEmpty()) {
      return Optional.empty();
    }
    double order = slope.getAsDouble() / DB_PER_ORDER;
    if (order != Math.rint(order)) {
      section.fault(
          UPPER_SLOPE.name(),
          "a slope rises in steps of 6 dB per octave",
          "6, 12, 18 or 24 dB/oct",
          "write upper-slope: " + Quantity.digits(DB_PER_ORDER * Math.rint(order)) + " dB/oct");
      return Optional.empty();
    }
    return Optional.of((int) order);
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

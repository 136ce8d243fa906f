package nullplane.io;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import nullplane.faults.InputFault;
import nullplane.faults.InvalidInputException;
import nullplane.fit.AirLoad;
import nullplane.fit.ImpedanceSweep;
import nullplane.fit.MassAnchor;
import nullplane.sample.MeasuredSample;
import nullplane.sample.PanelPlace;
import nullplane.scoring.DesignSpec;
import nullplane.scoring.StackBrief;

/**
 * Reads a description of measurements and the sweeps it names. Sweeps lie in the description's
 * folder or below. All faults of all files are told at once.
 */
public final class MeasurementsReader {
  private static final String EXAMPLE =
      "samples: [{name: A, free-air: a.txt, added-mass: a-mass.txt, mass: 30 g}]";
  private static final String ONE_SAMPLE =
      "{name: A, free-air: a.txt, added-mass: a-mass.txt, mass: 30 g}";
  private static final int MOST_SAMPLES = 200;

  private static final String FREE_AIR = "free-air";
  private static final String ON_PANEL = "on-panel";
  private static final String STACK = "stack";
  private static final String WOOFER = "woofer";
  private static final String OTHERS = "others";
  private static final String GOLDEN = "golden";
  private static final String ADDED_MASS = "added-mass";
  private static final List<String> KEYS =
      List.of(
          "name",
          FREE_AIR,
          ON_PANEL,
          STACK,
          WOOFER,
          OTHERS,
          GOLDEN,
          ADDED_MASS,
          "mass",
          "mass-error",
          "moving-mass",
          "bl",
          "bl-error",
          "rest-position");

  private static final QuantityKey MASS =
      QuantityKey.of("mass", Dimension.MASS, "0.1 g .. 2 kg", "30 g");
  private static final QuantityKey MASS_ERROR =
      QuantityKey.of("mass-error", Dimension.MASS, "0 g .. 100 g", "0.1 g");
  private static final QuantityKey MOVING_MASS =
      QuantityKey.of("moving-mass", Dimension.MASS, "0.5 g .. 2 kg", "62 g");
  private static final QuantityKey BL =
      QuantityKey.of("bl", Dimension.FORCE_FACTOR, "0.1 Tm .. 100 Tm", "6.1 Tm");
  private static final QuantityKey BL_ERROR =
      QuantityKey.of("bl-error", Dimension.FORCE_FACTOR, "0 Tm .. 10 Tm", "0.1 Tm");
  private static final QuantityKey REST =
      QuantityKey.of("rest-position", Dimension.LENGTH, "-30 mm .. 30 mm", "0.4 mm");

  private static final QuantityKey PLACE =
      QuantityKey.of(WOOFER, Dimension.NUMBER, "1 .. " + StackSection.MOST_WOOFERS, "1");

  private final FaultList faults;
  private final NamedFiles sweeps;
  private final Optional<DesignSpec> spec;

  private MeasurementsReader(FaultList faults, NamedFiles sweeps, Optional<DesignSpec> spec) {
    this.faults = faults;
    this.sweeps = sweeps;
    this.spec = spec;
  }

  /**
   * Reads a description and its sweeps.
   *
   * @param file the description, a YAML file
   * @param spec the panel system, whose stacks the description may name; empty if it is not known
   * @throws InvalidInputException with every fault of every file
   */
  public static ReadMeasurements read(Path file, Optional<DesignSpec> spec) {
    return read(InputText.read(file), NamedFiles.beside(file), spec);
  }

  /**
   * Reads a description's text and its sweeps.
   *
   * @param input the text
   * @param sweeps the files beside it
   * @param spec the panel system; empty if it is not known
   * @throws InvalidInputException with every fault of every file
   */
  static ReadMeasurements read(InputText input, NamedFiles sweeps, Optional<DesignSpec> spec) {
    FaultList faults = new FaultList(input.fileName());
    List<MeasuredSample> samples =
        new MeasurementsReader(faults, sweeps, spec).samples(YamlTree.of(input));
    List<InputFault> all = new ArrayList<>(faults.inOrder());
    all.addAll(sweeps.faults());
    if (!all.isEmpty()) {
      throw new InvalidInputException(all);
    }
    return new ReadMeasurements(samples, sweeps.digestWith(input.digest()), input.fileName());
  }

  private List<MeasuredSample> samples(YamlNode root) {
    List<MeasuredSample> samples = new ArrayList<>();
    Optional<Section> file = Section.of(faults, "", root, EXAMPLE, List.of("samples"));
    if (file.isEmpty()) {
      return samples;
    }
    Set<String> names = new HashSet<>();
    List<YamlNode> items =
        file.orElseThrow().requiredList("samples", MOST_SAMPLES, "[" + ONE_SAMPLE + "]");
    for (int i = 0; i < items.size(); i++) {
      Optional<Section> keys =
          Section.of(faults, "samples[" + (i + 1) + "]", items.get(i), ONE_SAMPLE, KEYS);
      keys.ifPresent(section -> sample(section, names).ifPresent(samples::add));
    }
    return samples;
  }

  private Optional<MeasuredSample> sample(Section keys, Set<String> names) {
    Optional<String> name = keys.requiredText("name", "A");
    if (name.isPresent() && !names.add(name.orElseThrow())) {
      keys.fault("name", "another sample has this name", "a name of its own", "write another name");
    }
    List<String> notes = new ArrayList<>();
    boolean onPanel = keys.has(ON_PANEL);
    if (onPanel && keys.has(FREE_AIR)) {
      keys.fault(
          ON_PANEL,
          "a sample is measured in free air or on a panel, not both",
          "free-air or on-panel",
          "leave one out, or enter the sample twice under two names");
      return Optional.empty();
    }
    String key = onPanel ? ON_PANEL : FREE_AIR;
    Optional<ImpedanceSweep> sweep =
        keys.requiredText(key, "a.txt").flatMap(path -> sweep(keys, key, path, notes));
    Optional<PanelPlace> place = onPanel ? place(keys) : noPlace(keys);
    Optional<MassAnchor> anchor = anchor(keys, notes);
    OptionalDouble rest = keys.optional(REST);
    boolean golden = golden(keys);
    return name.isPresent()
            && sweep.isPresent()
            && anchor.isPresent()
            && place.isPresent() == onPanel
        ? Optional.of(
            new MeasuredSample(
                name.orElseThrow(),
                sweep.orElseThrow(),
                anchor.orElseThrow(),
                rest,
                place,
                golden,
                notes))
        : Optional.empty();
  }

  private Optional<PanelPlace> noPlace(Section keys) {
    for (String key : List.of(STACK, WOOFER, OTHERS)) {
      if (keys.node(key).isPresent()) {
        keys.fault(
            key,
            "this belongs to a sweep made on a panel",
            "only with on-panel",
            "leave it out, or write on-panel: a.txt instead of free-air");
      }
    }
    return Optional.empty();
  }

  /** Where the sample hung: stack and place, as in the spec if that is known. */
  private Optional<PanelPlace> place(Section keys) {
    Optional<String> stack = keys.requiredText(STACK, "pair");
    OptionalDouble woofer = keys.required(PLACE);
    PanelPlace.Others others = others(keys);
    if (woofer.isPresent() && woofer.getAsDouble() != Math.rint(woofer.getAsDouble())) {
      keys.fault(WOOFER, "a whole number is needed", "1, 2, ...", "write woofer: 1");
      return Optional.empty();
    }
    if (stack.isEmpty() || woofer.isEmpty()) {
      return Optional.empty();
    }
    int place = (int) woofer.getAsDouble();
    if (spec.isPresent()) {
      List<StackBrief> stacks = spec.orElseThrow().stacks();
      Optional<StackBrief> named =
          stacks.stream().filter(one -> one.name().equals(stack.orElseThrow())).findFirst();
      if (named.isEmpty()) {
        String names = stacks.stream().map(StackBrief::name).collect(Collectors.joining(", "));
        keys.fault(
            STACK, "the spec has no such stack", names, "write stack: " + stacks.get(0).name());
        return Optional.empty();
      }
      int count = named.orElseThrow().pistons().size();
      if (place > count) {
        keys.fault(
            WOOFER,
            "stack "
                + stack.orElseThrow()
                + " has "
                + count
                + (count == 1 ? " woofer" : " woofers"),
            "1 to " + count,
            "count the woofers in the spec's order");
        return Optional.empty();
      }
    }
    return Optional.of(new PanelPlace(stack.orElseThrow(), place, others));
  }

  private static PanelPlace.Others others(Section keys) {
    String word =
        keys.optionalText(OTHERS, PanelPlace.Others.OPEN.word())
            .orElse(PanelPlace.Others.OPEN.word());
    for (PanelPlace.Others one : PanelPlace.Others.values()) {
      if (one.word().equals(word)) {
        return one;
      }
    }
    keys.fault(
        OTHERS,
        "this is not known",
        "open (other woofers hang there, terminals open) or still (held, or holes closed)",
        "write others: open");
    return PanelPlace.Others.OPEN;
  }

  private static boolean golden(Section keys) {
    String word = keys.optionalText(GOLDEN, "true").orElse("false");
    if (!word.equals("true") && !word.equals("false")) {
      keys.fault(GOLDEN, "this is neither true nor false", "true or false", "write golden: true");
    }
    return word.equals("true");
  }

  /** What fixes the mass: at most one of three; each with the uncertainty that may stand by it. */
  private Optional<MassAnchor> anchor(Section keys, List<String> notes) {
    int given =
        (keys.has(ADDED_MASS) || keys.has("mass") ? 1 : 0)
            + (keys.has("moving-mass") ? 1 : 0)
            + (keys.has("bl") ? 1 : 0);
    if (given > 1) {
      keys.faultAt(
          keys.line("name"),
          keys.path(),
          "",
          "more than one key fixes the moving mass",
          "added-mass with mass, or moving-mass, or bl",
          "leave the others out");
      return Optional.empty();
    }
    OptionalDouble massError = keys.optional(MASS_ERROR);
    OptionalDouble blError = keys.optional(BL_ERROR);
    if (keys.has("bl-error") && !keys.has("bl")) {
      keys.fault("bl-error", "there is no bl beside it", "only with bl", "leave it out");
    }
    if (keys.has("mass-error") && !keys.has("mass") && !keys.has("moving-mass")) {
      keys.fault("mass-error", "there is no mass beside it", "only with a mass", "leave it out");
    }
    if (keys.has("moving-mass")) {
      OptionalDouble mass = keys.optional(MOVING_MASS);
      return mass.isPresent()
          ? Optional.of(new MassAnchor.BareMass(mass.getAsDouble(), massError.orElse(0)))
          : Optional.empty();
    }
    if (keys.has("bl")) {
      OptionalDouble bl = keys.optional(BL);
      return bl.isPresent()
          ? Optional.of(new MassAnchor.ForceFactor(bl.getAsDouble(), blError.orElse(0)))
          : Optional.empty();
    }
    if (!keys.has(ADDED_MASS) && !keys.has("mass")) {
      return Optional.of(new MassAnchor.None());
    }
    OptionalDouble mass = keys.required(MASS);
    Optional<ImpedanceSweep> second =
        keys.requiredText(ADDED_MASS, "a-mass.txt")
            .flatMap(path -> sweep(keys, ADDED_MASS, path, notes));
    return mass.isPresent() && second.isPresent()
        ? Optional.of(
            new MassAnchor.AddedMass(
                second.orElseThrow(), AirLoad.freeAir(), mass.getAsDouble(), massError.orElse(0)))
        : Optional.empty();
  }

  private Optional<ImpedanceSweep> sweep(
      Section keys, String key, String named, List<String> notes) {
    Optional<Path> path = sweeps.path(keys, key, named, "a.txt");
    if (path.isEmpty()) {
      return Optional.empty();
    }
    try {
      ReadSweep read = SweepReader.read(path.orElseThrow());
      sweeps.addDigest(read.digest());
      read.warnings().forEach(warning -> notes.add(named + ": " + warning));
      return Optional.of(read.sweep());
    } catch (InvalidInputException e) {
      sweeps.addFaults(e);
      return Optional.empty();
    }
  }
}

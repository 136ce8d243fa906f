package nullplane.io;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import nullplane.faults.InputFault;
import nullplane.faults.InvalidInputException;
import nullplane.fit.AirLoad;
import nullplane.fit.ImpedanceSweep;
import nullplane.fit.MassAnchor;
import nullplane.sample.MeasuredSample;

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
  private static final String ADDED_MASS = "added-mass";
  private static final List<String> KEYS =
      List.of(
          "name",
          FREE_AIR,
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

  private final FaultList faults;
  private final Path folder;
  private final List<InputFault> sweepFaults = new ArrayList<>();
  private final StringBuilder digests = new StringBuilder();

  private MeasurementsReader(FaultList faults, Path folder) {
    this.faults = faults;
    this.folder = folder;
  }

  /**
   * Reads a description and its sweeps.
   *
   * @param file the description, a YAML file
   * @throws InvalidInputException with every fault of every file
   */
  public static ReadMeasurements read(Path file) {
    InputText input = InputText.read(file);
    FaultList faults = new FaultList(input.fileName());
    Path parent = file.toAbsolutePath().normalize().getParent();
    MeasurementsReader reader =
        new MeasurementsReader(faults, parent == null ? Path.of("").toAbsolutePath() : parent);
    reader.digests.append(input.digest());
    List<MeasuredSample> samples = reader.samples(YamlTree.of(input));
    List<InputFault> all = new ArrayList<>(faults.inOrder());
    all.addAll(reader.sweepFaults);
    if (!all.isEmpty()) {
      throw new InvalidInputException(all);
    }
    return new ReadMeasurements(
        samples,
        Sha256.hex(reader.digests.toString().getBytes(StandardCharsets.UTF_8)),
        input.fileName());
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
    Optional<ImpedanceSweep> sweep =
        keys.requiredText(FREE_AIR, "a.txt").flatMap(path -> sweep(keys, FREE_AIR, path, notes));
    Optional<MassAnchor> anchor = anchor(keys, notes);
    OptionalDouble rest = keys.optional(REST);
    return name.isPresent() && sweep.isPresent() && anchor.isPresent()
        ? Optional.of(
            new MeasuredSample(
                name.orElseThrow(), sweep.orElseThrow(), anchor.orElseThrow(), rest, notes))
        : Optional.empty();
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
    Optional<Path> path = inside(named);
    if (path.isEmpty()) {
      keys.fault(
          key,
          "the path leaves the folder of this file",
          "a file in this folder or below, without a leading /",
          "put the sweep beside this file and write " + key + ": a.txt");
      return Optional.empty();
    }
    try {
      ReadSweep read = SweepReader.read(path.orElseThrow());
      digests.append(read.digest());
      read.warnings().forEach(warning -> notes.add(named + ": " + warning));
      return Optional.of(read.sweep());
    } catch (InvalidInputException e) {
      sweepFaults.addAll(e.faults());
      return Optional.empty();
    }
  }

  /** Returns the file of a name, unless it lies outside the folder, links followed. */
  private Optional<Path> inside(String named) {
    try {
      Path relative = Path.of(named);
      Path path = folder.resolve(relative).normalize();
      if (relative.isAbsolute() || !path.startsWith(folder)) {
        return Optional.empty();
      }
      return !path.toFile().exists() || path.toRealPath().startsWith(folder.toRealPath())
          ? Optional.of(path)
          : Optional.empty();
    } catch (InvalidPathException | IOException e) {
      return Optional.empty();
    }
  }
}

package nullplane.io;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import nullplane.faults.InvalidInputException;
import nullplane.network.CrossoverFilter;
import nullplane.network.FilterAlignment;
import nullplane.network.MainDriver;
import nullplane.network.Polarity;
import nullplane.scoring.StackBrief;
import nullplane.scoring.Target;
import nullplane.units.Air;
import nullplane.units.Curve;
import nullplane.units.Levels;
import nullplane.units.Range;

/**
 * Reads the main driver that takes over above the woofers, modelled or measured.
 *
 * <p>It sits on the panel's centre line at the listening height, in the panel's plane or a stated
 * length behind it, so that its sound travels the listening distance and that length. The woofers'
 * pressure at the listening point holds its whole path too, with the sign that a positive voltage
 * moves the cone towards the listener. Reflection of the main driver's sound by the floor is left
 * out.
 *
 * <p>Source: a free wave travels r in r/c: P. M. Morse and K. U. Ingard, Theoretical Acoustics
 * (1968), section 7.1.
 */
final class MainDriverSection {
  static final String EXAMPLE = "{high-pass: {shape: linkwitz-riley-4, corner: 200 Hz}}";

  private static final String HIGH_PASS = "high-pass";
  private static final String HIGH_PASS_EXAMPLE = "{shape: linkwitz-riley-4, corner: 200 Hz}";
  private static final String RESPONSE = "response";
  private static final WordKey<FilterAlignment> SHAPE = CrossoverSection.shape("shape");
  private static final QuantityKey CORNER =
      QuantityKey.of("corner", Dimension.FREQUENCY, "20 Hz .. 5000 Hz", "200 Hz");
  private static final WordKey<Polarity> POLARITY =
      new WordKey<Polarity>("polarity")
          .with("normal", Polarity.NORMAL)
          .with("inverted", Polarity.INVERTED);
  private static final QuantityKey BEHIND =
      QuantityKey.of("behind", Dimension.LENGTH, "-20 cm .. 5 m", "0 cm");
  private static final QuantityKey PADDING =
      QuantityKey.of("padding", Dimension.LEVEL, "0 dB .. 40 dB", "3 dB");
  private static final WordKey<Boolean> FLIGHT =
      new WordKey<Boolean>("time-of-flight").with("removed", false).with("included", true);

  static final List<String> KEYS =
      List.of(
          HIGH_PASS,
          POLARITY.name(),
          BEHIND.name(),
          StackSection.LEVEL.name(),
          RESPONSE,
          PADDING.name(),
          FLIGHT.name());

  private final Section section;
  private final Optional<FilterAlignment> shape;
  private final OptionalDouble cornerHz;
  private final Polarity polarity;
  private final double behindM;
  private final OptionalDouble levelDb;
  private final double paddingDb;
  private final boolean flightIncluded;
  private final Optional<ResponseReader.Response> response;

  private MainDriverSection(Section section, NamedFiles files) {
    this.section = section;
    Optional<Section> highPass =
        section.optionalSection(HIGH_PASS, HIGH_PASS_EXAMPLE, highPassKeys());
    shape = highPass.flatMap(SHAPE::one);
    cornerHz =
        highPass.isPresent() ? highPass.orElseThrow().optional(CORNER) : OptionalDouble.empty();
    polarity = POLARITY.one(section).orElse(Polarity.NORMAL);
    behindM = section.optional(BEHIND).orElse(0);
    levelDb = section.optional(StackSection.LEVEL);
    paddingDb = section.optional(PADDING).orElse(0);
    flightIncluded = FLIGHT.one(section).orElse(false);
    response =
        section
            .optionalText(RESPONSE, "main.txt")
            .flatMap(named -> response(section, named, files));
    checkKeys(highPass);
  }

  private static List<String> highPassKeys() {
    return List.of(SHAPE.name(), CORNER.name());
  }

  /**
   * Reads the keys; each that is wrong is a fault.
   *
   * @param section the main driver
   * @param files where a measured response may lie
   */
  static MainDriverSection read(Section section, NamedFiles files) {
    return new MainDriverSection(section, files);
  }

  private static Optional<ResponseReader.Response> response(
      Section section, String named, NamedFiles files) {
    try {
      Optional<ResponseReader.Response> read =
          files.path(section, RESPONSE, named, "main.txt").map(ResponseReader::read);
      read.ifPresent(found -> files.addDigest(found.digest()));
      return read;
    } catch (InvalidInputException e) {
      files.addFaults(e);
      return Optional.empty();
    }
  }

  /** Which keys belong together. */
  private void checkKeys(Optional<Section> highPass) {
    highPass
        .filter(block -> !block.has(SHAPE.name()))
        .ifPresent(
            block ->
                block.fault(
                    SHAPE.name(),
                    "the key is missing",
                    SHAPE.allowed(),
                    "write shape: linkwitz-riley-4"));
    if (section.has(RESPONSE)) {
      if (section.node(StackSection.LEVEL.name()).isPresent()) {
        section.fault(
            StackSection.LEVEL.name(),
            "the response states the level already",
            "level, or response",
            "leave level out; padding lowers a response");
      }
      if (flightIncluded && section.node(BEHIND.name()).isPresent()) {
        section.fault(
            BEHIND.name(),
            "the response holds the whole path already",
            "behind, or time-of-flight: included",
            "leave one of them out");
      }
      return;
    }
    if (!section.has(HIGH_PASS)) {
      section.fault(
          HIGH_PASS,
          "neither a high-pass nor a response is stated",
          "high-pass, response, or both",
          "write " + HIGH_PASS + ": " + HIGH_PASS_EXAMPLE);
    }
    for (String key : List.of(PADDING.name(), FLIGHT.name())) {
      if (section.node(key).isPresent()) {
        section.fault(
            key, "there is no response beside it", "only with a response", "leave it out");
      }
    }
  }

  /**
   * Checks that a measured response covers where the sum is judged.
   *
   * @param bandHz the band (Hz)
   */
  void checkBand(Range bandHz) {
    Optional<Curve> measured = response.map(ResponseReader.Response::frequencyHz);
    if (measured.isEmpty()) {
      return;
    }
    Curve hz = measured.orElseThrow();
    Range known = new Range(hz.at(0), hz.at(hz.size() - 1));
    if (!(known.contains(bandHz.lower()) && known.contains(bandHz.upper()))) {
      section.fault(
          RESPONSE,
          "the response is known from " + inHz(known) + "; the sum is judged from " + inHz(bandHz),
          "a response that covers "
              + inHz(bandHz)
              + ": the low corner to an octave above the highest upper corner",
          "measure the whole band, or bring the target's corners together");
    }
  }

  private static String inHz(Range range) {
    return Quantity.digits(range.lower()) + " Hz to " + Quantity.digits(range.upper()) + " Hz";
  }

  /**
   * Returns a stack with this main driver above it.
   *
   * @param stack the stack; unless stated, its level is the main driver's, and its upper corner
   *     that of the high-pass
   * @param target at whose voltage levels hold
   * @param distanceM listening distance (m)
   */
  StackBrief above(StackBrief stack, Target target, double distanceM) {
    double upperHz = stack.upperCornerHz().orElse(target.upperCornerHz());
    Optional<CrossoverFilter> highPass =
        shape.map(known -> new CrossoverFilter(known, cornerHz.orElse(upperHz)));
    double delayS = (distanceM + behindM) / Air.standard().speedOfSoundMPerS();
    MainDriver main =
        response
            .map(r -> measured(r, highPass, flightIncluded ? 0 : delayS, target.voltageV()))
            .orElseGet(
                () ->
                    new MainDriver.Modelled(
                        perVolt(levelDb.orElse(stack.levelDb()), target.voltageV()),
                        highPass,
                        polarity,
                        delayS));
    return new StackBrief(
        stack.name(),
        stack.panel(),
        stack.pistons(),
        stack.levelDb(),
        stack.loudestDb(),
        stack.wiring(),
        stack.upperCornerHz(),
        Optional.of(main),
        stack.stand());
  }

  private MainDriver measured(
      ResponseReader.Response known,
      Optional<CrossoverFilter> highPass,
      double delayS,
      double voltageV) {
    double[] pressure =
        known.levelDb().stream().map(level -> perVolt(level - paddingDb, voltageV)).toArray();
    return new MainDriver.Measured(
        known.frequencyHz(), Curve.of(pressure), known.phaseRad(), highPass, polarity, delayS);
  }

  private static double perVolt(double levelDb, double voltageV) {
    return Levels.REFERENCE_PRESSURE_PA * Levels.amplitudeRatio(levelDb) / voltageV;
  }
}

package nullplane.io;

import java.util.List;
import java.util.Optional;
import nullplane.network.ActiveLimits;
import nullplane.network.FilterAlignment;
import nullplane.network.NetworkOffer;
import nullplane.units.Levels;
import nullplane.units.Range;

/** Reads what a filter before an amplifier may be set to. */
final class ActiveSection {
  static final List<String> KEYS = List.of("gain", "shapes", "corner", "correction");

  private static final String CORRECTION = "correction";
  private static final String CORRECTION_EXAMPLE =
      "{frequency: 30 Hz .. 200 Hz, q: 0.5 .. 3, gain: -9 dB .. 6 dB}";
  private static final List<String> CORRECTION_KEYS = List.of("frequency", "q", "gain");

  private static final QuantityKey GAIN =
      QuantityKey.of("gain", Dimension.LEVEL, "-40 dB .. 20 dB", "-12 dB .. 6 dB");
  private static final QuantityKey CORNER =
      QuantityKey.of("corner", Dimension.FREQUENCY, "20 Hz .. 5000 Hz", "80 Hz .. 400 Hz");
  private static final QuantityKey BEND_HZ =
      QuantityKey.of("frequency", Dimension.FREQUENCY, "10 Hz .. 5000 Hz", "30 Hz .. 200 Hz");
  private static final QuantityKey BEND_Q =
      QuantityKey.of("q", Dimension.NUMBER, "0.1 .. 20", "0.5 .. 3");
  private static final QuantityKey BEND_GAIN =
      QuantityKey.of("gain", Dimension.LEVEL, "-24 dB .. 24 dB", "-9 dB .. 6 dB");

  private static final Range USUAL_GAIN_DB = new Range(-12, 6);
  private static final List<FilterAlignment> USUAL_SHAPES =
      List.of(FilterAlignment.BUTTERWORTH_2, FilterAlignment.LINKWITZ_RILEY_4);
  private static final Range USUAL_BEND_HZ = new Range(30, 200);
  private static final Range USUAL_BEND_Q = new Range(0.5, 3);
  private static final Range USUAL_BEND_DB = new Range(-9, 6);

  private static final WordKey<FilterAlignment> SHAPES = CrossoverSection.shape("shapes");

  private ActiveSection() {}

  /**
   * Returns the offer, or nothing when a value is at fault.
   *
   * @param section the crossover
   * @param upperCornersHz lowest and highest upper corner of the stacks (Hz): unless stated, the
   *     low-pass has its corner from half the one to twice the other; nothing if they are at fault
   */
  static Optional<NetworkOffer> read(Section section, Optional<Range> upperCornersHz) {
    Optional<Range> gain = or(section, GAIN, USUAL_GAIN_DB);
    Optional<List<FilterAlignment>> shapes = shapes(section);
    Optional<Range> corner =
        section.has(CORNER.name())
            ? section.optionalRange(CORNER)
            : upperCornersHz.map(hz -> new Range(0.5 * hz.lower(), 2 * hz.upper()));
    Optional<Bend> bend = bend(section);
    if (gain.isEmpty() || shapes.isEmpty() || corner.isEmpty() || bend.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        new NetworkOffer.Active(
            new ActiveLimits(
                ratios(gain.orElseThrow()),
                shapes.orElseThrow(),
                corner.orElseThrow(),
                bend.orElseThrow().hz(),
                bend.orElseThrow().q(),
                ratios(bend.orElseThrow().gainDb()))));
  }

  private static Optional<List<FilterAlignment>> shapes(Section section) {
    if (CrossoverSection.isNone(section, SHAPES.name())) {
      return Optional.of(List.of());
    }
    List<FilterAlignment> stated = SHAPES.several(section);
    if (!stated.isEmpty()) {
      return Optional.of(stated);
    }
    return section.has(SHAPES.name()) ? Optional.empty() : Optional.of(USUAL_SHAPES);
  }

  /** What the correction may be set to; a pinned gain of 0 dB leaves it out. */
  private record Bend(Range hz, Range q, Range gainDb) {}

  private static Optional<Bend> bend(Section section) {
    Bend usual = new Bend(USUAL_BEND_HZ, USUAL_BEND_Q, USUAL_BEND_DB);
    if (CrossoverSection.isNone(section, CORRECTION)) {
      return Optional.of(new Bend(usual.hz(), usual.q(), Range.pinned(0)));
    }
    if (!section.has(CORRECTION)) {
      return Optional.of(usual);
    }
    Optional<Section> block =
        CrossoverSection.block(section, CORRECTION, CORRECTION_EXAMPLE, CORRECTION_KEYS);
    Optional<Range> hz = block.flatMap(b -> or(b, BEND_HZ, usual.hz()));
    Optional<Range> q = block.flatMap(b -> or(b, BEND_Q, usual.q()));
    Optional<Range> gainDb = block.flatMap(b -> or(b, BEND_GAIN, usual.gainDb()));
    return hz.isPresent() && q.isPresent() && gainDb.isPresent()
        ? Optional.of(new Bend(hz.orElseThrow(), q.orElseThrow(), gainDb.orElseThrow()))
        : Optional.empty();
  }

  private static Optional<Range> or(Section section, QuantityKey key, Range usual) {
    return section.has(key.name()) ? section.optionalRange(key) : Optional.of(usual);
  }

  private static Range ratios(Range decibels) {
    return new Range(
        Levels.amplitudeRatio(decibels.lower()), Levels.amplitudeRatio(decibels.upper()));
  }
}

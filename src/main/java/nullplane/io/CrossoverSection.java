package nullplane.io;

import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import nullplane.network.FilterAlignment;
import nullplane.network.NetworkCatalogue;
import nullplane.network.NetworkOffer;
import nullplane.units.Range;

/** Reads what may stand before a spec's stacks: passive parts, an active filter, or nothing. */
final class CrossoverSection {
  static final String EXAMPLE = "{kind: passive, most-parts: 2}";
  static final List<String> KEYS =
      Stream.of(List.of("kind"), PassiveSection.KEYS, ActiveSection.KEYS)
          .flatMap(List::stream)
          .toList();

  /** The word that leaves something out. */
  static final String NONE = "none";

  private static final WordKey<Kind> KIND =
      new WordKey<Kind>("kind")
          .with("passive", Kind.PASSIVE)
          .with("active", Kind.ACTIVE)
          .with(NONE, Kind.NONE);

  private enum Kind {
    PASSIVE,
    ACTIVE,
    NONE
  }

  private CrossoverSection() {}

  /** Returns a key that names shapes of filters. */
  static WordKey<FilterAlignment> shape(String key) {
    WordKey<FilterAlignment> shapes = new WordKey<>(key);
    shapes.with("butterworth-1", FilterAlignment.BUTTERWORTH_1);
    shapes.with("butterworth-2", FilterAlignment.BUTTERWORTH_2);
    shapes.with("butterworth-3", FilterAlignment.BUTTERWORTH_3);
    shapes.with("butterworth-4", FilterAlignment.BUTTERWORTH_4);
    shapes.with("linkwitz-riley-2", FilterAlignment.LINKWITZ_RILEY_2);
    return shapes.with("linkwitz-riley-4", FilterAlignment.LINKWITZ_RILEY_4);
  }

  /**
   * Returns the offer, or nothing when a value is at fault.
   *
   * @param section the crossover
   * @param upperCornersHz lowest and highest upper corner of the stacks (Hz), for what is left out;
   *     nothing if they are at fault
   */
  static Optional<NetworkOffer> read(Section section, Optional<Range> upperCornersHz) {
    Optional<Kind> kind = KIND.one(section);
    if (kind.isEmpty() && section.has(KIND.name())) {
      return Optional.empty();
    }
    return switch (kind.orElse(Kind.PASSIVE)) {
      case PASSIVE -> {
        refuse(section, ActiveSection.KEYS, "a filter before an amplifier", "write kind: active");
        yield PassiveSection.read(section).map(UnaryOperator.identity());
      }
      case ACTIVE -> {
        refuse(section, PassiveSection.KEYS, "passive parts", "write kind: passive");
        yield ActiveSection.read(section, upperCornersHz);
      }
      case NONE -> {
        refuse(section, PassiveSection.KEYS, "a network", "leave it out, or write kind: passive");
        refuse(section, ActiveSection.KEYS, "a network", "leave it out, or write kind: active");
        yield Optional.of(
            new NetworkOffer.Passive(
                new NetworkCatalogue(
                    List.of(), List.of(), List.of(), List.of(), List.of(), List.of()),
                0));
      }
    };
  }

  private static void refuse(Section section, List<String> keys, String owner, String hint) {
    for (String key : keys) {
      if (section.node(key).isPresent()) {
        section.fault(key, "this belongs to " + owner, "only keys of this kind of crossover", hint);
      }
    }
  }

  /** Returns whether a key has the word that leaves something out. */
  static boolean isNone(Section section, String key) {
    return section
        .node(key)
        .filter(node -> node instanceof YamlNode.Scalar word && word.text().strip().equals(NONE))
        .isPresent();
  }

  /**
   * Returns the block of a key that may also be {@link #NONE}; nothing if it is absent or none, and
   * with a fault if it is neither.
   */
  static Optional<Section> block(Section section, String key, String example, List<String> known) {
    if (section.node(key).filter(YamlNode.Mapping.class::isInstance).isPresent()) {
      return section.optionalSection(key, example, known);
    }
    if (section.node(key).isPresent() && !isNone(section, key)) {
      section.fault(
          key,
          "keys with values are needed here, or none",
          "none, or the keys " + String.join(", ", known),
          "write " + key + ": " + example);
    }
    return Optional.empty();
  }
}

package nullplane.network;

import java.util.List;
import nullplane.units.Curve;
import nullplane.units.Range;

/** What networks the stacks of a system may be given. "No network" is always among them. */
public sealed interface NetworkOffer {
  /**
   * Returns the networks prepared for one frequency axis.
   *
   * @param frequencyHz frequencies (Hz), each above 0
   */
  OfferRows rows(Curve frequencyHz);

  /**
   * Passive parts between amplifier and stack.
   *
   * @param catalogue the parts to choose from
   * @param mostParts how many parts a network may have, 0 or more
   */
  record Passive(NetworkCatalogue catalogue, int mostParts) implements NetworkOffer {
    /** Most networks that are tried on each stack. */
    public static final int MOST_NETWORKS = 200_000;

    /** Most networks of a catalogue before the limit of parts. */
    public static final long MOST_IN_CATALOGUE = 50L * MOST_NETWORKS;

    /** Checks the number of parts and of networks. */
    public Passive {
      if (mostParts < 0) {
        throw new IllegalArgumentException(mostParts + " parts; allowed: 0 or more");
      }
      long size = catalogue.size();
      if (size > MOST_IN_CATALOGUE) {
        throw new IllegalArgumentException(
            size
                + " networks; allowed: "
                + MOST_IN_CATALOGUE
                + " at most, before the limit of parts");
      }
    }

    /** Returns the offer of a list of series coils and none, one part at most. */
    public static Passive ofCoils(CoilCatalogue coils) {
      return new Passive(
          new NetworkCatalogue(
              List.of(),
              coils.options().stream().filter(SeriesCoil::present).toList(),
              List.of(),
              List.of(),
              List.of(),
              List.of()),
          1);
    }

    @Override
    public OfferRows rows(Curve frequencyHz) {
      return new PassiveOfferRows(this, frequencyHz);
    }
  }

  /**
   * A filter before an amplifier that the stack has for itself.
   *
   * @param limits what the filter may be set to
   */
  record Active(ActiveLimits limits) implements NetworkOffer {
    @Override
    public OfferRows rows(Curve frequencyHz) {
      return new ActiveOfferRows(limits, frequencyHz);
    }
  }

  /**
   * Returns what a workshop that says nothing else keeps: the parts of {@link
   * NetworkCatalogue#standard} and series resistors E6 0.47 ohm to 10 ohm, two parts at most.
   */
  static Passive standard() {
    return new Passive(
        NetworkCatalogue.standard().withResistors(PreferredValues.E6, new Range(0.47, 10)), 2);
  }
}

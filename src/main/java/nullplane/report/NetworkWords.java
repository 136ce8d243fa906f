package nullplane.report;

import java.util.ArrayList;
import java.util.List;
import nullplane.network.ActiveBranch;
import nullplane.network.Capacitor;
import nullplane.network.Correction;
import nullplane.network.LowPassBranch;
import nullplane.network.Part;
import nullplane.network.PlacedPart;
import nullplane.network.Resistor;
import nullplane.network.SeriesCoil;
import nullplane.network.StackNetwork;
import nullplane.units.Levels;

/** A stack's network in words. */
final class NetworkWords {
  private NetworkWords() {}

  /** Returns the values alone, for a narrow column: "3.3 mH + 47 uF". */
  static String shortly(StackNetwork network) {
    return words(network, false);
  }

  /** Returns each part with what it is, coils with resistance and copper. */
  static String fully(StackNetwork network) {
    return words(network, true);
  }

  /**
   * Returns the values alone where they fit, else how many parts or filters there are.
   *
   * @param network the network
   * @param most characters that fit
   */
  static String within(StackNetwork network, int most) {
    String values = shortly(network);
    if (values.length() <= most) {
      return values;
    }
    int count = network.partCount();
    return network instanceof ActiveBranch
        ? count == 0 ? "gain" : count == 1 ? "1 filter" : count + " filters"
        : count + " parts";
  }

  private static String words(StackNetwork network, boolean full) {
    if (network.none()) {
      return "none";
    }
    List<String> words = new ArrayList<>();
    if (network instanceof LowPassBranch branch) {
      for (PlacedPart placed : branch.parts()) {
        words.add((full ? placed.place().label() + " " : "") + value(placed.part(), full));
      }
    } else if (network instanceof ActiveBranch active) {
      if (active.gain() != 1) {
        words.add("gain " + Figures.signedDecibels(Levels.ofAmplitudeRatio(active.gain())));
      }
      active
          .lowPass()
          .ifPresent(
              filter ->
                  words.add(
                      (full ? "low-pass " + filter.alignment().label() + ", " : "")
                          + Figures.hertz(filter.cornerHz())));
      active.correction().ifPresent(correction -> words.add(correction(correction, full)));
    }
    return String.join(full ? "; " : " + ", words);
  }

  /** Returns a part's value with its unit; a coil in full with resistance and copper. */
  static String value(Part part, boolean full) {
    if (part instanceof SeriesCoil coil) {
      return Figures.millihenries(coil.inductanceH())
          + (full ? ", " + Figures.ohms(coil.resistanceOhm()) + ", " + copper(coil) : "");
    }
    if (part instanceof Capacitor capacitor) {
      return Figures.of(capacitor.capacitanceF() * 1e6, "uF");
    }
    return part instanceof Resistor resistor ? Figures.ohms(resistor.resistanceOhm()) : "";
  }

  private static String copper(SeriesCoil coil) {
    return Figures.grams(coil.copperKg()) + " copper";
  }

  private static String correction(Correction correction, boolean full) {
    return (correction instanceof Correction.Shelf ? "shelf " : "peak ")
        + Figures.signedDecibels(Levels.ofAmplitudeRatio(correction.gain()))
        + " at "
        + Figures.hertz(correction.frequencyHz())
        + (full && correction instanceof Correction.Peaking peaking
            ? ", Q " + Figures.number(peaking.q())
            : "");
  }
}

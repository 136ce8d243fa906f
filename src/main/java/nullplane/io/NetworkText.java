package nullplane.io;

import java.util.ArrayList;
import java.util.List;
import nullplane.network.ActiveBranch;
import nullplane.network.Correction;
import nullplane.network.LowPassBranch;
import nullplane.network.Part;
import nullplane.network.PartKind;
import nullplane.network.PlacedPart;
import nullplane.network.StackNetwork;
import nullplane.units.Levels;

/** A stack's network as one cell of a table: each part with its place, to six digits. */
final class NetworkText {
  private NetworkText() {}

  /** Returns the network in words; "none" if there is nothing. */
  static String of(StackNetwork network) {
    if (network.none()) {
      return "none";
    }
    List<String> words = new ArrayList<>();
    if (network instanceof LowPassBranch branch) {
      for (PlacedPart placed : branch.parts()) {
        words.add(placed.place().label() + " " + value(placed.part()) + " " + unit(placed.part()));
      }
    } else if (network instanceof ActiveBranch active) {
      words.add("gain " + decibels(active.gain()));
      active
          .lowPass()
          .ifPresent(
              filter ->
                  words.add(
                      "low-pass "
                          + filter.alignment().label()
                          + " "
                          + DecimalText.rounded(filter.cornerHz(), 0)
                          + " Hz"));
      active.correction().ifPresent(correction -> words.add(correction(correction)));
    }
    return String.join("; ", words);
  }

  /** Returns a part's value in the unit of {@link #unit}. */
  static String value(Part part) {
    return DecimalText.rounded(part.value(), decimals(part.kind()));
  }

  /** Returns the unit that people read a part's value in. */
  static String unit(Part part) {
    return switch (part.kind()) {
      case RESISTOR -> "ohm";
      case COIL -> "mH";
      case CAPACITOR -> "uF";
    };
  }

  /** Returns how many decimals that unit is shifted from the SI one. */
  static int decimals(PartKind kind) {
    return switch (kind) {
      case RESISTOR -> 0;
      case COIL -> 3;
      case CAPACITOR -> 6;
    };
  }

  private static String correction(Correction correction) {
    return (correction instanceof Correction.Shelf ? "shelf " : "peak ")
        + decibels(correction.gain())
        + " at "
        + DecimalText.rounded(correction.frequencyHz(), 0)
        + " Hz"
        + (correction instanceof Correction.Peaking peaking
            ? ", Q " + DecimalText.rounded(peaking.q(), 0)
            : "");
  }

  private static String decibels(double gain) {
    return DecimalText.rounded(Levels.ofAmplitudeRatio(gain), 0) + " dB";
  }
}

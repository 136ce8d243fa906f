package nullplane.io;

import java.io.IOException;
import nullplane.network.ActiveBranch;
import nullplane.network.Capacitor;
import nullplane.network.Correction;
import nullplane.network.CrossoverFilter;
import nullplane.network.LowPassBranch;
import nullplane.network.Part;
import nullplane.network.PlacedPart;
import nullplane.network.Resistor;
import nullplane.network.SeriesCoil;
import nullplane.network.StackNetwork;

/**
 * Writes a stack's network as JSON: the list of its parts from the amplifier to the stack, or the
 * setting of its filter. Values in SI units.
 */
final class NetworkJson {
  private NetworkJson() {}

  /** Writes the fields of a network into an object that is open. */
  static void write(JsonText json, StackNetwork network) throws IOException {
    if (network instanceof LowPassBranch branch) {
      json.text("kind", "passive");
      json.objects("parts", branch.parts(), placed -> part(json, placed));
    } else if (network instanceof ActiveBranch active) {
      json.text("kind", "active");
      json.number("gain", active.gain());
      if (active.lowPass().isPresent()) {
        CrossoverFilter filter = active.lowPass().orElseThrow();
        json.object(
            "lowPass",
            () -> {
              json.text("shape", filter.alignment().label());
              json.number("cornerHz", filter.cornerHz());
            });
      }
      if (active.correction().isPresent()) {
        Correction correction = active.correction().orElseThrow();
        json.object(
            "correction",
            () -> {
              json.text("kind", correction instanceof Correction.Shelf ? "shelf" : "peak");
              json.number("frequencyHz", correction.frequencyHz());
              json.number("gain", correction.gain());
              if (correction instanceof Correction.Peaking peaking) {
                json.number("q", peaking.q());
              }
            });
      }
    }
  }

  /** Writes the fields of a part. */
  static void part(JsonText json, PlacedPart placed) throws IOException {
    json.text("place", placed.place().label());
    json.text("designator", placed.place().designator());
    Part part = placed.part();
    if (part instanceof SeriesCoil coil) {
      json.number("inductanceH", coil.inductanceH());
      json.number("resistanceOhm", coil.resistanceOhm());
      json.number("copperKg", coil.copperKg());
    } else if (part instanceof Capacitor capacitor) {
      json.number("capacitanceF", capacitor.capacitanceF());
    } else if (part instanceof Resistor resistor) {
      json.number("resistanceOhm", resistor.resistanceOhm());
    }
  }
}

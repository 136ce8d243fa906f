package nullplane.sample;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import nullplane.fit.ImpedanceSweep;
import nullplane.fit.MassAnchor;
import nullplane.units.Checks;

/**
 * What was measured on one sample.
 *
 * @param name what people call it
 * @param sweep impedance, in free air or at its place on a panel
 * @param anchor what fixes the moving mass
 * @param restPositionM coil's rest position from the middle of the gap, outwards above 0 (m), if it
 *     was measured
 * @param place where it hung on a panel; empty for free air
 * @param golden whether it is a reference that is measured again each round and decides nothing
 * @param notes what was repaired or assumed while it was read, one sentence each
 */
public record MeasuredSample(
    String name,
    ImpedanceSweep sweep,
    MassAnchor anchor,
    OptionalDouble restPositionM,
    Optional<PanelPlace> place,
    boolean golden,
    List<String> notes) {
  /** Copies the list; checks that there is a name and that the position is finite. */
  public MeasuredSample {
    notes = List.copyOf(notes);
    restPositionM.ifPresent(x -> Checks.finite(x, "rest position", "m"));
    if (name.isBlank()) {
      throw new IllegalArgumentException("a sample needs a name");
    }
  }
}

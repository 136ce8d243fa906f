package nullplane.scoring;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import nullplane.acoustics.Panel;
import nullplane.acoustics.Piston;
import nullplane.network.MainDriver;
import nullplane.units.Checks;

/**
 * One member of the family: a panel with its woofers and what is asked of it.
 *
 * @param name what people call it
 * @param panel the panel
 * @param pistons one per woofer
 * @param levelDb level asked for at the listening point at the target's voltage (dB re 20 uPa)
 * @param loudestDb level the stack should reach over the whole band (dB re 20 uPa)
 * @param wiring the wiring, if the spec fixes it
 * @param upperCornerHz upper corner of its own (Hz), if it is not the target's
 * @param main the main driver above this stack as it is set for it, if the sum of both is to be
 *     judged
 * @param stand what is known of how the panel stands
 */
public record StackBrief(
    String name,
    Panel panel,
    List<Piston> pistons,
    double levelDb,
    double loudestDb,
    Optional<Wiring> wiring,
    OptionalDouble upperCornerHz,
    Optional<MainDriver> main,
    PanelStand stand) {
  /** A stack of which it is not known how it stands. */
  public StackBrief(
      String name,
      Panel panel,
      List<Piston> pistons,
      double levelDb,
      double loudestDb,
      Optional<Wiring> wiring,
      OptionalDouble upperCornerHz,
      Optional<MainDriver> main) {
    this(name, panel, pistons, levelDb, loudestDb, wiring, upperCornerHz, main, PanelStand.UNKNOWN);
  }

  /** A stack with the target's upper corner and no main driver to sum with. */
  public StackBrief(
      String name,
      Panel panel,
      List<Piston> pistons,
      double levelDb,
      double loudestDb,
      Optional<Wiring> wiring) {
    this(
        name, panel, pistons, levelDb, loudestDb, wiring, OptionalDouble.empty(), Optional.empty());
  }

  /** Checks the levels, that there is a woofer, and that a fixed wiring uses them all. */
  public StackBrief {
    pistons = List.copyOf(pistons);
    Checks.finite(levelDb, "level", "dB");
    Checks.finite(loudestDb, "loudest level", "dB");
    upperCornerHz.ifPresent(corner -> Checks.positive(corner, "upper corner", "Hz"));
    if (pistons.isEmpty()) {
      throw new IllegalArgumentException("stack " + name + " has no woofer");
    }
    int count = pistons.size();
    wiring.ifPresent(
        fixed -> {
          if (fixed.woofers() != count) {
            throw new IllegalArgumentException(
                "stack " + name + " has " + count + " woofers, its wiring " + fixed.woofers());
          }
        });
  }

  /**
   * Returns the same stack with pistons of another size in the same places.
   *
   * @param radiusM their radius (m)
   */
  public StackBrief withPistonRadius(double radiusM) {
    return new StackBrief(
        name,
        panel,
        pistons.stream().map(p -> new Piston(p.xM(), p.yM(), radiusM)).toList(),
        levelDb,
        loudestDb,
        wiring,
        upperCornerHz,
        main,
        stand);
  }

  /**
   * Returns the largest radius that pistons in these places can have without touching the rim or
   * each other (m).
   */
  public double largestPistonRadiusM() {
    double largest = Double.POSITIVE_INFINITY;
    for (int i = 0; i < pistons.size(); i++) {
      Piston piston = pistons.get(i);
      largest = Math.min(largest, panel.outline().distanceToRim(piston.xM(), piston.yM()));
      for (int j = 0; j < i; j++) {
        Piston other = pistons.get(j);
        largest =
            Math.min(largest, Math.hypot(piston.xM() - other.xM(), piston.yM() - other.yM()) / 2);
      }
    }
    return largest;
  }
}

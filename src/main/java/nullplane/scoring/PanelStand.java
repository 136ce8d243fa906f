package nullplane.scoring;

import java.util.OptionalDouble;
import nullplane.units.Checks;

/**
 * What is known of how a panel stands. It has no part in the sound, only in what tips.
 *
 * @param panelMassKg mass of the panel as cut, without woofers (kg), if it is known
 * @param baseDepthM depth of its base from front to rear, half of it before the panel (m), if it is
 *     known
 */
public record PanelStand(OptionalDouble panelMassKg, OptionalDouble baseDepthM) {
  /** Nothing is known. */
  public static final PanelStand UNKNOWN =
      new PanelStand(OptionalDouble.empty(), OptionalDouble.empty());

  /** Checks that what is known is possible. */
  public PanelStand {
    panelMassKg.ifPresent(mass -> Checks.positive(mass, "panel mass", "kg"));
    baseDepthM.ifPresent(depth -> Checks.notNegative(depth, "base depth", "m"));
  }
}

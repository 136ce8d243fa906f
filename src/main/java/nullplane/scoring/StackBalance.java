package nullplane.scoring;

import java.util.Optional;
import nullplane.acoustics.Outline;
import nullplane.acoustics.Piston;
import nullplane.driver.Woofer;
import nullplane.motor.MotorDesign;
import nullplane.units.Checks;

/**
 * The weight of a standing stack and how high it lies. Source: centre of gravity of an even sheet
 * with round holes and of point masses in them. All weight is taken to lie in the panel's plane and
 * that of the base is left out, which is on the safe side; what hangs behind the panel is not.
 *
 * @param massKg mass of panel and woofers (kg)
 * @param centreOfGravityM height of the centre of gravity over the floor, or over the panel's
 *     lowest point without a floor (m)
 */
public record StackBalance(double massKg, double centreOfGravityM) {
  /** Mass per area of a panel that nothing is known of (kg/m2): 18 mm birch plywood. Practice. */
  public static final double PANEL_KG_PER_M2 = 12;

  /** Frame and steel of a woofer per square of its nominal size (kg/m2). Common practice. */
  public static final double FRAME_KG_PER_M2 = 33;

  /** The same with the magnet, where that is not known (kg/m2). Common practice. */
  public static final double WHOLE_WOOFER_KG_PER_M2 = 45;

  /** Share of the panel's area that is never taken for holes (1). */
  private static final double LEAST_REST = 0.02;

  /** Checks both figures. */
  public StackBalance {
    Checks.positive(massKg, "mass", "kg");
    Checks.positive(centreOfGravityM, "height of the centre of gravity", "m");
  }

  /**
   * Returns the balance of a stack.
   *
   * @param brief the stack; a panel of unknown mass weighs {@link #PANEL_KG_PER_M2}
   * @param wooferMassKg mass of one woofer (kg), 0 or more
   */
  public static StackBalance of(StackBrief brief, double wooferMassKg) {
    Checks.notNegative(wooferMassKg, "woofer mass", "kg");
    Outline outline = brief.panel().outline();
    double area = outline.areaM2();
    double areaMoment = area * outline.centroidYM();
    double wooferMoment = 0;
    for (Piston piston : brief.pistons()) {
      double hole = Math.PI * piston.radiusM() * piston.radiusM();
      area -= hole;
      areaMoment -= hole * piston.yM();
      wooferMoment += wooferMassKg * piston.yM();
    }
    // a panel that is nothing but holes weighs as little, and where it lies is of no account
    boolean rest = area > LEAST_REST * outline.areaM2();
    double restArea = rest ? area : LEAST_REST * outline.areaM2();
    double restHeight = rest ? areaMoment / area : outline.centroidYM();
    double panelMass = brief.stand().panelMassKg().orElse(PANEL_KG_PER_M2 * restArea);
    double mass = panelMass + brief.pistons().size() * wooferMassKg;
    double moment = panelMass * restHeight + wooferMoment;
    return new StackBalance(mass, brief.panel().centreHeightM() + moment / mass);
  }

  /**
   * Returns the mass of a woofer (kg): moving parts and magnet as computed, frame and steel by
   * {@link #FRAME_KG_PER_M2}; without a known motor {@link #WHOLE_WOOFER_KG_PER_M2}.
   *
   * @param woofer the woofer
   * @param motor its motor, if it is known
   */
  public static double wooferMassKg(Woofer woofer, Optional<MotorDesign> motor) {
    double square = woofer.nominalM() * woofer.nominalM();
    return motor
        .map(known -> known.magnetMassKg() + woofer.bareMassKg() + FRAME_KG_PER_M2 * square)
        .orElse(usualWooferMassKg(woofer.nominalM()));
  }

  /**
   * Returns the mass of a woofer of which only the size is known, {@link #WHOLE_WOOFER_KG_PER_M2}
   * (kg).
   *
   * @param nominalM frame size class (m)
   */
  public static double usualWooferMassKg(double nominalM) {
    return WHOLE_WOOFER_KG_PER_M2 * nominalM * nominalM;
  }

  /** Returns the least depth of a base that stands a tilt by 10 degrees, 2 h tan 10 degrees (m). */
  public double leastBaseDepthM() {
    return 2 * PanelStability.halfBaseForTiltM(centreOfGravityM);
  }

  /**
   * Returns the tilt at which the stack falls over (rad).
   *
   * @param baseDepthM depth of its base from front to rear (m)
   */
  public double tippingRad(double baseDepthM) {
    return PanelStability.tippingRad(centreOfGravityM, baseDepthM / 2);
  }
}

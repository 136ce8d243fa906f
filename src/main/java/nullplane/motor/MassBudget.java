package nullplane.motor;

import nullplane.driver.CoilBudget;
import nullplane.units.Checks;

/**
 * What the bare moving mass is made of. The cone is what the other parts leave.
 *
 * <p>Shares by area are common practice, without a source; with a former of usual size they add up
 * to {@link CoilBudget#LEAST_REMAINDER_KG_PER_M2}, which is the same rule for a woofer whose coil
 * is not known.
 *
 * @param coneKg cone and dust cap: what is left (kg); may be negative
 * @param surroundKg the half of the surround that moves (kg)
 * @param spiderKg the half of the spider that moves (kg)
 * @param formerKg former (kg)
 * @param glueKg glue and leads (kg)
 * @param coilKg coil with its enamel (kg)
 * @param leastConeKg the least that a cone of this size can be made for (kg)
 */
public record MassBudget(
    double coneKg,
    double surroundKg,
    double spiderKg,
    double formerKg,
    double glueKg,
    double coilKg,
    double leastConeKg) {
  /** Lightest cone and cap per effective area (kg/m2): paper of 0.35 mm at 650 kg/m3. */
  public static final double LEAST_CONE_KG_PER_M2 = 0.27;

  /** Half the surround per effective area (kg/m2): a light rubber or a cloth surround. */
  public static final double SURROUND_KG_PER_M2 = 0.07;

  /** Half the spider per effective area (kg/m2). */
  public static final double SPIDER_KG_PER_M2 = 0.03;

  /** Glue and leads per effective area (kg/m2). */
  public static final double GLUE_KG_PER_M2 = 0.02;

  /** Checks that the numbers are finite and all but the cone above 0. */
  public MassBudget {
    Checks.finite(coneKg, "cone mass", "kg");
    Checks.positive(surroundKg, "surround share", "kg");
    Checks.positive(spiderKg, "spider share", "kg");
    Checks.positive(formerKg, "former mass", "kg");
    Checks.positive(glueKg, "glue mass", "kg");
    Checks.positive(coilKg, "coil mass", "kg");
    Checks.positive(leastConeKg, "least cone mass", "kg");
  }

  /**
   * Returns the budget of a woofer with a known winding. Valid for nominal sizes of 165 to 530 mm.
   *
   * @param bareMassKg moving mass without air (kg)
   * @param effectiveAreaM2 effective piston area (m2)
   * @param winding the winding
   */
  public static MassBudget of(double bareMassKg, double effectiveAreaM2, Winding winding) {
    double surround = SURROUND_KG_PER_M2 * effectiveAreaM2;
    double spider = SPIDER_KG_PER_M2 * effectiveAreaM2;
    double glue = GLUE_KG_PER_M2 * effectiveAreaM2;
    double former = winding.formerMassKg();
    double coil = winding.coilMassKg();
    return new MassBudget(
        bareMassKg - coil - former - surround - spider - glue,
        surround,
        spider,
        former,
        glue,
        coil,
        LEAST_CONE_KG_PER_M2 * effectiveAreaM2);
  }

  /** Returns the sum of all parts, the bare moving mass (kg). */
  public double bareMassKg() {
    return coneKg + restKg() + coilKg;
  }

  /**
   * Returns the same as coil against everything else.
   *
   * @param windingHeightM height of the winding (m)
   */
  public CoilBudget coilBudget(double windingHeightM) {
    return new CoilBudget(windingHeightM, coilKg, coneKg + restKg(), leastConeKg + restKg());
  }

  private double restKg() {
    return surroundKg + spiderKg + formerKg + glueKg;
  }
}

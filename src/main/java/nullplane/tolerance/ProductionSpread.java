package nullplane.tolerance;

import java.util.List;
import nullplane.driver.Woofer;
import nullplane.units.Checks;

/**
 * How much a production run varies in what is built: for each {@link ProductionVariable} half the
 * width of the window that holds 95 % of the units, two standard deviations.
 *
 * <p>The variables are independent; what is measured is correlated because it follows from them: a
 * heavy cone lowers fs and raises Q, a weak magnet raises Q and lowers the level.
 *
 * @param bareMass of the bare moving mass, as a share (1)
 * @param stiffness of Kms, as a share (1)
 * @param loss of Rms, as a share (1)
 * @param flux of Bl, as a share (1)
 * @param resistance of Re, as a share (1)
 * @param inductance of Le, as a share (1)
 * @param area of Sd, as a share (1)
 * @param restPositionM of the coil's rest position (m)
 */
public record ProductionSpread(
    double bareMass,
    double stiffness,
    double loss,
    double flux,
    double resistance,
    double inductance,
    double area,
    double restPositionM) {
  private static final double WIDEST = 0.6;
  private static final double LEAST_TRAVEL_SHARE = 0.1;
  private static final List<ProductionVariable> VARIABLES = List.of(ProductionVariable.values());

  /** Checks that shares are from 0 to 0.6 and the rest position's window is not negative. */
  public ProductionSpread {
    Checks.notNegative(restPositionM, "spread of the rest position", "m");
    for (double share :
        new double[] {bareMass, stiffness, loss, flux, resistance, inductance, area}) {
      if (!(share >= 0 && share <= WIDEST)) {
        throw new IllegalArgumentException(
            "spread of " + share + "; allowed: 0 to " + WIDEST + " of the value");
      }
    }
  }

  /**
   * Returns the usual spread: mass 6.5 %, stiffness 20 %, loss 25 %, flux 5.5 %, Re 5 %, Le 15 %,
   * Sd 2 %, rest position 0.5 mm.
   *
   * <p>Chosen so that what is measured spreads as data sheets state it, common practice without a
   * source: Re 5 %, fs 10 to 15 %, Qts 15 %, Mms 5 to 8 %, Bl 5 to 7.5 %, Vas 20 to 25 %, level 1
   * dB, rest position 0.5 mm; see {@link MeasuredQuantity}. A run shows what came of it.
   */
  public static ProductionSpread usual() {
    return new ProductionSpread(0.065, 0.20, 0.25, 0.055, 0.05, 0.15, 0.02, 0.5e-3);
  }

  /** Returns this spread with every width times a factor. */
  public ProductionSpread times(double factor) {
    return new ProductionSpread(
        bareMass * factor,
        stiffness * factor,
        loss * factor,
        flux * factor,
        resistance * factor,
        inductance * factor,
        area * factor,
        restPositionM * factor);
  }

  /**
   * Returns half the width of a variable's window: a share of the value (1), or a length for the
   * rest position (m).
   *
   * @param variable the variable
   */
  public double halfWidth(ProductionVariable variable) {
    return switch (variable) {
      case BARE_MASS -> bareMass;
      case STIFFNESS -> stiffness;
      case LOSS -> loss;
      case FLUX -> flux;
      case RESISTANCE -> resistance;
      case INDUCTANCE -> inductance;
      case AREA -> area;
      case REST_POSITION -> restPositionM;
    };
  }

  /** Returns the chance of a run's units. */
  static UnitChance chance(long seed) {
    return new UnitChance(seed, UnitChance.Purpose.PRODUCTION, VARIABLES.size());
  }

  /** Returns a unit of a run. */
  Woofer unit(Woofer nominal, UnitChance chance, long unit) {
    double[] deviates = new double[VARIABLES.size()];
    for (int v = 0; v < deviates.length; v++) {
      deviates[v] = chance.normal(unit, v);
    }
    return unit(nominal, deviates);
  }

  /**
   * Returns the unit at given deviates. A rest position off the middle takes its distance from the
   * travel on one side.
   *
   * @param nominal the woofer as designed
   * @param deviates standard normal deviates by {@link ProductionVariable}
   */
  Woofer unit(Woofer nominal, double[] deviates) {
    double offsetM =
        0.5 * restPositionM * deviates[VARIABLES.indexOf(ProductionVariable.REST_POSITION)];
    return new Woofer(
        nominal.name(),
        nominal.nominalM(),
        nominal.effectiveAreaM2() * factor(ProductionVariable.AREA, deviates),
        nominal.resistanceOhm() * factor(ProductionVariable.RESISTANCE, deviates),
        nominal.inductanceH() * factor(ProductionVariable.INDUCTANCE, deviates),
        nominal.bareMassKg() * factor(ProductionVariable.BARE_MASS, deviates),
        nominal.stiffnessNPerM() * factor(ProductionVariable.STIFFNESS, deviates),
        nominal.lossNsPerM() * factor(ProductionVariable.LOSS, deviates),
        nominal.forceFactorTm() * factor(ProductionVariable.FLUX, deviates),
        Math.max(LEAST_TRAVEL_SHARE * nominal.travelM(), nominal.travelM() - Math.abs(offsetM)),
        nominal.powerW());
  }

  private double factor(ProductionVariable variable, double[] deviates) {
    return 1 + 0.5 * halfWidth(variable) * deviates[VARIABLES.indexOf(variable)];
  }
}

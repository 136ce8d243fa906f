package nullplane.scoring;

import java.util.Optional;
import nullplane.driver.CoilBudget;
import nullplane.driver.Woofer;
import nullplane.motor.CoilBrief;
import nullplane.motor.MassBudget;
import nullplane.motor.MotorDesign;
import nullplane.motor.Winding;
import nullplane.units.ConductorMaterial;

/**
 * How a woofer is realised: by a winding that is known, or by the least that any winding could be.
 *
 * @param budget mass of the coil against the rest
 * @param motor the motor, if the winding is known
 */
record Realisation(CoilBudget budget, Optional<MotorDesign> motor) {

  /** Returns a woofer's realisation by a winding, its flux following from Bl. */
  static Realisation of(Woofer woofer, Winding winding, CoilBrief brief) {
    return new Realisation(
        MassBudget.of(woofer.bareMassKg(), woofer.effectiveAreaM2(), winding)
            .coilBudget(winding.coil().windingHeightM()),
        Optional.of(MotorDesign.of(winding, woofer.forceFactorTm(), brief.magnet())));
  }

  /**
   * Returns the kindest realisation that a brief allows a woofer whose winding is not known: an
   * overhung coil of the lightest metal in the tallest gap, at the greatest flux density.
   */
  static Realisation kindest(Woofer woofer, CoilBrief brief) {
    return new Realisation(
        CoilBudget.of(woofer, brief.fluxT().upper(), brief.tallestGapM(), brief.lightestWire()),
        Optional.empty());
  }

  /** Returns the gap's height, that of the tallest gap if the winding is not known (m). */
  double gapHeightM(CoilBrief brief) {
    return motor.isPresent() ? motor.orElseThrow().winding().gapHeightM() : brief.tallestGapM();
  }

  /** Returns the metal of the coil, the lightest allowed if the winding is not known. */
  ConductorMaterial wire(CoilBrief brief) {
    return motor.isPresent()
        ? motor.orElseThrow().winding().coil().material()
        : brief.lightestWire();
  }

  /** Returns the distance to what can be built (1), 0 if it can. */
  double violation(CoilBrief brief) {
    double motorSide =
        motor.isPresent()
            ? motor.orElseThrow().fluxShortfall(brief.fluxT())
                + motor.orElseThrow().steelShortfall()
            : 0;
    return budget.shortfall() + motorSide;
  }

  /** Returns the cost of wire and magnet (dB). */
  double cost(GradeWeights weights) {
    double wire = weights.perGramOfWoofer() * 1e3 * budget.coilMassKg();
    return motor.isPresent()
        ? wire + weights.perJouleOfGap() * motor.orElseThrow().gapEnergyJ()
        : wire;
  }
}

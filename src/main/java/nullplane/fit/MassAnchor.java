package nullplane.fit;

import nullplane.units.Checks;

/**
 * What fixes the scale of the moving parts. An impedance alone gives fs and the quality factors; it
 * cannot tell a light cone with a weak motor from a heavy one with a strong motor.
 *
 * <p>Each stated quantity carries its standard uncertainty, which goes into every result that rests
 * on it; 0 if it is exact.
 */
public sealed interface MassAnchor {

  /** Nothing is known: no mass, force factor, compliance or volume is found. */
  record None() implements MassAnchor {}

  /**
   * A second sweep with a mass stuck to the cone, all else unchanged.
   *
   * @param sweep the second sweep
   * @param load the air of the second sweep
   * @param massKg the added mass (kg)
   * @param standardErrorKg its standard uncertainty (kg)
   */
  record AddedMass(ImpedanceSweep sweep, AirLoad load, double massKg, double standardErrorKg)
      implements MassAnchor {
    /** Checks the mass and its uncertainty. */
    public AddedMass {
      Checks.positive(massKg, "added mass", "kg");
      Checks.notNegative(standardErrorKg, "standard error of the added mass", "kg");
    }
  }

  /**
   * The moving mass without air, weighed or stated.
   *
   * @param massKg bare moving mass (kg)
   * @param standardErrorKg its standard uncertainty (kg)
   */
  record BareMass(double massKg, double standardErrorKg) implements MassAnchor {
    /** Checks the mass and its uncertainty. */
    public BareMass {
      Checks.positive(massKg, "bare moving mass", "kg");
      Checks.notNegative(standardErrorKg, "standard error of the bare moving mass", "kg");
    }
  }

  /**
   * The force factor, measured with a current and a weight or stated.
   *
   * @param forceFactorTm Bl (T m)
   * @param standardErrorTm its standard uncertainty (T m)
   */
  record ForceFactor(double forceFactorTm, double standardErrorTm) implements MassAnchor {
    /** Checks the force factor and its uncertainty. */
    public ForceFactor {
      Checks.positive(forceFactorTm, "Bl", "T m");
      Checks.notNegative(standardErrorTm, "standard error of Bl", "T m");
    }
  }
}

package nullplane.network;

import nullplane.units.Checks;
import nullplane.units.ConductorMaterial;

/** How the coils of a network are made: what resistance and copper come with an inductance. */
public sealed interface CoilMake {
  /**
   * Returns the coil of an inductance.
   *
   * @param inductanceH inductance (H), above 0
   * @throws IllegalArgumentException if no such coil can be wound
   */
  SeriesCoil coil(double inductanceH);

  /** The woofer coils' make if nothing else is said: 1.4 mm copper; common practice. */
  static Wound standard() {
    return new Wound(1.4e-3, ConductorMaterial.COPPER);
  }

  /**
   * Air-core coils of {@link BrooksCoil} shape with the common fill factor.
   *
   * @param wireDiameterM diameter of the metal (m)
   * @param material what the wire is made of
   */
  record Wound(double wireDiameterM, ConductorMaterial material) implements CoilMake {
    /** Checks the wire. */
    public Wound {
      Checks.positive(wireDiameterM, "coil wire diameter", "m");
    }

    @Override
    public SeriesCoil coil(double inductanceH) {
      BrooksCoil coil =
          BrooksCoil.forInductance(
              inductanceH, wireDiameterM, BrooksCoil.COMMON_FILL_FACTOR, material);
      return new SeriesCoil(inductanceH, coil.resistanceOhm(), coil.conductorKg());
    }
  }

  /**
   * Coils as a seller states them. Real coils of one make gain resistance and copper more slowly
   * than inductance, so a figure taken in the middle of the range is a little low for small coils
   * and high for large ones.
   *
   * @param resistanceOhmPerH resistance per inductance (ohm/H), 0 or more
   * @param copperKgPerH copper per inductance (kg/H), 0 if not stated
   */
  record Stated(double resistanceOhmPerH, double copperKgPerH) implements CoilMake {
    /** Checks the figures. */
    public Stated {
      Checks.notNegative(resistanceOhmPerH, "coil resistance per inductance", "ohm/H");
      Checks.notNegative(copperKgPerH, "coil copper per inductance", "kg/H");
    }

    @Override
    public SeriesCoil coil(double inductanceH) {
      Checks.positive(inductanceH, "coil inductance", "H");
      return new SeriesCoil(
          inductanceH, resistanceOhmPerH * inductanceH, copperKgPerH * inductanceH);
    }
  }
}

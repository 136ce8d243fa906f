package nullplane.motor;

/**
 * What a motor's magnet is made of. Energy products and densities are common practice: strontium
 * ferrite is sold from 26 to 32 kJ/m3, sintered neodymium-iron-boron from 240 to 380 kJ/m3.
 */
public enum MagnetMaterial {
  /** Strontium ferrite of a middling grade. */
  FERRITE("ferrite", 28e3, 4900, 1.0, 1.2),
  /** Sintered neodymium-iron-boron of a middling grade. */
  NEODYMIUM("neodymium", 300e3, 7500, 1.3, 1.6);

  private final String word;
  private final double energyProductJPerM3;
  private final double densityKgPerM3;
  private final double usualFluxT;
  private final double greatestFluxT;

  MagnetMaterial(
      String word,
      double energyProductJPerM3,
      double densityKgPerM3,
      double usualFluxT,
      double greatestFluxT) {
    this.word = word;
    this.energyProductJPerM3 = energyProductJPerM3;
    this.densityKgPerM3 = densityKgPerM3;
    this.usualFluxT = usualFluxT;
    this.greatestFluxT = greatestFluxT;
  }

  /** Returns the material's name in plain words. */
  public String word() {
    return word;
  }

  /** Returns the greatest energy product (BH)max (J/m3). */
  public double energyProductJPerM3() {
    return energyProductJPerM3;
  }

  /** Returns the density (kg/m3). */
  public double densityKgPerM3() {
    return densityKgPerM3;
  }

  /** Returns the flux density in the gap that a good motor reaches (T). Common practice. */
  public double usualFluxT() {
    return usualFluxT;
  }

  /** Returns the flux density in the gap that is seldom passed (T). Common practice. */
  public double greatestFluxT() {
    return greatestFluxT;
  }
}

package nullplane.units;

/**
 * What a coil's wire is made of, at 20 degrees C. Both the woofer's own coil and the coils of a
 * crossover are wound from these.
 */
public enum ConductorMaterial {
  /** Annealed copper. Source: IEC 60028 (1925), 1/58 ohm mm2/m, 8890 kg/m3, 0.00393 per K. */
  COPPER("copper", 1.7241e-8, 8890, 0.00393),
  /**
   * Hard-drawn aluminium. Source: IEC 60889 (1987), 0.028264 ohm mm2/m, 2703 kg/m3, 0.00403 per K.
   * Softer wire reaches about 2.65e-8 ohm m, so this is the cautious end of what is sold.
   */
  ALUMINIUM("aluminium", 2.8264e-8, 2703, 0.00403),
  /**
   * Aluminium with a copper skin of 15 % by volume. The resistivity is common practice without a
   * source; density and temperature coefficient follow from the two metals by volume, the
   * coefficient weighted by conductance.
   */
  COPPER_CLAD_ALUMINIUM("copper-clad aluminium", 2.65e-8, 3630, 0.00401);

  private final String word;
  private final double resistivityOhmM;
  private final double densityKgPerM3;
  private final double temperatureCoefficientPerK;

  ConductorMaterial(
      String word,
      double resistivityOhmM,
      double densityKgPerM3,
      double temperatureCoefficientPerK) {
    this.word = word;
    this.resistivityOhmM = resistivityOhmM;
    this.densityKgPerM3 = densityKgPerM3;
    this.temperatureCoefficientPerK = temperatureCoefficientPerK;
  }

  /** Returns the material's name in plain words. */
  public String word() {
    return word;
  }

  /** Returns the resistivity at 20 degrees C (ohm m). */
  public double resistivityOhmM() {
    return resistivityOhmM;
  }

  /** Returns the density (kg/m3). */
  public double densityKgPerM3() {
    return densityKgPerM3;
  }

  /** Returns the temperature coefficient of resistance, referred to 20 degrees C (1/K). */
  public double temperatureCoefficientPerK() {
    return temperatureCoefficientPerK;
  }
}

package nullplane.acoustics;

/**
 * A panel's acoustics at one frequency.
 *
 * @param frequencyHz frequency (Hz)
 * @param impedance force on piston i, both faces, per velocity of piston j (N s/m), pistons x
 *     pistons
 * @param pressure pressure per velocity of piston j at each point asked for (Pa s/m), points x
 *     pistons
 * @param farField r p e^{+jkr} per velocity of piston j in each direction asked for (Pa s),
 *     directions x pistons; phase reference the panel's centre; a floor's image included
 * @param estimatedError estimated relative error of the largest impedance entry and of the
 *     pressures (1)
 */
public record PanelSolution(
    double frequencyHz,
    ComplexMatrix impedance,
    ComplexMatrix pressure,
    ComplexMatrix farField,
    double estimatedError) {

  /**
   * Returns the largest difference to another solution of the same panel and frequency, each kind
   * of quantity as a share of its own largest entry (1).
   */
  double largestDifference(PanelSolution other) {
    return Math.max(
        impedance.largestDifference(other.impedance),
        Math.max(
            pressure.largestDifference(other.pressure),
            farField.largestDifference(other.farField)));
  }
}

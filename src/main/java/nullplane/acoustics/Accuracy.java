package nullplane.acoustics;

import nullplane.units.Checks;

/**
 * How exact a panel's solution has to be: grids are refined until the estimated errors are below.
 *
 * @param impedance error of the radiation impedance, as a share of its largest entry (1)
 * @param pressureDb error of each pressure and far field within 20 dB of the loudest (dB)
 */
public record Accuracy(double impedance, double pressureDb) {
  /** 0.3 % of impedance and 0.03 dB of pressure. */
  public static final Accuracy USUAL = new Accuracy(0.003, 0.03);

  /** Checks that both are finite and positive. */
  public Accuracy {
    Checks.positive(impedance, "accuracy of the impedance", "1");
    Checks.positive(pressureDb, "accuracy of the pressure", "dB");
  }

  /**
   * Returns an accuracy by its share of the impedance, with the pressure's in the usual proportion
   * (0.3 % to 0.03 dB).
   *
   * @param impedance error of the impedance (1)
   */
  public static Accuracy ofImpedance(double impedance) {
    return new Accuracy(impedance, impedance * USUAL.pressureDb / USUAL.impedance);
  }
}

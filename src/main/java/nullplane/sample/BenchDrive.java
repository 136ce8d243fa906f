package nullplane.sample;

import nullplane.driver.MountedWoofer;
import nullplane.driver.Mounting;
import nullplane.driver.Woofer;
import nullplane.units.Air;
import nullplane.units.Checks;
import nullplane.units.Curve;

/**
 * How strongly a woofer is driven on the bench, hung in free air and fed from a source of no
 * resistance. All from the small-signal model, {@link MountedWoofer}; at large travel a real
 * suspension stiffens, so the travel reached is at most the one computed.
 */
public final class BenchDrive {
  /** Break-in and rub-and-buzz travel as a share of the travel limit (1). Common practice. */
  public static final double STRONG_SHARE = 0.8;

  /** Travel up to which a signal counts as small, as a share of the limit (1). Common practice. */
  private static final double SMALL_SHARE = 0.1;

  /** fs over fs with the added mass (1). Common practice: 1.2 to 1.4. */
  private static final double ADDED_MASS_RATIO = 1.25;

  private static final double[] STEPS_V = {2, 1, 0.5, 0.2, 0.1, 0.05, 0.02};
  private static final Curve SWEEP = Curve.logSpaced(20, 1000, 341);

  private final Woofer woofer;
  private final MountedWoofer mounted;

  /**
   * @param woofer the woofer
   * @param air the air
   */
  public BenchDrive(Woofer woofer, Air air) {
    this.woofer = woofer;
    mounted = new MountedWoofer(woofer, Mounting.FREE_AIR, air);
  }

  /**
   * Returns the voltage of a small-signal sweep (V): of 2, 1, 0.5, 0.2, 0.1 V and so on the highest
   * at which the cone stays within a tenth of its travel from 20 Hz to 1 kHz.
   */
  public double sweepV() {
    for (double step : STEPS_V) {
      if (step <= sweptV(SMALL_SHARE)) {
        return step;
      }
    }
    return STEPS_V[STEPS_V.length - 1];
  }

  /**
   * Returns the voltage at which a sweep from 20 Hz to 1 kHz takes the cone to a share of its
   * travel where it moves most (V), root mean square.
   *
   * @param share share of the travel (1)
   */
  public double sweptV(double share) {
    double most = SWEEP.stream().map(mounted::travelPerVoltM).max().orElseThrow();
    return volts(share, most);
  }

  /**
   * Returns the voltage at which a tone takes the cone to a share of its travel (V), root mean
   * square.
   *
   * @param frequencyHz the tone (Hz)
   * @param share share of the travel (1)
   */
  public double toneV(double frequencyHz, double share) {
    return volts(share, mounted.travelPerVoltM(frequencyHz));
  }

  /**
   * Returns the heat that a voltage makes in the coil (W): U^2 Re/|Z|^2.
   *
   * @param frequencyHz frequency (Hz)
   * @param voltageV voltage, root mean square (V)
   */
  public double heatW(double frequencyHz, double voltageV) {
    double current = voltageV / mounted.impedanceModulusOhm(frequencyHz);
    return current * current * woofer.resistanceOhm();
  }

  /**
   * Returns the mass that lowers the resonance by a quarter of itself, fs/fs' = 1.25 (kg).
   *
   * <p>Source: R. H. Small, J. Audio Eng. Soc. 20(5) (1972) 383, added mass: m = Mms ((fs/fs')^2 -
   * 1).
   */
  public double addedMassKg() {
    return mounted.movingMassKg() * (ADDED_MASS_RATIO * ADDED_MASS_RATIO - 1);
  }

  private double volts(double share, double travelPerVoltM) {
    return Checks.positive(share, "share of the travel", "1")
        * woofer.travelM()
        / (Math.sqrt(2) * travelPerVoltM);
  }
}

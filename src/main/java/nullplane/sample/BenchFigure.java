package nullplane.sample;

import java.util.Optional;
import nullplane.driver.Mounting;
import nullplane.driver.Woofer;
import nullplane.fit.FittedParameter;
import nullplane.units.Air;
import nullplane.units.Levels;

/**
 * The small-signal figures of a brief that a woofer in free air shows, by the brief's keys.
 *
 * <p>Symbols: M moving mass with the air of a free disc; K, R, Bl, Re, Sd as in {@link Woofer}; U
 * the voltage the level is stated for.
 *
 * <p>Source: R. H. Small, J. Audio Eng. Soc. 20(5) (1972) 383: fs = sqrt(K/M)/(2 pi), Qms = sqrt(K
 * M)/R, Qes = sqrt(K M) Re/Bl^2, 1/Qts = 1/Qms + 1/Qes, Vas = rho c^2 Sd^2/K; level at 1 m in half
 * space above resonance from p = rho Bl Sd U/(2 pi M Re). Valid for small travel and a piston small
 * against the wavelength.
 */
public enum BenchFigure {
  /** Resonance (Hz). */
  FS("fs", FittedParameter.FS),
  /** Total Q (1). */
  QTS("qts", FittedParameter.QTS),
  /** Electrical Q (1). */
  QES("qes", FittedParameter.QES),
  /** Mechanical Q (1). */
  QMS("qms", FittedParameter.QMS),
  /** Resistance of the coil (ohm). */
  RE("re", FittedParameter.RE),
  /** Moving mass without air (kg). */
  MOVING_MASS("moving-mass", FittedParameter.BARE_MASS),
  /** Moving mass with air (kg). */
  MMS("mms", FittedParameter.MMS),
  /** Force factor (T m). */
  BL("bl", FittedParameter.BL),
  /** Inductance at 1 kHz (H). */
  LE("le", FittedParameter.LE),
  /** Stiffness (N/m). */
  KMS("kms", FittedParameter.KMS),
  /** Mechanical loss (N s/m). */
  RMS("rms", FittedParameter.RMS),
  /** Equivalent volume (m3). */
  VAS("vas", FittedParameter.VAS),
  /** Level at 1 m in half space above resonance (dB re 20 uPa). */
  LEVEL("level", FittedParameter.BL);

  private final String key;
  private final FittedParameter parameter;

  BenchFigure(String key, FittedParameter parameter) {
    this.key = key;
    this.parameter = parameter;
  }

  /** Returns the brief's key. */
  public String key() {
    return key;
  }

  /** Returns what a fit finds for it; of inductance and level, the first of several. */
  FittedParameter parameter() {
    return parameter;
  }

  /** Returns the figure of a key, if there is one. */
  public static Optional<BenchFigure> ofKey(String key) {
    for (BenchFigure figure : values()) {
      if (figure.key.equals(key)) {
        return Optional.of(figure);
      }
    }
    return Optional.empty();
  }

  /**
   * Returns the figure of a woofer (SI; dB re 20 uPa for the level).
   *
   * @param woofer the woofer
   * @param air the air
   * @param voltageV voltage of the level, root mean square (V)
   */
  public double of(Woofer woofer, Air air, double voltageV) {
    double mass = woofer.bareMassKg() + Mounting.FREE_AIR.airMassKg(woofer.radiusM(), air);
    double root = Math.sqrt(woofer.stiffnessNPerM() * mass);
    double bl = woofer.forceFactorTm();
    double qms = root / woofer.lossNsPerM();
    double qes = root * woofer.resistanceOhm() / (bl * bl);
    return switch (this) {
      case FS -> root / mass / (2 * Math.PI);
      case QTS -> qms * qes / (qms + qes);
      case QES -> qes;
      case QMS -> qms;
      case RE -> woofer.resistanceOhm();
      case MOVING_MASS -> woofer.bareMassKg();
      case MMS -> mass;
      case BL -> bl;
      case LE -> woofer.inductanceH();
      case KMS -> woofer.stiffnessNPerM();
      case RMS -> woofer.lossNsPerM();
      case VAS -> {
        double c = air.speedOfSoundMPerS();
        double area = woofer.effectiveAreaM2();
        yield air.densityKgPerM3() * c * c * area * area / woofer.stiffnessNPerM();
      }
      case LEVEL ->
          levelDb(bl / mass / woofer.resistanceOhm(), woofer.effectiveAreaM2(), air, voltageV);
    };
  }

  /**
   * Returns the level of a woofer (dB re 20 uPa).
   *
   * @param drive Bl/(M Re) (N/(A kg ohm))
   * @param areaM2 Sd (m2)
   * @param air the air
   * @param voltageV voltage, root mean square (V)
   */
  static double levelDb(double drive, double areaM2, Air air, double voltageV) {
    return Levels.soundPressureLevel(
        air.densityKgPerM3() / (2 * Math.PI) * drive * areaM2 * voltageV);
  }
}

package nullplane.io;

import java.util.OptionalDouble;

/** The keys that describe a woofer, in a spec and in a woofer's own file, with their limits. */
final class WooferKeys {
  static final QuantityKey NOMINAL =
      QuantityKey.of("nominal", Dimension.LENGTH, "10 cm .. 60 cm", "300 mm");
  static final QuantityKey EFFECTIVE_DIAMETER =
      QuantityKey.of("effective-diameter", Dimension.LENGTH, "5 cm .. 60 cm", "260 mm");
  static final QuantityKey AREA =
      QuantityKey.of("sd", Dimension.AREA, "20 cm2 .. 2800 cm2", "531 cm2");
  static final QuantityKey FS =
      QuantityKey.of("fs", Dimension.FREQUENCY, "5 Hz .. 500 Hz", "31 Hz");
  static final QuantityKey QMS = QuantityKey.of("qms", Dimension.NUMBER, "0.2 .. 50", "5.2");
  static final QuantityKey QES = QuantityKey.of("qes", Dimension.NUMBER, "0.05 .. 20", "0.85");
  static final QuantityKey QTS = QuantityKey.of("qts", Dimension.NUMBER, "0.05 .. 10", "0.73");
  static final QuantityKey BL =
      QuantityKey.of("bl", Dimension.FORCE_FACTOR, "0.5 Tm .. 60 Tm", "9.5 Tm");
  static final QuantityKey MMS = QuantityKey.of("mms", Dimension.MASS, "1 g .. 2 kg", "78 g");
  static final QuantityKey MOVING_MASS =
      QuantityKey.of("moving-mass", Dimension.MASS, "1 g .. 2 kg", "72 g");
  static final QuantityKey TRAVEL =
      QuantityKey.of("travel", Dimension.LENGTH, "0.2 mm .. 60 mm", "8 mm");
  static final QuantityKey RE =
      QuantityKey.of("re", Dimension.RESISTANCE, "0.5 ohm .. 100 ohm", "5.6 ohm");
  static final QuantityKey LE =
      QuantityKey.of("le", Dimension.INDUCTANCE, "0 mH .. 20 mH", "0.9 mH");
  static final QuantityKey LOSS =
      QuantityKey.of("rms", Dimension.MECHANICAL_RESISTANCE, "0.05 kg/s .. 50 kg/s", "2.92 kg/s");
  static final QuantityKey STIFFNESS =
      QuantityKey.of("kms", Dimension.STIFFNESS, "50 N/m .. 200000 N/m", "2960 N/m");
  static final QuantityKey COMPLIANCE =
      QuantityKey.of("cms", Dimension.COMPLIANCE, "0.005 mm/N .. 20 mm/N", "0.338 mm/N");
  static final QuantityKey VAS =
      QuantityKey.of("vas", Dimension.VOLUME, "0.1 l .. 5000 l", "135 l");
  static final QuantityKey EFFICIENCY =
      QuantityKey.of("eta0", Dimension.SHARE, "0.001 % .. 100 %", "0.46 %");
  static final QuantityKey LEVEL_ONE_WATT =
      QuantityKey.of("level-1w", Dimension.LEVEL, "50 dB .. 120 dB", "88.8 dB");
  static final QuantityKey LEVEL_VOLTAGE =
      QuantityKey.of("level-2v83", Dimension.LEVEL, "50 dB .. 120 dB", "90.4 dB");
  static final QuantityKey DISPLACEMENT =
      QuantityKey.of("vd", Dimension.VOLUME, "1 cm3 .. 50000 cm3", "425 cm3");
  static final QuantityKey COIL_HEIGHT =
      QuantityKey.of("coil-height", Dimension.LENGTH, "1 mm .. 150 mm", "24 mm");
  static final QuantityKey SECOND_INDUCTANCE =
      QuantityKey.of("l2", Dimension.INDUCTANCE, "0.001 mH .. 50 mH", "1.2 mH");
  static final QuantityKey SHUNT =
      QuantityKey.of("r2", Dimension.RESISTANCE, "0.01 ohm .. 1000 ohm", "4 ohm");
  static final QuantityKey SEMI_INDUCTANCE =
      QuantityKey.of("semi-inductance", Dimension.RESISTANCE, "0.01 ohm .. 500 ohm", "6.5 ohm");
  static final QuantityKey SEMI_EXPONENT =
      QuantityKey.of("semi-exponent", Dimension.NUMBER, "0.5 .. 1", "0.7");
  static final QuantityKey POWER = QuantityKey.of("power", Dimension.POWER, "1 W .. 5 kW", "150 W");
  static final QuantityKey FLUX =
      QuantityKey.of("flux", Dimension.FLUX_DENSITY, "0.2 T .. 2.5 T", "1.0 T");
  static final QuantityKey GAP_HEIGHT =
      QuantityKey.of("gap-height", Dimension.LENGTH, "1 mm .. 50 mm", "8 mm");
  static final QuantityKey FORMER =
      QuantityKey.of("former", Dimension.LENGTH, "13 mm .. 150 mm", "50 mm");

  /** The least share of the frame size that an effective diameter may be (1). Common practice. */
  private static final double LEAST_SHARE = 0.5;

  private WooferKeys() {}

  /**
   * Checks that a piston fits its frame, and that it is no radius written for a diameter.
   *
   * @param section the section that holds both
   * @param key the key that gave the diameter
   * @param nominalM frame size class (m)
   * @param effectiveM effective diameter (m)
   */
  static void checkPiston(
      Section section, String key, OptionalDouble nominalM, OptionalDouble effectiveM) {
    if (nominalM.isEmpty() || effectiveM.isEmpty()) {
      return;
    }
    double frame = nominalM.getAsDouble();
    double piston = effectiveM.getAsDouble();
    String allowed =
        "an effective diameter of "
            + Quantity.centimetres(LEAST_SHARE * frame)
            + " .. "
            + Quantity.centimetres(frame)
            + " for this nominal size";
    if (piston > frame) {
      section.fault(
          key,
          "the effective diameter is larger than the nominal size, by "
              + Quantity.centimetres(piston - frame),
          allowed,
          "write the diameter of the radiating piston, half the surround included");
    } else if (piston < LEAST_SHARE * frame) {
      section.fault(
          key,
          "the effective diameter is less than half the nominal size",
          allowed,
          "write the piston's diameter, not its radius");
    }
  }
}

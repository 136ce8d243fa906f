package nullplane.io;

import java.math.BigDecimal;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * What a quantity measures, and the units it may be written in.
 *
 * <p>Source: B. N. Taylor and A. Thompson, NIST Special Publication 811 (2008), appendix B.8: inch
 * = 25.4 mm, foot = 12 in, pound = 0.453 592 37 kg, ounce = 1/16 lb, all exact; litre = 1 dm3 and
 * gauss = 1e-4 T from table B.8 too. SI prefixes: BIPM, The International System of Units (2019),
 * table 7.
 */
public enum Dimension {
  /** A length; may be negative, since a position may. SI unit m. */
  LENGTH(
      "length",
      "cm",
      "m=1 metre=1 meter=1 cm=1e-2 mm=1e-3 um=1e-6 in=0.0254 inch=0.0254"
          + " inches=0.0254 ft=0.3048 foot=0.3048 feet=0.3048"),
  /** An area. SI unit m2. */
  AREA(
      "area",
      "cm2",
      "m2=1 sqm=1 dm2=1e-2 cm2=1e-4 sqcm=1e-4 mm2=1e-6 in2=6.4516e-4"
          + " sqin=6.4516e-4 ft2=0.09290304 sqft=0.09290304"),
  /** A volume. SI unit m3. */
  VOLUME(
      "volume",
      "l",
      "m3=1 dm3=1e-3 l=1e-3 L=1e-3 litre=1e-3 litres=1e-3 liter=1e-3 liters=1e-3"
          + " cm3=1e-6 ml=1e-6 mL=1e-6 ft3=0.028316846592 in3=1.6387064e-5"),
  /** A mass. SI unit kg. */
  MASS(
      "mass",
      "g",
      "kg=1 g=1e-3 gram=1e-3 grams=1e-3 mg=1e-6 oz=0.028349523125"
          + " ounce=0.028349523125 ounces=0.028349523125 lb=0.45359237 lbs=0.45359237"
          + " pound=0.45359237 pounds=0.45359237"),
  /** A frequency. SI unit Hz. */
  FREQUENCY("frequency", "Hz", "Hz=1 hz=1 HZ=1 kHz=1e3 khz=1e3 KHz=1e3 kHZ=1e3"),
  /** A resistance or the modulus of an impedance. SI unit ohm. */
  RESISTANCE(
      "resistance",
      "ohm",
      "ohm=1 ohms=1 Ohm=1 Ohms=1 OHM=1 Ω=1 mohm=1e-3 mΩ=1e-3 kohm=1e3" + " kΩ=1e3"),
  /** An inductance. SI unit H. */
  INDUCTANCE("inductance", "mH", "H=1 mH=1e-3 mh=1e-3 uH=1e-6 uh=1e-6"),
  /** A capacitance. SI unit F. */
  CAPACITANCE("capacitance", "uF", "F=1 mF=1e-3 uF=1e-6 uf=1e-6 nF=1e-9 nf=1e-9"),
  /** A coil's resistance per inductance. SI unit ohm/H. */
  RESISTANCE_PER_INDUCTANCE(
      "resistance per inductance", "ohm/mH", "ohm/mH=1e3 ohm/H=1 Ω/mH=1e3 Ω/H=1 mohm/mH=1 mΩ/mH=1"),
  /** How steeply a level falls. Unit dB per octave. */
  SLOPE("slope", "dB/oct", "dB/oct=1 dB/octave=1"),
  /** A voltage, root mean square. SI unit V. */
  VOLTAGE("voltage", "V", "V=1 v=1 volt=1 volts=1 Volt=1 mV=1e-3 kV=1e3 Vrms=1 VRMS=1"),
  /** A power. SI unit W. */
  POWER("power", "W", "W=1 w=1 watt=1 watts=1 Watt=1 mW=1e-3 kW=1e3"),
  /** A sound pressure level re 20 uPa, or a difference of levels; may be negative. Unit dB. */
  LEVEL("level", "dB", "dB=1 db=1 DB=1 dBSPL=1"),
  /** A flux density. SI unit T. */
  FLUX_DENSITY("flux density", "T", "T=1 tesla=1 Tesla=1 mT=1e-3 G=1e-4 gauss=1e-4 kG=0.1"),
  /** A stiffness. SI unit N/m. */
  STIFFNESS("stiffness", "N/m", "N/m=1 kN/m=1e3 N/mm=1e3"),
  /** A compliance. SI unit m/N. */
  COMPLIANCE("compliance", "mm/N", "m/N=1 mm/N=1e-3 um/N=1e-6"),
  /** A force factor. SI unit T m, which is N/A. */
  FORCE_FACTOR("force factor", "Tm", "Tm=1 N/A=1 Wb/m=1 Vs/m=1"),
  /** A mechanical resistance. SI unit N s/m, which is kg/s. */
  MECHANICAL_RESISTANCE("mechanical resistance", "N s/m", "Ns/m=1 kg/s=1 g/s=1e-3"),
  /** A share of a whole, such as an efficiency. SI unit 1. */
  SHARE("share", "%", "%=1e-2 percent=1e-2"),
  /** A ratio: a bare number. */
  NUMBER("number", "", "");

  private static final Map<Dimension, Map<String, BigDecimal>> FACTORS =
      new EnumMap<>(Dimension.class);

  static {
    for (Dimension dimension : values()) {
      Map<String, BigDecimal> factors = new LinkedHashMap<>();
      for (String entry : dimension.units.split(" ", -1)) {
        int equals = entry.indexOf('=');
        if (equals > 0) {
          factors.put(entry.substring(0, equals), new BigDecimal(entry.substring(equals + 1)));
        }
      }
      FACTORS.put(dimension, factors);
    }
  }

  private final String word;
  private final String usualUnit;
  private final String units;

  /** The units stand as "symbol=value in SI", with blanks between them. */
  Dimension(String word, String usualUnit, String units) {
    this.word = word;
    this.usualUnit = usualUnit;
    this.units = units;
  }

  /** Returns what is measured, for messages. */
  public String word() {
    return word;
  }

  /** Returns the unit people mostly write; empty for a bare number. */
  public String usualUnit() {
    return usualUnit;
  }

  /** Returns whether the quantity may be below zero. */
  boolean signed() {
    return this == LENGTH || this == LEVEL;
  }

  /**
   * Returns the SI value of one of the given unit, exactly.
   *
   * @param unit the unit's symbol or name as {@link #normalised} returns it
   */
  Optional<BigDecimal> factor(String unit) {
    return Optional.ofNullable(factors().get(unit));
  }

  /** Returns the known unit that differs from the given one by case alone, if there is one. */
  Optional<String> sameButForCase(String unit) {
    String lower = unit.toLowerCase(Locale.ROOT);
    return factors().keySet().stream()
        .filter(known -> known.toLowerCase(Locale.ROOT).equals(lower))
        .findFirst();
  }

  /** Returns the dimension that knows the unit, if one does. */
  static Optional<Dimension> knowing(String unit) {
    for (Dimension dimension : values()) {
      if (dimension.factors().containsKey(unit)) {
        return Optional.of(dimension);
      }
    }
    return Optional.empty();
  }

  /**
   * Returns a unit in the one spelling the tables use: no blanks and no product dots, u for micro,
   * plain digits for powers.
   */
  static String normalised(String unit) {
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < unit.length(); i++) {
      char c = unit.charAt(i);
      switch (c) {
        case '\u00b7', '\u22c5', '\u2219', '*', '^' -> {}
        case '\u00b5', '\u03bc' -> text.append('u');
        case '\u2126' -> text.append('\u03a9');
        case '\u00b2' -> text.append('2');
        case '\u00b3' -> text.append('3');
        case '"', '\u2033' -> text.append("in");
        default -> {
          if (!Character.isWhitespace(c) && !Character.isSpaceChar(c)) {
            text.append(c);
          }
        }
      }
    }
    return text.toString();
  }

  private Map<String, BigDecimal> factors() {
    return FACTORS.getOrDefault(this, Map.of());
  }
}

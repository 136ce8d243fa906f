package nullplane.driver;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * A formula that ties figures of a data sheet together; each can be solved for any of its members.
 *
 * <p>Source: R. H. Small, J. Audio Eng. Soc. 20(5) (1972) 383, for the small-signal figures; p^2 =
 * W rho c/(2 pi r^2) for the levels; {@link Mounting} for the air. Valid where the piston is small
 * against the wavelength.
 */
public enum Relation {
  /** Area of a circle. */
  CIRCLE("Sd = pi d^2/4", "AREA -1 DIAMETER 2"),
  /** Stiffness is the inverse of compliance. */
  SPRING("Kms = 1/Cms", "STIFFNESS 1 COMPLIANCE 1"),
  /** Mass with the air of the mounting. */
  AIR("Mms = Mmd + air of the mounting on Sd", "MOVING_MASS -1 BARE_MASS ? AREA ?"),
  /** Resonance. */
  RESONANCE("fs = 1/(2 pi sqrt(Mms Cms))", "RESONANCE 2 MOVING_MASS 1 COMPLIANCE 1"),
  /** Resonance by the stiffness. */
  RESONANCE_OF_SPRING("fs = sqrt(Kms/Mms)/(2 pi)", "RESONANCE -2 STIFFNESS 1 MOVING_MASS -1"),
  /** Mechanical quality factor. */
  SUSPENSION_LOSS("Qms = 2 pi fs Mms/Rms", "MECHANICAL_Q -1 RESONANCE 1 MOVING_MASS 1 LOSS -1"),
  /** Electrical quality factor. */
  MOTOR_LOSS(
      "Qes = 2 pi fs Mms Re/Bl^2",
      "ELECTRICAL_Q -1 RESONANCE 1 MOVING_MASS 1 RESISTANCE 1 FORCE_FACTOR -2"),
  /** Losses add up. */
  TOTAL_LOSS("Qts = Qms Qes/(Qms + Qes)", "TOTAL_Q -1 MECHANICAL_Q ? ELECTRICAL_Q ?"),
  /** Volume of equal compliance. */
  VOLUME("Vas = rho c^2 Sd^2 Cms", "VOLUME -1 AREA 2 COMPLIANCE 1"),
  /** Efficiency by the motor. */
  EFFICIENCY_OF_MOTOR(
      "eta0 = rho/(2 pi c) (Bl Sd/Mms)^2/Re",
      "EFFICIENCY -1 FORCE_FACTOR 2 AREA 2 MOVING_MASS -2 RESISTANCE -1"),
  /** Efficiency by the volume. */
  EFFICIENCY_OF_VOLUME(
      "eta0 = 4 pi^2/c^3 fs^3 Vas/Qes", "EFFICIENCY -1 RESONANCE 3 VOLUME 1 ELECTRICAL_Q -1"),
  /** Level of one watt. */
  LEVEL("L(1 W) = 112.2 dB + 10 lg eta0", "LEVEL_ONE_WATT -1 EFFICIENCY 1"),
  /** Level of 2.83 V. */
  LEVEL_OF_VOLTAGE(
      "L(2.83 V) = L(1 W) + 10 lg(8.009 ohm/Re)",
      "LEVEL_VOLTAGE -1 LEVEL_ONE_WATT 1 RESISTANCE -1"),
  /** Volume displaced. */
  DISPLACEMENT("Vd = Sd x", "DISPLACEMENT -1 AREA 1 TRAVEL 1"),
  /** Travel by the heights of coil and gap. */
  OVERHANG("x = (coil height - gap height)/2", "TRAVEL -1 GEOMETRIC_TRAVEL 1");

  private static final Map<Relation, List<Parameter>> MEMBERS = new EnumMap<>(Relation.class);
  private static final Map<Relation, List<OptionalDouble>> POWERS = new EnumMap<>(Relation.class);

  static {
    for (Relation relation : values()) {
      List<Parameter> members = new ArrayList<>();
      List<OptionalDouble> powers = new ArrayList<>();
      for (String word : relation.balance.split(" ", -1)) {
        if (Character.isLetter(word.charAt(0))) {
          members.add(Parameter.valueOf(word));
        } else {
          powers.add(
              word.equals("?")
                  ? OptionalDouble.empty()
                  : OptionalDouble.of(Double.parseDouble(word)));
        }
      }
      MEMBERS.put(relation, List.copyOf(members));
      POWERS.put(relation, List.copyOf(powers));
    }
  }

  private final String formula;
  private final String balance;

  /** The members stand with their powers in "product of powers is constant"; ? where it varies. */
  Relation(String formula, String balance) {
    this.formula = formula;
    this.balance = balance;
  }

  /** Returns the formula as people write it. */
  public String formula() {
    return formula;
  }

  /** Returns the figures it ties together. */
  public List<Parameter> members() {
    return MEMBERS.getOrDefault(this, List.of());
  }

  /** Returns a member's power in the balance; nothing where it depends on the values. */
  OptionalDouble power(Parameter member) {
    return POWERS.getOrDefault(this, List.of()).get(members().indexOf(member));
  }
}

package nullplane.io;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import nullplane.driver.Gap;
import nullplane.driver.Parameter;

/** The keys that state figures of a woofer, and how their absence is told. */
final class WooferFigures {
  /** The key of each figure that one key states; the travel of a coil over its gap takes two. */
  static final Map<Parameter, QuantityKey> KEYS = keys();

  /** Most ways out that a message names. */
  private static final int MOST_NAMED = 4;

  private WooferFigures() {}

  private static Map<Parameter, QuantityKey> keys() {
    EnumMap<Parameter, QuantityKey> keys = new EnumMap<>(Parameter.class);
    keys.put(Parameter.AREA, WooferKeys.AREA);
    keys.put(Parameter.DIAMETER, WooferKeys.EFFECTIVE_DIAMETER);
    keys.put(Parameter.RESISTANCE, WooferKeys.RE);
    keys.put(Parameter.RESONANCE, WooferKeys.FS);
    keys.put(Parameter.BARE_MASS, WooferKeys.MOVING_MASS);
    keys.put(Parameter.MOVING_MASS, WooferKeys.MMS);
    keys.put(Parameter.MECHANICAL_Q, WooferKeys.QMS);
    keys.put(Parameter.ELECTRICAL_Q, WooferKeys.QES);
    keys.put(Parameter.FORCE_FACTOR, WooferKeys.BL);
    keys.put(Parameter.LOSS, WooferKeys.LOSS);
    keys.put(Parameter.STIFFNESS, WooferKeys.STIFFNESS);
    keys.put(Parameter.COMPLIANCE, WooferKeys.COMPLIANCE);
    keys.put(Parameter.TOTAL_Q, WooferKeys.QTS);
    keys.put(Parameter.VOLUME, WooferKeys.VAS);
    keys.put(Parameter.EFFICIENCY, WooferKeys.EFFICIENCY);
    keys.put(Parameter.LEVEL_ONE_WATT, WooferKeys.LEVEL_ONE_WATT);
    keys.put(Parameter.LEVEL_VOLTAGE, WooferKeys.LEVEL_VOLTAGE);
    keys.put(Parameter.TRAVEL, WooferKeys.TRAVEL);
    keys.put(Parameter.DISPLACEMENT, WooferKeys.DISPLACEMENT);
    return Collections.unmodifiableMap(keys);
  }

  /** Returns the name of a figure's key; of the coil's where coil and gap state it. */
  static String name(Parameter parameter) {
    QuantityKey key = KEYS.get(parameter);
    return key == null ? WooferKeys.COIL_HEIGHT.name() : key.name();
  }

  /** Adds the fault that a sheet leaves something open. */
  static void missing(Section section, Gap gap) {
    QuantityKey key = KEYS.get(gap.cheapest());
    if (key == null) {
      throw new IllegalStateException("no key states " + gap.cheapest());
    }
    section.fault(key.name(), problem(gap.cheapest()), waysOut(gap), key.write());
  }

  private static String problem(Parameter parameter) {
    return switch (parameter) {
      case AREA, DIAMETER -> "the size of the piston is missing";
      case MOVING_MASS, BARE_MASS -> "the moving mass is missing";
      case MECHANICAL_Q -> "the mechanical losses are missing";
      case ELECTRICAL_Q -> "the electrical losses are missing";
      default -> "the " + parameter.words() + " is missing";
    };
  }

  private static String waysOut(Gap gap) {
    List<Parameter> ways = new ArrayList<>();
    ways.add(gap.cheapest());
    ways.addAll(gap.instead());
    boolean piston = ways.remove(Parameter.DIAMETER) && ways.remove(Parameter.AREA);
    List<String> words = new ArrayList<>();
    if (piston) {
      words.add("effective-diameter or sd");
    }
    ways.stream().limit(MOST_NAMED).map(WooferFigures::way).forEach(words::add);
    return String.join(", or ", words);
  }

  private static String way(Parameter parameter) {
    return switch (parameter) {
      case MOVING_MASS -> "mms (with air)";
      case BARE_MASS -> "moving-mass (without air)";
      default -> name(parameter);
    };
  }
}

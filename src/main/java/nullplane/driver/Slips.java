package nullplane.driver;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Function;
import nullplane.units.Air;
import nullplane.units.FiniteText;

/**
 * Finds the slip that turns what a sheet should state into what it states.
 *
 * <p>Source: common practice; the slips are those that printed sheets are known for. Each is a
 * formula, so that it either gives the stated value or does not.
 */
final class Slips {
  private static final double HALF_SPACE_DB = 10 * Math.log10(2);
  private static final double CUBIC_FOOT_LITRES = 28.316846592;

  /** How far a slipped value may lie from its formula beyond rounding, as a logarithm (1). */
  private static final double SPREAD = 0.02;

  /** The same for levels: 0.3 dB. */
  private static final double SPREAD_OF_LEVELS = 0.07;

  /** How far apart two prints of one number may lie (1): a last digit. */
  private static final double SAME_NUMBER = 0.005;

  private static final double LARGEST_SOURCE_SHARE = 0.5;
  private static final List<Double> RATED_OHM = List.of(2.0, 3.0, 4.0, 6.0, 8.0, 12.0, 16.0);

  private final StatedSet set;
  private final Air air;
  private final Function<Parameter, OptionalDouble> rest;
  private final Parameter parameter;
  private final double stated;
  private final double found;
  private final double nearness;
  private final List<Fit> fits = new ArrayList<>();

  private record Fit(Likely likely, double miss) {}

  /**
   * A cause, and how much speaks for it.
   *
   * @param cause the cause
   * @param weight 2 where a definite slip gives the stated value, 1 where a free number was needed
   *     or the slip is a mere factor, 0 where none is known
   */
  record Likely(Cause cause, int weight) {}

  private Slips(
      StatedSet set,
      Air air,
      Function<Parameter, OptionalDouble> rest,
      Parameter parameter,
      double found,
      double rounding) {
    this.set = set;
    this.air = air;
    this.rest = rest;
    this.parameter = parameter;
    this.stated = set.value(parameter).orElseThrow();
    this.found = found;
    this.nearness = rounding + (parameter.level() ? SPREAD_OF_LEVELS : SPREAD);
  }

  /**
   * Returns the likeliest cause of a contradiction.
   *
   * @param set the sheet
   * @param air the air
   * @param rest what the rest of the sheet gives
   * @param parameter the figure that is contradicted
   * @param found what the rest gives for it (SI; dB for levels)
   * @param rounding what the rounding of all that takes part can add up to, as a logarithm (1)
   */
  static Likely of(
      StatedSet set,
      Air air,
      Function<Parameter, OptionalDouble> rest,
      Parameter parameter,
      double found,
      double rounding) {
    Slips slips = new Slips(set, air, rest, parameter, found, rounding);
    slips.collect();
    return slips.best();
  }

  private void collect() {
    switch (parameter) {
      case AREA, DIAMETER -> piston();
      case RESISTANCE -> rated();
      case RESONANCE -> resonance();
      case BARE_MASS, MOVING_MASS -> mass();
      case MECHANICAL_Q, ELECTRICAL_Q, TOTAL_Q -> quality();
      case VOLUME -> volume();
      case EFFICIENCY ->
          fit(
              found / 2,
              Cause.Kind.OTHER_SPACE,
              "this is the efficiency into full space; into half space it is twice that");
      case LEVEL_ONE_WATT, LEVEL_VOLTAGE -> levels();
      case TRAVEL, DISPLACEMENT, GEOMETRIC_TRAVEL -> travel();
      default -> {}
    }
    for (int power : new int[] {-3, -2, -1, 1, 2, 3}) {
      if (!parameter.level()) {
        fit(
            found * Math.pow(10, power),
            Cause.Kind.DECIMAL_POINT,
            "a decimal point or a prefix of the unit is misplaced: factor "
                + (power > 0 ? "" : "1/")
                + Math.round(Math.pow(10, Math.abs(power))),
            1);
      }
    }
  }

  private Likely best() {
    Likely best =
        new Likely(
            new Cause(
                Cause.Kind.UNKNOWN,
                "no known slip gives this value; a misprint, or figures of different units"),
            0);
    double least = Double.POSITIVE_INFINITY;
    for (Fit fit : fits) {
      int weight = fit.likely().weight();
      if (weight > best.weight() || (weight == best.weight() && fit.miss() < least)) {
        best = fit.likely();
        least = fit.miss();
      }
    }
    return best;
  }

  private void fit(double slipped, Cause.Kind kind, String sentence) {
    fit(slipped, kind, sentence, 2);
  }

  private void fit(double slipped, Cause.Kind kind, String sentence, int weight) {
    double miss = Math.abs(parameter.toLog(stated) - parameter.toLog(slipped));
    double slip = Math.abs(parameter.toLog(found) - parameter.toLog(slipped));
    // clearly nearer to the slip than to the truth
    if (miss <= Math.min(nearness, 0.4 * slip)) {
      fits.add(new Fit(new Likely(new Cause(kind, sentence), weight), miss));
    }
  }

  private void piston() {
    boolean area = parameter == Parameter.AREA;
    set.nominalM()
        .ifPresent(
            size ->
                fit(
                    area ? Math.PI / 4 * size * size : size,
                    Cause.Kind.OTHER_AREA,
                    "this is the frame's size, not the radiating piston's"));
    fit(area ? 4 * found : 2 * found, Cause.Kind.RADIUS, "a diameter was taken for a radius");
    fit(area ? found / 4 : found / 2, Cause.Kind.RADIUS, "a radius was taken for a diameter");
  }

  private void rated() {
    if (RATED_OHM.contains(stated) && stated > found && stated < 2 * found) {
      fit(
          stated,
          Cause.Kind.RATED_IMPEDANCE,
          "this looks like the rated impedance, not the coil's direct-current resistance");
    }
  }

  private Mounting other() {
    return set.mounting() == Mounting.FREE_AIR ? Mounting.INFINITE_BAFFLE : Mounting.FREE_AIR;
  }

  private static String words(Mounting mounting) {
    return mounting == Mounting.FREE_AIR ? "free air" : "an infinite baffle";
  }

  /** Returns the moving mass with the air of the other mounting (kg). */
  private OptionalDouble massElsewhere() {
    OptionalDouble bare = rest.apply(Parameter.BARE_MASS);
    OptionalDouble area = rest.apply(Parameter.AREA);
    if (bare.isEmpty() || area.isEmpty()) {
      return OptionalDouble.empty();
    }
    double radius = Math.sqrt(area.getAsDouble() / Math.PI);
    return OptionalDouble.of(bare.getAsDouble() + other().airMassKg(radius, air));
  }

  private void resonance() {
    OptionalDouble here = rest.apply(Parameter.MOVING_MASS);
    OptionalDouble there = massElsewhere();
    if (here.isPresent() && there.isPresent()) {
      fit(
          found * Math.sqrt(here.getAsDouble() / there.getAsDouble()),
          Cause.Kind.OTHER_MOUNTING,
          "this is the resonance in "
              + words(other())
              + ", the rest holds for "
              + words(set.mounting()));
    }
  }

  private void mass() {
    OptionalDouble bare = rest.apply(Parameter.BARE_MASS);
    OptionalDouble total = rest.apply(Parameter.MOVING_MASS);
    if (parameter == Parameter.BARE_MASS) {
      total.ifPresent(
          kg -> fit(kg, Cause.Kind.WITH_AIR, "this is the mass with air, not the bare one"));
      return;
    }
    bare.ifPresent(kg -> fit(kg, Cause.Kind.WITHOUT_AIR, "this is the bare mass, without air"));
    massElsewhere()
        .ifPresent(
            kg ->
                fit(
                    kg,
                    Cause.Kind.OTHER_MOUNTING,
                    "this is the mass with the air of "
                        + words(other())
                        + ", the rest holds for "
                        + words(set.mounting())));
  }

  private void quality() {
    for (Parameter q : List.of(Parameter.MECHANICAL_Q, Parameter.ELECTRICAL_Q, Parameter.TOTAL_Q)) {
      OptionalDouble printed = q == parameter ? OptionalDouble.empty() : set.value(q);
      if (printed.isPresent() && Math.abs(stated / printed.getAsDouble() - 1) <= SAME_NUMBER) {
        fit(
            stated,
            Cause.Kind.OTHER_Q,
            "this is " + q.symbol() + ", printed as " + parameter.symbol() + " too");
      }
    }
    if (parameter != Parameter.MECHANICAL_Q && stated > found) {
      seriesResistance();
    }
  }

  /** Source: Small 1972: a resistance in series raises Qes by (Re + R)/Re. */
  private void seriesResistance() {
    OptionalDouble mechanical = rest.apply(Parameter.MECHANICAL_Q);
    OptionalDouble electrical = rest.apply(Parameter.ELECTRICAL_Q);
    OptionalDouble resistance = rest.apply(Parameter.RESISTANCE);
    if (electrical.isEmpty() || resistance.isEmpty()) {
      return;
    }
    double raised = stated;
    if (parameter == Parameter.TOTAL_Q) {
      if (mechanical.isEmpty() || stated >= mechanical.getAsDouble()) {
        return;
      }
      raised = 1 / (1 / stated - 1 / mechanical.getAsDouble());
    }
    double share = raised / electrical.getAsDouble() - 1;
    if (share > 0 && share <= LARGEST_SOURCE_SHARE) {
      fit(
          stated,
          Cause.Kind.SERIES_RESISTANCE,
          FiniteText.of(
              "a resistance of %.2g ohm in series with the coil would give it",
              share * resistance.getAsDouble()),
          1);
    }
  }

  private void volume() {
    fit(
        found / CUBIC_FOOT_LITRES,
        Cause.Kind.OTHER_UNIT,
        "the volume is in cubic feet, printed as litres");
    OptionalDouble area = rest.apply(Parameter.AREA);
    if (area.isEmpty()) {
      return;
    }
    double diameter = 2 * Math.sqrt(area.getAsDouble() / Math.PI);
    set.nominalM()
        .ifPresent(
            size ->
                fit(
                    found * Math.pow(size / diameter, 4),
                    Cause.Kind.OTHER_AREA,
                    "this volume belongs to a piston of the frame's size"));
    double implied = diameter * Math.pow(stated / found, 0.25);
    double largest = set.nominalM().orElse(1.25 * diameter);
    if (implied <= largest && implied >= 0.8 * diameter) {
      fit(
          stated,
          Cause.Kind.OTHER_AREA,
          FiniteText.of(
              "this volume belongs to a piston of %.0f mm, the sheet's is %.0f mm",
              implied * 1e3, diameter * 1e3),
          1);
    }
  }

  private void levels() {
    boolean watt = parameter == Parameter.LEVEL_ONE_WATT;
    Parameter partner = watt ? Parameter.LEVEL_VOLTAGE : Parameter.LEVEL_ONE_WATT;
    String mine = watt ? "1 W" : "2.83 V";
    String others = watt ? "2.83 V" : "1 W";
    OptionalDouble partnerLevel = rest.apply(partner);
    if (partnerLevel.isPresent()) {
      double ownLess = found - partnerLevel.getAsDouble();
      fit(
          found - ownLess,
          Cause.Kind.LEVELS_MIXED,
          "this is the level at " + others + ", printed as the level at " + mine);
      if (set.value(partner).isPresent()) {
        fit(
            found - 2 * ownLess,
            Cause.Kind.LEVELS_MIXED,
            "the levels at 1 W and at 2.83 V are exchanged");
      }
    }
    fit(
        found - HALF_SPACE_DB,
        Cause.Kind.OTHER_SPACE,
        "this is the level in full space, 3.0 dB below that in half space");
    fit(
        found + HALF_SPACE_DB,
        Cause.Kind.OTHER_SPACE,
        "this is a level for a quarter of space, 3.0 dB above that in half space");
    fit(
        found + 2 * HALF_SPACE_DB,
        Cause.Kind.OTHER_SPACE,
        "this is a level at 0.5 m, 6.0 dB above that at 1 m");
  }

  private void travel() {
    switch (parameter) {
      case TRAVEL ->
          fit(
              2 * found,
              Cause.Kind.PEAK_TO_PEAK,
              "this is the travel from peak to peak, printed as one way");
      case DISPLACEMENT ->
          fit(
              2 * found,
              Cause.Kind.PEAK_TO_PEAK,
              "this is the volume from peak to peak, printed as one way");
      default -> {}
    }
  }
}

package nullplane.network;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import nullplane.units.Curve;

/**
 * Currents, voltages and powers in a {@link LowPassBranch} on a stack, per volt at the amplifier.
 * For sheets and ratings; the search uses {@link NetworkRows}. Immutable.
 *
 * <p>Source: Kirchhoff's laws. Real power of a sine: |I|^2 R with root-mean-square values.
 */
public final class CircuitState {
  private final LowPassBranch branch;
  private final Curve frequencyHz;
  private final ComplexCurve transfer;
  private final ComplexCurve inputImpedance;
  private final ComplexCurve stackCurrent;
  private final Map<PartPlace, ComplexCurve> currents = new EnumMap<>(PartPlace.class);

  private CircuitState(
      LowPassBranch branch,
      Curve frequencyHz,
      ComplexCurve transfer,
      ComplexCurve inputImpedance,
      ComplexCurve stackCurrent) {
    this.branch = branch;
    this.frequencyHz = frequencyHz;
    this.transfer = transfer;
    this.inputImpedance = inputImpedance;
    this.stackCurrent = stackCurrent;
  }

  /**
   * Solves the circuit.
   *
   * @param branch the branch
   * @param frequencyHz frequencies (Hz), each above 0
   * @param stackImpedance the stack's impedance (ohm), not zero anywhere
   * @throws IllegalArgumentException if lengths differ
   */
  public static CircuitState of(
      LowPassBranch branch, Curve frequencyHz, ComplexCurve stackImpedance) {
    if (frequencyHz.size() != stackImpedance.size()) {
      throw new IllegalArgumentException(
          "frequencies number "
              + frequencyHz.size()
              + ", impedances "
              + stackImpedance.size()
              + "; allowed: equal");
    }
    int points = frequencyHz.size();
    LoadRows stack = new LoadRows(points);
    stack.setImpedance(stackImpedance.re().toArray(), stackImpedance.im().toArray());
    LoadRows scratch = new LoadRows(points);
    BranchRows rows = branch.rows(frequencyHz);
    double[] re = new double[points];
    double[] im = new double[points];
    rows.inputImpedance(stack, scratch, re, im);
    ComplexCurve input = ComplexCurve.of(re, im);
    rows.transfer(stack, scratch, re, im);
    ComplexCurve transfer = ComplexCurve.of(re, im);
    CircuitState state =
        new CircuitState(
            branch, frequencyHz, transfer, input, through(transfer, stack.re, stack.im));
    LoadRows inputAdmittance = new LoadRows(points);
    inputAdmittance.setImpedance(input.re().toArray(), input.im().toArray());
    ComplexCurve series = ComplexCurve.of(inputAdmittance.re, inputAdmittance.im);
    for (PlacedPart part : branch.parts()) {
      state.currents.put(part.place(), state.currentIn(part.place(), series));
    }
    return state;
  }

  /**
   * Solves the circuit when what is known is the impedance that the amplifier feels: the stack is
   * what is left of it without the branch. Zs = 1/(1/(Zin - Z) - Y), Z in series, Y across.
   *
   * @param branch the branch
   * @param frequencyHz frequencies (Hz), each above 0
   * @param inputImpedance the impedance of branch and stack together (ohm)
   * @throws IllegalArgumentException if lengths differ
   */
  public static CircuitState ofInput(
      LowPassBranch branch, Curve frequencyHz, ComplexCurve inputImpedance) {
    double seriesOhm = branch.seriesResistanceOhm();
    double seriesH = branch.seriesCoil().inductanceH();
    int points = frequencyHz.size();
    double[] re = new double[points];
    double[] im = new double[points];
    ShuntRows across = branch.shuntRows(frequencyHz).orElseGet(() -> ShuntRows.none(frequencyHz));
    for (int f = 0; f < points; f++) {
      double zRe = inputImpedance.re().at(f) - seriesOhm;
      double zIm = inputImpedance.im().at(f) - 2 * Math.PI * frequencyHz.at(f) * seriesH;
      double square = zRe * zRe + zIm * zIm;
      double g = zRe / square - across.re[f];
      double b = -zIm / square - across.im[f];
      double admittance = g * g + b * b;
      re[f] = g / admittance;
      im[f] = -b / admittance;
    }
    return of(branch, frequencyHz, ComplexCurve.of(re, im));
  }

  private ComplexCurve currentIn(PartPlace place, ComplexCurve series) {
    return switch (place) {
      case SERIES_RESISTOR, SERIES_COIL -> series;
      case SHUNT_CAPACITOR, DAMPING_RESISTOR ->
          across(ShuntRows.of(branch.shunt().orElseThrow(), frequencyHz));
      case RESONANCE_RESISTOR, RESONANCE_COIL, RESONANCE_CAPACITOR ->
          across(ShuntRows.of(branch.resonance().orElseThrow(), frequencyHz));
      case ZOBEL_RESISTOR, ZOBEL_CAPACITOR ->
          across(ShuntRows.of(branch.zobel().orElseThrow(), frequencyHz));
    };
  }

  private ComplexCurve across(ShuntRows rows) {
    return through(transfer, rows.re, rows.im);
  }

  /** Returns the current that a voltage drives through an admittance. */
  private static ComplexCurve through(ComplexCurve voltage, double[] g, double[] b) {
    double[] re = new double[g.length];
    double[] im = new double[g.length];
    for (int f = 0; f < g.length; f++) {
      re[f] = voltage.re().at(f) * g[f] - voltage.im().at(f) * b[f];
      im[f] = voltage.re().at(f) * b[f] + voltage.im().at(f) * g[f];
    }
    return ComplexCurve.of(re, im);
  }

  /** Returns stack voltage over amplifier voltage (1). */
  public ComplexCurve transfer() {
    return transfer;
  }

  /** Returns the impedance that the amplifier feels (ohm). */
  public ComplexCurve inputImpedance() {
    return inputImpedance;
  }

  /** Returns the stack's current over amplifier voltage (A/V). */
  public ComplexCurve stackCurrent() {
    return stackCurrent;
  }

  /**
   * Returns the current in a part over amplifier voltage (A/V), counted towards the stack's far
   * terminal.
   *
   * @throws IllegalArgumentException if the branch has no such part
   */
  public ComplexCurve current(PartPlace place) {
    ComplexCurve current = currents.get(place);
    if (current == null) {
      throw new IllegalArgumentException("the branch has no " + place.label());
    }
    return current;
  }

  /**
   * Returns the voltage across a part over amplifier voltage (1).
   *
   * @throws IllegalArgumentException if the branch has no such part
   */
  public ComplexCurve voltage(PartPlace place) {
    ComplexCurve current = current(place);
    Part part = part(place);
    double[] re = new double[frequencyHz.size()];
    double[] im = new double[frequencyHz.size()];
    for (int f = 0; f < re.length; f++) {
      double r = resistanceOf(part);
      double x = reactanceOf(part, 2 * Math.PI * frequencyHz.at(f));
      re[f] = current.re().at(f) * r - current.im().at(f) * x;
      im[f] = current.re().at(f) * x + current.im().at(f) * r;
    }
    return ComplexCurve.of(re, im);
  }

  /**
   * Returns the heat in a part over squared amplifier voltage (W/V^2); 0 for a capacitor.
   *
   * @throws IllegalArgumentException if the branch has no such part
   */
  public Curve power(PartPlace place) {
    ComplexCurve current = current(place);
    double r = resistanceOf(part(place));
    double[] power = new double[frequencyHz.size()];
    for (int f = 0; f < power.length; f++) {
      power[f] = r * current.modulus(f) * current.modulus(f);
    }
    return Curve.of(power);
  }

  /** Returns the power that the amplifier gives over its squared voltage (W/V^2). */
  public Curve inputPower() {
    double[] power = new double[frequencyHz.size()];
    for (int f = 0; f < power.length; f++) {
      double modulus = inputImpedance.modulus(f);
      power[f] = inputImpedance.re().at(f) / (modulus * modulus);
    }
    return Curve.of(power);
  }

  /**
   * Returns what each part must stand, from the amplifier to the stack.
   *
   * @param driveV greatest root-mean-square voltage that the amplifier gives at each frequency (V):
   *     its limit everywhere, or less where the woofers' travel holds it back
   * @throws IllegalArgumentException if lengths differ
   */
  public List<RatedPart> ratings(Curve driveV) {
    if (driveV.size() != frequencyHz.size()) {
      throw new IllegalArgumentException(
          "frequencies number "
              + frequencyHz.size()
              + ", voltages "
              + driveV.size()
              + "; allowed: equal");
    }
    return branch.parts().stream().map(part -> new RatedPart(part, rating(part, driveV))).toList();
  }

  private PartRating rating(PlacedPart placed, Curve driveV) {
    ComplexCurve current = current(placed.place());
    ComplexCurve voltage = voltage(placed.place());
    PartKind kind = placed.part().kind();
    PartRating most = new PartRating(0, 0, 0, frequencyHz.at(0));
    for (int f = 0; f < frequencyHz.size(); f++) {
      double amperes = current.modulus(f) * driveV.at(f);
      most =
          most.orMore(
              new PartRating(
                  Math.sqrt(2) * voltage.modulus(f) * driveV.at(f),
                  amperes,
                  amperes * amperes * resistanceOf(placed.part()),
                  frequencyHz.at(f)),
              kind);
    }
    return most;
  }

  private Part part(PartPlace place) {
    return branch.parts().stream()
        .filter(placed -> placed.place() == place)
        .findFirst()
        .orElseThrow()
        .part();
  }

  private static double resistanceOf(Part part) {
    if (part instanceof Resistor resistor) {
      return resistor.resistanceOhm();
    }
    return part instanceof SeriesCoil coil ? coil.resistanceOhm() : 0;
  }

  private static double reactanceOf(Part part, double omega) {
    if (part instanceof SeriesCoil coil) {
      return omega * coil.inductanceH();
    }
    return part instanceof Capacitor capacitor ? -1 / (omega * capacitor.capacitanceF()) : 0;
  }
}

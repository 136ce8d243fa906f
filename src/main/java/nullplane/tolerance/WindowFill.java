package nullplane.tolerance;

import java.util.List;
import java.util.stream.Stream;
import nullplane.driver.Mounting;
import nullplane.driver.SmallSignal;
import nullplane.driver.Woofer;
import nullplane.units.Air;

/**
 * Makes units from what is inspected: fs, Qts, bare mass, Re and Le, and from what is not: the
 * effective area and the share of the mechanical loss in the damping.
 *
 * <p>The loss share h = Qts/Qms keeps its odds h/(1 - h) = Qes/Qms = Rms Re/Bl^2 within the
 * production spread of the loss; with the odds o, Qms = Qts (1 + o)/o. The rest follows from {@link
 * Woofer#withResonance}.
 *
 * <p>Source: derived from R. H. Small, J. Audio Eng. Soc. 20(5) (1972) 383. Immutable.
 */
final class WindowFill {
  /** What is inspected, in the order of deviations. */
  static final List<MeasuredQuantity> INSPECTED =
      Stream.of(MeasuredQuantity.values()).filter(MeasuredQuantity::inspected).toList();

  /** Even deviates that a unit takes: what is inspected, the loss and the area. */
  static final int DEVIATES = INSPECTED.size() + 2;

  private static final int RESONANCE = INSPECTED.indexOf(MeasuredQuantity.RESONANCE);
  private static final int TOTAL_Q = INSPECTED.indexOf(MeasuredQuantity.TOTAL_Q);
  private static final int BARE_MASS = INSPECTED.indexOf(MeasuredQuantity.BARE_MASS);
  private static final int RESISTANCE = INSPECTED.indexOf(MeasuredQuantity.RESISTANCE);
  private static final int INDUCTANCE = INSPECTED.indexOf(MeasuredQuantity.INDUCTANCE);
  private static final int LOSS = INSPECTED.size();
  private static final int AREA = LOSS + 1;

  private final Woofer nominal;
  private final ProductionSpread spread;
  private final Air air;
  private final double[] values;
  private final double lossOdds;

  /**
   * @param nominal the woofer as designed
   * @param spread the production spread, of what is not inspected
   * @param air the air
   */
  WindowFill(Woofer nominal, ProductionSpread spread, Air air) {
    this.nominal = nominal;
    this.spread = spread;
    this.air = air;
    SmallSignal freeAir = SmallSignal.of(nominal, Mounting.FREE_AIR, air);
    values = INSPECTED.stream().mapToDouble(q -> q.of(nominal, air)).toArray();
    lossOdds = freeAir.electricalQ() / freeAir.mechanicalQ();
  }

  /** Returns the nominal value of what is inspected (in the quantity's unit). */
  double value(int q) {
    return values[q];
  }

  /**
   * Returns a unit.
   *
   * @param deviations of what is inspected, by {@link #INSPECTED} (shares)
   * @param lossDeviate from -1 to 1, where in the spread of the loss the unit lies
   * @param areaDeviate the same for the effective area
   */
  Woofer unit(double[] deviations, double lossDeviate, double areaDeviate) {
    double totalQ = at(TOTAL_Q, deviations);
    double odds = lossOdds * (1 + spread.loss() * lossDeviate);
    Woofer shell =
        new Woofer(
            nominal.name(),
            nominal.nominalM(),
            nominal.effectiveAreaM2() * (1 + spread.area() * areaDeviate),
            at(RESISTANCE, deviations),
            at(INDUCTANCE, deviations),
            at(BARE_MASS, deviations),
            1,
            1,
            1,
            nominal.travelM(),
            nominal.powerW());
    return Woofer.withResonance(
        shell,
        at(RESONANCE, deviations),
        totalQ * (1 + odds) / odds,
        totalQ,
        Mounting.FREE_AIR,
        air);
  }

  private double at(int q, double[] deviations) {
    return INSPECTED.get(q).at(values[q], deviations[q]);
  }

  /**
   * Returns a unit drawn evenly from windows.
   *
   * @param halfWidths half of each window, by {@link #INSPECTED} (shares)
   * @param chance chance with {@link #DEVIATES} deviates per unit
   * @param unit the unit's number
   */
  Woofer drawn(double[] halfWidths, UnitChance chance, long unit) {
    double[] deviations = new double[halfWidths.length];
    for (int q = 0; q < halfWidths.length; q++) {
      deviations[q] = halfWidths[q] * even(chance, unit, q);
    }
    return unit(deviations, even(chance, unit, LOSS), even(chance, unit, AREA));
  }

  /** An even deviate from -1 to 1. */
  private static double even(UnitChance chance, long unit, int quantity) {
    return 2 * chance.even(unit, quantity) - 1;
  }
}

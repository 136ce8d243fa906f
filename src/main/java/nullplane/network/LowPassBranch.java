package nullplane.network;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import nullplane.units.Checks;
import nullplane.units.Curve;

/**
 * Passive low-pass branch in front of a stack: a resistor and a coil in series, then, across the
 * stack, a capacitor with damping, a conjugate of the resonance and a conjugate of the inductance.
 * Every part but the coil's own resistance is optional.
 *
 * <p>Parts are linear and their values constant: air-core coils, film or sound electrolytic
 * capacitors. What stands across the stack does nothing to its voltage unless something is in
 * series, so it is allowed only then.
 *
 * @param seriesResistor resistor in series
 * @param seriesCoil coil in series; {@link SeriesCoil#NONE} for none
 * @param shunt capacitor across the stack, with damping
 * @param resonance conjugate of the resonance
 * @param zobel conjugate of the inductance
 */
public record LowPassBranch(
    Optional<Resistor> seriesResistor,
    SeriesCoil seriesCoil,
    Optional<ShuntCapacitor> shunt,
    Optional<MotionalConjugate> resonance,
    Optional<ZobelNetwork> zobel)
    implements StackNetwork {
  /** Nothing between amplifier and stack: always a candidate. */
  public static final LowPassBranch NONE = ofCoil(SeriesCoil.NONE);

  /** Checks that parts across the stack have something in series before them. */
  public LowPassBranch {
    if (!seriesCoil.present() && (seriesCoil.resistanceOhm() > 0 || seriesCoil.copperKg() > 0)) {
      throw new IllegalArgumentException(
          "series coil has "
              + seriesCoil.resistanceOhm()
              + " ohm but no inductance; allowed: a coil, or none with 0 ohm and 0 kg");
    }
    if (!seriesCoil.present()
        && seriesResistor.isEmpty()
        && (shunt.isPresent() || resonance.isPresent() || zobel.isPresent())) {
      throw new IllegalArgumentException(
          "parts across the stack without a part in series do nothing; allowed: with a series"
              + " coil or resistor");
    }
  }

  /** Returns the branch of a series coil alone, first order. */
  public static LowPassBranch ofCoil(SeriesCoil coil) {
    return new LowPassBranch(
        Optional.empty(), coil, Optional.empty(), Optional.empty(), Optional.empty());
  }

  /** Returns the branch of a series coil and a capacitor across the stack, second order. */
  public static LowPassBranch of(SeriesCoil coil, ShuntCapacitor shunt) {
    return new LowPassBranch(
        Optional.empty(), coil, Optional.of(shunt), Optional.empty(), Optional.empty());
  }

  /** Returns this branch with a series resistor. */
  public LowPassBranch withSeriesResistor(double resistanceOhm) {
    return new LowPassBranch(
        Optional.of(new Resistor(resistanceOhm)), seriesCoil, shunt, resonance, zobel);
  }

  /** Returns this branch with a conjugate of the resonance. */
  public LowPassBranch withResonance(MotionalConjugate conjugate) {
    return new LowPassBranch(seriesResistor, seriesCoil, shunt, Optional.of(conjugate), zobel);
  }

  /** Returns this branch with a conjugate of the inductance. */
  public LowPassBranch withZobel(ZobelNetwork network) {
    return new LowPassBranch(seriesResistor, seriesCoil, shunt, resonance, Optional.of(network));
  }

  /** Returns the order of the low-pass on a resistive load: 0, 1 or 2. */
  public int order() {
    return seriesCoil.present() ? (shunt.isPresent() ? 2 : 1) : (shunt.isPresent() ? 1 : 0);
  }

  @Override
  public double seriesResistanceOhm() {
    return seriesCoil.resistanceOhm() + seriesResistor.map(Resistor::resistanceOhm).orElse(0.0);
  }

  @Override
  public boolean none() {
    return parts().isEmpty();
  }

  @Override
  public List<PlacedPart> parts() {
    List<PlacedPart> parts = new ArrayList<>();
    seriesResistor.ifPresent(r -> parts.add(new PlacedPart(PartPlace.SERIES_RESISTOR, r)));
    if (seriesCoil.present()) {
      parts.add(new PlacedPart(PartPlace.SERIES_COIL, seriesCoil));
    }
    shunt.ifPresent(
        s -> {
          parts.add(new PlacedPart(PartPlace.SHUNT_CAPACITOR, s.capacitor()));
          s.damping().ifPresent(r -> parts.add(new PlacedPart(PartPlace.DAMPING_RESISTOR, r)));
        });
    resonance.ifPresent(
        c -> {
          c.resistor().ifPresent(r -> parts.add(new PlacedPart(PartPlace.RESONANCE_RESISTOR, r)));
          parts.add(new PlacedPart(PartPlace.RESONANCE_COIL, c.coil()));
          parts.add(new PlacedPart(PartPlace.RESONANCE_CAPACITOR, c.capacitor()));
        });
    zobel.ifPresent(
        z -> {
          parts.add(new PlacedPart(PartPlace.ZOBEL_RESISTOR, z.resistor()));
          parts.add(new PlacedPart(PartPlace.ZOBEL_CAPACITOR, z.capacitor()));
        });
    return List.copyOf(parts);
  }

  @Override
  public int partCount() {
    return parts().size();
  }

  @Override
  public double copperKg() {
    return seriesCoil.copperKg() + resonance.map(c -> c.coil().copperKg()).orElse(0.0);
  }

  @Override
  public double capacitanceF() {
    return shunt.map(s -> s.capacitor().capacitanceF()).orElse(0.0)
        + resonance.map(c -> c.capacitor().capacitanceF()).orElse(0.0)
        + zobel.map(z -> z.capacitor().capacitanceF()).orElse(0.0);
  }

  @Override
  public BranchRows rows(Curve frequencyHz) {
    frequencyHz.stream().forEach(f -> Checks.positive(f, "frequency", "Hz"));
    return new BranchRows(this, frequencyHz);
  }

  /** Returns the parts across the stack for a frequency axis; empty if there are none. */
  Optional<ShuntRows> shuntRows(Curve frequencyHz) {
    if (shunt.isEmpty() && resonance.isEmpty() && zobel.isEmpty()) {
      return Optional.empty();
    }
    ShuntRows rows = ShuntRows.none(frequencyHz);
    rows = shunt.map(s -> ShuntRows.of(s, frequencyHz)).map(rows::plus).orElse(rows);
    rows = resonance.map(c -> ShuntRows.of(c, frequencyHz)).map(rows::plus).orElse(rows);
    return Optional.of(zobel.map(z -> ShuntRows.of(z, frequencyHz)).map(rows::plus).orElse(rows));
  }
}

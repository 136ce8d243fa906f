package nullplane.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.data.Offset.offset;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import nullplane.units.Curve;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Branches of every kind on drawn stacks: nodal analysis, energy, ratings. */
class CircuitProperties {
  private static final Curve BAND = SampleStacks.BAND;

  static IntStream kinds() {
    return IntStream.range(0, 32);
  }

  /** Against a general nodal solution; 1e-10 leaves room for its rounding. */
  @ParameterizedTest
  @MethodSource("kinds")
  void voltagesAndCurrentsAreTheNodalSolution(int kind) {
    Random random = new Random(kind);
    LowPassBranch branch = SampleStacks.branch(kind, random);
    ComplexCurve stack = SampleStacks.stack(random);
    CircuitState state = CircuitState.of(branch, BAND, stack);
    LoadRows load = SampleStacks.load(stack);
    double[] squared = new double[BAND.size()];
    NetworkRows rows = branch.rows(BAND);
    double leastInputSquared = rows.pass(load, new LoadRows(BAND.size()), squared);
    double least = Double.POSITIVE_INFINITY;
    for (int f = 0; f < BAND.size(); f++) {
      NodalCircuit circuit = new NodalCircuit();
      Complex z = new Complex(stack.re().at(f), stack.im().at(f));
      Map<PartPlace, Integer> elements = new EnumMap<>(PartPlace.class);
      int end = wire(circuit, branch, z, 2 * Math.PI * BAND.at(f), elements);
      circuit.solve();
      Complex transfer = circuit.voltage(end);
      near(state.transfer(), f, transfer);
      near(state.inputImpedance(), f, circuit.sourceCurrent().reciprocal());
      near(state.stackCurrent(), f, transfer.divide(z));
      assertThat(squared[f] / Math.pow(transfer.abs(), 2)).isEqualTo(1, offset(1e-10));
      least = Math.min(least, circuit.sourceCurrent().reciprocal().abs());
      for (PlacedPart part : branch.parts()) {
        near(state.current(part.place()), f, circuit.current(elements.get(part.place())));
      }
    }
    assertThat(Math.sqrt(leastInputSquared) / least).isEqualTo(1, offset(1e-10));
  }

  private static void near(ComplexCurve curve, int f, Complex expected) {
    Complex found = new Complex(curve.re().at(f), curve.im().at(f));
    assertThat(found.subtract(expected).abs() / expected.abs()).isLessThan(1e-10);
  }

  /** Wires the branch part by part, each with a node of its own; returns the stack's node. */
  private static int wire(
      NodalCircuit circuit,
      LowPassBranch branch,
      Complex stack,
      double w,
      Map<PartPlace, Integer> elements) {
    int end = 1;
    int middle = 1;
    for (PlacedPart part : branch.parts()) {
      Complex z = impedance(part.part(), w);
      switch (part.place()) {
        case SERIES_RESISTOR, SERIES_COIL -> {
          int next = circuit.node();
          elements.put(part.place(), circuit.add(end, next, z));
          end = next;
        }
        case SHUNT_CAPACITOR -> {
          middle = branch.shunt().orElseThrow().damping().isPresent() ? circuit.node() : 0;
          elements.put(part.place(), circuit.add(end, middle, z));
        }
        case RESONANCE_RESISTOR, ZOBEL_RESISTOR -> {
          middle = circuit.node();
          elements.put(part.place(), circuit.add(end, middle, z));
        }
        case RESONANCE_COIL -> {
          int from = branch.resonance().orElseThrow().resistor().isPresent() ? middle : end;
          middle = circuit.node();
          elements.put(part.place(), circuit.add(from, middle, z));
        }
        case DAMPING_RESISTOR, RESONANCE_CAPACITOR, ZOBEL_CAPACITOR ->
            elements.put(part.place(), circuit.add(middle, 0, z));
      }
    }
    circuit.add(end, 0, stack);
    return end;
  }

  private static Complex impedance(Part part, double w) {
    if (part instanceof Resistor resistor) {
      return new Complex(resistor.resistanceOhm());
    }
    if (part instanceof SeriesCoil coil) {
      return new Complex(coil.resistanceOhm(), w * coil.inductanceH());
    }
    return new Complex(0, -1 / (w * part.value()));
  }

  /**
   * What the amplifier feels, less the branch, is the stack; 1e-8 for the differences' rounding.
   */
  @ParameterizedTest
  @MethodSource("kinds")
  void theInputImpedanceTellsTheStack(int kind) {
    Random random = new Random(300 + kind);
    LowPassBranch branch = SampleStacks.branch(kind, random);
    CircuitState known = CircuitState.of(branch, BAND, SampleStacks.stack(random));
    CircuitState told = CircuitState.ofInput(branch, BAND, known.inputImpedance());
    for (int f = 0; f < BAND.size(); f++) {
      assertThat(told.stackCurrent().modulus(f) / known.stackCurrent().modulus(f))
          .isEqualTo(1, offset(1e-8));
      assertThat(told.transfer().phaseRad(f)).isEqualTo(known.transfer().phaseRad(f), offset(1e-8));
    }
  }

  /** Energy: what the amplifier gives is what the stack and the resistances take. */
  @ParameterizedTest
  @MethodSource("kinds")
  void powerInIsTheSumOfPowers(int kind) {
    Random random = new Random(100 + kind);
    LowPassBranch branch = SampleStacks.branch(kind, random);
    ComplexCurve stack = SampleStacks.stack(random);
    CircuitState state = CircuitState.of(branch, BAND, stack);
    for (int f = 0; f < BAND.size(); f++) {
      double sum = Math.pow(state.stackCurrent().modulus(f), 2) * stack.re().at(f);
      for (PlacedPart part : branch.parts()) {
        sum += state.power(part.place()).at(f);
        // voltage over current is the part's own impedance
        Complex z = impedance(part.part(), 2 * Math.PI * BAND.at(f));
        assertThat(state.voltage(part.place()).modulus(f) / state.current(part.place()).modulus(f))
            .isEqualTo(z.abs(), offset(1e-9 * z.abs()));
      }
      assertThat(state.inputPower().at(f) / sum).isEqualTo(1, offset(1e-10));
    }
  }

  /** Voltage divider by hand: 28 V over 4 + 4 ohm is 3.5 A, 14 V, 49 W in the resistor. */
  @Test
  void ratingsOfADivider() {
    LowPassBranch branch = LowPassBranch.NONE.withSeriesResistor(4);
    CircuitState state = CircuitState.of(branch, BAND, SampleStacks.resistance(BAND, 4));
    double[] drive = new double[BAND.size()];
    Arrays.fill(drive, 10);
    drive[7] = 28;
    PartRating rating = state.ratings(Curve.of(drive)).get(0).rating();
    assertThat(rating.currentA()).isEqualTo(3.5, offset(1e-12));
    assertThat(rating.powerW()).isEqualTo(49, offset(1e-10));
    assertThat(rating.peakVoltageV()).isEqualTo(14 * Math.sqrt(2), offset(1e-10));
    assertThat(rating.atHz()).isEqualTo(BAND.at(7));
  }

  /**
   * At 1/sqrt(LC) with an open end, an undamped filter lifts the capacitor's voltage by Q = R/wL.
   */
  @Test
  void capacitorIsRatedForTheLiftOfTheFilter() {
    double w = 2 * Math.PI * 100;
    LowPassBranch branch =
        LowPassBranch.of(new SeriesCoil(10 / w, 0, 0), ShuntCapacitor.undamped(1 / (10 * w)));
    Curve band = Curve.of(50, 100, 200);
    CircuitState state = CircuitState.of(branch, band, SampleStacks.resistance(band, 40));
    List<RatedPart> ratings = state.ratings(Curve.of(20, 20, 20));
    RatedPart capacitor = ratings.get(1);
    assertThat(capacitor.place()).isEqualTo(PartPlace.SHUNT_CAPACITOR);
    assertThat(capacitor.rating().peakVoltageV())
        .isEqualTo(20 * Math.sqrt(2) * 40 / 10, offset(1e-9));
    assertThat(capacitor.rating().atHz()).isEqualTo(100);
    assertThat(capacitor.rating().powerW()).isZero();
  }

  /** 1/(3 + 4j) = (3 - 4j)/25. */
  @Test
  void admittanceOfAnImpedance() {
    LoadRows load = SampleStacks.load(ComplexCurve.of(new double[] {3}, new double[] {4}));
    assertThat(load.conductance(0)).isEqualTo(0.12, offset(1e-15));
    assertThat(load.susceptance(0)).isEqualTo(-0.16, offset(1e-15));
  }

  @Test
  void nothingLeavesTheStackAsItIs() {
    ComplexCurve stack = SampleStacks.stack(new Random(5));
    double[] squared = new double[BAND.size()];
    LoadRows load = SampleStacks.load(stack);
    LowPassBranch.NONE.rows(BAND).transferSquared(load, new LoadRows(BAND.size()), squared);
    assertThat(squared).containsOnly(1.0);
    assertThat(LowPassBranch.NONE.none()).isTrue();
    LowPassBranch resistor = LowPassBranch.NONE.withSeriesResistor(2);
    assertThat(resistor.none()).isFalse();
    assertThat(resistor.order()).isZero();
    LowPassBranch first =
        new LowPassBranch(
            Optional.of(new Resistor(2)),
            SeriesCoil.NONE,
            Optional.of(ShuntCapacitor.undamped(1e-4)),
            Optional.empty(),
            Optional.empty());
    assertThat(first.order()).isEqualTo(1);
    CircuitState state = CircuitState.of(LowPassBranch.NONE, BAND, stack);
    assertThat(state.inputImpedance().modulus(9)).isEqualTo(stack.modulus(9), offset(1e-12));
    assertThat(state.ratings(BAND)).isEmpty();
    assertThatThrownBy(() -> state.current(PartPlace.SERIES_COIL))
        .hasMessage("the branch has no series coil");
  }

  @Test
  void branchesThatMeanNothingAreRejected() {
    Optional<ShuntCapacitor> shunt = Optional.of(ShuntCapacitor.undamped(1e-5));
    assertThatThrownBy(
            () ->
                new LowPassBranch(
                    Optional.empty(), SeriesCoil.NONE, shunt, Optional.empty(), Optional.empty()))
        .hasMessageContaining("do nothing");
    assertThatThrownBy(() -> LowPassBranch.ofCoil(new SeriesCoil(0, 1, 0)))
        .hasMessageContaining("no inductance");
    assertThatThrownBy(
            () ->
                new MotionalConjugate(
                    Optional.empty(), new SeriesCoil(1e-2, 0, 0), new Capacitor(1e-3)))
        .hasMessageContaining("short the stack");
    assertThatThrownBy(() -> new PlacedPart(PartPlace.SERIES_COIL, new Resistor(1)))
        .hasMessageContaining("allowed: a coil only");
    ComplexCurve two = SampleStacks.resistance(Curve.of(10, 20), 4);
    assertThatThrownBy(() -> CircuitState.of(LowPassBranch.NONE, Curve.of(10), two))
        .hasMessageContaining("frequencies number 1, impedances 2");
    CircuitState state = CircuitState.of(LowPassBranch.NONE, Curve.of(10, 20), two);
    assertThatThrownBy(() -> state.ratings(Curve.of(28)))
        .hasMessageContaining("frequencies number 2, voltages 1");
    assertThatThrownBy(() -> new LoadRows(0)).hasMessageContaining("1 or more");
    assertThatThrownBy(() -> LowPassBranch.NONE.rows(Curve.of(0, 10)))
        .hasMessageContaining("frequency");
  }

  /** The stated make is proportional; the nearest values are of the tables (IEC 60063). */
  @Test
  void conjugateOfTableValues() {
    CoilMake make = new CoilMake.Stated(50, 40);
    assertThat(make.coil(0.018)).isEqualTo(new SeriesCoil(0.018, 50 * 0.018, 40 * 0.018));
    MotionalConjugate near =
        MotionalConjugate.Values.of(6, 0.55556, 5, 30)
            .nearest(PreferredValues.E12, PreferredValues.E6, PreferredValues.E24, make);
    assertThat(near.coil().inductanceH()).isEqualTo(0.018);
    assertThat(near.capacitor().capacitanceF()).isEqualTo(1.5e-3);
    // 6.667 - 0.9 = 5.767 ohm; 5.6 is nearer than 6.2 by ratio
    assertThat(near.resistor()).contains(new Resistor(5.6));
    // 6.667 - 6.3 ohm is less than a tenth of the branch: left out
    assertThat(
            MotionalConjugate.Values.of(6, 0.55556, 5, 30)
                .nearest(
                    PreferredValues.E12,
                    PreferredValues.E6,
                    PreferredValues.E24,
                    new CoilMake.Stated(350, 40))
                .resistor())
        .isEmpty();
    assertThat(PreferredValues.E6.nearest(12.2)).isEqualTo(10);
    assertThat(PreferredValues.E6.nearest(12.3)).isEqualTo(15);
  }
}

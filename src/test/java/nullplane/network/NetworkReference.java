package nullplane.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;
import static org.assertj.core.data.Offset.offset;

import java.util.List;
import java.util.Optional;
import nullplane.HandbookRow;
import nullplane.units.Curve;
import nullplane.units.Levels;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Alignments, ladders and conjugates against handbook rows and closed forms. */
@Tag("reference")
class NetworkReference {
  private static final double OHM = 8;
  private static final Curve BAND = Curve.logSpaced(10, 2000, 70);

  private static LowPassLadder ladder(FilterAlignment alignment, double cornerHz) {
    return LowPassLadder.of(new CrossoverFilter(alignment, cornerHz), OHM);
  }

  /** Row XO01, 0.01 % as the table says (five figures are printed). */
  @Test
  void xo01SecondOrder() {
    HandbookRow row = HandbookRow.of("XO01");
    assertThat(row.figure("8")).isEqualTo(OHM);
    LowPassLadder butterworth = ladder(FilterAlignment.BUTTERWORTH_2, row.figure("100"));
    near(butterworth.coilsH(), 1e-3, row.figure("18.006"));
    near(butterworth.capacitorsF(), 1e-6, row.figure("140.67"));
    LowPassLadder linkwitz = ladder(FilterAlignment.LINKWITZ_RILEY_2, row.figure("100"));
    near(linkwitz.coilsH(), 1e-3, row.figure("25.465"));
    near(linkwitz.capacitorsF(), 1e-6, row.figure("99.472"));
  }

  /** Row XO02, 0.01 %; four printed figures of an inductance carry 0.006 % of rounding. */
  @Test
  void xo02FirstToThirdOrder() {
    HandbookRow row = HandbookRow.of("XO02");
    double corner = row.figure("2000");
    LowPassLadder second = ladder(FilterAlignment.BUTTERWORTH_2, corner);
    near(second.coilsH(), 1e-3, row.figure("0.9003"));
    near(second.capacitorsF(), 1e-6, row.figure("7.0337"));
    LowPassLadder linkwitz = ladder(FilterAlignment.LINKWITZ_RILEY_2, corner);
    near(linkwitz.coilsH(), 1e-3, row.figure("1.2732"));
    near(linkwitz.capacitorsF(), 1e-6, row.figure("4.9736"));
    // the first order's capacitor belongs to its high-pass, C = 1/(R wc)
    LowPassLadder first = ladder(FilterAlignment.BUTTERWORTH_1, corner);
    near(first.coilsH(), 1e-3, row.figure("0.6366"));
    assertThat(first.capacitorsF()).isEmpty();
    assertThat(first.coilsH().get(0) / (OHM * OHM) * 1e6)
        .isCloseTo(row.figure("9.9472"), withinPercentage(0.01));
    LowPassLadder third = ladder(FilterAlignment.BUTTERWORTH_3, corner);
    near(third.coilsH(), 1e-3, row.figure("0.9549"), row.figure("0.3183"));
    near(third.capacitorsF(), 1e-6, row.figure("13.263"));
  }

  private static void near(List<Double> values, double unit, double... expected) {
    assertThat(values).hasSize(expected.length);
    for (int i = 0; i < expected.length; i++) {
      assertThat(values.get(i) / unit).isCloseTo(expected[i], withinPercentage(0.01));
    }
  }

  /** Row XO05: resistance at every frequency, 1e-6 as the table says, here from 1 Hz to 10 kHz. */
  @Test
  void xo05ConjugateOfTheResonance() {
    HandbookRow row = HandbookRow.of("XO05");
    double re = row.figure("6");
    MotionalConjugate.Values values =
        MotionalConjugate.Values.of(re, row.figure("0.55556"), row.figure("5"), row.figure("30"));
    assertThat(values.resistanceOhm()).isCloseTo(row.figure("6.6667"), withinPercentage(0.001));
    assertThat(values.inductanceH() * 1e3).isCloseTo(row.figure("17.684"), withinPercentage(0.003));
    assertThat(values.capacitanceF() * 1e6)
        .isCloseTo(row.figure("1591.5"), withinPercentage(0.004));
    Curve wide = Curve.logSpaced(1, 10_000, 201);
    MotionalConjugate branch = values.exact(CoilMake.standard());
    // the coil's own resistance is part of the branch, the resistor only its rest
    assertThat(branch.resistor().orElseThrow().resistanceOhm()).isLessThan(6.2);
    LoadRows load = SampleStacks.load(SampleStacks.driver(wide, re, 0.55556, 5, 30, 0));
    load.setShunted(load, ShuntRows.of(branch, wide));
    assertResistance(load, re);
  }

  /** Circuit theory: R = Re and C = Le/Re^2 make Re + jw Le a resistance at every frequency. */
  @Test
  void conjugateOfTheInductance() {
    Curve wide = Curve.logSpaced(1, 10_000, 201);
    double[] re = SampleStacks.resistance(wide, 5.6).re().toArray();
    double[] im = wide.stream().map(f -> 2 * Math.PI * f * 0.9e-3).toArray();
    LoadRows load = SampleStacks.load(ComplexCurve.of(re, im));
    load.setShunted(load, ShuntRows.of(ZobelNetwork.exact(5.6, 0.9e-3), wide));
    assertResistance(load, 5.6);
  }

  private static void assertResistance(LoadRows load, double ohm) {
    double[] re = new double[load.size()];
    double[] im = new double[load.size()];
    new SeriesRows(0, 0, Curve.logSpaced(1, 2, load.size())).inputImpedance(load, re, im);
    for (int f = 0; f < load.size(); f++) {
      assertThat(re[f]).isEqualTo(ohm, offset(1e-6));
      assertThat(im[f]).isEqualTo(0, offset(1e-6));
    }
  }

  /** Row XO06, Linkwitz 1976: the sum is 1 at every frequency, each way 6.0206 dB down at fc. */
  @Test
  void xo06SumsToOne() {
    HandbookRow row = HandbookRow.of("XO06");
    for (FilterAlignment alignment :
        List.of(FilterAlignment.LINKWITZ_RILEY_2, FilterAlignment.LINKWITZ_RILEY_4)) {
      CrossoverFilter filter = new CrossoverFilter(alignment, 200);
      Polarity polarity = alignment.order() == 2 ? Polarity.INVERTED : Polarity.NORMAL;
      ComplexCurve low = filter.lowPass(BAND);
      MainDriverRows main = new MainDriver.Modelled(1, Optional.of(filter), polarity, 0).rows(BAND);
      double[] sum = new double[BAND.size()];
      main.sumSquared(low.re().toArray(), low.im().toArray(), sum);
      for (double squared : sum) {
        assertThat(Math.sqrt(squared)).isEqualTo(1, offset(1e-9));
      }
      Curve corner = Curve.of(200);
      for (ComplexCurve way : List.of(filter.lowPass(corner), filter.highPass(corner))) {
        assertThat(Levels.ofAmplitudeRatio(way.modulus(0)))
            .isEqualTo(-row.figure("6.0206"), offset(1e-4));
      }
    }
  }

  /** The closed forms of |H|^2 over x = f/fc: Butterworth 1930; Linkwitz 1976. */
  private static double closedForm(FilterAlignment alignment, double x) {
    return switch (alignment) {
      case BUTTERWORTH_1, BUTTERWORTH_2, BUTTERWORTH_3, BUTTERWORTH_4 ->
          1 / (1 + Math.pow(x, 2 * alignment.order()));
      case LINKWITZ_RILEY_2 -> 1 / Math.pow(1 + x * x, 2);
      case LINKWITZ_RILEY_4 -> 1 / Math.pow(1 + Math.pow(x, 4), 2);
    };
  }

  /** Both readings of a filter against the closed form; high-pass at x is low-pass at 1/x. */
  @ParameterizedTest
  @EnumSource(FilterAlignment.class)
  void filtersAreTheClosedForm(FilterAlignment alignment) {
    CrossoverFilter filter = new CrossoverFilter(alignment, 180);
    ComplexCurve low = filter.lowPass(BAND);
    ComplexCurve high = filter.highPass(BAND);
    for (int f = 0; f < BAND.size(); f++) {
      double x = BAND.at(f) / 180;
      assertThat(low.modulus(f) / Math.sqrt(closedForm(alignment, x))).isEqualTo(1, offset(1e-12));
      assertThat(high.modulus(f) / Math.sqrt(closedForm(alignment, 1 / x)))
          .isEqualTo(1, offset(1e-12));
    }
  }

  /** Ladder values in a general nodal solution give the alignment, to 0.01 dB and far better. */
  @ParameterizedTest
  @EnumSource(FilterAlignment.class)
  void laddersGiveTheClosedForm(FilterAlignment alignment) {
    LowPassLadder ladder = ladder(alignment, 180);
    assertThat(ladder.coilsH().size() + ladder.capacitorsF().size()).isEqualTo(alignment.order());
    for (double hz : BAND.toArray()) {
      double w = 2 * Math.PI * hz;
      NodalCircuit circuit = new NodalCircuit();
      int at = 1;
      for (int i = 0; i < ladder.coilsH().size(); i++) {
        int next = circuit.node();
        circuit.add(at, next, new Complex(0, w * ladder.coilsH().get(i)));
        at = next;
        if (i < ladder.capacitorsF().size()) {
          circuit.add(at, 0, new Complex(0, -1 / (w * ladder.capacitorsF().get(i))));
        }
      }
      circuit.add(at, 0, new Complex(OHM));
      circuit.solve();
      double db = Levels.ofAmplitudeRatio(circuit.voltage(at).abs());
      double expected = Levels.ofPowerRatio(closedForm(alignment, hz / 180));
      assertThat(db).isEqualTo(expected, offset(1e-9));
    }
  }

  /** The branch of first and second order on a resistance, and on a stack made one: 0.01 dB. */
  @ParameterizedTest
  @ValueSource(strings = {"BUTTERWORTH_1", "BUTTERWORTH_2", "LINKWITZ_RILEY_2"})
  void branchesGiveTheClosedForm(String name) {
    FilterAlignment alignment = FilterAlignment.valueOf(name);
    LowPassLadder ladder = ladder(alignment, 180);
    SeriesCoil coil = new SeriesCoil(ladder.coilsH().get(0), 0, 0);
    LowPassBranch branch =
        alignment.order() == 1
            ? LowPassBranch.ofCoil(coil)
            : LowPassBranch.of(coil, ShuntCapacitor.undamped(ladder.capacitorsF().get(0)));
    assertThat(branch.order()).isEqualTo(alignment.order());
    assertClosedForm(branch, SampleStacks.resistance(BAND, OHM), alignment);
    MotionalConjugate conjugate =
        MotionalConjugate.Values.of(OHM, 0.6, 4, 32).exact(CoilMake.standard());
    assertClosedForm(
        branch.withResonance(conjugate), SampleStacks.driver(BAND, OHM, 0.6, 4, 32, 0), alignment);
  }

  private static void assertClosedForm(
      LowPassBranch branch, ComplexCurve stack, FilterAlignment alignment) {
    double[] squared = new double[BAND.size()];
    LoadRows load = SampleStacks.load(stack);
    branch.rows(BAND).transferSquared(load, new LoadRows(BAND.size()), squared);
    for (int f = 0; f < BAND.size(); f++) {
      assertThat(Levels.ofPowerRatio(squared[f]))
          .isEqualTo(Levels.ofPowerRatio(closedForm(alignment, BAND.at(f) / 180)), offset(1e-9));
    }
  }
}

package nullplane.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import nullplane.HandbookRow;
import nullplane.units.Curve;
import nullplane.units.Levels;
import nullplane.validation.Check;
import nullplane.validation.Validation;
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
    near(row, "second order Butterworth, coil", "mH", butterworth.coilsH(), row.figure("18.006"));
    near(
        row,
        "second order Butterworth, capacitor",
        "uF",
        butterworth.capacitorsF(),
        row.figure("140.67"));
    LowPassLadder linkwitz = ladder(FilterAlignment.LINKWITZ_RILEY_2, row.figure("100"));
    near(row, "second order Linkwitz-Riley, coil", "mH", linkwitz.coilsH(), row.figure("25.465"));
    near(
        row,
        "second order Linkwitz-Riley, capacitor",
        "uF",
        linkwitz.capacitorsF(),
        row.figure("99.472"));
  }

  /** Row XO02, 0.01 %; four printed figures of an inductance carry 0.006 % of rounding. */
  @Test
  void xo02FirstToThirdOrder() {
    HandbookRow row = HandbookRow.of("XO02");
    double corner = row.figure("2000");
    LowPassLadder second = ladder(FilterAlignment.BUTTERWORTH_2, corner);
    near(row, "second order Butterworth, coil", "mH", second.coilsH(), row.figure("0.9003"));
    near(
        row,
        "second order Butterworth, capacitor",
        "uF",
        second.capacitorsF(),
        row.figure("7.0337"));
    LowPassLadder linkwitz = ladder(FilterAlignment.LINKWITZ_RILEY_2, corner);
    near(row, "second order Linkwitz-Riley, coil", "mH", linkwitz.coilsH(), row.figure("1.2732"));
    near(
        row,
        "second order Linkwitz-Riley, capacitor",
        "uF",
        linkwitz.capacitorsF(),
        row.figure("4.9736"));
    // the first order's capacitor belongs to its high-pass, C = 1/(R wc)
    LowPassLadder first = ladder(FilterAlignment.BUTTERWORTH_1, corner);
    near(row, "first order, coil", "mH", first.coilsH(), row.figure("0.6366"));
    assertThat(first.capacitorsF()).isEmpty();
    row.check("first order, capacitor of the high-pass")
        .expected(row.figure("9.9472"), "uF")
        .computed(first.coilsH().get(0) / (OHM * OHM) * 1e6)
        .withinPercent(0.01);
    LowPassLadder third = ladder(FilterAlignment.BUTTERWORTH_3, corner);
    near(
        row,
        "third order Butterworth, both coils",
        "mH",
        third.coilsH(),
        row.figure("0.9549"),
        row.figure("0.3183"));
    near(
        row, "third order Butterworth, capacitor", "uF", third.capacitorsF(), row.figure("13.263"));
  }

  private static void near(
      HandbookRow row, String part, String unit, List<Double> values, double... expected) {
    assertThat(values).hasSize(expected.length);
    Check check = row.check(part).in(unit);
    for (int i = 0; i < expected.length; i++) {
      check.add(expected[i], values.get(i) * (unit.equals("mH") ? 1e3 : 1e6));
    }
    check.withinPercent(0.01);
  }

  /** Row XO05: resistance at every frequency, 1e-6 as the table says, here from 1 Hz to 10 kHz. */
  @Test
  void xo05ConjugateOfTheResonance() {
    HandbookRow row = HandbookRow.of("XO05");
    double re = row.figure("6");
    MotionalConjugate.Values values =
        MotionalConjugate.Values.of(re, row.figure("0.55556"), row.figure("5"), row.figure("30"));
    row.check("conjugate's resistor")
        .expected(row.figure("6.6667"), "ohm")
        .computed(values.resistanceOhm())
        .withinPercent(0.001);
    row.check("conjugate's coil")
        .expected(row.figure("17.684"), "mH")
        .computed(values.inductanceH() * 1e3)
        .withinPercent(0.003);
    row.check("conjugate's capacitor")
        .expected(row.figure("1591.5"), "uF")
        .computed(values.capacitanceF() * 1e6)
        .withinPercent(0.004);
    Curve wide = Curve.logSpaced(1, 10_000, 201);
    MotionalConjugate branch = values.exact(CoilMake.standard());
    // the coil's own resistance is part of the branch, the resistor only its rest
    assertThat(branch.resistor().orElseThrow().resistanceOhm()).isLessThan(6.2);
    LoadRows load = SampleStacks.load(SampleStacks.driver(wide, re, 0.55556, 5, 30, 0));
    load.setShunted(load, ShuntRows.of(branch, wide));
    assertResistance(row.check("load with the conjugate, 1 Hz to 10 kHz"), load, re);
  }

  /** Circuit theory: R = Re and C = Le/Re^2 make Re + jw Le a resistance at every frequency. */
  @Test
  void conjugateOfTheInductance() {
    Curve wide = Curve.logSpaced(1, 10_000, 201);
    double[] re = SampleStacks.resistance(wide, 5.6).re().toArray();
    double[] im = wide.stream().map(f -> 2 * Math.PI * f * 0.9e-3).toArray();
    LoadRows load = SampleStacks.load(ComplexCurve.of(re, im));
    load.setShunted(load, ShuntRows.of(ZobelNetwork.exact(5.6, 0.9e-3), wide));
    assertResistance(
        Validation.check(
            "load of Re and Le with R = Re, C = Le/Re^2 across it, 1 Hz to 10 kHz",
            "Closed form: circuit theory."),
        load,
        5.6);
  }

  private static void assertResistance(Check check, LoadRows load, double ohm) {
    double[] re = new double[load.size()];
    double[] im = new double[load.size()];
    new SeriesRows(0, 0, Curve.logSpaced(1, 2, load.size())).inputImpedance(load, re, im);
    for (int f = 0; f < load.size(); f++) {
      check.add(ohm, re[f]);
      assertThat(im[f]).isEqualTo(0, offset(1e-6));
    }
    check.in("ohm").within(1e-6);
  }

  /** Row XO06, Linkwitz 1976: the sum is 1 at every frequency, each way 6.0206 dB down at fc. */
  @Test
  void xo06SumsToOne() {
    HandbookRow row = HandbookRow.of("XO06");
    Check one = row.check("modulus of the sum, 10 Hz to 2 kHz, second and fourth order");
    Check down = row.check("each way at the corner, second and fourth order").in("dB");
    for (FilterAlignment alignment :
        List.of(FilterAlignment.LINKWITZ_RILEY_2, FilterAlignment.LINKWITZ_RILEY_4)) {
      CrossoverFilter filter = new CrossoverFilter(alignment, 200);
      Polarity polarity = alignment.order() == 2 ? Polarity.INVERTED : Polarity.NORMAL;
      ComplexCurve low = filter.lowPass(BAND);
      MainDriverRows main = new MainDriver.Modelled(1, Optional.of(filter), polarity, 0).rows(BAND);
      double[] sum = new double[BAND.size()];
      main.sumSquared(low.re().toArray(), low.im().toArray(), sum);
      for (double squared : sum) {
        one.add(1, Math.sqrt(squared));
      }
      Curve corner = Curve.of(200);
      for (ComplexCurve way : List.of(filter.lowPass(corner), filter.highPass(corner))) {
        down.add(-row.figure("6.0206"), Levels.ofAmplitudeRatio(way.modulus(0)));
      }
    }
    one.within(1e-9);
    down.within(1e-4);
  }

  /** The closed forms of |H|^2 over x = f/fc: Butterworth 1930; Linkwitz 1976. */
  private static final String ALIGNMENTS =
      "Closed forms of |H|^2: S. Butterworth 1930; S. H. Linkwitz, J. Audio Eng. Soc. 24(1) (1976) 2.";

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
    Check ratio =
        Validation.check(
            named("filter, low-pass and high-pass over closed form", alignment), ALIGNMENTS);
    ComplexCurve low = filter.lowPass(BAND);
    ComplexCurve high = filter.highPass(BAND);
    for (int f = 0; f < BAND.size(); f++) {
      double x = BAND.at(f) / 180;
      ratio.add(1, low.modulus(f) / Math.sqrt(closedForm(alignment, x)));
      ratio.add(1, high.modulus(f) / Math.sqrt(closedForm(alignment, 1 / x)));
    }
    ratio.within(1e-12);
  }

  /** Ladder values in a general nodal solution give the alignment, to 0.01 dB and far better. */
  @ParameterizedTest
  @EnumSource(FilterAlignment.class)
  void laddersGiveTheClosedForm(FilterAlignment alignment) {
    LowPassLadder ladder = ladder(alignment, 180);
    assertThat(ladder.coilsH().size() + ladder.capacitorsF().size()).isEqualTo(alignment.order());
    Check level =
        Validation.check(named("ladder solved by nodal analysis", alignment), ALIGNMENTS).in("dB");
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
      level.add(expected, db);
    }
    level.within(1e-9);
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
    assertClosedForm(
        "branch on a resistance", branch, SampleStacks.resistance(BAND, OHM), alignment);
    MotionalConjugate conjugate =
        MotionalConjugate.Values.of(OHM, 0.6, 4, 32).exact(CoilMake.standard());
    assertClosedForm(
        "branch on a stack made a resistance",
        branch.withResonance(conjugate),
        SampleStacks.driver(BAND, OHM, 0.6, 4, 32, 0),
        alignment);
  }

  private static String named(String what, FilterAlignment alignment) {
    return what + ", " + alignment.name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }

  private static void assertClosedForm(
      String what, LowPassBranch branch, ComplexCurve stack, FilterAlignment alignment) {
    double[] squared = new double[BAND.size()];
    LoadRows load = SampleStacks.load(stack);
    branch.rows(BAND).transferSquared(load, new LoadRows(BAND.size()), squared);
    Check level = Validation.check(named(what, alignment), ALIGNMENTS).in("dB");
    for (int f = 0; f < BAND.size(); f++) {
      level.add(
          Levels.ofPowerRatio(closedForm(alignment, BAND.at(f) / 180)),
          Levels.ofPowerRatio(squared[f]));
    }
    level.within(1e-9);
  }
}

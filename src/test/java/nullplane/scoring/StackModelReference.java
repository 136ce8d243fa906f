package nullplane.scoring;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Stream;
import nullplane.acoustics.FieldPoint;
import nullplane.acoustics.Panel;
import nullplane.acoustics.PanelResponse;
import nullplane.acoustics.PanelSolution;
import nullplane.acoustics.PanelSolver;
import nullplane.acoustics.Piston;
import nullplane.driver.Woofer;
import nullplane.units.Curve;
import nullplane.validation.Check;
import nullplane.validation.Validation;
import org.apache.commons.math3.complex.Complex;
import org.apache.commons.math3.complex.ComplexField;
import org.apache.commons.math3.linear.Array2DRowFieldMatrix;
import org.apache.commons.math3.linear.ArrayFieldVector;
import org.apache.commons.math3.linear.FieldLUDecomposition;
import org.apache.commons.math3.linear.FieldVector;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The mode sum against the full circuit: force balance of every cone and Kirchhoff's laws of every
 * string, written out and solved by a general-purpose complex LU decomposition.
 */
@Tag("reference")
class StackModelReference {
  private static final Woofer WOOFER =
      WorkshopSpecs.woofer(WorkshopSpecs.brief300(), 33, 0.8, 0.06, 0.008);
  private static final Curve AXIS = Curve.of(25, 33, 60, 140, 390);
  private static final PanelResponse FOUR =
      new PanelSolver(
              Panel.overFloor(0.44, 1.9, 0.04),
              List.of(
                  new Piston(0.02, -0.7, 0.13),
                  new Piston(0, -0.35, 0.13),
                  new Piston(-0.05, 0.3, 0.13),
                  new Piston(0, 0.7, 0.13)),
              WorkshopSpecs.AIR)
          .respond(AXIS, List.of(new FieldPoint(0, 0, 3)), List.of());

  private static final PanelResponse SIX =
      new PanelSolver(
              Panel.overFloor(0.84, 1.2, 0.04),
              List.of(
                  new Piston(-0.22, -0.4, 0.13),
                  new Piston(0.2, -0.35, 0.13),
                  new Piston(-0.2, 0, 0.13),
                  new Piston(0.24, 0.05, 0.13),
                  new Piston(-0.18, 0.4, 0.13),
                  new Piston(0.2, 0.42, 0.13)),
              WorkshopSpecs.AIR)
          .respond(AXIS, List.of(new FieldPoint(0, 0, 3)), List.of());

  private static final String CIRCUIT =
      "Force balance of every cone and Kirchhoff's laws, by a complex LU decomposition.";

  static Stream<Wiring> wirings() {
    return Stream.of(4, 6).flatMap(woofers -> Wiring.allOf(woofers).stream());
  }

  @ParameterizedTest
  @MethodSource("wirings")
  void agreesWithTheFullCircuit(Wiring wiring) {
    int count = wiring.woofers();
    PanelResponse response = count == 4 ? FOUR : SIX;
    StackModel.PerVolt modal = new StackModel.PerVolt(AXIS.size(), count);
    new StackModel(response, wiring).respond(WOOFER, modal);
    String stack =
        (count == 4 ? "four" : "six")
            + " woofers over a floor as "
            + wiring.strings()
            + (wiring.strings() == 1 ? " string" : " strings")
            + ", five frequencies: ";
    Check heard = Validation.check(stack + "pressure per volt", CIRCUIT).in("Pa");
    Check travels = Validation.check(stack + "largest excursion per volt", CIRCUIT).in("m");
    Check flows = Validation.check(stack + "largest current per volt", CIRCUIT).in("A");
    Check loads = Validation.check(stack + "load", CIRCUIT).in("ohm");
    for (int f = 0; f < AXIS.size(); f++) {
      double omega = 2 * Math.PI * AXIS.at(f);
      FieldVector<Complex> state = circuit(response.solutions().get(f), omega, wiring);
      Complex pressure = Complex.ZERO;
      double excursion = 0;
      double current = 0;
      Complex total = Complex.ZERO;
      for (int i = 0; i < count; i++) {
        Complex velocity = state.getEntry(i);
        PanelSolution solution = response.solutions().get(f);
        pressure =
            pressure.add(
                velocity.multiply(
                    new Complex(solution.pressure().re(0, i), solution.pressure().im(0, i))));
        excursion = Math.max(excursion, velocity.abs() / omega);
      }
      for (int s = 0; s < wiring.strings(); s++) {
        total = total.add(state.getEntry(count + s));
        current = Math.max(current, state.getEntry(count + s).abs());
      }
      Complex load = total.reciprocal();
      heard.add(pressure.abs(), Math.sqrt(modal.pressureSquared[f]));
      assertThat(
              new Complex(modal.pressureRe[f], modal.pressureIm[f]).subtract(pressure).abs()
                  / pressure.abs())
          .isLessThan(1e-9);
      travels.add(excursion, Math.sqrt(modal.excursionSquared[f]));
      flows.add(current, Math.sqrt(modal.currentSquared[f]));
      loads.add(load.getReal(), modal.loadRe[f]);
      loads.add(load.getImaginary(), modal.loadIm[f]);
    }
    heard.withinPercent(1e-7);
    travels.withinPercent(1e-7);
    flows.withinPercent(1e-7);
    loads.within(1e-8);
  }

  /** Unknowns: the velocities, then one current per string; one volt at the terminals. */
  private static FieldVector<Complex> circuit(PanelSolution solution, double omega, Wiring wiring) {
    int count = wiring.woofers();
    int size = count + wiring.strings();
    Array2DRowFieldMatrix<Complex> matrix =
        new Array2DRowFieldMatrix<>(ComplexField.getInstance(), size, size);
    ArrayFieldVector<Complex> right = new ArrayFieldVector<>(ComplexField.getInstance(), size);
    Complex z =
        new Complex(
            WOOFER.lossNsPerM(), omega * WOOFER.bareMassKg() - WOOFER.stiffnessNPerM() / omega);
    Complex ze = new Complex(WOOFER.resistanceOhm(), omega * WOOFER.inductanceH());
    Complex bl = new Complex(WOOFER.forceFactorTm());
    for (int i = 0; i < count; i++) {
      int string = i % wiring.strings();
      for (int j = 0; j < count; j++) {
        Complex coupling =
            new Complex(solution.impedance().re(i, j), solution.impedance().im(i, j));
        matrix.setEntry(i, j, i == j ? coupling.add(z) : coupling);
      }
      matrix.setEntry(i, count + string, bl.negate());
      matrix.setEntry(count + string, i, bl);
    }
    for (int s = 0; s < wiring.strings(); s++) {
      matrix.setEntry(count + s, count + s, ze.multiply(wiring.inSeries()));
      right.setEntry(count + s, Complex.ONE);
    }
    return new FieldLUDecomposition<>(matrix).getSolver().solve(right);
  }

  /**
   * Four woofers far apart on one voltage draw four times the current of one. Source: Ohm's law.
   */
  @Test
  void wiringsOfUncoupledWoofersAreOhmsLaw() {
    PanelResponse far = uncoupled();
    StackModel.PerVolt parallel = new StackModel.PerVolt(1, 4);
    StackModel.PerVolt series = new StackModel.PerVolt(1, 4);
    new StackModel(far, new Wiring(4, 1)).respond(WOOFER, parallel);
    new StackModel(far, new Wiring(1, 4)).respond(WOOFER, series);
    String ohm = "Closed form: Ohm's law.";
    Validation.check("four uncoupled woofers: load in series over load in parallel", ohm)
        .add(16, series.loadRe[0] / parallel.loadRe[0])
        .add(16, series.loadIm[0] / parallel.loadIm[0])
        .within(1e-9);
    Validation.check("four uncoupled woofers: pressure in parallel over that in series", ohm)
        .expected(4, "")
        .computed(Math.sqrt(parallel.pressureSquared[0] / series.pressureSquared[0]))
        .within(1e-9);
  }

  /** One frequency of a stack whose woofers do not hear each other. */
  private static PanelResponse uncoupled() {
    double[] re = new double[16];
    double[] im = new double[16];
    for (int i = 0; i < 4; i++) {
      re[5 * i] = 0.01;
      im[5 * i] = 3;
    }
    PanelSolution solution =
        new PanelSolution(
            50,
            new nullplane.acoustics.ComplexMatrix(4, 4, re, im),
            new nullplane.acoustics.ComplexMatrix(1, 4, new double[4], new double[] {1, 1, 1, 1}),
            new nullplane.acoustics.ComplexMatrix(0, 4, new double[0], new double[0]),
            0);
    return new PanelResponse(Curve.of(50), List.of(solution));
  }
}

package nullplane.fit;

import java.util.ArrayList;
import java.util.List;
import nullplane.driver.Mounting;

/** The chosen points of a fit and all that is stated beside them; makes circuits for them. */
final class FitSetup {
  private final FitInput input;
  private final List<PreparedSweep> sweeps;
  private final double reference;

  private FitSetup(FitInput input, List<PreparedSweep> sweeps, double reference) {
    this.input = input;
    this.sweeps = List.copyOf(sweeps);
    this.reference = reference;
  }

  /** Chooses the points of an input's sweeps; tells what is left out. */
  static FitSetup of(FitInput input, List<String> warnings) {
    List<PreparedSweep> sweeps = new ArrayList<>();
    sweeps.add(PreparedSweep.of(input.sweep(), input.load(), 0, input.bandHz(), warnings));
    if (input.anchor() instanceof MassAnchor.AddedMass added) {
      sweeps.add(
          PreparedSweep.of(added.sweep(), added.load(), added.massKg(), input.bandHz(), warnings));
    }
    PreparedSweep first = sweeps.get(0);
    double reference = first.size() == 0 ? 1 : 0.3 * first.omega(first.size() - 1);
    return new FitSetup(input, sweeps, reference);
  }

  FitInput input() {
    return input;
  }

  List<PreparedSweep> sweeps() {
    return sweeps;
  }

  /** Returns the setup of other points. */
  FitSetup withSweeps(List<PreparedSweep> others) {
    return new FitSetup(input, others, reference);
  }

  /** Returns the mass on the cone in the second sweep (kg); 0 without one. */
  double addedMassKg() {
    return input.anchor() instanceof MassAnchor.AddedMass added ? added.massKg() : 0;
  }

  /** Returns the relative standard uncertainty of what the anchor states (1). */
  double anchorError() {
    MassAnchor anchor = input.anchor();
    if (anchor instanceof MassAnchor.AddedMass added) {
      return added.standardErrorKg() / added.massKg();
    }
    if (anchor instanceof MassAnchor.BareMass bare) {
      return bare.standardErrorKg() / bare.massKg();
    }
    if (anchor instanceof MassAnchor.ForceFactor force) {
      return force.standardErrorTm() / force.forceFactorTm();
    }
    return 0;
  }

  /** Returns the relative standard uncertainty of the area (1). */
  double areaError() {
    return input.areaStandardErrorM2() / input.effectiveAreaM2();
  }

  /** Returns the effective area, moved by a factor whose logarithm is given (m2). */
  double areaM2(double areaShift) {
    return input.effectiveAreaM2() * Math.exp(areaShift);
  }

  /** Returns the air mass of a free disc of that area (kg). */
  double airMassKg(double areaShift) {
    return Mounting.FREE_AIR.airMassKg(Math.sqrt(areaM2(areaShift) / Math.PI), input.air());
  }

  /**
   * Returns the circuit of a form of inductance.
   *
   * @param form the form
   * @param anchorShift logarithm of a factor on what the anchor states
   * @param areaShift logarithm of a factor on the area
   */
  Circuit circuit(CoilForm form, double anchorShift, double areaShift) {
    List<double[][]> loads = new ArrayList<>();
    for (PreparedSweep sweep : sweeps) {
      loads.add(sweep.extraLoad(areaM2(areaShift), input.air(), Math.exp(anchorShift)));
    }
    Circuit.MassRule rule = Circuit.MassRule.NONE;
    double stated = 0;
    if (input.anchor() instanceof MassAnchor.AddedMass) {
      rule = Circuit.MassRule.FITTED;
    } else if (input.anchor() instanceof MassAnchor.BareMass bare) {
      rule = Circuit.MassRule.STATED;
      stated = Math.log(bare.massKg() * Math.exp(anchorShift) + airMassKg(areaShift));
    } else if (input.anchor() instanceof MassAnchor.ForceFactor force) {
      rule = Circuit.MassRule.BY_FORCE_FACTOR;
      stated = Math.log(force.forceFactorTm()) + anchorShift;
    }
    return new Circuit(sweeps, loads, form, rule, stated, reference, 1, 1);
  }
}

package nullplane.io;

import java.util.List;
import java.util.Optional;
import nullplane.driver.CoilBudget;
import nullplane.driver.Mounting;
import nullplane.driver.SmallSignal;
import nullplane.driver.Woofer;
import nullplane.motor.Former;
import nullplane.motor.Insulation;
import nullplane.motor.MagnetMaterial;
import nullplane.motor.MotorDesign;
import nullplane.motor.StockWire;
import nullplane.motor.Winding;
import nullplane.network.LowPassBranch;
import nullplane.network.SeriesCoil;
import nullplane.scoring.Assessment;
import nullplane.scoring.Grade;
import nullplane.scoring.GradePart;
import nullplane.scoring.Limit;
import nullplane.scoring.StackAssessment;
import nullplane.scoring.StackBrief;
import nullplane.scoring.StackCurves;
import nullplane.scoring.StackFigures;
import nullplane.scoring.Wiring;
import nullplane.search.ConvergencePoint;
import nullplane.search.SearchOutcome;
import nullplane.units.Air;
import nullplane.units.ConductorMaterial;
import nullplane.units.Curve;

/** A made-up search outcome for tests of the writers. */
final class ExampleOutcome {
  private ExampleOutcome() {}

  static Woofer woofer(String name) {
    return new Woofer(name, 0.3, 0.0531, 5.6, 9e-4, 0.071, 2959.2, 2.9, 10.0, 0.008, 150);
  }

  static SearchOutcome of(ReadSpec spec, List<String> names, double levelDb) {
    return new SearchOutcome(
        names.stream().map(name -> assessment(spec, name, levelDb)).toList(),
        List.of(),
        50_000,
        3,
        0,
        List.of(
            new ConvergencePoint(1, 200, 0, 0.5, 0, Curve.of(7.25), 1),
            new ConvergencePoint(2, 400, 0, 0, 12.5, Curve.of(4.25), 30)),
        "the budget is spent",
        7);
  }

  /** A coil of 4 layers of 60 turns of the 0.3 mm wire on 50 mm, in 8 mm at 0.9 T. */
  private static MotorDesign motor() {
    StockWire wire =
        StockWire.all().stream().filter(w -> w.bareM() == 0.3e-3).findFirst().orElseThrow();
    return new MotorDesign(
        Winding.of(
            Former.ofNominal(0.05),
            wire,
            Insulation.GRADE_1,
            ConductorMaterial.COPPER,
            4,
            60,
            0.008),
        0.9,
        MagnetMaterial.FERRITE);
  }

  private static Assessment assessment(ReadSpec spec, String name, double levelDb) {
    return new Assessment(
        woofer(name),
        SmallSignal.of(woofer(name), Mounting.FREE_AIR, Air.standard()),
        new CoilBudget(0.024, 0.031, 0.040, 0.025),
        name.equals("Nr. 1") ? Optional.of(motor()) : Optional.empty(),
        spec.spec().stacks().stream().map(brief -> stack(brief, levelDb)).toList(),
        new Grade(0, 3.5),
        List.of(new GradePart("shape", 1.25, "dB", 1.25, "Stack \"single\" is 1.25 dB off.")),
        List.of());
  }

  private static StackAssessment stack(StackBrief brief, double levelDb) {
    Curve curve = Curve.of(levelDb, 0.1 + 0.2, 1.0 / 3);
    Curve axis = Curve.of(20, 63, 200);
    return new StackAssessment(
        brief,
        new Wiring(1, brief.pistons().size()),
        LowPassBranch.ofCoil(new SeriesCoil(3.3e-3, 0.4, 0.35)),
        new StackFigures(
            1.2,
            -0.4,
            0.3,
            41,
            2.5,
            40,
            Limit.EXCURSION,
            4.9,
            120,
            5,
            1.5,
            2.2,
            0.7,
            0.12,
            29,
            0.8),
        new StackCurves(
            axis,
            curve,
            curve,
            curve,
            curve,
            curve,
            curve,
            curve,
            curve,
            curve,
            List.of(Limit.EXCURSION, Limit.HEAT, Limit.AMPLIFIER),
            Optional.empty()));
  }
}

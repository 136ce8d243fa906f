package nullplane.io;

import java.util.List;
import nullplane.driver.CoilBudget;
import nullplane.driver.Mounting;
import nullplane.driver.SmallSignal;
import nullplane.driver.Woofer;
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
import nullplane.search.SearchOutcome;
import nullplane.units.Air;
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
        50_000,
        3,
        Curve.of(Double.POSITIVE_INFINITY, 4.25, 3.5),
        "the budget is spent",
        7);
  }

  private static Assessment assessment(ReadSpec spec, String name, double levelDb) {
    return new Assessment(
        woofer(name),
        SmallSignal.of(woofer(name), Mounting.FREE_AIR, Air.standard()),
        new CoilBudget(0.024, 0.031, 0.040, 0.025),
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
        new SeriesCoil(3.3e-3, 0.4, 0.35),
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
            List.of(Limit.EXCURSION, Limit.HEAT, Limit.AMPLIFIER)));
  }
}

package nullplane.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import nullplane.acoustics.Panel;
import nullplane.acoustics.Piston;
import nullplane.driver.CoilBudget;
import nullplane.driver.Mounting;
import nullplane.driver.SmallSignal;
import nullplane.driver.Woofer;
import nullplane.motor.CoilBrief;
import nullplane.motor.MagnetMaterial;
import nullplane.motor.Winding;
import nullplane.motor.WindingCatalogue;
import nullplane.network.LowPassBranch;
import nullplane.network.SeriesCoil;
import nullplane.scoring.Amplifier;
import nullplane.scoring.Assessment;
import nullplane.scoring.DesignSpec;
import nullplane.scoring.FamilyScore;
import nullplane.scoring.Grade;
import nullplane.scoring.GradePart;
import nullplane.scoring.Limit;
import nullplane.scoring.Listening;
import nullplane.scoring.StackAssessment;
import nullplane.scoring.StackBrief;
import nullplane.scoring.StackCurves;
import nullplane.scoring.StackFigures;
import nullplane.scoring.Target;
import nullplane.scoring.Wiring;
import nullplane.scoring.WooferBrief;
import nullplane.search.ConvergencePoint;
import nullplane.search.FrontMember;
import nullplane.search.SearchOutcome;
import nullplane.units.Air;
import nullplane.units.ConductorMaterial;
import nullplane.units.Curve;
import nullplane.units.Range;

/**
 * An invented run for tests of the report: the village hall's three stacks and five woofers. The
 * curves come from simple formulas that look plausible; they are no results of the program.
 */
final class InventedRun {
  static final RunInfo INFO = new RunInfo("0123456789abcdef0123456789abcdef", 42, "0.1.0");

  private static final int POINTS = 50;

  private InventedRun() {}

  static DesignSpec spec() {
    return spec("Village hall", "single", "pair", "four");
  }

  static DesignSpec spec(String title, String... names) {
    List<StackBrief> stacks = new ArrayList<>();
    for (int i = 0; i < names.length; i++) {
      int woofers = 1 << Math.min(i, 2);
      List<Piston> pistons = new ArrayList<>();
      for (int w = 0; w < woofers; w++) {
        pistons.add(new Piston(0, -0.8 + 0.4 * w, 0.13));
      }
      stacks.add(
          new StackBrief(
              names[i],
              Panel.overFloor(0.44, 0.7 + 0.4 * woofers, 0.04),
              pistons,
              76 + 6 * Math.min(i, 2),
              92 + 5 * Math.min(i, 2),
              Optional.empty()));
    }
    return new DesignSpec(
        title,
        new WooferBrief(
            0.3,
            0.26,
            new Range(20, 45),
            new Range(0.3, 1.5),
            new Range(0.04, 0.11),
            new Range(0.004, 0.014),
            5,
            OptionalDouble.of(0.9e-3),
            150,
            new CoilBrief(
                Range.pinned(5.6),
                CoilBrief.fluxUpTo(1),
                List.of(0.008),
                List.of(0.05),
                List.of(ConductorMaterial.COPPER),
                CoilBrief.USUAL_LAYERS,
                MagnetMaterial.FERRITE)),
        stacks,
        new Listening(3, 1),
        new Target(2.83, 40, 200, 2),
        new Amplifier(28, 3));
  }

  static SearchOutcome outcome(DesignSpec spec) {
    List<Assessment> ranked = new ArrayList<>();
    for (int i = 0; i < 5; i++) {
      ranked.add(
          assessment(spec, "Woofer " + (i + 1), 30 + i, 0.85 - 0.08 * i, 0.008 - 0.0004 * i));
    }
    return new SearchOutcome(
        ranked,
        front(spec, ranked),
        61440,
        120,
        1,
        history(9, 5, 4.2, 4.1),
        "no better woofer for 30 generations",
        INFO.seed());
  }

  /** A front of the ranked woofers and seven more; the last lies far off. */
  static List<FrontMember> front(DesignSpec spec, List<Assessment> ranked) {
    Winding winding =
        WindingCatalogue.of(spec.woofer().coil(), spec.woofer().travelM()).windings().get(0);
    List<FrontMember> front = new ArrayList<>();
    for (int i = 0; i < 12; i++) {
      Assessment woofer = ranked.get(i % ranked.size());
      double shape = i == 11 ? 9 : 0.4 + 0.4 * i;
      front.add(
          new FrontMember(
              woofer.woofer(),
              winding,
              woofer.stacks().stream().map(StackAssessment::wiring).toList(),
              woofer.stacks().stream().map(StackAssessment::network).toList(),
              new FamilyScore(
                  new Grade(0, shape + 1), shape, i - 3, 0.9 - 0.07 * i, 0.3 - 0.02 * i, 0.2 * i),
              0.9 - 0.05 * i,
              i < ranked.size() ? OptionalInt.of(i + 1) : OptionalInt.empty()));
    }
    return front;
  }

  /** A history of best costs (dB), a generation each. */
  static List<ConvergencePoint> history(double... costsDb) {
    List<ConvergencePoint> points = new ArrayList<>();
    for (double cost : costsDb) {
      int generation = points.size() + 1;
      points.add(
          new ConvergencePoint(
              generation, 500L * generation, 0, 0, 20 - cost, Curve.of(cost), 10 * generation));
    }
    return points;
  }

  static Assessment assessment(
      DesignSpec spec, String name, double resonanceHz, double totalQ, double travelM) {
    WooferBrief brief = spec.woofer();
    Woofer woofer =
        Woofer.withResonance(
            new Woofer(
                name,
                brief.nominalM(),
                brief.effectiveAreaM2(),
                brief.coil().resistanceOhm().lower(),
                brief.statedInductanceH().orElseThrow(),
                0.075,
                1,
                1,
                1,
                travelM,
                brief.powerW()),
            resonanceHz,
            brief.mechanicalQ(),
            totalQ,
            Mounting.FREE_AIR,
            Air.standard());
    List<StackAssessment> stacks = new ArrayList<>();
    for (int i = 0; i < spec.stacks().size(); i++) {
      stacks.add(stack(spec, i, woofer, resonanceHz * 0.93, totalQ * 1.25));
    }
    List<String> violations = new ArrayList<>();
    double least = stacks.stream().mapToDouble(s -> s.figures().leastLoadOhm()).min().orElse(0);
    if (least < spec.amplifier().lowestLoadOhm()) {
      violations.add("the load falls to " + Figures.ohms(least) + "; 3.00 ohm or more is allowed");
    }
    double worst = stacks.stream().mapToDouble(s -> s.figures().rmsDeviationDb()).max().orElse(0);
    return new Assessment(
        woofer,
        SmallSignal.of(woofer, Mounting.FREE_AIR, Air.standard()),
        new CoilBudget(0.008 + 2 * travelM, 0.0192, 0.0558, 0.041),
        Optional.empty(),
        stacks,
        new Grade(violations.size(), worst + 1),
        List.of(
            new GradePart("shape", worst, "dB", worst, "The rms deviation is largest in single."),
            new GradePart("correction", 2.1, "dB", 1, "The bare single needs most correction.")),
        violations);
  }

  private static StackAssessment stack(
      DesignSpec spec, int index, Woofer woofer, double panelHz, double panelQ) {
    StackBrief brief = spec.stacks().get(index);
    int woofers = brief.pistons().size();
    Wiring wiring =
        switch (woofers) {
          case 1 -> new Wiring(1, 1);
          case 2 -> new Wiring(2, 1);
          default -> new Wiring(2, 2);
        };
    SeriesCoil coil =
        index == 0 ? SeriesCoil.NONE : new SeriesCoil(0.002 + 0.001 * index, 0.25, 0.4);
    double load = (double) wiring.inSeries() / wiring.strings();
    double q = panelQ * (1 + 0.1 * index);
    double cornerHz = index == 0 ? 1e6 : 330.0 - 30 * index;
    double gainDb = brief.levelDb() - curveDb(90, panelHz, q, cornerHz);
    Curve frequency = Curve.logSpaced(20, 1000, POINTS);
    double[][] y = new double[9][POINTS];
    List<Limit> binding = new ArrayList<>();
    double travel = woofer.travelM();
    double amplifierDb = 20 * Math.log10(spec.amplifier().voltageV() / spec.target().voltageV());
    Worst worst = new Worst();
    for (int i = 0; i < POINTS; i++) {
      double f = frequency.at(i);
      y[0][i] = gainDb + curveDb(f, panelHz, q, cornerHz);
      y[1][i] = gainDb + 0.8 * index + curveDb(f, panelHz, panelQ, 1e6);
      double detune = q * (f / panelHz - panelHz / f);
      double peak = 45 / (1 + detune * detune);
      y[2][i] = load * (woofer.resistanceOhm() + peak) + coil.resistanceOhm();
      y[3][i] =
          -load * peak * detune
              + 2 * Math.PI * f * (load * woofer.inductanceH() + coil.inductanceH());
      double r = f / panelHz;
      y[4][i] = 1.4e-3 / Math.hypot(1 - r * r, r / q) / Math.sqrt(wiring.inSeries());
      y[5][i] = y[0][i] + 20 * Math.log10(travel / y[4][i]);
      y[6][i] = y[0][i] + 18.2 - 0.004 * (f - 20);
      y[7][i] = y[0][i] + amplifierDb + (f > 300 ? -3 : 0.0);
      Limit limit = Limit.AMPLIFIER;
      if (y[5][i] <= y[6][i] && y[5][i] <= y[7][i]) {
        limit = Limit.EXCURSION;
      } else if (y[6][i] <= y[7][i]) {
        limit = Limit.HEAT;
      }
      binding.add(limit);
      y[8][i] = Math.min(y[5][i], Math.min(y[6][i], y[7][i]));
      worst.see(spec, brief, f, y[0][i], y[8][i], limit, Math.hypot(y[2][i], y[3][i]), y[4][i]);
    }
    StackCurves curves =
        new StackCurves(
            frequency,
            Curve.of(y[0]),
            Curve.of(y[1]),
            Curve.of(y[2]),
            Curve.of(y[3]),
            Curve.of(y[4]),
            Curve.of(y[8]),
            Curve.of(y[5]),
            Curve.of(y[6]),
            Curve.of(y[7]),
            binding,
            Optional.empty());
    StackFigures figures =
        new StackFigures(
            Math.sqrt(worst.square / worst.inBand),
            worst.sum / worst.inBand,
            worst.excessDb,
            worst.excessHz,
            worst.marginDb,
            worst.marginHz,
            worst.marginLimit,
            worst.loadOhm,
            worst.loadHz,
            2.1 + 0.3 * index,
            0.8 - 0.5 * index,
            0.9 * index,
            0.6 * index,
            worst.excursionM / travel,
            panelHz - 0.3 * index,
            q);
    return new StackAssessment(brief, wiring, LowPassBranch.ofCoil(coil), figures, curves);
  }

  private static double curveDb(double f, double f0, double q, double cornerHz) {
    double r = f / f0;
    double highPass = r * r / Math.hypot(1 - r * r, r / q);
    double x = f / 70;
    double slope = x / Math.sqrt(1 + x * x);
    return 20 * Math.log10(highPass * slope / Math.hypot(1, f / cornerHz));
  }

  /** Collects the worst values over the band. */
  private static final class Worst {
    double square;
    double sum;
    int inBand;
    double excessDb;
    double excessHz = 40;
    double marginDb = 1e9;
    double marginHz;
    Limit marginLimit = Limit.AMPLIFIER;
    double loadOhm = 1e9;
    double loadHz;
    double excursionM;

    void see(
        DesignSpec spec,
        StackBrief brief,
        double f,
        double levelDb,
        double loudestDb,
        Limit limit,
        double ohm,
        double metre) {
      if (ohm < loadOhm) {
        loadOhm = ohm;
        loadHz = f;
      }
      if (f < spec.target().lowCornerHz() || f > spec.target().upperCornerHz()) {
        return;
      }
      double deviation = levelDb - brief.levelDb();
      square += deviation * deviation;
      sum += deviation;
      inBand++;
      excursionM = Math.max(excursionM, metre);
      double excess = Math.abs(deviation) - spec.target().corridorDb();
      if (excess > excessDb) {
        excessDb = excess;
        excessHz = f;
      }
      if (loudestDb - brief.loudestDb() < marginDb) {
        marginDb = loudestDb - brief.loudestDb();
        marginHz = f;
        marginLimit = limit;
      }
    }
  }
}

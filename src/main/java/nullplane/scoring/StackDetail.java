package nullplane.scoring;

import java.util.ArrayList;
import java.util.List;
import nullplane.acoustics.PanelResponse;
import nullplane.driver.Woofer;
import nullplane.network.SeriesCoil;
import nullplane.units.Curve;
import nullplane.units.Levels;

/** Works out the figures and curves of a woofer in one stack, once wiring and coil are chosen. */
final class StackDetail {
  private final StackEvaluator evaluator;
  private final PanelResponse response;
  private final PanelResponse drawn;
  private final DesignSpec spec;
  private final ScoringAxis axis;

  /**
   * @param evaluator the stack's evaluator
   * @param response the panel on the scoring axis, which the figures are read off
   * @param drawn the panel on the axis of the curves
   * @param spec the spec
   * @param axis the scoring axis
   */
  StackDetail(
      StackEvaluator evaluator,
      PanelResponse response,
      PanelResponse drawn,
      DesignSpec spec,
      ScoringAxis axis) {
    this.evaluator = evaluator;
    this.response = response;
    this.drawn = drawn;
    this.spec = spec;
    this.axis = axis;
  }

  StackAssessment assess(
      Woofer woofer, StackEvaluator.Choice choice, StackEvaluator.Workspace space) {
    StackModel model = evaluator.model(choice.wiring);
    SeriesCoil coil = evaluator.coil(choice.coil);
    model.respond(woofer, space.perVolt);
    StackCurves scored = curvesOf(woofer, coil, axis.frequencyHz(), space.perVolt);
    return new StackAssessment(
        evaluator.brief(),
        model.wiring(),
        coil,
        figuresOf(woofer, model.wiring(), coil, choice, scored),
        drawn.equals(response) ? scored : drawnCurves(woofer, model.wiring(), coil));
  }

  private StackCurves drawnCurves(Woofer woofer, Wiring wiring, SeriesCoil coil) {
    StackModel.PerVolt perVolt =
        new StackModel.PerVolt(drawn.frequencyHz().size(), wiring.woofers());
    new StackModel(drawn, wiring).respond(woofer, perVolt);
    return curvesOf(woofer, coil, drawn.frequencyHz(), perVolt);
  }

  private StackCurves curvesOf(
      Woofer woofer, SeriesCoil coil, Curve frequencyHz, StackModel.PerVolt perVolt) {
    int points = frequencyHz.size();
    double[] level = new double[points];
    double[] bare = new double[points];
    double[] loadRe = new double[points];
    double[] loadIm = new double[points];
    double[] excursion = new double[points];
    double[] loudest = new double[points];
    double[] byExcursion = new double[points];
    double[] byHeat = new double[points];
    double[] byAmplifier = new double[points];
    List<Limit> binding = new ArrayList<>();
    double voltage = spec.target().voltageV();
    for (int f = 0; f < points; f++) {
      double omega = 2 * Math.PI * frequencyHz.at(f);
      double passed = StackEvaluator.dividerSquared(omega, f, coil, perVolt);
      double perVoltDb = StackEvaluator.levelOfSquared(perVolt.pressureSquared[f]);
      bare[f] = perVoltDb + Levels.ofAmplitudeRatio(voltage);
      level[f] = bare[f] + Levels.ofPowerRatio(passed);
      loadRe[f] = perVolt.loadRe[f] + coil.resistanceOhm();
      loadIm[f] = perVolt.loadIm[f] + omega * coil.inductanceH();
      excursion[f] = voltage * Math.sqrt(2 * passed * perVolt.excursionSquared[f]);
      byExcursion[f] =
          perVoltDb
              + Levels.ofPowerRatio(
                  woofer.travelM() * woofer.travelM() / (2 * perVolt.excursionSquared[f]));
      byHeat[f] =
          perVoltDb
              + Levels.ofPowerRatio(
                  woofer.powerW() / (woofer.resistanceOhm() * perVolt.currentSquared[f]));
      byAmplifier[f] =
          perVoltDb
              + Levels.ofPowerRatio(passed)
              + Levels.ofAmplitudeRatio(spec.amplifier().voltageV());
      loudest[f] = Math.min(byExcursion[f], Math.min(byHeat[f], byAmplifier[f]));
      binding.add(
          loudest[f] == byExcursion[f]
              ? Limit.EXCURSION
              : loudest[f] == byHeat[f] ? Limit.HEAT : Limit.AMPLIFIER);
    }
    return new StackCurves(
        frequencyHz,
        Curve.of(level),
        Curve.of(bare),
        Curve.of(loadRe),
        Curve.of(loadIm),
        Curve.of(excursion),
        Curve.of(loudest),
        Curve.of(byExcursion),
        Curve.of(byHeat),
        Curve.of(byAmplifier),
        binding);
  }

  private StackFigures figuresOf(
      Woofer woofer,
      Wiring wiring,
      SeriesCoil coil,
      StackEvaluator.Choice choice,
      StackCurves curves) {
    StackBrief brief = evaluator.brief();
    int excessAt = axis.firstInBand();
    int marginAt = axis.firstInBand();
    double mean = 0;
    double bareMean = 0;
    double bareLeast = Double.POSITIVE_INFINITY;
    double bareMost = Double.NEGATIVE_INFINITY;
    for (int f = axis.firstInBand(); f <= axis.lastInBand(); f++) {
      double deviation = curves.levelDb().at(f) - brief.levelDb();
      mean += axis.bandWeights().at(f - axis.firstInBand()) * deviation;
      bareMean += axis.bandWeights().at(f - axis.firstInBand()) * curves.bareLevelDb().at(f);
      bareLeast = Math.min(bareLeast, curves.bareLevelDb().at(f));
      bareMost = Math.max(bareMost, curves.bareLevelDb().at(f));
      if (Math.abs(deviation) > Math.abs(curves.levelDb().at(excessAt) - brief.levelDb())) {
        excessAt = f;
      }
      if (curves.loudestDb().at(f) < curves.loudestDb().at(marginAt)) {
        marginAt = f;
      }
    }
    int loadAt = 0;
    for (int f = 1; f < axis.frequencyHz().size(); f++) {
      if (loadAt(curves, f) < loadAt(curves, loadAt)) {
        loadAt = f;
      }
    }
    PanelResonance resonance =
        PanelResonance.of(
            woofer, response, coil.resistanceOhm() * wiring.strings() / wiring.inSeries());
    return new StackFigures(
        choice.rmsDeviation,
        mean,
        choice.worstExcess,
        axis.frequencyHz().at(excessAt),
        curves.loudestDb().at(marginAt) - brief.loudestDb(),
        axis.frequencyHz().at(marginAt),
        curves.binding().get(marginAt),
        choice.leastLoad,
        axis.frequencyHz().at(loadAt),
        bareMost - bareLeast,
        bareMean - curves.bareLevelDb().at(axis.firstInBand()),
        choice.bend,
        choice.loss,
        choice.travelShare,
        resonance.frequencyHz(),
        resonance.totalQ());
  }

  private static double loadAt(StackCurves curves, int f) {
    return Math.hypot(curves.impedanceReOhm().at(f), curves.impedanceImOhm().at(f));
  }
}

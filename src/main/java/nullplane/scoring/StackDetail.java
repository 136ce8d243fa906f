package nullplane.scoring;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import nullplane.acoustics.PanelResponse;
import nullplane.driver.Woofer;
import nullplane.network.ComplexCurve;
import nullplane.network.MainDriver;
import nullplane.network.MainDriverRows;
import nullplane.network.StackNetwork;
import nullplane.units.Curve;
import nullplane.units.Levels;

/**
 * Works out the figures and curves of a woofer in one stack, once wiring and network are chosen.
 */
final class StackDetail {
  private static final double SLACK = 1e-9;

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

  StackAssessment assess(Woofer woofer, StackChoice choice, StackEvaluator.Workspace space) {
    StackModel model = evaluator.model(choice.wiring);
    StackNetwork network = evaluator.network(choice);
    model.respond(woofer, space.perVolt);
    StackCurves scored = curvesOf(woofer, network, axis.frequencyHz(), space.perVolt);
    StackCurves curves =
        drawn.equals(response) ? scored : drawnCurves(woofer, model.wiring(), network);
    return new StackAssessment(
        evaluator.brief(),
        model.wiring(),
        network,
        figuresOf(woofer, model.wiring(), network, choice, scored),
        curves);
  }

  private StackCurves drawnCurves(Woofer woofer, Wiring wiring, StackNetwork network) {
    StackModel.PerVolt perVolt =
        new StackModel.PerVolt(drawn.frequencyHz().size(), wiring.woofers());
    new StackModel(drawn, wiring).respond(woofer, perVolt);
    return curvesOf(woofer, network, drawn.frequencyHz(), perVolt);
  }

  private StackCurves curvesOf(
      Woofer woofer, StackNetwork network, Curve frequencyHz, StackModel.PerVolt perVolt) {
    int points = frequencyHz.size();
    DrivenNetwork driven = DrivenNetwork.of(network, frequencyHz, perVolt.loadRe, perVolt.loadIm);
    double[] level = new double[points];
    double[] bare = new double[points];
    double[] excursion = new double[points];
    double[] loudest = new double[points];
    double[] byExcursion = new double[points];
    double[] byHeat = new double[points];
    double[] byAmplifier = new double[points];
    List<Limit> binding = new ArrayList<>();
    double voltage = spec.target().voltageV();
    for (int f = 0; f < points; f++) {
      double passed = driven.passed(f);
      double perVoltDb = StackEvaluator.levelOfSquared(perVolt.pressureSquared[f]);
      bare[f] = perVoltDb + Levels.ofAmplitudeRatio(voltage);
      level[f] = bare[f] + Levels.ofPowerRatio(passed);
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
              + (driven.amplifierBehind() ? 0 : Levels.ofPowerRatio(passed))
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
        driven.input().re(),
        driven.input().im(),
        Curve.of(excursion),
        Curve.of(loudest),
        Curve.of(byExcursion),
        Curve.of(byHeat),
        Curve.of(byAmplifier),
        binding,
        evaluator.brief().main().map(main -> sumOf(main, driven, frequencyHz, perVolt)));
  }

  /** The sum with the main driver over the band, which is where that must be known. */
  private SumCurves sumOf(
      MainDriver main, DrivenNetwork driven, Curve frequencyHz, StackModel.PerVolt perVolt) {
    double low = axis.bandHz().at(0) * (1 - SLACK);
    double high = axis.bandHz().at(axis.pointsInBand() - 1) * (1 + SLACK);
    int[] inBand =
        IntStream.range(0, frequencyHz.size())
            .filter(f -> frequencyHz.at(f) >= low && frequencyHz.at(f) <= high)
            .toArray();
    Curve band = Curve.of(Arrays.stream(inBand).mapToDouble(frequencyHz::at).toArray());
    ComplexCurve own = main.pressurePerVolt(band);
    MainDriverRows rows = new MainDriverRows(own);
    double[] mainDb = new double[inBand.length];
    double[] sumDb = new double[inBand.length];
    double[] lead = new double[inBand.length];
    double referenceDb = Levels.ofAmplitudeRatio(spec.target().voltageV());
    for (int b = 0; b < inBand.length; b++) {
      int f = inBand[b];
      double tRe = driven.transfer().re().at(f);
      double tIm = driven.transfer().im().at(f);
      double re = perVolt.pressureRe[f] * tRe - perVolt.pressureIm[f] * tIm;
      double im = perVolt.pressureRe[f] * tIm + perVolt.pressureIm[f] * tRe;
      double mainRe = own.re().at(b);
      double mainIm = own.im().at(b);
      mainDb[b] = StackEvaluator.levelOfSquared(mainRe * mainRe + mainIm * mainIm) + referenceDb;
      sumDb[b] =
          StackEvaluator.levelOfSquared(
                  (mainRe + re) * (mainRe + re) + (mainIm + im) * (mainIm + im))
              + referenceDb;
      lead[b] = rows.phaseLeadRad(b, re, im);
    }
    return new SumCurves(band, Curve.of(mainDb), Curve.of(sumDb), Curve.of(lead));
  }

  private StackFigures figuresOf(
      Woofer woofer, Wiring wiring, StackNetwork network, StackChoice choice, StackCurves curves) {
    StackBrief brief = evaluator.brief();
    int first = axis.firstInBand();
    int excessAt = first;
    int marginAt = first;
    double mean = 0;
    double bareMean = 0;
    double bareLeast = Double.POSITIVE_INFINITY;
    double bareMost = Double.NEGATIVE_INFINITY;
    for (int f = first; f <= axis.lastInBand(); f++) {
      mean += axis.bandWeights().at(f - first) * deviationDb(curves, f);
      if (Math.abs(deviationDb(curves, f)) > Math.abs(deviationDb(curves, excessAt))) {
        excessAt = f;
      }
    }
    for (int f = first; f <= evaluator.lastOutput(); f++) {
      bareMean += evaluator.outputWeight(f - first) * curves.bareLevelDb().at(f);
      bareLeast = Math.min(bareLeast, curves.bareLevelDb().at(f));
      bareMost = Math.max(bareMost, curves.bareLevelDb().at(f));
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
            woofer, response, network.seriesResistanceOhm() * wiring.strings() / wiring.inSeries());
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
        bareMean - curves.bareLevelDb().at(first),
        choice.bend,
        choice.loss,
        choice.travelShare,
        resonance.frequencyHz(),
        resonance.totalQ());
  }

  /** Level minus wanted level on the scoring axis: of the sum, if that is judged (dB). */
  private double deviationDb(StackCurves curves, int f) {
    double level =
        curves.sum().isPresent()
            ? curves.sum().orElseThrow().sumDb().at(f - axis.firstInBand())
            : curves.levelDb().at(f);
    return level - evaluator.wantedDb(f);
  }

  private static double loadAt(StackCurves curves, int f) {
    return Math.hypot(curves.impedanceReOhm().at(f), curves.impedanceImOhm().at(f));
  }
}

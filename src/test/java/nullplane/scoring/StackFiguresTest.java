package nullplane.scoring;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import nullplane.driver.Woofer;
import nullplane.motor.Winding;
import nullplane.network.ActiveBranch;
import nullplane.network.ActiveLimits;
import nullplane.network.FilterAlignment;
import nullplane.network.LowPassBranch;
import nullplane.network.NetworkOffer;
import nullplane.network.SeriesCoil;
import nullplane.network.StackNetwork;
import nullplane.units.Curve;
import nullplane.units.Range;
import org.apache.commons.math3.complex.Complex;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * The figures of a stack against their definitions, worked out point by point: voltage dividers by
 * a library's complex numbers (Ohm's and Kirchhoff's laws), means by the trapezoidal rule in ln f.
 * What the stack does per volt comes from {@link StackModel}, which has its own reference.
 */
class StackFiguresTest {
  private static final Offset<Double> EXACT = within(1e-9);
  private static final GradeWeights WEIGHTS =
      new GradeWeights(1.1, 0.9, 0.6, 0.07, 0.004, 0.12, 0.13, 0.17, 0.55, 0.7);

  private static DesignSpec spec;
  private static ScoringAxis axis;
  private static List<StackAcoustics> acoustics;

  /** The stack of one has an upper corner of its own; both have a slope of second order. */
  @BeforeAll
  static void solvePanels() {
    StackBrief single = WorkshopSpecs.column("single", 0.44, 1.1, 0.13, 75, 90, -0.25);
    StackBrief low = WorkshopSpecs.withCorner(single, 120);
    StackBrief pair = WorkshopSpecs.column("pair", 0.44, 1.5, 0.13, 81, 95, -0.45, 0.45);
    spec =
        new DesignSpec(
            "two corners",
            WorkshopSpecs.brief300(),
            List.of(low, pair),
            new Listening(3, 1),
            new Target(2.5, 40, 200, 1.5, 2),
            new Amplifier(10, 3),
            NetworkOffer.standard(),
            WEIGHTS);
    axis = ScoringAxis.of(spec);
    acoustics = WorkshopSpecs.acoustics(spec, axis);
  }

  private static SystemScorer scorer(NetworkOffer offer) {
    return new SystemScorer(spec.withNetworks(offer), axis, acoustics, WorkshopSpecs.AIR);
  }

  /** What happens at one frequency. */
  private record Point(
      double hz,
      double bareDb,
      double levelDb,
      double wantedDb,
      double passedDb,
      double loudestDb,
      Limit limit,
      double load,
      double travelShare) {}

  private static List<Point> points(StackAssessment stack, int s, Woofer woofer) {
    StackModel.PerVolt perVolt = new StackModel.PerVolt(axis.frequencyHz().size(), 2);
    new StackModel(acoustics.get(s).response(), stack.wiring()).respond(woofer, perVolt);
    List<Point> points = new ArrayList<>();
    for (int f = 0; f < axis.frequencyHz().size(); f++) {
      double hz = axis.frequencyHz().at(f);
      double w = 2 * Math.PI * hz;
      Complex load = new Complex(perVolt.loadRe[f], perVolt.loadIm[f]);
      Complex transfer;
      Complex input = load;
      boolean behind = false;
      if (stack.network() instanceof LowPassBranch passive) {
        Complex across = load;
        if (passive.shunt().isPresent()) {
          double farad = passive.shunt().orElseThrow().capacitor().capacitanceF();
          double damping =
              passive.shunt().orElseThrow().damping().map(r -> r.resistanceOhm()).orElse(0.0);
          Complex shunt = new Complex(damping, -1 / (w * farad));
          across = load.multiply(shunt).divide(load.add(shunt));
        }
        SeriesCoil coil = passive.seriesCoil();
        double resistor = passive.seriesResistor().map(r -> r.resistanceOhm()).orElse(0.0);
        Complex series = new Complex(resistor + coil.resistanceOhm(), w * coil.inductanceH());
        input = across.add(series);
        transfer = across.divide(input);
        assertThat(passive.zobel()).isEmpty();
        assertThat(passive.resonance()).isEmpty();
      } else {
        ActiveBranch active = (ActiveBranch) stack.network();
        var response = active.response(Curve.of(hz));
        transfer = new Complex(response.re().at(0), response.im().at(0));
        behind = true;
      }
      double passedDb = 20 * Math.log10(transfer.abs());
      double perVoltDb = 10 * Math.log10(perVolt.pressureSquared[f] / 4e-10);
      double byTravel =
          20 * Math.log10(woofer.travelM() / Math.sqrt(2 * perVolt.excursionSquared[f]));
      double byHeat =
          10 * Math.log10(woofer.powerW() / woofer.resistanceOhm() / perVolt.currentSquared[f]);
      double byAmplifier = 20 + (behind ? 0 : passedDb); // 10 V
      double least = Math.min(byTravel, Math.min(byHeat, byAmplifier));
      double corner = s == 0 ? 120 : 200;
      points.add(
          new Point(
              hz,
              perVoltDb + 20 * Math.log10(2.5),
              perVoltDb + 20 * Math.log10(2.5) + passedDb,
              (s == 0 ? 75 : 81) - 10 * Math.log10(1 + Math.pow(hz / corner, 4)),
              passedDb,
              perVoltDb + least,
              least == byTravel ? Limit.EXCURSION : least == byHeat ? Limit.HEAT : Limit.AMPLIFIER,
              input.abs(),
              2.5
                  * transfer.abs()
                  * Math.sqrt(2 * perVolt.excursionSquared[f])
                  / woofer.travelM()));
    }
    return points;
  }

  private interface Value {
    double of(Point point);
  }

  /** Mean over ln f between two frequencies by the trapezoidal rule. */
  private static double mean(List<Point> points, double toHz, Value value) {
    double sum = 0;
    double width = 0;
    for (int f = 1; f < points.size(); f++) {
      Point from = points.get(f - 1);
      Point to = points.get(f);
      if (from.hz() >= 40 - 1e-6 && to.hz() <= toHz + 1e-6) {
        double step = Math.log(to.hz() / from.hz());
        sum += step * (value.of(from) + value.of(to)) / 2;
        width += step;
      }
    }
    return sum / width;
  }

  private static List<Point> upTo(List<Point> points, double toHz) {
    return points.stream().filter(p -> p.hz() >= 40 - 1e-6 && p.hz() <= toHz + 1e-6).toList();
  }

  private static double spread(List<Point> points, Value value) {
    double[] values = points.stream().mapToDouble(value::of).toArray();
    return Arrays.stream(values).max().orElseThrow() - Arrays.stream(values).min().orElseThrow();
  }

  private static void figuresAreAsDefined(SystemScorer scorer, Woofer woofer) {
    List<StackAssessment> stacks = scorer.assessInShort(woofer).stacks();
    for (int s = 0; s < stacks.size(); s++) {
      StackAssessment stack = stacks.get(s);
      StackFigures figures = stack.figures();
      List<Point> all = points(stack, s, woofer);
      // the slope is judged up to an octave above the highest corner of all
      List<Point> band = upTo(all, 400);
      List<Point> output = upTo(all, s == 0 ? 120 : 200);
      double outputTop = output.get(output.size() - 1).hz();
      Value deviation = p -> p.levelDb() - p.wantedDb();
      double mean = mean(all, 400, deviation);
      double rms = Math.sqrt(mean(all, 400, p -> Math.pow(p.levelDb() - p.wantedDb(), 2)));
      assertThat(figures.meanDeviationDb()).isCloseTo(mean, EXACT);
      assertThat(figures.rmsDeviationDb()).isCloseTo(rms, EXACT);
      Point farthest =
          band.stream()
              .max((a, b) -> Double.compare(Math.abs(deviation.of(a)), Math.abs(deviation.of(b))))
              .orElseThrow();
      assertThat(figures.worstExcessDb())
          .isCloseTo(Math.max(0, Math.abs(deviation.of(farthest)) - 1.5), EXACT);
      assertThat(figures.worstExcessHz()).isEqualTo(farthest.hz());
      Point weakest =
          output.stream().min((a, b) -> Double.compare(a.loudestDb(), b.loudestDb())).orElseThrow();
      assertThat(figures.outputMarginDb())
          .isCloseTo(weakest.loudestDb() - (s == 0 ? 90 : 95), EXACT);
      assertThat(figures.outputMarginHz()).isEqualTo(weakest.hz());
      assertThat(figures.outputLimit()).isEqualTo(weakest.limit());
      Point heaviest = all.stream().min((a, b) -> Double.compare(a.load(), b.load())).orElseThrow();
      assertThat(figures.leastLoadOhm()).isCloseTo(heaviest.load(), EXACT);
      assertThat(figures.leastLoadHz()).isEqualTo(heaviest.hz());
      assertThat(figures.correctionDb()).isCloseTo(spread(output, Point::bareDb), EXACT);
      assertThat(figures.lowCornerLiftDb())
          .isCloseTo(mean(all, outputTop, Point::bareDb) - output.get(0).bareDb(), EXACT);
      assertThat(figures.networkBendDb()).isCloseTo(spread(output, Point::passedDb), EXACT);
      assertThat(figures.travelShare())
          .isCloseTo(output.stream().mapToDouble(Point::travelShare).max().orElseThrow(), EXACT);
      double passed = mean(all, outputTop, Point::passedDb);
      if (stack.network() instanceof ActiveBranch active) {
        // the gain brings the mean over the output band to the wanted level, in steps of half a
        // decibel
        assertThat(figures.levelLossDb()).isCloseTo(20 * Math.log10(active.gain()) - passed, EXACT);
        double off = mean(all, outputTop, deviation);
        boolean atAnEnd = active.gain() > 1.99 || active.gain() < 0.51;
        if (!atAnEnd) {
          assertThat(Math.abs(off)).isLessThanOrEqualTo(0.25 + 1e-9);
        }
      } else {
        assertThat(figures.levelLossDb()).isCloseTo(-passed, EXACT);
      }
    }
  }

  private static Woofer woofer(Random random) {
    return WorkshopSpecs.woofer(
        WorkshopSpecs.brief300(),
        24 + 16 * random.nextDouble(),
        0.4 + random.nextDouble(),
        0.04 + 0.05 * random.nextDouble(),
        0.003 + 0.009 * random.nextDouble());
  }

  /** Each of the three limits ends the level of some stack. */
  private static void figuresAreAsDefinedAtEveryLimit(SystemScorer scorer, Woofer woofer) {
    Woofer faint = WorkshopSpecs.limited(woofer, 0.05, 0.4);
    Woofer sturdy = WorkshopSpecs.limited(woofer, 0.05, 400);
    figuresAreAsDefined(scorer, faint);
    figuresAreAsDefined(scorer, sturdy);
    assertThat(scorer.assessInShort(faint).stacks())
        .anyMatch(stack -> stack.figures().outputLimit() == Limit.HEAT);
    assertThat(scorer.assessInShort(sturdy).stacks())
        .anyMatch(stack -> stack.figures().outputLimit() == Limit.AMPLIFIER);
  }

  @Test
  void figuresWithPassivePartsAreAsDefined() {
    SystemScorer scorer = scorer(NetworkOffer.standard());
    Random random = new Random(3);
    for (int i = 0; i < 8; i++) {
      figuresAreAsDefined(scorer, woofer(random));
    }
    figuresAreAsDefinedAtEveryLimit(scorer, woofer(random));
  }

  @Test
  void figuresWithAFilterAreAsDefined() {
    SystemScorer scorer =
        scorer(
            new NetworkOffer.Active(
                new ActiveLimits(
                    new Range(0.5, 2),
                    List.of(FilterAlignment.values()[0]),
                    new Range(90, 300),
                    new Range(30, 90),
                    new Range(0.7, 2),
                    new Range(0.7, 2))));
    Random random = new Random(4);
    for (int i = 0; i < 4; i++) {
      figuresAreAsDefined(scorer, woofer(random));
    }
    figuresAreAsDefinedAtEveryLimit(scorer, woofer(random));
  }

  /** Objectives by their definitions, and no choice of networks costs less than the best. */
  @Test
  void scoresAreMadeOfTheWorstStacksFigures() {
    SystemScorer scorer = scorer(NetworkOffer.standard());
    SystemScorer.Workspace space = scorer.newWorkspace();
    Random random = new Random(5);
    List<Winding> windings = scorer.windings().windings();
    List<Integer> choices = scorer.networkChoices();
    for (int i = 0; i < 6; i++) {
      Winding winding = windings.get(random.nextInt(windings.size()));
      Woofer woofer =
          spec.woofer().woofer("w", 30 + 8 * i / 5.0, 0.9, 0.07, winding, WorkshopSpecs.AIR);
      Assessment best = scorer.assess(woofer, winding);
      FamilyScore score = scorer.score(woofer, winding, space);
      assertThat(score.grade())
          .isEqualTo(best.grade())
          .isEqualTo(scorer.grade(woofer, winding, space));
      List<StackNetwork> networks = scorer.networks(space);
      double shape = 0;
      double outside = 0;
      double margin = Double.POSITIVE_INFINITY;
      double correction = 0;
      double material = 0;
      for (int s = 0; s < 2; s++) {
        StackAssessment stack = best.stacks().get(s);
        StackFigures figures = stack.figures();
        assertThat(networks.get(s)).isEqualTo(stack.network());
        assertThat(scorer.wirings(space).get(s)).isEqualTo(stack.wiring());
        shape = Math.max(shape, 1.1 * figures.rmsDeviationDb() + 0.9 * figures.worstExcessDb());
        outside = Math.max(outside, figures.worstExcessDb());
        margin = Math.min(margin, figures.outputMarginDb());
        correction =
            Math.max(
                correction,
                0.07 * (figures.networkBendDb() + Math.max(0, figures.levelLossDb()))
                    + 0.13 * stack.network().partCount());
        material =
            Math.max(
                material,
                0.17 * stack.network().copperKg() + 0.55 * 1e3 * stack.network().capacitanceF());
      }
      assertThat(score.shapeDb()).isCloseTo(shape, EXACT);
      assertThat(score.outsideDb()).isCloseTo(outside, EXACT);
      assertThat(score.outputMarginDb()).isCloseTo(margin, EXACT);
      assertThat(score.correctionDb()).isCloseTo(correction, EXACT);
      // woofer and magnet cost the same whatever the networks
      double rest = score.materialDb() - material;
      assertThat(rest).isPositive();

      for (int draw = 0; draw < 40; draw++) {
        double[] shares = random.doubles(choices.size() + 1).toArray();
        FamilyScore other = scorer.score(woofer, winding, shares, 1, space);
        assertThat(other.grade()).isGreaterThanOrEqualTo(score.grade());
        // one wiring for the single; two for the pair, all in parallel first
        int wiring = shares[1 + choices.size() / 2] < 0.5 ? 2 : 1;
        assertThat(scorer.wirings(space))
            .containsExactly(new Wiring(1, 1), new Wiring(wiring, 2 / wiring));
        double others =
            scorer.networks(space).stream()
                .mapToDouble(n -> 0.17 * n.copperKg() + 0.55 * 1e3 * n.capacitanceF())
                .max()
                .orElseThrow();
        assertThat(other.materialDb()).isCloseTo(rest + others, EXACT);
      }
    }
  }

  /**
   * What each figure costs by the weights above: 0.7 of the stack that costs most and 0.3 of the
   * mean of both (by definition of the grade).
   */
  @Test
  void partsOfTheGradeAreWeightsTimesFigures() {
    SystemScorer scorer = scorer(NetworkOffer.standard());
    Random random = new Random(9);
    for (int i = 0; i < 6; i++) {
      Assessment assessment = scorer.assess(woofer(random));
      double[][] costs = new double[2][];
      for (int s = 0; s < 2; s++) {
        StackAssessment stack = assessment.stacks().get(s);
        StackFigures figures = stack.figures();
        costs[s] =
            new double[] {
              1.1 * figures.rmsDeviationDb(),
              0.9 * figures.worstExcessDb(),
              0.6 * Math.max(0, -figures.outputMarginDb()),
              0.07 * (figures.networkBendDb() + Math.max(0, figures.levelLossDb())),
              0.13 * stack.network().partCount(),
              0.17 * stack.network().copperKg(),
              0.55 * stack.network().capacitanceF() * 1e3
            };
      }
      int worst = Arrays.stream(costs[0]).sum() > Arrays.stream(costs[1]).sum() ? 0 : 1;
      StackAssessment dear = assessment.stacks().get(worst);
      List<GradePart> parts = assessment.parts();
      for (int p = 0; p < 7; p++) {
        assertThat(parts.get(p).cost())
            .as(parts.get(p).name())
            .isCloseTo(0.7 * costs[worst][p] + 0.3 * (costs[0][p] + costs[1][p]) / 2, EXACT);
      }
      assertThat(parts.get(3).value())
          .isCloseTo(
              dear.figures().networkBendDb() + Math.max(0, dear.figures().levelLossDb()), EXACT);
      assertThat(parts.get(5).value()).isCloseTo(1e3 * dear.network().copperKg(), EXACT);
      assertThat(parts.get(6).value()).isCloseTo(1e6 * dear.network().capacitanceF(), EXACT);
      assertThat(parts.get(7).value()).isCloseTo(1e3 * assessment.budget().coilMassKg(), EXACT);
      assertThat(parts.get(7).cost())
          .isCloseTo(0.004 * 1e3 * assessment.budget().coilMassKg(), EXACT);
    }
  }

  /** Without a network the level is that of the bare stack. */
  @Test
  void bareLevelsAreThoseWithoutANetwork() {
    SystemScorer scorer = scorer(NetworkOffer.standard());
    Woofer woofer = woofer(new Random(6));
    List<StackAssessment> stacks = scorer.assessInShort(woofer).stacks();
    List<Curve> bare =
        scorer.bareLevels(
            woofer, stacks.stream().map(s -> s.wiring()).toList(), scorer.newWorkspace());
    for (int s = 0; s < 2; s++) {
      List<Point> points = points(stacks.get(s), s, woofer);
      for (int f = 0; f < points.size(); f++) {
        assertThat(bare.get(s).at(f)).isCloseTo(points.get(f).bareDb(), EXACT);
      }
    }
  }

  /** A Butterworth low-pass of order n is 3.01 dB down at its corner and 6n dB per octave above. */
  @Test
  void theWantedSlopeIsButterworths() {
    for (int order = 1; order <= 4; order++) {
      Target target = new Target(2.83, 40, 200, 2, order);
      assertThat(target.slopeDb(200, 200)).isCloseTo(-3.0103, within(1e-4));
      double octave = target.slopeDb(200, 3200) - target.slopeDb(200, 6400);
      assertThat(octave).isCloseTo(6.0206 * order, within(0.02));
      assertThat(target.slopeDb(100, 20)).isGreaterThan(-0.2);
    }
    assertThat(new Target(2.83, 40, 200, 2).slopeDb(200, 400)).isZero();
  }
}

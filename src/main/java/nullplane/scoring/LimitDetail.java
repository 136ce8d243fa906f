package nullplane.scoring;

import java.util.List;
import java.util.OptionalDouble;
import nullplane.acoustics.PanelResponse;
import nullplane.driver.CoilHeating;
import nullplane.driver.RatedImpedance;
import nullplane.driver.TravelCriteria;
import nullplane.driver.Woofer;
import nullplane.network.StackNetwork;
import nullplane.units.ConductorMaterial;
import nullplane.units.Curve;
import nullplane.units.Levels;

/**
 * Works out what holds a woofer back in one stack: heat, load, signals below the band, programme.
 *
 * <p>Symbols: V root-mean-square voltage at the amplifier, x peak excursion, P heat in the hottest
 * coil, dT its rise, k crest factor, S power of a programme per log frequency with an integral of
 * 1, X, I excursion and current per volt.
 *
 * <p>Source: steady heat balance dT = Rth V^2 Re(dT) integral S |I(dT)|^2; x = k V sqrt(integral S
 * |X|^2); second-order Butterworth high-pass |H|^2 = 1/(1 + (fc/f)^4), so that x|H| = travel at fc
 * = f ((x/travel)^2 - 1)^(1/4). The peak of an excursion taken as k times its root mean square is
 * an assumption: a resonance makes the peaks of clipped noise higher against their mean, and those
 * of music depend on the piece. Linear throughout: a real suspension stiffens near its travel.
 */
final class LimitDetail {
  /**
   * Rise that a coil may reach in the long term, 200 degrees C less 20 (K). Common practice for
   * polyimide or glass formers, without a source.
   */
  static final double LIMIT_RISE_K = 180;

  private static final double RISE_TOLERANCE = 1e-9;
  private static final int STEPS = 200;

  /** Rounding that frequencies and shares are forgiven (1). */
  private static final double SLACK = 1e-9;

  private final DesignSpec spec;
  private final StackBrief brief;
  private final Woofer woofer;
  private final ConductorMaterial wire;
  private final PanelResponse panel;
  private final double seriesOhm;
  private final double directCurrentOhm;
  private final double thermalResistance;
  private final DrivenStack stack;
  private final double[] frequencyHz;
  private final DrivenStack.PerVolt cold;
  private final int firstDrawn;
  private final int drawnPoints;

  /**
   * @param spec the spec
   * @param brief the stack
   * @param wiring its wiring
   * @param network its network
   * @param woofer the woofer
   * @param wire what its coil is wound from
   * @param panel the panel on the scoring axis, which resonances are read off
   * @param drawn the panel on the axis of the curves
   */
  LimitDetail(
      DesignSpec spec,
      StackBrief brief,
      Wiring wiring,
      StackNetwork network,
      Woofer woofer,
      ConductorMaterial wire,
      PanelResponse panel,
      PanelResponse drawn) {
    this.spec = spec;
    this.brief = brief;
    this.woofer = woofer;
    this.wire = wire;
    this.panel = panel;
    double stringsPerWoofer = (double) wiring.strings() / wiring.inSeries();
    this.seriesOhm = network.seriesResistanceOhm() * stringsPerWoofer;
    this.directCurrentOhm =
        woofer.resistanceOhm() / stringsPerWoofer + network.seriesResistanceOhm();
    this.thermalResistance = CoilHeating.thermalResistanceKPerW(woofer.powerW(), LIMIT_RISE_K);
    this.stack = new DrivenStack(drawn, wiring, network);
    this.frequencyHz = stack.frequencyHz();
    this.cold = stack.respond(woofer);
    this.drawnPoints = drawn.frequencyHz().size();
    this.firstDrawn = stack.firstSolved();
  }

  /**
   * Returns the study.
   *
   * @param leastLoadOhm least load over the scoring axis, network in place (ohm)
   * @param windingHeightM height of the winding (m)
   * @param gapHeightM height of the gap (m)
   * @param programmes what to play
   */
  LimitStudy study(
      double leastLoadOhm,
      double windingHeightM,
      double gapHeightM,
      List<ProgrammeSpectrum> programmes) {
    DrivenStack.PerVolt hot = stack.respond(warm(LIMIT_RISE_K));
    double[] hotLevel = new double[drawnPoints];
    for (int f = 0; f < drawnPoints; f++) {
      hotLevel[f] =
          StackEvaluator.levelOfSquared(hot.pressureSquared[firstDrawn + f])
              + Levels.ofAmplitudeRatio(spec.target().voltageV());
    }
    double full = spec.amplifier().voltageV();
    return new LimitStudy(
        LIMIT_RISE_K,
        thermalResistance,
        stateAt(0),
        stateAt(LIMIT_RISE_K),
        load(leastLoadOhm),
        demand(full),
        demand(Math.min(full, bandVoltage())),
        programmes.stream().map(this::programme).toList(),
        TravelCriteria.of(windingHeightM, gapHeightM),
        Curve.of(hotLevel));
  }

  private Woofer warm(double riseK) {
    return CoilHeating.warm(woofer, riseK, wire);
  }

  // Heat.

  private LimitStudy.HeatState stateAt(double riseK) {
    Woofer warm = warm(riseK);
    DrivenStack.PerVolt now = stack.respond(warm);
    double[] lossDb = new double[frequencyHz.length];
    for (int f = 0; f < lossDb.length; f++) {
      lossDb[f] = Levels.ofPowerRatio(cold.pressureSquared[f] / now.pressureSquared[f]);
    }
    PanelResonance resonance = PanelResonance.of(warm, panel, seriesOhm);
    double omega = 2 * Math.PI * resonance.frequencyHz();
    double bl = warm.forceFactorTm();
    return new LimitStudy.HeatState(
        riseK / thermalResistance,
        riseK,
        warm.resistanceOhm(),
        CoilHeating.levelLossDb(riseK, wire),
        bandMean(lossDb),
        at(spec.target().lowCornerHz(), lossDb),
        omega
            * (warm.bareMassKg() + resonance.airMassKg())
            * (warm.resistanceOhm() + seriesOhm)
            / (bl * bl),
        resonance.totalQ());
  }

  /** Heat per squared volt that a programme makes in the hottest coil (W/V^2). */
  private double heatPerSquaredVolt(double[] weights, double riseK) {
    Woofer warm = warm(riseK);
    return warm.resistanceOhm() * sum(weights, stack.respond(warm).currentSquared);
  }

  /**
   * Rise at which heat in equals heat out at a constant voltage (K), by the method of false
   * position with the kept end halved (M. Dowell and P. Jarratt, BIT 11 (1971) 168). There always
   * is one: the heat goes to nothing as Re grows.
   */
  private double steadyRise(double[] weights, double voltageV) {
    double scale = thermalResistance * voltageV * voltageV;
    double low = 0;
    double atLow = scale * heatPerSquaredVolt(weights, 0);
    double high = atLow;
    double atHigh = scale * heatPerSquaredVolt(weights, high) - high;
    while (atHigh > 0) {
      low = high;
      atLow = atHigh;
      high *= 2;
      atHigh = scale * heatPerSquaredVolt(weights, high) - high;
    }
    int keptSide = 0;
    double middle = high;
    for (int i = 0; i < STEPS && high - low > RISE_TOLERANCE * high; i++) {
      middle = (low * atHigh - high * atLow) / (atHigh - atLow);
      double atMiddle = scale * heatPerSquaredVolt(weights, middle) - middle;
      if (Math.abs(atMiddle) <= RISE_TOLERANCE * middle) {
        return middle;
      }
      if (atMiddle > 0) {
        low = middle;
        atLow = atMiddle;
        atHigh = keptSide == 1 ? atHigh / 2 : atHigh;
        keptSide = 1;
      } else {
        high = middle;
        atHigh = atMiddle;
        atLow = keptSide == -1 ? atLow / 2 : atLow;
        keptSide = -1;
      }
    }
    return middle;
  }

  // Amplifier.

  private LimitStudy.LoadMargin load(double leastLoadOhm) {
    double margin = Double.POSITIVE_INFINITY;
    for (int f = 0; f < frequencyHz.length; f++) {
      if (inBand(f)) {
        margin =
            Math.min(
                margin,
                StackEvaluator.levelOfSquared(cold.pressureSquared[f])
                    + Levels.ofAmplitudeRatio(spec.amplifier().voltageV())
                    - brief.loudestDb());
      }
    }
    return new LimitStudy.LoadMargin(
        leastLoadOhm,
        spec.amplifier().lowestLoadOhm(),
        directCurrentOhm,
        RatedImpedance.highestRatedOhm(leastLoadOhm),
        RatedImpedance.highestUsualOhm(leastLoadOhm),
        Math.sqrt(2) * spec.amplifier().voltageV() / leastLoadOhm,
        margin);
  }

  // Below the band.

  /** Peak excursion over travel for a sine of a volt (1/V). */
  private double sharePerVolt(int f) {
    return Math.sqrt(2 * cold.excursionSquared[f]) / woofer.travelM();
  }

  /** Voltage at which a sine in the band brings a cone to its travel (V). */
  private double bandVoltage() {
    double least = Double.POSITIVE_INFINITY;
    for (int f = 0; f < frequencyHz.length; f++) {
      if (inBand(f)) {
        least = Math.min(least, 1 / sharePerVolt(f));
      }
    }
    return least;
  }

  private LimitStudy.SubsonicDemand demand(double voltageV) {
    double low = spec.target().lowCornerHz();
    OptionalDouble beyond = OptionalDouble.empty();
    double greatest = 0;
    double greatestHz = low;
    double highPass = 0;
    for (int f = 0; f < frequencyHz.length; f++) {
      double share = voltageV * sharePerVolt(f);
      if (share > 1 + SLACK) {
        beyond = OptionalDouble.of(crossing(f, voltageV));
      }
      if (frequencyHz[f] > low * (1 + SLACK)) {
        continue;
      }
      if (share > greatest) {
        greatest = share;
        greatestHz = frequencyHz[f];
      }
      if (share > 1 + SLACK) {
        highPass = Math.max(highPass, frequencyHz[f] * Math.pow(share * share - 1, 0.25));
      }
    }
    return new LimitStudy.SubsonicDemand(
        voltageV,
        beyond,
        greatest,
        greatestHz,
        highPass > 0 ? OptionalDouble.of(highPass) : OptionalDouble.empty(),
        Levels.ofPowerRatio(1 / highPassSquared(highPass, low)));
  }

  /** Where the share falls to 1 after a point, straight in log-log between points (Hz). */
  private double crossing(int f, double voltageV) {
    if (f + 1 == frequencyHz.length) {
      return frequencyHz[f];
    }
    double here = Math.log(voltageV * sharePerVolt(f));
    double next = Math.log(voltageV * sharePerVolt(f + 1));
    double way = next < here ? Math.min(1, here / (here - next)) : 1;
    return frequencyHz[f] * Math.pow(frequencyHz[f + 1] / frequencyHz[f], way);
  }

  /** Squared modulus of a second-order Butterworth high-pass (1). */
  private static double highPassSquared(double cornerHz, double frequencyHz) {
    double ratio = cornerHz / frequencyHz;
    return 1 / (1 + ratio * ratio * ratio * ratio);
  }

  // Programme.

  private LimitStudy.ProgrammeLevel programme(ProgrammeSpectrum programme) {
    double[] everywhere =
        programme.weights(frequencyHz, frequencyHz[0], frequencyHz[frequencyHz.length - 1]);
    double upper = spec.upperCornerHz(brief);
    double[] toCorner = programme.weights(frequencyHz, frequencyHz[0], upper);
    double crest = programme.crestFactor();
    double byAmplifier = Math.sqrt(2) * spec.amplifier().voltageV() / crest;
    double peakPerVolt = crest * Math.sqrt(sum(everywhere, cold.excursionSquared));
    double byExcursion = woofer.travelM() / peakPerVolt;
    double byHeat = Math.sqrt(woofer.powerW() / heatPerSquaredVolt(everywhere, LIMIT_RISE_K));
    double voltage = Math.min(byAmplifier, Math.min(byExcursion, byHeat));
    Limit binding =
        voltage == byExcursion ? Limit.EXCURSION : voltage == byHeat ? Limit.HEAT : Limit.AMPLIFIER;
    double squared = sum(toCorner, cold.pressureSquared);
    LimitStudy.HeatState full = stateAt(steadyRise(everywhere, byAmplifier));
    LimitStudy.HeatState settled =
        binding == Limit.AMPLIFIER ? full : stateAt(steadyRise(everywhere, voltage));
    double warmSquared = sum(toCorner, stack.respond(warm(settled.riseK())).pressureSquared);
    double mainPerVolt =
        Levels.REFERENCE_PRESSURE_PA
            * Math.pow(10, brief.levelDb() / 20)
            / spec.target().voltageV();
    double above = programme.shareBetween(upper, Double.POSITIVE_INFINITY);
    return new LimitStudy.ProgrammeLevel(
        programme.name(),
        crest,
        byAmplifier,
        byExcursion,
        byHeat,
        binding,
        voltage,
        levelAt(voltage, squared),
        levelAt(voltage, warmSquared),
        levelAt(voltage, squared + above * mainPerVolt * mainPerVolt),
        settled,
        full,
        byAmplifier / byExcursion,
        programmeHighPass(everywhere, woofer.travelM() / (crest * byAmplifier)));
  }

  /** Lowest corner that brings the excursion per volt down to what is allowed; see the record. */
  private OptionalDouble programmeHighPass(double[] weights, double allowedM) {
    if (filteredExcursion(weights, 0) <= allowedM) {
      return OptionalDouble.of(0);
    }
    double low = 0;
    double high = spec.target().lowCornerHz();
    if (filteredExcursion(weights, high) > allowedM) {
      return OptionalDouble.empty();
    }
    while (high - low > RISE_TOLERANCE * high) {
      double middle = (low + high) / 2;
      if (filteredExcursion(weights, middle) > allowedM) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return OptionalDouble.of(high);
  }

  private double filteredExcursion(double[] weights, double cornerHz) {
    double sum = 0;
    for (int f = 0; f < weights.length; f++) {
      sum += weights[f] * cold.excursionSquared[f] * highPassSquared(cornerHz, frequencyHz[f]);
    }
    return Math.sqrt(sum);
  }

  private static double levelAt(double voltageV, double squaredPerVolt) {
    return StackEvaluator.levelOfSquared(squaredPerVolt) + Levels.ofAmplitudeRatio(voltageV);
  }

  private static double sum(double[] weights, double[] values) {
    double sum = 0;
    for (int f = 0; f < weights.length; f++) {
      sum += weights[f] * values[f];
    }
    return sum;
  }

  // Reading curves.

  private boolean inBand(int f) {
    return frequencyHz[f] >= spec.target().lowCornerHz() * (1 - SLACK)
        && frequencyHz[f] <= spec.upperCornerHz(brief) * (1 + SLACK);
  }

  /** Mean over the band and log frequency, straight between the points that lie in it. */
  private double bandMean(double[] values) {
    double sum = 0;
    double width = 0;
    for (int f = 0; f + 1 < frequencyHz.length; f++) {
      if (inBand(f) && inBand(f + 1)) {
        double step = Math.log(frequencyHz[f + 1] / frequencyHz[f]);
        sum += step * (values[f] + values[f + 1]) / 2;
        width += step;
      }
    }
    return sum / width;
  }

  /** Value at a frequency, straight between points over log frequency. */
  private double at(double wantedHz, double[] values) {
    int right = 1;
    while (right + 1 < frequencyHz.length && frequencyHz[right] < wantedHz) {
      right++;
    }
    double way =
        Math.log(wantedHz / frequencyHz[right - 1])
            / Math.log(frequencyHz[right] / frequencyHz[right - 1]);
    return values[right - 1] + way * (values[right] - values[right - 1]);
  }
}

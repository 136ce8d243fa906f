package nullplane.scoring;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.List;
import nullplane.driver.CoilHeating;
import nullplane.driver.Woofer;
import nullplane.network.LowPassBranch;
import nullplane.network.SeriesCoil;
import nullplane.network.StackNetwork;
import nullplane.units.ConductorMaterial;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * Limits against their definitions: each figure is put back into the condition that it has to meet.
 * What a stack does per volt comes from {@link DrivenStack}.
 */
class LimitDefinitionsTest {
  private static final double FULL_V = 28;
  private static final List<ProgrammeSpectrum> PROGRAMMES =
      List.of(ProgrammeSpectrum.MUSIC, ProgrammeSpectrum.TEST_NOISE);
  private static final Woofer WEAK =
      WorkshopSpecs.woofer(WorkshopSpecs.brief300(), 30, 0.9, 0.06, 0.004);
  private static final Woofer STRONG =
      WorkshopSpecs.woofer(WorkshopSpecs.brief300(), 36, 0.6, 0.06, 0.04);
  private static final StackNetwork COIL = LowPassBranch.ofCoil(new SeriesCoil(0.002, 0.7, 0.5));
  private static final Wiring SERIES = new Wiring(1, 2);

  private static DesignSpec spec;
  private static StackAcoustics pair;

  @BeforeAll
  static void solve() {
    spec = WorkshopSpecs.singleAndPair();
    pair = WorkshopSpecs.acoustics(spec, ScoringAxis.of(spec)).get(1);
  }

  private static LimitStudy study(Woofer woofer) {
    return new LimitDetail(
            spec,
            pair.brief(),
            SERIES,
            COIL,
            woofer,
            ConductorMaterial.COPPER,
            pair.response(),
            pair.response())
        .study(10, 0.02, 0.008, PROGRAMMES);
  }

  private static DrivenStack stack() {
    return new DrivenStack(pair.response(), SERIES, COIL);
  }

  private static DrivenStack.PerVolt at(Woofer woofer, double riseK) {
    return stack().respond(CoilHeating.warm(woofer, riseK, ConductorMaterial.COPPER));
  }

  private static double sum(double[] weights, double[] values) {
    double sum = 0;
    for (int f = 0; f < weights.length; f++) {
      sum += weights[f] * values[f];
    }
    return sum;
  }

  private static double levelDb(double squaredPa) {
    return 10 * Math.log10(squaredPa / 4e-10);
  }

  /**
   * Qes = sqrt(Kms M) (Re + R)/Bl^2 with M = Kms/w0^2 (Small 1972); half of the one coil's 0.7 ohm
   * belongs to each of two woofers in series.
   */
  @Test
  void qualitiesAreSmalls() {
    for (LimitStudy.HeatState state : List.of(study(WEAK).cold(), study(WEAK).rated())) {
      PanelResonance resonance =
          PanelResonance.of(
              CoilHeating.warm(WEAK, state.riseK(), ConductorMaterial.COPPER),
              pair.response(),
              0.35);
      double w0 = 2 * Math.PI * resonance.frequencyHz();
      double bl = WEAK.forceFactorTm();
      assertThat(state.panelElectricalQ())
          .isCloseTo(
              WEAK.stiffnessNPerM() / w0 * (state.resistanceOhm() + 0.35) / (bl * bl),
              withinPercentage(1e-6));
      assertThat(state.panelTotalQ()).isEqualTo(resonance.totalQ());
    }
  }

  /** Ohm's law: two coils and the network's in series; the peak of a sine into the least load. */
  @Test
  void theLoadIsOhmsLaw() {
    LimitStudy.LoadMargin load = study(WEAK).load();
    assertThat(load.directCurrentOhm()).isCloseTo(2 * 5.6 + 0.7, within(1e-12));
    assertThat(load.peakCurrentA()).isCloseTo(1.41421356 * 28 / 10, within(1e-6));
    double margin = Double.POSITIVE_INFINITY;
    double[] hz = stack().frequencyHz();
    DrivenStack.PerVolt cold = at(WEAK, 0);
    for (int f = 0; f < hz.length; f++) {
      if (hz[f] > 39.9 && hz[f] < 200.1) {
        margin = Math.min(margin, levelDb(cold.pressureSquared[f] * FULL_V * FULL_V) - 92);
      }
    }
    assertThat(load.voltageMarginDb()).isCloseTo(margin, within(1e-9));
  }

  /** The mean over ln f by the trapezoidal rule, and what is lost at the low corner itself. */
  @Test
  void lossesAreThoseOfTheWarmStack() {
    LimitStudy.HeatState rated = study(WEAK).rated();
    double[] hz = stack().frequencyHz();
    DrivenStack.PerVolt cold = at(WEAK, 0);
    DrivenStack.PerVolt warm = at(WEAK, 180);
    double sum = 0;
    double width = 0;
    for (int f = 1; f < hz.length; f++) {
      double before = 10 * Math.log10(cold.pressureSquared[f - 1] / warm.pressureSquared[f - 1]);
      double here = 10 * Math.log10(cold.pressureSquared[f] / warm.pressureSquared[f]);
      if (hz[f - 1] > 39.9 && hz[f] < 200.1) {
        double step = Math.log(hz[f] / hz[f - 1]);
        sum += step * (before + here) / 2;
        width += step;
      }
      if (Math.abs(hz[f] - 40) < 1e-6) {
        assertThat(rated.lowCornerLossDb()).isCloseTo(here, within(1e-9));
      }
    }
    assertThat(rated.bandLossDb()).isCloseTo(sum / width, within(1e-9));
    // at rated power the coil has the limit's rise, by the definition of the thermal resistance
    assertThat(rated.heatW()).isCloseTo(150, within(1e-9));
    double[] drawn = study(WEAK).hotLevelDb().toArray();
    int first = stack().firstSolved();
    for (int f = 0; f < drawn.length; f++) {
      assertThat(drawn[f])
          .isCloseTo(levelDb(2.83 * 2.83 * warm.pressureSquared[first + f]), within(1e-9));
    }
  }

  /** Heat in is heat out: rise = Rth V^2 Re sum of S |I|^2, Re and I at that rise. */
  @Test
  void theSettledCoilIsInBalance() {
    for (Woofer woofer : List.of(WEAK, STRONG)) {
      LimitStudy study = study(woofer);
      double[] hz = stack().frequencyHz();
      for (int p = 0; p < PROGRAMMES.size(); p++) {
        LimitStudy.ProgrammeLevel programme = study.programmes().get(p);
        ProgrammeSpectrum spectrum = PROGRAMMES.get(p);
        double[] weights = spectrum.weights(hz, hz[0], hz[hz.length - 1]);
        balances(woofer, study, weights, programme.voltageV(), programme.settled());
        balances(woofer, study, weights, programme.amplifierVoltageV(), programme.atFullVoltage());
        // the voltage by heat is that at which the rise is the limit's
        double heat =
            CoilHeating.warm(woofer, 180, ConductorMaterial.COPPER).resistanceOhm()
                * sum(weights, at(woofer, 180).currentSquared);
        double byHeat = programme.heatVoltageV();
        assertThat(byHeat * byHeat * heat).isCloseTo(150, withinPercentage(1e-6));
        LimitStudy.HeatState settled = programme.settled();
        assertThat(settled.heatW() * study.thermalResistanceKPerW())
            .isCloseTo(settled.riseK(), withinPercentage(1e-9));
      }
    }
  }

  private static void balances(
      Woofer woofer,
      LimitStudy study,
      double[] weights,
      double voltageV,
      LimitStudy.HeatState state) {
    double heat =
        voltageV
            * voltageV
            * state.resistanceOhm()
            * sum(weights, at(woofer, state.riseK()).currentSquared);
    assertThat(study.thermalResistanceKPerW() * heat)
        .isCloseTo(state.riseK(), withinPercentage(1e-6));
  }

  /**
   * Peaks are the crest factor times the root mean square; whole is woofers below the corner and a
   * main driver at the wanted level above (81 dB at 2.83 V).
   */
  @Test
  void programmesAreWeightedSums() {
    double[] hz = stack().frequencyHz();
    DrivenStack.PerVolt cold = at(WEAK, 0);
    LimitStudy.ProgrammeLevel programme = study(WEAK).programmes().get(0);
    ProgrammeSpectrum music = ProgrammeSpectrum.MUSIC;
    double crest = music.crestFactor();
    double[] all = music.weights(hz, hz[0], hz[hz.length - 1]);
    double[] low = music.weights(hz, hz[0], 200);
    assertThat(programme.amplifierVoltageV()).isCloseTo(FULL_V * 1.41421356 / crest, within(1e-6));
    assertThat(programme.excursionVoltageV() * crest * Math.sqrt(sum(all, cold.excursionSquared)))
        .isCloseTo(0.004, within(1e-12));
    double volt = programme.voltageV();
    assertThat(programme.wooferBandDb())
        .isCloseTo(levelDb(volt * volt * sum(low, cold.pressureSquared)), within(1e-9));
    DrivenStack.PerVolt warm = at(WEAK, programme.settled().riseK());
    assertThat(programme.warmWooferBandDb())
        .isCloseTo(levelDb(volt * volt * sum(low, warm.pressureSquared)), within(1e-9));
    double main = 2e-5 * Math.pow(10, 81 / 20.0) / 2.83;
    double above = music.shareBetween(200, 1e9);
    assertThat(programme.wholeDb())
        .isCloseTo(
            levelDb(volt * volt * (sum(low, cold.pressureSquared) + above * main * main)),
            within(1e-9));
    assertThat(programme.excursionShare())
        .isCloseTo(programme.amplifierVoltageV() / programme.excursionVoltageV(), within(1e-12));
    assertThat(programme.binding()).isEqualTo(Limit.AMPLIFIER);
    assertThat(volt).isEqualTo(programme.amplifierVoltageV());
  }

  /** The least of the three voltages binds. */
  @Test
  void shortTravelAndLittlePowerBind() {
    Woofer shallow = WorkshopSpecs.woofer(WorkshopSpecs.brief300(), 30, 0.9, 0.06, 0.0005);
    LimitStudy.ProgrammeLevel byCone = study(shallow).programmes().get(0);
    assertThat(byCone.binding()).isEqualTo(Limit.EXCURSION);
    assertThat(byCone.voltageV())
        .isEqualTo(byCone.excursionVoltageV())
        .isLessThan(byCone.heatVoltageV())
        .isLessThan(byCone.amplifierVoltageV());
    Woofer faint = WorkshopSpecs.limited(WEAK, 0.02, 0.5);
    LimitStudy.ProgrammeLevel byHeat = study(faint).programmes().get(0);
    assertThat(byHeat.binding()).isEqualTo(Limit.HEAT);
    assertThat(byHeat.voltageV()).isEqualTo(byHeat.heatVoltageV());
    // at the voltage by heat the coil has the limit's rise
    assertThat(byHeat.settled().riseK()).isCloseTo(180, withinPercentage(1e-6));
    assertThat(byHeat.atFullVoltage().riseK()).isGreaterThan(180);
  }

  /** Butterworth, second order: |H|^2 = 1/(1 + (fc/f)^4). */
  @Test
  void theProgrammesHighPassIsTheLowestThatHoldsTheCone() {
    double[] hz = stack().frequencyHz();
    DrivenStack.PerVolt cold = at(WEAK, 0);
    ProgrammeSpectrum music = ProgrammeSpectrum.MUSIC;
    double[] all = music.weights(hz, hz[0], hz[hz.length - 1]);
    int held = 0;
    int needless = 0;
    int helpless = 0;
    for (double travel = 0.0005; travel < 0.06; travel *= 1.3) {
      Woofer woofer = WorkshopSpecs.woofer(WorkshopSpecs.brief300(), 30, 0.9, 0.06, travel);
      LimitStudy.ProgrammeLevel programme = study(woofer).programmes().get(0);
      double peak = music.crestFactor() * programme.amplifierVoltageV();
      if (programme.highPassHz().isEmpty()) {
        assertThat(peak * filtered(all, cold, hz, 40)).isGreaterThan(travel);
        helpless++;
      } else if (programme.highPassHz().getAsDouble() == 0) {
        assertThat(peak * filtered(all, cold, hz, 0)).isLessThanOrEqualTo(travel * (1 + 1e-9));
        needless++;
      } else {
        double corner = programme.highPassHz().getAsDouble();
        assertThat(peak * filtered(all, cold, hz, corner))
            .isCloseTo(travel, withinPercentage(1e-6));
        held++;
      }
    }
    assertThat(List.of(held, needless, helpless)).allMatch(count -> count > 0);
  }

  private static double filtered(
      double[] weights, DrivenStack.PerVolt cold, double[] hz, double corner) {
    double sum = 0;
    for (int f = 0; f < hz.length; f++) {
      sum += weights[f] * cold.excursionSquared[f] / (1 + Math.pow(corner / hz[f], 4));
    }
    return Math.sqrt(sum);
  }

  /** A sine below the band: the high-pass holds every frequency up to the corner, one exactly. */
  @Test
  void theSinesHighPassHoldsTheConeUpToTheCorner() {
    double[] hz = stack().frequencyHz();
    DrivenStack.PerVolt cold = at(WEAK, 0);
    LimitStudy.SubsonicDemand demand = study(WEAK).fullVoltage();
    double corner = demand.highPassHz().orElseThrow();
    double worst = 0;
    double greatest = 0;
    double greatestHz = 0;
    for (int f = 0; f < hz.length; f++) {
      double share = FULL_V * Math.sqrt(2 * cold.excursionSquared[f]) / 0.004;
      if (hz[f] < 40.001) {
        worst = Math.max(worst, share / Math.sqrt(1 + Math.pow(corner / hz[f], 4)));
        greatestHz = share > greatest ? hz[f] : greatestHz;
        greatest = Math.max(greatest, share);
      }
      if (hz[f] > demand.beyondTravelBelowHz().orElseThrow()) {
        assertThat(share).isLessThan(1);
      }
    }
    assertThat(worst).isCloseTo(1, within(1e-9));
    assertThat(demand.greatestShare()).isCloseTo(greatest, within(1e-9));
    assertThat(demand.greatestHz()).isEqualTo(greatestHz);
    assertThat(demand.lowCornerLossDb())
        .isCloseTo(10 * Math.log10(1 + Math.pow(corner / 40, 4)), within(1e-9));
    // straight in log-log between the last point beyond the travel and the next
    double beyond = demand.beyondTravelBelowHz().orElseThrow();
    for (int f = 1; f < hz.length; f++) {
      if (hz[f - 1] <= beyond && beyond < hz[f]) {
        double from = Math.log(cold.excursionSquared[f - 1]) / 2;
        double to = Math.log(cold.excursionSquared[f]) / 2;
        double way = Math.log(beyond / hz[f - 1]) / Math.log(hz[f] / hz[f - 1]);
        assertThat(FULL_V * Math.sqrt(2) * Math.exp(from + way * (to - from)))
            .isCloseTo(0.004, within(1e-12));
      }
    }
    LimitStudy.SubsonicDemand none = study(STRONG).bandVoltage();
    assertThat(none.protectionNeeded()).isEqualTo(none.greatestShare() > 1);
  }
}

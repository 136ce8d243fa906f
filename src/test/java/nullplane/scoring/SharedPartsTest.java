package nullplane.scoring;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import nullplane.driver.Woofer;
import nullplane.network.CircuitState;
import nullplane.network.ComplexCurve;
import nullplane.network.LowPassBranch;
import nullplane.network.NetworkCatalogue;
import nullplane.network.NetworkOffer;
import nullplane.network.OfferRows;
import nullplane.network.OwnerKit;
import nullplane.network.PartKind;
import nullplane.network.RatedPart;
import nullplane.network.StackNetwork;
import nullplane.network.Swap;
import nullplane.network.SwapList;
import nullplane.units.Curve;
import org.junit.jupiter.api.Test;

/** Parts that stacks share, and what parts must stand, for a single and a pair. */
class SharedPartsTest {
  private static final DesignSpec SPEC = WorkshopSpecs.singleAndPair().withNetworks(smallOffer());
  private static final ScoringAxis AXIS = ScoringAxis.of(SPEC);
  private static final List<StackAcoustics> ACOUSTICS = WorkshopSpecs.acoustics(SPEC, AXIS);
  private static final SystemScorer SCORER =
      new SystemScorer(SPEC, AXIS, ACOUSTICS, WorkshopSpecs.AIR);
  private static final Woofer WOOFER = WorkshopSpecs.woofer(SPEC.woofer(), 40, 1.2, 0.045, 0.009);

  /** Five coils, three capacitors. */
  private static NetworkOffer smallOffer() {
    NetworkCatalogue all = NetworkCatalogue.standard();
    return new NetworkOffer.Passive(
        new NetworkCatalogue(
            List.of(),
            all.coils().subList(16, 26).stream().filter(c -> c.value() > 0).toList(),
            all.capacitors().subList(2, 8),
            List.of(),
            List.of(),
            List.of()),
        2);
  }

  /** Every pair of networks tried, one by one. */
  @Test
  void sharingIsTheBestOfAllPairs() {
    Assessment assessment = SCORER.assess(WOOFER);
    OfferRows offer = SPEC.networks().rows(AXIS.frequencyHz());
    StackEvaluator.Workspace space = new StackEvaluator.Workspace(AXIS.frequencyHz().size(), 2);
    double[][] cost = new double[2][offer.count()];
    double[][] shape = new double[2][offer.count()];
    double[] own = new double[2];
    double[] ownShape = new double[2];
    for (int s = 0; s < 2; s++) {
      StackEvaluator stack = new StackEvaluator(SPEC, ACOUSTICS.get(s), AXIS, offer);
      StackChoice one = new StackChoice();
      own[s] = Double.POSITIVE_INFINITY;
      int wiring = 0;
      while (!stack.model(wiring).wiring().equals(assessment.stacks().get(s).wiring())) {
        wiring++;
      }
      for (int n = 0; n < offer.count(); n++) {
        stack.evaluate(WOOFER, wiring, n, space, one);
        cost[s][n] = one.violation == 0 ? one.cost : Double.POSITIVE_INFINITY;
        shape[s][n] = one.rmsDeviation;
        if (cost[s][n] < own[s]) {
          own[s] = cost[s][n];
          ownShape[s] = shape[s][n];
        }
      }
    }
    double leastCoil = Double.POSITIVE_INFINITY;
    double leastSame = Double.POSITIVE_INFINITY;
    int[] byCoil = new int[2];
    int same = 0;
    for (int a = 0; a < offer.count(); a++) {
      for (int b = 0; b < offer.count(); b++) {
        double sum = cost[0][a] + cost[1][b];
        boolean oneCoil = offer.network(a, 1).seriesCoil().equals(offer.network(b, 1).seriesCoil());
        if (oneCoil && sum < leastCoil) {
          leastCoil = sum;
          byCoil = new int[] {a, b};
        }
        if (a == b && sum < leastSame) {
          leastSame = sum;
          same = a;
        }
      }
    }
    List<SharedParts> pairs = SCORER.sharedParts(assessment);
    assertThat(pairs).hasSize(1);
    SharedParts pair = pairs.get(0);
    assertThat(List.of(pair.from(), pair.to())).containsExactly("single", "pair");
    SharedParts.Sharing coil = pair.coil().orElseThrow();
    SharedParts.Sharing whole = pair.network().orElseThrow();
    assertThat(coil.from().costLossDb() + coil.to().costLossDb())
        .isCloseTo(leastCoil - own[0] - own[1], within(1e-12));
    assertThat(whole.from().costLossDb() + whole.to().costLossDb())
        .isCloseTo(leastSame - own[0] - own[1], within(1e-12));
    assertThat(coil.from().shapeLossDb())
        .isCloseTo(shape[0][byCoil[0]] - ownShape[0], within(1e-12));
    assertThat(whole.to().shapeLossDb()).isCloseTo(shape[1][same] - ownShape[1], within(1e-12));
    assertThat(coil.from().network().seriesCoil()).isEqualTo(coil.to().network().seriesCoil());
    assertThat(whole.from().network()).isEqualTo(whole.to().network());
    // the single needs a larger coil than the pair: sharing must cost something here
    assertThat(whole.from().costLossDb() + whole.to().costLossDb())
        .isGreaterThan(coil.from().costLossDb() + coil.to().costLossDb() - 1e-12)
        .isPositive();
    assertThat(List.of(coil.from(), coil.to(), whole.from(), whole.to()))
        .allSatisfy(side -> assertThat(side.costLossDb()).isNotNegative());
  }

  /** At the drive a limit is reached and none is passed: level goes with voltage. */
  @Test
  void theDriveIsWhatTheFirstLimitLetsThrough() {
    for (StackAssessment stack : SCORER.assess(WOOFER).stacks()) {
      StackCurves curves = stack.curves();
      Curve drive = StackRatings.driveV(SPEC.amplifier(), curves);
      for (int f = 0; f < drive.size(); f++) {
        double ratio = drive.at(f) / SPEC.target().voltageV();
        assertThat(curves.levelDb().at(f) + 20 * Math.log10(ratio))
            .isCloseTo(curves.loudestDb().at(f), within(1e-9));
        assertThat(drive.at(f)).isLessThanOrEqualTo(SPEC.amplifier().voltageV());
        // the cone goes no further than its travel
        assertThat(curves.excursionM().at(f) * ratio)
            .isLessThanOrEqualTo(WOOFER.travelM() * (1 + 1e-9));
      }
    }
  }

  /** Ohm's law at the amplifier: a coil alone carries drive over load. */
  @Test
  void aCoilCarriesWhatTheAmplifierGives() {
    Assessment coils =
        WorkshopSpecs.scorer(WorkshopSpecs.coilsOnly(WorkshopSpecs.singleAndPair())).assess(WOOFER);
    for (StackAssessment stack : coils.stacks()) {
      RatedPart coil = StackRatings.of(SPEC.amplifier(), stack).parts().get(0);
      Curve drive = StackRatings.driveV(SPEC.amplifier(), stack.curves());
      double most = 0;
      for (int f = 0; f < drive.size(); f++) {
        double load =
            Math.hypot(
                stack.curves().impedanceReOhm().at(f), stack.curves().impedanceImOhm().at(f));
        most = Math.max(most, drive.at(f) / load);
      }
      assertThat(coil.rating().currentA()).isCloseTo(most, within(1e-9 * most));
      assertThat(coil.rating().powerW())
          .isCloseTo(most * most * stack.coil().resistanceOhm(), within(1e-8 * most * most));
    }
  }

  /** The kit holds every part of every stack once, rated for all that use it. */
  @Test
  void theKitServesEveryStack() {
    FamilyParts family = FamilyParts.of(SCORER, SCORER.assess(WOOFER));
    assertThat(family.shared()).hasSize(1);
    SwapList list = family.swaps().get(0);
    assertThat(family.shared(list)).contains(family.shared().get(0));
    for (int s = 0; s < 2; s++) {
      StackNetwork network = family.networks().get(s);
      assertThat(family.stacks().get(s).parts())
          .extracting(RatedPart::placed)
          .isEqualTo(network.parts());
      for (RatedPart part : family.stacks().get(s).parts()) {
        PartKind kind = part.part().kind();
        assertThat(family.kit().items())
            .extracting(OwnerKit.Item::part)
            .filteredOn(kept -> kept.placed().equals(part.placed()))
            .singleElement()
            .satisfies(
                kept ->
                    assertThat(kept.rating().governing(kind))
                        .isGreaterThanOrEqualTo(part.rating().governing(kind)));
      }
    }
    assertThat(list.swaps()).extracting(Swap::place).doesNotHaveDuplicates().isNotEmpty();
  }

  /** The stack's own impedance comes back out of the curves. */
  @Test
  void theBareImpedanceIsThatWithoutANetwork() {
    Assessment with = SCORER.assess(WOOFER);
    Assessment without =
        WorkshopSpecs.scorer(
                SPEC.withNetworks(new NetworkOffer.Passive(NetworkCatalogue.standard(), 0)))
            .assess(WOOFER);
    StackCurves curves = with.stacks().get(0).curves();
    StackCurves bare = without.stacks().get(0).curves();
    CircuitState state =
        CircuitState.ofInput(
            (LowPassBranch) with.stacks().get(0).network(),
            curves.frequencyHz(),
            new ComplexCurve(curves.impedanceReOhm(), curves.impedanceImOhm()));
    for (int f = 0; f < curves.frequencyHz().size(); f++) {
      double ohm = state.transfer().modulus(f) / state.stackCurrent().modulus(f);
      assertThat(ohm)
          .isCloseTo(
              Math.hypot(bare.impedanceReOhm().at(f), bare.impedanceImOhm().at(f)),
              within(1e-8 * ohm));
    }
  }
}

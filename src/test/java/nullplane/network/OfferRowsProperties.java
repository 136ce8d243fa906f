package nullplane.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.data.Offset.offset;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.stream.Stream;
import nullplane.units.Range;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Offers by number and by genes against each network by itself. */
class OfferRowsProperties {
  private static final ActiveLimits LIMITS =
      new ActiveLimits(
          new Range(0.25, 2),
          List.of(FilterAlignment.BUTTERWORTH_2),
          new Range(80, 300),
          Range.pinned(40),
          new Range(0.5, 4),
          new Range(0.5, 2));

  /** Small, with every axis: 2 resistors, 4 coils, 2 capacitors, 2 dampings, 2 and 1 conjugates. */
  private static NetworkCatalogue catalogue() {
    return NetworkCatalogue.of(
            CoilMake.standard(),
            PreferredValues.E6,
            new Range(1e-3, 3.3e-3),
            PreferredValues.E6,
            new Range(68e-6, 100e-6),
            PreferredValues.E6,
            new Range(1, 1.5))
        .withResistors(PreferredValues.E6, new Range(1, 1.5))
        .withResonances(
            List.of(
                MotionalConjugate.Values.of(6, 0.5, 5, 30).exact(CoilMake.standard()),
                MotionalConjugate.Values.of(6, 0.7, 5, 30).exact(new CoilMake.Stated(600, 0))))
        .withZobels(List.of(ZobelNetwork.exact(6, 1e-3)));
  }

  static Stream<NetworkOffer> offers() {
    return Stream.of(
        new NetworkOffer.Passive(catalogue(), 4),
        NetworkOffer.Passive.ofCoils(CoilCatalogue.standard()),
        new NetworkOffer.Active(LIMITS));
  }

  /** Kirchhoff's laws on each network alone, by its own rows, which nodal analysis confirms. */
  @ParameterizedTest
  @MethodSource("offers")
  void everyNumberIsItsNetwork(NetworkOffer offer) {
    OfferRows rows = offer.rows(SampleStacks.BAND);
    int points = SampleStacks.BAND.size();
    LoadRows stack = SampleStacks.load(SampleStacks.stack(new Random(9)));
    LoadRows scratch = new LoadRows(points);
    LoadRows other = new LoadRows(points);
    double[][] own = new double[4][points];
    double[][] found = new double[3][points];
    Map<Integer, LoadRows> groups = new HashMap<>();
    Set<StackNetwork> networks = new HashSet<>();
    assertThat(rows.network(0, 1).none()).isTrue();
    for (int n = 0; n < rows.count(); n++) {
      StackNetwork network = rows.network(n, 1);
      networks.add(network);
      assertThat(rows.parts(n)).isEqualTo(network.partCount());
      assertThat(rows.copperKg(n)).isEqualTo(network.copperKg(), offset(1e-12));
      assertThat(rows.capacitanceF(n)).isEqualTo(network.capacitanceF(), offset(1e-15));
      NetworkRows alone = network.rows(SampleStacks.BAND);
      assertThat(rows.amplifierBehind()).isEqualTo(alone.amplifierBehind());
      alone.transfer(stack, other, own[0], own[1]);
      alone.inputImpedance(stack, other, own[2], own[3]);
      LoadRows load = rows.load(n, stack, scratch);
      rows.transfer(n, load, 0, points - 1, found[0], found[1]);
      rows.transferSquared(n, load, 0, points - 1, found[2]);
      double least = Double.POSITIVE_INFINITY;
      for (int f = 0; f < points; f++) {
        double squared = own[0][f] * own[0][f] + own[1][f] * own[1][f];
        assertThat(found[0][f]).isEqualTo(own[0][f], offset(1e-12));
        assertThat(found[1][f]).isEqualTo(own[1][f], offset(1e-12));
        assertThat(found[2][f] / squared).isEqualTo(1, offset(1e-11));
        assertThat(rows.transferSquaredAt(n, load, f)).isEqualTo(found[2][f]);
        least = Math.min(least, own[2][f] * own[2][f] + own[3][f] * own[3][f]);
      }
      assertThat(rows.leastInputSquared(n, load) / least).isEqualTo(1, offset(1e-11));
      LoadRows first = groups.computeIfAbsent(rows.group(n), g -> copy(load));
      for (int f = 0; f < points; f += 7) {
        assertThat(load.conductance(f)).isEqualTo(first.conductance(f));
        assertThat(load.susceptance(f)).isEqualTo(first.susceptance(f));
      }
    }
    assertThat(networks).hasSize(rows.count());
  }

  private static LoadRows copy(LoadRows load) {
    LoadRows copy = new LoadRows(load.size());
    copy.setShunted(load, ShuntRows.none(SampleStacks.BAND));
    return copy;
  }

  /** A part of the axis is written and nothing beside it. */
  @ParameterizedTest
  @MethodSource("offers")
  void aPartOfTheAxisIsThatOfTheWhole(NetworkOffer offer) {
    OfferRows rows = offer.rows(SampleStacks.BAND);
    int points = SampleStacks.BAND.size();
    int n = rows.count() - 1;
    LoadRows stack = SampleStacks.load(SampleStacks.stack(new Random(9)));
    LoadRows load = rows.load(n, stack, new LoadRows(points));
    double[][] whole = new double[3][points];
    double[][] part = new double[3][points];
    rows.transfer(n, load, 0, points - 1, whole[0], whole[1]);
    rows.transferSquared(n, load, 0, points - 1, whole[2]);
    rows.transfer(n, load, 5, 11, part[0], part[1]);
    rows.transferSquared(n, load, 5, 11, part[2]);
    for (int f = 0; f < points; f++) {
      for (int i = 0; i < 3; i++) {
        assertThat(part[i][f]).isEqualTo(f >= 5 && f <= 11 ? whole[i][f] : 0);
      }
    }
  }

  /** Genes name a network that there is, at any offset. */
  @ParameterizedTest
  @MethodSource("offers")
  void genesNameANetwork(NetworkOffer offer) {
    OfferRows rows = offer.rows(SampleStacks.BAND);
    double[] shares = new double[rows.genes() + 2];
    Random random = new Random(7);
    for (int i = 0; i < 3000; i++) {
      for (int g = 0; g < rows.genes(); g++) {
        shares[2 + g] = i < 2 ? i : random.nextDouble(); // the ends as well
      }
      assertThat(rows.at(shares, 2)).isBetween(0, rows.count() - 1);
    }
  }

  /** Two fifths of a gene's values mean none, as near as whole numbers come. */
  @Test
  void fewPartsAreAsLikelyAsMany() {
    OfferRows coils =
        NetworkOffer.Passive.ofCoils(CoilCatalogue.standard()).rows(SampleStacks.BAND);
    assertThat(coils.genes()).isEqualTo(1);
    int values = coils.choices(0);
    int none = 0;
    for (int v = 0; v < values; v++) {
      none += coils.at(new double[] {(v + 0.5) / values}, 0) == 0 ? 1 : 0;
    }
    // 31 coils are three fifths of 52
    assertThat(values).isEqualTo(52);
    assertThat(none).isEqualTo(21);
    assertThat(coils.gain()).isEqualTo(Range.pinned(1));
  }

  /** What is over the limit goes in the order told: damping first, the coil last. */
  @Test
  void partsBeyondTheLimitAreLeftOut() {
    double[] all = {0.999, 0.999, 0.999, 0.999, 0.999, 0.999};
    // the last conjugate of the resonance has two parts; a pair goes as a whole
    int[] kept = {0, 1, 2, 2, 4, 5, 5, 7, 8};
    for (int most = 0; most < kept.length; most++) {
      OfferRows rows = new NetworkOffer.Passive(catalogue(), most).rows(SampleStacks.BAND);
      LowPassBranch branch = (LowPassBranch) rows.network(rows.at(all, 0), 1);
      assertThat(branch.partCount()).as("of %d", most).isEqualTo(kept[most]);
      assertThat(branch.seriesCoil().present()).isEqualTo(most >= 1);
      assertThat(branch.shunt().isPresent()).isEqualTo(most >= 2);
      assertThat(branch.resonance().isPresent()).isEqualTo(most >= 4);
      assertThat(branch.seriesResistor().isPresent()).isEqualTo(most >= 5);
      assertThat(branch.zobel().isPresent()).isEqualTo(most >= 7);
    }
    assertThatThrownBy(() -> new NetworkOffer.Passive(catalogue(), -1))
        .hasMessageContaining("0 or more");
  }

  /** By ratio from end to end: 13 corners; 6 gains without 1, each a shelf and 3 peaks. */
  @Test
  void activeFiltersWalkTheirLimits() {
    OfferRows rows = new NetworkOffer.Active(LIMITS).rows(SampleStacks.BAND);
    assertThat(rows.choices(0)).isEqualTo(1 + 13);
    assertThat(rows.choices(1)).isEqualTo(1 + 6 * (1 + 3));
    assertThat(rows.count()).isEqualTo(14 * 25);
    assertThat(rows.gain()).isEqualTo(LIMITS.gain());
    for (int n = 0; n < rows.count(); n++) {
      assertThat(LIMITS.excess((ActiveBranch) rows.network(n, 1.5))).isEqualTo(0, offset(1e-12));
    }
  }
}

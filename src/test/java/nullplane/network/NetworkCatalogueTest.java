package nullplane.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.data.Offset.offset;

import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import nullplane.units.Levels;
import nullplane.units.Range;
import org.junit.jupiter.api.Test;

class NetworkCatalogueTest {
  private static final NetworkCatalogue STANDARD = NetworkCatalogue.standard();

  /** Small, with every axis. */
  private static final NetworkCatalogue FULL =
      NetworkCatalogue.of(
              CoilMake.standard(),
              PreferredValues.E6,
              new Range(1e-3, 10e-3),
              PreferredValues.E6,
              new Range(22e-6, 150e-6),
              PreferredValues.E6,
              new Range(1, 3.3))
          .withResistors(PreferredValues.E6, new Range(1, 2.2))
          .withResonances(
              List.of(
                  MotionalConjugate.Values.of(6, 0.5, 5, 30).exact(CoilMake.standard()),
                  MotionalConjugate.Values.of(6, 0.7, 5, 30).exact(new CoilMake.Stated(600, 0))))
          .withZobels(List.of(ZobelNetwork.exact(6, 1e-3)));

  @Test
  void everyChoiceIsAnotherNetworkAndNoneComesFirst() {
    for (NetworkCatalogue catalogue : List.of(STANDARD, FULL)) {
      List<NetworkChoice> all = catalogue.choices().toList();
      assertThat(all).hasSize((int) catalogue.size()).startsWith(NetworkChoice.NONE);
      Set<LowPassBranch> branches = new HashSet<>();
      all.forEach(choice -> branches.add(catalogue.branch(choice)));
      assertThat(branches).hasSize(all.size()).contains(LowPassBranch.NONE);
      assertThat(catalogue.choices().toList()).isEqualTo(all);
    }
    // 31 coils, each with nothing or one of 12 capacitors, undamped or with one of 7 resistors
    assertThat(STANDARD.size()).isEqualTo(1 + 31 * (1 + 12 * 8));
  }

  /** Counting by places agrees with counting one by one. */
  @Test
  void networksOfFewPartsAreCounted() {
    for (NetworkCatalogue catalogue :
        List.of(STANDARD, FULL, NetworkOffer.standard().catalogue())) {
      for (int most = 0; most <= 9; most++) {
        int limit = most;
        long counted =
            catalogue.choices().filter(c -> catalogue.branch(c).parts().size() <= limit).count();
        assertThat(catalogue.sizeWithin(most)).as("%d parts", most).isEqualTo(counted);
      }
    }
  }

  @Test
  void anyGenesMeanACanonicalNetwork() {
    Random random = new Random(2);
    Set<NetworkChoice> all = new HashSet<>(FULL.choices().toList());
    for (int i = 0; i < 500; i++) {
      NetworkChoice genes = NetworkChoice.NONE;
      for (CatalogueAxis axis : CatalogueAxis.values()) {
        genes = genes.with(axis, random.nextInt(FULL.options(axis)));
      }
      assertThat(all).contains(FULL.canonical(genes));
      assertThat(FULL.branch(genes)).isEqualTo(FULL.branch(FULL.canonical(genes)));
    }
    NetworkChoice beyond =
        NetworkChoice.NONE.with(CatalogueAxis.COIL, FULL.options(CatalogueAxis.COIL));
    assertThatThrownBy(() -> FULL.branch(beyond)).hasMessageContaining("choice 8 of COIL");
    List<Capacitor> falling = List.of(new Capacitor(2e-5), new Capacitor(1e-5));
    assertThatThrownBy(
            () ->
                new NetworkCatalogue(
                    List.of(), List.of(), falling, List.of(), List.of(), List.of()))
        .hasMessageContaining("shunt capacitors hold 1.0E-5 after 2.0E-5");
    assertThatThrownBy(() -> FULL.branch(NetworkChoice.NONE.with(CatalogueAxis.COIL, 99)))
        .hasMessageContaining("allowed: 0 .. 7");
  }

  /** The shared rows give what a branch of its own gives, bit for bit, and the same burden. */
  @Test
  void sharedRowsAreTheBranchsOwn() {
    CatalogueRows shared = new CatalogueRows(FULL, SampleStacks.BAND);
    LoadRows stack = SampleStacks.load(SampleStacks.stack(new Random(8)));
    int points = SampleStacks.BAND.size();
    LoadRows scratch = new LoadRows(points);
    double[] one = new double[points];
    double[] other = new double[points];
    FULL.choices()
        .forEach(
            choice -> {
              LowPassBranch branch = FULL.branch(choice);
              branch.rows(SampleStacks.BAND).transferSquared(stack, scratch, one);
              LoadRows load = shared.shunted(stack, choice, scratch);
              SeriesRows series = shared.series(choice.resistor(), choice.coil());
              series.transferSquared(load, other);
              for (int f = 0; f < points; f++) {
                assertThat(other[f] / one[f]).isEqualTo(1, offset(1e-12));
                assertThat(series.transferSquaredAt(load, f)).isEqualTo(other[f]);
              }
              assertThat(shared.partCount(choice)).isEqualTo(branch.partCount());
              assertThat(shared.copperKg(choice)).isEqualTo(branch.copperKg(), offset(1e-12));
              assertThat(shared.capacitanceF(choice))
                  .isEqualTo(branch.capacitanceF(), offset(1e-15));
            });
  }

  /** One step there is one step back, and steps lead from none to every network. */
  @Test
  void neighboursAreMutualAndReachEverything() {
    Set<NetworkChoice> reached = new HashSet<>(Set.of(NetworkChoice.NONE));
    List<NetworkChoice> front = List.of(NetworkChoice.NONE);
    while (!front.isEmpty()) {
      front =
          front.stream().flatMap(c -> FULL.neighbours(c).stream()).filter(reached::add).toList();
    }
    assertThat(reached).hasSize((int) FULL.size());
    assertThat(FULL.neighbours(NetworkChoice.NONE.with(CatalogueAxis.COIL, 1)))
        .contains(NetworkChoice.NONE);
    NetworkChoice inside = new NetworkChoice(1, 2, 2, 1, 1, 1);
    for (NetworkChoice next : FULL.neighbours(inside)) {
      assertThat(FULL.neighbours(next)).contains(inside);
    }
  }

  @Test
  void coarseNetAndItsRefinementCoverTheValues() {
    assertThat(STANDARD.coarse(1)).isEqualTo(STANDARD.choices().toList());
    // 8 of 31 coils, each with nothing or one of 3 capacitors, undamped or with one of 2 resistors
    assertThat(STANDARD.coarse(4)).hasSize(1 + 8 * (1 + 3 * 3)).contains(NetworkChoice.NONE);
    NetworkChoice damped = new NetworkChoice(0, 5, 5, 1, 0, 0);
    assertThat(STANDARD.around(damped, 2))
        .startsWith(damped)
        .doesNotHaveDuplicates()
        .hasSize(3 * 3 * 2)
        .contains(new NetworkChoice(0, 3, 7, 3, 0, 0))
        .allMatch(c -> c.coil() >= 1 && c.capacitor() >= 1 && c.damping() >= 1);
    // no part is lost on the way, and none found
    NetworkChoice second = NetworkChoice.NONE.with(CatalogueAxis.COIL, 2);
    assertThat(STANDARD.around(second, 2))
        .containsExactly(second, NetworkChoice.NONE.with(CatalogueAxis.COIL, 4));
    assertThat(STANDARD.around(second, 1))
        .containsExactly(
            second,
            NetworkChoice.NONE.with(CatalogueAxis.COIL, 1),
            NetworkChoice.NONE.with(CatalogueAxis.COIL, 3));
    assertThat(STANDARD.around(NetworkChoice.NONE, 1)).containsExactly(NetworkChoice.NONE);
    assertThatThrownBy(() -> STANDARD.coarse(0)).hasMessageContaining("allowed: 1 or more");
  }

  /**
   * Coarse to fine against the exhaustive optimum: fit of a low-pass behind a drawn stack, from the
   * three best of the coarse net for each number of parts. It need not find it: one of these twenty
   * ends in a neighbour valley, 0.07 dB higher, with another capacitor and damping.
   */
  @Test
  void coarseToFineFindsTheOptimum() {
    CatalogueRows rows = new CatalogueRows(STANDARD, SampleStacks.BAND);
    int met = 0;
    Map<Integer, List<NetworkChoice>> coarse =
        STANDARD.coarse(4).stream().collect(Collectors.groupingBy(rows::partCount));
    for (int seed = 0; seed < 20; seed++) {
      Random random = new Random(seed);
      Fit fit =
          new Fit(
              rows, SampleStacks.load(SampleStacks.stack(random)), 80 + 200 * random.nextDouble());
      double best = STANDARD.choices().mapToDouble(fit::error).min().orElseThrow();
      double found = Double.POSITIVE_INFINITY;
      for (List<NetworkChoice> alike : coarse.values()) {
        found =
            alike.stream()
                .sorted(Comparator.comparingDouble(fit::error))
                .limit(3)
                .mapToDouble(fit::refined)
                .reduce(found, Math::min);
      }
      assertThat(found).isBetween(best, best + 0.1);
      met += found == best ? 1 : 0;
    }
    assertThat(met).isGreaterThanOrEqualTo(19);
  }

  /** Root-mean-square deviation in decibels from a Butterworth low-pass of second order. */
  private record Fit(CatalogueRows rows, LoadRows stack, double cornerHz) {
    double error(NetworkChoice choice) {
      LoadRows load = rows.shunted(stack, choice, new LoadRows(stack.size()));
      SeriesRows series = rows.series(choice.resistor(), choice.coil());
      double sum = 0;
      for (int f = 0; f < stack.size(); f++) {
        double x = SampleStacks.BAND.at(f) / cornerHz;
        double wanted = 1 / (1 + x * x * x * x);
        sum += Math.pow(Levels.ofPowerRatio(series.transferSquaredAt(load, f) / wanted), 2);
      }
      return Math.sqrt(sum / stack.size());
    }

    double refined(NetworkChoice start) {
      NetworkChoice best = start;
      for (int step = 2; step >= 1; ) {
        NetworkChoice at = best;
        for (NetworkChoice next : STANDARD.around(at, step)) {
          best = error(next) < error(best) ? next : best;
        }
        if (step == 1) {
          for (NetworkChoice next : STANDARD.neighbours(at)) {
            best = error(next) < error(best) ? next : best;
          }
        }
        step = best.equals(at) ? step - 1 : step;
      }
      return error(best);
    }
  }
}

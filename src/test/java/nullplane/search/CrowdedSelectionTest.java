package nullplane.search;

import static org.assertj.core.api.Assertions.assertThat;

import io.jenetics.ext.moea.Pareto;
import io.jenetics.util.ISeq;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class CrowdedSelectionTest {
  static LongStream seeds() {
    return LongStream.rangeClosed(1, 40);
  }

  /** The library ranks by comparing everybody with everybody. */
  @ParameterizedTest
  @MethodSource("seeds")
  void frontsAreTheLibrarysRanks(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    int objectives = 1 + (int) (seed % 5);
    List<Merit> merits = new ArrayList<>();
    for (int i = 0; i < 80; i++) {
      // Small whole numbers, so that many are equal in places or throughout.
      double[] objective = new double[objectives];
      for (int j = 0; j < objectives; j++) {
        objective[j] = random.nextInt(6);
      }
      merits.add(
          random.nextInt(4) == 0
              ? Merit.infeasible(1 + random.nextInt(5), objectives)
              : Merit.feasible(objective));
    }
    List<Integer> all = IntStream.range(0, merits.size()).boxed().toList();
    int[] ranks = new int[merits.size()];
    List<List<Integer>> fronts = CrowdedSelection.fronts(merits, all);
    for (int rank = 0; rank < fronts.size(); rank++) {
      for (int member : fronts.get(rank)) {
        ranks[member] = rank;
      }
    }
    assertThat(ranks).isEqualTo(Pareto.rank(ISeq.of(merits), Merit::dominance));
  }

  @Test
  void endsComeFirstThenThoseWithRoomThenTheNextFrontThenTheInfeasible() {
    List<Merit> merits =
        List.of(
            Merit.infeasible(2, 2),
            Merit.feasible(0, 10),
            Merit.feasible(1, 9),
            Merit.feasible(1, 9),
            Merit.feasible(6, 4),
            Merit.feasible(10, 0),
            Merit.feasible(9, 9),
            Merit.infeasible(1, 2));
    // Room, by hand: of 2 it is (6-0)/10 + (10-4)/10, of 4 it is (10-1)/10 + (9-0)/10.
    assertThat(CrowdedSelection.best(merits, 8)).containsExactly(1, 5, 4, 2, 6, 7, 0, 3);
  }
}

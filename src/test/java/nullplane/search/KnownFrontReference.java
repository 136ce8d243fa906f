package nullplane.search;

import static org.junit.jupiter.params.provider.Arguments.arguments;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import nullplane.units.Curve;
import nullplane.validation.Validation;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The search against fronts known in closed form, and against a library's NSGA-II. Volumes are up
 * to the corner of each front's own range, (1, 1), which is harder to fill than the usual (1.1,
 * 1.1): the ends of the front add nothing.
 */
@Tag("reference")
class KnownFrontReference {
  private static final int SEEDS = 11;

  /**
   * Volume above a front f2(f1), f1 from 0 to 1, of what is not dominated: by the midpoint rule.
   */
  private static double volumeAbove(DoubleUnaryOperator f2, double end, Curve reference) {
    int steps = 1_000_000;
    double least = reference.at(1);
    double sum = 0;
    for (int i = 0; i < steps; i++) {
      double f1 = (i + 0.5) / steps * end;
      least = Math.min(least, f2.applyAsDouble(f1));
      sum += (reference.at(1) - least) * end / steps;
    }
    return sum;
  }

  static Stream<Arguments> fronts() {
    Curve one = Curve.of(1, 1);
    // Zitzler, Deb, Thiele 2000, definition 4, with g = 1; the area above each curve.
    double zdt1 = 2.0 / 3;
    double zdt2 = 1.0 / 3;
    double zdt3 = volumeAbove(x -> 1 - Math.sqrt(x) - x * Math.sin(10 * Math.PI * x), 1, one);
    // Deb, Thiele, Laumanns, Zitzler 2002: the unit circle.
    double dtlz2 = 1 - Math.PI / 4;
    return Stream.of(
        arguments(FrontProblems.zdt1(), zdt1, SEEDS),
        arguments(FrontProblems.zdt2(), zdt2, SEEDS),
        arguments(FrontProblems.zdt3(), zdt3, SEEDS),
        arguments(FrontProblems.dtlz2(2), dtlz2, SEEDS),
        arguments(FrontProblems.bnh(), bnhVolume(), 3),
        arguments(FrontProblems.tnk(), tnkVolume(), 3));
  }

  /** Deb 2001, section 8.2: f1 = 8 x^2 and f2 = 2 (x-5)^2 to x = 3, then y = 3. */
  private static double bnhVolume() {
    return volumeAbove(
        f1 -> {
          double x = Math.sqrt(f1 / 8);
          if (x <= 3) {
            return 2 * (x - 5) * (x - 5);
          }
          x = Math.min(5, Math.sqrt((f1 - 36) / 4));
          return (x - 5) * (x - 5) + 4;
        },
        140,
        Curve.of(140, 50));
  }

  /**
   * Deb et al. 2002, table V. The first bound in polar form, r^2 = 1 + 0.1 cos(16 a) with tan a = x
   * / y, walked along; where the second bound cuts, nothing is gained. What is least in y over all
   * smaller x is the front.
   */
  private static double tnkVolume() {
    int cells = 20_000;
    double reference = 1.1;
    double[] least = new double[cells];
    java.util.Arrays.fill(least, reference);
    int steps = 1_000_000;
    for (int i = 0; i <= steps; i++) {
      double a = Math.PI / 2 * i / steps;
      double r = Math.sqrt(1 + 0.1 * Math.cos(16 * a));
      double x = r * Math.sin(a);
      double y = r * Math.cos(a);
      if ((x - 0.5) * (x - 0.5) + (y - 0.5) * (y - 0.5) <= 0.5 && x < reference) {
        int cell = (int) (x / reference * cells);
        least[cell] = Math.min(least[cell], y);
      }
    }
    double sum = 0;
    double best = reference;
    for (double y : least) {
      best = Math.min(best, y);
      sum += (reference - best) * reference / cells;
    }
    return sum;
  }

  private static final String KNOWN =
      "E. Zitzler, K. Deb, L. Thiele 2000; K. Deb, L. Thiele, M. Laumanns, E. Zitzler 2002; K. Deb"
          + " 2001, section 8.2; K. Deb et al. 2002, table V.";

  private static double median(LongStream seeds, java.util.function.LongToDoubleFunction volume) {
    double[] sorted = seeds.mapToDouble(volume).sorted().toArray();
    return sorted[sorted.length / 2];
  }

  private static List<Curve> front(ParetoProblem problem, ParetoConduct conduct) {
    return ParetoSearch.run(problem, conduct, List.of(), ParetoWatch.NONE, StateKeeper.NONE)
        .front()
        .stream()
        .map(candidate -> candidate.merit().objectives())
        .toList();
  }

  @Test
  void theMidpointRuleFindsTheClosedForms() {
    Curve one = Curve.of(1, 1);
    Validation.check("midpoint rule over two fronts with closed forms", "Closed forms.")
        .add(2.0 / 3, volumeAbove(x -> 1 - Math.sqrt(x), 1, one))
        .add(1 - Math.PI / 4, volumeAbove(x -> Math.sqrt(1 - x * x), 1, one))
        .within(1e-6);
  }

  @ParameterizedTest
  @MethodSource("fronts")
  void theFrontIsFilledTo99Percent(ParetoProblem problem, double known, int seeds) {
    double median =
        median(
            LongStream.rangeClosed(1, seeds).parallel(),
            seed ->
                Hypervolume.of(
                    front(problem, ParetoConduct.of(seed, 25_000)), problem.reference()));
    Validation.check(
            "share of the front's hypervolume, "
                + problem
                + ", 25,000 evaluations, median of "
                + seeds
                + " seeds",
            KNOWN)
        .expected(1, "")
        .computed(median / known)
        .coarse(3, 3e-3)
        .between(0.99, 1.0);
  }

  static Stream<ParetoProblem> compared() {
    return Stream.of(FrontProblems.zdt1(), FrontProblems.zdt2(), FrontProblems.zdt3());
  }

  @ParameterizedTest
  @MethodSource("compared")
  void noLessThanALibraryAtEqualEvaluationsAndSizes(ParetoProblem problem) {
    int size = 100;
    int evaluations = 10_000;
    double ours =
        median(
            LongStream.rangeClosed(1, SEEDS),
            seed ->
                Hypervolume.of(
                    front(problem, ParetoConduct.of(seed, evaluations).withSizes(size, size)),
                    problem.reference()));
    double theirs =
        median(
            LongStream.rangeClosed(1, SEEDS),
            seed ->
                Hypervolume.of(
                    LibraryNsga2.front(problem, size, evaluations, seed), problem.reference()));
    Validation.check(
            "hypervolume over that of a library's NSGA-II, "
                + problem
                + ", 10,000 evaluations, 100 points",
            "The library's own run on the same problem and budget; 1 or more is asked for.")
        .expected(1, "")
        .computed(ours / theirs)
        .coarse(2, 2e-2)
        .atLeast(1);
  }
}

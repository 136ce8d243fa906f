package nullplane.io;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import nullplane.acoustics.ComplexMatrix;
import nullplane.acoustics.PanelSolution;

/** Solutions of no panel in particular, and a process that keeps them. */
final class KeptSolutions {
  static final PanelCacheKey KEY = new PanelCacheKey("5e".repeat(32));

  private KeptSolutions() {}

  /** Two frequencies, two pistons, one point, no direction: 348 bytes as an entry. */
  static List<PanelSolution> few() {
    return of(2, 2, 1, 0);
  }

  static List<PanelSolution> of(int frequencies, int pistons, int points, int directions) {
    Random random = new Random(7);
    List<PanelSolution> solutions = new ArrayList<>();
    for (int f = 0; f < frequencies; f++) {
      solutions.add(
          new PanelSolution(
              20 + f + random.nextDouble(),
              matrix(random, pistons, pistons),
              matrix(random, points, pistons),
              matrix(random, directions, pistons),
              random.nextDouble() / 1000));
    }
    return List.copyOf(solutions);
  }

  /** Bits of every kind: random signs and exponents, denormal numbers and both zeros. */
  private static ComplexMatrix matrix(Random random, int rows, int columns) {
    return new ComplexMatrix(
        rows, columns, numbers(random, rows * columns), numbers(random, rows * columns));
  }

  private static double[] numbers(Random random, int count) {
    double[] rare = {-0.0, 0.0, Double.MIN_VALUE, -Double.MAX_VALUE, Math.nextUp(1.0)};
    double[] numbers = new double[count];
    for (int i = 0; i < count; i++) {
      double any = Double.longBitsToDouble(random.nextLong());
      numbers[i] = Double.isFinite(any) && i % 3 > 0 ? any : rare[random.nextInt(rare.length)];
    }
    return numbers;
  }

  /** Keeps and finds the same entry again and again; fails if anything is noticed. */
  public static void main(String[] arguments) {
    List<String> notices = new ArrayList<>();
    PanelCache cache = PanelCache.in(Path.of(arguments[0]), notices::add);
    for (int i = 0; i < Integer.parseInt(arguments[1]); i++) {
      cache.keep(KEY, few());
      if (!cache.find(KEY).orElse(List.of()).equals(few())) {
        notices.add("not found");
      }
    }
    System.out.print(notices);
    System.exit(notices.isEmpty() ? 0 : 1);
  }
}

package nullplane.search;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import nullplane.units.Curve;

/** Problems of the literature whose fronts are known in closed form. */
final class FrontProblems {
  private FrontProblems() {}

  /**
   * ZDT1, 30 genes; front f2 = 1 - sqrt(f1). Source: E. Zitzler, K. Deb, L. Thiele, Evol. Comput. 8
   * (2000) 173, definition 4.
   */
  static Posed zdt1() {
    return zdt("ZDT1", (f1, g) -> 1 - Math.sqrt(f1 / g));
  }

  /** ZDT2, 30 genes; front f2 = 1 - f1^2. Source: as ZDT1. */
  static Posed zdt2() {
    return zdt("ZDT2", (f1, g) -> 1 - (f1 / g) * (f1 / g));
  }

  /**
   * ZDT3, 30 genes; front: what is not dominated of f2 = 1 - sqrt(f1) - f1 sin(10 pi f1). Source:
   * as ZDT1.
   */
  static Posed zdt3() {
    return zdt("ZDT3", (f1, g) -> 1 - Math.sqrt(f1 / g) - f1 / g * Math.sin(10 * Math.PI * f1));
  }

  private interface Shape {
    double h(double f1, double g);
  }

  private static Posed zdt(String name, Shape shape) {
    return new Posed(
        name,
        30,
        Curve.of(1, 1),
        x -> {
          double sum = 0;
          for (int i = 1; i < x.length; i++) {
            sum += x[i];
          }
          double g = 1 + 9 * sum / (x.length - 1);
          return Merit.feasible(x[0], g * shape.h(x[0], g));
        });
  }

  /**
   * DTLZ2 with any number of objectives, ten distance genes; front: the part of the unit sphere
   * where all objectives are positive. Source: K. Deb, L. Thiele, M. Laumanns, E. Zitzler, Scalable
   * multi-objective optimization test problems, CEC 2002, equation 9.
   */
  static Posed dtlz2(int objectives) {
    double[] reference = new double[objectives];
    java.util.Arrays.fill(reference, 1);
    return new Posed(
        "DTLZ2 of " + objectives,
        objectives + 9,
        Curve.of(reference),
        x -> {
          double g = 0;
          for (int i = objectives - 1; i < x.length; i++) {
            g += (x[i] - 0.5) * (x[i] - 0.5);
          }
          double[] f = new double[objectives];
          for (int i = 0; i < objectives; i++) {
            f[i] = 1 + g;
            for (int j = 0; j < objectives - 1 - i; j++) {
              f[i] *= Math.cos(x[j] * Math.PI / 2);
            }
            if (i > 0) {
              f[i] *= Math.sin(x[objectives - 1 - i] * Math.PI / 2);
            }
          }
          return Merit.feasible(f);
        });
  }

  /**
   * BNH: 4 x^2 + 4 y^2 and (x-5)^2 + (y-5)^2 for x in 0 to 5, y in 0 to 3, where (x-5)^2 + y^2 <=
   * 25 and (x-8)^2 + (y+3)^2 >= 7.7. Front: x = y in 0 to 3, then y = 3 and x in 3 to 5. Source: T.
   * Binh, U. Korn, MOBES, Proc. 3rd Int. Conf. Genetic Algorithms, Brno 1997, as in K. Deb,
   * Multi-Objective Optimization using Evolutionary Algorithms, Wiley 2001, section 8.2.
   */
  static Posed bnh() {
    return new Posed(
        "BNH",
        2,
        Curve.of(140, 50),
        g -> {
          double x = 5 * g[0];
          double y = 3 * g[1];
          double violation =
              Math.max(0, (x - 5) * (x - 5) + y * y - 25) / 25
                  + Math.max(0, 7.7 - (x - 8) * (x - 8) - (y + 3) * (y + 3)) / 7.7;
          return violation > 0
              ? Merit.infeasible(violation, 2)
              : Merit.feasible(4 * x * x + 4 * y * y, (x - 5) * (x - 5) + (y - 5) * (y - 5));
        });
  }

  /**
   * TNK: x and y from 0 to pi where x^2 + y^2 - 1 - 0.1 cos(16 arctan(x / y)) >= 0 and (x-0.5)^2 +
   * (y-0.5)^2 <= 0.5; the front is what is not dominated of the first bound, in three parts.
   * Source: M. Tanaka et al., Proc. IEEE SMC 1995, p. 1556, as in K. Deb et al., IEEE Trans. Evol.
   * Comput. 6 (2002) 182, table V.
   */
  static Posed tnk() {
    return new Posed(
        "TNK",
        2,
        Curve.of(1.1, 1.1),
        g -> {
          double x = Math.PI * g[0];
          double y = Math.PI * g[1];
          double violation =
              Math.max(0, 1 + 0.1 * Math.cos(16 * Math.atan2(x, y)) - x * x - y * y)
                  + Math.max(0, (x - 0.5) * (x - 0.5) + (y - 0.5) * (y - 0.5) - 0.5);
          return violation > 0 ? Merit.infeasible(violation, 2) : Merit.feasible(x, y);
        });
  }

  /** A problem given by a function of the genes. */
  static class Posed implements ParetoProblem {
    private final String name;
    private final int genes;
    private final Curve reference;
    private final Function<double[], Merit> function;

    Posed(String name, int genes, Curve reference, Function<double[], Merit> function) {
      this.name = name;
      this.genes = genes;
      this.reference = reference;
      this.function = function;
    }

    @Override
    public int genes() {
      return genes;
    }

    @Override
    public int objectives() {
      return reference.size();
    }

    @Override
    public Curve reference() {
      return reference;
    }

    @Override
    public String digest() {
      return name;
    }

    @Override
    public List<Merit> evaluate(List<double[]> batch) {
      List<Merit> merits = new ArrayList<>();
      batch.forEach(candidate -> merits.add(function.apply(candidate)));
      return merits;
    }

    @Override
    public String toString() {
      return name;
    }
  }
}

package nullplane.network;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import nullplane.units.Curve;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * Time of one pass of one network over 49 frequencies, on one thread.
 *
 * <ul>
 *   <li>{@code squared}: squared transfer; {@code squaredAndLoad}: with the least load besides;
 *       {@code complex}: complex transfer; {@code sum}: that, and the sum with the main driver.
 *   <li>{@code catalogue}: squared transfer of all 3008 networks of the standard catalogue, for one
 *       stack; divide by their number.
 * </ul>
 *
 * <pre>
 *   mvn -P bench test-compile exec:exec -Dbench="NetworkBenchmark -prof gc"
 * </pre>
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 3, time = 1)
@Fork(1)
public class NetworkBenchmark {
  private static final int POINTS = 49;

  /** The kind of network. */
  @Param({"first", "second", "conjugate", "active"})
  public String network;

  private final double[] re = new double[POINTS];
  private final double[] im = new double[POINTS];
  private final double[] squared = new double[POINTS];
  private final LoadRows stack = new LoadRows(POINTS);
  private final LoadRows scratch = new LoadRows(POINTS);
  private NetworkRows rows;
  private MainDriverRows main;
  private CatalogueRows catalogue;
  private List<NetworkChoice> choices;

  /** Prepares the rows. */
  @Setup
  public void prepare() {
    Curve band = Curve.logSpaced(15, 1000, POINTS);
    double[] stackRe = new double[POINTS];
    double[] stackIm = new double[POINTS];
    for (int f = 0; f < POINTS; f++) {
      double detuning = 5 * (band.at(f) / 30 - 30 / band.at(f));
      stackRe[f] = 6 + 54 / (1 + detuning * detuning);
      stackIm[f] = 6e-3 * band.at(f) - 54 * detuning / (1 + detuning * detuning);
    }
    stack.setImpedance(stackRe, stackIm);
    SeriesCoil coil = CoilMake.standard().coil(8.2e-3);
    LowPassBranch second = LowPassBranch.of(coil, ShuntCapacitor.undamped(100e-6));
    CrossoverFilter filter = new CrossoverFilter(FilterAlignment.LINKWITZ_RILEY_4, 200);
    StackNetwork chosen =
        switch (network) {
          case "first" -> LowPassBranch.ofCoil(coil);
          case "second" -> second;
          case "conjugate" ->
              second
                  .withResonance(
                      MotionalConjugate.Values.of(6, 0.55, 5, 30).exact(CoilMake.standard()))
                  .withZobel(ZobelNetwork.exact(6, 1e-3));
          default -> new ActiveBranch(1.2, Optional.of(filter), Optional.empty());
        };
    rows = chosen.rows(band);
    main = new MainDriver.Modelled(0.2, Optional.of(filter), Polarity.NORMAL, 0.009).rows(band);
    catalogue = new CatalogueRows(NetworkCatalogue.standard(), band);
    choices = NetworkCatalogue.standard().choices().toList();
  }

  /** Squared transfer. */
  @Benchmark
  public double[] squared() {
    rows.transferSquared(stack, scratch, squared);
    return squared;
  }

  /** Squared transfer and least load. */
  @Benchmark
  public double squaredAndLoad() {
    return squared[0] + rows.pass(stack, scratch, squared);
  }

  /** Complex transfer. */
  @Benchmark
  public double[] complex() {
    rows.transfer(stack, scratch, re, im);
    return re;
  }

  /** Complex transfer and sum with the main driver. */
  @Benchmark
  public double[] sum() {
    rows.transfer(stack, scratch, re, im);
    main.sumSquared(re, im, squared);
    return squared;
  }

  /** Every network of the standard catalogue. */
  @Benchmark
  public double catalogue() {
    double least = Double.POSITIVE_INFINITY;
    NetworkChoice last = NetworkChoice.NONE;
    LoadRows load = stack;
    for (NetworkChoice choice : choices) {
      if (choice.capacitor() != last.capacitor() || choice.damping() != last.damping()) {
        load = catalogue.shunted(stack, choice, scratch);
      }
      last = choice;
      catalogue.series(choice.resistor(), choice.coil()).transferSquared(load, squared);
      least = Math.min(least, squared[POINTS - 1]);
    }
    return least;
  }
}

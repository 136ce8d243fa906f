package nullplane.fit;

import java.util.Random;
import java.util.concurrent.TimeUnit;
import nullplane.units.Air;
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
 * Time of a whole fit, all three forms of inductance with all starts, of sweeps of 400 points from
 * 8 Hz to 20 kHz with 1 % noise, on one thread.
 *
 * <ul>
 *   <li>{@code oneSweep}: a sweep in free air.
 *   <li>{@code addedMass}: two sweeps of 400 points as one problem.
 * </ul>
 *
 * <pre>
 *   mvn -P bench test-compile exec:exec -Dbench="WooferFitBenchmark"
 * </pre>
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 3, time = 2)
@Fork(1)
public class WooferFitBenchmark {
  /** Form of the coil that was measured. */
  @Param({"plain", "lossy", "semi"})
  public String coil;

  private FitInput oneSweep;
  private FitInput addedMass;

  /** Makes the sweeps. */
  @Setup
  public void prepare() {
    BenchWoofer woofer =
        new BenchWoofer(
            5.6,
            0.072,
            2900,
            2.7,
            11.3,
            switch (coil) {
              case "plain" -> BenchWoofer.plain(0.9e-3);
              case "lossy" -> BenchWoofer.lossy(0.5e-3, 0.8e-3, 5);
              default -> BenchWoofer.semi(0.02, 0.68);
            });
    Curve axis = Curve.logSpaced(8, 20_000, 400);
    Random random = new Random(1);
    ImpedanceSweep free = woofer.sweep(axis, 0.0065, 0, 0.01, random);
    ImpedanceSweep heavy = woofer.sweep(axis, 0.0065, 0.04, 0.01, random);
    Air air = Air.standard();
    oneSweep = FitInput.inFreeAir(free, new MassAnchor.None(), 0.0531, air);
    addedMass =
        FitInput.inFreeAir(
            free, new MassAnchor.AddedMass(heavy, AirLoad.freeAir(), 0.04, 0), 0.0531, air);
  }

  /** One sweep. */
  @Benchmark
  public SweepFit oneSweep() {
    return WooferFit.of(oneSweep);
  }

  /** Two sweeps. */
  @Benchmark
  public SweepFit addedMass() {
    return WooferFit.of(addedMass);
  }
}

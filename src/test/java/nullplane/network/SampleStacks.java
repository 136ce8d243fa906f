package nullplane.network;

import java.util.Arrays;
import java.util.Optional;
import java.util.Random;
import nullplane.units.Curve;
import org.apache.commons.math3.complex.Complex;

/** Stacks and branches for tests: drivers with one resonance, drawn with a seed. */
final class SampleStacks {
  static final Curve BAND = Curve.logSpaced(15, 1000, 49);

  private SampleStacks() {}

  /** Impedance of a driver: Re + jw Le + Re (Qms/Qes)/(1 + j Qms (f/fs - fs/f)). */
  static Complex driver(double f, double re, double qes, double qms, double fs, double le) {
    return new Complex(re, 2 * Math.PI * f * le)
        .add(new Complex(re * qms / qes).divide(new Complex(1, qms * (f / fs - fs / f))));
  }

  static ComplexCurve driver(Curve band, double re, double qes, double qms, double fs, double le) {
    double[] real = new double[band.size()];
    double[] imaginary = new double[band.size()];
    for (int f = 0; f < band.size(); f++) {
      Complex z = driver(band.at(f), re, qes, qms, fs, le);
      real[f] = z.getReal();
      imaginary[f] = z.getImaginary();
    }
    return ComplexCurve.of(real, imaginary);
  }

  static ComplexCurve stack(Random random) {
    return driver(
        BAND,
        1.5 + 8 * random.nextDouble(),
        0.2 + 1.5 * random.nextDouble(),
        1 + 8 * random.nextDouble(),
        20 + 30 * random.nextDouble(),
        2e-3 * random.nextDouble());
  }

  static ComplexCurve resistance(Curve band, double ohm) {
    double[] real = new double[band.size()];
    Arrays.fill(real, ohm);
    return ComplexCurve.of(real, new double[band.size()]);
  }

  /** A branch of any kind; bits of {@code kind}: resistor, shunt, damping, resonance, zobel. */
  static LowPassBranch branch(int kind, Random random) {
    Optional<Resistor> resistor = chosen(kind, 1, new Resistor(0.1 + 4 * random.nextDouble()));
    SeriesCoil coil = new SeriesCoil(1e-3 + 0.02 * random.nextDouble(), random.nextDouble(), 0.5);
    ShuntCapacitor shunt =
        new ShuntCapacitor(
            new Capacitor(1e-5 + 5e-4 * random.nextDouble()),
            chosen(kind, 4, new Resistor(0.5 + 5 * random.nextDouble())));
    MotionalConjugate resonance =
        new MotionalConjugate(
            random.nextBoolean()
                ? Optional.of(new Resistor(1 + 5 * random.nextDouble()))
                : Optional.empty(),
            new SeriesCoil(0.01 + 0.02 * random.nextDouble(), 0.5 + random.nextDouble(), 0.9),
            new Capacitor(1e-3 * (0.5 + random.nextDouble())));
    ZobelNetwork zobel =
        ZobelNetwork.exact(2 + 6 * random.nextDouble(), 2e-3 * (0.1 + random.nextDouble()));
    return new LowPassBranch(
        resistor,
        coil,
        chosen(kind, 2, shunt),
        chosen(kind, 8, resonance),
        chosen(kind, 16, zobel));
  }

  private static <T> Optional<T> chosen(int kind, int bit, T value) {
    return (kind & bit) != 0 ? Optional.of(value) : Optional.empty();
  }

  static LoadRows load(ComplexCurve impedance) {
    LoadRows rows = new LoadRows(impedance.size());
    rows.setImpedance(impedance.re().toArray(), impedance.im().toArray());
    return rows;
  }
}

package nullplane.fit;

import java.util.Optional;
import java.util.Random;
import java.util.function.DoubleFunction;
import nullplane.units.Curve;
import org.apache.commons.math3.complex.Complex;

/**
 * A woofer on the bench, as textbook circuit: Re + ZL + Bl^2/(Rms + jw M + Kms/(jw) + Zair).
 * Written from mechanical quantities, so that it shares no formula with what is tested.
 */
public record BenchWoofer(
    double re, double bareKg, double kms, double rms, double bl, DoubleFunction<Complex> coil) {

  public static DoubleFunction<Complex> plain(double le) {
    return w -> new Complex(0, w * le);
  }

  static DoubleFunction<Complex> lossy(double le, double l2, double r2) {
    return w -> {
      Complex shunt = new Complex(0, w * l2);
      return new Complex(0, w * le).add(shunt.multiply(r2).divide(shunt.add(r2)));
    };
  }

  static DoubleFunction<Complex> semi(double k, double n) {
    return w -> new Complex(0, w).pow(n).multiply(k);
  }

  public Complex impedance(double frequencyHz, Complex air, double addedKg) {
    double w = 2 * Math.PI * frequencyHz;
    Complex mechanical = new Complex(rms, w * (bareKg + addedKg) - kms / w).add(air);
    return new Complex(bl * bl).divide(mechanical).add(re).add(coil.apply(w));
  }

  /** A sweep with an air mass, and relative complex noise of the given size. */
  public ImpedanceSweep sweep(
      Curve axis, double airKg, double addedKg, double noise, Random random) {
    return sweep(axis, f -> new Complex(0, 2 * Math.PI * f * airKg), addedKg, noise, random);
  }

  public ImpedanceSweep sweep(
      Curve axis, DoubleFunction<Complex> air, double addedKg, double noise, Random random) {
    double[] real = new double[axis.size()];
    double[] imaginary = new double[axis.size()];
    for (int i = 0; i < axis.size(); i++) {
      Complex error =
          noise > 0
              ? new Complex(1 + noise * random.nextGaussian(), noise * random.nextGaussian())
              : Complex.ONE;
      Complex z = impedance(axis.at(i), air.apply(axis.at(i)), addedKg).multiply(error);
      real[i] = z.getReal();
      imaginary[i] = z.getImaginary();
    }
    return ImpedanceSweep.ofComplex(axis, Curve.of(real), Curve.of(imaginary));
  }

  static ImpedanceSweep withoutPhase(ImpedanceSweep sweep) {
    return new ImpedanceSweep(sweep.frequencyHz(), sweep.magnitudeOhm(), Optional.empty());
  }

  public double fs(double airKg) {
    return Math.sqrt(kms / (bareKg + airKg)) / (2 * Math.PI);
  }

  public double qms(double airKg) {
    return Math.sqrt(kms * (bareKg + airKg)) / rms;
  }

  public double qes(double airKg) {
    return Math.sqrt(kms * (bareKg + airKg)) * re / (bl * bl);
  }
}

package nullplane.driver;

import java.util.SplittableRandom;
import java.util.stream.Stream;
import nullplane.units.Air;

/** Woofers that the checks of this package share. */
final class Woofers {
  private Woofers() {}

  /** Returns a woofer with given mass, stiffness, loss, force factor, Re and area; Le is 0. */
  static Woofer plain(
      double bareMassKg,
      double stiffnessNPerM,
      double lossNsPerM,
      double forceFactorTm,
      double resistanceOhm,
      double areaM2) {
    return new Woofer(
        "hall bench",
        0.3,
        areaM2,
        resistanceOhm,
        0,
        bareMassKg,
        stiffnessNPerM,
        lossNsPerM,
        forceFactorTm,
        0.008,
        150);
  }

  /** Returns the woofer that shows a resonance and quality factors in free air. */
  static Woofer tuned(
      double nominalM,
      double areaM2,
      double bareMassKg,
      double resonanceHz,
      double totalQ,
      double travelM) {
    Woofer shell =
        new Woofer(
            "reading room", nominalM, areaM2, 5.6, 0.9e-3, bareMassKg, 1_000, 1, 5, travelM, 100);
    return Woofer.withResonance(shell, resonanceHz, 5, totalQ, Mounting.FREE_AIR, Air.standard());
  }

  /** Returns woofers drawn at random over the ranges that are made, 200 to 460 mm. */
  static Stream<Woofer> random(long seed, int count) {
    SplittableRandom random = new SplittableRandom(seed);
    return Stream.generate(
            () ->
                new Woofer(
                    "drawn",
                    random.nextDouble(0.2, 0.46),
                    random.nextDouble(0.02, 0.125),
                    random.nextDouble(2.5, 12),
                    random.nextDouble(0, 3e-3),
                    random.nextDouble(0.015, 0.3),
                    random.nextDouble(300, 15_000),
                    random.nextDouble(0.5, 8),
                    random.nextDouble(2, 25),
                    random.nextDouble(0.002, 0.02),
                    random.nextDouble(20, 500)))
        .limit(count);
  }
}

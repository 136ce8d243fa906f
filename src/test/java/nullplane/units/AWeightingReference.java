package nullplane.units;

import nullplane.validation.Check;
import nullplane.validation.Validation;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The closed formula against the printed table of the standard. */
@Tag("reference")
class AWeightingReference {
  /** Tenths of a decade from 1 kHz down, and decibels; 10 Hz to 1 kHz in third octaves. */
  private static final double[][] TABLE = {
    {-20, -70.4},
    {-19, -63.4},
    {-18, -56.7},
    {-17, -50.5},
    {-16, -44.7},
    {-15, -39.4},
    {-14, -34.6},
    {-13, -30.2},
    {-12, -26.2},
    {-11, -22.5},
    {-10, -19.1},
    {-9, -16.1},
    {-8, -13.4},
    {-7, -10.9},
    {-6, -8.6},
    {-5, -6.6},
    {-4, -4.8},
    {-3, -3.2},
    {-2, -1.9},
    {-1, -0.8},
    {0, 0.0}
  };

  /**
   * IEC 61672-1, table 3, column A, at the exact base-ten frequencies 1000 * 10^(n/10) Hz that the
   * nominal ones stand for. Printed to 0.1 dB, so that half of that is the tolerance.
   */
  @Test
  void table() {
    Check check =
        Validation.check(
                "A-weighting from 10 Hz to 1 kHz",
                "IEC 61672-1, table 3, column A; printed to 0.1 dB.")
            .in("dB");
    for (double[] row : TABLE) {
      check.add(row[1], AWeighting.atDb(1000 * Math.pow(10, row[0] / 10)));
    }
    check.within(0.05 + 1e-9);
  }
}

package nullplane.scoring;

import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import nullplane.units.Curve;

/**
 * The frequencies a panel is studied at when nothing else is asked for.
 *
 * <p>Source: IEC 61260-1:2014, exact midband frequencies of one-third-octave bands, base 10: 1000
 * Hz times 10^(n/10).
 */
public final class StudyAxis {
  private static final int LOWEST = -17;
  private static final int FINE_FROM = -4;

  private StudyAxis() {}

  /** Returns the exact third-octave midbands from 20 Hz (19.95 Hz) to 1 kHz (Hz). */
  public static Curve thirdOctaves() {
    return Curve.of(IntStream.rangeClosed(LOWEST, 0).mapToDouble(n -> midband(n / 10.0)).toArray());
  }

  /**
   * Returns the frequencies of the pictures: the third-octave midbands from 20 Hz to 1 kHz, with
   * one point between two of them below 400 Hz and three points above (Hz).
   */
  public static Curve pictures() {
    return Curve.of(
        DoubleStream.concat(
                IntStream.range(2 * LOWEST, 2 * FINE_FROM).mapToDouble(n -> midband(n / 20.0)),
                IntStream.rangeClosed(4 * FINE_FROM, 0).mapToDouble(n -> midband(n / 40.0)))
            .toArray());
  }

  private static double midband(double decades) {
    return 1000 * Math.pow(10, decades);
  }
}

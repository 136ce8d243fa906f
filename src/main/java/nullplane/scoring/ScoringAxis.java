package nullplane.scoring;

import java.util.ArrayList;
import java.util.List;
import nullplane.units.Curve;

/**
 * The frequencies a spec is solved and scored at, with the corners among them. "Band" is where the
 * shape of the response is judged: from the low corner to the upper one, or beyond it if a slope or
 * a sum with a main driver is asked for.
 *
 * @param frequencyHz the axis (Hz), ascending
 * @param firstInBand index of the low corner
 * @param lastInBand index of the band's upper end
 * @param bandWeights weight of each band point in a mean over log frequency (1), summing to 1
 */
public record ScoringAxis(Curve frequencyHz, int firstInBand, int lastInBand, Curve bandWeights) {
  private static final double LOWEST_HZ = 20;
  private static final double HIGHEST_HZ = 1000;
  private static final double POINTS_PER_DECADE = 28;
  private static final double DRAWN_PER_DECADE = 80;
  private static final double SAME_FREQUENCY = 1e-12;

  /**
   * Returns the axis of a spec: log-spaced in parts that meet at the corners, at least from 20 Hz
   * to 1 kHz, about 28 points a decade.
   *
   * @param spec the spec
   */
  public static ScoringAxis of(DesignSpec spec) {
    return of(spec, POINTS_PER_DECADE);
  }

  /**
   * Returns the axis of a spec's curves: the same ends and corners, about 80 points a decade.
   *
   * @param spec the spec
   */
  public static Curve drawnFor(DesignSpec spec) {
    return of(spec, DRAWN_PER_DECADE).frequencyHz();
  }

  private static ScoringAxis of(DesignSpec spec, double perDecade) {
    List<Double> nodes = new ArrayList<>();
    nodes.add(spec.target().lowCornerHz());
    nodes.addAll(spec.upperCornersHz());
    double top = spec.shapeTopHz();
    if (top > nodes.get(nodes.size() - 1)) {
      nodes.add(top);
    }
    double low = nodes.get(0);
    double lowest = Math.min(LOWEST_HZ, 0.7 * low);
    double corner = spec.highestCornerHz();
    double highest = Math.max(HIGHEST_HZ, Math.max(1.5 * corner, 1.05 * top));
    int below = cells(lowest, low, perDecade);
    int above = cells(top, highest, perDecade);
    int inside = 0;
    for (int n = 1; n < nodes.size(); n++) {
      inside += cells(nodes.get(n - 1), nodes.get(n), perDecade);
    }
    double[] axis = new double[below + inside + above + 1];
    double[] weights = new double[inside + 1];
    fill(axis, 0, Curve.logSpaced(lowest, low, below + 1));
    int at = 0;
    for (int n = 1; n < nodes.size(); n++) {
      double from = nodes.get(n - 1);
      double to = nodes.get(n);
      int cells = cells(from, to, perDecade);
      fill(axis, below + at, Curve.logSpaced(from, to, cells + 1));
      double cell = Math.log(to / from) / Math.log(top / low) / cells;
      for (int i = 0; i < cells; i++) {
        weights[at + i] += cell / 2;
        weights[at + i + 1] += cell / 2;
      }
      at += cells;
    }
    fill(axis, below + inside, Curve.logSpaced(top, highest, above + 1));
    return new ScoringAxis(Curve.of(axis), below, below + inside, Curve.of(weights));
  }

  private static int cells(double from, double to, double perDecade) {
    return Math.max(2, (int) Math.round(perDecade * Math.log10(to / from)));
  }

  private static void fill(double[] axis, int offset, Curve part) {
    for (int i = 0; i < part.size(); i++) {
      axis[offset + i] = part.at(i);
    }
  }

  /** Returns the frequencies of the band, both ends included (Hz). */
  public Curve bandHz() {
    double[] band = new double[pointsInBand()];
    for (int b = 0; b < band.length; b++) {
      band[b] = frequencyHz.at(firstInBand + b);
    }
    return Curve.of(band);
  }

  /**
   * Returns the index of a corner on the axis.
   *
   * @param hz the corner (Hz)
   * @throws IllegalArgumentException if it is none of the axis
   */
  int indexOf(double hz) {
    for (int f = 0; f < frequencyHz.size(); f++) {
      if (Math.abs(frequencyHz.at(f) - hz) <= SAME_FREQUENCY * hz) {
        return f;
      }
    }
    throw new IllegalArgumentException(hz + " Hz is no corner of this axis");
  }

  /** Returns the number of points in the band, corners included. */
  public int pointsInBand() {
    return lastInBand - firstInBand + 1;
  }
}

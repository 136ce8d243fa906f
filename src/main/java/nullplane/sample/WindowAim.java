package nullplane.sample;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * How far figures are from a brief's windows, and from the narrower ranges that a change aims at: a
 * window's inner half, or less where the measurement is so uncertain that its guard band takes
 * more. Distances are in half widths of the window; of an open one, in tenths of its limit.
 */
final class WindowAim {
  /** Share of a window's half width that is aimed at: room for what the maker misses (1). */
  private static final double INNER = 0.5;

  private static final double OPEN_SCALE = 0.1;

  /** Cost of a half width beyond the aim, in usual steps (1). */
  private static final double PER_AIM = 10;

  /** Cost of a half width beyond the window, in usual steps (1). */
  private static final double PER_WINDOW = 1000;

  private final BenchFigure figure;
  private final double lower;
  private final double upper;
  private final double aimLower;
  private final double aimUpper;
  private final double scale;

  private WindowAim(BenchFigure figure, BriefWindow window, double uncertainty) {
    this.figure = figure;
    lower = window.lower().orElse(Double.NEGATIVE_INFINITY);
    upper = window.upper().orElse(Double.POSITIVE_INFINITY);
    if (window.lower().isPresent() && window.upper().isPresent()) {
      double half = (upper - lower) / 2;
      double middle = (upper + lower) / 2;
      double aim = Math.max(0, Math.min(INNER * half, half - uncertainty));
      aimLower = middle - aim;
      aimUpper = middle + aim;
      scale = half > 0 ? half : OPEN_SCALE * Math.max(Math.abs(middle), Double.MIN_NORMAL);
    } else {
      aimLower = lower + uncertainty;
      aimUpper = upper - uncertainty;
      double limit = window.lower().isPresent() ? lower : upper;
      scale = OPEN_SCALE * Math.max(Math.abs(limit), Double.MIN_NORMAL);
    }
  }

  /**
   * Returns the aims of a brief: of each figure that has a window.
   *
   * @param brief the brief
   * @param uncertainty half width of each figure's 95 % interval (SI); 0 where there is none
   */
  static List<WindowAim> of(SampleBrief brief, Map<BenchFigure, Double> uncertainty) {
    List<WindowAim> aims = new ArrayList<>();
    for (BenchFigure figure : BenchFigure.values()) {
      BriefWindow window = brief.window(figure.key());
      if (window.limits()) {
        aims.add(new WindowAim(figure, window, uncertainty.getOrDefault(figure, 0.0)));
      }
    }
    return aims;
  }

  BenchFigure figure() {
    return figure;
  }

  /** Returns whether a value lies in the window itself. */
  boolean accepts(double value) {
    return value >= lower && value <= upper;
  }

  /** Returns the cost of a value (usual steps). */
  double cost(double value) {
    double aim = Math.max(0, Math.max(aimLower - value, value - aimUpper));
    double window = Math.max(0, Math.max(lower - value, value - upper));
    return (PER_AIM * aim + PER_WINDOW * window) / scale;
  }
}

package nullplane.report;

import java.util.List;
import nullplane.scoring.Assessment;
import nullplane.scoring.DesignSpec;

/** The four pictures of a woofer on a panel system. */
public final class Charts {
  private Charts() {}

  /** What a picture shows. */
  public enum Kind {
    /** Level of each stack against its corridor. */
    LEVEL("level"),
    /** Loudest level of each stack and what binds it. */
    LOUDEST("loudest"),
    /** Impedance modulus of each stack. */
    IMPEDANCE("impedance"),
    /** Peak excursion in each stack. */
    EXCURSION("excursion");

    private final String fileStem;

    Kind(String fileStem) {
      this.fileStem = fileStem;
    }

    /** Returns the picture's file name without its ending. */
    public String fileStem() {
      return fileStem;
    }
  }

  /**
   * Returns a picture of a woofer.
   *
   * @param kind what it shows
   * @param spec the spec
   * @param woofer the woofer
   * @param title what to call the woofer, for example "Woofer 1"
   * @param ranges the axes, the same for all woofers of a run
   */
  public static Picture of(
      Kind kind, DesignSpec spec, Assessment woofer, String title, PlotRanges ranges) {
    return switch (kind) {
      case LEVEL -> new LevelChart(spec, woofer, title, ranges).picture();
      case LOUDEST -> new LoudestChart(spec, woofer, title, ranges).picture();
      case IMPEDANCE -> OverlayChart.impedance(spec, woofer, title, ranges);
      case EXCURSION -> OverlayChart.excursion(spec, woofer, title, ranges);
    };
  }

  /** Returns the title of a level axis, with its unit, reference and condition. */
  static String levelTitle(DesignSpec spec, String what, String condition) {
    return what
        + " at "
        + plain(spec.listening().distanceM())
        + " m"
        + condition
        + " (dB re 20 \u00b5Pa)";
  }

  /** Returns a number of the spec as it was written, without trailing zeros. */
  static String plain(double value) {
    return java.math.BigDecimal.valueOf(value)
        .round(new java.math.MathContext(4))
        .stripTrailingZeros()
        .toPlainString();
  }

  /** Returns multiples of a step in a range, ends included. */
  static List<Double> multiples(nullplane.units.Range range, double step) {
    return java.util.stream.LongStream.rangeClosed(
            (long) Math.ceil(range.lower() / step - 1e-9),
            (long) Math.floor(range.upper() / step + 1e-9))
        .mapToObj(i -> i * step)
        .toList();
  }
}

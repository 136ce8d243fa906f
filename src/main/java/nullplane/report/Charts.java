package nullplane.report;

import java.awt.Color;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.stream.LongStream;
import nullplane.scoring.Assessment;
import nullplane.scoring.DesignSpec;
import nullplane.scoring.StackBrief;
import nullplane.units.Curve;
import nullplane.units.Range;

/** The four pictures of a woofer on a panel system. */
public final class Charts {
  private static final int CORRIDOR_POINTS = 61;

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

  /** Returns where the shape of every stack is judged (Hz). */
  static Range judgedBand(DesignSpec spec) {
    return new Range(spec.target().lowCornerHz(), spec.shapeTopHz());
  }

  /** Fills a stack's corridor: round the wanted level, slope included, over the judged band. */
  static void corridor(FrequencyPlot plot, DesignSpec spec, StackBrief stack, Color fill) {
    Range band = judgedBand(spec);
    Curve frequency = Curve.logSpaced(band.lower(), band.upper(), CORRIDOR_POINTS);
    double[] lower = new double[CORRIDOR_POINTS];
    double[] upper = new double[CORRIDOR_POINTS];
    for (int i = 0; i < CORRIDOR_POINTS; i++) {
      double wanted = spec.wantedDb(stack, frequency.at(i));
      lower[i] = wanted - spec.target().corridorDb();
      upper[i] = wanted + spec.target().corridorDb();
    }
    plot.area(frequency.toArray(), lower, upper, fill);
  }

  /** Returns what a corridor is, for a legend. */
  static String corridorWords(DesignSpec spec) {
    Range band = judgedBand(spec);
    boolean slope = spec.stacks().stream().anyMatch(stack -> stack.main().isEmpty());
    return "target \u00b1"
        + plain(spec.target().corridorDb())
        + " dB, "
        + plain(band.lower())
        + " to "
        + plain(band.upper())
        + " Hz"
        + (spec.target().upperOrder() > 0 && slope
            ? ", falling " + 6 * spec.target().upperOrder() + " dB per octave"
            : "");
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
    return BigDecimal.valueOf(value).round(new MathContext(4)).stripTrailingZeros().toPlainString();
  }

  /** Returns multiples of a step in a range, ends included. */
  static List<Double> multiples(Range range, double step) {
    return LongStream.rangeClosed(
            (long) Math.ceil(range.lower() / step - 1e-9),
            (long) Math.floor(range.upper() / step + 1e-9))
        .mapToObj(i -> i * step)
        .toList();
  }
}

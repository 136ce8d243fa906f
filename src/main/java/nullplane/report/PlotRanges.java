package nullplane.report;

import java.util.List;
import java.util.function.Function;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import nullplane.scoring.Assessment;
import nullplane.scoring.DesignSpec;
import nullplane.scoring.StackAssessment;
import nullplane.scoring.StackBrief;
import nullplane.scoring.StackCurves;
import nullplane.units.Curve;
import nullplane.units.Range;

/**
 * The value axes of a run: the same for every woofer and stack of it, so that pictures can be held
 * side by side. Ends are round numbers and leave room for what is asked, so that no small ripple
 * fills a plot.
 *
 * @param levelDb level at the target's voltage (dB re 20 uPa)
 * @param loudestDb loudest level (dB re 20 uPa)
 * @param impedanceOhm impedance modulus (ohm), logarithmic
 * @param excursionMm peak excursion (mm), logarithmic
 */
public record PlotRanges(Range levelDb, Range loudestDb, Range impedanceOhm, Range excursionMm) {
  private static final double BELOW_TARGET_DB = 20;
  private static final double ABOVE_TARGET_DB = 8;
  private static final double BELOW_ASKED_DB = 15;
  private static final double GREATEST_SPAN_DB = 70;
  private static final double EXCURSION_RATIO = 1e4;

  /**
   * Returns the axes that suit all woofers of a run.
   *
   * @param spec the spec
   * @param woofers the woofers that are shown, at least one
   */
  public static PlotRanges of(DesignSpec spec, List<Assessment> woofers) {
    List<StackAssessment> all = woofers.stream().flatMap(w -> w.stacks().stream()).toList();
    double highestLevel =
        Stream.of(
                values(all, StackCurves::levelDb),
                values(all, StackCurves::bareLevelDb),
                spec.stacks().stream()
                    .mapToDouble(StackBrief::levelDb)
                    .map(d -> d + ABOVE_TARGET_DB))
            .flatMapToDouble(Function.identity())
            .max()
            .orElse(100);
    double lowestLevel =
        spec.stacks().stream().mapToDouble(stack -> lowestShown(spec, stack)).min().orElse(60);
    double loudest =
        DoubleStream.concat(
                values(all, StackCurves::loudestDb),
                spec.stacks().stream()
                    .mapToDouble(StackBrief::loudestDb)
                    .map(d -> d + ABOVE_TARGET_DB))
            .max()
            .orElse(110);
    double quietest =
        spec.stacks().stream().mapToDouble(StackBrief::loudestDb).min().orElse(90) - BELOW_ASKED_DB;
    double lowestLoad = spec.amplifier().lowestLoadOhm();
    double travelMm =
        woofers.stream().mapToDouble(w -> w.woofer().travelM() * 1e3).max().orElse(10);
    double leastLoad = moduli(all).min().orElse(lowestLoad);
    double greatestLoad = moduli(all).max().orElse(10 * lowestLoad);
    double greatestMm =
        Math.max(travelMm, values(all, StackCurves::excursionM).max().orElse(0) * 1e3);
    double topMm = nextStep(greatestMm * 1.1, true);
    return new PlotRanges(
        tens(lowestLevel, highestLevel),
        tens(quietest, loudest),
        new Range(
            nextStep(Math.min(lowestLoad, leastLoad) * 0.9, false),
            nextStep(Math.max(10 * lowestLoad, greatestLoad) * 1.05, true)),
        new Range(topMm / EXCURSION_RATIO, topMm));
  }

  /** Room below the wanted level, and below the end of its slope (dB re 20 uPa). */
  private static double lowestShown(DesignSpec spec, StackBrief stack) {
    return Math.min(
        stack.levelDb() - BELOW_TARGET_DB,
        spec.wantedDb(stack, spec.shapeTopHz()) - 2 * spec.target().corridorDb());
  }

  private static DoubleStream values(
      List<StackAssessment> stacks, Function<StackCurves, Curve> which) {
    return stacks.stream()
        .flatMapToDouble(s -> which.apply(s.curves()).stream())
        .filter(Double::isFinite);
  }

  private static DoubleStream moduli(List<StackAssessment> stacks) {
    return stacks.stream()
        .flatMapToDouble(s -> DoubleStream.of(modulus(s.curves())))
        .filter(z -> z > 0 && Double.isFinite(z));
  }

  /** Returns the modulus of a stack's impedance (ohm). */
  static double[] modulus(StackCurves curves) {
    double[] modulus = new double[curves.frequencyHz().size()];
    for (int i = 0; i < modulus.length; i++) {
      modulus[i] = Math.hypot(curves.impedanceReOhm().at(i), curves.impedanceImOhm().at(i));
    }
    return modulus;
  }

  private static Range tens(double lowest, double highest) {
    double lower = 10 * Math.floor(lowest / 10);
    double upper = 10 * Math.ceil(highest / 10);
    return new Range(lower, Math.min(upper, lower + GREATEST_SPAN_DB));
  }

  /** Returns the nearest of 1, 2, 5, 10, ... above or below a positive value. */
  static double nextStep(double value, boolean above) {
    double decade = Math.pow(10, Math.floor(Math.log10(value)));
    double[] steps = {1, 2, 5, 10};
    double best = above ? 10 * decade : decade;
    for (double step : steps) {
      double candidate = step * decade;
      if (above ? candidate >= value && candidate < best : candidate <= value && candidate > best) {
        best = candidate;
      }
    }
    return best;
  }
}

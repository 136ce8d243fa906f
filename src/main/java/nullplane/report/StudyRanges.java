package nullplane.report;

import java.util.List;
import java.util.stream.DoubleStream;
import nullplane.units.Range;

/**
 * The value axes of a panel study: the same for every stack, so that pictures can be held side by
 * side.
 *
 * @param massG added mass (g)
 * @param pathM effective path length (m)
 * @param listeningDb level at the listening point (dB re 20 uPa)
 */
record StudyRanges(Range massG, Range pathM, Range listeningDb) {
  /** On-axis response (dB re the free monopole). */
  static final Range ON_AXIS_DB = new Range(-30, 20);

  private static final double LEVEL_SPAN_DB = 50;
  private static final double STEPS = 5;
  private static final double HEADROOM = 1.05;

  /** Returns the axes that suit all stacks. */
  static StudyRanges of(List<StudyCurves> stacks) {
    double mass =
        stacks.stream()
            .flatMapToDouble(
                s ->
                    DoubleStream.concat(
                        DoubleStream.of(s.endlessWallG()),
                        java.util.stream.IntStream.range(0, s.study().brief().pistons().size())
                            .mapToDouble(w -> s.highest(s.addedMassG(w)).value())))
            .max()
            .orElse(1);
    double path =
        stacks.stream()
            .mapToDouble(
                s ->
                    Math.max(
                        s.study().brief().panel().outline().widthM(),
                        Math.max(
                            s.highest(s.pathM(false)).value(), s.highest(s.pathM(true)).value())))
            .max()
            .orElse(1);
    double level =
        stacks.stream()
            .mapToDouble(
                s ->
                    Math.max(
                        s.highest(s.listeningDb(false)).value(),
                        s.highest(s.listeningDb(true)).value()))
            .max()
            .orElse(100);
    double top = 10 * Math.ceil(level / 10);
    return new StudyRanges(fromZero(mass), fromZero(path), new Range(top - LEVEL_SPAN_DB, top));
  }

  private static Range fromZero(double highest) {
    double step = step(highest);
    return new Range(0, step * Math.ceil(HEADROOM * highest / step - 1e-9));
  }

  /** Returns the distance of labelled values on an axis that starts at zero. */
  static double step(double highest) {
    return PlotRanges.nextStep(highest / STEPS, false);
  }
}

package nullplane.cli;

import java.util.ArrayList;
import java.util.List;
import nullplane.acoustics.AdaptiveSweep;
import nullplane.acoustics.PistonSizes;
import nullplane.driver.Woofer;
import nullplane.io.PanelCache;
import nullplane.scoring.DesignSpec;
import nullplane.scoring.ScorersBySize;
import nullplane.scoring.ScoringAxis;
import nullplane.scoring.StackAcoustics;
import nullplane.scoring.SystemScorer;
import nullplane.units.Air;
import nullplane.units.Curve;

/** Solves the panels of a spec and makes what scores woofers on them. */
final class ScorerStep {
  /** Sizes further apart than this, as a ratio, are solved at more radii (1). */
  private static final double NEAR_SIZES = 1.15;

  private static final int RADII_NEAR = 3;
  private static final int RADII_FAR = 5;

  private final DesignSpec spec;
  private final Workers workers;
  private final StopSignal stop;
  private final PanelCache cache;
  private final boolean watched;
  private final Air air = Air.standard();
  private final ScoringAxis axis;

  /**
   * @param spec the spec
   * @param workers threads to solve on
   * @param stop tells when to stop
   * @param cache keeps solved panels
   * @param watched whether to show progress
   */
  ScorerStep(DesignSpec spec, Workers workers, StopSignal stop, PanelCache cache, boolean watched) {
    this.spec = spec;
    this.workers = workers;
    this.stop = stop;
    this.cache = cache;
    this.watched = watched;
    this.axis = ScoringAxis.of(spec);
  }

  /** Returns the scorer of the spec's own piston size. */
  SystemScorer own() {
    List<AdaptiveSweep> sweeps = solve(spec);
    return new SystemScorer(
        spec,
        axis,
        acoustics(sweeps, axis.frequencyHz()),
        acoustics(sweeps, ScoringAxis.drawnFor(spec)),
        air);
  }

  /**
   * Returns scorers for woofers of any size.
   *
   * @param woofers the woofers to be scored; all must fit the panels
   * @param fine whether their curves are wanted on an axis as fine as those of a design
   */
  ScorersBySize bySize(List<Woofer> woofers, boolean fine) {
    List<PistonSizes> sizes = new ArrayList<>();
    List<PistonSizes> drawn = new ArrayList<>();
    if (!woofers.stream().allMatch(woofer -> ScorersBySize.isOwnSize(spec, woofer))) {
      double own = spec.woofer().radiusM();
      double smallest =
          Math.min(own, woofers.stream().mapToDouble(Woofer::radiusM).min().orElse(own));
      double largest =
          Math.max(own, woofers.stream().mapToDouble(Woofer::radiusM).max().orElse(own));
      List<Double> radii =
          PistonSizes.radii(
              smallest, largest, largest / smallest < NEAR_SIZES ? RADII_NEAR : RADII_FAR);
      List<List<AdaptiveSweep>> byRadius =
          radii.stream().map(radius -> solve(spec.withPistonRadius(radius))).toList();
      sizes.addAll(sizes(radii, byRadius, axis.frequencyHz()));
      drawn.addAll(fine ? sizes(radii, byRadius, ScoringAxis.drawnFor(spec)) : sizes);
    }
    return new ScorersBySize(own(), axis, sizes, drawn, air);
  }

  private static List<PistonSizes> sizes(
      List<Double> radii, List<List<AdaptiveSweep>> byRadius, Curve frequencyHz) {
    List<PistonSizes> sizes = new ArrayList<>();
    for (int s = 0; s < byRadius.get(0).size(); s++) {
      int stack = s;
      sizes.add(
          new PistonSizes(
              radii, byRadius.stream().map(sweeps -> sweeps.get(stack).on(frequencyHz)).toList()));
    }
    return sizes;
  }

  private List<AdaptiveSweep> solve(DesignSpec sized) {
    Curve scored = axis.frequencyHz();
    try (ProgressLine progress = new ProgressLine("panels", 0, watched)) {
      return new PanelStep(
              sized, scored.at(0), scored.at(scored.size() - 1), air, workers, progress, stop)
          .solve(cache);
    }
  }

  private List<StackAcoustics> acoustics(List<AdaptiveSweep> sweeps, Curve frequencyHz) {
    List<StackAcoustics> all = new ArrayList<>();
    for (int s = 0; s < sweeps.size(); s++) {
      all.add(new StackAcoustics(spec.stacks().get(s), sweeps.get(s).on(frequencyHz)));
    }
    return all;
  }
}

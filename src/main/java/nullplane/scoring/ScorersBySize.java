package nullplane.scoring;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import nullplane.acoustics.PistonSizes;
import nullplane.driver.Woofer;
import nullplane.units.Air;

/**
 * Scores woofers of any piston size on one spec: each size has its own acoustics. A woofer of the
 * spec's own size meets exactly the scorer that a search for the spec uses. Not for use by several
 * threads at once; the scorers it returns are.
 */
public final class ScorersBySize {
  /** Radii that differ by less, as a share, are one size (1). */
  private static final double SAME_SIZE = 1e-9;

  private final SystemScorer own;
  private final ScoringAxis axis;
  private final List<PistonSizes> sizes;
  private final List<PistonSizes> drawn;
  private final Air air;
  private final Map<Double, SystemScorer> made = new HashMap<>();

  /**
   * @param own scorer of the spec's own size
   * @param axis the frequencies woofers are scored at
   * @param sizes acoustics by radius on that axis, one per stack; empty if only the spec's own size
   *     will be asked for
   * @param drawn the same on the axis of the curves; the same list if that axis is to be used for
   *     them too
   * @param air the air
   */
  public ScorersBySize(
      SystemScorer own,
      ScoringAxis axis,
      List<PistonSizes> sizes,
      List<PistonSizes> drawn,
      Air air) {
    this.own = own;
    this.axis = axis;
    this.sizes = List.copyOf(sizes);
    this.drawn = List.copyOf(drawn);
    this.air = air;
  }

  /** Returns whether a woofer has the spec's own piston size, up to rounding. */
  public static boolean isOwnSize(DesignSpec spec, Woofer woofer) {
    double radius = spec.woofer().radiusM();
    return Math.abs(woofer.radiusM() - radius) <= SAME_SIZE * radius;
  }

  /** Returns the spec. */
  public DesignSpec spec() {
    return own.spec();
  }

  /** Returns the scorer of the spec's own piston size. */
  public SystemScorer own() {
    return own;
  }

  /** Returns the air everything is computed for. */
  public Air air() {
    return air;
  }

  /**
   * Returns the scorer for a woofer's size.
   *
   * @param woofer the woofer
   * @throws IllegalArgumentException if its size is outside those that were solved
   */
  public SystemScorer of(Woofer woofer) {
    if (isOwnSize(own.spec(), woofer)) {
      return own;
    }
    return made.computeIfAbsent(woofer.radiusM(), this::make);
  }

  private SystemScorer make(double radiusM) {
    if (sizes.isEmpty()) {
      throw new IllegalArgumentException("only the spec's own piston size was solved");
    }
    DesignSpec spec = own.spec().withPistonRadius(radiusM);
    List<StackAcoustics> scored = acoustics(spec, sizes, radiusM);
    return new SystemScorer(
        spec, axis, scored, drawn.equals(sizes) ? scored : acoustics(spec, drawn, radiusM), air);
  }

  private static List<StackAcoustics> acoustics(
      DesignSpec spec, List<PistonSizes> sizes, double radiusM) {
    List<StackAcoustics> acoustics = new ArrayList<>();
    for (int s = 0; s < sizes.size(); s++) {
      acoustics.add(new StackAcoustics(spec.stacks().get(s), sizes.get(s).at(radiusM)));
    }
    return acoustics;
  }
}

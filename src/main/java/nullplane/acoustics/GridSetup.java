package nullplane.acoustics;

import java.util.ArrayList;
import java.util.List;

/**
 * A grid with everything that does not depend on frequency: rim, load vectors, whether left and
 * right mirror each other.
 */
final class GridSetup {
  private static final int MOST_FOLDED = 127;

  private final UniformGrid grid;
  private final Rim rim;
  private final List<double[]> heard = new ArrayList<>();
  private final List<double[]> driven = new ArrayList<>();
  private final boolean mirrored;
  private final boolean standsOnFloor;
  private final List<SineProblem> sineProblems;

  /**
   * @param problem the panel and pistons to solve
   * @param grid the grid
   */
  GridSetup(PosedPanel problem, UniformGrid grid) {
    this.grid = grid;
    Outline outline = problem.panel().outline();
    this.rim = new Rim(grid, outline);
    boolean centred = outline.mirrorsLeftToRight();
    for (Piston piston : problem.pistons()) {
      double[] own = grid.loadOf(piston, outline);
      for (int n = 0; n < own.length; n++) {
        own[n] = rim.active(n) ? own[n] : 0;
      }
      heard.add(own);
      driven.add(problem.standsOnFloor() ? withMirror(own) : own);
      centred &= piston.xM() == 0;
    }
    this.mirrored = centred;
    this.standsOnFloor = problem.standsOnFloor();
    this.sineProblems = sineProblems();
  }

  /** A grid with load vectors of its own, none of them mirrored. */
  GridSetup(UniformGrid grid, Outline outline, List<double[]> loads) {
    this.grid = grid;
    this.rim = new Rim(grid, outline);
    this.heard.addAll(loads);
    this.driven.addAll(loads);
    this.mirrored = false;
    this.standsOnFloor = false;
    this.sineProblems = sineProblems();
  }

  private List<SineProblem> sineProblems() {
    if (!rim.plain() || !SineProblem.suits(grid)) {
      return List.of();
    }
    SineProblem same = new SineProblem(grid, true, driven, heard);
    return mirrored ? List.of(same) : List.of(same, new SineProblem(grid, false, driven, heard));
  }

  /** Adds to a load its mirror image in the grid's middle row. */
  private double[] withMirror(double[] load) {
    double[] sum = load.clone();
    int width = grid.nodesX();
    for (int row = 0; row < grid.nodesY(); row++) {
      int mirroredRow = grid.nodesY() - 1 - row;
      for (int column = 0; column < width; column++) {
        sum[row * width + column] += load[mirroredRow * width + column];
      }
    }
    return sum;
  }

  /**
   * Returns the loads in the basis of sine waves, those that are the same left and right and, if
   * there are any, those that change sign; empty for a grid that is better solved at its nodes.
   */
  List<SineProblem> inSineWaves() {
    return sineProblems;
  }

  /** Returns whether what moves in turn is a piston and its mirror image in the middle row. */
  boolean standsOnFloor() {
    return standsOnFloor;
  }

  /** Returns the grid. */
  UniformGrid grid() {
    return grid;
  }

  /** Returns the rim. */
  Rim rim() {
    return rim;
  }

  /** Returns the load vectors of the pistons the force is felt on (m2). */
  List<double[]> heard() {
    return heard;
  }

  /** Returns the load vectors of what moves in turn (m2). */
  List<double[]> driven() {
    return driven;
  }

  /**
   * Returns whether every solution is the same left and right, and the grid narrow enough for the
   * tables of sines that this is used with.
   */
  boolean folds() {
    return mirrored && grid.nodesX() % 2 == 1 && grid.nodesX() <= MOST_FOLDED;
  }
}

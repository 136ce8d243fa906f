package nullplane.acoustics;

import java.util.List;

/**
 * What a rectangular grid's equations need in the basis of sine waves and does not depend on
 * frequency: the matrices of the basis and the loads, for all vectors that are the same left and
 * right or for all that change sign there. The two kinds do not mix, since the panel is the same on
 * both sides. Immutable.
 */
final class SineProblem {
  private static final int MOST_COLUMNS = 160;
  private static final int MOST_ROWS = 256;

  private final UniformGrid grid;
  private final int vectors;
  private final SineBasis basisX;
  private final Along x;
  private final Along oddY;
  private final Along evenY;
  private final RowCombination nodesToWavesX;
  private final RowCombination wavesToNodesX;
  private final RowCombination exchangeY;
  private final double[][] driven;
  private final double[][] heard;

  /** A matrix from sine to cosine waves, its transpose, and the squares of that one's entries. */
  static final class Along {
    private final RowCombination toCosines;
    private final RowCombination toSines;
    private final RowCombination squares;

    private Along(SineBasis basis) {
      toCosines = basis.cosinesOfSines();
      toSines = toCosines.transposed();
      squares = toSines.squared();
    }

    /** Returns the matrix from sine to cosine waves. */
    RowCombination toCosines() {
      return toCosines;
    }

    /** Returns its transpose. */
    RowCombination toSines() {
      return toSines;
    }

    /** Returns the squares of the transpose's entries. */
    RowCombination squares() {
      return squares;
    }
  }

  /**
   * @param grid the grid
   * @param mirrored whether the vectors are the same left and right, or change sign
   * @param driven load vectors of what moves in turn (m2)
   * @param heard load vectors of the pistons the force is felt on (m2)
   */
  SineProblem(UniformGrid grid, boolean mirrored, List<double[]> driven, List<double[]> heard) {
    this.grid = grid;
    this.vectors = driven.size();
    this.basisX = new SineBasis(grid.nodesX(), mirrored);
    SineBasis odd = new SineBasis(grid.nodesY(), true);
    SineBasis even = new SineBasis(grid.nodesY(), false);
    this.x = new Along(basisX);
    this.oddY = new Along(odd);
    this.evenY = new Along(even);
    this.nodesToWavesX =
        RowCombination.of(basisX.sines(), grid.nodesX(), (k, node) -> basisX.sine(k, node + 1));
    this.wavesToNodesX = nodesToWavesX.transposed();
    this.exchangeY =
        RowCombination.of(
            grid.nodesY(),
            grid.nodesY(),
            (q, node) -> (q % 2 == 0 ? odd : even).sine(q / 2, node + 1));
    this.driven = waves(driven);
    this.heard = waves(heard);
  }

  /**
   * Returns whether plain matrices along rows and columns are the faster way: they are for panels
   * of up to some hundred nodes each way.
   */
  static boolean suits(UniformGrid grid) {
    return grid.nodesX() <= MOST_COLUMNS && grid.nodesY() <= MOST_ROWS;
  }

  /** Returns the number of load vectors. */
  int vectors() {
    return vectors;
  }

  /** Returns the number of waves along y. */
  int nodesY() {
    return grid.nodesY();
  }

  /** Returns the waves along x. */
  SineBasis basisX() {
    return basisX;
  }

  /** Returns the matrices along x. */
  Along x() {
    return x;
  }

  /** Returns the matrices along y for odd numbers of half waves. */
  Along oddY() {
    return oddY;
  }

  /** Returns the matrices along y for even numbers of half waves. */
  Along evenY() {
    return evenY;
  }

  /** Returns the loads of what moves, laid out like {@link SineVectors} (m2). */
  double[][] driven() {
    return driven;
  }

  /** Returns the loads of the pistons that the force is felt on, alike (m2). */
  double[][] heard() {
    return heard;
  }

  private double[][] waves(List<double[]> loads) {
    int rows = grid.nodesY();
    double[][] columns = new double[grid.nodesX()][vectors * rows];
    for (int v = 0; v < vectors; v++) {
      double[] load = loads.get(v);
      for (int y = 0; y < rows; y++) {
        for (int column = 0; column < grid.nodesX(); column++) {
          columns[column][v * rows + y] = load[y * grid.nodesX() + column];
        }
      }
    }
    double[][] waves = new double[basisX.sines()][vectors * rows];
    nodesToWavesX.apply(columns, waves, vectors * rows);
    return exchanged(waves);
  }

  /** Between nodes and waves along y: the matrix is its own inverse. */
  private double[][] exchanged(double[][] waves) {
    int rows = grid.nodesY();
    int lanes = waves.length * vectors;
    double[][] from = new double[rows][lanes];
    double[][] to = new double[rows][lanes];
    SineVectors.turn(waves, from, 0, 0, vectors, rows);
    exchangeY.apply(from, to, lanes);
    double[][] result = new double[waves.length][vectors * rows];
    SineVectors.turnBack(to, result, 0, 0, vectors, rows);
    return result;
  }

  /**
   * Adds vectors to others given by their values at the nodes.
   *
   * @param waves the vectors, by waves
   * @param nodes the others, interleaved complex, row by row
   */
  void addTo(SineVectors waves, double[][] nodes) {
    addPart(waves.re, nodes, 0);
    addPart(waves.im, nodes, 1);
  }

  private void addPart(double[][] waves, double[][] nodes, int part) {
    int rows = grid.nodesY();
    double[][] columns = new double[grid.nodesX()][vectors * rows];
    wavesToNodesX.apply(exchanged(waves), columns, vectors * rows);
    for (int v = 0; v < vectors; v++) {
      for (int y = 0; y < rows; y++) {
        for (int column = 0; column < grid.nodesX(); column++) {
          nodes[v][2 * (y * grid.nodesX() + column) + part] += columns[column][v * rows + y];
        }
      }
    }
  }
}

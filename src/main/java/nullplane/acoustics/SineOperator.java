package nullplane.acoustics;

import java.util.Arrays;

/**
 * Product of a rectangular panel's matrix with several vectors in the basis of sine waves, for
 * those that are the same left and right or those that change sign there.
 *
 * <p>A wave of sine type meets the {@link PanelSpectrum} as it stands; the cosine waves of the same
 * vector come from a small real matrix ({@link SineBasis#cosinesOfSines}), along x and along y, and
 * go back by its transpose. There is no other transform, and none for the preconditioner, which is
 * diagonal in this basis. The work grows as the number of unknowns times that of a row or column:
 * for panels of up to some hundred nodes each way that is faster than {@link ToeplitzOperator}. An
 * instance holds work space and serves one thread.
 */
final class SineOperator {
  private final SineProblem problem;
  private final PanelSpectrum spectrum;
  private final int vectors;
  private final int nodesY;
  private final int sines;
  private final int modes;
  private final int[] waves;
  private final double[][] cosineModesRe;
  private final double[][] cosineModesIm;
  private final double[][][] cosineRows;
  private final double[][][] sineRows;

  /**
   * @param problem basis and number of vectors
   * @param spectrum the panel's matrix
   */
  SineOperator(SineProblem problem, PanelSpectrum spectrum) {
    SineBasis basisX = problem.basisX();
    this.problem = problem;
    this.spectrum = spectrum;
    this.vectors = problem.vectors();
    this.nodesY = problem.nodesY();
    this.sines = basisX.sines();
    this.modes = sines + basisX.cosines();
    this.waves = new int[modes];
    for (int i = 0; i < modes; i++) {
      waves[i] = i < sines ? basisX.sineWaves(i) : basisX.cosineWaves(i - sines);
    }
    this.cosineModesRe = new double[basisX.cosines()][vectors * nodesY];
    this.cosineModesIm = new double[basisX.cosines()][vectors * nodesY];
    this.cosineRows = new double[2][nodesY + 2][modes * vectors];
    this.sineRows = new double[2][nodesY + 2][modes * vectors];
  }

  /** Sets output to the matrix times input. */
  void apply(SineVectors input, SineVectors output) {
    int lanes = vectors * nodesY;
    problem.x().toCosines().apply(input.re, cosineModesRe, lanes);
    problem.x().toCosines().apply(input.im, cosineModesIm, lanes);
    SineVectors.turn(input.re, sineRows[0], 1, 0, vectors, nodesY);
    SineVectors.turn(cosineModesRe, sineRows[0], 1, sines, vectors, nodesY);
    SineVectors.turn(input.im, sineRows[1], 1, 0, vectors, nodesY);
    SineVectors.turn(cosineModesIm, sineRows[1], 1, sines, vectors, nodesY);
    alongY();
    SineVectors.turnBack(sineRows[0], output.re, 1, 0, vectors, nodesY);
    SineVectors.turnBack(sineRows[0], cosineModesRe, 1, sines, vectors, nodesY);
    SineVectors.turnBack(sineRows[1], output.im, 1, 0, vectors, nodesY);
    SineVectors.turnBack(sineRows[1], cosineModesIm, 1, sines, vectors, nodesY);
    problem.x().toSines().add(cosineModesRe, output.re, lanes);
    problem.x().toSines().add(cosineModesIm, output.im, lanes);
  }

  /**
   * Returns the inverse of the matrix's diagonal: nearly that of the matrix, since sine waves are
   * nearly its eigenvectors.
   */
  SineVectors inverseDiagonal() {
    double[][][] byRow = new double[2][][];
    for (int part = 0; part < 2; part++) {
      double[][] ofCosines = spectrum.cosines()[part];
      double[][] sums = copy(spectrum.sines()[part]);
      int lanes = sums[0].length;
      problem.oddY().squares().add(everyOther(ofCosines, 0), everyOther(sums, 1), lanes);
      problem.evenY().squares().add(everyOther(ofCosines, 1), everyOther(sums, 2), lanes);
      byRow[part] = sums;
    }
    SineVectors inverse = new SineVectors(sines, nodesY);
    RowCombination squaresX = problem.x().squares();
    for (int k = 0; k < sines; k++) {
      for (int y = 0; y < nodesY; y++) {
        double re = byRow[0][y + 1][waves[k]];
        double im = byRow[1][y + 1][waves[k]];
        for (int mode = sines; mode < modes; mode++) {
          double share = squaresX.weight(k, mode - sines);
          re += share * byRow[0][y + 1][waves[mode]];
          im += share * byRow[1][y + 1][waves[mode]];
        }
        double square = re * re + im * im;
        inverse.re[k][y] = re / square;
        inverse.im[k][y] = -im / square;
      }
    }
    return inverse;
  }

  private static double[][] copy(double[][] rows) {
    double[][] copies = new double[rows.length][];
    for (int i = 0; i < rows.length; i++) {
      copies[i] = rows[i].clone();
    }
    return copies;
  }

  private void alongY() {
    int lanes = modes * vectors;
    for (int part = 0; part < 2; part++) {
      problem
          .oddY()
          .toCosines()
          .apply(everyOther(sineRows[part], 1), everyOther(cosineRows[part], 0), lanes);
      problem
          .evenY()
          .toCosines()
          .apply(everyOther(sineRows[part], 2), everyOther(cosineRows[part], 1), lanes);
    }
    for (int part = 0; part < 2; part++) {
      Arrays.fill(sineRows[part][0], 0);
      Arrays.fill(sineRows[part][nodesY + 1], 0);
    }
    for (int row = 0; row < nodesY + 2; row++) {
      spectrum.multiply(
          row,
          waves,
          vectors,
          new double[][] {cosineRows[0][row], cosineRows[1][row]},
          new double[][] {sineRows[0][row], sineRows[1][row]});
    }
    for (int part = 0; part < 2; part++) {
      problem
          .oddY()
          .toSines()
          .add(everyOther(cosineRows[part], 0), everyOther(sineRows[part], 1), lanes);
      problem
          .evenY()
          .toSines()
          .add(everyOther(cosineRows[part], 1), everyOther(sineRows[part], 2), lanes);
    }
  }

  private static double[][] everyOther(double[][] rows, int first) {
    double[][] chosen = new double[(rows.length - first + 1) / 2][];
    for (int i = 0; i < chosen.length; i++) {
      chosen[i] = rows[first + 2 * i];
    }
    return chosen;
  }
}

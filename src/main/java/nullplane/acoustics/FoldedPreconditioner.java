package nullplane.acoustics;

/**
 * {@link SinePreconditioner} for vectors that are the same left and right, on the left half and the
 * middle column alone: only the sine waves with an odd number of half waves take part. The
 * transform along x is a table of sines. An instance holds work space and serves one thread.
 */
final class FoldedPreconditioner implements VectorMap {
  private final int columns;
  private final int nodesY;
  private final SinePreconditioner.SineTransform alongY;
  private final double[] forward;
  private final double[] backward;
  private final double[] inverseSymbol;
  private final double[] modes;
  private final double[] rowRe;
  private final double[] rowIm;

  /**
   * @param grid the grid, with an odd number of columns
   * @param waveNumber k (1/m)
   */
  FoldedPreconditioner(UniformGrid grid, double waveNumber) {
    int nodesX = grid.nodesX();
    this.columns = (nodesX + 1) / 2;
    this.nodesY = grid.nodesY();
    this.alongY = new SinePreconditioner.SineTransform(nodesY + 1);
    this.forward = new double[columns * columns];
    this.backward = new double[columns * columns];
    this.modes = new double[2 * columns * nodesY];
    this.rowRe = new double[columns];
    this.rowIm = new double[columns];
    for (int c = 0; c < columns; c++) {
      for (int k = 0; k < columns; k++) {
        double sine = Math.sin(Math.PI * (2 * k + 1) * (c + 1) / (nodesX + 1));
        forward[c * columns + k] = (c == columns - 1 ? 1 : 2) * sine;
        backward[k * columns + c] = sine;
      }
    }
    double[] full = SinePreconditioner.inverseSymbol(grid, waveNumber);
    this.inverseSymbol = new double[2 * columns * nodesY];
    for (int k = 0; k < columns; k++) {
      for (int y = 0; y < nodesY; y++) {
        int from = 2 * (y * nodesX + 2 * k);
        inverseSymbol[2 * (k * nodesY + y)] = full[from];
        inverseSymbol[2 * (k * nodesY + y) + 1] = full[from + 1];
      }
    }
  }

  @Override
  public void apply(double[] input, double[] output) {
    for (int y = 0; y < nodesY; y++) {
      combine(input, 2 * y * columns, 2, forward);
      for (int k = 0; k < columns; k++) {
        modes[2 * (k * nodesY + y)] = rowRe[k];
        modes[2 * (k * nodesY + y) + 1] = rowIm[k];
      }
    }
    for (int k = 0; k < columns; k++) {
      int offset = 2 * k * nodesY;
      alongY.transform(modes, offset);
      for (int i = offset; i < offset + 2 * nodesY; i += 2) {
        double re = inverseSymbol[i] * modes[i] - inverseSymbol[i + 1] * modes[i + 1];
        modes[i + 1] = inverseSymbol[i] * modes[i + 1] + inverseSymbol[i + 1] * modes[i];
        modes[i] = re;
      }
      alongY.transform(modes, offset);
    }
    for (int y = 0; y < nodesY; y++) {
      combine(modes, 2 * y, 2 * nodesY, backward);
      for (int c = 0; c < columns; c++) {
        output[2 * (y * columns + c)] = rowRe[c];
        output[2 * (y * columns + c) + 1] = rowIm[c];
      }
    }
  }

  /** Sums entries a stride apart, each times its row of a real matrix, into the row buffers. */
  private void combine(double[] entries, int offset, int stride, double[] matrix) {
    for (int i = 0; i < columns; i++) {
      rowRe[i] = 0;
      rowIm[i] = 0;
    }
    for (int k = 0; k < columns; k++) {
      double re = entries[offset + stride * k];
      double im = entries[offset + stride * k + 1];
      int row = k * columns;
      for (int i = 0; i < columns; i++) {
        rowRe[i] += matrix[row + i] * re;
        rowIm[i] += matrix[row + i] * im;
      }
    }
  }
}

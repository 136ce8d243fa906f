package nullplane.acoustics;

/**
 * Several complex vectors in a basis of sine waves: one row per wave along x; in a row, vector by
 * vector, one place per wave along y. Work space for one thread.
 */
final class SineVectors {
  final double[][] re;
  final double[][] im;

  /**
   * @param rows waves along x
   * @param lanes vectors times waves along y
   */
  SineVectors(int rows, int lanes) {
    this.re = new double[rows][lanes];
    this.im = new double[rows][lanes];
  }

  /**
   * Turns rows per wave along x, in them vector by vector, into rows per place along y, in them
   * wave by wave along x.
   *
   * @param alongY rows to read
   * @param alongX rows to write
   * @param firstRow row of the first place along y
   * @param firstMode place of the first row read
   * @param vectors number of vectors
   * @param places places along y
   */
  static void turn(
      double[][] alongY, double[][] alongX, int firstRow, int firstMode, int vectors, int places) {
    for (int mode = 0; mode < alongY.length; mode++) {
      double[] from = alongY[mode];
      for (int v = 0; v < vectors; v++) {
        int to = (firstMode + mode) * vectors + v;
        for (int y = 0; y < places; y++) {
          alongX[firstRow + y][to] = from[v * places + y];
        }
      }
    }
  }

  /** The way back of {@link #turn}, from its second argument to its first. */
  static void turnBack(
      double[][] alongX, double[][] alongY, int firstRow, int firstMode, int vectors, int places) {
    for (int mode = 0; mode < alongY.length; mode++) {
      double[] to = alongY[mode];
      for (int v = 0; v < vectors; v++) {
        int from = (firstMode + mode) * vectors + v;
        for (int y = 0; y < places; y++) {
          to[v * places + y] = alongX[firstRow + y][from];
        }
      }
    }
  }
}

package nullplane.acoustics;

/**
 * The four cells that meet at R = 0, for {@link KernelTable}: each is cut in two triangles, whose
 * transform to a square cancels 1/R. Points and spline values do not depend on the grid and are
 * kept.
 *
 * <p>Source: M. G. Duffy, SIAM J. Numer. Anal. 19 (1982) 1260. Immutable.
 */
final class SingularCell {
  /** Offsets that the spline reaches from within a cell. */
  private static final int OFFSETS = 3;

  private final int points;
  private final double[] cellsX;
  private final double[] cellsY;
  private final double[] weight;
  private final double[] valueX;
  private final double[] bendX;
  private final double[] valueY;
  private final double[] bendY;

  /**
   * @param size Gauss points each way of a triangle
   */
  SingularCell(int size) {
    GaussRule rule = GaussRule.of(size);
    this.points = 2 * size * size;
    this.cellsX = new double[points];
    this.cellsY = new double[points];
    this.weight = new double[points];
    int n = 0;
    for (int gu = 0; gu < size; gu++) {
      double u = rule.point(gu);
      for (int gv = 0; gv < size; gv++) {
        double v = rule.point(gv);
        for (int triangle = 0; triangle < 2; triangle++) {
          cellsX[n] = triangle == 0 ? u : u * v;
          cellsY[n] = triangle == 0 ? u * v : u;
          weight[n] = rule.weight(gu) * rule.weight(gv) * u;
          n++;
        }
      }
    }
    this.valueX = new double[OFFSETS * points];
    this.bendX = new double[OFFSETS * points];
    this.valueY = new double[OFFSETS * points];
    this.bendY = new double[OFFSETS * points];
    for (n = 0; n < points; n++) {
      for (int offset = 0; offset < OFFSETS; offset++) {
        int at = OFFSETS * n + offset;
        valueX[at] = bothSides(cellsX[n], offset);
        bendX[at] = bendOnBothSides(cellsX[n], offset);
        valueY[at] = bothSides(cellsY[n], offset);
        bendY[at] = bendOnBothSides(cellsY[n], offset);
      }
    }
  }

  private static double bothSides(double position, int offset) {
    return KernelTable.spline(position - offset) + KernelTable.spline(-position - offset);
  }

  private static double bendOnBothSides(double position, int offset) {
    return KernelTable.splineBend(position - offset) + KernelTable.splineBend(-position - offset);
  }

  /**
   * Adds the four cells to a table, row by row, of sizeX x sizeY entries.
   *
   * @param re real parts (m)
   * @param im imaginary parts (m)
   * @param sizeX number of column offsets
   * @param sizeY number of row offsets
   * @param stepX cell width (m)
   * @param stepY cell height (m)
   * @param waveNumber k (1/m)
   */
  void addTo(
      double[] re,
      double[] im,
      int sizeX,
      int sizeY,
      double stepX,
      double stepY,
      double waveNumber) {
    int columns = Math.min(OFFSETS, sizeX);
    int rows = Math.min(OFFSETS, sizeY);
    double area = stepX * stepY;
    double kSquaredArea = waveNumber * waveNumber * area;
    for (int n = 0; n < points; n++) {
      double x = cellsX[n] * stepX;
      double y = cellsY[n] * stepY;
      double distance = Math.sqrt(x * x + y * y);
      double scale = -weight[n] * area / (4 * Math.PI * distance);
      double pointRe = scale * Math.cos(waveNumber * distance);
      double pointIm = -scale * Math.sin(waveNumber * distance);
      for (int j = 0; j < rows; j++) {
        double ofBend = stepY / stepX * valueY[OFFSETS * n + j];
        double ofValue =
            stepX / stepY * bendY[OFFSETS * n + j] + kSquaredArea * valueY[OFFSETS * n + j];
        for (int i = 0; i < columns; i++) {
          double product = ofBend * bendX[OFFSETS * n + i] + ofValue * valueX[OFFSETS * n + i];
          re[j * sizeX + i] += product * pointRe;
          im[j * sizeX + i] += product * pointIm;
        }
      }
    }
  }
}

package nullplane.acoustics;

/**
 * The entries of the hypersingular operator between two hats, as a function of the offset between
 * them.
 *
 * <p>Entry = INT INT [grad v . grad q' - k^2 v q'] G dS dS' with G = exp(-jkR)/(4 pi R). The
 * correlation of two hats of step h is h B(s/h), B the centred cubic B-spline, and that of their
 * slopes is minus its second derivative. An entry is therefore an integral over 4 x 4 cells of a
 * piecewise polynomial times G. Cells take two Gauss points each way, three in rows within eight
 * cells of R = 0, six within three cells, and the cells that touch R = 0 a transform that cancels
 * 1/R.
 *
 * <p>Symbols: h step, k wave number, s offset, B cubic B-spline. Source: A.-W. Maue, Z. Phys. 126
 * (1949) 601, for the weak form; M. G. Duffy, SIAM J. Numer. Anal. 19 (1982) 1260, for the
 * transform; I. J. Schoenberg, Quart. Appl. Math. 4 (1946) 45, for the spline.
 */
final class KernelTable {
  private static final int NEAR_POINTS = 6;
  private static final int SINGULAR_POINTS = 10;
  private static final int NEAR_CELLS = 3;
  private static final int FAR_CELLS = 8;
  private static final GaussRule FAR_RULE = GaussRule.of(2);
  private static final GaussRule MIDDLE_RULE = GaussRule.of(3);
  private static final GaussRule NEAR_RULE = GaussRule.of(NEAR_POINTS);
  private static final GaussRule SINGULAR_RULE = GaussRule.of(SINGULAR_POINTS);

  private final int sizeX;
  private final int sizeY;
  private final double stepX;
  private final double stepY;
  private final double originY;
  private final boolean evenInY;
  private final double waveNumber;
  private final double[] re;
  private final double[] im;

  private KernelTable(
      int sizeX,
      int sizeY,
      double stepX,
      double stepY,
      double originY,
      boolean evenInY,
      double waveNumber) {
    this.sizeX = sizeX;
    this.sizeY = sizeY;
    this.stepX = stepX;
    this.stepY = stepY;
    this.originY = originY;
    this.evenInY = evenInY;
    this.waveNumber = waveNumber;
    this.re = new double[sizeX * sizeY];
    this.im = new double[sizeX * sizeY];
    addFarCells();
    addNearCells();
  }

  /**
   * Returns the table of a panel against itself: entry (i, j) is for hats i columns and j rows
   * apart.
   *
   * @param grid the grid
   * @param waveNumber k (1/m)
   */
  static KernelTable direct(UniformGrid grid, double waveNumber) {
    return new KernelTable(
        grid.nodesX(), grid.nodesY(), grid.stepX(), grid.stepY(), 0, true, waveNumber);
  }

  /**
   * Returns the table of a panel against its image in a floor: entry (i, j) is for hats i columns
   * apart whose rows, both counted from the lowest, sum to j.
   *
   * @param grid the grid
   * @param floorBelowCentreM depth of the floor below the panel's centre (m)
   * @param waveNumber k (1/m)
   */
  static KernelTable image(UniformGrid grid, double floorBelowCentreM, double waveNumber) {
    double originY = 2 * (grid.nodeY(0) + floorBelowCentreM);
    return new KernelTable(
        grid.nodesX(),
        2 * grid.nodesY() - 1,
        grid.stepX(),
        grid.stepY(),
        originY,
        false,
        waveNumber);
  }

  /** Returns the number of column offsets. */
  int sizeX() {
    return sizeX;
  }

  /** Returns the number of row offsets, or row sums. */
  int sizeY() {
    return sizeY;
  }

  /** Returns the real parts, one array per column offset (m). */
  double[][] columnsRe() {
    return columns(re);
  }

  /** Returns the imaginary parts, one array per column offset (m). */
  double[][] columnsIm() {
    return columns(im);
  }

  private double[][] columns(double[] table) {
    double[][] columns = new double[sizeX][sizeY];
    for (int y = 0; y < sizeY; y++) {
      for (int x = 0; x < sizeX; x++) {
        columns[x][y] = table[y * sizeX + x];
      }
    }
    return columns;
  }

  /** Returns the real part of an entry (m). */
  double re(int x, int y) {
    return re[y * sizeX + x];
  }

  /** Returns the imaginary part of an entry (m). */
  double im(int x, int y) {
    return im[y * sizeX + x];
  }

  /** Whether a cell, counted from the table's origin, lies near R = 0. */
  private boolean isNear(int cellX, int cellY) {
    return cellX < NEAR_CELLS && originY + cellY * stepY < NEAR_CELLS * stepY - 1e-9 * stepY;
  }

  /** Adds all cells but the near ones: rows within eight cells of R = 0 by the finer rule. */
  private void addFarCells() {
    int first = evenInY ? 0 : -2;
    int last = sizeY + 1;
    int split = (int) Math.ceil(FAR_CELLS - originY / stepY - 1e-9);
    split = Math.max(first, Math.min(last, split));
    addRowsOfCells(MIDDLE_RULE, first, split);
    addRowsOfCells(FAR_RULE, split, last);
  }

  private void addRowsOfCells(GaussRule rule, int firstCell, int endCell) {
    int points = rule.size();
    double[][] value = new double[4][points];
    double[][] bend = new double[4][points];
    for (int piece = 0; piece < 4; piece++) {
      for (int g = 0; g < points; g++) {
        value[piece][g] = rule.weight(g) * spline(piece - 2 + rule.point(g));
        bend[piece][g] = rule.weight(g) * splineBend(piece - 2 + rule.point(g));
      }
    }
    int cellsX = sizeX + 1;
    double[] rowRe = new double[cellsX * points];
    double[] rowIm = new double[cellsX * points];
    double[] sums = new double[4 * sizeX];
    double[] abscissaSquared = new double[cellsX * points];
    for (int cell = 0; cell < cellsX; cell++) {
      for (int g = 0; g < points; g++) {
        double x = (cell + rule.point(g)) * stepX;
        abscissaSquared[cell * points + g] = x * x;
      }
    }
    for (int cellY = firstCell; cellY < endCell; cellY++) {
      int nearCells = isNear(0, cellY) ? Math.min(NEAR_CELLS, cellsX) : 0;
      for (int gy = 0; gy < points; gy++) {
        double y = originY + (cellY + rule.point(gy)) * stepY;
        fillRow(rowRe, rowIm, abscissaSquared, y * y, nearCells * points);
        collapseRow(rowRe, rowIm, value, bend, sums, points);
        for (int piece = 0; piece < 4; piece++) {
          addRow(cellY - piece + 2, sums, value[piece][gy], bend[piece][gy]);
          if (evenInY) {
            // the mirrored cell, -1 - cellY, meets the same values in reversed order
            int mirroredGy = points - 1 - gy;
            addRow(-1 - cellY - piece + 2, sums, value[piece][mirroredGy], bend[piece][mirroredGy]);
          }
        }
      }
    }
  }

  /** Fills one line of quadrature points with G, zero in the cells that are done elsewhere. */
  private void fillRow(
      double[] rowRe, double[] rowIm, double[] abscissaSquared, double ySquared, int skip) {
    for (int i = 0; i < skip; i++) {
      rowRe[i] = 0;
      rowIm[i] = 0;
    }
    for (int i = skip; i < rowRe.length; i++) {
      double distance = Math.sqrt(abscissaSquared[i] + ySquared);
      double scale = 1 / (4 * Math.PI * distance);
      double phase = waveNumber * distance;
      rowRe[i] = scale * Math.cos(phase);
      rowIm[i] = -scale * Math.sin(phase);
    }
  }

  /** Sums a line against the spline and its second derivative for every column offset. */
  private void collapseRow(
      double[] rowRe,
      double[] rowIm,
      double[][] value,
      double[][] bend,
      double[] sums,
      int points) {
    for (int x = 0; x < sizeX; x++) {
      double valueRe = 0;
      double valueIm = 0;
      double bendRe = 0;
      double bendIm = 0;
      for (int piece = 0; piece < 4; piece++) {
        int cell = x + piece - 2;
        for (int g = 0; g < points; g++) {
          int index = cell >= 0 ? cell * points + g : (-1 - cell) * points + points - 1 - g;
          valueRe += value[piece][g] * rowRe[index];
          valueIm += value[piece][g] * rowIm[index];
          bendRe += bend[piece][g] * rowRe[index];
          bendIm += bend[piece][g] * rowIm[index];
        }
      }
      sums[4 * x] = valueRe;
      sums[4 * x + 1] = valueIm;
      sums[4 * x + 2] = bendRe;
      sums[4 * x + 3] = bendIm;
    }
  }

  private void addRow(int y, double[] sums, double valueY, double bendY) {
    if (y < 0 || y >= sizeY) {
      return;
    }
    // correlations h B, bends B''/h, surface element hx hy
    double area = stepX * stepY;
    double ofValue = -area * (stepX / stepY * bendY + waveNumber * waveNumber * area * valueY);
    double ofBend = -area * (stepY / stepX) * valueY;
    int offset = y * sizeX;
    for (int x = 0; x < sizeX; x++) {
      re[offset + x] += ofValue * sums[4 * x] + ofBend * sums[4 * x + 2];
      im[offset + x] += ofValue * sums[4 * x + 1] + ofBend * sums[4 * x + 3];
    }
  }

  private void addNearCells() {
    int cellsX = Math.min(NEAR_CELLS, sizeX + 1);
    int firstCell = evenInY ? 0 : -2;
    for (int cellY = firstCell; cellY < sizeY + 1 && isNear(0, cellY); cellY++) {
      for (int cellX = 0; cellX < cellsX; cellX++) {
        if (evenInY && cellX == 0 && cellY == 0) {
          addSingularCell(SINGULAR_RULE);
        } else {
          addNearCell(cellX, cellY, NEAR_RULE);
        }
      }
    }
  }

  private void addNearCell(int cellX, int cellY, GaussRule rule) {
    for (int gx = 0; gx < rule.size(); gx++) {
      for (int gy = 0; gy < rule.size(); gy++) {
        addPoint(cellX + rule.point(gx), cellY + rule.point(gy), rule.weight(gx) * rule.weight(gy));
      }
    }
  }

  private void addSingularCell(GaussRule rule) {
    for (int gu = 0; gu < rule.size(); gu++) {
      double u = rule.point(gu);
      for (int gv = 0; gv < rule.size(); gv++) {
        double v = rule.point(gv);
        double weight = rule.weight(gu) * rule.weight(gv) * u;
        addPoint(u, u * v, weight);
        addPoint(u * v, u, weight);
      }
    }
  }

  /** Adds one quadrature point (in cells from the table's origin) and its mirror images. */
  private void addPoint(double cellsX, double cellsY, double weight) {
    double x = cellsX * stepX;
    double y = originY + cellsY * stepY;
    double distance = Math.sqrt(x * x + y * y);
    double scale = weight * stepX * stepY / (4 * Math.PI * distance);
    double pointRe = scale * Math.cos(waveNumber * distance);
    double pointIm = -scale * Math.sin(waveNumber * distance);
    for (int mirrorY = 0; mirrorY < (evenInY ? 2 : 1); mirrorY++) {
      double positionY = mirrorY == 0 ? cellsY : -cellsY;
      for (int mirrorX = 0; mirrorX < 2; mirrorX++) {
        double positionX = mirrorX == 0 ? cellsX : -cellsX;
        spread(positionX, positionY, pointRe, pointIm);
      }
    }
  }

  private void spread(double positionX, double positionY, double pointRe, double pointIm) {
    int firstX = Math.max(0, (int) Math.ceil(positionX - 2));
    int lastX = Math.min(sizeX - 1, (int) Math.floor(positionX + 2));
    int firstY = Math.max(0, (int) Math.ceil(positionY - 2));
    int lastY = Math.min(sizeY - 1, (int) Math.floor(positionY + 2));
    double kSquaredArea = waveNumber * waveNumber * stepX * stepY;
    for (int y = firstY; y <= lastY; y++) {
      double valueY = spline(positionY - y);
      double bendY = splineBend(positionY - y);
      for (int x = firstX; x <= lastX; x++) {
        double valueX = spline(positionX - x);
        double bendX = splineBend(positionX - x);
        double weight =
            -(stepY / stepX) * bendX * valueY
                - (stepX / stepY) * valueX * bendY
                - kSquaredArea * valueX * valueY;
        re[y * sizeX + x] += weight * pointRe;
        im[y * sizeX + x] += weight * pointIm;
      }
    }
  }

  /** The centred cubic B-spline: 2/3 at 0, 1/6 at 1, 0 from 2 on. */
  static double spline(double t) {
    double a = Math.abs(t);
    if (a >= 2) {
      return 0;
    }
    if (a >= 1) {
      double b = 2 - a;
      return b * b * b / 6;
    }
    return 2.0 / 3.0 - a * a + a * a * a / 2;
  }

  /** Its second derivative: -2 at 0, 1 at 1, 0 from 2 on. */
  static double splineBend(double t) {
    double a = Math.abs(t);
    if (a >= 2) {
      return 0;
    }
    return a >= 1 ? 2 - a : 3 * a - 2;
  }
}

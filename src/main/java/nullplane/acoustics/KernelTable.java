package nullplane.acoustics;

import java.util.Arrays;

/**
 * The entries of the hypersingular operator between two hats, as a function of the offset between
 * them.
 *
 * <p>Entry = INT INT [grad v . grad q' - k^2 v q'] G dS dS' with G = exp(-jkR)/(4 pi R). The
 * correlation of two hats of step h is h B(s/h), B the centred cubic B-spline, and that of their
 * slopes is minus its second derivative. An entry is therefore an integral over 4 x 4 cells of a
 * piecewise polynomial times G.
 *
 * <p>Where G is smooth, {@link #FAR_CELLS} cells and more from R = 0, the integrals are sums over G
 * at the offsets of the nodes themselves: with d the central difference, INT B(t) g(s + t) dt = (1
 * + d^2/6 - d^4/720 + d^6/3024 - ...) g(s) and INT B''(t) g(s + t) dt = d^2 (1 + d^2/12 - d^4/240 +
 * 31 d^6/60480 - ...) g(s). Nearer, cells take three Gauss points each way, six within three cells,
 * and the cells that touch R = 0 a transform that cancels 1/R.
 *
 * <p>Symbols: h step, k wave number, s offset, B cubic B-spline. Source: A.-W. Maue, Z. Phys. 126
 * (1949) 601, for the weak form; M. G. Duffy, SIAM J. Numer. Anal. 19 (1982) 1260, for the
 * transform; I. J. Schoenberg, Quart. Appl. Math. 4 (1946) 45, for the spline, whose Fourier
 * transform (sin(w/2)/(w/2))^4 is expanded in powers of d^2 = -4 sin^2(w/2); a test compares.
 */
final class KernelTable {
  private static final int SINGULAR_POINTS = 10;
  private static final int NEAR_CELLS = 3;
  private static final int FAR_CELLS = 6;
  private static final GaussRule MIDDLE_RULE = GaussRule.of(3);
  private static final GaussRule NEAR_RULE = GaussRule.of(6);
  private static final SingularCell SINGULAR_CELL = new SingularCell(SINGULAR_POINTS);

  /** Farthest sample that a sum reaches. */
  private static final int REACH = 4;

  private static final double[] VALUE_SUM = differences(0, 1, 1.0 / 6, -1.0 / 720, 1.0 / 3024);
  private static final double[] BEND_SUM = differences(1, 1, 1.0 / 12, -1.0 / 240, 31.0 / 60480);

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
    addSamples();
    int nearX = Math.min(sizeX, (int) Math.ceil(FAR_CELLS * Math.max(1, stepY / stepX)));
    int nearY = (int) Math.ceil(FAR_CELLS * Math.max(1, stepX / stepY) - originY / stepY - 1e-9);
    if (nearY > 0) {
      addCells(nearX, Math.min(sizeY, nearY));
    }
  }

  /** Weights of the samples from -REACH to REACH in d^(2 first) (c0 + c1 d^2 + c2 d^4 + ...). */
  private static double[] differences(int first, double... coefficients) {
    double[] sum = new double[2 * REACH + 1];
    double[] power = new double[2 * REACH + 1];
    power[REACH] = 1;
    for (int order = 0; order < first + coefficients.length; order++) {
      if (order >= first) {
        for (int i = 0; i < sum.length; i++) {
          sum[i] += coefficients[order - first] * power[i];
        }
      }
      double[] next = new double[power.length];
      for (int i = 1; i + 1 < power.length; i++) {
        next[i] = power[i - 1] - 2 * power[i] + power[i + 1];
      }
      // the outermost places are reached by the last order alone
      next[0] = power[1];
      next[2 * REACH] = power[2 * REACH - 1];
      power = next;
    }
    return sum;
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

  /** Sets all entries to sums of G at the offsets of nodes; those near R = 0 come out wrong. */
  private void addSamples() {
    int samples = sizeX + REACH;
    double[] xSquared = new double[samples];
    for (int x = 0; x < samples; x++) {
      xSquared[x] = x * stepX * (x * stepX);
    }
    double[] rowRe = new double[samples];
    double[] rowIm = new double[samples];
    Sums sums = new Sums(sizeX);
    for (int row = evenInY ? 0 : -REACH; row < sizeY + REACH; row++) {
      double y = originY + row * stepY;
      fillRow(rowRe, rowIm, xSquared, y * y, 0, samples);
      sums.clear(sizeX);
      for (int j = -REACH; j <= REACH; j++) {
        double value = VALUE_SUM[j + REACH];
        double bend = BEND_SUM[j + REACH];
        for (int x = 0; x < sizeX; x++) {
          double re = rowRe[Math.abs(x + j)];
          double im = rowIm[Math.abs(x + j)];
          sums.valueRe[x] += value * re;
          sums.valueIm[x] += value * im;
          sums.bendRe[x] += bend * re;
          sums.bendIm[x] += bend * im;
        }
      }
      for (int j = -REACH; j <= REACH; j++) {
        addRow(row - j, sizeX, sizeY, sums, VALUE_SUM[j + REACH], BEND_SUM[j + REACH]);
        if (evenInY && row > 0) {
          addRow(-row - j, sizeX, sizeY, sums, VALUE_SUM[j + REACH], BEND_SUM[j + REACH]);
        }
      }
    }
  }

  /** Computes the entries near R = 0 anew, cell by cell. */
  private void addCells(int nearX, int nearY) {
    for (int y = 0; y < nearY; y++) {
      Arrays.fill(re, y * sizeX, y * sizeX + nearX, 0);
      Arrays.fill(im, y * sizeX, y * sizeX + nearX, 0);
    }
    int cellsX = nearX + 1;
    int first = evenInY ? 0 : -2;
    int nearest = Math.min(NEAR_CELLS, cellsX);
    for (int cellY = first; cellY < nearY + 1; cellY++) {
      boolean isNear = originY + cellY * stepY < NEAR_CELLS * stepY - 1e-9 * stepY;
      boolean isSingular = evenInY && cellY == 0;
      if (isNear) {
        addRowOfCells(NEAR_RULE, cellY, isSingular ? 1 : 0, nearest, nearX, nearY);
      }
      addRowOfCells(MIDDLE_RULE, cellY, isNear ? nearest : 0, cellsX, nearX, nearY);
    }
    if (evenInY) {
      SINGULAR_CELL.addTo(re, im, sizeX, sizeY, stepX, stepY, waveNumber);
    }
  }

  /** Adds the cells of a row, from one to before another, to the entries near R = 0. */
  private void addRowOfCells(
      GaussRule rule, int cellY, int firstX, int endX, int nearX, int nearY) {
    int points = rule.size();
    double[][] value = new double[4][points];
    double[][] bend = new double[4][points];
    for (int piece = 0; piece < 4; piece++) {
      for (int g = 0; g < points; g++) {
        value[piece][g] = rule.weight(g) * spline(piece - 2 + rule.point(g));
        bend[piece][g] = rule.weight(g) * splineBend(piece - 2 + rule.point(g));
      }
    }
    // cells that a spline at the last offset reaches, those beyond the end left at zero
    double[] rowRe = new double[(nearX + 2) * points];
    double[] rowIm = new double[(nearX + 2) * points];
    double[] xSquared = new double[endX * points];
    for (int cell = firstX; cell < endX; cell++) {
      for (int g = 0; g < points; g++) {
        double x = (cell + rule.point(g)) * stepX;
        xSquared[cell * points + g] = x * x;
      }
    }
    Sums sums = new Sums(nearX);
    for (int gy = 0; gy < points; gy++) {
      double y = originY + (cellY + rule.point(gy)) * stepY;
      fillRow(rowRe, rowIm, xSquared, y * y, firstX * points, endX * points);
      collapseRow(rowRe, rowIm, value, bend, sums, nearX, points);
      for (int piece = 0; piece < 4; piece++) {
        addRow(cellY - piece + 2, nearX, nearY, sums, value[piece][gy], bend[piece][gy]);
        if (evenInY) {
          // the mirrored cell, -1 - cellY, meets the same values in reversed order
          int mirrored = points - 1 - gy;
          addRow(
              1 - cellY - piece, nearX, nearY, sums, value[piece][mirrored], bend[piece][mirrored]);
        }
      }
    }
  }

  /** A line of G summed against the spline and its second derivative, for each column offset. */
  private static final class Sums {
    private final double[] valueRe;
    private final double[] valueIm;
    private final double[] bendRe;
    private final double[] bendIm;

    Sums(int size) {
      valueRe = new double[size];
      valueIm = new double[size];
      bendRe = new double[size];
      bendIm = new double[size];
    }

    void clear(int size) {
      Arrays.fill(valueRe, 0, size, 0);
      Arrays.fill(valueIm, 0, size, 0);
      Arrays.fill(bendRe, 0, size, 0);
      Arrays.fill(bendIm, 0, size, 0);
    }
  }

  /** Fills a part of a line with G, 0 at R = 0. */
  private void fillRow(
      double[] rowRe, double[] rowIm, double[] xSquared, double ySquared, int first, int end) {
    for (int i = first; i < end; i++) {
      double distance = Math.sqrt(xSquared[i] + ySquared);
      double scale = distance > 0 ? 1 / (4 * Math.PI * distance) : 0;
      double phase = waveNumber * distance;
      rowRe[i] = scale * Math.cos(phase);
      rowIm[i] = -scale * Math.sin(phase);
    }
  }

  private static void collapseRow(
      double[] rowRe,
      double[] rowIm,
      double[][] value,
      double[][] bend,
      Sums sums,
      int count,
      int points) {
    for (int x = 0; x < count; x++) {
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
      sums.valueRe[x] = valueRe;
      sums.valueIm[x] = valueIm;
      sums.bendRe[x] = bendRe;
      sums.bendIm[x] = bendIm;
    }
  }

  /** Adds a line to the first entries of a row, if the row is among the first ones. */
  private void addRow(int y, int columns, int rows, Sums sums, double valueY, double bendY) {
    if (y < 0 || y >= rows) {
      return;
    }
    // correlations h B, bends B''/h, surface element hx hy
    double area = stepX * stepY;
    double ofValue = -area * (stepX / stepY * bendY + waveNumber * waveNumber * area * valueY);
    double ofBend = -area * (stepY / stepX) * valueY;
    int offset = y * sizeX;
    for (int x = 0; x < columns; x++) {
      re[offset + x] += ofValue * sums.valueRe[x] + ofBend * sums.bendRe[x];
      im[offset + x] += ofValue * sums.valueIm[x] + ofBend * sums.bendIm[x];
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

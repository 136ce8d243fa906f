package nullplane.acoustics;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;
import org.jtransforms.fft.DoubleFFT_1D;

/**
 * The panel's matrix on a rectangle, taken apart into waves along x and y.
 *
 * <p>With m = nodes + 1, an entry that depends on the distance d of two nodes is (1/m) SUM D_p
 * cos(pi p d/m), p from 0 to m, the ends half, D_p = SUM over d of entry cos(pi p d/m); one that
 * depends on the sum of their numbers has a sine part as well. Cosine and sine of a sum or
 * difference split into products, so that waves of one p go to waves of the same p: those of cosine
 * type by D + Hc, those of sine type by D - Hc, and into each other by Hs, with D of the panel and
 * Hc, Hs of its image along y. Along x there are distances alone.
 *
 * <p>Source: addition theorems; the doubling of a Toeplitz matrix to a circulant is standard.
 * Immutable.
 */
final class PanelSpectrum {
  private final int rows;
  private final int modes;
  private final double[][] cosineRe;
  private final double[][] cosineIm;
  private final double[][] sineRe;
  private final double[][] sineIm;
  private final double[][] crossRe;
  private final double[][] crossIm;

  /**
   * @param direct the panel against itself
   * @param image the panel against its image in the floor; null without a floor
   */
  PanelSpectrum(KernelTable direct, @Nullable KernelTable image) {
    int nodesY = direct.sizeY();
    this.modes = direct.sizeX() + 2;
    this.rows = nodesY + 2;
    this.cosineRe = new double[rows][modes];
    this.cosineIm = new double[rows][modes];
    this.sineRe = new double[rows][modes];
    this.sineIm = new double[rows][modes];
    boolean crosses = image != null;
    this.crossRe = new double[crosses ? rows : 0][modes];
    this.crossIm = new double[crosses ? rows : 0][modes];
    RowCombination alongX = cosinesAlongX(direct.sizeX());
    int period = 2 * (nodesY + 1);
    DoubleFFT_1D alongY = new DoubleFFT_1D(period);
    double[] line = new double[2 * period];
    addDirect(direct, alongX, alongY, line);
    if (image != null) {
      addImage(image, alongX, alongY, line);
    }
  }

  private static RowCombination cosinesAlongX(int nodes) {
    int period = 2 * (nodes + 1);
    double[] cosines = new double[period];
    for (int i = 0; i < period; i++) {
      cosines[i] = Math.cos(2 * Math.PI * i / period);
    }
    // a quarter: the share of two orthonormal waves, see SineBasis
    return RowCombination.of(
        nodes + 2, nodes, (p, x) -> (x == 0 ? 0.25 : 0.5) * cosines[p * x % period]);
  }

  private void addDirect(
      KernelTable table, RowCombination alongX, DoubleFFT_1D alongY, double[] line) {
    int period = line.length / 2;
    double[][] re = new double[modes][table.sizeY()];
    double[][] im = new double[modes][table.sizeY()];
    alongX.apply(table.columnsRe(), re, table.sizeY());
    alongX.apply(table.columnsIm(), im, table.sizeY());
    for (int p = 0; p < modes; p++) {
      Arrays.fill(line, 0);
      for (int y = 0; y < table.sizeY(); y++) {
        int mirrored = 2 * ((period - y) % period);
        line[2 * y] = re[p][y];
        line[2 * y + 1] = im[p][y];
        line[mirrored] = re[p][y];
        line[mirrored + 1] = im[p][y];
      }
      alongY.complexForward(line);
      for (int k = 0; k < rows; k++) {
        cosineRe[k][p] = line[2 * k];
        cosineIm[k][p] = line[2 * k + 1];
        sineRe[k][p] = line[2 * k];
        sineIm[k][p] = line[2 * k + 1];
      }
    }
  }

  private void addImage(
      KernelTable table, RowCombination alongX, DoubleFFT_1D alongY, double[] line) {
    int period = line.length / 2;
    double[][] re = new double[modes][table.sizeY()];
    double[][] im = new double[modes][table.sizeY()];
    alongX.apply(table.columnsRe(), re, table.sizeY());
    alongX.apply(table.columnsIm(), im, table.sizeY());
    for (int p = 0; p < modes; p++) {
      Arrays.fill(line, 0);
      for (int y = 0; y < table.sizeY(); y++) {
        // the table counts rows from 0, the waves from 1
        line[2 * (y + 2)] = re[p][y];
        line[2 * (y + 2) + 1] = im[p][y];
      }
      alongY.complexForward(line);
      for (int k = 0; k < rows; k++) {
        int mirrored = 2 * ((period - k) % period);
        double evenRe = 0.5 * (line[2 * k] + line[mirrored]);
        double evenIm = 0.5 * (line[2 * k + 1] + line[mirrored + 1]);
        cosineRe[k][p] += evenRe;
        cosineIm[k][p] += evenIm;
        sineRe[k][p] -= evenRe;
        sineIm[k][p] -= evenIm;
        crossRe[k][p] = -0.5 * (line[2 * k + 1] - line[mirrored + 1]);
        crossIm[k][p] = 0.5 * (line[2 * k] - line[mirrored]);
      }
    }
  }

  /** Returns the diagonal of waves of cosine type, by waves along y and x: real, imaginary part. */
  double[][][] cosines() {
    return new double[][][] {cosineRe, cosineIm};
  }

  /** Returns the diagonal of waves of sine type, alike. */
  double[][][] sines() {
    return new double[][][] {sineRe, sineIm};
  }

  /**
   * Multiplies the waves of one number of half waves along y, in place.
   *
   * @param row number of half waves along y
   * @param waves numbers of half waves along x, one for each group of lanes
   * @param each lanes of a group
   * @param cosines waves of cosine type, real then imaginary
   * @param sines waves of sine type, alike; those of row 0 and the last are not used
   */
  void multiply(int row, int[] waves, int each, double[][] cosines, double[][] sines) {
    double[] cRe = cosines[0];
    double[] cIm = cosines[1];
    double[] sRe = sines[0];
    double[] sIm = sines[1];
    boolean crosses = crossRe.length > 0;
    for (int g = 0; g < waves.length; g++) {
      double aRe = cosineRe[row][waves[g]];
      double aIm = cosineIm[row][waves[g]];
      double dRe = sineRe[row][waves[g]];
      double dIm = sineIm[row][waves[g]];
      double bRe = crosses ? crossRe[row][waves[g]] : 0;
      double bIm = crosses ? crossIm[row][waves[g]] : 0;
      for (int i = g * each; i < (g + 1) * each; i++) {
        double xRe = cRe[i];
        double xIm = cIm[i];
        double yRe = sRe[i];
        double yIm = sIm[i];
        cRe[i] = aRe * xRe - aIm * xIm + bRe * yRe - bIm * yIm;
        cIm[i] = aRe * xIm + aIm * xRe + bRe * yIm + bIm * yRe;
        sRe[i] = bRe * xRe - bIm * xIm + dRe * yRe - dIm * yIm;
        sIm[i] = bRe * xIm + bIm * xRe + dRe * yIm + dIm * yRe;
      }
    }
  }
}

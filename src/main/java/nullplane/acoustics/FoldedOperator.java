package nullplane.acoustics;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;
import org.jtransforms.fft.DoubleFFT_1D;

/**
 * The product of {@link ToeplitzOperator} for vectors that are the same left and right, on the left
 * half and the middle column alone.
 *
 * <p>About the middle column such a vector's transform along x is a sum of cosines, real in and
 * real out, and half as long; for the few columns of a panel a table of cosines beats a fast
 * transform. Vectors are interleaved complex, row by row, the middle column last in its row. An
 * instance holds work space and serves one thread.
 */
final class FoldedOperator implements VectorMap {
  private final int columns;
  private final int nodesY;
  private final int modes;
  private final int periodY;
  private final DoubleFFT_1D alongY;
  private final double[] forward;
  private final double[] inverse;
  private final double[] directSpectrum;
  private final double @Nullable [] imageSpectrum;
  private final double[] work;
  private final double[] line;
  private final double[] rowRe;
  private final double[] rowIm;

  /**
   * @param direct the panel against itself, with an odd number of columns
   * @param image the panel against its image in the floor; null without a floor
   */
  FoldedOperator(KernelTable direct, @Nullable KernelTable image) {
    int nodesX = direct.sizeX();
    int periodX = 2 * nodesX;
    this.columns = (nodesX + 1) / 2;
    this.nodesY = direct.sizeY();
    this.modes = periodX / 2 + 1;
    this.periodY = TransformLength.atLeast(2 * nodesY - 1);
    this.alongY = new DoubleFFT_1D(periodY);
    this.forward = new double[columns * modes];
    this.inverse = new double[modes * columns];
    for (int c = 0; c < columns; c++) {
      int away = columns - 1 - c;
      for (int p = 0; p < modes; p++) {
        double cosine = Math.cos(2 * Math.PI * ((long) p * away % periodX) / periodX);
        boolean end = p == 0 || p == modes - 1;
        forward[c * modes + p] = (away == 0 ? 1 : 2) * cosine;
        inverse[p * columns + c] = (end ? 1.0 : 2.0) / periodX * cosine;
      }
    }
    this.work = new double[2 * modes * periodY];
    this.line = new double[2 * periodY];
    this.rowRe = new double[Math.max(modes, columns)];
    this.rowIm = new double[Math.max(modes, columns)];
    this.directSpectrum = spectrumOf(direct, periodX, true);
    this.imageSpectrum = image == null ? null : spectrumOf(image, periodX, false);
  }

  /** Transforms a table, even along x, stored mode by mode: index 2 (p periodY + py). */
  private double[] spectrumOf(KernelTable table, int periodX, boolean evenInY) {
    double[] cosines = new double[periodX];
    for (int i = 0; i < periodX; i++) {
      cosines[i] = Math.cos(2 * Math.PI * i / periodX);
    }
    double[] spectrum = new double[2 * modes * periodY];
    for (int y = 0; y < table.sizeY(); y++) {
      for (int p = 0; p < modes; p++) {
        double re = table.re(0, y);
        double im = table.im(0, y);
        for (int x = 1; x < table.sizeX(); x++) {
          double cosine = 2 * cosines[(int) ((long) p * x % periodX)];
          re += cosine * table.re(x, y);
          im += cosine * table.im(x, y);
        }
        int at = 2 * (p * periodY + y);
        spectrum[at] = re;
        spectrum[at + 1] = im;
        if (evenInY && y > 0) {
          int mirrored = 2 * (p * periodY + periodY - y);
          spectrum[mirrored] = re;
          spectrum[mirrored + 1] = im;
        }
      }
    }
    for (int p = 0; p < modes; p++) {
      alongY.complexForward(spectrum, 2 * p * periodY);
    }
    return spectrum;
  }

  @Override
  public void apply(double[] input, double[] output) {
    Arrays.fill(work, 0);
    for (int y = 0; y < nodesY; y++) {
      combine(input, 2 * y * columns, columns, forward, modes);
      for (int p = 0; p < modes; p++) {
        work[2 * (p * periodY + y)] = rowRe[p];
        work[2 * (p * periodY + y) + 1] = rowIm[p];
      }
    }
    for (int p = 0; p < modes; p++) {
      int offset = 2 * p * periodY;
      alongY.complexForward(work, offset);
      ToeplitzOperator.applySpectra(work, offset, periodY, directSpectrum, imageSpectrum, line);
      alongY.complexInverse(work, offset, true);
    }
    for (int y = 0; y < nodesY; y++) {
      for (int p = 0; p < modes; p++) {
        line[2 * p] = work[2 * (p * periodY + y)];
        line[2 * p + 1] = work[2 * (p * periodY + y) + 1];
      }
      combine(line, 0, modes, inverse, columns);
      for (int c = 0; c < columns; c++) {
        output[2 * (y * columns + c)] = rowRe[c];
        output[2 * (y * columns + c) + 1] = rowIm[c];
      }
    }
  }

  /** Sums the entries of a line, each times its row of a real matrix, into the row buffers. */
  private void combine(double[] entries, int offset, int count, double[] matrix, int width) {
    for (int i = 0; i < width; i++) {
      rowRe[i] = 0;
      rowIm[i] = 0;
    }
    for (int k = 0; k < count; k++) {
      double re = entries[offset + 2 * k];
      double im = entries[offset + 2 * k + 1];
      int row = k * width;
      for (int i = 0; i < width; i++) {
        rowRe[i] += matrix[row + i] * re;
        rowIm[i] += matrix[row + i] * im;
      }
    }
  }
}

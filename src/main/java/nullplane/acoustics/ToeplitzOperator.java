package nullplane.acoustics;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;
import org.jtransforms.fft.DoubleFFT_1D;

/**
 * Product of the panel's matrix with a vector, by circular convolution on a grid of twice the size.
 *
 * <p>The direct part depends on index differences; the floor's image on the sum of the row indices,
 * which is the same convolution with the vector turned upside down, so that one pair of transforms
 * serves both. Vectors are interleaved complex, row by row. An instance holds work space and serves
 * one thread.
 */
final class ToeplitzOperator {
  private final int nodesX;
  private final int nodesY;
  private final int periodX;
  private final int periodY;
  private final int columns;
  private final DoubleFFT_1D alongX;
  private final DoubleFFT_1D alongY;
  private final double[] directSpectrum;
  private final double @Nullable [] imageSpectrum;
  private final double[] work;
  private final double[] line;
  private final double[] turn;

  /**
   * @param direct the panel against itself
   * @param image the panel against its image in the floor; null without a floor
   * @param mirrored whether every vector is the same left and right, which halves the transforms
   *     along y
   */
  ToeplitzOperator(KernelTable direct, @Nullable KernelTable image, boolean mirrored) {
    this.nodesX = direct.sizeX();
    this.nodesY = direct.sizeY();
    this.periodX = TransformLength.atLeast(2 * nodesX - 1);
    this.periodY = TransformLength.atLeast(2 * nodesY - 1);
    this.alongX = new DoubleFFT_1D(periodX);
    this.alongY = new DoubleFFT_1D(periodY);
    // the vectors are even about the middle column, so that column x of their spectrum is column
    // -x turned by a phase that is put in when the rows are put together again
    this.columns = mirrored ? periodX / 2 + 1 : periodX;
    this.work = new double[2 * columns * periodY];
    this.line = new double[2 * Math.max(periodX, periodY)];
    this.turn = new double[2 * columns];
    for (int x = 0; x < columns; x++) {
      double phase = 2 * Math.PI * x * (nodesX - 1) / periodX;
      turn[2 * x] = Math.cos(phase);
      turn[2 * x + 1] = Math.sin(phase);
    }
    this.directSpectrum = spectrumOf(direct, true);
    this.imageSpectrum = image == null ? null : spectrumOf(image, false);
  }

  /** Transforms a table, stored column by column: index 2 (px periodY + py). */
  private double[] spectrumOf(KernelTable table, boolean evenInY) {
    double[] spectrum = new double[2 * columns * periodY];
    double[] row = new double[2 * periodX];
    for (int y = 0; y < table.sizeY(); y++) {
      Arrays.fill(row, 0);
      for (int x = 0; x < nodesX; x++) {
        row[2 * x] = table.re(x, y);
        row[2 * x + 1] = table.im(x, y);
        if (x > 0) {
          row[2 * (periodX - x)] = table.re(x, y);
          row[2 * (periodX - x) + 1] = table.im(x, y);
        }
      }
      alongX.complexForward(row);
      for (int x = 0; x < columns; x++) {
        spectrum[2 * (x * periodY + y)] = row[2 * x];
        spectrum[2 * (x * periodY + y) + 1] = row[2 * x + 1];
        if (evenInY && y > 0) {
          spectrum[2 * (x * periodY + periodY - y)] = row[2 * x];
          spectrum[2 * (x * periodY + periodY - y) + 1] = row[2 * x + 1];
        }
      }
    }
    for (int x = 0; x < columns; x++) {
      alongY.complexForward(spectrum, 2 * x * periodY);
    }
    return spectrum;
  }

  /** Returns the number of unknowns. */
  int unknowns() {
    return nodesX * nodesY;
  }

  /**
   * Multiplies.
   *
   * @param input interleaved complex, 2 x unknowns
   * @param output interleaved complex, 2 x unknowns; overwritten
   */
  void multiply(double[] input, double[] output) {
    Arrays.fill(work, 0);
    for (int y = 0; y < nodesY; y++) {
      Arrays.fill(line, 2 * nodesX, 2 * periodX, 0);
      System.arraycopy(input, 2 * y * nodesX, line, 0, 2 * nodesX);
      alongX.complexForward(line);
      for (int x = 0; x < columns; x++) {
        work[2 * (x * periodY + y)] = line[2 * x];
        work[2 * (x * periodY + y) + 1] = line[2 * x + 1];
      }
    }
    for (int x = 0; x < columns; x++) {
      int offset = 2 * x * periodY;
      alongY.complexForward(work, offset);
      applySpectra(offset);
      alongY.complexInverse(work, offset, true);
    }
    for (int y = 0; y < nodesY; y++) {
      for (int x = 0; x < columns; x++) {
        line[2 * x] = work[2 * (x * periodY + y)];
        line[2 * x + 1] = work[2 * (x * periodY + y) + 1];
      }
      for (int x = columns; x < periodX; x++) {
        int mirror = 2 * (periodX - x);
        line[2 * x] = turn[mirror] * line[mirror] - turn[mirror + 1] * line[mirror + 1];
        line[2 * x + 1] = turn[mirror] * line[mirror + 1] + turn[mirror + 1] * line[mirror];
      }
      alongX.complexInverse(line, true);
      System.arraycopy(line, 0, output, 2 * y * nodesX, 2 * nodesX);
    }
  }

  private void applySpectra(int offset) {
    if (imageSpectrum == null) {
      for (int i = offset; i < offset + 2 * periodY; i += 2) {
        double re = directSpectrum[i] * work[i] - directSpectrum[i + 1] * work[i + 1];
        work[i + 1] = directSpectrum[i] * work[i + 1] + directSpectrum[i + 1] * work[i];
        work[i] = re;
      }
      return;
    }
    for (int y = 0; y < periodY; y++) {
      int i = offset + 2 * y;
      int flipped = offset + 2 * (y == 0 ? 0 : periodY - y);
      line[2 * y] =
          directSpectrum[i] * work[i]
              - directSpectrum[i + 1] * work[i + 1]
              + imageSpectrum[i] * work[flipped]
              - imageSpectrum[i + 1] * work[flipped + 1];
      line[2 * y + 1] =
          directSpectrum[i] * work[i + 1]
              + directSpectrum[i + 1] * work[i]
              + imageSpectrum[i] * work[flipped + 1]
              + imageSpectrum[i + 1] * work[flipped];
    }
    System.arraycopy(line, 0, work, offset, 2 * periodY);
  }
}

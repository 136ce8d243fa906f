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
final class ToeplitzOperator implements VectorMap {
  private final int nodesX;
  private final int nodesY;
  private final int periodX;
  private final int periodY;
  private final DoubleFFT_1D alongX;
  private final DoubleFFT_1D alongY;
  private final double[] directSpectrum;
  private final double @Nullable [] imageSpectrum;
  private final double[] work;
  private final double[] line;

  /**
   * @param direct the panel against itself
   * @param image the panel against its image in the floor; null without a floor
   */
  ToeplitzOperator(KernelTable direct, @Nullable KernelTable image) {
    this.nodesX = direct.sizeX();
    this.nodesY = direct.sizeY();
    this.periodX = TransformLength.atLeast(2 * nodesX - 1);
    this.periodY = TransformLength.atLeast(2 * nodesY - 1);
    this.alongX = new DoubleFFT_1D(periodX);
    this.alongY = new DoubleFFT_1D(periodY);
    this.work = new double[2 * periodX * periodY];
    this.line = new double[2 * Math.max(periodX, periodY)];
    this.directSpectrum = spectrumOf(direct, true);
    this.imageSpectrum = image == null ? null : spectrumOf(image, false);
  }

  /** Transforms a table, stored column by column: index 2 (px periodY + py). */
  private double[] spectrumOf(KernelTable table, boolean evenInY) {
    double[] spectrum = new double[2 * periodX * periodY];
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
      for (int x = 0; x < periodX; x++) {
        spectrum[2 * (x * periodY + y)] = row[2 * x];
        spectrum[2 * (x * periodY + y) + 1] = row[2 * x + 1];
        if (evenInY && y > 0) {
          spectrum[2 * (x * periodY + periodY - y)] = row[2 * x];
          spectrum[2 * (x * periodY + periodY - y) + 1] = row[2 * x + 1];
        }
      }
    }
    for (int x = 0; x < periodX; x++) {
      alongY.complexForward(spectrum, 2 * x * periodY);
    }
    return spectrum;
  }

  @Override
  public void apply(double[] input, double[] output) {
    Arrays.fill(work, 0);
    for (int y = 0; y < nodesY; y++) {
      Arrays.fill(line, 2 * nodesX, 2 * periodX, 0);
      System.arraycopy(input, 2 * y * nodesX, line, 0, 2 * nodesX);
      alongX.complexForward(line);
      for (int x = 0; x < periodX; x++) {
        work[2 * (x * periodY + y)] = line[2 * x];
        work[2 * (x * periodY + y) + 1] = line[2 * x + 1];
      }
    }
    for (int x = 0; x < periodX; x++) {
      int offset = 2 * x * periodY;
      alongY.complexForward(work, offset);
      applySpectra(work, offset, periodY, directSpectrum, imageSpectrum, line);
      alongY.complexInverse(work, offset, true);
    }
    for (int y = 0; y < nodesY; y++) {
      for (int x = 0; x < periodX; x++) {
        line[2 * x] = work[2 * (x * periodY + y)];
        line[2 * x + 1] = work[2 * (x * periodY + y) + 1];
      }
      alongX.complexInverse(line, true);
      System.arraycopy(line, 0, output, 2 * y * nodesX, 2 * nodesX);
    }
  }

  /**
   * Multiplies one column of a spectrum by the direct part's, and adds the image's times the column
   * turned upside down.
   *
   * @param work where the column stands, from offset on; overwritten
   * @param offset its first index
   * @param periodY its length
   * @param direct the direct part's spectrum, laid out alike
   * @param image the image's; null without a floor
   * @param line work space of a column's length
   */
  static void applySpectra(
      double[] work,
      int offset,
      int periodY,
      double[] direct,
      double @Nullable [] image,
      double[] line) {
    for (int y = 0; y < periodY; y++) {
      int i = offset + 2 * y;
      double re = direct[i] * work[i] - direct[i + 1] * work[i + 1];
      double im = direct[i] * work[i + 1] + direct[i + 1] * work[i];
      if (image != null) {
        int flipped = offset + 2 * (y == 0 ? 0 : periodY - y);
        re += image[i] * work[flipped] - image[i + 1] * work[flipped + 1];
        im += image[i] * work[flipped + 1] + image[i + 1] * work[flipped];
      }
      line[2 * y] = re;
      line[2 * y + 1] = im;
    }
    System.arraycopy(line, 0, work, offset, 2 * periodY);
  }
}

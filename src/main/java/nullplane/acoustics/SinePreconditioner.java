package nullplane.acoustics;

import org.jtransforms.fft.DoubleFFT_1D;

/**
 * Approximate inverse of the panel's matrix in the basis of sine waves that vanish on the grid's
 * edge.
 *
 * <p>In that basis the operator is nearly diagonal, with the symbol (sx my + mx sy - k^2 mx my) hx
 * hy / (2 g), g = sqrt(kx^2 + ky^2 - k^2) with a positive imaginary part below the wave number; s
 * and m are the hats' stiffness and mass symbols. Near kx^2 + ky^2 = k^2 it would vanish, so the
 * wave number is damped, k^2 (1 - 0.1 j). The sine transform of the first kind is taken from a
 * complex transform of the same length by the usual even-odd split (W. Press and others, Numerical
 * Recipes, section on sine transforms), real and imaginary part at once. Applying the transform
 * twice gives back the vector times (nx + 1)(ny + 1)/4. An instance holds work space and serves one
 * thread.
 */
final class SinePreconditioner implements VectorMap {
  private static final double DAMPING = 0.1;

  private final int nodesX;
  private final int nodesY;
  private final SineTransform alongX;
  private final SineTransform alongY;
  private final double[] inverseSymbol;
  private final double[] line;

  /**
   * @param grid the grid
   * @param waveNumber k (1/m)
   */
  SinePreconditioner(UniformGrid grid, double waveNumber) {
    this.nodesX = grid.nodesX();
    this.nodesY = grid.nodesY();
    this.alongX = new SineTransform(nodesX + 1);
    this.alongY = new SineTransform(nodesY + 1);
    this.line = new double[2 * (nodesY + 1)];
    this.inverseSymbol = inverseSymbol(grid, waveNumber);
  }

  /**
   * Returns the inverse of the symbol and of the transforms' factor, interleaved complex, row by
   * row of half waves along y.
   */
  static double[] inverseSymbol(UniformGrid grid, double waveNumber) {
    int nodesX = grid.nodesX();
    int nodesY = grid.nodesY();
    double[] inverseSymbol = new double[2 * nodesX * nodesY];
    double kSquared = waveNumber * waveNumber;
    double hx = grid.stepX();
    double hy = grid.stepY();
    double scale = 4.0 / ((nodesX + 1.0) * (nodesY + 1.0));
    for (int y = 0; y < nodesY; y++) {
      double phaseY = Math.PI * (y + 1) / (nodesY + 1);
      double ky = phaseY / hy;
      double stiffnessY = (2 - 2 * Math.cos(phaseY)) / (hy * hy);
      double massY = (4 + 2 * Math.cos(phaseY)) / 6;
      for (int x = 0; x < nodesX; x++) {
        double phaseX = Math.PI * (x + 1) / (nodesX + 1);
        double kx = phaseX / hx;
        double stiffnessX = (2 - 2 * Math.cos(phaseX)) / (hx * hx);
        double massX = (4 + 2 * Math.cos(phaseX)) / 6;
        double massXy = massX * massY;
        double re = stiffnessX * massY + massX * stiffnessY - kSquared * massXy;
        double im = DAMPING * kSquared * massXy;
        double insideRe = kx * kx + ky * ky - kSquared;
        double insideIm = DAMPING * kSquared;
        double modulus = Math.hypot(insideRe, insideIm);
        double rootRe = Math.sqrt(0.5 * (modulus + insideRe));
        double rootIm = Math.sqrt(0.5 * (modulus - insideRe));
        // 2 g / ((re + j im) hx hy)
        double factor = 2 * scale / ((re * re + im * im) * hx * hy);
        int n = 2 * (y * nodesX + x);
        inverseSymbol[n] = factor * (rootRe * re + rootIm * im);
        inverseSymbol[n + 1] = factor * (rootIm * re - rootRe * im);
      }
    }
    return inverseSymbol;
  }

  @Override
  public void apply(double[] input, double[] output) {
    System.arraycopy(input, 0, output, 0, 2 * nodesX * nodesY);
    transform(output);
    for (int i = 0; i < inverseSymbol.length; i += 2) {
      double re = inverseSymbol[i] * output[i] - inverseSymbol[i + 1] * output[i + 1];
      output[i + 1] = inverseSymbol[i] * output[i + 1] + inverseSymbol[i + 1] * output[i];
      output[i] = re;
    }
    transform(output);
  }

  private void transform(double[] vector) {
    for (int y = 0; y < nodesY; y++) {
      alongX.transform(vector, 2 * y * nodesX);
    }
    for (int x = 0; x < nodesX; x++) {
      for (int y = 0; y < nodesY; y++) {
        line[2 * y] = vector[2 * (y * nodesX + x)];
        line[2 * y + 1] = vector[2 * (y * nodesX + x) + 1];
      }
      alongY.transform(line, 0);
      for (int y = 0; y < nodesY; y++) {
        vector[2 * (y * nodesX + x)] = line[2 * y];
        vector[2 * (y * nodesX + x) + 1] = line[2 * y + 1];
      }
    }
  }

  /** Sine transform of the first kind of n - 1 complex numbers: F_k = sum_j f_j sin(pi j k/n). */
  static final class SineTransform {
    private final int length;
    private final DoubleFFT_1D transform;
    private final double[] sines;
    private final double[] buffer;

    SineTransform(int length) {
      this.length = length;
      this.transform = new DoubleFFT_1D(length);
      this.sines = new double[length];
      this.buffer = new double[2 * length];
      for (int j = 0; j < length; j++) {
        sines[j] = Math.sin(Math.PI * j / length);
      }
    }

    void transform(double[] values, int offset) {
      buffer[0] = 0;
      buffer[1] = 0;
      for (int j = 1; j < length; j++) {
        int low = offset + 2 * (j - 1);
        int high = offset + 2 * (length - j - 1);
        buffer[2 * j] =
            sines[j] * (values[low] + values[high]) + 0.5 * (values[low] - values[high]);
        buffer[2 * j + 1] =
            sines[j] * (values[low + 1] + values[high + 1])
                + 0.5 * (values[low + 1] - values[high + 1]);
      }
      transform.complexForward(buffer);
      // even outputs are the sine sums, odd ones accumulate the cosine sums
      double oddRe = 0.5 * buffer[0];
      double oddIm = 0.5 * buffer[1];
      values[offset] = oddRe;
      values[offset + 1] = oddIm;
      for (int k = 1; 2 * k <= length; k++) {
        int mirror = 2 * (length - k);
        double cosineRe = 0.5 * (buffer[2 * k] + buffer[mirror]);
        double cosineIm = 0.5 * (buffer[2 * k + 1] + buffer[mirror + 1]);
        // sine sum S = (Y_{n-k} - Y_k)/(2i)
        double sineRe = 0.5 * (buffer[mirror + 1] - buffer[2 * k + 1]);
        double sineIm = -0.5 * (buffer[mirror] - buffer[2 * k]);
        if (2 * k < length) {
          values[offset + 2 * (2 * k - 1)] = sineRe;
          values[offset + 2 * (2 * k - 1) + 1] = sineIm;
        }
        oddRe += cosineRe;
        oddIm += cosineIm;
        if (2 * k + 1 < length) {
          values[offset + 2 * (2 * k)] = oddRe;
          values[offset + 2 * (2 * k) + 1] = oddIm;
        }
      }
    }
  }
}

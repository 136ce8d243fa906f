package nullplane.acoustics;

/**
 * Sine waves over a line of equally spaced nodes, those with an odd or an even number of half
 * waves, and the cosine waves that complete them.
 *
 * <p>Symbols: n nodes at 1 to n, m = n + 1; wave k is sqrt(2/m) sin(pi k x/m), k from 1 to n: an
 * orthonormal basis. A vector that is the same on both sides of the middle has odd k alone, one
 * that changes sign has even k alone. The cosine waves sqrt(2/m) cos(pi p x/m), p from 0 to m, the
 * first and last times sqrt(1/2), serve as {@link PanelSpectrum} needs them; against sine waves of
 * one parity those of the other parity alone are not zero.
 */
final class SineBasis {
  private final int nodes;
  private final int first;
  private final int count;
  private final double[] sines;

  /**
   * @param nodes number of nodes
   * @param odd whether the numbers of half waves are odd
   */
  SineBasis(int nodes, boolean odd) {
    this.nodes = nodes;
    this.first = odd ? 1 : 2;
    this.count = odd ? (nodes + 1) / 2 : nodes / 2;
    this.sines = new double[2 * (nodes + 1)];
    for (int i = 0; i < sines.length; i++) {
      sines[i] = Math.sqrt(2.0 / (nodes + 1)) * Math.sin(2 * Math.PI * i / sines.length);
    }
  }

  /** Returns the number of sine waves. */
  int sines() {
    return count;
  }

  /** Returns the number of half waves of a sine wave, counted from 0. */
  int sineWaves(int index) {
    return first + 2 * index;
  }

  /** Returns the number of cosine waves that are not orthogonal to all sine waves. */
  int cosines() {
    return first == 1 ? (nodes + 1) / 2 + 1 : (nodes + 2) / 2;
  }

  /** Returns the number of half waves of a cosine wave, counted from 0. */
  int cosineWaves(int index) {
    return first - 1 + 2 * index;
  }

  /** Returns the value of a sine wave, counted from 0, at a node, counted from 1. */
  double sine(int index, int node) {
    return sines[sineWaves(index) * node % sines.length];
  }

  /**
   * Returns the sums over the nodes of cosine times sine waves, cosine waves x sine waves.
   *
   * <p>Source: SUM sin(t x) over x from 1 to n is cot(t/2) for t = pi l/m with odd l.
   */
  RowCombination cosinesOfSines() {
    int m = nodes + 1;
    double[] cotangents = new double[2 * m];
    for (int l = 1; l < 2 * m; l += 2) {
      cotangents[l] = 1 / Math.tan(0.5 * Math.PI * l / m);
    }
    return RowCombination.of(
        cosines(),
        count,
        (i, j) -> {
          int p = cosineWaves(i);
          int k = sineWaves(j);
          double end = p == 0 || p == m ? Math.sqrt(0.5) : 1;
          return end / m * (cotangents[Math.floorMod(k - p, 2 * m)] + cotangents[k + p]);
        });
  }
}

package nullplane.network;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.complex.Complex;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.BlockRealMatrix;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;

/**
 * Modified nodal analysis of any circuit of impedances with a source of 1 V between node 1 and node
 * 0, by a general LU solution; no formula of a ladder goes in.
 *
 * <p>Source: C.-W. Ho, A. Ruehli, P. Brennan, IEEE Trans. Circuits Syst. 22(6) (1975) 504.
 */
final class NodalCircuit {
  private record Element(int a, int b, Complex impedance) {}

  private final List<Element> elements = new ArrayList<>();
  private int nodes = 2;
  private Complex[] voltages = {};
  private Complex sourceCurrent = Complex.ZERO;

  /** Adds a node and returns its number. */
  int node() {
    return nodes++;
  }

  /** Adds an impedance between two nodes and returns its number. */
  int add(int a, int b, Complex impedance) {
    elements.add(new Element(a, b, impedance));
    return elements.size() - 1;
  }

  /** Solves; unknowns are the nodes from 1 on and the source's current. */
  void solve() {
    int n = nodes;
    RealMatrix matrix = new BlockRealMatrix(2 * n, 2 * n);
    for (Element element : elements) {
      Complex y = element.impedance.reciprocal();
      stamp(matrix, n, element.a, element.a, y);
      stamp(matrix, n, element.b, element.b, y);
      stamp(matrix, n, element.a, element.b, y.negate());
      stamp(matrix, n, element.b, element.a, y.negate());
    }
    // the source: row and column 0 (ground's own are not needed)
    for (int part = 0; part < 2; part++) {
      matrix.setEntry(part * n, part * n + 1, 1);
      matrix.setEntry(part * n + 1, part * n, -1);
    }
    RealVector right = new ArrayRealVector(2 * n);
    right.setEntry(0, 1);
    RealVector x = new LUDecomposition(matrix, 1e-300).getSolver().solve(right);
    voltages = new Complex[n];
    voltages[0] = Complex.ZERO;
    for (int node = 1; node < n; node++) {
      voltages[node] = new Complex(x.getEntry(node), x.getEntry(n + node));
    }
    sourceCurrent = new Complex(x.getEntry(0), x.getEntry(n));
  }

  private static void stamp(RealMatrix matrix, int n, int row, int column, Complex y) {
    if (row == 0 || column == 0) {
      return;
    }
    matrix.addToEntry(row, column, y.getReal());
    matrix.addToEntry(n + row, n + column, y.getReal());
    matrix.addToEntry(row, n + column, -y.getImaginary());
    matrix.addToEntry(n + row, column, y.getImaginary());
  }

  Complex voltage(int node) {
    return voltages[node];
  }

  /** Returns the current the source gives into node 1. */
  Complex sourceCurrent() {
    return sourceCurrent;
  }

  /** Returns the current through an element from its first to its second node. */
  Complex current(int element) {
    Element e = elements.get(element);
    return voltages[e.a].subtract(voltages[e.b]).divide(e.impedance);
  }
}

package nullplane.acoustics;

import java.util.Arrays;
import java.util.List;
import nullplane.units.Air;
import nullplane.validation.Validation;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The grid's rim offset, its order of convergence and its load vectors. */
@Tag("reference")
class UniformGridReference {

  /**
   * The strip in potential flow, discretised by hats across and uniform along: INT v' q' (-ln s/2
   * pi) = INT v, exact solution q = 2 sqrt((W/2)^2 - x^2), INT q = pi W^2/4. Source: H. Lamb,
   * Hydrodynamics (1932), art. 71. The width that gives the discrete sum falls short of the grid's
   * by twice the rim offset.
   */
  @Test
  void rimOffsetIsThatOfTheDiscreteStrip() {
    int nodes = 400;
    double[] entries = new double[nodes];
    for (int d = 0; d < nodes; d++) {
      // fourth difference of F with F'' = ln s, F = s^2 ln s/2 - 3 s^2/4
      entries[d] =
          (antiderivative(d - 2)
                  - 4 * antiderivative(d - 1)
                  + 6 * antiderivative(d)
                  - 4 * antiderivative(d + 1)
                  + antiderivative(d + 2))
              / (2 * Math.PI);
    }
    RealMatrix matrix = new Array2DRowRealMatrix(nodes, nodes);
    for (int i = 0; i < nodes; i++) {
      for (int j = 0; j < nodes; j++) {
        matrix.setEntry(i, j, entries[Math.abs(i - j)]);
      }
    }
    double[] ones = new double[nodes];
    Arrays.fill(ones, 1);
    double sum =
        Arrays.stream(
                new LUDecomposition(matrix).getSolver().solve(new ArrayRealVector(ones)).toArray())
            .sum();
    double effectiveWidth = 2 * Math.sqrt(sum / Math.PI);
    Validation.check(
            "rim offset of the grid, from a discrete strip of 400 nodes",
            "Potential flow past a strip (H. Lamb, Hydrodynamics, 1932, art. 71).")
        .expected((nodes + 1 - effectiveWidth) / 2, "cells")
        .computed(UniformGrid.RIM_OFFSET)
        .within(2e-4);
  }

  private static double antiderivative(double s) {
    return s == 0 ? 0 : s * s / 2 * Math.log(Math.abs(s)) - 0.75 * s * s;
  }

  /**
   * A whole square panel that moves as one: the error falls as the square of the cell, where it
   * would fall as the cell without the rim offset. The order is read off three grids in the ratio
   * 3/2.
   */
  @ParameterizedTest
  @CsvSource({"20, 12", "20, 16", "300, 16"})
  void convergesWithSecondOrder(double frequencyHz, int cells) {
    double coarse = wholePanelReactance(frequencyHz, cells);
    double middle = wholePanelReactance(frequencyHz, cells * 3 / 2);
    double fine = wholePanelReactance(frequencyHz, cells * 9 / 4);
    double order = Math.log((middle - coarse) / (fine - middle)) / Math.log(1.5);
    Validation.check(
            "order of convergence of a square panel that moves as one, "
                + (int) frequencyHz
                + " Hz, from "
                + cells
                + " cells",
            "Theory of the method: second order.")
        .expected(2, "")
        .computed(order)
        .coarse(2, 1e-2)
        .between(1.7, 2.4);
  }

  private static double wholePanelReactance(double frequencyHz, int cells) {
    UniformGrid grid = new UniformGrid(0.4, 0.4, cells, cells);
    double[] load = new double[grid.unknowns()];
    Arrays.fill(load, grid.stepX() * grid.stepY());
    Panel panel = Panel.inFreeSpace(0.4, 0.4);
    return new GridSolution(
            panel,
            new GridSetup(grid, panel.outline(), List.of(load)),
            Air.standard(),
            frequencyHz,
            1e-11)
        .impedance()
        .im(0, 0);
  }

  /**
   * Source: hats are a partition of unity and reproduce x and y; a disc's centroid is its centre.
   */
  @ParameterizedTest
  @CsvSource({"0, 0, 0.13", "0.037, -0.081, 0.09", "-0.0421, 0.1234, 0.031"})
  void loadHasTheDiscsAreaAndCentroid(double x, double y, double radius) {
    UniformGrid grid = new UniformGrid(0.5, 0.6, 14, 17);
    double[] load = grid.loadOf(new Piston(x, y, radius));
    double area = 0;
    double momentX = 0;
    double momentY = 0;
    for (int row = 0; row < grid.nodesY(); row++) {
      for (int column = 0; column < grid.nodesX(); column++) {
        double part = load[row * grid.nodesX() + column];
        area += part;
        momentX += part * grid.nodeX(column);
        momentY += part * grid.nodeY(row);
      }
    }
    String disc = "load of a disc of " + radius + " m at " + x + ", " + y + " m: ";
    String geometry = "Geometry: hats are a partition of unity.";
    Validation.check(disc + "area", geometry)
        .expected(Math.PI * radius * radius, "m2")
        .computed(area)
        .within(1e-14);
    Validation.check(disc + "centre", geometry)
        .in("m")
        .add(x, momentX / area)
        .add(y, momentY / area)
        .within(1e-6);
  }
}

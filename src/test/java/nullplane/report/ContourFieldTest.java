package nullplane.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.Color;
import java.awt.geom.Path2D;
import java.awt.geom.PathIterator;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class ContourFieldTest {
  private static ContourField cone(int cells) {
    double[] axis = IntStream.rangeClosed(0, cells).mapToDouble(i -> i * 200.0 / cells).toArray();
    double[][] values = new double[axis.length][axis.length];
    for (int i = 0; i < axis.length; i++) {
      for (int j = 0; j < axis.length; j++) {
        values[i][j] = -Math.hypot(axis[i] - 100, axis[j] - 100);
      }
    }
    return new ContourField(axis, axis, values);
  }

  /** Area by the trapezium formula, holes counted against their rims by direction. */
  private static double area(Path2D path) {
    double[] at = new double[6];
    double sum = 0;
    double startX = 0;
    double startY = 0;
    double x = 0;
    double y = 0;
    for (PathIterator it = path.getPathIterator(null); !it.isDone(); it.next()) {
      int kind = it.currentSegment(at);
      double nextX = kind == PathIterator.SEG_CLOSE ? startX : at[0];
      double nextY = kind == PathIterator.SEG_CLOSE ? startY : at[1];
      if (kind == PathIterator.SEG_MOVETO) {
        startX = nextX;
        startY = nextY;
      } else {
        sum += x * nextY - nextX * y;
      }
      x = nextX;
      y = nextY;
    }
    return sum / 2;
  }

  /** The level sets of a cone are circles. */
  @Test
  void areaOfACircle() {
    double area = area(cone(80).above(-60));
    assertThat(Math.abs(area)).isCloseTo(Math.PI * 3600, within(0.003 * Math.PI * 3600));
    assertThat(cone(80).edge(-60).contains(100, 100)).isTrue();
  }

  @Test
  void wholeGridIsItsRectangleAndHasNoLine() {
    ContourField field = cone(10);
    assertThat(field.above(-1000).getBounds2D().getWidth()).isEqualTo(200);
    assertThat(Math.abs(area(field.above(-1000)))).isCloseTo(40_000, within(1e-6));
    assertThat(field.edge(-1000).getPathIterator(null).isDone()).isTrue();
    assertThat(field.above(1).getPathIterator(null).isDone()).isTrue();
  }

  @Test
  void ringsKeepTheirHoles() {
    double[] axis = IntStream.rangeClosed(0, 80).mapToDouble(i -> i * 2.5).toArray();
    double[][] values = new double[81][81];
    for (int i = 0; i <= 80; i++) {
      for (int j = 0; j <= 80; j++) {
        values[i][j] = -Math.abs(Math.hypot(axis[i] - 100, axis[j] - 100) - 60);
      }
    }
    Path2D ring = new ContourField(axis, axis, values).above(-10);
    assertThat(ring.contains(100, 100)).isFalse();
    assertThat(ring.contains(160, 100)).isTrue();
    double expected = Math.PI * (70 * 70 - 50 * 50);
    assertThat(Math.abs(area(ring))).isCloseTo(expected, within(0.01 * expected));
  }

  /** Steadily lighter by luma (ITU-R BT.601), so that grey print keeps the order. */
  @Test
  void colourScaleGetsSteadilyLighter() {
    double last = -1;
    for (int i = 0; i <= 100; i++) {
      Color colour = ColourScale.at(i / 100.0);
      double luma = 0.299 * colour.getRed() + 0.587 * colour.getGreen() + 0.114 * colour.getBlue();
      assertThat(luma).isGreaterThan(last - 0.6);
      last = Math.max(last, luma);
    }
    assertThat(ColourScale.at(0)).isEqualTo(new Color(0x440154));
    assertThat(ColourScale.at(1)).isEqualTo(new Color(0xFDE725));
  }
}

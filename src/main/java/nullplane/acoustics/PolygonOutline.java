package nullplane.acoustics;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import nullplane.units.FiniteText;

/**
 * A polygon whose sides do not cross: tapered sides, cut corners, a round top by enough corners.
 *
 * @param corners the corners in order, either way round; three or more
 */
public record PolygonOutline(List<Corner> corners) implements Outline {
  private static final double SAME_M = 1e-9;

  /** Checks that there are three corners, that the area is not zero and that no sides cross. */
  public PolygonOutline {
    corners = List.copyOf(corners);
    Optional<String> fault = faultOf(corners);
    if (fault.isPresent()) {
      throw new IllegalArgumentException(fault.get());
    }
  }

  /** Returns what is wrong with a list of corners, in words for a person; empty if nothing is. */
  public static Optional<String> faultOf(List<Corner> corners) {
    int count = corners.size();
    if (count < 3) {
      return Optional.of("a polygon of " + count + " corners; allowed: 3 or more");
    }
    for (int i = 0; i < count; i++) {
      Corner a = corners.get(i);
      Corner b = corners.get((i + 1) % count);
      if (Math.hypot(a.xM() - b.xM(), a.yM() - b.yM()) < SAME_M) {
        return Optional.of("corners " + (i + 1) + " and " + ((i + 1) % count + 1) + " coincide");
      }
      for (int j = i + 2; j < count; j++) {
        boolean neighbours = i == 0 && j == count - 1;
        if (!neighbours && cross(a, b, corners.get(j), corners.get((j + 1) % count))) {
          return Optional.of("sides " + (i + 1) + " and " + (j + 1) + " cross or touch");
        }
      }
    }
    if (Math.abs(signedArea(corners)) < SAME_M) {
      return Optional.of("the corners lie on one line");
    }
    return Optional.empty();
  }

  private static boolean cross(Corner a, Corner b, Corner c, Corner d) {
    double ab1 = side(a, b, c);
    double ab2 = side(a, b, d);
    double cd1 = side(c, d, a);
    double cd2 = side(c, d, b);
    if (ab1 * ab2 < 0 && cd1 * cd2 < 0) {
      return true;
    }
    return distanceToSide(c, a, b) < SAME_M
        || distanceToSide(d, a, b) < SAME_M
        || distanceToSide(a, c, d) < SAME_M
        || distanceToSide(b, c, d) < SAME_M;
  }

  private static double side(Corner a, Corner b, Corner p) {
    return (b.xM() - a.xM()) * (p.yM() - a.yM()) - (b.yM() - a.yM()) * (p.xM() - a.xM());
  }

  private static double distanceToSide(Corner p, Corner a, Corner b) {
    return distanceToSide(p.xM(), p.yM(), a, b);
  }

  private static double distanceToSide(double x, double y, Corner a, Corner b) {
    double dx = b.xM() - a.xM();
    double dy = b.yM() - a.yM();
    double along = ((x - a.xM()) * dx + (y - a.yM()) * dy) / (dx * dx + dy * dy);
    double share = Math.max(0, Math.min(1, along));
    return Math.hypot(x - a.xM() - share * dx, y - a.yM() - share * dy);
  }

  private static double signedArea(List<Corner> corners) {
    double sum = 0;
    for (int i = 0; i < corners.size(); i++) {
      Corner a = corners.get(i);
      Corner b = corners.get((i + 1) % corners.size());
      sum += a.xM() * b.yM() - b.xM() * a.yM();
    }
    return sum / 2;
  }

  @Override
  public double leftM() {
    return corners.stream().mapToDouble(Corner::xM).min().orElseThrow();
  }

  @Override
  public double bottomM() {
    return corners.stream().mapToDouble(Corner::yM).min().orElseThrow();
  }

  @Override
  public double widthM() {
    return corners.stream().mapToDouble(Corner::xM).max().orElseThrow() - leftM();
  }

  @Override
  public double heightM() {
    return corners.stream().mapToDouble(Corner::yM).max().orElseThrow() - bottomM();
  }

  @Override
  public double areaM2() {
    return Math.abs(signedArea(corners));
  }

  /** Source: centroid of a polygon from the triangles between the origin and its sides. */
  @Override
  public double centroidYM() {
    double sum = 0;
    for (int i = 0; i < corners.size(); i++) {
      Corner a = corners.get(i);
      Corner b = corners.get((i + 1) % corners.size());
      sum += (a.yM() + b.yM()) * (a.xM() * b.yM() - b.xM() * a.yM());
    }
    return sum / (6 * signedArea(corners));
  }

  @Override
  public double distanceToRim(double xM, double yM) {
    double nearest = Double.POSITIVE_INFINITY;
    boolean inside = false;
    for (int i = 0; i < corners.size(); i++) {
      Corner a = corners.get(i);
      Corner b = corners.get((i + 1) % corners.size());
      nearest = Math.min(nearest, distanceToSide(xM, yM, a, b));
      if ((a.yM() > yM) != (b.yM() > yM)
          && xM < a.xM() + (yM - a.yM()) / (b.yM() - a.yM()) * (b.xM() - a.xM())) {
        inside = !inside;
      }
    }
    return inside ? nearest : -nearest;
  }

  @Override
  public boolean mirrorsLeftToRight() {
    return corners.stream()
        .allMatch(
            corner ->
                corners.stream()
                    .anyMatch(
                        other ->
                            Math.hypot(corner.xM() + other.xM(), corner.yM() - other.yM())
                                < SAME_M));
  }

  /**
   * Returns this polygon joined to its mirror image below, for one that stands on its lowest side;
   * empty if it touches its lowest line with anything but one side.
   */
  Optional<PolygonOutline> withImageBelow() {
    double floor = bottomM();
    List<Corner> above = new ArrayList<>();
    int count = corners.size();
    int start = -1;
    int touching = 0;
    for (int i = 0; i < count; i++) {
      if (corners.get(i).yM() < floor + SAME_M) {
        touching++;
        if (corners.get((i + 1) % count).yM() < floor + SAME_M) {
          start = (i + 1) % count;
        }
      }
    }
    if (touching != 2 || start < 0) {
      return Optional.empty();
    }
    // from the end of the standing side round to its beginning, then back along the image
    for (int i = 0; i < count; i++) {
      above.add(corners.get((start + i) % count));
    }
    List<Corner> both = new ArrayList<>(above);
    for (int i = count - 2; i > 0; i--) {
      both.add(new Corner(above.get(i).xM(), 2 * floor - above.get(i).yM()));
    }
    return Optional.of(new PolygonOutline(both));
  }

  @Override
  public String inWords() {
    return FiniteText.of(
        "%d corners within %.1f cm x %.1f cm", corners.size(), 1e2 * widthM(), 1e2 * heightM());
  }
}

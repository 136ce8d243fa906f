package nullplane.acoustics;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/**
 * The directions a panel's far field is wanted in, in the order in which a solution lists them: the
 * axis, those asked for, a horizontal arc and a vertical arc.
 *
 * @param asked directions asked for
 * @param horizontal the arc in the horizontal plane, from the listener's left to the right
 * @param vertical the arc in the vertical plane, upwards
 */
public record FieldPlan(
    List<Direction> asked, List<Direction> horizontal, List<Direction> vertical) {
  private static final int STEPS = 36;

  /** Copies the lists. */
  public FieldPlan {
    asked = List.copyOf(asked);
    horizontal = List.copyOf(horizontal);
    vertical = List.copyOf(vertical);
  }

  /**
   * Returns a plan with full arcs of 37 directions each: horizontally from -90 to 90 degrees;
   * vertically from -90 to 90 degrees in free space, from 0 to 90 degrees over a floor.
   *
   * @param asked directions asked for
   * @param overFloor whether the panel is over a floor
   */
  public static FieldPlan of(List<Direction> asked, boolean overFloor) {
    double lowest = overFloor ? 0 : -90;
    return new FieldPlan(
        asked,
        IntStream.rangeClosed(0, STEPS)
            .mapToObj(i -> Direction.ofDegrees(-90 + i * 180.0 / STEPS, 0))
            .toList(),
        IntStream.rangeClosed(0, STEPS)
            .mapToObj(i -> Direction.ofDegrees(0, lowest + i * (90 - lowest) / STEPS))
            .toList());
  }

  /** Returns all directions, the axis first. */
  public List<Direction> directions() {
    List<Direction> all = new ArrayList<>();
    all.add(new Direction(0, 0));
    all.addAll(asked);
    all.addAll(horizontal);
    all.addAll(vertical);
    return List.copyOf(all);
  }

  /** Returns the row of the axis in a solution's far field. */
  public int axisRow() {
    return 0;
  }

  /** Returns the row of a direction asked for, counted from 0. */
  public int askedRow(int index) {
    return 1 + index;
  }

  /** Returns the row of a direction of the horizontal arc, counted from 0. */
  public int horizontalRow(int index) {
    return 1 + asked.size() + index;
  }

  /** Returns the row of a direction of the vertical arc, counted from 0. */
  public int verticalRow(int index) {
    return 1 + asked.size() + horizontal.size() + index;
  }
}

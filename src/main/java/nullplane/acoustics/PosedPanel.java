package nullplane.acoustics;

import java.util.List;
import java.util.OptionalDouble;
import nullplane.faults.ModelRangeException;

/**
 * The problem as it is solved: the panel itself, or, when it stands on the floor without a gap, the
 * free panel that it forms with its image.
 *
 * @param panel the panel to solve
 * @param pistons the real pistons, in its coordinates
 * @param standsOnFloor whether the mirrored pistons move along
 * @param shiftM what to add to a y of the real panel (m)
 */
record PosedPanel(Panel panel, List<Piston> pistons, boolean standsOnFloor, double shiftM) {

  static PosedPanel of(Panel panel, List<Piston> pistons) {
    OptionalDouble gap = panel.clearanceM();
    if (gap.isEmpty() || gap.getAsDouble() > 0) {
      return new PosedPanel(panel, pistons, false, 0);
    }
    Outline outline = panel.outline();
    if (outline instanceof RectangularOutline rectangle) {
      return standing(
          new RectangularOutline(rectangle.widthM(), 2 * rectangle.heightM()),
          pistons,
          rectangle.heightM() / 2);
    }
    if (outline instanceof PolygonOutline polygon && polygon.withImageBelow().isPresent()) {
      PolygonOutline both = polygon.withImageBelow().get();
      double shift = -polygon.bottomM();
      List<Corner> moved =
          both.corners().stream().map(c -> new Corner(c.xM(), c.yM() + shift)).toList();
      return standing(new PolygonOutline(moved), pistons, shift);
    }
    throw new ModelRangeException(
        "panel solver",
        "a panel that touches the floor in a point",
        "give it a clearance of 5 mm or more, or a flat lower side");
  }

  private static PosedPanel standing(Outline doubled, List<Piston> pistons, double shiftM) {
    List<Piston> moved =
        pistons.stream().map(p -> new Piston(p.xM(), p.yM() + shiftM, p.radiusM())).toList();
    return new PosedPanel(new Panel(doubled, OptionalDouble.empty()), moved, true, shiftM);
  }
}

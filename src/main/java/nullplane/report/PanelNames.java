package nullplane.report;

import java.util.ArrayList;
import java.util.List;
import nullplane.scoring.PanelStudy;

/**
 * Woofers of a stack grouped by the air they carry, so that equal ones share a curve and a name.
 */
final class PanelNames {
  private static final double SAME = 0.005;

  private PanelNames() {}

  /**
   * Returns groups of woofers whose added mass agrees within 0.5 % at each of the frequencies
   * given; each group lists its woofers, counted from 0.
   */
  static List<List<Integer>> groups(PanelStudy study, List<Integer> indices) {
    List<List<Integer>> groups = new ArrayList<>();
    for (int woofer = 0; woofer < study.brief().pistons().size(); woofer++) {
      boolean found = false;
      for (List<Integer> group : groups) {
        if (same(study, indices, group.get(0), woofer)) {
          group.add(woofer);
          found = true;
          break;
        }
      }
      if (!found) {
        groups.add(new ArrayList<>(List.of(woofer)));
      }
    }
    return groups;
  }

  private static boolean same(PanelStudy study, List<Integer> indices, int one, int other) {
    for (int index : indices) {
      double first = study.figures(index).addedMassKg().at(one);
      double second = study.figures(index).addedMassKg().at(other);
      if (Math.abs(first - second) > SAME * Math.max(Math.abs(first), Math.abs(second))) {
        return false;
      }
    }
    return true;
  }

  /** Returns the name of a group: "woofer 1", "woofers 1, 4". */
  static String of(List<Integer> group) {
    StringBuilder text = new StringBuilder(group.size() == 1 ? "woofer " : "woofers ");
    for (int i = 0; i < group.size(); i++) {
      text.append(i > 0 ? ", " : "").append(group.get(i) + 1);
    }
    return text.toString();
  }
}

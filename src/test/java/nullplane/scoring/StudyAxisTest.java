package nullplane.scoring;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import nullplane.HandbookRow;
import nullplane.acoustics.Direction;
import nullplane.acoustics.FieldPlan;
import nullplane.units.Curve;
import org.junit.jupiter.api.Test;

class StudyAxisTest {
  /** PF01: IEC 61260-1:2014, exact base-10 midbands. */
  @Test
  void thirdOctavesAreTheExactMidbands() {
    HandbookRow row = HandbookRow.of("PF01");
    String[] midbands = {
      "19.953", "25.119", "31.623", "39.811", "50.119", "63.096", "79.433", "100", "125.89",
      "158.49", "199.53", "251.19", "316.23", "398.11", "501.19", "630.96", "794.33", "1000"
    };
    Curve axis = StudyAxis.thirdOctaves();
    assertThat(axis.size()).isEqualTo(midbands.length);
    for (int i = 0; i < midbands.length; i++) {
      double expected = row.figure(midbands[i]);
      assertThat(axis.at(i)).isCloseTo(expected, within(1e-4 * expected));
    }
  }

  @Test
  void picturesHoldTheThirdOctavesBitForBit() {
    Curve pictures = StudyAxis.pictures();
    List<Double> all = pictures.stream().boxed().toList();
    assertThat(all).hasSize(43).isSorted().doesNotHaveDuplicates();
    assertThat(all).containsAll(StudyAxis.thirdOctaves().stream().boxed().toList());
  }

  @Test
  void planListsItsDirectionsInOrder() {
    List<Direction> asked = List.of(Direction.ofDegrees(30, 0), Direction.ofDegrees(0, 30));
    for (boolean floor : new boolean[] {false, true}) {
      FieldPlan plan = FieldPlan.of(asked, floor);
      List<Direction> all = plan.directions();
      assertThat(all).hasSize(1 + 2 + 37 + 37);
      assertThat(all.get(plan.axisRow())).isEqualTo(new Direction(0, 0));
      assertThat(all.get(plan.askedRow(1))).isEqualTo(asked.get(1));
      assertThat(all.get(plan.horizontalRow(0))).isEqualTo(Direction.ofDegrees(-90, 0));
      assertThat(all.get(plan.horizontalRow(36))).isEqualTo(Direction.ofDegrees(90, 0));
      assertThat(all.get(plan.verticalRow(0))).isEqualTo(Direction.ofDegrees(0, floor ? 0 : -90));
      assertThat(all.get(plan.verticalRow(36))).isEqualTo(Direction.ofDegrees(0, 90));
    }
  }
}

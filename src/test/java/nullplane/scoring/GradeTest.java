package nullplane.scoring;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class GradeTest {

  /** Less violation comes first, then less cost. */
  @Test
  void gradesAreOrderedByViolationThenCost() {
    assertThat(new Grade(0, 9)).isLessThan(new Grade(0.1, 1));
    assertThat(new Grade(0, 1)).isLessThan(new Grade(0, 9)).isNotEqualTo(new Grade(0, 9));
    assertThat(new Grade(0.1, 9)).isLessThan(new Grade(0.2, 1));
    assertThat(new Grade(0, 1).feasible()).isTrue();
    assertThat(new Grade(0.1, 1).feasible()).isFalse();
  }
}

package nullplane.driver;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import org.junit.jupiter.api.Test;

/** By linear algebra that can be done by hand. */
class RowSpaceTest {
  @Test
  void lyingInTheSpaceIsJudgedByTheRowsOwnLength() {
    RowSpace space = new RowSpace(3, 1e-6);
    assertThat(space.add(new double[] {1, 0, 0})).isTrue();
    double[] nearlyAlong = {1e9, 1, 0};
    assertThat(space.contains(nearlyAlong)).isTrue();
    assertThat(space.parts(nearlyAlong)).isPresent();
    assertThat(space.add(nearlyAlong)).isFalse();
    double[] small = {0, 1e-9, 0};
    assertThat(space.contains(small)).isFalse();
    assertThat(space.parts(small)).isEmpty();
    assertThat(space.add(small)).isTrue();
    assertThat(space.rank()).isEqualTo(2);
  }

  /** (5, 7, 0) = 2 (1, 2, 0) + 3 (1, 1, 0); the shortest vector with products 4 and 3 is (2, 1). */
  @Test
  void partsAndTheShortestVectorByHand() {
    RowSpace space = new RowSpace(3, 1e-9);
    space.add(new double[] {1, 2, 0});
    space.add(new double[] {1, 1, 0});
    assertThat(space.parts(new double[] {5, 7, 0}).orElseThrow())
        .containsExactly(new double[] {2, 3}, offset(1e-12));
    assertThat(space.shortest(new double[] {4, 3}))
        .containsExactly(new double[] {2, 1, 0}, offset(1e-12));
  }
}

package nullplane.scoring;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import nullplane.acoustics.Piston;
import org.junit.jupiter.api.Test;

class StackBriefTest {

  /** Half the least distance of two centres, or the least distance to the rim (geometry). */
  @Test
  void theLargestPistonTouchesTheNextOrTheRim() {
    StackBrief byRim = WorkshopSpecs.column("s", 0.44, 1.1, 0.13, 75, 86, -0.25, 0.25);
    assertThat(byRim.largestPistonRadiusM()).isCloseTo(0.22, within(1e-12));
    StackBrief byNext = WorkshopSpecs.column("s", 0.8, 1.6, 0.13, 75, 86, -0.4, 0.15, 0.45);
    assertThat(byNext.largestPistonRadiusM()).isCloseTo(0.15, within(1e-12));
    StackBrief byEdge = WorkshopSpecs.column("s", 0.8, 1.0, 0.05, 75, 86, 0.44);
    assertThat(byEdge.largestPistonRadiusM()).isCloseTo(0.06, within(1e-12));
  }

  @Test
  void anotherSizeSitsInTheSamePlaces() {
    StackBrief stack = WorkshopSpecs.column("s", 0.44, 1.1, 0.13, 75, 86, -0.25, 0.25);
    StackBrief other = stack.withPistonRadius(0.1);
    assertThat(other.pistons())
        .containsExactly(new Piston(0, -0.25, 0.1), new Piston(0, 0.25, 0.1));
    assertThat(other.withPistonRadius(0.13)).isEqualTo(stack);
    DesignSpec spec = WorkshopSpecs.spec(WorkshopSpecs.brief300(), stack).withPistonRadius(0.1);
    assertThat(spec.woofer().effectiveDiameterM()).isCloseTo(0.2, within(1e-15));
    assertThat(spec.stacks()).containsExactly(other);
  }

  @Test
  void aStackWithoutWoofersAndAWiringOfOthersAreRefused() {
    StackBrief stack = WorkshopSpecs.column("s", 0.44, 1.1, 0.13, 75, 86, -0.25, 0.25);
    assertThatThrownBy(
            () -> new StackBrief("none", stack.panel(), List.of(), 75, 86, Optional.empty()))
        .hasMessageContaining("stack none has no woofer");
    assertThatThrownBy(
            () ->
                new StackBrief(
                    "three", stack.panel(), stack.pistons(), 75, 86, Optional.of(new Wiring(3, 1))))
        .hasMessageContaining("stack three has 2 woofers, its wiring 3");
  }
}

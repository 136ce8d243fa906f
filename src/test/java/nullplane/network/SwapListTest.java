package nullplane.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import nullplane.units.Curve;
import org.junit.jupiter.api.Test;

class SwapListTest {
  private static final SeriesCoil COIL = CoilMake.standard().coil(8.2e-3);

  private static StackParts single() {
    return stack("single", LowPassBranch.ofCoil(COIL).withSeriesResistor(1), 8);
  }

  private static StackParts pair() {
    return stack("pair", LowPassBranch.of(COIL, ShuntCapacitor.undamped(100e-6)), 4);
  }

  private static StackParts four() {
    return stack(
        "four",
        LowPassBranch.of(CoilMake.standard().coil(4.7e-3), ShuntCapacitor.undamped(150e-6)),
        2);
  }

  private static StackParts stack(String name, LowPassBranch branch, double ohm) {
    Curve band = SampleStacks.BAND;
    double[] drive = new double[band.size()];
    Arrays.fill(drive, 20);
    return new StackParts(
        name,
        CircuitState.of(branch, band, SampleStacks.resistance(band, ohm)).ratings(Curve.of(drive)));
  }

  @Test
  void partsStayChangeComeAndGo() {
    SwapList list = SwapList.between(single(), pair());
    assertThat(list.swaps())
        .extracting(swap -> swap.getClass().getSimpleName() + " " + swap.place().designator())
        .containsExactly("Goes R1", "Stays L1", "Comes C1");
    assertThat(SwapList.between(pair(), four()).swaps())
        .extracting(swap -> swap.getClass().getSimpleName() + " " + swap.place().designator())
        .containsExactly("Changes L1", "Changes C1");
    assertThat(SwapList.between(four(), four()).toBuy()).isEmpty();
    assertThat(SwapList.ofPairs(List.of(single(), pair(), four())))
        .extracting(l -> l.from() + " " + l.to())
        .containsExactly("single pair", "single four", "pair four");
  }

  /** The coil that stays carries more current in the pair; its rating is the greater one. */
  @Test
  void partsThatStayAreRatedForBothStacks() {
    RatedPart kept = SwapList.between(single(), pair()).kept().get(0);
    PartRating alone = single().at(PartPlace.SERIES_COIL).orElseThrow().rating();
    PartRating inPair = pair().at(PartPlace.SERIES_COIL).orElseThrow().rating();
    assertThat(inPair.currentA()).isGreaterThan(1.5 * alone.currentA());
    assertThat(kept.rating().currentA()).isEqualTo(inPair.currentA());
    assertThat(SwapList.between(pair(), single()).kept().get(0).rating()).isEqualTo(kept.rating());
  }

  /** What stays and what is bought is the next stack, whatever the branches. */
  @Test
  void keptAndBoughtAreTheNextStack() {
    Random random = new Random(4);
    for (int i = 0; i < 100; i++) {
      StackParts from = stack("a", SampleStacks.branch(random.nextInt(32), new Random(i % 3)), 5);
      StackParts to = stack("b", SampleStacks.branch(random.nextInt(32), new Random(i % 2)), 3);
      SwapList list = SwapList.between(from, to);
      Set<PlacedPart> next = placed(list.kept());
      next.addAll(placed(list.toBuy()));
      assertThat(next).isEqualTo(placed(to.parts()));
    }
  }

  private static Set<PlacedPart> placed(List<RatedPart> parts) {
    return parts.stream().map(RatedPart::placed).collect(Collectors.toCollection(HashSet::new));
  }

  /** Every stack can be built from the kit, from parts that stand what it asks for. */
  @Test
  void kitBuildsEveryStack() {
    List<StackParts> stacks = List.of(single(), pair(), four());
    OwnerKit kit = OwnerKit.of(stacks);
    assertThat(kit.items())
        .extracting(item -> item.part().place().designator() + " " + item.stacks())
        .containsExactly("R1 [single]", "L1 [single, pair]", "L1 [four]", "C1 [pair]", "C1 [four]");
    for (StackParts stack : stacks) {
      for (RatedPart part : stack.parts()) {
        assertThat(kit.items())
            .anyMatch(
                item ->
                    item.part().placed().equals(part.placed())
                        && item.stacks().contains(stack.stack())
                        && item.part().rating().currentA() >= part.rating().currentA()
                        && item.part().rating().powerW() >= part.rating().powerW()
                        && item.part().rating().peakVoltageV() >= part.rating().peakVoltageV());
      }
    }
  }

  @Test
  void onePartForEachPlace() {
    RatedPart part = single().parts().get(0);
    assertThatThrownBy(() -> new StackParts("single", List.of(part, part)))
        .hasMessageContaining("two parts in one place");
  }
}

package nullplane.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import nullplane.network.ActiveBranch;
import nullplane.network.Capacitor;
import nullplane.network.Correction;
import nullplane.network.CrossoverFilter;
import nullplane.network.FilterAlignment;
import nullplane.network.LowPassBranch;
import nullplane.network.OwnerKit;
import nullplane.network.Resistor;
import nullplane.network.SeriesCoil;
import nullplane.network.ShuntCapacitor;
import nullplane.network.StackNetwork;
import nullplane.scoring.Assessment;
import nullplane.scoring.DesignSpec;
import nullplane.scoring.FamilyParts;
import nullplane.scoring.SharedParts;
import nullplane.scoring.StackAssessment;
import nullplane.search.SearchOutcome;
import org.junit.jupiter.api.Test;

/** Swap list, kit and networks as people read them. */
class FamilyPagesTest {
  private static final DesignSpec SPEC = InventedRun.spec();
  private static final Assessment WOOFER = InventedRun.outcome(SPEC).ranked().get(0);
  private static final SeriesCoil COIL = new SeriesCoil(6.8e-3, 0.9, 1.1);
  private static final LowPassBranch LONG =
      LowPassBranch.of(
              COIL, new ShuntCapacitor(new Capacitor(68e-6), Optional.of(new Resistor(1.5))))
          .withSeriesResistor(0.47);
  private static final ActiveBranch FILTER =
      new ActiveBranch(
          0.7,
          Optional.of(new CrossoverFilter(FilterAlignment.LINKWITZ_RILEY_4, 180)),
          Optional.of(new Correction.Peaking(42, 1.7, 0.55)));

  private static Assessment with(StackNetwork... networks) {
    List<StackAssessment> stacks =
        java.util.stream.IntStream.range(0, networks.length)
            .mapToObj(
                i -> {
                  StackAssessment s = WOOFER.stacks().get(i);
                  return new StackAssessment(
                      s.brief(), s.wiring(), networks[i], s.figures(), s.curves());
                })
            .toList();
    return new Assessment(
        WOOFER.woofer(),
        WOOFER.freeAir(),
        WOOFER.budget(),
        WOOFER.motor(),
        stacks,
        WOOFER.grade(),
        WOOFER.parts(),
        WOOFER.violations());
  }

  private static String sheet(StackNetwork... networks) {
    return new SpecificationSheet(SPEC, with(networks), 1, InventedRun.INFO).markdown();
  }

  @Test
  void everyPairOfStacksHasItsSwaps() {
    String sheet = sheet(LowPassBranch.ofCoil(COIL), LowPassBranch.NONE, LONG);
    assertThat(sheet)
        .contains("### From single to pair")
        .contains("### From single to four")
        .contains("### From pair to four")
        .contains("| L1, series coil | goes | 6.80 mH, 0.900 ohm, 1100 g copper | none | - |")
        .contains("| L1, series coil | stays | 6.80 mH")
        .containsPattern("C1, shunt capacitor \\| comes \\| none \\| 68.0 uF \\| [0-9.]+ V peak at")
        .containsPattern("R2, damping resistor \\| comes \\| none \\| 1.50 ohm \\| [0-9.]+ W at")
        .contains("| single, four |");
    OwnerKit kit =
        FamilyParts.of(SPEC, with(LowPassBranch.ofCoil(COIL), LowPassBranch.NONE, LONG)).kit();
    assertThat(kit.items()).hasSize(4);
  }

  @Test
  void filtersAreSetAnew() {
    assertThat(sheet(FILTER, FILTER, ActiveBranch.NONE))
        .contains("The filter stays as it is set: gain -3.10 dB; low-pass Linkwitz-Riley")
        .contains("Set the filter anew, from gain -3.10 dB")
        .contains("to no change of the signal")
        .doesNotContain("Owner's kit");
    assertThat(sheet(LowPassBranch.NONE, LowPassBranch.NONE, LowPassBranch.NONE))
        .contains("No stack needs a network: there is nothing to swap.");
  }

  @Test
  void whatSharingCostsIsTold() {
    Assessment woofer = with(LowPassBranch.ofCoil(COIL), LowPassBranch.NONE, LONG);
    FamilyParts plain = FamilyParts.of(SPEC, woofer);
    SharedParts.Side side = new SharedParts.Side(LowPassBranch.ofCoil(COIL), 0.5, -0.25);
    FamilyParts family =
        new FamilyParts(
            plain.networks(),
            plain.stacks(),
            plain.swaps(),
            plain.kit(),
            List.of(
                new SharedParts(
                    "single",
                    "four",
                    Optional.of(new SharedParts.Sharing(side, side)),
                    Optional.empty())));
    String sheet = new SpecificationSheet(SPEC, woofer, 1, InventedRun.INFO, family).markdown();
    assertThat(sheet)
        .contains(
            "| single, four | the series coil | 6.80 mH | -0.25 dB rms, +0.50 dB cost |"
                + " -0.25 dB rms, +0.50 dB cost |")
        .contains("| single, four | the whole network | none is allowed in both |");
  }

  /** A table of 80 columns has room for two parts; more are told below it. */
  @Test
  void longNetworksFitTheTerminal() {
    Assessment woofer = with(FILTER, LONG, LowPassBranch.of(COIL, ShuntCapacitor.undamped(68e-6)));
    SearchOutcome outcome =
        new SearchOutcome(List.of(woofer), List.of(), 10, 1, 0, List.of(), "the time was up", 1);
    String text = TerminalSummary.of(SPEC, outcome, InventedRun.INFO, "x", false);
    assertThat(text.lines()).allSatisfy(line -> assertThat(line.length()).isLessThan(81));
    assertThat(text)
        .contains("2 filters")
        .contains("4 parts")
        .contains("6.80 mH + 68.0 uF")
        .contains("pair: series resistor 0.470 ohm; series coil 6.80 mH")
        .contains("single: gain -3.10 dB; low-pass Linkwitz-Riley, 4th order, 180 Hz;");
  }
}

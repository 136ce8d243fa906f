package nullplane.io;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import nullplane.network.ActiveBranch;
import nullplane.network.CrossoverFilter;
import nullplane.network.FilterAlignment;
import nullplane.network.LowPassBranch;
import nullplane.network.SeriesCoil;
import nullplane.network.ShuntCapacitor;
import nullplane.network.StackNetwork;
import nullplane.scoring.Assessment;
import nullplane.scoring.FamilyParts;
import nullplane.scoring.FamilyScore;
import nullplane.scoring.Grade;
import nullplane.scoring.SharedParts;
import nullplane.scoring.StackAssessment;
import nullplane.search.FrontMember;
import nullplane.search.SearchOutcome;
import nullplane.units.Air;
import org.junit.jupiter.api.Test;

/** Swap lists, kits and fronts as tables and JSON. */
class FamilyWritersTest {
  private static final ReadSpec SPEC = SpecReader.read(Path.of("specs/village-hall.yaml"));
  private static final SeriesCoil COIL = new SeriesCoil(3.3e-3, 0.4, 0.35);
  private static final LowPassBranch SECOND =
      LowPassBranch.of(COIL, ShuntCapacitor.undamped(68e-6));
  private static final ActiveBranch FILTER =
      new ActiveBranch(
          0.5,
          Optional.of(new CrossoverFilter(FilterAlignment.BUTTERWORTH_2, 180)),
          Optional.empty());

  private static Assessment woofer(StackNetwork... networks) {
    Assessment a = ExampleOutcome.of(SPEC, List.of("Nr. 1"), 74).ranked().get(0);
    List<StackAssessment> stacks =
        java.util.stream.IntStream.range(0, networks.length)
            .mapToObj(
                i -> {
                  StackAssessment s = a.stacks().get(i);
                  return new StackAssessment(
                      s.brief(), s.wiring(), networks[i], s.figures(), s.curves());
                })
            .toList();
    return new Assessment(
        a.woofer(),
        a.freeAir(),
        a.budget(),
        a.motor(),
        stacks,
        a.grade(),
        a.parts(),
        a.violations());
  }

  private static List<List<String>> rows(byte[] csv) {
    return new String(csv, StandardCharsets.UTF_8)
        .lines()
        .map(line -> List.of(line.split(",", -1)))
        .toList();
  }

  @Test
  void everySwapHasItsRow() {
    FamilyParts family =
        FamilyParts.of(SPEC.spec(), woofer(LowPassBranch.ofCoil(COIL), LowPassBranch.NONE, SECOND));
    List<List<String>> rows = rows(SwapCsv.swaps(family));
    assertThat(rows).hasSize(6).allSatisfy(row -> assertThat(row).hasSize(rows.get(0).size()));
    assertThat(rows.get(1))
        .startsWith("single", "pair", "L1", "series coil", "goes", "mH", "3.3", "none", "");
    assertThat(rows.get(2)).startsWith("single", "four", "L1", "series coil", "stays", "mH", "3.3");
    assertThat(rows.get(3))
        .startsWith("single", "four", "C1", "shunt capacitor", "comes", "uF", "none", "68");
    List<List<String>> kit = rows(SwapCsv.kit(family.kit()));
    assertThat(kit).hasSize(3);
    assertThat(kit.get(1)).startsWith("L1", "series coil", "3.3", "mH", "0.4", "single; four");
  }

  @Test
  void filtersHaveRowsOfTheirOwn() {
    FamilyParts family = FamilyParts.of(SPEC.spec(), woofer(FILTER, FILTER, ActiveBranch.NONE));
    String text = new String(SwapCsv.swaps(family), StandardCharsets.UTF_8);
    assertThat(text)
        .contains("single,pair,,filter,stays,")
        .contains("pair,four,,filter,set anew,,\"gain -6.0206 dB; low-pass Butterworth")
        .contains(",none,");
  }

  @Test
  void theJsonHoldsSwapsKitAndWhatSharingCosts() throws Exception {
    Assessment woofer = woofer(LowPassBranch.ofCoil(COIL), LowPassBranch.NONE, SECOND);
    FamilyParts plain = FamilyParts.of(SPEC.spec(), woofer);
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
    SearchOutcome outcome = ExampleOutcome.of(SPEC, List.of("Nr. 1"), 74);
    JsonNode ranked =
        new ObjectMapper()
            .readTree(RankingJson.of(SPEC, outcome, List.of(), List.of(family), "0.1.0"))
            .get("ranked")
            .get(0);
    JsonNode swap = ranked.get("swaps").get(1);
    assertThat(swap.get("from").asText() + swap.get("to").asText()).isEqualTo("singlefour");
    assertThat(swap.get("places").get(1).get("after").get("capacitanceF").asDouble())
        .isEqualTo(68e-6);
    assertThat(swap.get("places").get(1).get("after").get("peakVoltageV").asDouble()).isPositive();
    assertThat(swap.get("sameCoil").get("to").get("shapeLossDb").asDouble()).isEqualTo(-0.25);
    assertThat(swap.get("sameNetwork").isNull()).isTrue();
    assertThat(ranked.get("ownerKit")).hasSize(2);
  }

  @Test
  void theFrontHasARowForEachMember() {
    Assessment woofer = woofer(LowPassBranch.ofCoil(COIL), FILTER, SECOND);
    FrontMember member =
        new FrontMember(
            woofer.woofer(),
            woofer.motor().orElseThrow().winding(),
            woofer.stacks().stream().map(StackAssessment::wiring).toList(),
            woofer.stacks().stream().map(StackAssessment::network).toList(),
            new FamilyScore(new Grade(0, 2.5), 1.25, -0.5, 0.75, 0.125, 0.0625),
            0.875,
            OptionalInt.of(3));
    List<List<String>> rows =
        rows(FrontCsv.of(SPEC.spec(), List.of(member), Air.standard())).stream().toList();
    List<String> head = rows.get(0);
    List<String> row = rows.get(1);
    assertThat(row.get(head.indexOf("rank"))).isEqualTo("3");
    assertThat(row.get(head.indexOf("moving-mass [g]"))).isEqualTo("71");
    assertThat(row.get(head.indexOf("shape [dB]"))).isEqualTo("1.25");
    assertThat(row.get(head.indexOf("output margin [dB]"))).isEqualTo("-0.5");
    assertThat(row.get(head.indexOf("yield [%]"))).isEqualTo("87.5");
    assertThat(row.get(head.indexOf("outside corridor [dB]"))).isEqualTo("0.0625");
    assertThat(row.get(head.indexOf("single: network"))).isEqualTo("series coil 3.3 mH");
    assertThat(row.get(row.size() - 1)).isEqualTo("series coil 3.3 mH; shunt capacitor 68 uF");
  }
}

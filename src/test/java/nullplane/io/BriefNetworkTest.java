package nullplane.io;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import nullplane.faults.InvalidInputException;
import nullplane.network.ActiveBranch;
import nullplane.network.Capacitor;
import nullplane.network.Correction;
import nullplane.network.CrossoverFilter;
import nullplane.network.FilterAlignment;
import nullplane.network.LowPassBranch;
import nullplane.network.MotionalConjugate;
import nullplane.network.Resistor;
import nullplane.network.SeriesCoil;
import nullplane.network.ShuntCapacitor;
import nullplane.network.StackNetwork;
import nullplane.network.ZobelNetwork;
import nullplane.report.FactoryParts;
import nullplane.report.FactorySheet;
import nullplane.report.RunInfo;
import nullplane.scoring.Assessment;
import nullplane.scoring.StackAssessment;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** A brief's networks come back from its file as they were. */
class BriefNetworkTest {
  private static final ReadSpec SPEC = SpecReader.read(Path.of("specs/village-hall.yaml"));

  @TempDir private Path folder;

  static Stream<StackNetwork> networks() {
    SeriesCoil coil = new SeriesCoil(3.3e-3, 0.4, 0.35);
    LowPassBranch second =
        LowPassBranch.of(
            coil, new ShuntCapacitor(new Capacitor(68e-6), Optional.of(new Resistor(1.5))));
    return Stream.of(
        LowPassBranch.NONE,
        LowPassBranch.ofCoil(coil),
        LowPassBranch.NONE.withSeriesResistor(2.2),
        LowPassBranch.of(coil, ShuntCapacitor.undamped(1.0 / 3e4)),
        second.withSeriesResistor(0.47),
        second
            .withResonance(
                new MotionalConjugate(
                    Optional.of(new Resistor(5.6)),
                    new SeriesCoil(0.018, 0.9, 1.2),
                    new Capacitor(1e-3)))
            .withZobel(new ZobelNetwork(new Resistor(6.8), new Capacitor(22e-6))),
        ActiveBranch.NONE,
        new ActiveBranch(
            0.7,
            Optional.of(new CrossoverFilter(FilterAlignment.LINKWITZ_RILEY_4, 180)),
            Optional.of(new Correction.Shelf(70, 1.6))),
        new ActiveBranch(
            1.2, Optional.empty(), Optional.of(new Correction.Peaking(42, 1.7, 0.55))));
  }

  @ParameterizedTest
  @MethodSource("networks")
  void comesBackAsItWas(StackNetwork network) throws Exception {
    Path file = write(new String(brief(network), StandardCharsets.UTF_8));
    assertThat(BriefReader.read(file).brief().stacks())
        .hasSize(3)
        .allSatisfy(stack -> assertThat(stack.network()).isEqualTo(network));
  }

  /** A brief of an earlier version names the coil alone. */
  @Test
  void theCoilAloneIsReadWhereThereIsNoNetwork() throws Exception {
    String text = text(LowPassBranch.ofCoil(new SeriesCoil(3.3e-3, 0.4, 0.35)));
    String without = text.replaceAll("(?s)\"network\" : \\{.*?\\]\\s*\\},", "");
    assertThat(without).doesNotContain("\"network\"").contains("coilInductanceH");
    assertThat(BriefReader.read(write(without)).brief().stacks().get(0).network())
        .isEqualTo(LowPassBranch.ofCoil(new SeriesCoil(3.3e-3, 0.4, 0)));
  }

  @Test
  void whatIsNoNetworkIsAFault() {
    String text = text(LowPassBranch.ofCoil(new SeriesCoil(3.3e-3, 0.4, 0.35)));
    for (String wrong :
        List.of(
            text.replace("\"L1\"", "\"X9\""),
            text.replace("\"passive\"", "\"magic\""),
            text.replace("\"inductanceH\" : 0.0033", "\"inductanceH\" : -1"),
            text.replace("\"inductanceH\" : 0.0033", "\"inductanceH\" : \"much\""))) {
      assertThat(wrong).isNotEqualTo(text);
      assertThatThrownBy(() -> BriefReader.read(write(wrong)))
          .isInstanceOf(InvalidInputException.class)
          .hasMessageContaining("network");
    }
  }

  private Path write(String text) throws Exception {
    return Files.writeString(folder.resolve("brief-1.json"), text);
  }

  private static String text(StackNetwork network) {
    return new String(brief(network), StandardCharsets.UTF_8);
  }

  private static byte[] brief(StackNetwork network) {
    Assessment a = ExampleOutcome.of(SPEC, List.of("Nr. 1"), 74).ranked().get(0);
    List<StackAssessment> stacks =
        a.stacks().stream()
            .map(s -> new StackAssessment(s.brief(), s.wiring(), network, s.figures(), s.curves()))
            .toList();
    Assessment changed =
        new Assessment(
            a.woofer(),
            a.freeAir(),
            a.budget(),
            a.motor(),
            stacks,
            a.grade(),
            a.parts(),
            a.violations());
    return BriefJson.of(
        new FactorySheet(
                SPEC.spec(), changed, 1, new RunInfo(SPEC.digest(), 7, "0.1.0"), FactoryParts.NONE)
            .brief());
  }
}

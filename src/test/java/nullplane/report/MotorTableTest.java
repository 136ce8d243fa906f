package nullplane.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import java.util.OptionalDouble;
import nullplane.motor.MotorDesign;
import nullplane.motor.WindingCatalogue;
import nullplane.scoring.Assessment;
import nullplane.scoring.DesignSpec;
import nullplane.scoring.WooferBrief;
import org.junit.jupiter.api.Test;

class MotorTableTest {
  private static final DesignSpec SPEC = InventedRun.spec();
  private static final Assessment PLAIN = InventedRun.assessment(SPEC, "Woofer 1", 31, 0.8, 0.0077);

  private static final MotorDesign MOTOR =
      MotorDesign.of(
          WindingCatalogue.of(SPEC.woofer().coil(), SPEC.woofer().travelM()).windings().get(0),
          PLAIN.woofer().forceFactorTm(),
          SPEC.woofer().coil().magnet());

  private static Assessment wound() {
    return new Assessment(
        PLAIN.woofer(),
        PLAIN.freeAir(),
        PLAIN.budget(),
        Optional.of(MOTOR),
        PLAIN.stacks(),
        PLAIN.grade(),
        PLAIN.parts(),
        PLAIN.violations());
  }

  private static String sheet(DesignSpec spec, Assessment assessment) {
    return new SpecificationSheet(spec, assessment, 1, InventedRun.INFO).markdown();
  }

  @Test
  void aSheetTellsTheCoilToWind() {
    String sheet = sheet(SPEC, wound());
    int turns = MOTOR.winding().coil().turnsPerLayer();
    assertThat(sheet)
        .contains("| Turns per layer | " + turns + " |")
        .contains("| Former, inside diameter | 50.0 mm |")
        .contains("| Gap height | 8.00 mm |")
        .contains("of ferrite |")
        .contains("Given by the spec. It takes ")
        .contains("The winding's own; 5.43 to 5.77 ohm was allowed.")
        .doesNotContain("NaN");
  }

  @Test
  void aWooferWithoutItsCoilIsHeldToTheLeast() {
    assertThat(sheet(SPEC, PLAIN))
        .contains("| Wire mass needed | 19.2 g |")
        .contains("Given with the woofer.")
        .doesNotContain("Turns per layer");
  }

  @Test
  void anInductanceThatIsLeftOutIsSaidToBeAnEstimate() {
    WooferBrief b = SPEC.woofer();
    DesignSpec spec =
        new DesignSpec(
            SPEC.title(),
            new WooferBrief(
                b.nominalM(),
                b.effectiveDiameterM(),
                b.resonanceHz(),
                b.totalQ(),
                b.bareMassKg(),
                b.travelM(),
                b.mechanicalQ(),
                OptionalDouble.empty(),
                b.powerW(),
                b.coil()),
            SPEC.stacks(),
            SPEC.listening(),
            SPEC.target(),
            SPEC.amplifier());
    assertThat(sheet(spec, wound())).contains("Estimated for a motor without a shorting ring.");
  }
}

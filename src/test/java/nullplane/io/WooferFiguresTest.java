package nullplane.io;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import nullplane.driver.Cause;
import nullplane.driver.CoilInductance;
import nullplane.driver.Datasheet;
import nullplane.driver.Gap;
import nullplane.driver.Mounting;
import nullplane.driver.Parameter;
import nullplane.driver.SmallSignal;
import nullplane.faults.InputFault;
import nullplane.faults.InvalidInputException;
import nullplane.units.Air;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Woofer files that state other figures than the usual ones, or more of them. */
class WooferFiguresTest {
  @TempDir Path folder;

  /**
   * One woofer, stated in four ways. The figures by hand from fs = 31 Hz, Qms = 5.2, Qes = 0.85,
   * Mms = 78 g, Re = 5.6 ohm, Sd = 530.929 cm2 (R. H. Small 1972): w = 194.7787 1/s; Kms = w^2 Mms
   * = 2959.227 N/m; Rms = w Mms/Qms = 2.921681 N s/m; Bl^2 = w Mms Re/Qes; Vas = rho c^2 Sd^2/Kms
   * with rho c^2 = 141825.2 Pa: 135.0938 l.
   */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "kms: 2959.227 N/m; mms: 78 g; rms: 2.921681 kg/s; bl: 10.0046669 Tm; re: 5.6 ohm;"
            + " sd: 530.929158 cm2; vd: 424.743327 cm3",
        "vas: 135.0938 l; cms: 0.3379261 mm/N; fs: 31 Hz; qms: 5.2; qts: 0.7305785; re: 5.6 ohm;"
            + " coil-height: 24 mm; gap-height: 8 mm",
        "moving-mass: 70.9455795 g; vas: 135.0938 l; fs: 31 Hz; qms: 5.2; qes: 0.85; re: 5.6 ohm;"
            + " travel: 8 mm",
        "level-1w: 88.81164 dB; level-2v83: 90.36537 dB; fs: 31 Hz; qms: 5.2; qes: 0.85;"
            + " effective-diameter: 260 mm; travel: 8 mm",
      })
  void oneWooferStatedInSeveralWays(String keys) {
    ReadWoofer read = read(keys.replace("; ", "\n"));
    assertThat(read.contradictions()).isEmpty();
    SmallSignal set = SmallSignal.of(read.woofer(), Mounting.FREE_AIR, Air.standard());
    assertThat(set.resonanceHz()).isCloseTo(31, withinPercentage(0.01));
    assertThat(set.mechanicalQ()).isCloseTo(5.2, withinPercentage(0.01));
    assertThat(set.electricalQ()).isCloseTo(0.85, withinPercentage(0.02));
    assertThat(set.movingMassKg()).isCloseTo(0.078, withinPercentage(0.05));
    assertThat(set.equivalentVolumeM3()).isCloseTo(0.1350938, withinPercentage(0.05));
    assertThat(read.woofer().effectiveAreaM2()).isCloseTo(0.0530929, withinPercentage(0.05));
    assertThat(read.woofer().resistanceOhm()).isCloseTo(5.6, withinPercentage(0.05));
    assertThat(read.woofer().travelM()).isCloseTo(0.008, withinPercentage(0.05));
  }

  @Test
  void coilHasOneOfThreeForms() {
    String rest =
        "sd: 531 cm2\nre: 5.6 ohm\nfs: 31 Hz\nqms: 5.2\nqes: 0.85\nmms: 78 g\ntravel: 8 mm\n";
    ReadWoofer eddy = read(rest + "le: 0.4 mH\nl2: 1.2 mH\nr2: 4 ohm");
    assertThat(eddy.sheet().inductance())
        .contains(new CoilInductance.WithEddyCurrents(0.4e-3, 1.2e-3, 4));
    // The imaginary part of row IN02 of the handbook checks, 4.1693 ohm at 1 kHz.
    assertThat(eddy.woofer().inductanceH() * 2 * Math.PI * 1000).isCloseTo(4.1693, within(1e-4));
    ReadWoofer semi = read(rest + "semi-inductance: 6.5 ohm\nsemi-exponent: 0.5");
    // At exponent 0.5 the impedance turns by 45 degrees: 6.5/sqrt(2) ohm of reactance at 1 kHz.
    assertThat(semi.woofer().inductanceH() * 2 * Math.PI * 1000)
        .isCloseTo(6.5 / Math.sqrt(2), within(1e-9));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "l2: 1.2 mH | r2 | the key is missing",
        "coil-height: 24 mm | gap-height | the key is missing",
        "coil-height: 8 mm; gap-height: 8 mm | coil-height | leave no travel",
        "semi-inductance: 6 ohm; semi-exponent: 0.7; le: 1 mH | semi-inductance | twice",
        "semi-inductance: 6 ohm | semi-exponent | the key is missing",
        "eta0: 0.5 | eta0 | the unit is missing",
        "cms: 0.4 N/mm | cms | unit of stiffness",
        "level-1w: 88 | level-1w | the unit is missing",
      })
  void faultsOfTheNewKeys(String keys, String key, String problem) {
    List<InputFault> faults =
        catchThrowableOfType(
                InvalidInputException.class,
                () ->
                    read(
                        "sd: 531 cm2\nre: 5.6 ohm\nfs: 31 Hz\nqms: 5.2\nqes: 0.85\nmms: 78 g\n"
                            + "travel: 8 mm\n"
                            + keys.replace("; ", "\n")))
            .faults();
    assertThat(faults).hasSize(1);
    assertThat(faults.get(0).key()).isEqualTo(key);
    assertThat(faults.get(0).problem()).contains(problem);
  }

  /** Nothing has to suffice for a data sheet; what is missing is said. */
  @Test
  void aFewFiguresAreCompletedAsFarAsTheyGo() throws IOException {
    Path file = folder.resolve("few.yaml");
    Files.writeString(file, "fs: 19 Hz\nqms: 3.7\nqes: 0.35\nvas: 540 l\n");
    Datasheet sheet = WooferReader.readDatasheet(file).sheet();
    assertThat(sheet.name()).isEqualTo("few");
    assertThat(sheet.completed().value(Parameter.TOTAL_Q).orElseThrow())
        .isCloseTo(0.3198, within(1e-4));
    assertThat(sheet.completed().value(Parameter.FORCE_FACTOR)).isEmpty();
    assertThat(sheet.completed().gaps())
        .extracting(Gap::cheapest)
        .containsExactly(Parameter.DIAMETER, Parameter.RESISTANCE);
    assertThat(sheet.mountings()).isEmpty();
    List<InputFault> faults =
        catchThrowableOfType(InvalidInputException.class, () -> WooferReader.read(file)).faults();
    assertThat(faults)
        .extracting(InputFault::key)
        .containsExactlyInAnyOrder("effective-diameter", "re", "travel");
  }

  /** The sheet in specs is clean, though it states seven figures more than it needs. */
  @Test
  void theExampleAgreesWithItself() {
    ReadWoofer example = WooferReader.read(Path.of("specs", "sample-12a.yaml"));
    assertThat(example.contradictions()).isEmpty();
    assertThat(example.completed().agreements()).hasSize(7);
    assertThat(example.woofer().name()).contains("invented");
  }

  @Test
  void aLevelOfTheOtherKindIsNamedAndTheWooferStillRead() {
    ReadWoofer read =
        read(
            "sd: 531 cm2\nre: 3.5 ohm\nfs: 31 Hz\nqms: 5.2\nqes: 0.85\nmms: 78 g\ntravel: 8 mm\n"
                + "level-1w: 92.4 dB");
    // 88.8 dB at 1 W; 2.83 V into 3.5 ohm are 2.29 W, 3.6 dB more (row TS11 of the checks).
    assertThat(read.contradictions()).hasSize(1);
    assertThat(read.contradictions().get(0).cause().kind()).isEqualTo(Cause.Kind.LEVELS_MIXED);
    assertThat(read.woofer().forceFactorTm()).isPositive();
  }

  private static ReadWoofer read(String text) {
    return WooferReader.read(text.getBytes(StandardCharsets.UTF_8), "woofer.yaml");
  }
}

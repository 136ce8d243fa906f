package nullplane.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Specs at the ends of what is allowed: each works or ends with exit code 3 and its reason in one
 * line, and no number that is not finite reaches any output.
 */
class ExtremeSpecsIT {
  @TempDir private Path folder;

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      delimiter = '|',
      value = {
        "tiny panel | 10 cm | 8 cm | width: 10 cm, height: 10 cm | 1 | 15 Hz | 800 Hz",
        "piston as wide as the panel | 300 mm | 260 mm | width: 26 cm, height: 60 cm | 1 | 40 Hz | 200 Hz",
        "four that touch each other and the rim | 200 mm | 160 mm | width: 32 cm, height: 32 cm, clearance: 0 cm | 4 | 15 Hz | 800 Hz",
      })
  void extremesWorkOrAreDeclined(
      String title,
      String nominal,
      String piston,
      String panel,
      int woofers,
      String low,
      String high)
      throws Exception {
    Files.writeString(
        folder.resolve("spec.yaml"),
        """
        title: %s
        woofer: {nominal: %s, effective-diameter: %s}
        stacks:
          - name: one
            panel: {%s}
            woofers: [%s]
        listening: {distance: 3 m, height: 1 m}
        target: {level: 60 dB, loudest: 66 dB, low-corner: %s, upper-corner: %s}
        amplifier: {voltage: 28 V, lowest-load: 3 ohm}
        """
            .formatted(title, nominal, piston, panel, centres(woofers), low, high));
    ProgramRun.Ended ended =
        ProgramRun.start(
                folder,
                ProgramRun.QUICK,
                "design",
                "spec.yaml",
                "--evaluations",
                "1000",
                "--out",
                "out")
            .end();
    FiniteOutputs.require("standard output", ended.out());
    FiniteOutputs.require("standard error", ended.err());
    if (ended.exitCode() == 3) {
      assertThat(ended.err().lines().toList()).hasSize(1);
      assertThat(folder.resolve("out")).doesNotExist();
    } else {
      assertThat(ended.exitCode()).as(ended.err()).isZero();
      assertThat(FiniteOutputs.require(folder.resolve("out"))).isPositive();
    }
  }

  /** One in the middle, or four in a square whose pistons of 16 cm touch. */
  private static String centres(int woofers) {
    if (woofers == 1) {
      return "{x: 0 cm, y: 0 cm}";
    }
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < woofers; i++) {
      text.append(i == 0 ? "" : ", ")
          .append(
              String.format(
                  Locale.ROOT, "{x: %d cm, y: %d cm}", 16 * (i % 2) - 8, 16 * (i / 2) - 8));
    }
    return text.toString();
  }
}

package nullplane.io;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.OptionalDouble;
import nullplane.faults.InvalidInputException;
import nullplane.scoring.PanelStand;
import nullplane.scoring.StackBrief;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a spec says of how its panels stand. */
class PanelStandTest {
  @TempDir private Path folder;

  private StackBrief read(String keys, String rest) throws IOException {
    String spec =
        """
        title: Reading room
        woofer: {nominal: 300 mm, effective-diameter: 260 mm}
        stacks:
          - name: single
            panel: {width: 44 cm, height: 110 cm, clearance: 4 cm%s}
            woofers: [{x: 0 cm, y: -25 cm}]
        listening: {distance: 3 m, height: 1 m}
        target: {level: 74 dB, loudest: 86 dB, low-corner: 45 Hz, upper-corner: 200 Hz}
        amplifier: {voltage: 28 V, lowest-load: 3 ohm}
        %s
        """
            .formatted(keys, rest);
    return SpecReader.read(Files.writeString(folder.resolve("spec.yaml"), spec))
        .spec()
        .stacks()
        .get(0);
  }

  /** It comes through to the stack, above which a main driver is set, or whose pistons change. */
  @Test
  void massAndBaseAreRead() throws IOException {
    PanelStand stand = new PanelStand(OptionalDouble.of(5.5), OptionalDouble.of(0.3));
    StackBrief plain = read(", mass: 5500 g, base-depth: 30 cm", "");
    assertThat(plain.stand()).isEqualTo(stand);
    assertThat(plain.withPistonRadius(0.1).stand()).isEqualTo(stand);
    assertThat(
            read(
                    ", mass: 5.5 kg, base-depth: 0.3 m",
                    "main-driver: {high-pass: {shape: linkwitz-riley-4}}")
                .stand())
        .isEqualTo(stand);
    assertThat(read("", "").stand()).isEqualTo(PanelStand.UNKNOWN);
  }

  @Test
  void whatCannotBeIsRefusedWithItsPlace() {
    InvalidInputException refused =
        catchThrowableOfType(
            InvalidInputException.class, () -> read(", mass: 5 g, base-depth: 7 m", ""));
    assertThat(refused.faults())
        .extracting(fault -> fault.key() + " | " + fault.allowed())
        .containsExactlyInAnyOrder(
            "stacks[0].panel.mass | 100 g .. 500 kg", "stacks[0].panel.base-depth | 0 cm .. 5 m");
  }
}

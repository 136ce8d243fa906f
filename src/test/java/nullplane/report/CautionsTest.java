package nullplane.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import nullplane.scoring.Assessment;
import nullplane.scoring.DesignSpec;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CautionsTest {
  private static final DesignSpec SPEC = InventedRun.spec();
  private static final Assessment WOOFER = InventedRun.outcome(SPEC).ranked().get(0);

  /** NIOSH Publication 98-126 (1998), table 1-1: level and longest time per day. */
  @ParameterizedTest
  @CsvSource({
    "85, 480",
    "88, 240",
    "91, 120",
    "94, 60",
    "97, 30",
    "100, 15",
    "103, 7.5",
    "106, 3.75"
  })
  void exposureTimesAreThoseOfTheTable(double level, double minutes) {
    assertThat(Cautions.minutesAt(level)).isCloseTo(minutes, within(1e-9));
  }

  /** ka = 2 pi f a/c = 1.5 with a = 0.13 m and c = 343.2 m/s gives 630 Hz. */
  @Test
  void pistonLimitIsComputedFromTheCone() {
    assertThat(new Cautions(SPEC, WOOFER).pistonLimitHz()).isCloseTo(630.3, within(0.1));
    assertThat(new Cautions(SPEC, WOOFER).model())
        .anyMatch(text -> text.contains("630 Hz"))
        .anyMatch(text -> text.contains("rigid"));
  }

  @Test
  void figuresCallForTheirCautions() {
    assertThat(new Cautions(SPEC, WOOFER).sentences())
        .anyMatch(text -> text.startsWith("Hearing: ") && text.contains("85 dB(A)"))
        .anyMatch(text -> text.startsWith("Heat: ") && text.contains(" W into heat at 28.0 V"))
        .anyMatch(text -> text.startsWith("Stability: ") && text.contains("2.30 m tall"))
        .anyMatch(text -> text.contains("magnets"))
        .anyMatch(text -> text.contains("local codes"))
        .anyMatch(text -> text.contains("does not replace a measured sample"));
  }

  @Test
  void aLoadBelowTheAmplifiersIsSaid() {
    DesignSpec strict =
        new DesignSpec(
            SPEC.title(),
            SPEC.woofer(),
            SPEC.stacks(),
            SPEC.listening(),
            SPEC.target(),
            new nullplane.scoring.Amplifier(28, 4));
    assertThat(new Cautions(SPEC, WOOFER).sentences())
        .noneMatch(text -> text.startsWith("Amplifier: "));
    assertThat(new Cautions(strict, WOOFER).sentences())
        .anyMatch(text -> text.startsWith("Amplifier: ") && text.contains("below"));
  }
}

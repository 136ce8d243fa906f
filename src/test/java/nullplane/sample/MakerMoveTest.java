package nullplane.sample;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** One request for all levers, worked out by hand. */
class MakerMoveTest {
  private static LeverReading reading(double value) {
    return new LeverReading(value, 0, 1);
  }

  private static final AskedChange ASKED =
      new AskedChange(
          0.005, -0.36, 0.21, Optional.of(new AskedChange.WindingStep(0.004, 1.44, 0.81)), 1e-3);

  private static final MakerMove MOVE =
      new MakerMove(
          1,
          2,
          ASKED,
          Map.of(
              Lever.MASS, 0.8,
              Lever.STIFFNESS, 0.5,
              Lever.FLUX, 0.5,
              Lever.WINDING, 0.5,
              Lever.REST_POSITION, 2.0),
          Map.of(
              Lever.MASS, reading(0.060),
              Lever.STIFFNESS, reading(2000),
              Lever.FLUX, reading(10),
              Lever.WINDING, reading(6),
              Lever.REST_POSITION, reading(-0.7e-3)),
          Map.of(
              Lever.MASS, reading(0.066),
              Lever.STIFFNESS, reading(2500),
              Lever.FLUX, reading(9.9),
              Lever.WINDING, reading(6.6),
              Lever.REST_POSITION, reading(0.3e-3)));

  /** Square roots of 0.64, 1.21 and 1.44 at a gain of a half; mass and way times their gain. */
  @Test
  void expectedIsWhatWasAskedByTheGain() {
    predicts(MOVE, Lever.MASS, 0.004);
    predicts(MOVE, Lever.STIFFNESS, -0.2);
    predicts(MOVE, Lever.FLUX, 0.1);
    predicts(MOVE, Lever.WINDING, 0.2);
    predicts(MOVE, Lever.REST_POSITION, 2e-3);
    // where no gain is on record, all of it
    MakerMove plain = new MakerMove(1, 2, ASKED, Map.of(), MOVE.before(), MOVE.after());
    predicts(plain, Lever.MASS, 0.005);
    predicts(plain, Lever.STIFFNESS, -0.36);
    predicts(plain, Lever.WINDING, 0.44);
    predicts(plain, Lever.REST_POSITION, 1e-3);
  }

  private static void predicts(MakerMove move, Lever lever, double expected) {
    assertThat(move.predicted(lever)).as(lever.word()).isCloseTo(expected, within(1e-12));
  }

  /** Half of the winding came: 2 g of the 6 g, and 0.9 of 0.99 of the force, are its doing. */
  @Test
  void whatTheWindingDidIsTakenOff() {
    achieves(0.5, Lever.MASS, 0.004);
    achieves(0.5, Lever.FLUX, 0.1);
    achieves(0.5, Lever.STIFFNESS, 0.25);
    achieves(0.5, Lever.WINDING, 0.1);
    achieves(0.5, Lever.REST_POSITION, 1e-3);
    achieves(0, Lever.MASS, 0.006);
    achieves(0, Lever.FLUX, -0.01);
  }

  private static void achieves(double windingGain, Lever lever, double expected) {
    assertThat(MOVE.achieved(lever, windingGain).orElseThrow())
        .as(lever.word())
        .isCloseTo(expected, within(1e-12));
  }

  @Test
  void bothRoundsMustShowAPart() {
    MakerMove first = new MakerMove(1, 2, ASKED, Map.of(), MOVE.before(), Map.of());
    MakerMove second = new MakerMove(1, 2, ASKED, Map.of(), Map.of(), MOVE.after());
    for (MakerMove move : new MakerMove[] {first, second}) {
      assertThat(move.shows(Lever.MASS)).isFalse();
      assertThat(move.achieved(Lever.MASS, 1)).isEmpty();
    }
    assertThat(MOVE.shows(Lever.MASS)).isTrue();
  }

  /** Request and interval: 0.25 to 2 is reckoned with; 1.96 standard errors are 95 %. */
  @Test
  void gainIsBoundedInUseButNotInWhatIsTold() {
    assertThat(new LearnedGain(-1, 0.1, 3).used()).isEqualTo(0.25);
    assertThat(new LearnedGain(1.3, 0.1, 3).used()).isEqualTo(1.3);
    assertThat(new LearnedGain(7, 0.1, 3).used()).isEqualTo(2);
    LearnedGain gain = new LearnedGain(1.1, 0.1, 3);
    assertThat(gain.lower95()).isCloseTo(0.904, within(1e-12));
    assertThat(gain.upper95()).isCloseTo(1.296, within(1e-12));
  }
}

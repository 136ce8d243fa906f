package nullplane.sample;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/**
 * Costs worked out by hand: 10 per half width beyond the aim, and 1000 more per half width beyond
 * the window.
 */
class WindowAimTest {
  private static WindowAim fs(BriefWindow window, double uncertaintyHz) {
    List<WindowAim> aims =
        WindowAim.of(
            MakerBriefs.only(Map.of("fs", window, "kms", BriefWindow.NONE, "gap-height", window)),
            Map.of(BenchFigure.FS, uncertaintyHz));
    assertThat(aims).extracting(WindowAim::figure).containsExactly(BenchFigure.FS);
    return aims.get(0);
  }

  private static void costs(WindowAim aim, double value, double expected) {
    assertThat(aim.cost(value)).as("cost of %s", value).isCloseTo(expected, within(1e-9));
  }

  /** 28 to 36 Hz: middle 32, half width 4, so 30 to 34 Hz is aimed at. */
  @Test
  void innerHalfOfAWindowIsAimedAt() {
    WindowAim aim = fs(BriefWindow.between(28, 36, "x"), 0);
    costs(aim, 30, 0);
    costs(aim, 32, 0);
    costs(aim, 34, 0);
    costs(aim, 35, 10 * 1 / 4.0);
    costs(aim, 29, 10 * 1 / 4.0);
    costs(aim, 37, 10 * 3 / 4.0 + 1000 * 1 / 4.0);
    costs(aim, 26, 10 * 4 / 4.0 + 1000 * 2 / 4.0);
  }

  /** Of the half width of 4 Hz 3 are not certain: 1 is left. Of 9 none is, but the middle stays. */
  @Test
  void uncertaintyNarrowsTheAim() {
    WindowAim narrow = fs(BriefWindow.between(28, 36, "x"), 3);
    costs(narrow, 33, 0);
    costs(narrow, 31, 0);
    costs(narrow, 34, 10 * 1 / 4.0);
    WindowAim none = fs(BriefWindow.between(28, 36, "x"), 9);
    costs(none, 32, 0);
    costs(none, 33, 10 * 1 / 4.0);
    costs(none, 31, 10 * 1 / 4.0);
    // 1 Hz is less than the outer half: nothing changes
    costs(fs(BriefWindow.between(28, 36, "x"), 1), 34.4, 10 * 0.4 / 4);
  }

  /** A limit of 50 counts in fives, with 2 to be kept clear of. */
  @Test
  void openWindowIsMeasuredInTenthsOfItsLimit() {
    WindowAim least = fs(BriefWindow.atLeast(50, "x"), 2);
    costs(least, 1e6, 0);
    costs(least, 52, 0);
    costs(least, 51, 10 * 1 / 5.0);
    costs(least, 45, 10 * 7 / 5.0 + 1000 * 5 / 5.0);
    WindowAim most = fs(BriefWindow.atMost(50, "x"), 2);
    costs(most, 0, 0);
    costs(most, 48, 0);
    costs(most, 49, 10 * 1 / 5.0);
    costs(most, 55, 10 * 7 / 5.0 + 1000 * 5 / 5.0);
    // a limit below 0 counts by its size
    costs(fs(BriefWindow.atMost(-20, "x"), 0), -18, 10 * 2 / 2.0 + 1000 * 2 / 2.0);
  }

  /** From 6 to 6 there is no half width: a tenth of the value stands for it. */
  @Test
  void windowOfNoWidthIsMeasuredInTenthsOfItsValue() {
    WindowAim aim = fs(BriefWindow.between(6, 6, "x"), 0);
    costs(aim, 6, 0);
    costs(aim, 6.3, (10 + 1000) * 0.3 / 0.6);
    costs(fs(BriefWindow.between(0, 0, "x"), 0), 0, 0);
  }

  @Test
  void endsAreAccepted() {
    WindowAim aim = fs(BriefWindow.between(28, 36, "x"), 3);
    assertThat(aim.accepts(28)).isTrue();
    assertThat(aim.accepts(36)).isTrue();
    assertThat(aim.accepts(Math.nextDown(28.0))).isFalse();
    assertThat(aim.accepts(Math.nextUp(36.0))).isFalse();
  }
}

package nullplane.io;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import nullplane.acoustics.Accuracy;
import nullplane.acoustics.Corner;
import nullplane.acoustics.Direction;
import nullplane.acoustics.FieldPoint;
import nullplane.acoustics.Outline;
import nullplane.acoustics.Panel;
import nullplane.acoustics.PanelSolver;
import nullplane.acoustics.Piston;
import nullplane.acoustics.PolygonOutline;
import nullplane.acoustics.RectangularOutline;
import nullplane.acoustics.RoundOutline;
import nullplane.units.Air;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PanelCacheKeyTest {
  private static final Piston LOW = new Piston(0, -0.3, 0.13);
  private static final Piston HIGH = new Piston(0, 0.3, 0.13);
  private static final FieldPoint EAR = new FieldPoint(0, 0.2, 3);
  private static final Direction AXIS = new Direction(0, 0);

  /** What a key is made of, each replaceable. */
  private record Ingredients(
      Outline outline,
      OptionalDouble clearanceM,
      List<Piston> pistons,
      Air air,
      Accuracy accuracy,
      List<FieldPoint> points,
      List<Direction> directions,
      double lowestHz,
      double highestHz,
      String purpose) {
    PanelCacheKey key() {
      return PanelCacheKey.of(
          new Panel(outline, clearanceM),
          pistons,
          air,
          accuracy,
          points,
          directions,
          lowestHz,
          highestHz,
          purpose);
    }

    Ingredients with(Outline other) {
      return new Ingredients(
          other,
          clearanceM,
          pistons,
          air,
          accuracy,
          points,
          directions,
          lowestHz,
          highestHz,
          purpose);
    }

    Ingredients withClearance(OptionalDouble other) {
      return new Ingredients(
          outline, other, pistons, air, accuracy, points, directions, lowestHz, highestHz, purpose);
    }

    Ingredients with(Piston... others) {
      return new Ingredients(
          outline,
          clearanceM,
          List.of(others),
          air,
          accuracy,
          points,
          directions,
          lowestHz,
          highestHz,
          purpose);
    }

    Ingredients with(Air other) {
      return new Ingredients(
          outline,
          clearanceM,
          pistons,
          other,
          accuracy,
          points,
          directions,
          lowestHz,
          highestHz,
          purpose);
    }

    Ingredients with(Accuracy other) {
      return new Ingredients(
          outline,
          clearanceM,
          pistons,
          air,
          other,
          points,
          directions,
          lowestHz,
          highestHz,
          purpose);
    }

    Ingredients with(FieldPoint... others) {
      return new Ingredients(
          outline,
          clearanceM,
          pistons,
          air,
          accuracy,
          List.of(others),
          directions,
          lowestHz,
          highestHz,
          purpose);
    }

    Ingredients with(Direction... others) {
      return new Ingredients(
          outline,
          clearanceM,
          pistons,
          air,
          accuracy,
          points,
          List.of(others),
          lowestHz,
          highestHz,
          purpose);
    }

    Ingredients with(double lowest, double highest) {
      return new Ingredients(
          outline,
          clearanceM,
          pistons,
          air,
          accuracy,
          points,
          directions,
          lowest,
          highest,
          purpose);
    }

    Ingredients with(String other) {
      return new Ingredients(
          outline,
          clearanceM,
          pistons,
          air,
          accuracy,
          points,
          directions,
          lowestHz,
          highestHz,
          other);
    }
  }

  private static final Ingredients USUAL =
      new Ingredients(
          new RectangularOutline(0.44, 1.5),
          OptionalDouble.of(0.04),
          List.of(LOW, HIGH),
          Air.standard(),
          Accuracy.USUAL,
          List.of(EAR),
          List.of(AXIS),
          20,
          400,
          "scoring");

  private static List<Corner> corners(double... xy) {
    List<Corner> corners = new ArrayList<>();
    for (int i = 0; i < xy.length; i += 2) {
      corners.add(new Corner(xy[i], xy[i + 1]));
    }
    return corners;
  }

  /** One step of the last place is enough to be another panel. */
  private static double next(double value) {
    return Math.nextUp(value);
  }

  @Test
  void everyIngredientChangesTheKey() {
    List<Ingredients> all =
        List.of(
            USUAL,
            USUAL.with(new RectangularOutline(next(0.44), 1.5)),
            USUAL.with(new RectangularOutline(0.44, next(1.5))),
            USUAL.with(new RectangularOutline(1.5, 0.44)),
            USUAL.with(new RoundOutline(1.5)),
            USUAL.with(new RoundOutline(next(1.5))),
            USUAL.with(new PolygonOutline(corners(0, 0, 1, 0, 0, 1))),
            USUAL.with(new PolygonOutline(corners(0, 0, next(1), 0, 0, 1))),
            USUAL.with(new PolygonOutline(corners(0, 0, 1, 0, 0, next(1)))),
            USUAL.with(new PolygonOutline(corners(1, 0, 0, 1, 0, 0))),
            USUAL.with(new PolygonOutline(corners(0, 0, 1, 0, 1, 1, 0, 1))),
            USUAL.withClearance(OptionalDouble.empty()),
            USUAL.withClearance(OptionalDouble.of(0)),
            USUAL.withClearance(OptionalDouble.of(next(0.04))),
            USUAL.with(LOW),
            USUAL.with(HIGH),
            USUAL.with(HIGH, LOW),
            USUAL.with(LOW, HIGH, HIGH),
            USUAL.with(new Piston(next(0), -0.3, 0.13), HIGH),
            USUAL.with(new Piston(0, next(-0.3), 0.13), HIGH),
            USUAL.with(new Piston(0, -0.3, next(0.13)), HIGH),
            USUAL.with(new Piston(-0.3, 0, 0.13), HIGH),
            USUAL.with(new Air(next(1.2041), 343.2)),
            USUAL.with(new Air(1.2041, next(343.2))),
            USUAL.with(new Accuracy(next(0.003), 0.03)),
            USUAL.with(new Accuracy(0.003, next(0.03))),
            USUAL.with(new FieldPoint[0]),
            USUAL.with(EAR, EAR),
            USUAL.with(new FieldPoint(next(0), 0.2, 3)),
            USUAL.with(new FieldPoint(0, next(0.2), 3)),
            USUAL.with(new FieldPoint(0, 0.2, next(3))),
            USUAL.with(new Direction[0]),
            USUAL.with(AXIS, AXIS),
            USUAL.with(new Direction(next(0), 0)),
            USUAL.with(new Direction(0, next(0))),
            USUAL.with(next(20), 400),
            USUAL.with(20, next(400)),
            USUAL.with(400, 20),
            USUAL.with("scoring "),
            USUAL.with(""),
            USUAL.with("scor\u00efng"),
            USUAL.with("scor\ud800ng"),
            USUAL.with("scor\udfffng"));
    assertThat(all.stream().map(i -> i.key().hex())).doesNotHaveDuplicates();
  }

  @Test
  void theSameIngredientsMadeAnewGiveTheSameKey() {
    Ingredients anew =
        USUAL
            .with(new RectangularOutline(0.44, 1.5))
            .withClearance(OptionalDouble.of(0.04))
            .with(new Piston(0, -0.3, 0.13), new Piston(0, 0.3, 0.13))
            .with(new Air(1.2041, 343.2))
            .with(new Accuracy(0.003, 0.03))
            .with(new FieldPoint(0, 0.2, 3))
            .with(new Direction(0, 0))
            .with(new String(new char[] {'s', 'c', 'o', 'r', 'i', 'n', 'g'}));
    assertThat(anew.key()).isEqualTo(USUAL.key());
  }

  @Test
  void everyKindOfOutlineHasAKey() {
    List<Outline> kinds =
        List.of(
            new RectangularOutline(1, 1),
            new RoundOutline(1),
            new PolygonOutline(corners(0, 0, 1, 0, 0, 1)));
    Set<Class<?>> seen = new HashSet<>();
    Set<String> keys = new HashSet<>();
    for (Outline kind : kinds) {
      seen.add(kind.getClass());
      keys.add(USUAL.with(kind).key().hex());
    }
    assertThat(keys).hasSameSizeAs(kinds);
    assertThat(seen).containsExactlyInAnyOrder(Outline.class.getPermittedSubclasses());
  }

  @Test
  void theSolversVersionChangesTheKey() {
    List<Object> ingredients = List.of("any");
    assertThat(PanelCacheKey.of(PanelSolver.VERSION + "1", ingredients))
        .isNotEqualTo(PanelCacheKey.of(PanelSolver.VERSION, ingredients));
  }

  @Test
  void neighboursDoNotRunIntoEachOther() {
    List<Object> all =
        List.of(
            List.of("ab", "c"),
            List.of("a", "bc"),
            List.of("abc"),
            List.of(List.of("ab"), "c"),
            List.of(List.of("ab", "c")),
            List.of(List.of(), "ab", "c"),
            List.of("ab", "c", List.of()),
            List.of(1.0, 2.0),
            List.of(OptionalDouble.of(1.0), 2.0),
            List.of(OptionalDouble.of(1.0), OptionalDouble.of(2.0)),
            List.of(OptionalDouble.empty(), 1.0, 2.0),
            List.of(Double.doubleToLongBits(1.0), 2.0),
            List.of(0.0),
            List.of(-0.0),
            List.of(true),
            List.of(false),
            // The same two numbers under other names.
            List.of(new Corner(1, 2)),
            List.of(new Direction(1, 2)),
            List.of(new RectangularOutline(1, 2)));
    assertThat(all.stream().map(value -> Sha256.hex(new CanonicalBytes().add(value).toArray())))
        .doesNotHaveDuplicates();
  }

  @Test
  void valuesWithoutAKnownFormAreRefused() {
    assertThatThrownBy(() -> new CanonicalBytes().add(new double[] {1}))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"", "5e", "../../0000000000000000000000000000000000000000000000000000000000"})
  void aKeyIsADigest(String text) {
    assertThatThrownBy(() -> new PanelCacheKey(text))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("64 small hexadecimal digits");
  }
}

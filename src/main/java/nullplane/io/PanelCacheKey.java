package nullplane.io;

import java.util.List;
import java.util.regex.Pattern;
import nullplane.acoustics.Accuracy;
import nullplane.acoustics.Direction;
import nullplane.acoustics.FieldPoint;
import nullplane.acoustics.Panel;
import nullplane.acoustics.PanelSolver;
import nullplane.acoustics.Piston;
import nullplane.units.Air;

/**
 * What a kept result is found by: the SHA-256 of everything it depends on.
 *
 * @param hex 64 small hexadecimal digits
 */
public record PanelCacheKey(String hex) {
  private static final Pattern DIGEST = Pattern.compile("[0-9a-f]{64}");

  /** Checks that the text is a digest, so that it is safe in a file name. */
  public PanelCacheKey {
    if (!DIGEST.matcher(hex).matches()) {
      throw new IllegalArgumentException(
          "a cache key is 64 small hexadecimal digits, not " + Excerpt.of(hex));
    }
  }

  /**
   * Returns the key of a result. Numbers count by their bits, lists in their order; the version of
   * the solver ({@link PanelSolver#VERSION}) and of the file format enter too.
   *
   * @param panel the panel
   * @param pistons the pistons
   * @param air the air
   * @param accuracy the accuracy asked for
   * @param points where the pressure is wanted
   * @param directions in which the far field is wanted
   * @param lowestHz lowest frequency (Hz)
   * @param highestHz highest frequency (Hz)
   * @param purpose whatever else the result depends on, such as how frequencies are chosen
   */
  public static PanelCacheKey of(
      Panel panel,
      List<Piston> pistons,
      Air air,
      Accuracy accuracy,
      List<FieldPoint> points,
      List<Direction> directions,
      double lowestHz,
      double highestHz,
      String purpose) {
    return of(
        PanelSolver.VERSION,
        List.of(panel, pistons, air, accuracy, points, directions, lowestHz, highestHz, purpose));
  }

  /** Returns the key of a result of a given version of the solver. */
  static PanelCacheKey of(String solverVersion, List<Object> ingredients) {
    byte[] bytes =
        new CanonicalBytes()
            .add("nullplane panel acoustics")
            .add(CacheEntry.FORMAT)
            .add(solverVersion)
            .add(ingredients)
            .toArray();
    return new PanelCacheKey(Sha256.hex(bytes));
  }
}

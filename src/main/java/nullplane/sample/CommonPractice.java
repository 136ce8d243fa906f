package nullplane.sample;

import java.util.Map;
import java.util.Optional;

/**
 * Windows that makers of woofers usually accept. Common practice of the trade, without a source:
 * where practice is a span, the narrow end is asked for. They stand in for windows that follow from
 * what a panel system tolerates, and are what such windows are compared with.
 */
public final class CommonPractice {
  /** Coil rest position either way (m). */
  public static final double REST_POSITION_M = 0.5e-3;

  /** Level either way (dB). */
  public static final double LEVEL_DB = 1;

  private static final String SAID = "common practice, ";
  private static final String PROPOSED = "proposed here, no usual tolerance";

  private static final Map<String, Usual> SHARES =
      Map.ofEntries(
          Map.entry("re", new Usual(0.05, SAID + "\u00b15\u00a0%")),
          Map.entry("fs", new Usual(0.10, SAID + "\u00b110 to 15\u00a0%")),
          Map.entry("qts", new Usual(0.15, SAID + "\u00b115\u00a0%")),
          Map.entry("qes", new Usual(0.15, SAID + "\u00b115\u00a0%")),
          Map.entry("moving-mass", new Usual(0.05, SAID + "\u00b15 to 8\u00a0%")),
          Map.entry("mms", new Usual(0.05, SAID + "\u00b15 to 8\u00a0%")),
          Map.entry("bl", new Usual(0.05, SAID + "\u00b15 to 7.5\u00a0%")),
          Map.entry("vas", new Usual(0.20, SAID + "\u00b120 to 25\u00a0%")),
          Map.entry("qms", new Usual(0.20, PROPOSED)),
          Map.entry("le", new Usual(0.15, PROPOSED)));

  private CommonPractice() {}

  private record Usual(double share, String basis) {}

  /**
   * Returns the usual window of a value, if practice knows one.
   *
   * @param key the value's key, as in a woofer file
   * @param target the target (SI)
   */
  public static Optional<BriefWindow> window(String key, double target) {
    return switch (key) {
      case "level" ->
          Optional.of(
              BriefWindow.between(target - LEVEL_DB, target + LEVEL_DB, SAID + "\u00b11\u00a0dB"));
      case "rest-position" ->
          Optional.of(
              BriefWindow.between(
                  target - REST_POSITION_M, target + REST_POSITION_M, SAID + "\u00b10.5\u00a0mm"));
      default ->
          Optional.ofNullable(SHARES.get(key))
              .map(usual -> BriefWindow.around(target, usual.share(), usual.basis()));
    };
  }
}

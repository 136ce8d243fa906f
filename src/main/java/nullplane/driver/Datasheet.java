package nullplane.driver;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import nullplane.units.Air;

/**
 * One woofer's data, completed and checked.
 *
 * @param name what people call the woofer
 * @param nominalM frame size class (m), if stated
 * @param completed what follows from the stated figures
 * @param inductance what the coil's inductance is, if stated
 * @param powerW rated power (W), if stated
 * @param mountings resonance and quality factors in several mountings; none while the set does not
 *     settle a woofer
 */
public record Datasheet(
    String name,
    OptionalDouble nominalM,
    CompletedSet completed,
    Optional<CoilInductance> inductance,
    OptionalDouble powerW,
    List<InMounting> mountings) {

  /**
   * The woofer in a mounting.
   *
   * @param mounting the mounting in words
   * @param figures its figures there
   */
  public record InMounting(String mounting, LoadedResonance figures) {}

  /** Copies the list. */
  public Datasheet {
    mountings = List.copyOf(mountings);
  }

  /**
   * Returns the data with its figures in free air and in an infinite baffle.
   *
   * @param name what people call the woofer
   * @param nominalM frame size class (m), if stated
   * @param completed what follows from the stated figures
   * @param inductance what the coil's inductance is, if stated
   * @param powerW rated power (W), if stated
   * @param air the air
   */
  public static Datasheet of(
      String name,
      OptionalDouble nominalM,
      CompletedSet completed,
      Optional<CoilInductance> inductance,
      OptionalDouble powerW,
      Air air) {
    Datasheet sheet = new Datasheet(name, nominalM, completed, inductance, powerW, List.of());
    return sheet
        .small()
        .map(
            woofer ->
                sheet
                    .with("free air", LoadedResonance.of(woofer, Mounting.FREE_AIR, air))
                    .with(
                        "infinite baffle",
                        LoadedResonance.of(woofer, Mounting.INFINITE_BAFFLE, air)))
        .orElse(sheet);
  }

  /**
   * Returns the data with one more mounting.
   *
   * @param mounting the mounting in words
   * @param figures its figures there
   */
  public Datasheet with(String mounting, LoadedResonance figures) {
    List<InMounting> more = new ArrayList<>(mountings);
    more.add(new InMounting(mounting, figures));
    return new Datasheet(name, nominalM, completed, inductance, powerW, more);
  }

  /**
   * Returns the woofer as far as its small signals go, if the set settles one: frame size, travel
   * and power are stand-ins where nothing is stated.
   */
  public Optional<Woofer> small() {
    if (!completed.settled()) {
      return Optional.empty();
    }
    double diameter = completed.value(Parameter.DIAMETER).orElseThrow();
    return Optional.of(
        completed.woofer(
            name,
            nominalM.orElse(diameter),
            inductance.map(coil -> coil.inductanceAt(1000)).orElse(0.0),
            completed.value(Parameter.TRAVEL).orElse(1e-3),
            powerW.orElse(1)));
  }
}

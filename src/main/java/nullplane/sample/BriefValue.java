package nullplane.sample;

import java.util.OptionalDouble;
import nullplane.units.Checks;

/**
 * One value that a maker is asked for.
 *
 * @param section the part of the sheet it stands in
 * @param key its name for machines, as in a woofer file where there is one
 * @param symbol its symbol, for example "fs"; may be empty
 * @param name what it is, in the terms of IEC 60268-5 where that has one
 * @param unit its unit
 * @param target the value asked for (SI), if it is a number and known
 * @param words the value in words where it is no number; empty otherwise
 * @param window what is accepted
 * @param condition mounting, drive, temperature, state and method that the value holds for
 * @param reason why it is asked for
 */
public record BriefValue(
    Section section,
    String key,
    String symbol,
    String name,
    BriefUnit unit,
    OptionalDouble target,
    String words,
    BriefWindow window,
    String condition,
    String reason) {

  /** Parts of a sheet. */
  public enum Section {
    /** Small-signal values. */
    TARGET("target values"),
    /** Coil and motor. */
    COIL("coil and motor"),
    /** What holds at large travel and power. */
    LARGE_SIGNAL("large signal");

    private final String words;

    Section(String words) {
      this.words = words;
    }

    /** Returns the section in words. */
    public String words() {
      return words;
    }
  }

  /** Checks that there is a key and a name, and that a number is finite. */
  public BriefValue {
    if (key.isBlank() || name.isBlank()) {
      throw new IllegalArgumentException("a brief's value needs a key and a name");
    }
    target.ifPresent(value -> Checks.finite(value, name, unit.si()));
    if (target.isPresent() && !words.isEmpty()) {
      throw new IllegalArgumentException(name + " has both a number and words");
    }
  }

  /** Returns the same value with another window. */
  public BriefValue withWindow(BriefWindow other) {
    return new BriefValue(
        section, key, symbol, name, unit, target, words, other, condition, reason);
  }
}

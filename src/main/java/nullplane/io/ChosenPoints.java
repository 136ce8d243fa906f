package nullplane.io;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import nullplane.acoustics.Accuracy;
import nullplane.faults.InputFault;
import nullplane.faults.InvalidInputException;

/**
 * Frequencies, directions and accuracy as a command line lists them. All faults of a list come at
 * once.
 */
public final class ChosenPoints {
  private static final String FREQUENCIES_ALLOWED = "1 Hz .. 20 kHz";
  private static final double LOWEST_HZ = 1;
  private static final double HIGHEST_HZ = 20_000;
  private static final int MOST = 200;
  private static final String ANGLES_ALLOWED = "horizontal -180 .. 180, vertical -90 .. 90 degrees";
  private static final String NUMBER = "([+-]?[0-9]{1,9}(?:\\.[0-9]{0,12})?)";
  private static final String DEGREES = "\\s*(?:deg|degrees|\u00b0)?";
  private static final Pattern PAIR =
      Pattern.compile(NUMBER + DEGREES + "\\s*/\\s*" + NUMBER + DEGREES);

  private static final int LONGEST_PAIR = 80;
  private static final Pattern SHARE = Pattern.compile("([0-9]{1,9}(?:\\.[0-9]{0,12})?)\\s*(%)?");
  private static final double FINEST = 0.0003;
  private static final double COARSEST = 0.03;

  private ChosenPoints() {}

  /**
   * Returns frequencies in the order written (Hz).
   *
   * @param text for example "31.5 Hz, 63 Hz"
   * @param option the option the text stood behind, for messages
   * @throws InvalidInputException with every fault of the list
   */
  public static List<Double> frequencies(String text, String option) {
    List<InputFault> faults = new ArrayList<>();
    List<Double> values = new ArrayList<>();
    for (String part : parts(text, option, "31.5 Hz, 63 Hz")) {
      try {
        double hertz = Quantity.parse(part, Dimension.FREQUENCY);
        if (hertz >= LOWEST_HZ && hertz <= HIGHEST_HZ) {
          values.add(hertz);
        } else {
          faults.add(
              fault(
                  option,
                  part,
                  "the frequency is out of range",
                  FREQUENCIES_ALLOWED,
                  "write frequencies such as \"31.5 Hz, 63 Hz\""));
        }
      } catch (UnreadableQuantityException e) {
        faults.add(fault(option, part, e.problem(), FREQUENCIES_ALLOWED, e.hint()));
      }
    }
    return unlessFaulty(values, faults);
  }

  /**
   * Returns directions in the order written.
   *
   * @param text for example "0/0, 30/0, 0/30": horizontal and vertical angle in degrees
   * @param option the option the text stood behind, for messages
   * @throws InvalidInputException with every fault of the list
   */
  public static List<AnglePair> angles(String text, String option) {
    List<InputFault> faults = new ArrayList<>();
    List<AnglePair> values = new ArrayList<>();
    for (String part : parts(text, option, "0/0, 30/0")) {
      String plain = part.replace('\u2212', '-');
      Matcher pair = PAIR.matcher(plain);
      if (plain.length() > LONGEST_PAIR || !pair.matches()) {
        faults.add(
            fault(
                option,
                part,
                part.isEmpty() ? "a direction is missing" : "this is not a direction",
                ANGLES_ALLOWED,
                "write the horizontal and the vertical angle in degrees, such as 30/0"));
        continue;
      }
      double horizontal = Double.parseDouble(pair.group(1)) + 0.0;
      double vertical = Double.parseDouble(pair.group(2)) + 0.0;
      if (Math.abs(horizontal) > 180 || Math.abs(vertical) > 90) {
        faults.add(
            fault(
                option,
                part,
                "the direction is out of range",
                ANGLES_ALLOWED,
                "write the horizontal angle first, such as 30/0"));
      } else {
        values.add(new AnglePair(horizontal, vertical));
      }
    }
    return unlessFaulty(values, faults);
  }

  /**
   * Returns an accuracy.
   *
   * @param text for example "0.3 %" or "0.003", a share of the impedance
   * @param option the option the text stood behind, for messages
   * @throws InvalidInputException if it is no number or out of range
   */
  public static Accuracy accuracy(String text, String option) {
    Matcher share = SHARE.matcher(text.strip());
    if (share.matches()) {
      double value = Double.parseDouble(share.group(1)) / (share.group(2) == null ? 1 : 100);
      if (value >= FINEST && value <= COARSEST) {
        return Accuracy.ofImpedance(value);
      }
    }
    throw new InvalidInputException(
        List.of(
            fault(
                option,
                text,
                share.matches() ? "the accuracy is out of range" : "this is not an accuracy",
                "0.03 % .. 3 %",
                "write an accuracy such as \"0.3 %\"")));
  }

  private static List<String> parts(String text, String option, String example) {
    List<String> parts = new ArrayList<>();
    for (String part : text.split(",", -1)) {
      parts.add(part.strip());
    }
    if (parts.size() > MOST) {
      throw new InvalidInputException(
          List.of(
              fault(
                  option,
                  parts.size() + " values",
                  "the list is too long",
                  MOST + " values at most",
                  "write fewer, such as \"" + example + "\"")));
    }
    return parts;
  }

  private static InputFault fault(
      String option, String value, String problem, String allowed, String hint) {
    return new InputFault(option, 0, "", Excerpt.of(value), problem, allowed, hint);
  }

  private static <T> List<T> unlessFaulty(List<T> values, List<InputFault> faults) {
    if (!faults.isEmpty()) {
      throw new InvalidInputException(faults);
    }
    return List.copyOf(values);
  }
}

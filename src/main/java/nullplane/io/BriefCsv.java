package nullplane.io;

import java.util.List;
import java.util.OptionalDouble;
import nullplane.sample.BriefUnit;
import nullplane.sample.BriefValue;
import nullplane.sample.MakerBrief;

/**
 * A brief as a table, one row per value, in the units that people read, digit for digit. Source:
 * RFC 4180.
 */
public final class BriefCsv {
  /** What stands where there is no number. */
  static final String NOT_DETERMINED = "not determined";

  /** What stands where a window is open, or where only the window counts. */
  static final String NO_LIMIT = "no limit";

  static final String NO_TARGET = "no target";

  private BriefCsv() {}

  /**
   * Returns the bytes of the table.
   *
   * @param brief the brief
   */
  public static byte[] of(MakerBrief brief) {
    CsvText text = new CsvText();
    text.row(
        List.of(
            "key",
            "name",
            "symbol",
            "unit",
            "target",
            "lower",
            "upper",
            "basis",
            "condition",
            "reason"));
    for (BriefValue value : brief.values()) {
      text.row(
          List.of(
              CsvText.name(value.key()),
              CsvText.name(value.name()),
              value.symbol().isEmpty() ? "none" : CsvText.name(value.symbol()),
              CsvText.name(value.unit().shown()),
              value.words().isEmpty()
                  ? number(
                      value.target(),
                      value.unit(),
                      value.window().limits() ? NO_TARGET : NOT_DETERMINED)
                  : CsvText.name(value.words()),
              number(value.window().lower(), value.unit(), NO_LIMIT),
              number(value.window().upper(), value.unit(), NO_LIMIT),
              CsvText.name(value.window().basis()),
              CsvText.name(value.condition()),
              CsvText.name(value.reason())));
    }
    return text.bytes();
  }

  private static String number(OptionalDouble value, BriefUnit unit, String otherwise) {
    return value.isPresent()
        ? DecimalText.shifted(value.getAsDouble(), unit.decimals())
        : otherwise;
  }
}

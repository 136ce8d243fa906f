package nullplane.io;

import java.util.List;
import java.util.OptionalDouble;
import nullplane.fit.Finding;
import nullplane.sample.BriefUnit;
import nullplane.sample.SampleOutcome;
import nullplane.sample.SampleResult;
import nullplane.sample.ValueCheck;

/**
 * Samples as a table: one row for each value of each sample, in the units people read. Source: RFC
 * 4180.
 */
public final class SampleCsv {
  private SampleCsv() {}

  /**
   * Returns the bytes of the table.
   *
   * @param outcome the samples
   * @throws IllegalStateException if a number to be written is not finite
   */
  public static byte[] of(SampleOutcome outcome) {
    CsvText csv = new CsvText();
    csv.row(
        List.of(
            "sample",
            "key",
            "name",
            "unit",
            "value",
            "lower 95 %",
            "upper 95 %",
            "window lower",
            "window upper",
            "decision",
            "remark"));
    for (SampleResult sample : outcome.samples()) {
      for (ValueCheck check : sample.checks()) {
        csv.row(row(sample, check));
      }
    }
    return csv.bytes();
  }

  private static List<String> row(SampleResult sample, ValueCheck check) {
    BriefUnit unit = check.value().unit();
    boolean known = check.finding() instanceof Finding.Estimate;
    String value = "";
    String lower = "";
    String upper = "";
    if (check.finding() instanceof Finding.Estimate estimate) {
      value = DecimalText.rounded(estimate.value(), unit.decimals());
      lower = DecimalText.rounded(estimate.lower95(), unit.decimals());
      upper = DecimalText.rounded(estimate.upper95(), unit.decimals());
    }
    return List.of(
        CsvText.name(sample.name()),
        CsvText.name(check.value().key()),
        CsvText.name(check.value().name()),
        CsvText.name(unit.shown()),
        value,
        lower,
        upper,
        limit(check.value().window().lower(), unit),
        limit(check.value().window().upper(), unit),
        !check.value().window().limits() ? "for information" : check.decision().words(),
        known ? "" : CsvText.name(((Finding.NotDetermined) check.finding()).reason()));
  }

  private static String limit(OptionalDouble limit, BriefUnit unit) {
    return limit.isPresent() ? DecimalText.rounded(limit.getAsDouble(), unit.decimals()) : "";
  }
}

package nullplane.io;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import nullplane.judging.Finding;
import nullplane.judging.Judgement;
import nullplane.judging.JudgingOutcome;

/**
 * Judged woofers as a table: the columns of {@link RankingCsv}, then the distance to the best
 * buildable woofer and the findings. Source: RFC 4180.
 */
public final class JudgingCsv {
  private JudgingCsv() {}

  /**
   * Returns the bytes of the table.
   *
   * @param outcome the ranking
   * @throws IllegalStateException if a number to be written is not finite
   */
  public static byte[] of(JudgingOutcome outcome) {
    return RankingCsv.of(
        outcome.ranked().stream().map(Judgement::assessment).toList(),
        List.of("behind best [dB]", "findings", "remedies"),
        outcome.ranked().stream().map(JudgingCsv::cells).toList());
  }

  private static List<String> cells(Judgement judgement) {
    List<String> cells = new ArrayList<>();
    cells.add(
        judgement.behindBestDb().isPresent()
            ? DecimalText.rounded(judgement.behindBestDb().getAsDouble(), 0)
            : "");
    cells.add(
        CsvText.name(
            judgement.findings().stream().map(Finding::sentence).collect(Collectors.joining(" "))));
    cells.add(
        CsvText.name(
            judgement.findings().stream().map(Finding::remedy).collect(Collectors.joining(" "))));
    return cells;
  }
}

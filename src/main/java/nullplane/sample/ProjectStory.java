package nullplane.sample;

import java.util.List;

/**
 * The rounds of a project and what they teach.
 *
 * @param history the rounds, the present one last
 * @param moves what came of each request
 * @param response how far the maker goes when a lever is to be moved
 * @param drifts how far the golden samples of the last round are from what they were
 */
public record ProjectStory(
    RoundHistory history, List<MakerMove> moves, MakerResponse response, List<GoldenDrift> drifts) {
  /** Copies the lists. */
  public ProjectStory {
    moves = List.copyOf(moves);
    drifts = List.copyOf(drifts);
  }

  /**
   * Returns what rounds teach.
   *
   * @param history the rounds, one or more
   */
  public static ProjectStory of(RoundHistory history) {
    List<MakerMove> moves = history.moves();
    List<GoldenDrift> drifts =
        history
            .last()
            .map(last -> GoldenDrift.all(history.before(last.number()), last.samples()))
            .orElse(List.of());
    return new ProjectStory(history, moves, MakerResponse.learned(moves), drifts);
  }

  /** Returns the drifts that are significant at 95 %. */
  public List<GoldenDrift> significantDrifts() {
    return drifts.stream().filter(GoldenDrift::significant).toList();
  }
}

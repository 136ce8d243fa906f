package nullplane.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Future;
import nullplane.scoring.FamilyScore;
import nullplane.scoring.SystemScorer;

/**
 * Scores batches of candidates on several threads. Each score depends on its candidate alone, so
 * the number of threads never shows in a result.
 */
final class CandidateScorer {
  private final SystemScorer scorer;
  private final SearchPlan plan;
  private final ExecutorService executor;
  private final int threads;
  private final List<SystemScorer.Workspace> spaces = new ArrayList<>();

  CandidateScorer(SystemScorer scorer, SearchPlan plan, int threads, ExecutorService executor) {
    this.scorer = scorer;
    this.plan = plan;
    this.threads = threads;
    this.executor = executor;
    for (int t = 0; t < threads; t++) {
      spaces.add(scorer.newWorkspace());
    }
  }

  private interface Scoring {
    FamilyScore of(double[] genes, SystemScorer.Workspace space);
  }

  /**
   * Scores woofers with the networks that their genes name, in the candidates' order.
   *
   * @param candidates genes of woofer and networks
   */
  List<FamilyScore> score(List<double[]> candidates) {
    return spread(
        candidates,
        (genes, space) ->
            scorer.score(plan.woofer(genes), plan.winding(genes), genes, SearchPlan.GENES, space));
  }

  /**
   * Scores woofers with the best networks for each, in the candidates' order.
   *
   * @param candidates genes of the woofers; what follows them does not count
   */
  List<FamilyScore> scoreBest(List<double[]> candidates) {
    return spread(
        candidates, (genes, space) -> scorer.score(plan.woofer(genes), plan.winding(genes), space));
  }

  private List<FamilyScore> spread(List<double[]> candidates, Scoring scoring) {
    FamilyScore[] scores = new FamilyScore[candidates.size()];
    spread(
        scores.length,
        (i, thread) -> scores[i] = scoring.of(candidates.get(i), spaces.get(thread)));
    return List.copyOf(Arrays.asList(scores));
  }

  /** A part of a larger piece of work. */
  interface Part {
    /**
     * Does the part.
     *
     * @param index which part
     * @param thread which of the threads does it
     */
    void run(int index, int thread);
  }

  /** Does independent parts on all threads, and returns when all are done. */
  void spread(int parts, Part part) {
    int tasks = Math.min(threads, parts);
    List<Future<?>> running = new ArrayList<>();
    for (int t = 0; t < tasks; t++) {
      int thread = t;
      running.add(
          executor.submit(
              () -> {
                for (int i = thread; i < parts; i += tasks) {
                  part.run(i, thread);
                }
              }));
    }
    for (Future<?> task : running) {
      waitFor(task);
    }
  }

  private static void waitFor(Future<?> task) {
    boolean interrupted = false;
    while (true) {
      try {
        task.get();
        break;
      } catch (InterruptedException e) {
        interrupted = true;
      } catch (ExecutionException e) {
        if (e.getCause() instanceof RuntimeException cause) {
          throw cause;
        }
        throw new IllegalStateException("scoring failed", e.getCause());
      }
    }
    if (interrupted) {
      Thread.currentThread().interrupt();
    }
  }
}

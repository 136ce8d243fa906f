package nullplane.search;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Future;
import nullplane.scoring.Grade;
import nullplane.scoring.SystemScorer;

/**
 * Scores batches of candidates on several threads. Each grade depends on its candidate alone, so
 * the number of threads never shows in a result.
 */
final class CandidateScorer {
  private final SystemScorer scorer;
  private final SearchPlan plan;
  private final ExecutorService executor;
  private final int threads;
  private final List<SystemScorer.Workspace> spaces = new ArrayList<>();
  private final List<ScoredGenes> archive = new ArrayList<>();

  CandidateScorer(SystemScorer scorer, SearchPlan plan, int threads, ExecutorService executor) {
    this.scorer = scorer;
    this.plan = plan;
    this.threads = threads;
    this.executor = executor;
    for (int t = 0; t < threads; t++) {
      spaces.add(scorer.newWorkspace());
    }
  }

  /** Scores candidates and keeps them; returns the grades in the candidates' order. */
  List<Grade> score(List<double[]> candidates) {
    Grade[] grades = new Grade[candidates.size()];
    List<Future<?>> tasks = new ArrayList<>();
    for (int t = 0; t < threads; t++) {
      int first = t;
      tasks.add(
          executor.submit(
              () -> {
                for (int i = first; i < grades.length; i += threads) {
                  double[] genes = candidates.get(i);
                  grades[i] =
                      scorer.grade(plan.woofer(genes), plan.winding(genes), spaces.get(first));
                }
              }));
    }
    for (Future<?> task : tasks) {
      waitFor(task);
    }
    List<Grade> result = List.of(grades);
    for (int i = 0; i < result.size(); i++) {
      archive.add(new ScoredGenes(candidates.get(i), result.get(i)));
    }
    return result;
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

  /** Returns the number of candidates scored. */
  long evaluations() {
    return archive.size();
  }

  /** Returns every candidate scored, in order of scoring. */
  List<ScoredGenes> archive() {
    return List.copyOf(archive);
  }
}

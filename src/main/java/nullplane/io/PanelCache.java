package nullplane.io;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import nullplane.acoustics.PanelSolution;

/**
 * Keeps solved panel acoustics from one run to the next. Finding and keeping never fail: whatever
 * goes wrong is told as a notice, and the caller computes. May be shared between threads.
 */
public interface PanelCache {
  /**
   * Returns the solutions kept under a key, equal to the last bit; empty if there are none or they
   * are damaged.
   *
   * @param key what the result depends on
   */
  Optional<List<PanelSolution>> find(PanelCacheKey key);

  /**
   * Keeps solutions, in place of any earlier ones under the key.
   *
   * @param key what the result depends on
   * @param solutions with ascending frequencies and finite numbers
   */
  void keep(PanelCacheKey key, List<PanelSolution> solutions);

  /**
   * Returns a cache in a folder of its own, made when first needed. It holds at most 256 MiB; the
   * oldest entries make room.
   *
   * @param folder the folder
   * @param notice takes lines for the user: each damaged entry, and once that nothing can be kept;
   *     called on the thread that finds or keeps
   */
  static PanelCache in(Path folder, Consumer<String> notice) {
    return new FolderPanelCache(folder, notice, FolderPanelCache.MOST_BYTES);
  }

  /** Returns a cache that finds and keeps nothing. */
  static PanelCache none() {
    return NoPanelCache.NONE;
  }
}

package nullplane.io;

import java.util.List;
import java.util.Optional;
import nullplane.acoustics.PanelSolution;

/** A cache that finds and keeps nothing. */
enum NoPanelCache implements PanelCache {
  /** The only one. */
  NONE;

  @Override
  public Optional<List<PanelSolution>> find(PanelCacheKey key) {
    return Optional.empty();
  }

  @Override
  public void keep(PanelCacheKey key, List<PanelSolution> solutions) {}
}

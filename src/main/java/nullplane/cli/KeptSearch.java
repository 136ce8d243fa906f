package nullplane.cli;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;
import java.util.function.Consumer;
import nullplane.acoustics.PanelSolver;
import nullplane.faults.InvalidInputException;
import nullplane.faults.OutputException;
import nullplane.io.Sha256;
import nullplane.io.StateFile;
import nullplane.search.SearchConduct;
import nullplane.search.SearchMemory;
import nullplane.search.StateKeeper;

/**
 * Keeps a search's state in the user's cache folder, under a name that follows from all that the
 * search depends on, so that the same command goes on where an earlier run was cut off. What cannot
 * be kept or read is told once, and the search goes on without.
 */
final class KeptSearch implements SearchMemory {
  private static final Duration INTERVAL = Duration.ofSeconds(2);
  private static final String END = ".search";

  private final StateFile file;
  private final String digest;
  private final Consumer<String> notice;
  private boolean told;

  private KeptSearch(Path folder, String digest, Consumer<String> notice) {
    this.file = new StateFile(folder.resolve(digest + END));
    this.digest = digest;
    this.notice = notice;
  }

  /**
   * Returns the memory of a search, or one that remembers nothing if no folder is known.
   *
   * @param folder the user's cache folder
   * @param specDigest digest of the spec and all files it names
   * @param conduct seed and budget
   * @param notice takes lines for the user
   */
  static SearchMemory in(
      Optional<Path> folder, String specDigest, SearchConduct conduct, Consumer<String> notice) {
    String all =
        String.join(
            "\n",
            specDigest,
            ProgramVersion.text(),
            PanelSolver.VERSION,
            Long.toString(conduct.seed()),
            Long.toString(conduct.evaluations()));
    String digest = Sha256.hex(all.getBytes(StandardCharsets.UTF_8));
    return folder
        .map(place -> (SearchMemory) new KeptSearch(place, digest, notice))
        .orElse(SearchMemory.NONE);
  }

  @Override
  public String digest() {
    return digest;
  }

  @Override
  public Optional<byte[]> earlier() {
    try {
      Optional<byte[]> state = file.read();
      if (state.isPresent()) {
        notice.accept("going on with a search that was cut off; its state was in " + file.file());
      }
      return state;
    } catch (InvalidInputException e) {
      tell("the state of an earlier search cannot be read", e.getMessage());
      return Optional.empty();
    }
  }

  @Override
  public StateKeeper keeper() {
    return new StateKeeper() {
      @Override
      public Duration interval() {
        return INTERVAL;
      }

      @Override
      public void keep(byte[] state) {
        if (!told) {
          try {
            file.write(state);
          } catch (OutputException e) {
            tell("the state of the search cannot be kept", e.getMessage());
          }
        }
      }
    };
  }

  @Override
  public void unusable(String reason) {
    notice.accept(
        "the state in "
            + file.file()
            + " cannot be used ("
            + reason
            + "); searching from the start");
  }

  @Override
  public void done() {
    try {
      file.delete();
    } catch (OutputException e) {
      tell("the state of the finished search cannot be removed", e.getMessage());
    }
  }

  private void tell(String what, String why) {
    if (!told) {
      told = true;
      notice.accept(what + ": " + why + "; going on without");
    }
  }
}

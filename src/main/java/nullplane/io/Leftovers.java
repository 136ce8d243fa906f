package nullplane.io;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * What runs that were killed left beside their folder: files gathered but not published, and an
 * earlier run moved aside. An earlier run whose place is empty is put back; the rest is deleted.
 */
final class Leftovers {
  /** What follows a folder's name where files gather. */
  static final String GATHERING = "part";

  /** What follows a folder's name where an earlier run waits to be deleted. */
  static final String ASIDE = "old";

  /** The earlier run within the folder where it waits. */
  static final String RUN = "run";

  private Leftovers() {}

  /** Returns how the name of a folder's hidden companion begins. */
  static String start(Path name, String kind) {
    return "." + name + "." + kind + "-";
  }

  /**
   * Puts things in order; only the holder of the folder's claim may do so.
   *
   * @param folder the final folder, which may be missing
   * @param name its name
   * @param renaming how to rename
   * @return what was found and done, for people; empty if there was nothing
   * @throws IOException if an earlier run cannot be put back; it then stays where it is
   */
  static List<String> clear(Path folder, Path name, ResultFolder.Renaming renaming)
      throws IOException {
    List<Path> gathered = find(folder, name, GATHERING);
    List<Path> aside = find(folder, name, ASIDE);
    List<String> notes = new ArrayList<>();
    Optional<Path> latest =
        aside.stream()
            .map(holder -> holder.resolve(RUN))
            .filter(run -> Files.isDirectory(run, LinkOption.NOFOLLOW_LINKS))
            .max(Comparator.comparing(Leftovers::modified));
    if (latest.isPresent() && !Files.exists(folder, LinkOption.NOFOLLOW_LINKS)) {
      renaming.rename(latest.get(), folder);
      notes.add(folder + ": a run was stopped while it took its place; the run before is put back");
    }
    aside.forEach(Leftovers::delete);
    gathered.forEach(Leftovers::delete);
    if (!gathered.isEmpty()) {
      notes.add(folder + ": a run was stopped before it was done; what it left is removed");
    }
    return notes;
  }

  /** Deletes a folder as far as it can be deleted. */
  static void delete(Path folder) {
    List<Path> all;
    try (Stream<Path> entries = Files.walk(folder)) {
      all = new ArrayList<>(entries.toList());
    } catch (IOException | UncheckedIOException e) {
      return;
    }
    Collections.reverse(all);
    for (Path path : all) {
      try {
        Files.deleteIfExists(path);
      } catch (IOException e) {
        // Left behind, hidden; the result itself is in place.
      }
    }
  }

  private static List<Path> find(Path folder, Path name, String kind) {
    Pattern pattern = Pattern.compile(Pattern.quote(start(name, kind)) + "[0-9]+-[0-9]+");
    List<Path> found = new ArrayList<>();
    try (DirectoryStream<Path> entries = Files.newDirectoryStream(folder.resolveSibling(""))) {
      for (Path entry : entries) {
        if (pattern.matcher(String.valueOf(entry.getFileName())).matches()
            && Files.isDirectory(entry, LinkOption.NOFOLLOW_LINKS)) {
          found.add(entry);
        }
      }
    } catch (IOException | DirectoryIteratorException e) {
      return List.of(); // a folder that may be written but not listed
    }
    Collections.sort(found);
    return found;
  }

  private static FileTime modified(Path path) {
    try {
      return Files.getLastModifiedTime(path, LinkOption.NOFOLLOW_LINKS);
    } catch (IOException e) {
      return FileTime.fromMillis(0);
    }
  }
}

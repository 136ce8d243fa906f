package nullplane.io;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Files that one that is not there was most likely meant to be, for messages. */
final class NearFiles {
  /** Entries of a folder that are looked at. */
  private static final int MOST_ENTRIES = 5000;

  private static final int LONGEST = 100;
  private static final int MOST_NAMED = 3;

  private NearFiles() {}

  /** Returns what is wrong with the path of a file that is not there. */
  static String problem(Path file) {
    return isThere(folderOf(file)) ? "there is no such file" : "there is no such folder";
  }

  /** Returns what to do: the near names, or the advice to check the name. */
  static String hint(Path file) {
    List<Path> near = near(file);
    return near.isEmpty()
        ? "check the name"
        : "did you mean "
            + near.stream()
                .map(path -> Excerpt.of(path.toString()))
                .collect(Collectors.joining(" or "))
            + "?";
  }

  /** Returns the near files, nearest first; if the folder is not there, those of near folders. */
  private static List<Path> near(Path file) {
    Path folder = folderOf(file);
    if (isThere(folder)) {
      return named(folder, file, Files::isRegularFile, MOST_NAMED);
    }
    return named(folderOf(folder), folder, Files::isDirectory, 1).stream()
        .flatMap(
            other -> {
              Path same = other.resolve(nameOf(file));
              return Files.isRegularFile(same)
                  ? Stream.of(same)
                  : named(other, file, Files::isRegularFile, MOST_NAMED).stream();
            })
        .toList();
  }

  private static List<Path> named(Path folder, Path meant, Predicate<Path> kind, int most) {
    String name = nameOf(meant);
    if (!isThere(folder) || name.length() > LONGEST) {
      return List.of();
    }
    try (Stream<Path> entries = Files.list(folder.toString().isEmpty() ? Path.of(".") : folder)) {
      return entries
          .limit(MOST_ENTRIES)
          .map(entry -> folder.resolve(nameOf(entry)))
          .filter(entry -> nameOf(entry).length() <= LONGEST && isNear(name, nameOf(entry)))
          .filter(kind)
          .sorted(
              Comparator.<Path>comparingInt(
                      entry -> NearestKey.distance(plain(name), plain(nameOf(entry))))
                  .thenComparing(entry -> NearestKey.distance(name, nameOf(entry)))
                  .thenComparing(NearFiles::nameOf))
          .limit(most)
          .toList();
    } catch (IOException | UncheckedIOException e) {
      return List.of(); // not to be read; the message does without
    }
  }

  /** Endings make names look alike, so they do not count: a third of the rest may be wrong. */
  private static boolean isNear(String one, String other) {
    String a = plain(one);
    String b = plain(other);
    return NearestKey.distance(a, b) <= Math.max(1, Math.min(a.length(), b.length()) / 3);
  }

  /** Returns a name without its ending, in small letters. */
  private static String plain(String name) {
    int dot = name.lastIndexOf('.');
    return (dot > 0 ? name.substring(0, dot) : name).toLowerCase(Locale.ROOT);
  }

  private static boolean isThere(Path folder) {
    return folder.toString().isEmpty() || Files.isDirectory(folder);
  }

  private static Path folderOf(Path file) {
    return Optional.ofNullable(file.getParent()).orElse(Path.of(""));
  }

  private static String nameOf(Path file) {
    return String.valueOf(file.getFileName());
  }
}

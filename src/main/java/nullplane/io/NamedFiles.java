package nullplane.io;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import nullplane.faults.InputFault;
import nullplane.faults.InvalidInputException;

/**
 * The files that an input file names. They lie in its folder or below. Their faults are told with
 * those of the file that names them, and its digest covers theirs.
 */
final class NamedFiles {
  private final Optional<Path> folder;
  private final List<InputFault> faults = new ArrayList<>();
  private final List<String> digests = new ArrayList<>();

  private NamedFiles(Optional<Path> folder) {
    this.folder = folder;
  }

  /** Returns the files beside an input file. */
  static NamedFiles beside(Path file) {
    Path parent = file.toAbsolutePath().normalize().getParent();
    return new NamedFiles(Optional.of(parent == null ? Path.of("").toAbsolutePath() : parent));
  }

  /** Returns the files of a text that lies in no folder: there are none. */
  static NamedFiles none() {
    return new NamedFiles(Optional.empty());
  }

  /**
   * Returns the path of a named file; a fault of the key if it leaves the folder, links followed.
   *
   * @param section the section that holds the key
   * @param key the key
   * @param named the name as it stands there
   * @param example what to write
   */
  Optional<Path> path(Section section, String key, String named, String example) {
    Optional<Path> path = folder.flatMap(known -> inside(known, named));
    if (path.isEmpty()) {
      section.fault(
          key,
          folder.isEmpty()
              ? "this text lies in no folder that could hold the file"
              : "the path leaves the folder of this file",
          "a file in this folder or below, without a leading /",
          "put the file beside this one and write " + key + ": " + example);
    }
    return path;
  }

  private static Optional<Path> inside(Path folder, String named) {
    try {
      Path relative = Path.of(named);
      Path path = folder.resolve(relative).normalize();
      if (relative.isAbsolute() || !path.startsWith(folder)) {
        return Optional.empty();
      }
      return !path.toFile().exists() || path.toRealPath().startsWith(folder.toRealPath())
          ? Optional.of(path)
          : Optional.empty();
    } catch (InvalidPathException | IOException e) {
      return Optional.empty();
    }
  }

  /** Adds the digest of a file that was read. */
  void addDigest(String digest) {
    digests.add(digest);
  }

  /** Adds the faults of a file that could not be read. */
  void addFaults(InvalidInputException e) {
    faults.addAll(e.faults());
  }

  /** Returns the faults of the named files, file by file. */
  List<InputFault> faults() {
    return List.copyOf(faults);
  }

  /**
   * Returns the digest of a file and all it names: its own if it names none, else SHA-256 of all
   * digests in the order of reading, its own first.
   *
   * @param own the file's own digest, hexadecimal
   */
  String digestWith(String own) {
    return digests.isEmpty()
        ? own
        : Sha256.hex((own + String.join("", digests)).getBytes(StandardCharsets.UTF_8));
  }
}

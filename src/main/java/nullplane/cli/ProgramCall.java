package nullplane.cli;

import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.CodeSource;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Command lines that call this program as it was called itself, to be typed again. */
final class ProgramCall {
  private static final String PLAIN = "[A-Za-z0-9_./:=+@%-]+";

  private ProgramCall() {}

  /** Returns a command line for the shell. */
  static String of(String... words) {
    return Stream.concat(program().stream(), Stream.of(words))
        .map(ProgramCall::quoted)
        .collect(Collectors.joining(" "));
  }

  /** Returns how this program is called; just by its name if it does not run from a jar. */
  private static List<String> program() {
    CodeSource source = Nullplane.class.getProtectionDomain().getCodeSource();
    if (source == null || source.getLocation() == null) {
      return List.of("nullplane");
    }
    try {
      Path jar = Path.of(source.getLocation().toURI());
      return Files.isRegularFile(jar)
          ? List.of("java", "-jar", shown(jar, Path.of("").toAbsolutePath()).toString())
          : List.of("nullplane");
    } catch (URISyntaxException | IllegalArgumentException e) {
      return List.of("nullplane");
    }
  }

  /**
   * Returns a file as seen from a folder, if it lies there or below; else its whole path.
   *
   * @param file the file
   * @param folder the folder
   */
  static Path shown(Path file, Path folder) {
    return file.startsWith(folder) ? folder.relativize(file) : file;
  }

  /** Returns a word as a POSIX shell takes it for one. Source: IEEE Std 1003.1-2017, 2.2.2. */
  static String quoted(String word) {
    return word.matches(PLAIN) ? word : "'" + word.replace("'", "'\\''") + "'";
  }
}

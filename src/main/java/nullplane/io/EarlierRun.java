package nullplane.io;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/** Tells whether a folder may be replaced: an earlier run wrote it, and nobody added to it. */
final class EarlierRun {
  private static final int LARGEST_MANIFEST = 1 << 20;
  private static final int MOST_NAMED = 3;

  /** Files that desktops drop into folders. */
  private static final Set<String> DROPPINGS = Set.of(".DS_Store", "Thumbs.db", "desktop.ini");

  private EarlierRun() {}

  /**
   * Returns why the folder must not be replaced; nothing if it may be.
   *
   * @throws IOException if the folder cannot be read
   */
  static Optional<String> objection(Path folder) throws IOException {
    try (Stream<Path> entries = Files.list(folder)) {
      if (entries.findAny().isEmpty()) {
        return Optional.empty();
      }
    }
    Path manifest = folder.resolve(RunManifest.FILE_NAME);
    Optional<Set<String>> listed =
        Files.isRegularFile(manifest) ? filesListedIn(manifest) : Optional.empty();
    if (listed.isEmpty()) {
      return Optional.of(
          "the folder holds files that no run of this program wrote; name a new or empty folder");
    }
    List<Path> files;
    try (Stream<Path> all = Files.walk(folder)) {
      files = all.filter(path -> !Files.isDirectory(path)).sorted().toList();
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
    List<String> strange =
        files.stream()
            .filter(file -> !DROPPINGS.contains(String.valueOf(file.getFileName())))
            .map(file -> folder.relativize(file).toString().replace('\\', '/'))
            .filter(name -> !name.equals(RunManifest.FILE_NAME))
            .filter(name -> !listed.orElseThrow().contains(name))
            .toList();
    if (strange.isEmpty()) {
      return Optional.empty();
    }
    String some = String.join(", ", strange.stream().limit(MOST_NAMED).map(Excerpt::of).toList());
    return Optional.of(
        "the folder holds files that the run in it did not write ("
            + some
            + (strange.size() > MOST_NAMED ? ", ..." : "")
            + "); move them away or name another folder");
  }

  private static Optional<Set<String>> filesListedIn(Path manifest) throws IOException {
    try (InputStream in = Files.newInputStream(manifest)) {
      return filesListedIn(in.readNBytes(LARGEST_MANIFEST));
    }
  }

  /** Returns the file names of a manifest, if it is one. */
  static Optional<Set<String>> filesListedIn(byte[] bytes) {
    Set<String> names = new HashSet<>();
    boolean ours = false;
    try (JsonParser json = new JsonFactory().createParser(bytes)) {
      boolean inFiles = false;
      int depth = 0;
      for (JsonToken token = json.nextToken(); token != null; token = json.nextToken()) {
        depth += token.isStructStart() ? 1 : token.isStructEnd() ? -1 : 0;
        if (depth == 1 && token == JsonToken.FIELD_NAME) {
          inFiles = "files".equals(json.currentName());
        }
        if (token == JsonToken.VALUE_STRING && depth == 1 && "kind".equals(json.currentName())) {
          ours = json.getText().equals(RunManifest.KIND);
        }
        if (token == JsonToken.VALUE_STRING
            && inFiles
            && depth == 3
            && "name".equals(json.currentName())) {
          names.add(json.getText());
        }
      }
    } catch (IOException e) {
      return Optional.empty(); // no JSON
    }
    return ours ? Optional.of(names) : Optional.empty();
  }
}

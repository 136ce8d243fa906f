package nullplane.io;

import java.nio.file.Path;
import java.util.List;

/** What the starter wrote, as JSON. Source: RFC 8259. */
public final class StarterJson {
  private StarterJson() {}

  /**
   * Returns the bytes of the document.
   *
   * @param files the files written
   * @param units the units they are written in
   * @param next the command lines to try next
   * @param version the program's version
   */
  public static byte[] of(
      List<Path> files, StarterFiles.Units units, List<String> next, String version) {
    return JsonText.of(
        json -> {
          json.text("version", version);
          json.text("units", units.word());
          json.texts("files", files.stream().map(Path::toString).toList());
          json.texts("next", next);
        });
  }
}

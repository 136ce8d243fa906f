package nullplane.io;

import java.time.Instant;
import java.util.List;
import nullplane.units.Checks;

/**
 * What a run was: enough to repeat it and to check that its files are whole.
 *
 * @param specFile the spec as the user named it
 * @param specSha256 digest of the spec's bytes, hexadecimal
 * @param seed the seed
 * @param version the program's version
 * @param started when the run began
 * @param ended when its files were written
 * @param steps how long each step took, in order
 * @param evaluations woofers scored in all
 */
public record RunManifest(
    String specFile,
    String specSha256,
    long seed,
    String version,
    Instant started,
    Instant ended,
    List<Step> steps,
    long evaluations) {
  /** Name of the manifest in its folder. */
  public static final String FILE_NAME = "manifest.json";

  /** What stands in the manifest's first field, so that a folder is known as one of ours. */
  static final String KIND = "nullplane run";

  /** Copies the list. */
  public RunManifest {
    steps = List.copyOf(steps);
  }

  /**
   * One step of a run.
   *
   * @param name the step
   * @param seconds its wall time (s)
   */
  public record Step(String name, double seconds) {
    /** Checks the time. */
    public Step {
      Checks.notNegative(seconds, "duration of " + name, "s");
    }
  }

  /**
   * A file of a run.
   *
   * @param name path within the folder, with forward slashes
   * @param bytes its length (bytes)
   * @param sha256 digest of its bytes, hexadecimal
   */
  public record FileEntry(String name, long bytes, String sha256) {}

  /**
   * Returns the manifest as JSON. Source: RFC 8259; times by ISO 8601 in UTC.
   *
   * @param files the files of the run, the manifest itself left out
   */
  byte[] toJson(List<FileEntry> files) {
    return JsonText.of(
        json -> {
          json.text("kind", KIND);
          json.text("version", version);
          json.text("specFile", specFile);
          json.text("specSha256", specSha256);
          json.whole("seed", seed);
          json.whole("evaluations", evaluations);
          json.text("started", started.toString());
          json.text("ended", ended.toString());
          json.objects(
              "steps",
              steps,
              step -> {
                json.text("name", step.name());
                json.number("seconds", step.seconds());
              });
          json.objects(
              "files",
              files,
              file -> {
                json.text("name", file.name());
                json.whole("bytes", file.bytes());
                json.text("sha256", file.sha256());
              });
        });
  }
}

package nullplane.io;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Tells whether a folder is a whole run: the manifest's files with the manifest's digests. */
public final class WholeRun {
  private WholeRun() {}

  /**
   * Fails unless a folder holds the files that its manifest lists, byte for byte, and nothing else.
   *
   * @param run the folder
   */
  public static void require(Path run) throws IOException {
    JsonNode manifest = new ObjectMapper().readTree(run.resolve("manifest.json").toFile());
    Set<String> listed = new TreeSet<>(Set.of("manifest.json"));
    for (JsonNode file : manifest.get("files")) {
      byte[] bytes = Files.readAllBytes(run.resolve(file.get("name").asText()));
      assertThat(sha256(bytes)).isEqualTo(file.get("sha256").asText());
      listed.add(file.get("name").asText());
    }
    assertThat(listed).hasSizeGreaterThan(1);
    try (Stream<Path> all = Files.walk(run)) {
      Set<String> there =
          all.filter(Files::isRegularFile)
              .map(file -> run.relativize(file).toString().replace('\\', '/'))
              .collect(Collectors.toCollection(TreeSet::new));
      assertThat(there).isEqualTo(listed);
    }
  }

  private static String sha256(byte[] bytes) {
    try {
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }
}

package nullplane.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.net.Proxy;
import java.net.ProxySelector;
import java.net.SocketAddress;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Names that look like paths, addresses or markup stay words: nothing is written outside the folder
 * that was chosen, and nobody is called. Java asks the proxy selector before it opens a connection
 * of HTTP or a plain socket (java.net.ProxySelector), so one that refuses and keeps count hears of
 * every attempt.
 */
class HostileNamesTest {
  private static final String ADDRESS = "http://127.0.0.1:9/x.png";
  private static final String SPEC =
      CliSpecs.ONE_WOOFER
          .replace("title: Reading-room panel", "title: '<img src=\"" + ADDRESS + "\">../../title'")
          .replace("name: single", "name: '../../../<img src=" + ADDRESS + ">'");
  private static final String WOOFER =
      """
      name: '../../../../<object data="%s">'
      nominal: 300 mm
      effective-diameter: 260 mm
      re: 5.6 ohm
      fs: 31 Hz
      qms: 5.2
      qes: 0.85
      mms: 78 g
      travel: 8 mm
      """
          .formatted(ADDRESS);

  @TempDir private Path folder;
  private final List<String> calls = Collections.synchronizedList(new ArrayList<>());
  private ProxySelector before;

  @BeforeEach
  void refuseCalls() {
    before = ProxySelector.getDefault();
    ProxySelector.setDefault(
        new ProxySelector() {
          @Override
          public List<Proxy> select(URI uri) {
            calls.add(uri.toString());
            throw new IllegalArgumentException("no calls");
          }

          @Override
          public void connectFailed(URI uri, SocketAddress address, IOException e) {
            calls.add(uri.toString());
          }
        });
  }

  @AfterEach
  void allowCalls() {
    ProxySelector.setDefault(before);
  }

  @Test
  void theGuardHearsOfCalls() throws Exception {
    try {
      URI.create(ADDRESS).toURL().openStream().close();
    } catch (IOException | IllegalArgumentException e) {
      assertThat(calls).containsExactly(ADDRESS);
      return;
    }
    throw new AssertionError("somebody answered");
  }

  @Test
  void namesThatLookLikePathsStayWords() throws Exception {
    Path work = Files.createDirectories(folder.resolve("a/b/c/given"));
    Path spec = Files.writeString(work.resolve("spec.yaml"), SPEC);
    Path woofer = Files.writeString(work.resolve("woofer.yaml"), WOOFER);
    Path out = folder.resolve("a/b/c/out");
    run(out.resolve("design"), "design", spec.toString(), "--evaluations", "1000");
    run(
        out.resolve("judge"),
        "judge",
        spec.toString(),
        "--woofers",
        woofer.toString(),
        "--evaluations",
        "0");
    run(out.resolve("datasheet"), "datasheet", woofer.toString());
    try (Stream<Path> all = Files.walk(folder)) {
      assertThat(
              (Iterable<String>)
                  all.filter(Files::isRegularFile)
                      .map(file -> folder.relativize(file).toString())
                      .filter(name -> !name.startsWith("a/b/c/out/"))
                      .collect(Collectors.toCollection(TreeSet::new)))
          .containsExactly("a/b/c/given/spec.yaml", "a/b/c/given/woofer.yaml");
    }
    assertThat(FiniteOutputs.require(out)).isGreaterThan(20);
    assertThat(calls).isEmpty();
  }

  private static void run(Path out, String... words) {
    List<String> all = new ArrayList<>(List.of(words));
    all.addAll(List.of("--out", out.toString()));
    PrintStream usualOut = System.out;
    PrintStream usualErr = System.err;
    ByteArrayOutputStream said = new ByteArrayOutputStream();
    ByteArrayOutputStream complained = new ByteArrayOutputStream();
    System.setOut(new PrintStream(said, true, StandardCharsets.UTF_8));
    System.setErr(new PrintStream(complained, true, StandardCharsets.UTF_8));
    int exit;
    try {
      exit = Nullplane.execute(all.toArray(String[]::new));
    } finally {
      System.setOut(usualOut);
      System.setErr(usualErr);
    }
    assertThat(exit).as(complained.toString(StandardCharsets.UTF_8)).isZero();
    FiniteOutputs.require(words[0], said.toString(StandardCharsets.UTF_8));
    FiniteOutputs.require(words[0], complained.toString(StandardCharsets.UTF_8));
  }
}

package nullplane.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.jar.JarEntry;
import java.util.jar.JarFile;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The runnable jar says whose software it holds, and brings their licences. */
class ThirdPartyIT {
  private static final String NOTICE = "META-INF/THIRD-PARTY.txt";

  /** Copyrights and licences that must stay with copies, one from each source of them. */
  private static final Set<String> KEPT =
      Set.of(
          "META-INF/LICENSE: Version 2.0, January 2004",
          "META-INF/LICENSE: Lohit fonts", // fonts within a part
          "META-INF/LICENSE: OPEN HTML TO PDF XML/CSS RENDERER LICENSE COMMENTS",
          "META-INF/LICENSE.txt: APACHE COMMONS MATH DERIVATIVE WORKS",
          "META-INF/LICENSE-LGPL-2.1.txt: GNU LESSER GENERAL PUBLIC LICENSE",
          "META-INF/LICENSE-LGPL-3.txt: GNU LESSER GENERAL PUBLIC LICENSE",
          "META-INF/licenses/GPL-3.0.txt: Version 3, 29 June 2007",
          "META-INF/licenses/BSD-2-Clause-JTransforms.txt: Piotr Wendykier",
          "META-INF/licenses/BSD-2-Clause-JLargeArrays.txt: University of Warsaw",
          "META-INF/licenses/BSD-3-Clause-JLine.txt: Neither the name",
          "META-INF/licenses/MIT-progressbar.txt: WITHOUT WARRANTY OF ANY KIND",
          "META-INF/NOTICE.txt: Apache Commons Math",
          "META-INF/NOTICE: Apache XmpBox",
          "META-INF/NOTICE: Jackson",
          "liberation/LICENSE: SIL OPEN FONT LICENSE");

  private static JarFile jar() throws IOException {
    return new JarFile(System.getProperty("nullplane.jar"));
  }

  private static String text(JarFile jar, String name) throws IOException {
    JarEntry entry = jar.getJarEntry(name);
    assertThat(entry).as(name).isNotNull();
    return new String(jar.getInputStream(entry).readAllBytes(), StandardCharsets.UTF_8);
  }

  /** Artifacts of the class path, group left out, of which something lies in the jar. */
  private static Set<String> bundled(JarFile jar) {
    Set<String> ours =
        jar.stream()
            .map(JarEntry::getName)
            .filter(ThirdPartyIT::content)
            .collect(Collectors.toSet());
    return Stream.of(System.getProperty("java.class.path").split(File.pathSeparator))
        .filter(path -> path.endsWith(".jar"))
        .map(Path::of)
        .filter(path -> holdsOneOf(path, ours))
        .map(path -> path.getParent())
        .map(version -> version.getParent().getFileName() + ":" + version.getFileName())
        .filter(artifact -> !artifact.startsWith("nullplane:"))
        .collect(Collectors.toCollection(TreeSet::new));
  }

  private static boolean content(String name) {
    return (name.endsWith(".class") && !name.endsWith("module-info.class"))
        || name.endsWith(".ttf");
  }

  private static boolean holdsOneOf(Path path, Set<String> names) {
    try (JarFile other = new JarFile(path.toFile())) {
      return other.stream()
          .map(JarEntry::getName)
          .filter(ThirdPartyIT::content)
          .anyMatch(names::contains);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Test
  void theNoticeNamesAllThatIsBundledAndNothingElse() throws IOException {
    try (JarFile jar = jar()) {
      Set<String> named =
          Pattern.compile(", [\\w.-]+:([\\w.-]+:\\d[\\w.-]*), [\\w. -]+, ")
              .matcher(text(jar, NOTICE))
              .results()
              .map((MatchResult line) -> line.group(1))
              .collect(Collectors.toCollection(TreeSet::new));
      assertThat(named).hasSizeGreaterThan(20).isEqualTo(bundled(jar));
    }
  }

  @Test
  void licencesAndNoticesAreKept() throws IOException {
    try (JarFile jar = jar()) {
      for (String kept : KEPT) {
        String[] where = kept.split(": ", 2);
        assertThat(text(jar, where[0])).as(where[0]).contains(where[1]);
      }
    }
  }
}

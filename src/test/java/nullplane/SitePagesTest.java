package nullplane;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What pages name exists: classes, other pages, pictures. */
class SitePagesTest {
  private static final Path ROOT = Path.of(System.getProperty("basedir", ".")).toAbsolutePath();
  private static final Path SITE = ROOT.resolve("src/site/markdown");

  static Stream<Path> pages() throws IOException {
    try (Stream<Path> files = Files.walk(SITE)) {
      return Stream.concat(
          Stream.of(ROOT.resolve("README.md"), ROOT.resolve("DEVELOPERS.md")),
          files.filter(file -> file.toString().endsWith(".md")).sorted().toList().stream());
    }
  }

  /** Names such as `acoustics.PanelSolver`. */
  @ParameterizedTest
  @MethodSource("pages")
  void classesExist(Path page) throws IOException {
    Matcher name = Pattern.compile("`([a-z]+)\\.([A-Z]\\w+)`").matcher(Files.readString(page));
    while (name.find()) {
      assertThat(
              ROOT.resolve(
                  "src/main/java/nullplane/" + name.group(1) + "/" + name.group(2) + ".java"))
          .as("%s names %s", page, name.group())
          .exists();
    }
  }

  /** Every part of the core has its say on the page of the method. */
  @Test
  void theMethodNamesClassesOfEveryPackageOfTheCore() throws IOException {
    Set<String> packages = new TreeSet<>();
    Matcher name =
        Pattern.compile("`([a-z]+)\\.[A-Z]\\w+`")
            .matcher(Files.readString(SITE.resolve("method.md")));
    while (name.find()) {
      packages.add(name.group(1));
    }
    assertThat(packages)
        .containsAll(
            List.of(
                "units",
                "driver",
                "motor",
                "network",
                "acoustics",
                "scoring",
                "search",
                "tolerance",
                "judging",
                "fit",
                "sample"));
  }

  @ParameterizedTest
  @MethodSource("pages")
  void linksLeadSomewhere(Path page) throws IOException {
    Matcher link = Pattern.compile("\\]\\(([^)#:]+)\\)").matcher(Files.readString(page));
    while (link.find()) {
      assertThat(page.resolveSibling(link.group(1)).normalize())
          .as("%s links to it", page)
          .exists();
    }
  }

  @Test
  void theIndexListsEveryPage() throws IOException {
    String index = Files.readString(SITE.resolve("index.md"));
    for (Path page : pages().filter(p -> p.startsWith(SITE)).toList()) {
      String name = SITE.relativize(page).toString().replace('\\', '/');
      if (!name.equals("index.md")) {
        assertThat(index).as("index.md lists %s", name).contains("(" + name + ")");
      }
    }
  }
}

package nullplane.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;

/** Names in documents exist: commands and their options, profiles and properties of the build. */
class DocumentLinesTest {
  /** Parameters of the build's own plugins that anybody may set. */
  private static final Set<String> OF_PLUGINS = Set.of("skipTests", "test", "it.test", "groups");

  private static final Pattern OPTION = Pattern.compile("(?<![\\w-])--[a-z][a-z-]*");

  static Stream<Path> documents() throws IOException {
    return DocumentText.documents().stream();
  }

  /** All commands of the program but help, by name. */
  static Map<String, CommandSpec> commands() {
    try (StopSignal stop = new StopSignal()) {
      Map<String, CommandSpec> specs = new java.util.TreeMap<>();
      new CommandLine(new Nullplane(stop))
          .getSubcommands()
          .forEach((name, line) -> specs.put(name, line.getCommandSpec()));
      specs.remove("help");
      return specs;
    }
  }

  private static Set<String> optionsOf(CommandSpec command) {
    Set<String> names = new TreeSet<>();
    for (OptionSpec option : command.options()) {
      names.addAll(List.of(option.names()));
    }
    return names;
  }

  @ParameterizedTest
  @MethodSource("documents")
  void commandsAndOptionsExist(Path document) throws IOException {
    Map<String, CommandSpec> commands = commands();
    for (String line : DocumentText.read(document).lines()) {
      if (!DocumentText.runsTheProgram(line)) {
        continue;
      }
      List<String> words = DocumentText.arguments(line);
      String name = words.isEmpty() ? "" : words.get(0);
      if (name.equals("help") || name.startsWith("-") || name.isEmpty()) {
        continue;
      }
      assertThat(commands.keySet()).as("%s: %s", document, line).contains(name);
      for (String word : words) {
        if (word.startsWith("-")) {
          assertThat(optionsOf(commands.get(name)))
              .as("%s: %s", document, line)
              .contains(word.replaceFirst("=.*", ""));
        }
      }
    }
  }

  /** Words such as `judge SPEC --woofers FILE`, without the program's name before them. */
  @ParameterizedTest
  @MethodSource("documents")
  void shortFormsExist(Path document) throws IOException {
    Map<String, CommandSpec> commands = commands();
    Matcher code =
        Pattern.compile("`(" + String.join("|", commands.keySet()) + ")( [^`]*)`")
            .matcher(Files.readString(document));
    while (code.find()) {
      Matcher option = OPTION.matcher(code.group(2));
      while (option.find()) {
        assertThat(optionsOf(commands.get(code.group(1))))
            .as("%s: %s", document, code.group())
            .contains(option.group());
      }
    }
  }

  @ParameterizedTest
  @MethodSource("documents")
  void profilesAndPropertiesOfTheBuildExist(Path document) throws IOException {
    String build = Files.readString(DocumentText.ROOT.resolve("pom.xml"));
    for (String line : DocumentText.read(document).lines()) {
      if (DocumentText.runsTheProgram(line)) {
        continue;
      }
      Matcher profile = Pattern.compile("-P ?(\\S+)").matcher(line);
      while (profile.find()) {
        assertThat(build.contains("<id>" + profile.group(1) + "</id>"))
            .as("%s: %s: profile %s", document, line, profile.group(1))
            .isTrue();
      }
      Matcher property = Pattern.compile("-D([\\w.]+)").matcher(line);
      while (property.find()) {
        String name = property.group(1);
        assertThat(
                OF_PLUGINS.contains(name)
                    || build.contains("<" + name + ">")
                    || build.contains("<" + name + "/>")
                    || readBySomeTest(name))
            .as("%s: %s: nobody reads %s", document, line, name)
            .isTrue();
      }
      Matcher plugin = Pattern.compile(" ([a-z]+):[a-z]+").matcher(line);
      while (plugin.find()) {
        assertThat(
                build.contains(plugin.group(1) + "-maven-plugin</artifactId>")
                    || build.contains(plugin.group(1) + "-maven</artifactId>"))
            .as("%s: %s: plugin %s", document, line, plugin.group(1))
            .isTrue();
      }
    }
  }

  private static boolean readBySomeTest(String property) throws IOException {
    try (Stream<Path> tests = Files.walk(DocumentText.ROOT.resolve("src/test/java"))) {
      for (Path test : tests.filter(file -> file.toString().endsWith(".java")).toList()) {
        if (Files.readString(test).contains("getBoolean(\"" + property + "\")")) {
          return true;
        }
      }
    }
    return false;
  }

  static Stream<String> commandNames() {
    return commands().keySet().stream();
  }

  /** A page for each command, with all of its options and parameters, and none that is unknown. */
  @ParameterizedTest
  @MethodSource("commandNames")
  void aCommandHasAPageWithItsOptions(String name) throws IOException {
    Path file = DocumentText.ROOT.resolve("src/site/markdown/commands/" + name + ".md");
    assertThat(file).as("the page of %s", name).exists();
    String page = Files.readString(file);
    CommandSpec command = commands().get(name);
    Matcher table = Pattern.compile("(?m)^\\| `(--?[\\w-]+)").matcher(page);
    Set<String> listed = new TreeSet<>();
    while (table.find()) {
      listed.add(table.group(1));
    }
    for (OptionSpec option : command.options()) {
      assertThat(listed).as("%s has a row for each option", file).contains(option.longestName());
    }
    assertThat(optionsOf(command)).as("rows of %s", file).containsAll(listed);
    command
        .positionalParameters()
        .forEach(
            parameter ->
                assertThat(page).as("%s", file).contains("`" + parameter.paramLabel() + "`"));
    Set<String> known = new TreeSet<>();
    commands().values().forEach(each -> known.addAll(optionsOf(each)));
    Matcher option = OPTION.matcher(page);
    while (option.find()) {
      assertThat(known).as("options in %s", file).contains(option.group());
    }
    assertThat(page).contains("\n## Files\n").contains("\n## Exit codes\n");
  }

  /** Rows of a table "message holds | do" quote what the program says. */
  @ParameterizedTest
  @MethodSource("commandNames")
  void messagesThatAPageQuotesAreTheProgramsOwn(String name) throws IOException {
    StringBuilder sources = new StringBuilder();
    try (Stream<Path> files = Files.walk(DocumentText.ROOT.resolve("src/main/java"))) {
      for (Path file : files.filter(f -> f.toString().endsWith(".java")).toList()) {
        sources.append(Files.readString(file).replaceAll("\"\\s*\\+\\s*\"", ""));
      }
    }
    String page =
        Files.readString(DocumentText.ROOT.resolve("src/site/markdown/commands/" + name + ".md"));
    int table = page.indexOf("| message holds | do |");
    Matcher row = Pattern.compile("(?m)^\\| `([^`]+)` \\|").matcher(page);
    for (boolean more = table >= 0 && row.find(table); more; more = row.find()) {
      assertThat(sources.indexOf(row.group(1))).as("%s: %s", name, row.group(1)).isPositive();
    }
  }

  /** What the extraction takes for a command line. */
  @Test
  void linesAreFoundInBlocksAndInText() {
    String text =
        """
        Say `nullplane judge SPEC
        --woofers FILE` or:

            mvn -q package && java -jar target/nullplane.jar panel \\
              "specs/a b.yaml"

        ```
        java -jar target/nullplane.jar panel none.yaml # exit code 2
        ```

        <!-- output 2-3 bits 5a -->
        ```
        two
        three
        ```
        """;
    DocumentText read = DocumentText.of(Path.of("x.md"), text);
    assertThat(read.lines())
        .containsExactly(
            "nullplane judge SPEC --woofers FILE",
            "mvn -q package",
            "java -jar target/nullplane.jar panel \"specs/a b.yaml\"",
            "java -jar target/nullplane.jar panel none.yaml # exit code 2");
    assertThat(DocumentText.hasPlaceholders(read.lines().get(0))).isTrue();
    assertThat(DocumentText.hasPlaceholders(read.lines().get(2))).isFalse();
    assertThat(DocumentText.arguments(read.lines().get(2)))
        .containsExactly("panel", "specs/a b.yaml");
    assertThat(DocumentText.arguments(read.lines().get(3))).containsExactly("panel", "none.yaml");
    assertThat(DocumentText.exitCode(read.lines().get(3))).isEqualTo(2);
    assertThat(read.excerpts())
        .containsExactly(
            new DocumentText.Excerpt(3, 2, 3, Optional.of("5a"), 12, List.of("two", "three")));
  }
}

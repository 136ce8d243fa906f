package nullplane.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import nullplane.io.PanelCache;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Places by the XDG Base Directory Specification 0.8 and the systems' own customs. */
class CacheFolderTest {
  @TempDir private Path root;

  private String at(String below) {
    return root.resolve(below).toString();
  }

  @Test
  void theEnvironmentNamesItOnEverySystem() {
    Map<String, String> environment =
        Map.of("XDG_CACHE_HOME", at("named"), "HOME", at("home"), "LOCALAPPDATA", at("local"));
    for (String system : new String[] {"Linux", "Mac OS X", "Windows 11"}) {
      assertThat(CacheFolder.of(environment, system, at("java-home")))
          .contains(root.resolve("named/nullplane"));
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "relative", "./here", "~/.cache", "bad\0name"})
  void aNameThatIsNoAbsolutePathIsIgnored(String named) {
    Map<String, String> environment = Map.of("XDG_CACHE_HOME", named);
    assertThat(CacheFolder.of(environment, "Linux", at("home")))
        .contains(root.resolve("home/.cache/nullplane"));
    assertThat(CacheFolder.of(Map.of("LOCALAPPDATA", named), "Windows 11", at("home")))
        .contains(root.resolve("home/AppData/Local/nullplane/cache"));
    assertThat(CacheFolder.of(Map.of("HOME", named), "Mac OS X", at("home")))
        .contains(root.resolve("home/Library/Caches/nullplane"));
  }

  @ParameterizedTest
  @ValueSource(strings = {"Linux", "FreeBSD", "SunOS", "AIX", ""})
  void belowTheHomeElsewhere(String system) {
    assertThat(CacheFolder.of(Map.of("HOME", at("home")), system, at("java-home")))
        .contains(root.resolve("home/.cache/nullplane"));
    assertThat(CacheFolder.of(Map.of("LOCALAPPDATA", at("local")), system, at("java-home")))
        .contains(root.resolve("java-home/.cache/nullplane"));
  }

  @Test
  void onWindowsBelowTheLocalData() {
    assertThat(CacheFolder.of(Map.of("LOCALAPPDATA", at("local")), "Windows 10", at("home")))
        .contains(root.resolve("local/nullplane/cache"));
  }

  @Test
  void onMacBelowTheLibrary() {
    assertThat(CacheFolder.of(Map.of(), "Mac OS X", at("home")))
        .contains(root.resolve("home/Library/Caches/nullplane"));
  }

  /** Java tells "?" when the system knows no home. */
  @ParameterizedTest
  @ValueSource(strings = {"", "?", "relative"})
  void nowhereWithoutAHome(String home) {
    for (String system : new String[] {"Linux", "Mac OS X", "Windows 11"}) {
      assertThat(CacheFolder.of(Map.of(), system, home)).isEmpty();
    }
  }

  /** In Turkish a capital I has another small letter. */
  @Test
  void theSystemIsKnownWhateverTheLanguage() {
    Locale before = Locale.getDefault();
    try {
      Locale.setDefault(Locale.forLanguageTag("tr-TR"));
      assertThat(CacheFolder.of(Map.of("LOCALAPPDATA", at("local")), "WINDOWS", at("home")))
          .contains(root.resolve("local/nullplane/cache"));
    } finally {
      Locale.setDefault(before);
    }
  }

  @Command(name = "any")
  static final class AnyCommand {
    @Mixin private RunOptions options;
  }

  @Test
  void noCacheMeansNone() {
    List<String> notices = new ArrayList<>();
    AnyCommand command = new AnyCommand();
    new CommandLine(command).parseArgs("--no-cache");
    assertThat(command.options.cache(notices::add)).isSameAs(PanelCache.none());
    AnyCommand usual = new AnyCommand();
    new CommandLine(usual).parseArgs();
    boolean known = CacheFolder.usual().isPresent();
    assertThat(usual.options.cache(notices::add) == PanelCache.none()).isEqualTo(!known);
    assertThat(notices).isEmpty();
  }
}

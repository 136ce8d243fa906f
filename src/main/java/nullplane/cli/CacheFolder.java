package nullplane.cli;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Where the user's caches are.
 *
 * <p>Source: XDG Base Directory Specification, version 0.8, for XDG_CACHE_HOME (relative paths are
 * ignored) and its default, $HOME/.cache.
 */
final class CacheFolder {
  private CacheFolder() {}

  /** Returns this program's cache folder for this user; empty if no home is known. */
  static Optional<Path> usual() {
    return of(
        System.getenv(), System.getProperty("os.name", ""), System.getProperty("user.home", ""));
  }

  /**
   * Returns the cache folder of a user.
   *
   * @param environment the environment's variables
   * @param system the operating system's name, as Java tells it
   * @param home the user's home, as Java tells it; used where the environment names none
   */
  static Optional<Path> of(Map<String, String> environment, String system, String home) {
    Optional<Path> named = absolute(environment.get("XDG_CACHE_HOME"));
    if (named.isPresent()) {
      return named.map(caches -> caches.resolve("nullplane"));
    }
    String lower = system.toLowerCase(Locale.ROOT);
    if (lower.startsWith("windows")) {
      return absolute(environment.get("LOCALAPPDATA"))
          .or(() -> absolute(home).map(own -> own.resolve("AppData").resolve("Local")))
          .map(local -> local.resolve("nullplane").resolve("cache"));
    }
    Optional<Path> own = absolute(environment.get("HOME")).or(() -> absolute(home));
    if (lower.startsWith("mac")) {
      return own.map(path -> path.resolve("Library").resolve("Caches").resolve("nullplane"));
    }
    return own.map(path -> path.resolve(".cache").resolve("nullplane"));
  }

  private static Optional<Path> absolute(@Nullable String text) {
    if (text == null) {
      return Optional.empty();
    }
    try {
      return Optional.of(Path.of(text)).filter(Path::isAbsolute);
    } catch (InvalidPathException e) {
      return Optional.empty();
    }
  }
}

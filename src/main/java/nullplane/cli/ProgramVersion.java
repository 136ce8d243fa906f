package nullplane.cli;

import java.io.IOException;
import java.io.InputStream;
import java.util.Properties;
import picocli.CommandLine.IVersionProvider;

/** The program's version, as the build wrote it down. */
final class ProgramVersion implements IVersionProvider {

  @Override
  public String[] getVersion() {
    return new String[] {"nullplane " + text()};
  }

  /** Returns the version, for example 0.1.0. */
  static String text() {
    Properties properties = new Properties();
    try (InputStream in = ProgramVersion.class.getResourceAsStream("/nullplane/build.properties")) {
      if (in == null) {
        throw new IllegalStateException("build.properties is missing from the jar");
      }
      properties.load(in);
    } catch (IOException e) {
      throw new IllegalStateException("build.properties cannot be read", e);
    }
    return properties.getProperty("version", "unknown");
  }
}

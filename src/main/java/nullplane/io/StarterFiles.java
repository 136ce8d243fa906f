package nullplane.io;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The files that a new project begins with: a spec whose comments explain every key, an invented
 * woofer, and the response of an invented main driver. Each text is kept once; where lengths, areas
 * and volumes stand, it holds both ways to write them.
 */
public final class StarterFiles {
  /** The spec's file name. */
  public static final String SPEC = "spec.yaml";

  /** The woofer's file name. */
  public static final String WOOFER = "woofer.yaml";

  private static final List<String> NAMES = List.of(SPEC, WOOFER, "main.txt");
  private static final String FOLDER = "/nullplane/starter/";

  /** Two ways to write one thing: {@code <metric|inch>}. */
  private static final Pattern EITHER = Pattern.compile("<([^<>|\\n]*)\\|([^<>|\\n]*)>");

  private StarterFiles() {}

  /** The units that panels, places and sizes are written in. */
  public enum Units {
    /** Millimetres, centimetres and metres. */
    METRIC,
    /** Inches and feet; millimetres where the trade has no inches, as for a woofer's travel. */
    INCH;

    /** Returns the word that a user writes. */
    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }

    @Override
    public String toString() {
      return word();
    }
  }

  /**
   * Returns the contents of the files by name, the spec first.
   *
   * @param units the units to write
   */
  public static Map<String, byte[]> in(Units units) {
    Map<String, byte[]> files = new LinkedHashMap<>();
    for (String name : NAMES) {
      Matcher either = EITHER.matcher(text(name));
      String written = either.replaceAll(units == Units.METRIC ? "$1" : "$2");
      files.put(name, written.getBytes(StandardCharsets.UTF_8));
    }
    return Collections.unmodifiableMap(files);
  }

  private static String text(String name) {
    try (InputStream in = StarterFiles.class.getResourceAsStream(FOLDER + name)) {
      if (in == null) {
        throw new IllegalStateException(name + " is missing from the jar");
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(name + " cannot be read from the jar", e);
    }
  }
}

package nullplane.cli;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import java.util.zip.CRC32;

/**
 * The command lines of a document, in its code blocks and in its running text, and the output that
 * it shows of them.
 *
 * @param file the document
 * @param lines the command lines in their order, each as one line
 * @param excerpts the blocks that show output
 */
record DocumentText(Path file, List<String> lines, List<Excerpt> excerpts) {
  /** The repository. */
  static final Path ROOT = Path.of(System.getProperty("basedir", ".")).toAbsolutePath();

  private static final String JAR = "java -jar target/nullplane.jar";
  private static final Pattern SHOWN =
      Pattern.compile("<!-- output (\\d+)-(\\d+)(?: bits (\\w+))? -->");
  private static final Pattern CODE = Pattern.compile("`([^`\n]+(?:\n[^`\n]+)?)`");
  private static final Pattern PLACEHOLDER =
      Pattern.compile("(?:.*[ =\\[])?[A-Z][A-Z_]*(?:[ \\]].*)?");
  private static final Pattern WORD = Pattern.compile("\"([^\"]*)\"|(\\S+)");
  private static final Pattern EXIT = Pattern.compile("\\s*# exit code (\\d+)$");

  /**
   * A block of output.
   *
   * @param command place of its command line among the lines
   * @param first first line of standard output that is shown, from 1
   * @param last last line that is shown
   * @param bits for what a search gave, {@link #bitsHere} of the machine that gave it
   * @param at place of the block's first line in the document, from 0
   * @param shown what the document shows
   */
  record Excerpt(
      int command, int first, int last, Optional<String> bits, int at, List<String> shown) {}

  /** README, DEVELOPERS and all pages, in the order of their names. */
  static List<Path> documents() throws IOException {
    List<Path> documents =
        new ArrayList<>(List.of(ROOT.resolve("README.md"), ROOT.resolve("DEVELOPERS.md")));
    try (Stream<Path> pages = Files.walk(ROOT.resolve("src/site/markdown"))) {
      pages.filter(page -> page.toString().endsWith(".md")).sorted().forEach(documents::add);
    }
    return documents;
  }

  /** Reads a document. */
  static DocumentText read(Path file) throws IOException {
    return of(file, Files.readString(file));
  }

  /** Takes a document's text apart. */
  static DocumentText of(Path file, String text) {
    List<String> lines = new ArrayList<>();
    List<Excerpt> excerpts = new ArrayList<>();
    List<String> source = text.lines().toList();
    StringBuilder prose = new StringBuilder();
    Optional<Matcher> shown = Optional.empty();
    for (int i = 0; i < source.size(); i++) {
      String line = source.get(i);
      Matcher mark = SHOWN.matcher(line);
      if (mark.matches()) {
        shown = Optional.of(mark);
      } else if (line.startsWith("```")) {
        inProse(prose, lines);
        int end = i + 1;
        while (!source.get(end).startsWith("```")) {
          end++;
        }
        List<String> block = source.subList(i + 1, end);
        if (shown.isPresent()) {
          excerpts.add(
              new Excerpt(
                  lines.size() - 1,
                  Integer.parseInt(shown.orElseThrow().group(1)),
                  Integer.parseInt(shown.orElseThrow().group(2)),
                  Optional.ofNullable(shown.orElseThrow().group(3)),
                  i + 1,
                  List.copyOf(block)));
          shown = Optional.empty();
        } else {
          inBlock(block, lines);
        }
        i = end;
      } else if (line.startsWith("    ")) {
        inProse(prose, lines);
        int end = i;
        while (end < source.size() && source.get(end).startsWith("    ")) {
          end++;
        }
        inBlock(source.subList(i, end), lines);
        i = end - 1;
      } else {
        prose.append(line).append('\n');
      }
    }
    inProse(prose, lines);
    return new DocumentText(file, List.copyOf(lines), List.copyOf(excerpts));
  }

  private static void inBlock(List<String> block, List<String> lines) {
    for (String line : String.join("\n", block).replaceAll("\\\\\n\\s*", "").split("\n", -1)) {
      for (String part : line.strip().split(" && ", -1)) {
        if (part.startsWith(JAR) || part.startsWith("nullplane ") || part.startsWith("mvn ")) {
          lines.add(part);
        }
      }
    }
  }

  private static void inProse(StringBuilder prose, List<String> lines) {
    Matcher code = CODE.matcher(prose);
    while (code.find()) {
      String inside = code.group(1).replace("\n", " ").strip();
      if (inside.startsWith(JAR) || inside.startsWith("nullplane ") || inside.startsWith("mvn ")) {
        lines.add(inside);
      }
    }
    prose.setLength(0);
  }

  /**
   * Tells machines apart whose elementary functions round differently: Java leaves them a unit in
   * the last place, and a search may end elsewhere for that.
   */
  static String bitsHere() {
    CRC32 sum = new CRC32();
    for (int i = 1; i <= 20_000; i++) {
      double x = 0.0371 * i;
      for (double value :
          new double[] {
            Math.sin(x),
            Math.cos(x),
            Math.tan(x),
            Math.log(x),
            Math.log10(x),
            Math.exp(x / 9),
            Math.pow(x, 1.3),
            Math.cbrt(x),
            Math.atan2(x, 2)
          }) {
        sum.update(Long.toHexString(Double.doubleToLongBits(value)).getBytes(UTF_8));
      }
    }
    return Long.toHexString(sum.getValue());
  }

  /** Whether a line runs the program, rather than the build. */
  static boolean runsTheProgram(String line) {
    return !line.startsWith("mvn ");
  }

  /** Whether a line has words in capitals that a reader replaces. */
  static boolean hasPlaceholders(String line) {
    return PLACEHOLDER.matcher(line).matches();
  }

  /** The arguments of a line that runs the program. */
  static List<String> arguments(String line) {
    String rest = EXIT.matcher(line).replaceFirst("");
    rest =
        rest.startsWith(JAR) ? rest.substring(JAR.length()) : rest.substring("nullplane".length());
    List<String> words = new ArrayList<>();
    Matcher word = WORD.matcher(rest);
    while (word.find()) {
      words.add(word.group(1) == null ? word.group(2) : word.group(1));
    }
    return words;
  }

  /** The exit code that the document says beside a line; 0 if it says none. */
  static int exitCode(String line) {
    Matcher exit = EXIT.matcher(line);
    return exit.find() ? Integer.parseInt(exit.group(1)) : 0;
  }
}

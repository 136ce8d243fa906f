package nullplane.report;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Makes SVG text smaller and fit for a page that holds several pictures. */
final class SvgText {
  private static final Pattern LONG_NUMBER = Pattern.compile("-?\\d+\\.\\d{3,}(?:E-?\\d+)?");
  private static final Pattern LETTER_NUMBER = Pattern.compile("-?\\d+\\.\\d{2,}");
  private static final Pattern CLIP_ID = Pattern.compile("id=\"(clip[^\"]*)\"");
  private static final Pattern LINE =
      Pattern.compile(
          "\\s*<line style=\"([^\"]*)\" x1=\"([^\"]*)\" x2=\"([^\"]*)\" y1=\"([^\"]*)\""
              + " y2=\"([^\"]*)\"/>\\s*");

  /** How numbers that are not finite come out of the library; its text is outlines, not words. */
  private static final List<String> NOT_FINITE = List.of("NaN", "Infinity", "\u221e", "\ufffd");

  private SvgText() {}

  /**
   * Returns the same picture in fewer bytes: no document type that points to another site, numbers
   * to a hundredth of a pixel, neighbouring pieces of one line as one line, and names that do not
   * meet those of other pictures on a page.
   *
   * @param svg the whole document
   * @param prefix starts every name; letters only
   * @param title first child of the picture, which readers for the blind speak
   * @throws IllegalStateException if a number of the picture is not finite
   */
  static String tidied(String svg, String prefix, String title) {
    for (String word : NOT_FINITE) {
      if (svg.contains(word)) {
        throw new IllegalStateException("a number of the picture \"" + title + "\" is " + word);
      }
    }
    String text = svg.replaceFirst("<!DOCTYPE[^>]*>\\s*", "");
    text = named(rounded(text, LONG_NUMBER, 2), prefix);
    int close = text.indexOf('>', text.indexOf("<svg")) + 1;
    text =
        text.substring(0, close)
            + "<title>"
            + Html.escaped(title)
            + "</title>"
            + text.substring(close);
    return joined(text);
  }

  private static String rounded(String svg, Pattern number, int decimals) {
    return number
        .matcher(svg)
        .replaceAll(
            match -> {
              BigDecimal value =
                  new BigDecimal(match.group()).setScale(decimals, RoundingMode.HALF_EVEN);
              return value.signum() == 0 ? "0" : value.stripTrailingZeros().toPlainString();
            });
  }

  private static String named(String svg, String prefix) {
    Map<String, String> names = new LinkedHashMap<>();
    Matcher matcher = CLIP_ID.matcher(svg);
    while (matcher.find()) {
      names.putIfAbsent(matcher.group(1), prefix + "-clip-" + (names.size() + 1));
    }
    String text = svg;
    for (Map.Entry<String, String> name : names.entrySet()) {
      text =
          text.replace("id=\"" + name.getKey() + "\"", "id=\"" + name.getValue() + "\"")
              .replace("url(#" + name.getKey() + ")", "url(#" + name.getValue() + ")");
    }
    return text;
  }

  /** Joins neighbouring pieces of one style into one path; the order of painting stays. */
  private static String joined(String svg) {
    StringBuilder text = new StringBuilder(svg.length());
    StringBuilder path = new StringBuilder();
    String style = "";
    String end = "";
    for (String row : svg.lines().toList()) {
      Matcher line = LINE.matcher(row);
      boolean isLine = row.contains("<line ") && line.matches();
      if (path.length() > 0 && !(isLine && line.group(1).equals(style))) {
        text.append("<path d=\"").append(path).append("\" style=\"fill:none;").append(style);
        text.append("\"/>\n");
        path.setLength(0);
        end = "";
      }
      if (!isLine) {
        // letters are the only shapes with quadratic curves; a tenth of a pixel is enough for them
        text.append(row.contains(" Q") ? rounded(row.strip(), LETTER_NUMBER, 1) : row.strip());
        text.append('\n');
        continue;
      }
      String start = line.group(2) + "," + line.group(4);
      if (!start.equals(end)) {
        path.append(path.length() > 0 ? " M" : "M").append(start);
      }
      style = line.group(1);
      end = line.group(3) + "," + line.group(5);
      path.append(' ').append(end);
    }
    return text.toString();
  }
}

package nullplane.report;

import java.util.List;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Writes a page as HTML that needs nothing from outside: style and pictures are inside. */
final class HtmlWriter {
  private static final String STYLE =
      """
      html { font-size: 11pt; color-scheme: light; }
      body { font: 1rem/1.4 sans-serif; color: #000; background: #fff; max-width: 68rem;
        margin: 2rem auto; padding: 0 1rem; }
      h1 { font-size: 1.6rem; border-bottom: 3px solid #0072b2; padding-bottom: .3rem; }
      h2 { font-size: 1.2rem; margin: 1.8rem 0 .5rem; }
      h3 { font-size: 1rem; margin: 1.2rem 0 .4rem; }
      .verdict { font-weight: bold; border-left: 4px solid #0072b2; padding-left: .8rem; }
      .wide { overflow-x: auto; }
      h1, h2, h3, p, li { overflow-wrap: anywhere; }
      table { border-collapse: collapse; width: 100%; font-size: .88rem; }
      thead { display: table-header-group; }
      th { text-align: left; border-bottom: 2px solid #000; padding: .2rem .4rem;
        vertical-align: bottom; }
      td { border-bottom: 1px solid #ccc; padding: .2rem .4rem; vertical-align: top; }
      td:first-child { min-width: 4.5rem; }
      .number { text-align: right; }
      td.number { white-space: nowrap; }
      figure { margin: 1rem 0; break-inside: avoid; }
      figure svg { width: 100%; height: auto; }
      figcaption { font-size: .88rem; color: #444; }
      a { color: #005a8c; }
      footer { margin-top: 2.5rem; border-top: 1px solid #000; padding-top: .4rem;
        font-size: .8rem; }
      @media print {
        @page { size: A4; margin: 14mm 14mm 16mm;
          @bottom-left { content: "FOOT"; font: 7.5pt sans-serif; }
          @bottom-right { content: counter(page) " of " counter(pages); font: 7.5pt sans-serif; } }
        html { font-size: 8.5pt; }
        body { margin: 0; padding: 0; max-width: none; line-height: 1.3; }
        h1 { margin-top: 0; }
        h2, h3 { break-after: avoid; }
        .page { break-before: page; }
        .wide { overflow: visible; }
        tr, table { break-inside: avoid; }
        td, th { padding: .12rem .3rem; }
        footer { display: none; }
        a { color: #000; }
      }
      """;

  /** What may not stand in a text inside the style sheet: all that could end it. */
  private static final String NOT_IN_STYLE = "[^\\p{L}\\p{N} .,;:()+-]";

  private HtmlWriter() {}

  /**
   * Returns the page.
   *
   * @param document the page
   * @param svg gives the SVG text of a picture by its relative path
   */
  static String write(Document document, Function<String, String> svg) {
    StringBuilder text = new StringBuilder();
    text.append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\"/>\n")
        .append(
            "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/>\n<title>")
        .append(Html.escaped(document.title()))
        .append("</title>\n<style>\n")
        .append(STYLE.replace("FOOT", document.foot().replaceAll(NOT_IN_STYLE, " ")))
        .append("</style>\n</head>\n<body>\n<main>\n")
        .append(body(document, figure -> bare(svg.apply(figure.path()))));
    return text.append("</main>\n<footer>")
        .append(Html.escaped(document.foot()))
        .append("</footer>\n</body>\n</html>\n")
        .toString();
  }

  /**
   * Returns title and blocks of a page, well-formed as XML.
   *
   * @param document the page
   * @param picture gives the markup of a picture
   */
  static String body(Document document, Function<Document.Figure, String> picture) {
    StringBuilder text = new StringBuilder(element("h1", "", document.title()));
    document.blocks().forEach(block -> text.append(block(block, picture)));
    return text.toString();
  }

  private static String block(Document.Block block, Function<Document.Figure, String> picture) {
    if (block instanceof Document.Heading heading) {
      return element(
          "h" + heading.level(), heading.startsPage() ? " class=\"page\"" : "", heading.text());
    }
    if (block instanceof Document.Paragraph paragraph) {
      return element("p", paragraph.verdict() ? " class=\"verdict\"" : "", paragraph.text());
    }
    if (block instanceof Document.Bullets bullets) {
      return bullets.items().stream()
          .map(item -> element("li", "", item))
          .collect(Collectors.joining("", "<ul>\n", "</ul>\n"));
    }
    if (block instanceof Document.Figure figure) {
      return "<figure>\n"
          + picture.apply(figure)
          + element("figcaption", "", figure.caption())
          + "</figure>\n";
    }
    if (block instanceof Document.Link link) {
      return "<p><a href=\""
          + Html.escaped(link.path())
          + "\">"
          + Html.escaped(link.text())
          + "</a></p>\n";
    }
    return table((Document.Table) block);
  }

  private static String table(Document.Table table) {
    StringBuilder text = new StringBuilder("<div class=\"wide\">\n<table>\n");
    table.widths().forEach(w -> text.append("<col style=\"width: ").append(w).append("%\"/>\n"));
    text.append("<thead>\n<tr>");
    for (int i = 0; i < table.head().size(); i++) {
      text.append(cell("th scope=\"col\"", "th", table.numeric().get(i), table.head().get(i)));
    }
    text.append("</tr>\n</thead>\n<tbody>\n");
    for (List<String> row : table.rows()) {
      text.append("<tr>");
      for (int i = 0; i < row.size(); i++) {
        text.append(cell("td", "td", table.numeric().get(i), row.get(i)));
      }
      text.append("</tr>\n");
    }
    return text.append("</tbody>\n</table>\n</div>\n").toString();
  }

  private static String cell(String open, String close, boolean numeric, String text) {
    return "<"
        + open
        + (numeric ? " class=\"number\"" : "")
        + ">"
        + Html.escaped(text)
        + "</"
        + close
        + ">";
  }

  private static String element(String name, String attributes, String text) {
    return "<" + name + attributes + ">" + Html.escaped(text) + "</" + name + ">\n";
  }

  /** Returns the svg element alone, without the document's head. */
  private static String bare(String svg) {
    return svg.substring(svg.indexOf("<svg"));
  }
}

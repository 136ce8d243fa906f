package nullplane.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import nullplane.scoring.Assessment;
import nullplane.scoring.DesignSpec;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;

class SpecificationSheetTest {
  private static final DesignSpec SPEC = InventedRun.spec();
  private static final Assessment WOOFER = InventedRun.outcome(SPEC).ranked().get(0);

  private static SpecificationSheet sheet(DesignSpec spec, Assessment woofer) {
    return new SpecificationSheet(spec, woofer, 1, InventedRun.INFO);
  }

  private static org.w3c.dom.Document parsed(String html) throws Exception {
    String xml = html.replace("<!DOCTYPE html>", "");
    return DocumentBuilderFactory.newInstance()
        .newDocumentBuilder()
        .parse(new ByteArrayInputStream(xml.getBytes(StandardCharsets.UTF_8)));
  }

  private static final String NO_PICTURE = "<svg xmlns=\"http://www.w3.org/2000/svg\"></svg>";

  @Test
  void verdictComesFirstThenTheFiveFigures() {
    String text = sheet(SPEC, WOOFER).markdown();
    assertThat(text)
        .startsWith("# Village hall: Woofer 1\n\n**Woofer 1 leaves the corridor in 2 of");
    List<String> headings =
        text.lines().filter(line -> line.startsWith("## ")).map(line -> line.substring(3)).toList();
    assertThat(headings)
        .containsExactly(
            "Five deciding figures",
            "Parameters",
            "Why these values",
            "Coil and motor",
            "Given, not searched",
            "In each stack",
            "Parts, and what to swap between stacks",
            "Pictures",
            "Why it stands where it stands",
            "What the model leaves out",
            "Cautions");
  }

  @Test
  void everyParameterHasValueUnitConditionAndReason() {
    Document.Table values =
        new ParameterTable(SPEC, WOOFER, new Verdict(SPEC, WOOFER, "Woofer 1")).values();
    Document.Table reasons =
        new ParameterTable(SPEC, WOOFER, new Verdict(SPEC, WOOFER, "Woofer 1")).reasons();
    assertThat(values.rows().stream().map(row -> row.get(0)))
        .contains(
            "fs", "Qts", "Qes", "Qms", "Mmd", "Mms", "xmax", "Re", "Bl", "Kms", "Rms", "Le", "P",
            "Sd", "Vas", "L");
    for (List<String> row : values.rows()) {
      assertThat(row.get(2)).matches("-?[0-9.]+");
      assertThat(row.get(3))
          .isIn(
              "Hz",
              "1",
              "g",
              "mm",
              "ohm",
              "T m",
              "N/m",
              "N s/m",
              "mH",
              "W",
              "cm\u00b2",
              "l",
              "dB re 20 \u00b5Pa");
      assertThat(row.get(5)).isNotBlank();
    }
    assertThat(reasons.rows()).hasSameSizeAs(values.rows());
    assertThat(reasons.rows()).allMatch(row -> row.get(4).endsWith("."));
  }

  @Test
  void reasonsAreBuiltOnTheFigures() {
    String text = sheet(SPEC, WOOFER).markdown();
    // the invented woofer: panel fs 27.9, 27.6, 27.3 Hz; corrections 2.1, 2.4, 2.7 dB
    assertThat(text).contains("On the panels the solved air load makes it 27.3 to 27.9 Hz.");
    assertThat(text).contains("stack four needs 2.70 dB of correction, the most of all stacks");
    assertThat(text).contains("The coil takes 19.2 g of it and leaves 55.8 g for the cone");
    assertThat(text).contains("Given by the spec.");
    Assessment atTheEnd = InventedRun.assessment(SPEC, "Woofer 1", 20, 0.85, 0.008);
    assertThat(sheet(SPEC, atTheEnd).markdown())
        .contains("It stands at the lower end of what the search may choose (20.0 Hz).");
  }

  /**
   * The travel needed is the travel times the ratio of levels: excursion and sound pressure are
   * proportional at one frequency.
   */
  @Test
  void neededTravelFollowsFromTheExcursionLimit() {
    double least = Double.POSITIVE_INFINITY;
    for (var stack : WOOFER.stacks()) {
      for (int i = 0; i < stack.curves().frequencyHz().size(); i++) {
        double hz = stack.curves().frequencyHz().at(i);
        if (hz >= 40 && hz <= 200) {
          least =
              Math.min(least, stack.curves().excursionLimitDb().at(i) - stack.brief().loudestDb());
        }
      }
    }
    double neededMm = 8 / Math.pow(10, least / 20);
    assertThat(sheet(SPEC, WOOFER).markdown())
        .contains("The loudest level asked for needs " + Figures.of(neededMm, "mm"));
  }

  @Test
  void tablesHaveNoEmptyCellAndNoNaN() {
    String text = sheet(SPEC, WOOFER).markdown();
    assertThat(text).doesNotContain("NaN").doesNotContain("Infinity").doesNotContain("null");
    text.lines()
        .filter(line -> line.startsWith("|"))
        .forEach(
            line ->
                assertThat(Arrays.stream(line.substring(1).split("(?<!\\\\)\\|")))
                    .allMatch(cell -> !cell.isBlank()));
    Document.Table table =
        new Document.Table(List.of("a", "b"), List.of(List.of("1 g", " ")), List.of(true, true));
    assertThat(table.rows().get(0)).containsExactly("1 g", "not determined");
  }

  @Test
  void footTellsTwoPrintsApart() {
    String foot = "Village hall; spec 0123456789ab, seed 42, version 0.1.0";
    assertThat(sheet(SPEC, WOOFER).markdown()).endsWith(foot + "\n");
    String html = sheet(SPEC, WOOFER).html(path -> NO_PICTURE);
    assertThat(html).contains("<footer>" + foot + "</footer>").contains("content: \"" + foot);
  }

  @Test
  void namesWithMarkupStayText() throws Exception {
    String name = "<script>alert(1)</script>";
    DesignSpec spec = InventedRun.spec("</style><b>|x|", name, "=1+1", "# *two* [x](y) `z`");
    Assessment woofer = InventedRun.assessment(spec, "<img src=x onerror=y>", 30, 0.85, 0.008);
    String html = sheet(spec, woofer).html(path -> NO_PICTURE);
    var document = parsed(html);
    for (String tag : List.of("script", "img", "b")) {
      assertThat(document.getElementsByTagName(tag).getLength()).as(tag).isZero();
    }
    assertThat(document.getElementsByTagName("style").getLength()).isEqualTo(1);
    assertThat(document.getDocumentElement().getTextContent()).contains(name).contains("=1+1");
    String markdown = sheet(spec, woofer).markdown();
    assertThat(markdown)
        .doesNotContain("<script")
        .contains("&lt;script&gt;alert(1)&lt;/script&gt;");
    assertThat(markdown).contains("\\*two\\* \\[x\\](y) \\`z\\`");
    assertThat(markdown).contains("| =1+1 |").doesNotContain("\n=");
    long columns = markdown.lines().filter(line -> line.startsWith("| Stack ")).count();
    assertThat(columns).isEqualTo(4);
  }

  @Test
  void htmlNeedsNothingFromOutside() throws Exception {
    String html = sheet(SPEC, WOOFER).html(path -> NO_PICTURE);
    assertThat(html.replace("xmlns=\"http://www.w3.org/2000/svg\"", ""))
        .doesNotContain("http")
        .doesNotContain("src=")
        .doesNotContain("@import")
        .doesNotContain("url(");
    assertThat(html).contains("@page { size: A4").contains("counter(page)");
    var document = parsed(html);
    assertThat(document.getElementsByTagName("svg").getLength()).isEqualTo(4);
    assertThat(document.getElementsByTagName("h1").getLength()).isEqualTo(1);
    var tables = document.getElementsByTagName("table");
    for (int i = 0; i < tables.getLength(); i++) {
      Element table = (Element) tables.item(i);
      int heads = table.getElementsByTagName("th").getLength();
      int rows = table.getElementsByTagName("tr").getLength() - 1;
      assertThat(table.getElementsByTagName("td").getLength()).isEqualTo(heads * rows);
    }
  }

  @Test
  void brokenConstraintsStandNearTheTop() {
    DesignSpec strict =
        new DesignSpec(
            SPEC.title(),
            SPEC.woofer(),
            SPEC.stacks(),
            SPEC.listening(),
            SPEC.target(),
            new nullplane.scoring.Amplifier(28, 4));
    Assessment woofer = InventedRun.assessment(strict, "Woofer 1", 30, 0.85, 0.008);
    String text = sheet(strict, woofer).markdown();
    assertThat(text).contains("It breaks 1 constraint.");
    assertThat(text.indexOf("## Constraints broken"))
        .isPositive()
        .isLessThan(text.indexOf("## Five deciding figures"));
    assertThat(text).contains("the amplifier is rated for 4.00 ohm: put more woofers in series");
  }

  @Test
  void remediesScaleWithTheLack() {
    Verdict verdict = new Verdict(SPEC, WOOFER, "Woofer 1");
    double lack = -verdict.leastMargin().figures().outputMarginDb();
    // heat is proportional to power, 10 lg
    assertThat(verdict.remedies())
        .anyMatch(
            text ->
                text.contains(
                    "a rated power of " + Figures.of(150 * Math.pow(10, lack / 10), "W")));
    double excess = verdict.worstExcess().figures().worstExcessDb();
    assertThat(verdict.remedies())
        .anyMatch(text -> text.contains("would have to be " + Figures.decibels(2 + excess)));
  }
}

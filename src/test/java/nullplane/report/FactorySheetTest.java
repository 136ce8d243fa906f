package nullplane.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.net.ServerSocket;
import java.net.SocketTimeoutException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import javax.xml.parsers.DocumentBuilderFactory;
import nullplane.sample.BriefUnit;
import nullplane.sample.BriefValue;
import nullplane.sample.BriefWindow;
import nullplane.scoring.Assessment;
import nullplane.scoring.DesignSpec;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class FactorySheetTest {
  private static final DesignSpec SPEC = InventedRun.spec();
  private static final List<Assessment> RANKED = InventedRun.outcome(SPEC).ranked();
  private static final PlotRanges RANGES = PlotRanges.of(SPEC, RANKED);
  private static final Optional<LocalDate> DATE = Optional.of(LocalDate.of(2026, 11, 25));
  private static final double MARGIN_PT = 14 / 25.4 * 72;
  private static final String SVG = "<svg xmlns=\"http://www.w3.org/2000/svg\"></svg>";

  private static FactorySheet sheet(FactoryParts parts) {
    return new FactorySheet(SPEC, RANKED.get(0), 1, InventedRun.INFO, parts);
  }

  private static FactorySheet sheet() {
    return sheet(FactoryParts.NONE.withDate(DATE));
  }

  private static String text(byte[] pdf) throws IOException {
    try (PDDocument document = Loader.loadPDF(pdf)) {
      return new PDFTextStripper().getText(document).replace('\u00a0', ' ');
    }
  }

  /** Text of a page with lines joined, as cells wrap where they like. */
  private static String page(PDDocument document, int number) throws IOException {
    PDFTextStripper stripper = new PDFTextStripper();
    stripper.setStartPage(number);
    stripper.setEndPage(number);
    return stripper.getText(document).replace('\u00a0', ' ').replaceAll("\\s+", " ");
  }

  @ParameterizedTest
  @EnumSource(Paper.class)
  void everyPageHasItsSizeFootAndNumberAndNothingInTheMargins(Paper paper) throws IOException {
    byte[] pdf = sheet().pdf(paper, RANGES);
    try (PDDocument document = Loader.loadPDF(pdf)) {
      int pages = document.getNumberOfPages();
      assertThat(pages).isBetween(4, 6);
      for (int i = 1; i <= pages; i++) {
        PDRectangle box = document.getPage(i - 1).getMediaBox();
        assertThat(box.getWidth() * 25.4 / 72)
            .isCloseTo((float) paper.widthMm(), org.assertj.core.api.Assertions.within(0.2));
        assertThat(box.getHeight() * 25.4 / 72)
            .isCloseTo((float) paper.heightMm(), org.assertj.core.api.Assertions.within(0.2));
        assertThat(page(document, i))
            .contains(i + " of " + pages)
            .contains("spec of 2026-11-25, digest 0123456789ab, seed 42; version 0.1.0");
      }
      List<String> outside = new ArrayList<>();
      new Margins(outside).getText(document);
      assertThat(outside).isEmpty();
      // the values stand on the first page alone
      assertThat(page(document, 1))
          .contains("Target values, windows and conditions", "fs resonance frequency 30.0 Hz")
          .contains("27.0 to 33.0", "total Q factor in a standard baffle", "Unless a row says");
      assertThat(page(document, 2)).contains("2 of " + pages + " Coil and motor Symbol");
    }
  }

  /** Collects text that reaches into the margins, or into text of the same line beside it. */
  private static final class Margins extends PDFTextStripper {
    private final List<String> outside;

    Margins(List<String> outside) {
      this.outside = outside;
    }

    @Override
    protected void writeString(String string, List<TextPosition> positions) {
      for (TextPosition p : positions) {
        double right = p.getXDirAdj() + p.getWidthDirAdj();
        boolean blank = p.getUnicode().isBlank();
        if (!blank
            && (p.getXDirAdj() < MARGIN_PT - 1
                || right > p.getPageWidth() - MARGIN_PT + 1
                || p.getYDirAdj() > p.getPageHeight() - 5
                || p.getYDirAdj() < 13 / 25.4 * 72)) {
          outside.add(string);
        }
      }
    }
  }

  /** A cell too narrow for its word would print over its neighbour. */
  @ParameterizedTest
  @EnumSource(Paper.class)
  void noLetterLiesOnAnother(Paper paper) throws IOException {
    List<String> overlaps = new ArrayList<>();
    try (PDDocument document = Loader.loadPDF(sheet().pdf(paper, RANGES))) {
      PDFTextStripper stripper =
          new PDFTextStripper() {
            private final List<TextPosition> seen = new ArrayList<>();

            @Override
            protected void startPage(PDPage page) {
              seen.clear();
            }

            @Override
            protected void processTextPosition(TextPosition p) {
              if (!p.getUnicode().isBlank()) {
                for (TextPosition o : seen) {
                  if (Math.abs(o.getYDirAdj() - p.getYDirAdj()) < 2
                      && Math.min(
                                  o.getXDirAdj() + o.getWidthDirAdj(),
                                  p.getXDirAdj() + p.getWidthDirAdj())
                              - Math.max(o.getXDirAdj(), p.getXDirAdj())
                          > 1) {
                    overlaps.add(o.getUnicode() + p.getUnicode() + " at " + p.getXDirAdj());
                  }
                }
                seen.add(p);
              }
              super.processTextPosition(p);
            }
          };
      stripper.getText(document);
    }
    assertThat(overlaps).isEmpty();
  }

  @Test
  void everythingAMakerNeedsIsThere() throws IOException {
    String text = text(sheet().pdf(Paper.A4, RANGES)).replaceAll("\\s+", " ");
    assertThat(text)
        .contains(
            "is wanted and is no mistake",
            "common practice, ±10 to 15 %",
            "Bl left at the travel, both ways",
            "Priorities, first things first",
            "listens at the REAR at 0.5 m",
            "still passes 28 times in 100",
            "6 samples from series tools",
            "Open questions to the maker",
            "Drawings are left to the maker",
            "Impedance window for incoming inspection",
            "24 h rest",
            "not determined",
            "A simulation does not replace a measured sample")
        .doesNotContain("NaN")
        .doesNotContain("Infinity")
        .doesNotContain("null");
  }

  @Test
  void fontsAreInside() throws IOException {
    try (PDDocument document = Loader.loadPDF(sheet().pdf(Paper.A4, RANGES))) {
      for (PDPage page : document.getPages()) {
        for (var name : page.getResources().getFontNames()) {
          PDFont font = page.getResources().getFont(name);
          assertThat(font.isEmbedded()).as(font.getName()).isTrue();
          assertThat(font.getName()).contains("LiberationSans");
        }
      }
    }
  }

  @Test
  void sameSheetGivesTheSameBytes() {
    byte[] first = sheet().pdf(Paper.A4, RANGES);
    assertThat(sheet().pdf(Paper.A4, RANGES)).isEqualTo(first);
    RunInfo other = new RunInfo("fedcba9876543210fedcba9876543210", 42, "0.1.0");
    assertThat(
            new FactorySheet(SPEC, RANKED.get(0), 1, other, FactoryParts.NONE)
                .pdf(Paper.A4, RANGES))
        .isNotEqualTo(first);
  }

  @Test
  void partsTakeThePlaceOfUsualWindowsAndUnknownCoils() {
    BriefValue layers =
        new BriefValue(
            BriefValue.Section.COIL,
            "layers",
            "",
            "layers of the winding",
            BriefUnit.ONE,
            OptionalDouble.of(4),
            "",
            BriefWindow.NONE,
            "whole layers",
            "Both leads end at one side.");
    FactorySheet sheet =
        sheet(
            new FactoryParts(
                DATE,
                Map.of("fs", BriefWindow.between(28, 31, "95 % of units stay in the corridor")),
                List.of(layers),
                List.of(),
                List.of("Qts first."),
                List.of()));
    assertThat(sheet.brief().value("fs").orElseThrow().window().basis()).startsWith("95 %");
    assertThat(sheet.brief().value("layers").orElseThrow().target()).hasValue(4);
    assertThat(sheet.brief().priorities()).containsExactly("Qts first.");
    // a narrower window of fs narrows the band on the flank of the peak
    int flank = 60;
    assertThat(sheet.brief().impedance().upperOhm().at(flank))
        .isLessThan(sheet().brief().impedance().upperOhm().at(flank));
    assertThat(sheet.html(path -> SVG)).doesNotContain("Windows are common practice for now");
  }

  @Test
  void namesStayTextOnThePageAndOnPaper() throws Exception {
    String script = "<script>alert(1)</script>";
    DesignSpec spec =
        InventedRun.spec("=1+1</title><b>\u202Eabc\u0007", script, "@x", "&lt;i&gt; {url(x)}");
    Assessment woofer =
        InventedRun.assessment(spec, "<img src=http://127.0.0.1:9/x>", 30, 0.85, 0.008);
    FactorySheet sheet = new FactorySheet(spec, woofer, 1, InventedRun.INFO, FactoryParts.NONE);
    String html = sheet.html(path -> SVG);
    assertThat(html).doesNotContain("\u202E").doesNotContain("\u0007");
    org.w3c.dom.Document parsed =
        DocumentBuilderFactory.newInstance()
            .newDocumentBuilder()
            .parse(
                new ByteArrayInputStream(
                    html.replace("<!DOCTYPE html>", "").getBytes(StandardCharsets.UTF_8)));
    for (String tag : List.of("script", "img", "b", "i")) {
      assertThat(parsed.getElementsByTagName(tag).getLength()).as(tag).isZero();
    }
    assertThat(parsed.getElementsByTagName("svg").getLength()).isEqualTo(3);
    String text = text(sheet.pdf(Paper.A4, PlotRanges.of(spec, List.of(woofer))));
    assertThat(text.replaceAll("\\s+", " "))
        .contains("=1+1</title><b>", script, "<img src=http://127.0.0.1:9/x>", "&lt;i&gt; {url(x)}")
        .doesNotContain("\u202E");
    try (PDDocument document =
        Loader.loadPDF(sheet.pdf(Paper.A4, PlotRanges.of(spec, List.of(woofer))))) {
      assertThat(document.getDocumentCatalog().getOpenAction()).isNull();
      assertThat(document.getDocumentCatalog().getNames()).isNull();
      for (PDPage page : document.getPages()) {
        assertThat(page.getAnnotations()).isEmpty();
      }
    }
  }

  /** Even a page that points outside is printed without a single request. */
  @Test
  void rendererFetchesNothing() throws IOException {
    try (ServerSocket server = new ServerSocket(0)) {
      server.setSoTimeout(200);
      String url = "http://127.0.0.1:" + server.getLocalPort() + "/x";
      String page =
          "<html><head><title>t</title><link rel=\"stylesheet\" href=\"URL.css\"/>"
              + "<style>@import url(URL.css); @font-face { font-family: q; src: url(URL.ttf); }"
              + " p { background: url(URL.png); font-family: q; }</style></head><body>"
              + "<p>kept</p><img src=\"URL.png\"/><img src=\"file:///etc/passwd\"/>"
              + "<object data=\"URL.pdf\" type=\"application/pdf\"></object></body></html>";
      byte[] pdf =
          PdfWriter.render(
              page.replace("URL", url),
              path -> {
                throw new IllegalStateException(path);
              },
              InventedRun.INFO.digest(),
              Optional.empty());
      assertThat(text(pdf)).contains("kept");
      org.assertj.core.api.Assertions.assertThatThrownBy(server::accept)
          .isInstanceOf(SocketTimeoutException.class);
    }
  }
}

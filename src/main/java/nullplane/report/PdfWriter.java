package nullplane.report;

import com.openhtmltopdf.extend.FSObjectDrawer;
import com.openhtmltopdf.extend.FSObjectDrawerFactory;
import com.openhtmltopdf.outputdevice.helper.ExternalResourceControlPriority;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.util.XRLog;
import java.awt.Graphics2D;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.time.LocalDate;
import java.util.Calendar;
import java.util.GregorianCalendar;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TimeZone;
import java.util.function.Function;
import java.util.logging.Level;
import java.util.logging.Logger;
import java.util.regex.Pattern;
import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import nullplane.units.FiniteText;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.jspecify.annotations.Nullable;
import org.w3c.dom.Element;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;

/**
 * Writes a page as PDF: text with its own fonts inside, pictures as lines, not dots. The same page
 * gives the same bytes; nothing is ever fetched from outside.
 */
final class PdfWriter {
  /**
   * Kept here so that its level stays: the library would tell of every standard font that it
   * replaces by the embedded one, which is what is wanted.
   */
  private static final Logger FONT_NOTICES = Logger.getLogger("org.apache.pdfbox");

  static {
    FONT_NOTICES.setLevel(Level.SEVERE);
  }

  private static final Pattern UNIT =
      Pattern.compile("(\\d) (?=(?:k?Hz|[cm]?m|g|V|W|ohm|dB|kPa|s|h|T|mH|%)(?![\\p{L}\\d]))");
  private static final Pattern CELSIUS = Pattern.compile("(\\d+)[ \u00a0]\u00b0C");
  private static final String PICTURE_TYPE = "image/nullplane";

  private static final String STYLE =
      """
      @page { size: PAPER; margin: 13mm 14mm 17mm 14mm;
        @bottom-left { content: element(foot); width: 84%; vertical-align: top;
          padding-top: 1.5mm; }
        @bottom-right { content: counter(page) " of " counter(pages); width: 16%;
          font: 7pt Sheet; vertical-align: top; padding-top: 1.5mm; text-align: right; } }
      html, * { font-family: Sheet; }
      body { font: 8.6pt/1.32 Sheet; color: #000; margin: 0; }
      #foot { position: running(foot); font: 7pt Sheet; }
      h1 { font-size: 15pt; margin: 0 0 2mm; padding-bottom: 1mm; border-bottom: 2pt solid #0072b2; }
      h2 { font-size: 11pt; margin: 4.5mm 0 1.2mm; page-break-after: avoid; }
      h3 { font-size: 9pt; margin: 3mm 0 1mm; page-break-after: avoid; }
      p { margin: 0 0 1.4mm; }
      .verdict { font-weight: bold; border-left: 2.5pt solid #0072b2; padding-left: 2.5mm; }
      ul, ol { margin: 0 0 1.4mm; padding-left: 5mm; }
      li { margin-bottom: 0.7mm; page-break-inside: avoid; }
      table { border-collapse: collapse; width: 100%; font-size: 7.6pt; line-height: 1.22;
        -fs-table-paginate: paginate; table-layout: fixed; margin-bottom: 1mm; }
      tr { page-break-inside: avoid; }
      th { text-align: left; border-bottom: 1.2pt solid #000; padding: 0.7mm 1mm;
        vertical-align: bottom; }
      td { border-bottom: 0.4pt solid #bbb; padding: 0.55mm 1mm; vertical-align: top; }
      .number { text-align: right; }
      .whole { white-space: nowrap; }
      .page { page-break-before: always; margin-top: 0; }
      figure { display: block; margin: 2mm 0; page-break-inside: avoid; }
      figcaption { display: block; font-size: 7.6pt; color: #333; margin-top: 1mm; }
      object { display: block; }
      """;

  private PdfWriter() {}

  /**
   * Returns the page as PDF.
   *
   * @param document the page
   * @param paper what it is printed on
   * @param pictures gives a picture by its relative path
   * @param digest hexadecimal digits that the file's identity is made from
   * @param date the date the file bears, if there is one
   * @throws nullplane.faults.OutputException if the machine has no font for the pictures
   */
  static byte[] write(
      Document document,
      Paper paper,
      Function<String, Picture> pictures,
      String digest,
      Optional<LocalDate> date) {
    double widthMm = paper.widthMm() - 28;
    String body =
        HtmlWriter.body(document, figure -> object(figure, pictures.apply(figure.path()), widthMm));
    String page =
        "<html lang=\"en\"><head><title>"
            + Html.escaped(document.title())
            + "</title><style>"
            + STYLE.replace("PAPER", paper.widthMm() + "mm " + paper.heightMm() + "mm")
            + "</style></head><body><div id=\"foot\">"
            + Html.escaped(document.foot())
            + "</div>"
            + unbroken(body)
            + "</body></html>";
    return render(page, pictures, digest, date);
  }

  /** Returns the markup with numbers held together with their units at the ends of lines. */
  private static String unbroken(String body) {
    return CELSIUS
        .matcher(UNIT.matcher(body).replaceAll("$1\u00a0"))
        .replaceAll("<span class=\"whole\">$1\u00a0\u00b0C</span>");
  }

  /** Renders XHTML; whatever it points to outside is left out. */
  static byte[] render(
      String xhtml, Function<String, Picture> pictures, String digest, Optional<LocalDate> date) {
    XRLog.setLoggingEnabled(false);
    PdfRendererBuilder builder = new PdfRendererBuilder();
    builder.useExternalResourceAccessControl(
        (uri, type) -> false, ExternalResourceControlPriority.RUN_BEFORE_RESOLVING_URI);
    builder.useExternalResourceAccessControl(
        (uri, type) -> false, ExternalResourceControlPriority.RUN_AFTER_RESOLVING_URI);
    builder.useUriResolver((base, uri) -> null);
    builder.useObjectDrawerFactory(new Drawers(pictures));
    builder.withProducer("nullplane");
    builder.withW3cDocument(parsed(xhtml), null);
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (PDDocument pdf = new PDDocument()) {
      PdfFonts.give(builder, pdf);
      builder.usePDDocument(pdf);
      try (PdfBoxRenderer renderer = builder.buildPdfRenderer()) {
        renderer.createPDFKeepOpen();
        identify(pdf, digest, date);
        pdf.save(bytes);
      }
    } catch (IOException cause) {
      throw new UncheckedIOException("writing into memory", cause);
    }
    return bytes.toByteArray();
  }

  /** Puts identity and date of the input in the place of those of the moment. */
  private static void identify(PDDocument pdf, String digest, Optional<LocalDate> date) {
    PDDocumentInformation information = pdf.getDocumentInformation();
    information.setCreationDate(date.map(PdfWriter::midnight).orElse(null));
    information.setModificationDate(null);
    pdf.setDocumentId(Long.parseUnsignedLong(digest.substring(0, 8), 16));
  }

  private static Calendar midnight(LocalDate date) {
    Calendar calendar = new GregorianCalendar(TimeZone.getTimeZone("UTC"), Locale.ROOT);
    calendar.clear();
    calendar.set(date.getYear(), date.getMonthValue() - 1, date.getDayOfMonth());
    return calendar;
  }

  private static org.w3c.dom.Document parsed(String xhtml) {
    try {
      DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
      factory.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
      factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
      factory.setAttribute(XMLConstants.ACCESS_EXTERNAL_DTD, "");
      factory.setAttribute(XMLConstants.ACCESS_EXTERNAL_SCHEMA, "");
      return factory.newDocumentBuilder().parse(new InputSource(new StringReader(xhtml)));
    } catch (ParserConfigurationException | SAXException cause) {
      throw new IllegalStateException("the page is not well-formed", cause);
    } catch (IOException cause) {
      throw new UncheckedIOException("reading from memory", cause);
    }
  }

  private static String object(Document.Figure figure, Picture picture, double widthMm) {
    double heightMm = widthMm * picture.heightPx() / picture.widthPx();
    return FiniteText.of(
        "<object type=\"%s\" data=\"%s\" style=\"width:%.2fmm;height:%.2fmm\"></object>",
        PICTURE_TYPE, Html.escaped(figure.path()), widthMm, heightMm);
  }

  /** Draws pictures where the page has room for them. */
  private static final class Drawers implements FSObjectDrawerFactory {
    private final Function<String, Picture> pictures;

    Drawers(Function<String, Picture> pictures) {
      this.pictures = pictures;
    }

    @Override
    public @Nullable FSObjectDrawer createDrawer(Element element) {
      if (!isReplacedObject(element)) {
        return null;
      }
      Picture picture = pictures.apply(element.getAttribute("data"));
      return (e, x, y, width, height, device, context, dotsPerPixel) -> {
        device.drawWithGraphics(
            (float) x,
            (float) y,
            (float) width / dotsPerPixel,
            (float) height / dotsPerPixel,
            g -> scaled(g, picture, width / dotsPerPixel));
        return Map.of();
      };
    }

    @Override
    public boolean isReplacedObject(Element element) {
      return PICTURE_TYPE.equals(element.getAttribute("type"));
    }

    private static void scaled(Graphics2D g, Picture picture, double width) {
      double scale = width / picture.widthPx();
      g.scale(scale, scale);
      picture.paint(g);
    }
  }
}

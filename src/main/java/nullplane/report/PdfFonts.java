package nullplane.report;

import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.pdfboxout.PDFontSupplier;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import org.apache.fontbox.FontBoxFont;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.CIDFontMapping;
import org.apache.pdfbox.pdmodel.font.FontMapper;
import org.apache.pdfbox.pdmodel.font.FontMappers;
import org.apache.pdfbox.pdmodel.font.FontMapping;
import org.apache.pdfbox.pdmodel.font.PDCIDSystemInfo;
import org.apache.pdfbox.pdmodel.font.PDFontDescriptor;
import org.apache.pdfbox.pdmodel.font.PDType0Font;

/**
 * The fonts of a printed sheet, which come with the program: Liberation Sans (SIL Open Font
 * License). The machine's own fonts are neither searched nor used, so a sheet's text looks the same
 * everywhere.
 */
final class PdfFonts {
  /** The family's name in style sheets. */
  static final String FAMILY = "Sheet";

  private static final byte[] REGULAR = read("LiberationSans-Regular.ttf");
  private static final byte[] BOLD = read("LiberationSans-Bold.ttf");

  private PdfFonts() {}

  /** Gives a document its fonts, and nothing else to choose from. */
  static void give(PdfRendererBuilder builder, PDDocument document) throws IOException {
    FontMappers.set(OursOnly.INSTANCE);
    builder.useFont(supplier(document, REGULAR), FAMILY, 400, FontStyle.NORMAL, true);
    builder.useFont(supplier(document, BOLD), FAMILY, 700, FontStyle.NORMAL, true);
  }

  private static PDFontSupplier supplier(PDDocument document, byte[] font) throws IOException {
    return new PDFontSupplier(PDType0Font.load(document, parsed(font), true));
  }

  /**
   * Returns a font without its ligatures: text stays searchable, and setting it is twice as fast.
   */
  private static TrueTypeFont parsed(byte[] font) throws IOException {
    TrueTypeFont parsed = new TTFParser().parse(new RandomAccessReadBuffer(font));
    parsed.setEnableGsub(false);
    return parsed;
  }

  private static byte[] read(String name) {
    try (InputStream in = PdfFonts.class.getResourceAsStream("/liberation/" + name)) {
      if (in == null) {
        throw new IllegalStateException("the font " + name + " is missing in the program");
      }
      return in.readAllBytes();
    } catch (IOException cause) {
      throw new UncheckedIOException("reading the font " + name, cause);
    }
  }

  /** Answers every request for a font of the machine with ours; the disk is not searched. */
  private static final class OursOnly implements FontMapper {
    private static final OursOnly INSTANCE = new OursOnly();

    private final TrueTypeFont font;

    private OursOnly() {
      try {
        font = parsed(REGULAR);
      } catch (IOException cause) {
        throw new UncheckedIOException("reading a font from memory", cause);
      }
    }

    @Override
    public FontMapping<TrueTypeFont> getTrueTypeFont(String name, PDFontDescriptor descriptor) {
      return new FontMapping<>(font, true);
    }

    @Override
    public FontMapping<FontBoxFont> getFontBoxFont(String name, PDFontDescriptor descriptor) {
      return new FontMapping<>(font, true);
    }

    @Override
    public CIDFontMapping getCIDFont(
        String name, PDFontDescriptor descriptor, PDCIDSystemInfo system) {
      return new CIDFontMapping(null, font, true);
    }
  }
}

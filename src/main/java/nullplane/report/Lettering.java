package nullplane.report;

import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.font.FontRenderContext;
import java.awt.font.TextLayout;
import java.awt.geom.AffineTransform;
import nullplane.faults.OutputException;

/**
 * Letters in pictures, drawn as outlines so that a picture looks the same wherever it is opened.
 * Uses the logical sans-serif font, which every Java runtime maps to a font of the machine.
 */
final class Lettering {
  static final Lettering SMALL = new Lettering(Font.PLAIN, 12);
  static final Lettering PLAIN = new Lettering(Font.PLAIN, 13);
  static final Lettering BOLD = new Lettering(Font.BOLD, 14);

  private static final FontRenderContext CONTEXT = new FontRenderContext(null, true, true);
  private static final String MORE = "...";

  private final int style;
  private final int sizePx;

  private Lettering(int style, int sizePx) {
    this.style = style;
    this.sizePx = sizePx;
  }

  /** Where a text stands to the point it is drawn at. */
  enum Align {
    LEFT,
    CENTRE,
    RIGHT
  }

  /** Returns the width of a text (pixels). */
  double width(String text) {
    return layout(text).getAdvance();
  }

  /** Returns the text, shortened until it is no wider than allowed (pixels). */
  String fitted(String text, double widthPx) {
    String clean = clean(text);
    if (width(clean) <= widthPx) {
      return clean;
    }
    int end = clean.length();
    while (end > 1 && width(clean.substring(0, end) + MORE) > widthPx) {
      end = clean.offsetByCodePoints(end, -1);
    }
    return clean.substring(0, end) + MORE;
  }

  /** Draws a text with its baseline at y. */
  void draw(Graphics2D g, String text, double x, double y, Align align, Color colour) {
    TextLayout layout = layout(text);
    double advance = layout.getAdvance();
    double left =
        switch (align) {
          case LEFT -> x;
          case CENTRE -> x - advance / 2;
          case RIGHT -> x - advance;
        };
    g.setColor(colour);
    g.fill(layout.getOutline(AffineTransform.getTranslateInstance(left, y)));
  }

  /** Draws a text centred on a height, its baseline at x, reading upwards. */
  void drawUpwards(Graphics2D g, String text, double x, double centreY, Color colour) {
    TextLayout layout = layout(text);
    AffineTransform turn = AffineTransform.getTranslateInstance(x, centreY);
    turn.rotate(-Math.PI / 2);
    turn.translate(-layout.getAdvance() / 2, 0);
    g.setColor(colour);
    g.fill(layout.getOutline(turn));
  }

  private TextLayout layout(String text) {
    String clean = clean(text);
    try {
      return new TextLayout(clean, new Font(Font.SANS_SERIF, style, sizePx), CONTEXT);
    } catch (RuntimeException | LinkageError | InternalError cause) {
      throw noFont(cause);
    }
  }

  /** Turns what a Java runtime throws without fonts into a line that a person can act on. */
  static OutputException noFont(Throwable cause) {
    OutputException fault =
        new OutputException(
            "pictures",
            "this machine has no font that Java can use ("
                + cause.getClass().getSimpleName()
                + (cause.getMessage() == null ? "" : ": " + clean(cause.getMessage()))
                + "); install fontconfig and one font, for example the packages fontconfig and"
                + " fonts-dejavu-core");
    fault.initCause(cause);
    return fault;
  }

  /** Returns the text with control characters as blanks, never empty. */
  static String clean(String text) {
    String clean = text.replaceAll("\\p{Cntrl}+", " ").strip();
    return clean.isEmpty() ? "(no name)" : clean;
  }
}

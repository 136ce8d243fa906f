package nullplane.report;

import java.awt.BasicStroke;
import nullplane.scoring.Limit;

/**
 * How lines are drawn. The style says what a line is; the colour says which stack it belongs to.
 */
enum LineStyle {
  /** A stack's curve as it will be built. */
  MAIN(2.2f),
  /** A stack's loudest level: broad, so that the limit that binds can lie on top of it. */
  BROAD(5.0f),
  /** One of two sources, where the main curve is their sum. */
  THIN(1.2f),
  /** A stack without its network. */
  BARE(1.2f, 6, 3),
  /** What is asked for, or allowed. */
  ASKED(1.8f, 0.1f, 4.5f),
  /** Excursion limit. */
  EXCURSION(1.4f, 9, 4),
  /** Heat limit. */
  HEAT(1.4f, 9, 3, 1.5f, 3),
  /** Amplifier limit. */
  AMPLIFIER(1.4f, 2.5f, 2.5f),
  /** A ring round a point. */
  RING(1.6f),
  /** Grid lines and leaders. */
  HAIR(0.7f);

  private final float widthPx;

  @SuppressWarnings("ImmutableEnumChecker") // never handed out without a copy
  private final float[] dashes;

  LineStyle(float widthPx, float... dashes) {
    this.widthPx = widthPx;
    this.dashes = dashes;
  }

  /** Returns lengths of dash, gap, dash, gap, ... (pixels); empty for a solid line. */
  float[] dashes() {
    return dashes.clone();
  }

  /** Returns the stroke of the whole line, dashes included. */
  BasicStroke stroke() {
    return dashes.length == 0
        ? piece()
        : new BasicStroke(widthPx, cap(), BasicStroke.JOIN_ROUND, 10, dashes(), 0);
  }

  /** Returns the stroke of a piece between two gaps. */
  BasicStroke piece() {
    return new BasicStroke(widthPx, cap(), BasicStroke.JOIN_ROUND);
  }

  /** Solid lines are drawn in short pieces, and dots have no length: both need round ends. */
  private int cap() {
    boolean round = this != HAIR && (dashes.length == 0 || dashes[0] < 1);
    return round ? BasicStroke.CAP_ROUND : BasicStroke.CAP_BUTT;
  }

  /** Returns the style of a limit. */
  static LineStyle of(Limit limit) {
    return switch (limit) {
      case EXCURSION -> EXCURSION;
      case HEAT -> HEAT;
      case AMPLIFIER -> AMPLIFIER;
    };
  }
}

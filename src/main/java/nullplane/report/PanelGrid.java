package nullplane.report;

/**
 * Where small multiples stand in a picture: rows of up to three, all of one size.
 *
 * @param panels number of panels, 1 or more
 * @param frameHeightPx height of each plot (pixels)
 */
record PanelGrid(int panels, int frameHeightPx) {
  static final int WIDTH_PX = 900;
  private static final int LEFT_PX = 62;
  private static final int RIGHT_PX = 22;
  private static final int GAP_PX = 40;
  private static final int TITLE_PX = 30;
  private static final int HEAD_PX = 44;
  private static final int FOOT_PX = 48;
  private static final int LEGEND_PX = 28;

  /** Returns how many panels stand side by side. */
  static int columns(int panels) {
    return panels == 4 ? 2 : Math.min(3, panels);
  }

  /** Returns the width of each plot (pixels). */
  static int frameWidthPx(int panels) {
    int columns = columns(panels);
    return (WIDTH_PX - LEFT_PX - RIGHT_PX - (columns - 1) * GAP_PX) / columns;
  }

  /**
   * Returns the decibels that are as long as one decade: 50 for a wide plot, 25 for narrow ones.
   */
  static double dbPerDecade(int panels) {
    return columns(panels) == 1 ? 50 : 25;
  }

  double left(int panel) {
    int columns = columns(panels);
    return LEFT_PX + (panel % columns) * (frameWidthPx(panels) + (double) GAP_PX);
  }

  double top(int panel) {
    int row = panel / columns(panels);
    return TITLE_PX + HEAD_PX + row * (HEAD_PX + frameHeightPx + (double) FOOT_PX);
  }

  boolean first(int panel) {
    return panel % columns(panels) == 0;
  }

  double legendTop() {
    int rows = (panels + columns(panels) - 1) / columns(panels);
    return TITLE_PX + rows * (HEAD_PX + frameHeightPx + (double) FOOT_PX) + 16;
  }

  int heightPx() {
    return (int) Math.round(legendTop()) - 16 + LEGEND_PX;
  }
}

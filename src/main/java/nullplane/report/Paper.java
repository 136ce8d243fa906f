package nullplane.report;

/** Paper that a sheet is printed on. Sources: ISO 216 (A4); ANSI/ASME Y14.1 (Letter, size A). */
public enum Paper {
  /** 210 mm x 297 mm. */
  A4("a4", 210, 297),
  /** 8.5 in x 11 in. */
  LETTER("letter", 215.9, 279.4);

  private final String word;
  private final double widthMm;
  private final double heightMm;

  Paper(String word, double widthMm, double heightMm) {
    this.word = word;
    this.widthMm = widthMm;
    this.heightMm = heightMm;
  }

  /** Returns the paper's name as it stands in a file name. */
  public String word() {
    return word;
  }

  /** Returns the width (mm). */
  public double widthMm() {
    return widthMm;
  }

  /** Returns the height (mm). */
  public double heightMm() {
    return heightMm;
  }
}

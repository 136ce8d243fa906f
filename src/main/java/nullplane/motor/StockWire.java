package nullplane.motor;

import java.util.List;
import nullplane.units.Checks;

/**
 * A round wire that is sold from stock.
 *
 * <p>Source: IEC 60317-0-1, nominal conductor diameters in the R20 and R40 steps of ISO 3 and the
 * greatest overall diameters of grades 1 and 2. The table was written down from memory and checked
 * against its own regularity only; real wire lies a few micrometres below these greatest values, so
 * a coil laid out with them fits.
 *
 * @param bareM diameter of the metal (m)
 * @param gradeOneM greatest diameter over insulation of grade 1 (m)
 * @param gradeTwoM greatest diameter over insulation of grade 2 (m)
 */
public record StockWire(double bareM, double gradeOneM, double gradeTwoM) {
  /** Diameters in micrometres: metal, grade 1, grade 2. */
  private static final int[][] TABLE_UM = {
    {100, 117, 125},
    {106, 123, 132},
    {112, 130, 139},
    {118, 136, 145},
    {125, 144, 154},
    {132, 152, 162},
    {140, 160, 171},
    {150, 171, 182},
    {160, 182, 194},
    {170, 194, 205},
    {180, 204, 217},
    {190, 216, 228},
    {200, 226, 239},
    {212, 240, 254},
    {224, 252, 266},
    {236, 267, 283},
    {250, 281, 297},
    {265, 297, 314},
    {280, 312, 329},
    {300, 334, 352},
    {315, 349, 367},
    {335, 372, 391},
    {355, 392, 411},
    {375, 414, 434},
    {400, 439, 459},
    {425, 466, 488},
    {450, 491, 513},
    {475, 519, 541},
    {500, 544, 566},
    {530, 576, 600},
    {560, 606, 630},
    {600, 649, 674}
  };

  private static final List<StockWire> ALL =
      java.util.Arrays.stream(TABLE_UM)
          .map(um -> new StockWire(um[0] / 1e6, um[1] / 1e6, um[2] / 1e6))
          .toList();

  /** Checks that the diameters are in order. */
  public StockWire {
    Checks.positive(bareM, "bare wire diameter", "m");
    if (!(gradeOneM > bareM) || !(gradeTwoM > gradeOneM)) {
      throw new IllegalArgumentException(
          "overall wire diameters are "
              + gradeOneM
              + " and "
              + gradeTwoM
              + " m; allowed: above the bare wire's, grade 1 first");
    }
  }

  /** Returns every stock wire, thinnest first. */
  public static List<StockWire> all() {
    return ALL;
  }

  /**
   * Returns the diameter over the insulation (m).
   *
   * @param insulation its grade
   */
  public double insulatedM(Insulation insulation) {
    return switch (insulation) {
      case GRADE_1 -> gradeOneM;
      case GRADE_2 -> gradeTwoM;
    };
  }
}

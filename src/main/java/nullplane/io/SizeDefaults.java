package nullplane.io;

import java.util.List;
import nullplane.driver.Mounting;
import nullplane.units.Air;
import nullplane.units.Range;

/**
 * What a spec leaves out about a woofer, by the nominal size nearest to its own (by ratio).
 *
 * <p>Provenance: common practice of woofer makers, no published source. The table holds the total
 * moving mass Mms that woofers of a size have; what the search varies is the mass without air, so
 * the air of a free disc (see {@link Mounting#FREE_AIR}) is taken off for the woofer's own
 * effective diameter. The rows for 165 mm and 530 mm continue the trend of the others. Travel is
 * one way. Inductance, which a woofer's own file may leave out, grows with the size, 0.9 mH at 300
 * mm. Gap heights are stock plates, formers the coil sizes that are tooled for a size of frame. All
 * of it can be overruled in the spec.
 */
final class SizeDefaults {
  /** Total Q the search may choose at any size (1). Common practice. */
  static final Range TOTAL_Q = new Range(0.3, 1.5);

  /** Mechanical Q (1). Common practice. */
  static final double MECHANICAL_Q = 5;

  /** Direct-current resistance (ohm): a coil for a rated 8 ohm. Common practice. */
  static final double RESISTANCE_OHM = 5.6;

  /** Thicknesses of top plates that are punched and turned from stock (m). Common practice. */
  static final List<Double> STOCK_GAPS_M =
      metres("3 4 5 6 8 10 12 14 15 16 18 20 22 25 30 35 40 45 50");

  private static final List<Row> ROWS =
      List.of(
          //      nominal  Sd cm2  fs Hz         Mms g          travel mm    mH   W    gaps, formers
          // mm
          row(0.165, 137, range(30, 80), range(12, 25), range(3, 8), 0.5, 60, "5 6 8", "25 32"),
          row(0.200, 215, range(25, 65), range(18, 35), range(3, 10), 0.6, 80, "5 6 8", "25 32 38"),
          row(0.250, 337, range(22, 55), range(25, 60), range(4, 12), 0.75, 120, "6 8 10", "38 50"),
          row(
              0.300,
              505,
              range(20, 45),
              range(40, 120),
              range(4, 14),
              0.9,
              150,
              "6 8 10",
              "38 50 65"),
          row(
              0.380,
              840,
              range(18, 42),
              range(70, 180),
              range(4, 16),
              1.2,
              250,
              "8 10 12",
              "50 65 75"),
          row(
              0.460,
              1190,
              range(16, 40),
              range(100, 300),
              range(5, 18),
              1.5,
              350,
              "8 10 12 14",
              "65 75 100"),
          row(
              0.530,
              1700,
              range(15, 38),
              range(160, 450),
              range(5, 20),
              1.8,
              450,
              "10 12 14 16",
              "75 100"));

  private final Row row;
  private final double radiusM;

  private SizeDefaults(Row row, double radiusM) {
    this.row = row;
    this.radiusM = radiusM;
  }

  /**
   * Returns the defaults of the nearest size.
   *
   * @param nominalM frame size class (m)
   * @param effectiveDiameterM diameter of the radiating piston (m)
   */
  static SizeDefaults of(double nominalM, double effectiveDiameterM) {
    Row nearest = ROWS.get(0);
    for (Row row : ROWS) {
      if (apart(row.nominalM(), nominalM) < apart(nearest.nominalM(), nominalM)) {
        nearest = row;
      }
    }
    return new SizeDefaults(nearest, effectiveDiameterM / 2);
  }

  /**
   * Returns the nominal size whose usual effective area is nearest by ratio (m).
   *
   * @param areaM2 effective area (m2)
   */
  static double nominalForArea(double areaM2) {
    Row nearest = ROWS.get(0);
    for (Row row : ROWS) {
      if (apart(row.areaCm2() * 1e-4, areaM2) < apart(nearest.areaCm2() * 1e-4, areaM2)) {
        nearest = row;
      }
    }
    return nearest.nominalM();
  }

  /** Returns the resonances in free air the search may choose (Hz). */
  Range resonanceHz() {
    return row.resonanceHz();
  }

  /** Returns the moving masses without air the search may choose (kg). */
  Range bareMassKg() {
    double airKg = Mounting.FREE_AIR.airMassKg(radiusM, Air.standard());
    Range total = row.totalMassG();
    double lower = Math.max(total.lower() / 1000 - airKg, total.lower() / 2000);
    return new Range(lower, Math.max(total.upper() / 1000 - airKg, lower));
  }

  /** Returns the one-way travels the search may choose (m). */
  Range travelM() {
    return new Range(row.travelMm().lower() / 1000, row.travelMm().upper() / 1000);
  }

  /** Returns the coil's inductance (H). */
  double inductanceH() {
    return row.inductanceMh() / 1000;
  }

  /** Returns the rated power (W). */
  double powerW() {
    return row.powerW();
  }

  /** Returns the heights of gaps that the search may choose (m). */
  List<Double> gapHeightsM() {
    return row.gapsM();
  }

  /** Returns the inside diameters of formers that the search may choose (m). */
  List<Double> formersM() {
    return row.formersM();
  }

  private static double apart(double a, double b) {
    return Math.abs(Math.log(a / b));
  }

  private static Range range(double lower, double upper) {
    return new Range(lower, upper);
  }

  private static Row row(
      double nominalM,
      double areaCm2,
      Range resonanceHz,
      Range totalMassG,
      Range travelMm,
      double inductanceMh,
      double powerW,
      String gapsMm,
      String formersMm) {
    return new Row(
        nominalM,
        areaCm2,
        resonanceHz,
        totalMassG,
        travelMm,
        inductanceMh,
        powerW,
        metres(gapsMm),
        metres(formersMm));
  }

  /** Returns millimetres, parted by blanks, in metres. */
  private static List<Double> metres(String millimetres) {
    return List.of(millimetres.split(" ", -1)).stream()
        .map(mm -> Double.parseDouble(mm) / 1000)
        .toList();
  }

  private record Row(
      double nominalM,
      double areaCm2,
      Range resonanceHz,
      Range totalMassG,
      Range travelMm,
      double inductanceMh,
      double powerW,
      List<Double> gapsM,
      List<Double> formersM) {}
}

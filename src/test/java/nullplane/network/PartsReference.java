package nullplane.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;
import static org.assertj.core.data.Offset.offset;

import nullplane.HandbookRow;
import nullplane.units.ConductorMaterial;
import nullplane.validation.Check;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Preferred values and wound coils against handbook rows in reference/handbook_checks.csv. */
@Tag("reference")
class PartsReference {
  /** IEC 60063, tables, exact. */
  @Test
  void pvDecadesAreTheTables() {
    decade("PV01", PreferredValues.E12);
    decade("PV02", PreferredValues.E24);
    decade("PV03", PreferredValues.E6);
  }

  private static void decade(String id, PreferredValues series) {
    HandbookRow row = HandbookRow.of(id);
    assertThat(series.decade()).isEqualTo(row.wholeNumbers());
    Check check = row.check("values of a decade of " + series);
    for (int i = 0; i < row.wholeNumbers().size(); i++) {
      check.add(row.wholeNumbers().get(i), series.decade().get(i));
    }
    check.exactly();
  }

  /**
   * H. B. Brooks, NBS J. Research 7 (1931) 289. The constant is found again here from Maxwell's
   * mutual inductance of two rings, integrated over the section; rules of 16 and 24 points agree to
   * 1e-5.
   */
  @Test
  void bc01Constant() {
    HandbookRow row = HandbookRow.of("BC01");
    double integrated = SquareCoilInductance.perSideAndTurnSquared(1.5, 24);
    assertThat(SquareCoilInductance.perSideAndTurnSquared(1.5, 16) / integrated)
        .isEqualTo(1, offset(1e-5));
    row.check("constant of the table against mutual inductances of rings, integrated")
        .expected(integrated, "H/m")
        .computed(row.figure("2.5491e-6"))
        .withinPercent(0.005);
    BrooksCoil coil = new BrooksCoil(0.02, 100, 1e-3, ConductorMaterial.COPPER);
    row.check("100 turns, side 20 mm, by integration and by the table")
        .in("mH")
        .add(integrated * 0.02 * 1e7, coil.inductanceH() * 1e3)
        .add(row.figure("1.6994e-6") * 0.03 * 1e7, coil.inductanceH() * 1e3)
        .withinPercent(0.005);
  }

  /** As BC01, with IEC 60028 copper. Printed to four digits; table: 0.1 %. */
  @Test
  void bc02Example() {
    HandbookRow row = HandbookRow.of("BC02");
    BrooksCoil coil =
        new BrooksCoil(
            row.figure("20") * 1e-3,
            (int) row.figure("140"),
            row.figure("1.5") * 1e-3,
            ConductorMaterial.COPPER);
    row.check("inductance")
        .expected(row.figure("0.9992"), "mH")
        .computed(coil.inductanceH() * 1e3)
        .withinPercent(0.01);
    row.check("wire length")
        .expected(row.figure("26.389"), "m")
        .computed(coil.wireLengthM())
        .withinPercent(0.005);
    row.check("resistance")
        .expected(row.figure("0.2575"), "ohm")
        .computed(coil.resistanceOhm())
        .withinPercent(0.02);
    // Brooks's form with the fill factor: R = 9.425 r N^2/(k c), 9.425 = 3 pi.
    assertThat(3 * Math.PI * 1.7241e-8 * 140 * 140 / (coil.fillFactor() * 0.02))
        .isEqualTo(coil.resistanceOhm(), offset(1e-12));
    assertThat(coil.fillFactor()).isEqualTo(0.6185, offset(1e-4));
    // 26.389 m of 1.7671 mm2 at 8890 kg/m3
    assertThat(coil.conductorKg()).isCloseTo(0.41457, withinPercentage(0.01));
  }

  /** H. A. Wheeler, Proc. IRE 16(10) (1928) 1398, another author's formula. Table: 1 %. */
  @Test
  void bc03Wheeler() {
    HandbookRow row = HandbookRow.of("BC03");
    double inch = 0.0254;
    double a = 0.030 / inch;
    double side = 0.020 / inch;
    double wheelerMillihenry = 0.8 * a * a * 140 * 140 / (6 * a + 9 * side + 10 * side) * 1e-3;
    assertThat(wheelerMillihenry).isEqualTo(row.figure("0.9921"), offset(1e-4));
    BrooksCoil coil = new BrooksCoil(0.020, 140, 1.5e-3, ConductorMaterial.COPPER);
    row.check("inductance of the Brooks coil against another author's formula")
        .expected(wheelerMillihenry, "mH")
        .computed(coil.inductanceH() * 1e3)
        .withinPercent(1);
  }
}

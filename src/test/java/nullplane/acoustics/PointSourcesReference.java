package nullplane.acoustics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import nullplane.HandbookRow;
import nullplane.units.Air;
import nullplane.units.Levels;
import nullplane.validation.Validation;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Small sources against handbook rows in reference/handbook_checks.csv. */
@Tag("reference")
class PointSourcesReference {
  private static final Air AIR = Air.standard();
  private static final double VOLUME_M3 = 500e-6;

  /** R. H. Small, J. Audio Eng. Soc. 21 (1973) 798. Printed to 0.01 dB; table: 0.02 dB. */
  @ParameterizedTest
  @CsvSource({
    "20, 94.57, 88.55, 73.79, 79.81",
    "30, 101.61, 95.59, 84.34, 90.36",
    "40, 106.61, 100.59, 91.81, 97.83",
    "60, 113.65, 107.63, 102.32, 108.34"
  })
  void dl01DisplacementLimitedLevels(
      String frequency, String half, String full, String dipole, String floor) {
    HandbookRow row = HandbookRow.of("DL01");
    double f = row.figure(frequency);
    double fullPa = PointSources.fullSpaceRmsPa(VOLUME_M3, f, 1, AIR);
    double dipolePa = fullPa * PointSources.dipoleFactor(row.figure("0.5"), 0, f, AIR);
    double floorPa = dipolePa * PointSources.floorFactor(0, 0, 1, f, AIR);
    level(row, "half space", frequency, half, PointSources.halfSpaceRmsPa(VOLUME_M3, f, 1, AIR));
    level(row, "full space", frequency, full, fullPa);
    level(row, "free dipole, D 0.5 m", frequency, dipole, dipolePa);
    level(row, "dipole on a floor", frequency, floor, floorPa);
  }

  private static void level(
      HandbookRow row, String where, String frequency, String expected, double rmsPa) {
    row.check("500 cm3 at " + frequency + " Hz, 1 m, " + where)
        .expected(row.figure(expected), "dB")
        .computed(Levels.soundPressureLevel(rmsPa))
        .within(0.006);
  }

  /** As DL01, for fixed displacement and kD well below 1. */
  @Test
  void dl02Slopes() {
    HandbookRow row = HandbookRow.of("DL02");
    double monopole =
        PointSources.fullSpaceRmsPa(VOLUME_M3, 20, 1, AIR)
            / PointSources.fullSpaceRmsPa(VOLUME_M3, 10, 1, AIR);
    double dipole =
        monopole
            * PointSources.dipoleFactor(0.1, 0, 20, AIR)
            / PointSources.dipoleFactor(0.1, 0, 10, AIR);
    row.check("rise of a monopole over an octave, fixed travel")
        .expected(row.figure("12.04"), "dB")
        .computed(Levels.ofAmplitudeRatio(monopole))
        .within(0.01);
    row.check("rise of a dipole over an octave, fixed travel")
        .expected(row.figure("18.06"), "dB")
        .computed(Levels.ofAmplitudeRatio(dipole))
        .within(0.01);
  }

  /** Lamb, Hydrodynamics; Beranek and Mellow 2012 ch. 4. Printed to four digits. */
  @Test
  void di01FreeDisc() {
    HandbookRow row = HandbookRow.of("DI01");
    double a = row.figure("0.12");
    double f = row.figure("100");
    row.check("air mass of a free disc")
        .expected(row.figure("5.549"), "g")
        .computed(PointSources.freeDiscMassKg(a, AIR) * 1e3)
        .withinPercent(0.02);
    row.check("dipole length of a free disc")
        .expected(row.figure("0.10186"), "m")
        .computed(PointSources.freeDiscDipoleLengthM(a))
        .withinPercent(0.02);
    double resistance = PointSources.freeDiscResistance(a, f, AIR);
    row.check("resistance of a free disc")
        .expected(row.figure("0.002615"), "N s/m")
        .computed(resistance)
        .withinPercent(0.03);
    // Another way to the same figure: intensity of the dipole of that length over a far sphere.
    double k = AIR.waveNumber(f);
    double pressurePerVelocity =
        AIR.densityKgPerM3()
            * (2 * Math.PI * f)
            * (Math.PI * a * a)
            / (4 * Math.PI)
            * k
            * PointSources.freeDiscDipoleLengthM(a);
    double power =
        pressurePerVelocity
            * pressurePerVelocity
            / (AIR.densityKgPerM3() * AIR.speedOfSoundMPerS())
            * (4 * Math.PI / 3);
    row.check("power of the far field over that of the resistance")
        .expected(1, "")
        .computed(power / resistance)
        .within(1e-12);
  }

  /** Point dipole. Table: 0.01 dB; frequencies printed to 0.1 Hz. */
  @Test
  void di04DipoleAgainstMonopole() {
    HandbookRow row = HandbookRow.of("DI04");
    double d = row.figure("0.5");
    double c = row.figure("343.2");
    assertThat(c / (6 * d)).isEqualTo(row.figure("114.4"), offset(1e-9));
    row.check("point dipole against one monopole at c/(6D)")
        .expected(0, "dB")
        .computed(levelOf(d, 0, 114.4))
        .within(1e-9);
    row.check("point dipole against one monopole at c/(2D)")
        .expected(row.figure("6.02"), "dB")
        .computed(levelOf(d, 0, c / (2 * d)))
        .within(0.01);
    assertThat(PointSources.dipoleFactor(d, 0, row.figure("686.4"), AIR))
        .isEqualTo(0, offset(1e-12));
    row.check("rise of a point dipole over an octave, low frequency")
        .expected(6.02, "dB")
        .computed(levelOf(d, 0, 4) - levelOf(d, 0, 2))
        .within(0.01);
  }

  /** Integral of cos^2 over the sphere. Table: 0.001 dB. */
  @Test
  void di05DipolePower() {
    HandbookRow row = HandbookRow.of("DI05");
    double d = 0.01;
    double f = 20;
    GaussIntegrator rule = new GaussIntegratorFactory().legendre(12, -1, 1);
    double mean =
        rule.integrate(cos -> Math.pow(PointSources.dipoleFactor(d, Math.acos(cos), f, AIR), 2))
            / 2;
    double onAxis = Math.pow(PointSources.dipoleFactor(d, 0, f, AIR), 2);
    row.check("power of a point dipole at equal pressure on axis")
        .expected(-row.figure("4.771"), "dB")
        .computed(Levels.ofPowerRatio(mean / onAxis))
        .within(0.001);
    row.check("point dipole 60 degrees off axis")
        .expected(-row.figure("6.02"), "dB")
        .computed(levelOf(d, Math.toRadians(60), f) - levelOf(d, 0, f))
        .within(0.001);
    assertThat(PointSources.dipoleFactor(d, Math.PI / 2, f, AIR)).isEqualTo(0, offset(1e-12));
  }

  /** Image source: full cancellation nearly where the detour is half a wave, doubling at a wave. */
  @Test
  void floorInterference() {
    double straight = 3;
    double detour = Math.hypot(3, 2) - straight;
    double halfWave = AIR.speedOfSoundMPerS() / (2 * detour);
    double share = straight / Math.hypot(3, 2);
    Validation.check(
            "floor's factor where the detour is half a wave and a whole one", "Image source.")
        .add(1 - share, PointSources.floorFactor(1, 1, 3, halfWave, AIR))
        .add(1 + share, PointSources.floorFactor(1, 1, 3, 2 * halfWave, AIR))
        .within(1e-12);
  }

  private static double levelOf(double lengthM, double angleRad, double frequencyHz) {
    return Levels.ofAmplitudeRatio(PointSources.dipoleFactor(lengthM, angleRad, frequencyHz, AIR));
  }
}

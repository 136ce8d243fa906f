package nullplane.sample;

import java.util.Optional;
import java.util.function.Function;
import nullplane.acoustics.PanelResponse;
import nullplane.driver.Woofer;
import nullplane.fit.AirLoad;
import nullplane.fit.FitInput;
import nullplane.fit.MassAnchor;
import nullplane.fit.RadiationCurve;
import nullplane.fit.SweepFit;
import nullplane.fit.WooferFit;
import nullplane.units.Air;

/**
 * Fits what was measured on a sample, in free air or on a panel. What comes out holds for free air:
 * the panel's solved air is taken off. Where other woofers of the same kind hang open on the panel,
 * they move with the air; they are taken to be like the sample itself, which two more fits settle.
 */
final class SampleFitting {
  private static final int ROUNDS_BESIDE_OPEN_WOOFERS = 2;

  private final double areaM2;
  private final Air air;
  private final PanelAir panels;

  /**
   * @param areaM2 effective area (m2)
   * @param air the air
   * @param panels the solved panels
   */
  SampleFitting(double areaM2, Air air, PanelAir panels) {
    this.areaM2 = areaM2;
    this.air = air;
    this.panels = panels;
  }

  /**
   * Fits.
   *
   * @param sample what was measured
   * @param asWoofer makes a woofer of a fit, if it determines one
   */
  SweepFit of(MeasuredSample sample, Function<SweepFit, Optional<Woofer>> asWoofer) {
    if (sample.place().isEmpty()) {
      return WooferFit.of(FitInput.inFreeAir(sample.sweep(), sample.anchor(), areaM2, air));
    }
    PanelPlace place = sample.place().orElseThrow();
    PanelResponse response = panels.of(place.stack());
    int index = place.woofer() - 1;
    SweepFit fit = under(sample, RadiationCurve.ofPanel(response, index));
    boolean alone = response.solutions().get(0).impedance().rows() == 1;
    if (alone || place.others() == PanelPlace.Others.STILL) {
      return fit;
    }
    for (int round = 0; round < ROUNDS_BESIDE_OPEN_WOOFERS; round++) {
      Optional<Woofer> found = asWoofer.apply(fit);
      if (found.isEmpty()) {
        return fit;
      }
      fit = under(sample, RadiationCurve.withOpenWoofers(response, index, found.orElseThrow()));
    }
    return fit;
  }

  private SweepFit under(MeasuredSample sample, AirLoad load) {
    MassAnchor anchor =
        sample.anchor() instanceof MassAnchor.AddedMass added
            ? new MassAnchor.AddedMass(added.sweep(), load, added.massKg(), added.standardErrorKg())
            : sample.anchor();
    return WooferFit.of(
        new FitInput(sample.sweep(), load, anchor, areaM2, 0, air, Optional.empty()));
  }
}

package nullplane.scoring;

import java.util.List;
import java.util.OptionalDouble;
import nullplane.driver.TravelCriteria;
import nullplane.units.Curve;

/**
 * What holds one woofer back in one stack, beyond the loudest level of a sine: heat, amplifier,
 * signals below the band, and a musical programme. Rises are over 20 degrees C, where the room is
 * taken to be; voltages are root mean square at the amplifier; steady state throughout.
 *
 * @param limitRiseK rise that the coil may reach in the long term (K), common practice
 * @param thermalResistanceKPerW rise per heat, so that rated power gives that rise (K/W)
 * @param cold the stack with its coils at 20 degrees C
 * @param rated the stack with its coils at rated power
 * @param load what the stack is to the amplifier
 * @param fullVoltage what a sine of the amplifier's full voltage does below the band
 * @param bandVoltage what a sine does below the band at the voltage that the band itself allows
 * @param programmes one entry per programme
 * @param travel how far the coil may travel, by computed criteria
 * @param hotLevelDb level at the target's voltage with coils at rated power, on the axis of the
 *     curves (dB re 20 uPa)
 */
public record LimitStudy(
    double limitRiseK,
    double thermalResistanceKPerW,
    HeatState cold,
    HeatState rated,
    LoadMargin load,
    SubsonicDemand fullVoltage,
    SubsonicDemand bandVoltage,
    List<ProgrammeLevel> programmes,
    TravelCriteria travel,
    Curve hotLevelDb) {
  /** Copies the list. */
  public LimitStudy {
    programmes = List.copyOf(programmes);
  }

  /**
   * A stack with its coils at one temperature; losses at constant voltage against the cold stack.
   *
   * @param heatW heat in the hottest coil (W)
   * @param riseK its rise over 20 degrees C (K)
   * @param resistanceOhm Re of a woofer then (ohm)
   * @param levelLossDb loss of a mass-controlled woofer without other resistance, 20 lg(Re/Re0)
   *     (dB)
   * @param bandLossDb mean loss of this stack over the band, coil in place (dB)
   * @param lowCornerLossDb loss of this stack at the low corner (dB)
   * @param panelElectricalQ electrical Q on this panel, with the coil's resistance (1)
   * @param panelTotalQ total Q on this panel, with the coil's resistance (1)
   */
  public record HeatState(
      double heatW,
      double riseK,
      double resistanceOhm,
      double levelLossDb,
      double bandLossDb,
      double lowCornerLossDb,
      double panelElectricalQ,
      double panelTotalQ) {
    /** Returns how far the low corner rises against the mean over the band when warm (dB). */
    public double lowCornerGrowthDb() {
      return bandLossDb - lowCornerLossDb;
    }
  }

  /**
   * A stack as a load.
   *
   * @param leastLoadOhm least impedance modulus over the solved frequencies (ohm)
   * @param lowestLoadOhm lowest load of the amplifier (ohm)
   * @param directCurrentOhm resistance at direct current, coil in place (ohm)
   * @param highestRatedOhm highest impedance the stack may be rated at (ohm). IEC 60268-5
   * @param ratedClassOhm highest usual rated impedance that is allowed (ohm); empty if none is
   * @param peakCurrentA peak current into the least load at full voltage (A)
   * @param voltageMarginDb least margin over the band of the amplifier's voltage over the one that
   *     the level asked for needs (dB); below 0 is a lack
   */
  public record LoadMargin(
      double leastLoadOhm,
      double lowestLoadOhm,
      double directCurrentOhm,
      double highestRatedOhm,
      OptionalDouble ratedClassOhm,
      double peakCurrentA,
      double voltageMarginDb) {
    /** Returns the least load over the amplifier's lowest load (1); below 1 is too low. */
    public double loadShare() {
      return leastLoadOhm / lowestLoadOhm;
    }
  }

  /**
   * What a sine of one voltage does to the cones below the band, and what a high-pass would have to
   * do about it: second order, Butterworth, ahead of the amplifier.
   *
   * @param voltageV the voltage (V)
   * @param beyondTravelBelowHz highest frequency at which a cone passes its travel (Hz); empty if
   *     none does
   * @param greatestShare greatest peak excursion from 5 Hz to the low corner, as a share of the
   *     travel (1)
   * @param greatestHz where that is (Hz)
   * @param highPassHz lowest corner that holds the cones within their travel from 5 Hz to the low
   *     corner (Hz); empty if none is needed
   * @param lowCornerLossDb what that high-pass takes at the low corner (dB)
   */
  public record SubsonicDemand(
      double voltageV,
      OptionalDouble beyondTravelBelowHz,
      double greatestShare,
      double greatestHz,
      OptionalDouble highPassHz,
      double lowCornerLossDb) {
    /** Returns whether a signal below the band can drive a cone past its travel. */
    public boolean protectionNeeded() {
      return highPassHz.isPresent();
    }
  }

  /**
   * How loud a stack plays a programme before a limit binds. The amplifier carries the whole
   * programme; the cone's peak is the crest factor times its root-mean-square excursion; heat is
   * counted in the steady state.
   *
   * @param name the programme
   * @param crestFactor its peak over its root-mean-square value (1)
   * @param amplifierVoltageV voltage at which its peaks are the amplifier's (V)
   * @param excursionVoltageV voltage at which a cone's peaks are its travel (V)
   * @param heatVoltageV voltage at which a coil settles at rated power (V)
   * @param binding the least of the three
   * @param voltageV that voltage (V)
   * @param wooferBandDb level that the stack makes of it at the listening point, up to the upper
   *     corner, coils cold (dB re 20 uPa)
   * @param warmWooferBandDb the same in the steady state (dB re 20 uPa)
   * @param wholeDb level of the whole programme, coils cold, with a main driver that keeps the
   *     stack's wanted level above the upper corner (dB re 20 uPa)
   * @param settled the stack in the steady state at that voltage
   * @param atFullVoltage the stack in the steady state at the amplifier's voltage
   * @param excursionShare peak excursion at the amplifier's voltage, as a share of the travel (1)
   * @param highPassHz lowest corner of a second-order Butterworth high-pass that brings that to 1
   *     (Hz); 0 if none is needed, empty if none up to the low corner is enough
   */
  public record ProgrammeLevel(
      String name,
      double crestFactor,
      double amplifierVoltageV,
      double excursionVoltageV,
      double heatVoltageV,
      Limit binding,
      double voltageV,
      double wooferBandDb,
      double warmWooferBandDb,
      double wholeDb,
      HeatState settled,
      HeatState atFullVoltage,
      double excursionShare,
      OptionalDouble highPassHz) {}
}

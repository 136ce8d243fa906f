package nullplane.network;

import java.util.Arrays;
import java.util.Optional;
import nullplane.faults.ModelRangeException;
import nullplane.units.Checks;
import nullplane.units.Curve;

/**
 * The main driver that takes over above the woofers, as it sounds at the listening point.
 *
 * <p>Level, phase and delay are counted as the woofers' are: pressure per volt at the amplifier, at
 * the same point, with the whole path to it in the phase. A driver r metres away has the delay r/c,
 * c the speed of sound, besides what its own filters do.
 */
public sealed interface MainDriver {
  /**
   * Returns the pressure at the listening point per volt at the amplifier (Pa/V).
   *
   * @param frequencyHz frequencies (Hz), each above 0
   * @throws ModelRangeException if a measured response does not reach a frequency
   */
  ComplexCurve pressurePerVolt(Curve frequencyHz);

  /**
   * Returns the same, ready for sums with many woofers.
   *
   * @param frequencyHz frequencies (Hz), each above 0
   */
  default MainDriverRows rows(Curve frequencyHz) {
    return new MainDriverRows(pressurePerVolt(frequencyHz));
  }

  /**
   * A driver that is flat but for its high-pass: a target as much as a model.
   *
   * @param pressurePaPerV pressure well above the high-pass (Pa/V)
   * @param highPass shape and corner of its high-pass, driver and network together
   * @param polarity which way round
   * @param delayS delay of the path to the listening point (s), 0 or more
   */
  record Modelled(
      double pressurePaPerV, Optional<CrossoverFilter> highPass, Polarity polarity, double delayS)
      implements MainDriver {
    /** Checks the figures. */
    public Modelled {
      Checks.positive(pressurePaPerV, "main driver's pressure", "Pa/V");
      Checks.notNegative(delayS, "main driver's delay", "s");
    }

    @Override
    public ComplexCurve pressurePerVolt(Curve frequencyHz) {
      double[] magnitude = new double[frequencyHz.size()];
      Arrays.fill(magnitude, pressurePaPerV);
      return heard(
          frequencyHz, magnitude, new double[frequencyHz.size()], highPass, polarity, delayS);
    }
  }

  /**
   * A measured driver. Between its points the logarithm of the level and the unwrapped phase run
   * straight over the logarithm of frequency, so that the phase may turn by less than half a turn
   * from point to point.
   *
   * @param measuredHz frequencies of the measurement (Hz), rising, two or more
   * @param pressurePaPerV modulus of the pressure (Pa/V), above 0
   * @param phaseRad phase (rad), wrapped or not
   * @param highPass a network that was not there in the measurement
   * @param polarity which way round, against the measurement
   * @param delayS delay that the phase does not hold (s), 0 or more
   */
  record Measured(
      Curve measuredHz,
      Curve pressurePaPerV,
      Curve phaseRad,
      Optional<CrossoverFilter> highPass,
      Polarity polarity,
      double delayS)
      implements MainDriver {
    /** Checks lengths and figures. */
    public Measured {
      int points = measuredHz.size();
      if (points < 2 || pressurePaPerV.size() != points || phaseRad.size() != points) {
        throw new IllegalArgumentException(
            "main driver's response has "
                + points
                + " frequencies, "
                + pressurePaPerV.size()
                + " levels, "
                + phaseRad.size()
                + " phases; allowed: equal, 2 or more");
      }
      double last = 0;
      for (int f = 0; f < points; f++) {
        if (!(measuredHz.at(f) > last) || Double.isInfinite(measuredHz.at(f))) {
          throw new IllegalArgumentException(
              "main driver's frequency is "
                  + measuredHz.at(f)
                  + " Hz after "
                  + last
                  + " Hz; allowed: rising, above 0");
        }
        last = measuredHz.at(f);
        Checks.positive(pressurePaPerV.at(f), "main driver's pressure", "Pa/V");
        Checks.finite(phaseRad.at(f), "main driver's phase", "rad");
      }
      Checks.notNegative(delayS, "main driver's delay", "s");
    }

    @Override
    public ComplexCurve pressurePerVolt(Curve frequencyHz) {
      double[] unwrapped = phaseRad.toArray();
      for (int f = 1; f < unwrapped.length; f++) {
        double turn = unwrapped[f] - unwrapped[f - 1];
        unwrapped[f] = unwrapped[f - 1] + Math.IEEEremainder(turn, 2 * Math.PI);
      }
      double[] magnitude = new double[frequencyHz.size()];
      double[] phase = new double[frequencyHz.size()];
      for (int f = 0; f < magnitude.length; f++) {
        int upper = upperNeighbour(frequencyHz.at(f));
        double share =
            Math.log(frequencyHz.at(f) / measuredHz.at(upper - 1))
                / Math.log(measuredHz.at(upper) / measuredHz.at(upper - 1));
        double below = pressurePaPerV.at(upper - 1);
        magnitude[f] = below * Math.pow(pressurePaPerV.at(upper) / below, share);
        phase[f] = unwrapped[upper - 1] + share * (unwrapped[upper] - unwrapped[upper - 1]);
      }
      return heard(frequencyHz, magnitude, phase, highPass, polarity, delayS);
    }

    private int upperNeighbour(double wantedHz) {
      double slack = 1e-9 * wantedHz;
      double first = measuredHz.at(0);
      double last = measuredHz.at(measuredHz.size() - 1);
      if (!(wantedHz >= first - slack && wantedHz <= last + slack)) {
        throw new ModelRangeException(
            "main driver's response",
            wantedHz + " Hz",
            "measured from " + first + " Hz to " + last + " Hz: measure the whole band");
      }
      int upper = 1;
      while (upper < measuredHz.size() - 1 && measuredHz.at(upper) < wantedHz) {
        upper++;
      }
      return upper;
    }
  }

  private static ComplexCurve heard(
      Curve frequencyHz,
      double[] magnitude,
      double[] phaseRad,
      Optional<CrossoverFilter> highPass,
      Polarity polarity,
      double delayS) {
    double[] re = new double[magnitude.length];
    double[] im = new double[magnitude.length];
    for (int f = 0; f < re.length; f++) {
      double angle = phaseRad[f] - 2 * Math.PI * frequencyHz.at(f) * delayS;
      re[f] = polarity.sign() * magnitude[f] * Math.cos(angle);
      im[f] = polarity.sign() * magnitude[f] * Math.sin(angle);
    }
    if (highPass.isPresent()) {
      ComplexCurve filter = highPass.get().highPass(frequencyHz);
      for (int f = 0; f < re.length; f++) {
        double old = re[f];
        re[f] = old * filter.re().at(f) - im[f] * filter.im().at(f);
        im[f] = old * filter.im().at(f) + im[f] * filter.re().at(f);
      }
    }
    return ComplexCurve.of(re, im);
  }
}

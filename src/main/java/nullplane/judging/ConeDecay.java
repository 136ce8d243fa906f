package nullplane.judging;

import nullplane.units.Checks;
import nullplane.units.Curve;

/**
 * How a cone on its panel answers a step of voltage and comes to rest: a resonator of one degree of
 * freedom with the resonance and total Q it has there.
 *
 * <p>Symbols: w0 = 2 pi f, Q total, x(t) displacement as a share of where it ends. Q above 1/2
 * rings: x = 1 - exp(-w0 t/(2Q)) [cos wd t + (w0/(2 Q wd)) sin wd t], wd = w0 sqrt(1 - 1/(4Q^2)).
 * Source: the damped oscillator of any text, for example P. M. Morse and K. U. Ingard, Theoretical
 * Acoustics (1968), ch. 2. Left out: the coil's inductance and what the panel adds above its
 * resonance; valid for the first few periods.
 *
 * @param resonanceHz resonance on the panel (Hz)
 * @param totalQ total Q there (1)
 */
public record ConeDecay(double resonanceHz, double totalQ) {
  /** Checks that both are positive. */
  public ConeDecay {
    Checks.positive(resonanceHz, "resonance", "Hz");
    Checks.positive(totalQ, "total Q", "1");
  }

  /**
   * Returns the time in which the free oscillation falls by a level (s): its envelope is exp(-w0
   * t/(2Q)). For Q of 1/2 and below, where nothing swings, that of the slower of the two decays.
   *
   * @param levelDb the fall (dB), above 0
   */
  public double timeToFallS(double levelDb) {
    return Checks.positive(levelDb, "fall", "dB") / 20 * Math.log(10) / slowestRate();
  }

  private double slowestRate() {
    double omega = 2 * Math.PI * resonanceHz;
    double half = omega / (2 * totalQ);
    double under = 1 - 1 / (4 * totalQ * totalQ);
    return under >= 0 ? half : half - omega * Math.sqrt(-under);
  }

  /**
   * Returns the displacement after a step of voltage, as a share of where it ends (1).
   *
   * @param timeS times after the step (s), 0 or more
   */
  public Curve step(Curve timeS) {
    double omega = 2 * Math.PI * resonanceHz;
    double half = omega / (2 * totalQ);
    double under = 1 - 1 / (4 * totalQ * totalQ);
    double turn = omega * Math.sqrt(Math.abs(under));
    return Curve.of(
        timeS.stream()
            .map(
                t -> {
                  if (turn * t < 1e-6) {
                    return 1 - Math.exp(-half * t) * (1 + half * t);
                  }
                  if (under > 0) {
                    return 1
                        - Math.exp(-half * t)
                            * (Math.cos(turn * t) + half / turn * Math.sin(turn * t));
                  }
                  return 1
                      - 0.5
                          * ((1 + half / turn) * Math.exp((turn - half) * t)
                              + (1 - half / turn) * Math.exp(-(turn + half) * t));
                })
            .toArray());
  }
}

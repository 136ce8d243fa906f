package nullplane.scoring;

import java.util.List;
import java.util.Optional;
import nullplane.units.Curve;

/**
 * What one woofer does in one stack, by frequency. All curves have one value per frequency.
 *
 * @param frequencyHz the solved frequencies (Hz)
 * @param levelDb level at the listening point of the woofers at the target's voltage, network in
 *     place (dB re 20 uPa)
 * @param bareLevelDb the same without the network (dB re 20 uPa)
 * @param impedanceReOhm real part of the load on the amplifier (ohm)
 * @param impedanceImOhm imaginary part (ohm)
 * @param excursionM peak excursion of the cone that moves most, at the target's voltage (m)
 * @param loudestDb loudest level at the listening point (dB re 20 uPa)
 * @param excursionLimitDb level at which a cone reaches its travel (dB re 20 uPa)
 * @param heatLimitDb level at which a coil reaches its rated heat (dB re 20 uPa)
 * @param amplifierLimitDb level at which the amplifier reaches its voltage (dB re 20 uPa)
 * @param binding the limit that binds at each frequency
 * @param sum main driver and woofers together, if that is judged
 */
public record StackCurves(
    Curve frequencyHz,
    Curve levelDb,
    Curve bareLevelDb,
    Curve impedanceReOhm,
    Curve impedanceImOhm,
    Curve excursionM,
    Curve loudestDb,
    Curve excursionLimitDb,
    Curve heatLimitDb,
    Curve amplifierLimitDb,
    List<Limit> binding,
    Optional<SumCurves> sum) {
  /** Copies the list and checks that all lengths agree. */
  public StackCurves {
    binding = List.copyOf(binding);
    int points = frequencyHz.size();
    if (binding.size() != points || levelDb.size() != points || loudestDb.size() != points) {
      throw new IllegalArgumentException("stack curves differ in length");
    }
  }
}

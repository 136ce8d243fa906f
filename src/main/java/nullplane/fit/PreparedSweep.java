package nullplane.fit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import nullplane.driver.Mounting;
import nullplane.units.Air;
import nullplane.units.Range;

/** The points of one sweep that are fitted, as arrays. */
final class PreparedSweep {
  /** Denser points than this per octave add time and hardly information. */
  private static final int MOST_PER_OCTAVE = 96;

  private final double[] hz;
  private final double[] omega;
  private final double[] lnMagnitude;
  private final double[] phase;
  private final AirLoad load;
  private final double addedMassKg;

  /** Phase is empty when it was not measured. */
  private PreparedSweep(
      double[] hz, double[] lnMagnitude, double[] phase, AirLoad load, double addedMassKg) {
    this.hz = hz;
    this.omega = Arrays.stream(hz).map(f -> 2 * Math.PI * f).toArray();
    this.lnMagnitude = lnMagnitude;
    this.phase = phase;
    this.load = load;
    this.addedMassKg = addedMassKg;
  }

  /**
   * Chooses the points of a sweep.
   *
   * @param sweep the sweep
   * @param load the air during the sweep
   * @param addedMassKg mass stuck to the cone (kg)
   * @param band frequencies to keep (Hz)
   * @param warnings told what is left out
   */
  static PreparedSweep of(
      ImpedanceSweep sweep,
      AirLoad load,
      double addedMassKg,
      Optional<Range> band,
      List<String> warnings) {
    double top =
        load instanceof RadiationCurve curve
            ? curve.highestHz() * (1 + 1e-12)
            : Double.POSITIVE_INFINITY;
    List<Integer> kept = new ArrayList<>();
    int aboveTop = 0;
    int crowded = 0;
    double step = Math.pow(2, (1 - 1e-6) / MOST_PER_OCTAVE);
    double last = 0;
    for (int i = 0; i < sweep.size(); i++) {
      double f = sweep.frequencyHz().at(i);
      if (band.isPresent() && !band.get().contains(f)) {
        continue;
      }
      if (f > top) {
        aboveTop++;
      } else if (f < last * step) {
        crowded++;
      } else {
        kept.add(i);
        last = f;
      }
    }
    if (aboveTop > 0) {
      warnings.add(
          aboveTop
              + " points above "
              + PlainHertz.of(top)
              + " are left out: the air load on the panel is not known there");
    }
    if (crowded > 0) {
      warnings.add(
          crowded
              + " points are left out where there are more than "
              + MOST_PER_OCTAVE
              + " per octave");
    }
    int[] at = kept.stream().mapToInt(Integer::intValue).toArray();
    return new PreparedSweep(
        IntStream.of(at).mapToDouble(i -> sweep.frequencyHz().at(i)).toArray(),
        IntStream.of(at).mapToDouble(i -> Math.log(sweep.magnitudeOhm().at(i))).toArray(),
        sweep
            .phaseRad()
            .map(
                p ->
                    IntStream.of(at)
                        .mapToDouble(i -> Math.IEEEremainder(p.at(i), 2 * Math.PI))
                        .toArray())
            .orElse(new double[0]),
        load,
        addedMassKg);
  }

  /** Returns the number of points. */
  int size() {
    return omega.length;
  }

  /** Returns whether the phase was measured. */
  boolean hasPhase() {
    return phase.length > 0;
  }

  /** Returns the angular frequency of a point (rad/s). */
  double omega(int point) {
    return omega[point];
  }

  /** Returns the frequency of a point (Hz). */
  double frequencyHz(int point) {
    return hz[point];
  }

  /** Returns the logarithm of the modulus over 1 ohm of a point (1). */
  double lnMagnitude(int point) {
    return lnMagnitude[point];
  }

  /** Returns the phase of a point, -pi .. pi (rad). */
  double phase(int point) {
    return phase[point];
  }

  /** Returns the sweep with the points that pass. */
  PreparedSweep keeping(IntPredicate point) {
    int[] at = IntStream.range(0, size()).filter(point).toArray();
    return new PreparedSweep(
        IntStream.of(at).mapToDouble(i -> hz[i]).toArray(),
        IntStream.of(at).mapToDouble(i -> lnMagnitude[i]).toArray(),
        hasPhase() ? IntStream.of(at).mapToDouble(i -> phase[i]).toArray() : phase,
        load,
        addedMassKg);
  }

  /** Returns about so many points of the sweep, evenly taken. */
  PreparedSweep thinned(int most) {
    int every = (size() + most - 1) / most;
    return every <= 1 ? this : keeping(i -> i % every == 0);
  }

  /**
   * Returns what the cone moves beyond its own parts and the air of a free disc, as a mechanical
   * impedance, real parts first (N s/m).
   *
   * @param areaM2 effective area (m2)
   * @param air the air
   * @param massFactor factor on the added mass (1)
   */
  double[][] extraLoad(double areaM2, Air air, double massFactor) {
    double radius = Math.sqrt(areaM2 / Math.PI);
    double mass = addedMassKg * massFactor - Mounting.FREE_AIR.airMassKg(radius, air);
    double[][] extra;
    if (load instanceof RadiationCurve curve) {
      extra = curve.at(omega);
    } else {
      extra = new double[2][omega.length];
      mass += ((AirLoad.OfMounting) load).mounting().airMassKg(radius, air);
    }
    for (int i = 0; i < omega.length; i++) {
      extra[1][i] += omega[i] * mass;
    }
    return extra;
  }

  /** Returns whether the air is other than that of a free disc. */
  boolean isLoadedOtherwise() {
    return !load.equals(AirLoad.freeAir());
  }

  /** Returns the moduli's logarithms with every value replaced by the median around it. */
  double[] smoothed() {
    int reach = size() >= 60 ? 2 : size() >= 20 ? 1 : 0;
    double[] out = new double[size()];
    for (int i = 0; i < size(); i++) {
      int r = Math.min(reach, Math.min(i, size() - 1 - i));
      double[] around = Arrays.copyOfRange(lnMagnitude, i - r, i + r + 1);
      Arrays.sort(around);
      out[i] = around[r];
    }
    return out;
  }
}

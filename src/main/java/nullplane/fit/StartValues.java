package nullplane.fit;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Where the search for a woofer's parameters starts: the three-point method on each likely
 * resonance peak, and the inductance from what is left at high frequencies.
 */
final class StartValues {
  private static final int MOST_PEAKS = 3;

  /** A rise of less than this over both sides is no peak (natural logarithm of a ratio). */
  private static final double LEAST_RISE = 0.05;

  /** No woofer's resonance lies above 200 Hz; common practice, without source (rad/s). */
  private static final double HIGHEST_RESONANCE = 2 * Math.PI * 200;

  private final double lnResistance;
  private final PreparedSweep sweep;
  private final double[] smooth;

  /** A peak of the modulus. */
  private record Peak(int index, double rise) {}

  private StartValues(PreparedSweep sweep) {
    this.sweep = sweep;
    this.smooth = sweep.smoothed();
    double least = smooth[0];
    for (double value : smooth) {
      least = Math.min(least, value);
    }
    this.lnResistance = least - 0.03; // the coil's reactance has raised the dip a little
  }

  /**
   * Returns the starts for a circuit; at least one.
   *
   * @param circuit the circuit
   * @param addedMassKg the mass on the cone in the second sweep (kg); of no account without one
   */
  static List<double[]> of(Circuit circuit, double addedMassKg) {
    StartValues first = new StartValues(circuit.sweeps().get(0));
    List<double[]> motions = first.motions();
    List<double[]> starts = new ArrayList<>();
    for (double[] motion : motions) {
      for (double[] coil : first.coils(circuit.coil(), circuit.reference())) {
        double[] theta = new double[circuit.parameters()];
        System.arraycopy(motion, 0, theta, 0, Circuit.COIL);
        System.arraycopy(coil, 0, theta, Circuit.COIL, coil.length);
        if (circuit.sweeps().size() > 1) {
          StartValues second = new StartValues(circuit.sweeps().get(1));
          theta[theta.length - 1] = second.lnResistance;
          double lowered = Math.exp(second.motions().get(0)[Circuit.LN_W0]);
          double resonance = Math.exp(motion[Circuit.LN_W0]);
          theta[circuit.massAt()] =
              resonance > 1.02 * lowered
                  ? Math.log(ThreePoint.movingMassKg(addedMassKg, resonance, lowered))
                  : Math.log(3 * addedMassKg);
        }
        starts.add(theta);
      }
    }
    return starts;
  }

  /** Returns ln Re, ln w0, ln Qms, ln Qes for each likely peak, the likeliest first. */
  private List<double[]> motions() {
    List<Peak> peaks = new ArrayList<>();
    for (int i = 1; i < smooth.length - 1; i++) {
      if (smooth[i] >= smooth[i - 1] && smooth[i] > smooth[i + 1]) {
        double rise = smooth[i] - Math.max(lowest(i, -1), lowest(i, 1));
        if (rise > LEAST_RISE) {
          peaks.add(new Peak(i, rise));
        }
      }
    }
    peaks.sort(Comparator.comparingDouble(Peak::rise).reversed());
    List<double[]> motions = new ArrayList<>();
    for (Peak peak : peaks.subList(0, Math.min(MOST_PEAKS, peaks.size()))) {
      motions.add(motion(peak.index()));
    }
    if (motions.isEmpty()) {
      // no peak inside: perhaps beside an end; the result will tell
      motions.add(beside(0.8 * sweep.omega(0)));
      double last = sweep.omega(sweep.size() - 1);
      if (last < HIGHEST_RESONANCE) {
        motions.add(beside(last / 0.8));
      }
    }
    return motions;
  }

  private double[] beside(double omega) {
    return new double[] {lnResistance, Math.log(omega), Math.log(3), 0};
  }

  /** Returns the least value between a peak and the next higher point, or the end. */
  private double lowest(int peak, int direction) {
    double least = smooth[peak];
    for (int i = peak + direction;
        i >= 0 && i < smooth.length && smooth[i] <= smooth[peak];
        i += direction) {
      least = Math.min(least, smooth[i]);
    }
    return least;
  }

  private double[] motion(int peak) {
    double resistance = Math.exp(lnResistance);
    double top = Math.exp(smooth[peak]);
    double level = Math.log(ThreePoint.readingLevelOhm(resistance, top));
    double centre = sweep.omega(peak);
    double lower = crossing(peak, -1, level);
    double upper = crossing(peak, 1, level);
    if (lower <= 0 && upper <= 0) {
      lower = centre / 1.5;
    }
    if (lower <= 0) {
      lower = centre * centre / upper; // f1 f2 = fs^2
    } else if (upper <= 0) {
      upper = centre * centre / lower;
    }
    ThreePoint three = ThreePoint.of(resistance, top, centre, lower, upper);
    return new double[] {
      lnResistance, Math.log(centre), Math.log(three.mechanicalQ()), Math.log(three.electricalQ())
    };
  }

  /** Returns where the modulus falls below a level beside a peak (rad/s); 0 if it does not. */
  private double crossing(int peak, int direction, double level) {
    for (int i = peak + direction; i >= 0 && i < smooth.length; i += direction) {
      if (smooth[i] < level) {
        double inner = smooth[i - direction];
        double share = (inner - level) / (inner - smooth[i]);
        double from = Math.log(sweep.omega(i - direction));
        return Math.exp(from + share * (Math.log(sweep.omega(i)) - from));
      }
    }
    return 0;
  }

  /** Returns starts for the coil's own parameters. */
  private List<double[]> coils(CoilForm form, double reference) {
    int last = smooth.length - 1;
    int middle = (3 * last + 1) / 4;
    double high = inductance(last);
    double mid = Math.max(inductance(middle), 1.05 * high);
    return switch (form) {
      case PLAIN -> List.of(new double[] {Math.log(high)});
      case SEMI -> {
        double ratio = sweep.omega(last) / Math.max(sweep.omega(middle), 1);
        double slope = ratio > 1.2 ? 1 + Math.log(high / mid) / Math.log(ratio) : 0.7;
        double n = Math.max(0.5, Math.min(0.95, slope));
        double modulus = sweep.omega(last) * high * Math.pow(reference / sweep.omega(last), n);
        yield List.of(new double[] {Math.log(modulus), n});
      }
      case LOSSY -> {
        List<double[]> starts = new ArrayList<>();
        for (double share : new double[] {0.15, 0.4, 1.0}) {
          double corner = share * sweep.omega(last);
          double second = Math.max(mid - high, 0.5 * high);
          starts.add(
              new double[] {Math.log(0.7 * high), Math.log(second), Math.log(corner * second)});
        }
        yield starts;
      }
    };
  }

  /** Returns the inductance that explains the reactance of a point (H), above 0. */
  private double inductance(int point) {
    double modulus = Math.exp(smooth[point]);
    double resistance = Math.exp(lnResistance);
    double reactance =
        sweep.hasPhase()
            ? modulus * Math.sin(sweep.phase(point))
            : Math.sqrt(Math.max(0, modulus * modulus - resistance * resistance));
    return Math.max(reactance, 0.02 * resistance) / sweep.omega(point);
  }
}

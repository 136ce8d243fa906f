package nullplane.network;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import nullplane.units.Curve;
import nullplane.units.Range;

/**
 * The filters of a {@link NetworkOffer.Active} on one frequency axis: every low-pass of a list with
 * every correction of a list, both with "none"; the lists walk the limits by ratio. The gain is
 * free. Immutable.
 */
public final class ActiveOfferRows implements OfferRows {
  private static final int CORNERS = 13;
  private static final int CORRECTION_CORNERS = 9;
  private static final int QUALITIES = 3;
  private static final int GAINS = 7;

  private final Range gain;
  private final List<Optional<CrossoverFilter>> lowPasses = new ArrayList<>();
  private final List<Optional<Correction>> corrections = new ArrayList<>();
  private final double[][] re;
  private final double[][] im;
  private final double[][] squared;

  ActiveOfferRows(ActiveLimits limits, Curve frequencyHz) {
    gain = limits.gain();
    lowPasses.add(Optional.empty());
    for (FilterAlignment alignment : limits.alignments()) {
      for (double corner : steps(limits.cornerHz(), CORNERS)) {
        lowPasses.add(Optional.of(new CrossoverFilter(alignment, corner)));
      }
    }
    corrections.add(Optional.empty());
    for (double hz : steps(limits.correctionHz(), CORRECTION_CORNERS)) {
      for (double bend : steps(limits.correctionGain(), GAINS)) {
        if (Math.abs(Math.log(bend)) > 1e-3) {
          corrections.add(Optional.of(new Correction.Shelf(hz, bend)));
          for (double q : steps(limits.correctionQ(), QUALITIES)) {
            corrections.add(Optional.of(new Correction.Peaking(hz, q, bend)));
          }
        }
      }
    }
    int count = lowPasses.size() * corrections.size();
    re = new double[count][];
    im = new double[count][];
    squared = new double[count][];
    for (int i = 0; i < count; i++) {
      ComplexCurve response = network(i, 1).response(frequencyHz);
      re[i] = response.re().toArray();
      im[i] = response.im().toArray();
      squared[i] = new double[re[i].length];
      for (int f = 0; f < re[i].length; f++) {
        squared[i][f] = re[i][f] * re[i][f] + im[i][f] * im[i][f];
      }
    }
  }

  private static double[] steps(Range range, int count) {
    return range.isPinned()
        ? new double[] {range.lower()}
        : Curve.logSpaced(range.lower(), range.upper(), count).toArray();
  }

  @Override
  public int count() {
    return re.length;
  }

  @Override
  public int genes() {
    return 2;
  }

  @Override
  public int choices(int gene) {
    return gene == 0 ? lowPasses.size() : corrections.size();
  }

  @Override
  public int at(double[] shares, int from) {
    return index(shares[from], lowPasses.size()) * corrections.size()
        + index(shares[from + 1], corrections.size());
  }

  private static int index(double share, int count) {
    return Math.min(count - 1, (int) (share * count));
  }

  @Override
  public ActiveBranch network(int network, double chosenGain) {
    return new ActiveBranch(
        chosenGain,
        lowPasses.get(network / corrections.size()),
        corrections.get(network % corrections.size()));
  }

  @Override
  public Range gain() {
    return gain;
  }

  @Override
  public boolean amplifierBehind() {
    return true;
  }

  @Override
  public int parts(int network) {
    return Math.min(1, network / corrections.size()) + Math.min(1, network % corrections.size());
  }

  @Override
  public double copperKg(int network) {
    return 0;
  }

  @Override
  public double capacitanceF(int network) {
    return 0;
  }

  @Override
  public int group(int network) {
    return 0;
  }

  @Override
  public LoadRows load(int network, LoadRows stack, LoadRows scratch) {
    return stack;
  }

  @Override
  public void transferSquared(int network, LoadRows load, int from, int to, double[] out) {
    System.arraycopy(squared[network], from, out, from, to - from + 1);
  }

  @Override
  public double transferSquaredAt(int network, LoadRows load, int f) {
    return squared[network][f];
  }

  @Override
  public void transfer(
      int network, LoadRows load, int from, int to, double[] outRe, double[] outIm) {
    System.arraycopy(re[network], from, outRe, from, to - from + 1);
    System.arraycopy(im[network], from, outIm, from, to - from + 1);
  }

  @Override
  public double leastInputSquared(int network, LoadRows load) {
    double most = 0;
    for (int f = 0; f < load.size(); f++) {
      most = Math.max(most, load.squaredModulus(f));
    }
    return 1 / most;
  }
}

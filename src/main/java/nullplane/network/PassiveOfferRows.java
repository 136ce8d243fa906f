package nullplane.network;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import nullplane.units.Curve;
import nullplane.units.Range;

/**
 * The networks of a {@link NetworkOffer.Passive} on one frequency axis: every canonical choice of
 * the catalogue with no more parts than allowed, none first, choices with the same parts across the
 * stack one after the other. Immutable.
 */
public final class PassiveOfferRows implements OfferRows {
  private static final Range NO_GAIN = Range.pinned(1);
  private static final CatalogueAxis[] AXES = CatalogueAxis.values();

  /** Share of a gene's range that means "none", so that few parts are as likely as many (1). */
  private static final double NONE_SHARE = 0.4;

  private static final List<CatalogueAxis> LEFT_OUT_FIRST =
      List.of(
          CatalogueAxis.DAMPING,
          CatalogueAxis.ZOBEL,
          CatalogueAxis.RESISTOR,
          CatalogueAxis.RESONANCE,
          CatalogueAxis.CAPACITOR,
          CatalogueAxis.COIL);

  private final NetworkCatalogue catalogue;
  private final CatalogueRows rows;
  private final int mostParts;
  private final int[] options;
  private final NetworkChoice[] choices;
  private final int[] groups;
  private final int[] parts;
  private final double[] copperKg;
  private final double[] capacitanceF;
  private final SeriesRows[] series;
  private final int[] numberOf;
  private final int[] freeAxes;

  PassiveOfferRows(NetworkOffer.Passive offer, Curve frequencyHz) {
    catalogue = offer.catalogue();
    rows = new CatalogueRows(catalogue, frequencyHz);
    mostParts = offer.mostParts();
    options = Arrays.stream(AXES).mapToInt(catalogue::options).toArray();
    List<NetworkChoice> allowed = new ArrayList<>();
    allowed.add(NetworkChoice.NONE);
    catalogue
        .choices()
        .filter(c -> !c.equals(NetworkChoice.NONE) && rows.partCount(c) <= mostParts)
        .forEach(allowed::add);
    allowed.subList(1, allowed.size()).sort((a, b) -> Integer.compare(shunt(a), shunt(b)));
    if (allowed.size() > NetworkOffer.Passive.MOST_NETWORKS) {
      throw new IllegalArgumentException(
          allowed.size()
              + " networks; allowed: "
              + NetworkOffer.Passive.MOST_NETWORKS
              + " at most");
    }
    choices = allowed.toArray(new NetworkChoice[0]);
    groups = allowed.stream().mapToInt(this::shunt).toArray();
    parts = allowed.stream().mapToInt(rows::partCount).toArray();
    copperKg = allowed.stream().mapToDouble(rows::copperKg).toArray();
    capacitanceF = allowed.stream().mapToDouble(rows::capacitanceF).toArray();
    series =
        allowed.stream().map(c -> rows.series(c.resistor(), c.coil())).toArray(SeriesRows[]::new);
    numberOf = new int[Arrays.stream(options).reduce(1, Math::multiplyExact)];
    Arrays.fill(numberOf, -1);
    for (int i = 0; i < choices.length; i++) {
      numberOf[place(choices[i])] = i;
    }
    freeAxes = IntStream.range(0, AXES.length).filter(a -> options[a] > 1).toArray();
  }

  private int shunt(NetworkChoice c) {
    int group = c.resonance();
    group = group * catalogue.options(CatalogueAxis.ZOBEL) + c.zobel();
    group = group * catalogue.options(CatalogueAxis.CAPACITOR) + c.capacitor();
    return group * catalogue.options(CatalogueAxis.DAMPING) + c.damping();
  }

  private int place(NetworkChoice c) {
    int place = 0;
    for (int a = 0; a < AXES.length; a++) {
      place = place * options[a] + c.on(AXES[a]);
    }
    return place;
  }

  @Override
  public int count() {
    return choices.length;
  }

  @Override
  public int genes() {
    return freeAxes.length;
  }

  @Override
  public int at(double[] shares, int from) {
    NetworkChoice choice = NetworkChoice.NONE;
    for (int g = 0; g < freeAxes.length; g++) {
      choice = choice.with(AXES[freeAxes[g]], index(shares[from + g], options[freeAxes[g]]));
    }
    return number(choice);
  }

  /** How many values of a gene mean "none", besides one for each part. */
  private static int nones(int options) {
    return Math.max(1, (int) Math.round(NONE_SHARE / (1 - NONE_SHARE) * (options - 1)));
  }

  @Override
  public int choices(int gene) {
    int count = options[freeAxes[gene]];
    return nones(count) + count - 1;
  }

  private static int index(double share, int count) {
    int nones = nones(count);
    int values = nones + count - 1;
    return Math.max(0, Math.min(values - 1, (int) (share * values)) - nones + 1);
  }

  /** Leaves out, from the least important on, what is too much, and what does nothing then. */
  private int number(NetworkChoice wanted) {
    NetworkChoice choice = catalogue.canonical(wanted);
    for (CatalogueAxis axis : LEFT_OUT_FIRST) {
      if (rows.partCount(choice) <= mostParts) {
        break;
      }
      choice = catalogue.canonical(choice.with(axis, 0));
    }
    return numberOf[place(choice)];
  }

  /** Returns the choice of a network. */
  public NetworkChoice choice(int network) {
    return choices[network];
  }

  @Override
  public LowPassBranch network(int network, double gain) {
    return catalogue.branch(choices[network]);
  }

  @Override
  public Range gain() {
    return NO_GAIN;
  }

  @Override
  public boolean amplifierBehind() {
    return false;
  }

  @Override
  public int parts(int network) {
    return parts[network];
  }

  @Override
  public double copperKg(int network) {
    return copperKg[network];
  }

  @Override
  public double capacitanceF(int network) {
    return capacitanceF[network];
  }

  @Override
  public int group(int network) {
    return groups[network];
  }

  @Override
  public LoadRows load(int network, LoadRows stack, LoadRows scratch) {
    return rows.shunted(stack, choices[network], scratch);
  }

  @Override
  public void transferSquared(int network, LoadRows load, int from, int to, double[] out) {
    series[network].transferSquared(load, from, to, out);
  }

  @Override
  public double transferSquaredAt(int network, LoadRows load, int f) {
    return series[network].transferSquaredAt(load, f);
  }

  @Override
  public void transfer(int network, LoadRows load, int from, int to, double[] re, double[] im) {
    series[network].transfer(load, from, to, re, im);
  }

  @Override
  public double leastInputSquared(int network, LoadRows load) {
    return series[network].leastInputSquared(load);
  }
}

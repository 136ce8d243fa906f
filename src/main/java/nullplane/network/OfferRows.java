package nullplane.network;

import nullplane.units.Range;

/**
 * The networks of a {@link NetworkOffer} prepared for one frequency axis, to try them on many
 * stacks without allocating. Networks are numbered from 0, which is none; those that follow each
 * other with the same group share the load behind what they have in series. Immutable.
 */
public sealed interface OfferRows permits PassiveOfferRows, ActiveOfferRows {
  /** Returns the number of networks. */
  int count();

  /** Returns the number of genes that name a network, each a share from 0 to 1. */
  int genes();

  /**
   * Returns how many values a gene has: value i of n is the share from i/n up to (i + 1)/n.
   *
   * @param gene which of {@link #genes}
   */
  int choices(int gene);

  /**
   * Returns the number of the network that genes name. Every string of genes names one: parts that
   * do nothing and parts beyond the limit are left out.
   *
   * @param shares genes, 0 to 1
   * @param from index of the first that counts
   */
  int at(double[] shares, int from);

  /**
   * Returns a network.
   *
   * @param network its number
   * @param gain gain (1), within {@link #gain}; only an active network has one
   */
  StackNetwork network(int network, double gain);

  /** Returns the gain a network may have (1); pinned at 1 for passive ones. */
  Range gain();

  /** Returns whether the amplifier's voltage limit holds behind the network, at the stack. */
  boolean amplifierBehind();

  /** Returns the number of parts, or of filters. */
  int parts(int network);

  /** Returns the copper of its coils (kg). */
  double copperKg(int network);

  /** Returns the capacitance of its capacitors (F). */
  double capacitanceF(int network);

  /** Returns the group of networks that share a load. */
  int group(int network);

  /**
   * Returns the stack with what a group has across it: the stack's own rows, or the scratch rows.
   *
   * @param network any network of the group
   * @param stack admittance of the stack
   * @param scratch work space; overwritten if needed
   */
  LoadRows load(int network, LoadRows stack, LoadRows scratch);

  /**
   * Writes the squared modulus of stack voltage over input voltage at gain 1 (1).
   *
   * @param network its number
   * @param load what {@link #load} returned for its group
   * @param from first frequency, counted from 0
   * @param to last frequency
   * @param out receives the row
   */
  void transferSquared(int network, LoadRows load, int from, int to, double[] out);

  /**
   * Returns the squared modulus of stack voltage over input voltage at gain 1 at one frequency (1),
   * the same bits as {@link #transferSquared} writes.
   *
   * @param network its number
   * @param load what {@link #load} returned for its group
   * @param f the frequency, counted from 0
   */
  double transferSquaredAt(int network, LoadRows load, int f);

  /**
   * Writes stack voltage over input voltage at gain 1 (1).
   *
   * @param network its number
   * @param load what {@link #load} returned for its group
   * @param from first frequency, counted from 0
   * @param to last frequency
   * @param re receives the real parts
   * @param im receives the imaginary parts
   */
  void transfer(int network, LoadRows load, int from, int to, double[] re, double[] im);

  /**
   * Returns the least squared modulus of the impedance that the amplifier feels, over the whole
   * axis (ohm^2).
   *
   * @param network its number
   * @param load what {@link #load} returned for its group
   */
  double leastInputSquared(int network, LoadRows load);
}

package nullplane.scoring;

/**
 * A wiring and a network for one woofer in one stack, with the figures that a grade is made of.
 * Work space of one thread.
 */
final class StackChoice {
  /** Index of the wiring. */
  int wiring;

  /** Number of the network. */
  int network;

  /** Gain of an active network (dB). */
  double gainDb;

  /** Distance to what is allowed (1). */
  double violation;

  /** What it costs (dB). */
  double cost;

  /** Root-mean-square deviation over the band (dB). */
  double rmsDeviation;

  /** Largest distance outside the corridor (dB). */
  double worstExcess;

  /** Least margin of the loudest level (dB); below 0 is a lack. */
  double outputMargin;

  /** Spread of what the network takes away (dB). */
  double bend;

  /** Mean level that the network takes away (dB). */
  double loss;

  /** Least load (ohm). */
  double leastLoad;

  /** Greatest excursion over the travel (1). */
  double travelShare;

  /** Parts of the network. */
  int parts;

  /** Copper of the network (kg). */
  double copperKg;

  /** Capacitance of the network (F). */
  double capacitanceF;

  void copy(StackChoice other) {
    wiring = other.wiring;
    network = other.network;
    gainDb = other.gainDb;
    violation = other.violation;
    cost = other.cost;
    rmsDeviation = other.rmsDeviation;
    worstExcess = other.worstExcess;
    outputMargin = other.outputMargin;
    bend = other.bend;
    loss = other.loss;
    leastLoad = other.leastLoad;
    travelShare = other.travelShare;
    parts = other.parts;
    copperKg = other.copperKg;
    capacitanceF = other.capacitanceF;
  }

  /**
   * Less violation, then less cost, then the earlier wiring and network: never a matter of order.
   */
  boolean betterThan(StackChoice other) {
    if (violation != other.violation) {
      return violation < other.violation;
    }
    if (cost != other.cost) {
      return cost < other.cost;
    }
    return wiring != other.wiring ? wiring < other.wiring : network < other.network;
  }

  /** Returns the level that lacks at the loudest (dB), 0 or more. */
  double outputLack() {
    return Math.max(0, -outputMargin);
  }

  /** Returns the decibels of correction: what the network bends, and what it takes. */
  double correctionDb() {
    return bend + Math.max(0, loss);
  }
}

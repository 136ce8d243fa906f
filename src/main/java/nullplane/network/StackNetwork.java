package nullplane.network;

import java.util.List;
import nullplane.units.Curve;

/** What stands between the amplifier's input and a stack: passive parts, or an active filter. */
public sealed interface StackNetwork permits LowPassBranch, ActiveBranch {
  /** Returns whether there is nothing: the stack sits straight on the amplifier. */
  boolean none();

  /** Returns the passive parts, from the amplifier to the stack; empty for an active filter. */
  List<PlacedPart> parts();

  /** Returns the number of passive parts, or of filters besides a gain. */
  int partCount();

  /** Returns the copper of all coils (kg). */
  double copperKg();

  /** Returns the capacitance of all capacitors (F). */
  double capacitanceF();

  /** Returns the coil in series with the stack; {@link SeriesCoil#NONE} if there is none. */
  SeriesCoil seriesCoil();

  /** Returns the resistance in series with the stack, coils included (ohm); 0 for a filter. */
  double seriesResistanceOhm();

  /**
   * Returns the network prepared for a frequency axis, for many loads.
   *
   * @param frequencyHz frequencies (Hz), each above 0
   */
  NetworkRows rows(Curve frequencyHz);
}

package nullplane.network;

/**
 * A {@link StackNetwork} prepared for one frequency axis. Immutable; nothing is allocated in a
 * call. All rows are as long as the axis.
 *
 * <p>A passive network stands behind the amplifier: the amplifier gives the voltage before it and
 * feels its input impedance. An active one stands before: the amplifier gives the voltage behind it
 * and feels the stack itself.
 */
public sealed interface NetworkRows permits BranchRows, ActiveRows {
  /** Returns whether the amplifier's voltage limit holds behind the network, at the stack. */
  boolean amplifierBehind();

  /**
   * Writes the squared modulus of stack voltage over input voltage (1).
   *
   * @param stack admittance of the stack
   * @param scratch work space; overwritten, never the stack's rows
   * @param out receives the row
   */
  void transferSquared(LoadRows stack, LoadRows scratch, double[] out);

  /**
   * Writes stack voltage over input voltage (1).
   *
   * @param stack admittance of the stack
   * @param scratch work space; overwritten, never the stack's rows
   * @param re receives the real parts
   * @param im receives the imaginary parts
   */
  void transfer(LoadRows stack, LoadRows scratch, double[] re, double[] im);

  /**
   * Writes the impedance that the amplifier feels (ohm).
   *
   * @param stack admittance of the stack
   * @param scratch work space; overwritten, never the stack's rows
   * @param re receives the real parts (ohm)
   * @param im receives the imaginary parts (ohm)
   */
  void inputImpedance(LoadRows stack, LoadRows scratch, double[] re, double[] im);

  /**
   * Writes the squared modulus of stack voltage over input voltage (1), and returns the least
   * squared modulus of the impedance that the amplifier feels (ohm^2): what a score needs.
   *
   * @param stack admittance of the stack
   * @param scratch work space; overwritten, never the stack's rows
   * @param out receives the row
   */
  double pass(LoadRows stack, LoadRows scratch, double[] out);
}

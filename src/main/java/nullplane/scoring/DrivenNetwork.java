package nullplane.scoring;

import nullplane.network.ComplexCurve;
import nullplane.network.LoadRows;
import nullplane.network.NetworkRows;
import nullplane.network.StackNetwork;
import nullplane.units.Curve;

/**
 * A network on a stack's impedance, by frequency.
 *
 * @param transfer stack voltage over input voltage (1)
 * @param input impedance that the amplifier feels (ohm)
 * @param amplifierBehind whether the amplifier's voltage limit holds at the stack
 */
record DrivenNetwork(ComplexCurve transfer, ComplexCurve input, boolean amplifierBehind) {

  /**
   * @param network the network
   * @param frequencyHz frequencies (Hz)
   * @param loadRe stack's impedance, real parts (ohm)
   * @param loadIm imaginary parts (ohm)
   */
  static DrivenNetwork of(
      StackNetwork network, Curve frequencyHz, double[] loadRe, double[] loadIm) {
    int points = frequencyHz.size();
    LoadRows load = new LoadRows(points);
    load.setImpedance(loadRe, loadIm);
    LoadRows scratch = new LoadRows(points);
    NetworkRows rows = network.rows(frequencyHz);
    double[] re = new double[points];
    double[] im = new double[points];
    rows.transfer(load, scratch, re, im);
    ComplexCurve transfer = ComplexCurve.of(re, im);
    rows.inputImpedance(load, scratch, re, im);
    return new DrivenNetwork(transfer, ComplexCurve.of(re, im), rows.amplifierBehind());
  }

  /** Returns the squared modulus of stack voltage over input voltage (1). */
  double passed(int f) {
    double re = transfer.re().at(f);
    double im = transfer.im().at(f);
    return re * re + im * im;
  }
}

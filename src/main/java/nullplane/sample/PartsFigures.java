package nullplane.sample;

import nullplane.network.StackNetwork;
import nullplane.scoring.Wiring;

/**
 * What one woofer does in one stack with given parts. "Band" is the target's, low corner to upper
 * corner; deviations are level minus wanted level at the target's voltage.
 *
 * @param stack the stack
 * @param wiring how the woofers are wired
 * @param network the network
 * @param rmsDeviationDb root-mean-square deviation over the band, log-frequency weighted (dB)
 * @param meanDeviationDb mean deviation over the band (dB); above 0 is too loud
 * @param worstExcessDb largest distance outside the corridor (dB); 0 if inside everywhere
 * @param outputMarginDb least margin of the loudest level over the level asked for (dB)
 * @param correctionDb spread over the band of what the bare stack needs to become flat (dB)
 * @param leastLoadOhm least modulus of the load (ohm)
 */
public record PartsFigures(
    String stack,
    Wiring wiring,
    StackNetwork network,
    double rmsDeviationDb,
    double meanDeviationDb,
    double worstExcessDb,
    double outputMarginDb,
    double correctionDb,
    double leastLoadOhm) {}

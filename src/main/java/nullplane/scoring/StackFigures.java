package nullplane.scoring;

/**
 * What one woofer does in one stack, as single numbers. "Band" is the target's, low corner to upper
 * corner; deviations are level minus wanted level at the target's voltage.
 *
 * @param rmsDeviationDb root-mean-square deviation over the band, log-frequency weighted (dB)
 * @param meanDeviationDb mean deviation over the band (dB); above 0 is too loud
 * @param worstExcessDb largest distance outside the corridor (dB); 0 if inside everywhere
 * @param worstExcessHz where that is (Hz)
 * @param outputMarginDb least margin of the loudest level over the level asked for (dB); below 0 is
 *     a lack
 * @param outputMarginHz where that is (Hz)
 * @param outputLimit what binds there
 * @param leastLoadOhm least impedance modulus over all solved frequencies (ohm)
 * @param leastLoadHz where that is (Hz)
 * @param correctionDb what the bare stack needs: spread over the band between the most and the
 *     least that its response without a coil must be moved to become flat (dB)
 * @param lowCornerLiftDb level that the bare stack lacks at the low corner against its own mean
 *     over the band (dB); below 0 is too much
 * @param networkBendDb spread over the band of what the coil takes away (dB)
 * @param levelLossDb mean level over the band that the coil takes away (dB)
 * @param travelShare greatest cone excursion over the band at the target's voltage, as a share of
 *     the travel (1)
 * @param panelResonanceHz resonance of the woofer on this panel, air load solved (Hz)
 * @param panelTotalQ total Q there, with the coil's resistance (1)
 */
public record StackFigures(
    double rmsDeviationDb,
    double meanDeviationDb,
    double worstExcessDb,
    double worstExcessHz,
    double outputMarginDb,
    double outputMarginHz,
    Limit outputLimit,
    double leastLoadOhm,
    double leastLoadHz,
    double correctionDb,
    double lowCornerLiftDb,
    double networkBendDb,
    double levelLossDb,
    double travelShare,
    double panelResonanceHz,
    double panelTotalQ) {}

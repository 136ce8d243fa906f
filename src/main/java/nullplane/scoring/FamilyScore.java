package nullplane.scoring;

/**
 * What one woofer with one network per stack is worth on a whole spec: each objective on its own,
 * the worst stack counted, and the grade that the priorities make of them.
 *
 * @param grade violation, and the cost by the spec's priorities
 * @param shapeDb root-mean-square deviation and largest distance outside the corridor, weighted as
 *     the priorities weigh them (dB), worst stack
 * @param outputMarginDb least margin of the loudest level (dB), worst stack; below 0 is a lack
 * @param correctionDb what the network bends, takes and how many parts it has, weighted as the
 *     priorities weigh them (dB), worst stack
 * @param materialDb copper, capacitors, coil wire and magnet, weighted as the priorities weigh them
 *     (dB)
 * @param outsideDb largest distance outside the corridor (dB), worst stack; 0 if inside everywhere
 */
public record FamilyScore(
    Grade grade,
    double shapeDb,
    double outputMarginDb,
    double correctionDb,
    double materialDb,
    double outsideDb) {}

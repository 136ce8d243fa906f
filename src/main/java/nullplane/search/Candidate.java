package nullplane.search;

import nullplane.units.Curve;

/**
 * A candidate that was evaluated.
 *
 * @param genes its genes, shares from 0 to 1 (1)
 * @param merit what the problem said of them
 */
public record Candidate(Curve genes, Merit merit) {}

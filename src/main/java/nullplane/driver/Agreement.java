package nullplane.driver;

/**
 * A stated figure that the rest of its sheet confirms.
 *
 * @param parameter the figure
 * @param deviation by how much the statement exceeds what the rest gives, as a share of that (1);
 *     dB for levels
 * @param tolerance how far the two may lie apart (1); dB for levels
 */
public record Agreement(Parameter parameter, double deviation, double tolerance) {}

package nullplane.scoring;

/**
 * One term of a grade.
 *
 * @param name what it counts
 * @param value its figure (in the unit named)
 * @param unit the unit
 * @param cost what it adds to the grade's cost (dB)
 * @param reason one sentence with the figure: which stack, where, why
 */
public record GradePart(String name, double value, String unit, double cost, String reason) {}

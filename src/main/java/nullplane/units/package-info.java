/**
 * Quantities, constants and small immutable values that every other package shares: air, ranges,
 * curves, levels. Depends on nothing. SI throughout; levels in decibels are the one exception,
 * since a level is what a target and an objective are stated in.
 *
 * <p>Sources: ISO 9613-1:1993 (air), ISO 80000-8 (levels).
 */
@NullMarked
package nullplane.units;

import org.jspecify.annotations.NullMarked;

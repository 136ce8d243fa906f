/**
 * Quantities, constants and small immutable values that every other package shares: air, ranges,
 * curves, levels, conductors. Depends on nothing. SI throughout; levels in decibels are the one
 * exception, since a level is what a target and an objective are stated in.
 *
 * <p>Sources: ISO 9613-1:1993 (air), ISO 80000-8 (levels), IEC 60028 (copper), IEC 60889
 * (aluminium).
 */
@NullMarked
package nullplane.units;

import org.jspecify.annotations.NullMarked;

/**
 * From a measured impedance sweep to the parameters of a woofer, each with its uncertainty. Pure.
 * Depends on {@code acoustics}, {@code driver}, {@code units} and {@code faults}.
 */
@NullMarked
package nullplane.fit;

import org.jspecify.annotations.NullMarked;

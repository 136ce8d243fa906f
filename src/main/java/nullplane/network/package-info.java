/**
 * Crossover parts in front of a stack: preferred values, coils with their own resistance, and later
 * ladders of them. SI throughout. Depends on {@code units} and {@code faults}.
 *
 * <p>Sources: IEC 60063 (preferred values); H. B. Brooks, NBS J. Research 7 (1931) 289 (air-core
 * coil of greatest inductance for a given wire).
 */
@NullMarked
package nullplane.network;

import org.jspecify.annotations.NullMarked;

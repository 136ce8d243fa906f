/**
 * From a woofer's quantities to a motor that can be built: stock wire, whole layers, gap, flux,
 * magnet, steel, and the mass budget of everything that moves. Pure. Depends on {@code driver},
 * {@code units} and {@code faults}.
 */
@NullMarked
package nullplane.motor;

import org.jspecify.annotations.NullMarked;

/**
 * From a woofer's quantities to a motor that can be built: stock wire, whole layers of whole turns,
 * former, gap, flux, magnet, steel, inductance, and the mass budget of everything that moves. Pure.
 * SI throughout. Depends on {@code driver}, {@code units} and {@code faults}.
 *
 * <p>Sources: IEC 60317-0-1 (enamelled round wire); IEC 60028 and IEC 60889 (copper, aluminium); L.
 * Beranek and T. Mellow, Acoustics (2012), ch. 6 (force factor); H. A. Wheeler, Proc. IRE 16 (1928)
 * 1398 (inductance). Clearances, leakage, magnet efficiency and masses of parts are common
 * practice, marked where they stand.
 */
@NullMarked
package nullplane.motor;

import org.jspecify.annotations.NullMarked;

/**
 * Sound radiation of rigid circular pistons in a rigid, thin, flat panel that is open at the back:
 * the radiation impedance matrix, the far field and the pressure at a listening point, in free
 * space or over a rigid floor. Nothing here knows of a driver: results depend on the panel alone.
 *
 * <p>Time convention e^{+jwt} throughout the program. SI. Coordinates: x to the listener's right, y
 * up, z towards the listener, origin at the panel's centre. Depends on {@code units} and {@code
 * faults}. JTransforms stays inside this package.
 *
 * <p>Sources: H. Lamb, Hydrodynamics (1932); C. J. Bouwkamp, dissertation Groningen (1941), on the
 * disc; A.-W. Maue, Z. Phys. 126 (1949) 601 (weak form of the hypersingular equation); T. Mellow
 * and L. Karkkainen, J. Acoust. Soc. Am. 118 (2005) 1311; L. Beranek and T. Mellow, Acoustics
 * (2012), ch. 13.
 */
@NullMarked
package nullplane.acoustics;

import org.jspecify.annotations.NullMarked;

/**
 * The woofer: what it is made of, what follows from that in a given mounting, the coil and motor
 * that can realise it, and the heat its coil takes. Knows nothing of panels. SI throughout. Depends
 * on {@code units} and {@code faults}.
 *
 * <p>Sources: R. H. Small, J. Audio Eng. Soc. 20(5) (1972) 383 (small-signal set); IEC 60268-5
 * (terms and ratings); L. Beranek and T. Mellow, Acoustics (2012), ch. 6; IEC 60028 (copper).
 * Masses of moving parts and stiffness of suspensions are common practice, marked where they stand.
 */
@NullMarked
package nullplane.driver;

import org.jspecify.annotations.NullMarked;

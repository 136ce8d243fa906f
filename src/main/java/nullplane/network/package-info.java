/**
 * Networks in front of a stack: parts of preferred values, coils with their own resistance, passive
 * low-pass branches on the stack's computed impedance, active filters, catalogues of candidates,
 * the main driver they meet, and what an owner swaps between stacks. SI throughout; phase
 * convention e^{+jwt}. Depends on {@code units} and {@code faults}.
 *
 * <p>Sources: IEC 60063 (preferred values); H. B. Brooks, NBS J. Research 7 (1931) 289 (air-core
 * coil of greatest inductance for a given wire); S. Butterworth, Wireless Engineer 7 (1930) 536; S.
 * H. Linkwitz, J. Audio Eng. Soc. 24(1) (1976) 2; circuit theory for the rest.
 */
@NullMarked
package nullplane.network;

import org.jspecify.annotations.NullMarked;

/**
 * A sample against its brief: pass, fail or cannot tell, what it does to every stack, and the
 * smallest change that a maker can make. Also the brief itself: the values, windows, conditions and
 * tests that a maker is given. Pure. Depends on {@code fit}, {@code tolerance}, {@code scoring} and
 * what lies below them.
 *
 * <p>Sources: IEC 60268-5 (terms); R. H. Small, J. Audio Eng. Soc. 20(5) (1972) 383 (impedance);
 * ISO 2859-1 (sampling).
 */
@NullMarked
package nullplane.sample;

import org.jspecify.annotations.NullMarked;

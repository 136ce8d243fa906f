/**
 * From a measured impedance sweep to the parameters of a woofer, each with its uncertainty. Pure.
 * Depends on {@code acoustics}, {@code driver}, {@code units} and {@code faults}; least squares,
 * splines and Student's t by Commons Math, which stay inside. Time convention e^{+jwt}.
 *
 * <p>Sources: R. H. Small, J. Audio Eng. Soc. 20(5) (1972) 383; IEC 60268-5 (added mass); J. R.
 * Wright, J. Audio Eng. Soc. 38(10) (1990) 749; W. M. Leach, J. Audio Eng. Soc. 50(6) (2002) 442;
 * K. P. Burnham and D. R. Anderson, Model Selection and Multimodel Inference (2002); JCGM 100:2008.
 */
@NullMarked
package nullplane.fit;

import org.jspecify.annotations.NullMarked;

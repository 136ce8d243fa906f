/**
 * From a woofer, a spec and solved panels to numbers with unit, direction and margin: response of
 * every stack, loudest level and what limits it, load, correction, buildability, and the single
 * grade a search orders candidates by. The spec's own records live here too, since they say what is
 * scored. Pure: no files, console, clock, threads or randomness. Depends on {@code acoustics},
 * {@code network}, {@code driver}, {@code units} and {@code faults}.
 *
 * <p>Sources: IEC 60268-5 (level, rated power, travel); R. H. Small, J. Audio Eng. Soc. 21 (1973)
 * 798 (displacement-limited output).
 */
@NullMarked
package nullplane.scoring;

import org.jspecify.annotations.NullMarked;

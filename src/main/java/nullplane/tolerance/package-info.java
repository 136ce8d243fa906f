/**
 * What a production run of a woofer does in every stack: seeded spread, yield, the windows a brief
 * can state, the parameters ranked by how much they matter, and sampling plans. Pure; chance is
 * seeded. Depends on {@code scoring} and what lies below it.
 */
@NullMarked
package nullplane.tolerance;

import org.jspecify.annotations.NullMarked;

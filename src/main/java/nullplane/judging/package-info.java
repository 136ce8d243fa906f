/**
 * Given woofers on a spec: what each lacks, where and by how much, and which parameter makes which
 * part of the difference between two. Pure. Depends on {@code scoring}, {@code tolerance} and what
 * lies below them.
 */
@NullMarked
package nullplane.judging;

import org.jspecify.annotations.NullMarked;

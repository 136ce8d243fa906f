/**
 * A sample against its brief: pass, fail or cannot tell, what it does to every stack, and the
 * smallest change that a maker can make. Also the brief itself: values, windows, conditions and tests
 * that a maker is given. Pure. Depends on {@code fit}, {@code tolerance}, {@code
 * scoring} and what lies below them.
 */
@NullMarked
package nullplane.sample;

import org.jspecify.annotations.NullMarked;

/**
 * The faults the program can tell a person about, one class per exit code. Depends on nothing. A
 * programming error is not among them: those are the JDK's own exceptions.
 */
@NullMarked
package nullplane.faults;

import org.jspecify.annotations.NullMarked;

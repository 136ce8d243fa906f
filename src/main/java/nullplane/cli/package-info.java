/**
 * The commands. The composition root and the only package that prints, reads the environment,
 * starts threads or exits. One handler turns every fault into its line and exit code.
 */
@NullMarked
package nullplane.cli;

import org.jspecify.annotations.NullMarked;

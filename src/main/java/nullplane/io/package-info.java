/**
 * Files in and data files out: YAML specs and woofers with every fault told at once, JSON and CSV,
 * and folders that are written whole or not at all. The only package that imports Jackson (and, for
 * the place of a fault, the YAML scanner that comes with it). Depends on {@code scoring}, {@code
 * search} results and what they depend on; never prints.
 *
 * <p>Sources: YAML 1.2; RFC 8259 (JSON); RFC 4180 (CSV).
 */
@NullMarked
package nullplane.io;

import org.jspecify.annotations.NullMarked;

/**
 * Results for people: charts, specification sheets in Markdown and HTML, and terminal tables. The
 * only package that imports XChart. Returns bytes and text; writing them is {@code io}'s and {@code
 * cli}'s business.
 *
 * <p>Sources: IEC 60263 (proportions of frequency-response plots); M. Okabe and K. Ito, Color
 * Universal Design (2008), for the colours.
 */
@NullMarked
package nullplane.report;

import org.jspecify.annotations.NullMarked;

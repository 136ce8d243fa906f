/**
 * Results for people: charts, specification sheets in Markdown, HTML and PDF, and terminal tables.
 * The only package that imports XChart, the vector graphics it brings, and the PDF library. Returns
 * bytes and text; writing them is {@code io}'s and {@code cli}'s business.
 *
 * <p>Depends on {@code scoring}, {@code search} (for its outcome only), {@code sample} (for the
 * brief), {@code driver}, {@code network}, {@code units} and {@code faults}. Needs a font of the
 * machine for pictures.
 *
 * <p>Sources: IEC 60263 (proportions of frequency-response plots); M. Okabe and K. Ito, Color
 * Universal Design (2008), for the colours.
 */
@NullMarked
package nullplane.report;

import org.jspecify.annotations.NullMarked;

/**
 * The search for woofers: a genetic search over what a maker can set, then a deterministic polish
 * of the best, then the choice of distinct ones. Apart from woofers, {@link
 * nullplane.search.ParetoSearch} finds the best compromises between several objectives of any
 * problem. The only package that imports Jenetics. Depends on {@code scoring} and what it depends
 * on.
 *
 * <p>Sources: K. Deb, Comput. Methods Appl. Mech. Eng. 186 (2000) 311 (feasible-first comparison);
 * R. Storn and K. Price, J. Global Optim. 11 (1997) 341, for the polish's neighbourhood idea; K.
 * Deb et al., IEEE Trans. Evol. Comput. 6 (2002) 182 (NSGA-II).
 */
@NullMarked
package nullplane.search;

import org.jspecify.annotations.NullMarked;

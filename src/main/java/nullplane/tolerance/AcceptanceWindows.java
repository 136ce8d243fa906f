package nullplane.tolerance;

import java.util.List;
import nullplane.driver.Woofer;
import nullplane.units.Air;

/**
 * Windows for incoming inspection: as wide as the wanted yield allows.
 *
 * @param windows one per inspected quantity
 * @param wantedYield share of units inside the windows that must be good in every stack (1)
 * @param margin what the windows were made to hold beyond that, three standard errors of the
 *     simulation (1)
 * @param within units that fill the windows
 * @param wider units that fill windows half as wide again; where these too keep the yield, the
 *     windows are not set by the response
 * @param acceptedShare share of units of a usual production run that lie inside all windows (1);
 *     what is sorted out or made again is the rest
 * @param implied spread of what is not inspected, over units that fill the windows
 */
public record AcceptanceWindows(
    List<AcceptanceWindow> windows,
    double wantedYield,
    double margin,
    WindowCheck within,
    WindowCheck wider,
    double acceptedShare,
    List<QuantitySpread> implied) {
  /** Copies the lists. */
  public AcceptanceWindows {
    windows = List.copyOf(windows);
    implied = List.copyOf(implied);
  }

  /** Returns whether units inside the windows keep the wanted yield in every stack. */
  public boolean hold() {
    return within.share() >= wantedYield;
  }

  /**
   * Returns whether a woofer passes incoming inspection.
   *
   * @param woofer the woofer
   * @param air the air
   */
  public boolean accept(Woofer woofer, Air air) {
    return accept(windows, woofer, air);
  }

  static boolean accept(List<AcceptanceWindow> windows, Woofer woofer, Air air) {
    return windows.stream().allMatch(window -> window.accepts(window.quantity().of(woofer, air)));
  }

  /**
   * Returns a quantity's window.
   *
   * @param quantity an inspected quantity
   * @throws IllegalArgumentException if it is not inspected
   */
  public AcceptanceWindow of(MeasuredQuantity quantity) {
    return windows.stream()
        .filter(window -> window.quantity() == quantity)
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException(quantity.symbol() + " is not inspected"));
  }

  /**
   * Returns the mean cost of the windows against the tightest usual ones (1); above 1 is dearer.
   */
  public double costShare() {
    return windows.stream().mapToDouble(AcceptanceWindow::costShare).average().orElse(0);
  }
}

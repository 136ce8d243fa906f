package nullplane.io;

import nullplane.driver.Mounting;
import nullplane.driver.SmallSignal;
import nullplane.driver.Woofer;
import nullplane.units.Air;

/** Writes a woofer as YAML that {@link WooferReader} reads back. Source: YAML 1.2. */
public final class WooferYaml {
  private WooferYaml() {}

  /**
   * Returns the woofer as the text of a file, with the figures of free air at full precision.
   *
   * @param woofer the woofer
   */
  public static String of(Woofer woofer) {
    SmallSignal set = SmallSignal.of(woofer, Mounting.FREE_AIR, Air.standard());
    return "name: "
        + quoted(woofer.name())
        + line("nominal", woofer.nominalM(), 3, "mm")
        + line("sd", woofer.effectiveAreaM2(), 4, "cm2")
        + line("re", woofer.resistanceOhm(), 0, "ohm")
        + line("fs", set.resonanceHz(), 0, "Hz")
        + line("qms", set.mechanicalQ(), 0, "")
        + line("qes", set.electricalQ(), 0, "")
        + line("moving-mass", woofer.bareMassKg(), 3, "g")
        + "\nmounting: free-air"
        + line("travel", woofer.travelM(), 3, "mm")
        + line("le", woofer.inductanceH(), 3, "mH")
        + line("power", woofer.powerW(), 0, "W")
        + "\n";
  }

  private static String line(String key, double si, int decimals, String unit) {
    String digits = DecimalText.shifted(si, decimals);
    return ("\n" + key + ": " + digits + " " + unit).stripTrailing();
  }

  private static String quoted(String text) {
    return "'" + text.replace("'", "''") + "'";
  }
}

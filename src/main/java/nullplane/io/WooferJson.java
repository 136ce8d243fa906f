package nullplane.io;

import java.io.IOException;
import nullplane.driver.Woofer;

/** The keys that a woofer has in every JSON document. */
final class WooferJson {
  private WooferJson() {}

  /** Writes coil, moving parts, motor and limits, in SI with the unit in each key's name. */
  static void parts(JsonText json, Woofer woofer) throws IOException {
    json.number("reOhm", woofer.resistanceOhm());
    json.number("leH", woofer.inductanceH());
    json.number("movingMassKg", woofer.bareMassKg());
    json.number("kmsNPerM", woofer.stiffnessNPerM());
    json.number("rmsNsPerM", woofer.lossNsPerM());
    json.number("blTm", woofer.forceFactorTm());
    json.number("travelM", woofer.travelM());
    json.number("powerW", woofer.powerW());
  }
}

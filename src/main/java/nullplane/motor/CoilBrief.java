package nullplane.motor;

import java.util.List;
import nullplane.units.Checks;
import nullplane.units.ConductorMaterial;
import nullplane.units.Range;

/**
 * What a coil and its motor may be made from.
 *
 * @param resistanceOhm Re asked for (ohm); a single value is widened by {@link #windowOf}
 * @param fluxT flux density in the gap allowed (T)
 * @param gapHeightsM gap heights that may be used, which are thicknesses of top plates (m)
 * @param formersM inside diameters of formers that may be used (m)
 * @param wires metals that may be wound
 * @param layers numbers of layers that may be wound (1)
 * @param magnet the magnet's material
 */
public record CoilBrief(
    Range resistanceOhm,
    Range fluxT,
    List<Double> gapHeightsM,
    List<Double> formersM,
    List<ConductorMaterial> wires,
    List<Integer> layers,
    MagnetMaterial magnet) {
  /** Layers that are usually wound; even, so that both leads end at one side. Common practice. */
  public static final List<Integer> USUAL_LAYERS = List.of(2, 4);

  /**
   * Share by which real windings may miss a single value that is asked for (1): whole turns seldom
   * meet it, and production spreads by about 5 % anyway. Common practice.
   */
  public static final double SINGLE_VALUE_SHARE = 0.03;

  /** Least flux density that a motor is laid out for when only the most is stated (T). */
  private static final double LEAST_FLUX_T = 0.4;

  /** Checks that every list has an entry and every value is positive. */
  public CoilBrief {
    gapHeightsM = List.copyOf(gapHeightsM);
    formersM = List.copyOf(formersM);
    wires = List.copyOf(wires);
    layers = List.copyOf(layers);
    Checks.positive(resistanceOhm.lower(), "Re", "ohm");
    Checks.positive(fluxT.lower(), "flux density", "T");
    gapHeightsM.forEach(height -> Checks.positive(height, "gap height", "m"));
    formersM.forEach(diameter -> Checks.positive(diameter, "former diameter", "m"));
    layers.forEach(count -> Checks.positive(count, "coil layers", "1"));
    if (gapHeightsM.isEmpty() || formersM.isEmpty() || wires.isEmpty() || layers.isEmpty()) {
      throw new IllegalArgumentException(
          "a coil needs at least one gap height, former, metal and number of layers");
    }
  }

  /**
   * Returns the flux densities that a stated greatest one allows (T): down to 0.4 T, or to half of
   * it where that is less. Below that a motor holds its flux badly over temperature and from unit
   * to unit. Common practice.
   *
   * @param mostT the greatest flux density (T)
   */
  public static Range fluxUpTo(double mostT) {
    return new Range(Math.min(LEAST_FLUX_T, mostT / 2), mostT);
  }

  /**
   * Returns the values that real windings may have: a range as it is, a single value widened by
   * {@link #SINGLE_VALUE_SHARE} either way.
   *
   * @param asked what is asked for (SI)
   */
  public static Range windowOf(Range asked) {
    return asked.isPinned()
        ? new Range(
            asked.lower() * (1 - SINGLE_VALUE_SHARE), asked.upper() * (1 + SINGLE_VALUE_SHARE))
        : asked;
  }

  /** Returns the tallest gap (m): the one that asks least wire of a given motor and travel. */
  public double tallestGapM() {
    return gapHeightsM.stream().mapToDouble(Double::doubleValue).max().orElseThrow();
  }

  /**
   * Returns the metal that asks the least mass of a given motor: least resistivity times density.
   */
  public ConductorMaterial lightestWire() {
    ConductorMaterial lightest = wires.get(0);
    for (ConductorMaterial wire : wires) {
      if (wire.resistivityOhmM() * wire.densityKgPerM3()
          < lightest.resistivityOhmM() * lightest.densityKgPerM3()) {
        lightest = wire;
      }
    }
    return lightest;
  }
}

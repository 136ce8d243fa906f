package nullplane.network;

import java.util.ArrayList;
import java.util.List;
import nullplane.units.ConductorMaterial;

/**
 * The series coils a stack may be given: none, then one per preferred value in rising order, each
 * with the resistance and metal of a {@link BrooksCoil} of the stated wire.
 *
 * @param options the choices; the first is {@link SeriesCoil#NONE}
 * @param wireDiameterM diameter of the metal they are wound with (m)
 * @param material what the wire is made of
 */
public record CoilCatalogue(
    List<SeriesCoil> options, double wireDiameterM, ConductorMaterial material) {
  /** Copies the list and checks that it starts with no coil and rises. */
  public CoilCatalogue {
    options = List.copyOf(options);
    if (options.isEmpty() || options.get(0).present()) {
      throw new IllegalArgumentException("a coil catalogue starts with no coil");
    }
    for (int i = 1; i < options.size(); i++) {
      if (!(options.get(i).inductanceH() > options.get(i - 1).inductanceH())) {
        throw new IllegalArgumentException("a coil catalogue rises from option to option");
      }
    }
  }

  /**
   * Returns the catalogue of a series between two inductances, both included.
   *
   * @param series the series the values come from
   * @param lowerH least inductance (H)
   * @param upperH greatest inductance (H)
   * @param wireDiameterM diameter of the metal (m)
   * @param material what the wire is made of
   */
  public static CoilCatalogue of(
      PreferredValues series,
      double lowerH,
      double upperH,
      double wireDiameterM,
      ConductorMaterial material) {
    List<SeriesCoil> options = new ArrayList<>();
    options.add(SeriesCoil.NONE);
    for (double inductanceH : series.between(lowerH, upperH)) {
      BrooksCoil coil =
          BrooksCoil.forInductance(
              inductanceH, wireDiameterM, BrooksCoil.COMMON_FILL_FACTOR, material);
      options.add(new SeriesCoil(inductanceH, coil.resistanceOhm(), coil.conductorKg()));
    }
    return new CoilCatalogue(options, wireDiameterM, material);
  }

  /**
   * Returns the coils a workshop winds or buys for woofers: E12, 0.1 mH to 33 mH, 1.4 mm copper.
   * The wire and the limits are common practice.
   */
  public static CoilCatalogue standard() {
    return of(PreferredValues.E12, 1e-4, 33e-3, 1.4e-3, ConductorMaterial.COPPER);
  }
}

package nullplane.network;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import nullplane.units.Checks;
import nullplane.units.Curve;

/**
 * A {@link NetworkCatalogue} prepared for one frequency axis, to try all its networks on many loads
 * without allocating: {@link #shunted} once for what stands across the stack, then the passes of
 * {@link #series} for each coil. Also part count and cost proxies of each choice. Immutable.
 */
public final class CatalogueRows {
  private final int resistors;
  private final int coils;
  private final int dampings;
  private final SeriesRows[] series;
  private final ShuntRows[] shunts;
  private final ShuntRows[] resonances;
  private final ShuntRows[] zobels;
  private final double[] coilKg;
  private final double[] resonanceKg;
  private final int[] resonanceParts;
  private final double[] capacitorF;
  private final double[] resonanceF;
  private final double[] zobelF;

  /**
   * @param catalogue the catalogue
   * @param frequencyHz frequencies (Hz), each above 0
   */
  public CatalogueRows(NetworkCatalogue catalogue, Curve frequencyHz) {
    frequencyHz.stream().forEach(f -> Checks.positive(f, "frequency", "Hz"));
    resistors = catalogue.options(CatalogueAxis.RESISTOR);
    coils = catalogue.options(CatalogueAxis.COIL);
    dampings = catalogue.options(CatalogueAxis.DAMPING);
    List<SeriesRows> seriesList = new ArrayList<>();
    for (int r = 0; r < resistors; r++) {
      for (int c = 0; c < coils; c++) {
        LowPassBranch branch =
            catalogue.branch(
                NetworkChoice.NONE.with(CatalogueAxis.RESISTOR, r).with(CatalogueAxis.COIL, c));
        seriesList.add(
            new SeriesRows(
                branch.seriesResistanceOhm(), branch.seriesCoil().inductanceH(), frequencyHz));
      }
    }
    series = seriesList.toArray(new SeriesRows[0]);
    List<ShuntRows> shuntList = new ArrayList<>();
    for (Capacitor capacitor : catalogue.capacitors()) {
      double farad = capacitor.capacitanceF();
      shuntList.add(ShuntRows.of(ShuntCapacitor.undamped(farad), frequencyHz));
      for (Resistor damping : catalogue.dampings()) {
        shuntList.add(
            ShuntRows.of(new ShuntCapacitor(capacitor, Optional.of(damping)), frequencyHz));
      }
    }
    shunts = shuntList.toArray(new ShuntRows[0]);
    resonances =
        catalogue.resonances().stream()
            .map(c -> ShuntRows.of(c, frequencyHz))
            .toArray(ShuntRows[]::new);
    zobels =
        catalogue.zobels().stream()
            .map(z -> ShuntRows.of(z, frequencyHz))
            .toArray(ShuntRows[]::new);
    coilKg = catalogue.coils().stream().mapToDouble(SeriesCoil::copperKg).toArray();
    resonanceKg = catalogue.resonances().stream().mapToDouble(c -> c.coil().copperKg()).toArray();
    resonanceParts =
        catalogue.resonances().stream().mapToInt(c -> c.resistor().isPresent() ? 3 : 2).toArray();
    capacitorF = catalogue.capacitors().stream().mapToDouble(Capacitor::capacitanceF).toArray();
    resonanceF =
        catalogue.resonances().stream().mapToDouble(c -> c.capacitor().capacitanceF()).toArray();
    zobelF = catalogue.zobels().stream().mapToDouble(z -> z.capacitor().capacitanceF()).toArray();
  }

  /** Returns the number of series resistors to choose from, "none" included. */
  public int resistors() {
    return resistors;
  }

  /** Returns the number of series coils to choose from, "none" included. */
  public int coils() {
    return coils;
  }

  /**
   * Returns what a choice has in series.
   *
   * @param resistor index of the series resistor, 0 for none
   * @param coil index of the series coil, 0 for none
   */
  public SeriesRows series(int resistor, int coil) {
    return series[resistor * coils + coil];
  }

  /**
   * Returns the stack with what a choice has across it: the stack's own rows if there is nothing,
   * else the scratch rows.
   *
   * @param stack admittance of the stack
   * @param choice a canonical choice; its series parts do not matter here
   * @param scratch work space; overwritten if needed, never the stack's rows
   */
  public LoadRows shunted(LoadRows stack, NetworkChoice choice, LoadRows scratch) {
    LoadRows load = stack;
    if (choice.capacitor() > 0) {
      scratch.setShunted(load, shunts[(choice.capacitor() - 1) * dampings + choice.damping()]);
      load = scratch;
    }
    if (choice.resonance() > 0) {
      scratch.setShunted(load, resonances[choice.resonance() - 1]);
      load = scratch;
    }
    if (choice.zobel() > 0) {
      scratch.setShunted(load, zobels[choice.zobel() - 1]);
      load = scratch;
    }
    return load;
  }

  /** Returns the number of parts of a canonical choice. */
  public int partCount(NetworkChoice choice) {
    return Math.min(1, choice.resistor())
        + Math.min(1, choice.coil())
        + Math.min(1, choice.capacitor())
        + Math.min(1, choice.damping())
        + (choice.resonance() > 0 ? resonanceParts[choice.resonance() - 1] : 0)
        + 2 * Math.min(1, choice.zobel());
  }

  /** Returns the copper of a canonical choice (kg). */
  public double copperKg(NetworkChoice choice) {
    return entry(coilKg, choice.coil()) + entry(resonanceKg, choice.resonance());
  }

  /** Returns the capacitance that a canonical choice needs (F). */
  public double capacitanceF(NetworkChoice choice) {
    return entry(capacitorF, choice.capacitor())
        + entry(resonanceF, choice.resonance())
        + entry(zobelF, choice.zobel());
  }

  private static double entry(double[] list, int index) {
    return index == 0 ? 0 : list[index - 1];
  }
}

package nullplane.sample;

import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import nullplane.units.Checks;

/**
 * A change as it was asked for, in the measures of the levers; what a {@link Change} leaves on
 * record.
 *
 * @param massKg bare moving mass added beside the coil (kg); below 0 taken away
 * @param stiffnessShare change of stiffness (1), above -1
 * @param fluxShare change of flux (1), above -1
 * @param winding what the new winding does, if there is one
 * @param restMoveM way the coil's rest position moves, outwards above 0 (m)
 */
public record AskedChange(
    double massKg,
    double stiffnessShare,
    double fluxShare,
    Optional<WindingStep> winding,
    double restMoveM) {
  /** Nothing was asked for. */
  public static final AskedChange NONE = new AskedChange(0, 0, 0, Optional.empty(), 0);

  /**
   * What a coil wound anew does.
   *
   * @param massKg mass that coil and former gain (kg)
   * @param resistanceRatio the new Re over the old (1)
   * @param forceRatio the new Bl over the old at the same flux density (1)
   */
  public record WindingStep(double massKg, double resistanceRatio, double forceRatio) {
    /** Checks the ranges. */
    public WindingStep {
      Checks.finite(massKg, "mass that the winding gains", "kg");
      Checks.positive(resistanceRatio, "Re over Re before", "1");
      Checks.positive(forceRatio, "Bl over Bl before", "1");
    }
  }

  /** Checks the ranges. */
  public AskedChange {
    Checks.finite(massKg, "mass added", "kg");
    Checks.positive(1 + stiffnessShare, "stiffness over stiffness before", "1");
    Checks.positive(1 + fluxShare, "flux over flux before", "1");
    Checks.finite(restMoveM, "move of the rest position", "m");
  }

  /**
   * Returns what a change asks for.
   *
   * @param change the change
   */
  public static AskedChange of(Change change) {
    return new AskedChange(
        change.massKg(),
        change.stiffnessShare(),
        change.fluxShare(),
        change
            .winding()
            .map(
                wound ->
                    new WindingStep(wound.massKg(), wound.resistanceRatio(), wound.forceRatio())),
        change.restMoveM());
  }

  /** Returns the levers that are moved. */
  public Set<Lever> levers() {
    Set<Lever> moved = EnumSet.noneOf(Lever.class);
    for (Lever lever : Lever.values()) {
      if (amount(lever) != 0) {
        moved.add(lever);
      }
    }
    return moved;
  }

  /**
   * Returns by how much a lever is moved: kg for the mass, m for the rest position, else the change
   * as a share of what there was (1); of the winding that of Re.
   *
   * @param lever the lever
   */
  public double amount(Lever lever) {
    return switch (lever) {
      case MASS -> massKg;
      case STIFFNESS -> stiffnessShare;
      case FLUX -> fluxShare;
      case WINDING -> winding.map(step -> step.resistanceRatio() - 1).orElse(0.0);
      case REST_POSITION -> restMoveM;
    };
  }
}

package nullplane.sample;

import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import nullplane.driver.Woofer;
import nullplane.motor.InductanceEstimate;
import nullplane.motor.Winding;
import nullplane.units.Checks;

/**
 * A change of a woofer by a maker's levers. Area, loss and rated power stay.
 *
 * <p>Source: definitions; Bl = B l, Re = r l/A. A new winding acts by its ratio to the old one, so
 * that what a real coil differs from its drawing stays.
 *
 * @param massKg bare moving mass added beside the coil (kg); below 0 taken away
 * @param stiffnessShare change of stiffness (1), above -1
 * @param fluxShare change of flux (1), above -1
 * @param winding the new winding, if there is one
 * @param restMoveM way the coil's rest position moves, outwards above 0 (m)
 * @param travelGainM travel that the move gives on the shorter side (m)
 */
public record Change(
    double massKg,
    double stiffnessShare,
    double fluxShare,
    Optional<Rewound> winding,
    double restMoveM,
    double travelGainM) {
  /** No change. */
  public static final Change NONE = new Change(0, 0, 0, Optional.empty(), 0, 0);

  /**
   * A coil wound anew.
   *
   * @param from the winding on the drawing
   * @param to the winding wanted
   * @param share how much of the change comes, 1 all of it; of ratios by their logarithms (1)
   */
  public record Rewound(Winding from, Winding to, double share) {
    /** Checks the share. */
    public Rewound {
      Checks.positive(share, "share of a new winding", "1");
    }

    /** A new winding as it is wanted. */
    public Rewound(Winding from, Winding to) {
      this(from, to, 1);
    }

    /** Returns the same with a share of it coming (1). */
    Rewound inPart(double other) {
      return new Rewound(from, to, other);
    }

    /** Returns the mass that coil and former gain (kg). */
    public double massKg() {
      return share
          * (to.coilMassKg() + to.formerMassKg() - from.coilMassKg() - from.formerMassKg());
    }

    /** Returns the new Re over the old (1). */
    public double resistanceRatio() {
      return ratio(to.resistanceOhm(), from.resistanceOhm());
    }

    private double ratio(double after, double before) {
      return share == 1 ? after / before : Math.pow(after / before, share);
    }

    /** Returns the new Bl over the old at the same flux density (1). */
    public double forceRatio() {
      return ratio(to.lengthInFieldM(), from.lengthInFieldM());
    }

    /** Returns the new inductance over the old (1). */
    public double inductanceRatio() {
      return ratio(InductanceEstimate.plainH(to.coil()), InductanceEstimate.plainH(from.coil()));
    }

    /** Returns the travel gained, one way (m). */
    public double travelM() {
      return share * (to.travelM() - from.travelM());
    }
  }

  /** Checks the ranges. */
  public Change {
    Checks.finite(massKg, "mass added", "kg");
    Checks.positive(1 + stiffnessShare, "stiffness over stiffness before", "1");
    Checks.positive(1 + fluxShare, "flux over flux before", "1");
    Checks.finite(restMoveM, "move of the rest position", "m");
    Checks.finite(travelGainM, "travel gained", "m");
  }

  /** Returns the levers that are moved. */
  public Set<Lever> levers() {
    Set<Lever> moved = EnumSet.noneOf(Lever.class);
    add(moved, Lever.MASS, massKg != 0);
    add(moved, Lever.STIFFNESS, stiffnessShare != 0);
    add(moved, Lever.FLUX, fluxShare != 0);
    add(moved, Lever.WINDING, winding.isPresent());
    add(moved, Lever.REST_POSITION, restMoveM != 0);
    return moved;
  }

  private static void add(Set<Lever> levers, Lever lever, boolean moved) {
    if (moved) {
      levers.add(lever);
    }
  }

  /** Returns the part of this change that one lever makes. */
  public Change only(Lever lever) {
    return new Change(
        lever == Lever.MASS ? massKg : 0,
        lever == Lever.STIFFNESS ? stiffnessShare : 0,
        lever == Lever.FLUX ? fluxShare : 0,
        lever == Lever.WINDING ? winding : Optional.empty(),
        lever == Lever.REST_POSITION ? restMoveM : 0,
        lever == Lever.REST_POSITION ? travelGainM : 0);
  }

  /** Returns this change and a move of the rest position. */
  Change withRestMove(double moveM, double gainM) {
    return new Change(massKg, stiffnessShare, fluxShare, winding, moveM, gainM);
  }

  /**
   * Returns a woofer after this change.
   *
   * @param woofer the woofer before
   * @throws IllegalArgumentException if more mass is taken away than there is
   */
  public Woofer applyTo(Woofer woofer) {
    double mass = woofer.bareMassKg() + massKg;
    double resistance = woofer.resistanceOhm();
    double force = woofer.forceFactorTm() * (1 + fluxShare);
    double inductance = woofer.inductanceH();
    double travel = woofer.travelM() + travelGainM;
    if (winding.isPresent()) {
      Rewound rewound = winding.orElseThrow();
      mass += rewound.massKg();
      resistance *= rewound.resistanceRatio();
      force *= rewound.forceRatio();
      inductance *= rewound.inductanceRatio();
      travel += rewound.travelM();
    }
    return new Woofer(
        woofer.name(),
        woofer.nominalM(),
        woofer.effectiveAreaM2(),
        resistance,
        inductance,
        mass,
        woofer.stiffnessNPerM() * (1 + stiffnessShare),
        woofer.lossNsPerM(),
        force,
        travel,
        woofer.powerW());
  }
}

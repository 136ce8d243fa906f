package nullplane.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import nullplane.driver.Woofer;
import nullplane.motor.MotorDesign;
import nullplane.scoring.PanelStability;
import nullplane.scoring.StackBalance;
import nullplane.scoring.StackBrief;

/** Which stacks tip, and how deep a base keeps them up. */
final class StabilityCaution {
  /** Upper edge over the floor from which a panel without a known base is called tall (m). */
  private static final double TALL_M = 1.0;

  private final List<StackBrief> stacks;
  private final double wooferKg;
  private final String wooferWords;

  private StabilityCaution(List<StackBrief> stacks, double wooferKg, String wooferWords) {
    this.stacks = stacks;
    this.wooferKg = wooferKg;
    this.wooferWords = wooferWords;
  }

  /**
   * Returns the caution for stacks of a woofer; empty if none is tall or tips.
   *
   * @param stacks the stacks
   * @param woofer the woofer
   * @param motor its motor, if it is known
   */
  static Optional<String> of(List<StackBrief> stacks, Woofer woofer, Optional<MotorDesign> motor) {
    String words =
        motor.isPresent() ? "frame and steel by usual weights" : "of a usual weight for their size";
    return new StabilityCaution(stacks, StackBalance.wooferMassKg(woofer, motor), words).text();
  }

  /**
   * Returns the caution for a stack whose woofer is not known yet; empty if it is not tall and does
   * not tip.
   *
   * @param stack the stack
   * @param nominalM frame size class of its woofers (m)
   */
  static Optional<String> of(StackBrief stack, double nominalM) {
    return new StabilityCaution(
            List.of(stack),
            StackBalance.usualWooferMassKg(nominalM),
            "of a usual weight for their size")
        .text();
  }

  private Optional<String> text() {
    List<String> told = new ArrayList<>();
    for (StackBrief stack : stacks) {
      StackBalance balance = StackBalance.of(stack, wooferKg);
      OptionalDouble base = stack.stand().baseDepthM();
      boolean stands =
          base.isPresent() && PanelStability.standsTest(balance.tippingRad(base.getAsDouble()));
      double top = stack.panel().clearanceM().orElse(0) + stack.panel().outline().heightM();
      if (!stands && (base.isPresent() || top >= TALL_M)) {
        told.add(
            Lettering.clean(stack.name())
                + (base.isPresent() ? tips(balance, base.getAsDouble()) : " needs")
                + " a base at least "
                + Figures.millimetres(balance.leastBaseDepthM())
                + " deep (centre of gravity "
                + Figures.metres(balance.centreOfGravityM())
                + " high, "
                + Figures.of(balance.massKg(), "kg")
                + ")");
      }
    }
    if (told.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        "Stability: tall panels tip. To stand a tilt by 10 degrees to front or rear (IEC 62368-1,"
            + " clause 8.6, from memory) "
            + String.join("; ", told)
            + ". Taken: "
            + panels()
            + ", woofers of "
            + Figures.of(wooferKg, "kg")
            + ", "
            + wooferWords
            + ", all in the panel's plane; what hangs behind it wants more to the rear. Fix panels"
            + " to a wall or give them a wide, heavy foot; local codes decide.");
  }

  private static String tips(StackBalance balance, double baseM) {
    return " tips at "
        + Figures.of(Math.toDegrees(balance.tippingRad(baseM)), "degrees")
        + " on its base of "
        + Figures.millimetres(baseM)
        + " and needs";
  }

  private String panels() {
    String assumed =
        stacks.stream()
            .filter(stack -> stack.stand().panelMassKg().isEmpty())
            .map(stack -> Lettering.clean(stack.name()))
            .collect(Collectors.joining(", "));
    return assumed.isEmpty()
        ? "the panels' stated masses"
        : "18 mm birch plywood of "
            + Figures.of(StackBalance.PANEL_KG_PER_M2, "kg/m\u00b2")
            + (stacks.stream().anyMatch(stack -> stack.stand().panelMassKg().isPresent())
                ? " for " + assumed
                : "");
  }
}

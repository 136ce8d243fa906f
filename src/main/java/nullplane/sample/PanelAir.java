package nullplane.sample;

import nullplane.acoustics.PanelResponse;

/** The solved air of the panels that samples were measured on. */
@FunctionalInterface
public interface PanelAir {
  /** No panel was solved: samples were measured in free air only. */
  PanelAir NONE =
      stack -> {
        throw new IllegalStateException("the panel of stack " + stack + " was not solved");
      };

  /**
   * Returns the radiation impedance of a stack's panel with pistons of the brief's size.
   *
   * @param stack name of the stack
   */
  PanelResponse of(String stack);
}

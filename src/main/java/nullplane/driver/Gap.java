package nullplane.driver;

import java.util.List;

/**
 * Something that a sheet leaves open, and what would settle it.
 *
 * @param cheapest the figure that is easiest to measure
 * @param instead figures that would do as well, easiest first
 */
public record Gap(Parameter cheapest, List<Parameter> instead) {
  /** Copies the list. */
  public Gap {
    instead = List.copyOf(instead);
  }
}

package nullplane.io;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import nullplane.acoustics.Outline;
import nullplane.acoustics.Panel;
import nullplane.acoustics.RectangularOutline;

/** Reads a panel: its outline and its clearance over the floor. */
final class PanelSection {
  static final String EXAMPLE = "{width: 44 cm, height: 110 cm, clearance: 4 cm}";
  static final List<String> KEYS = List.of("width", "height", "clearance", "outline", "diameter");

  private static final String SIDES = "5 cm .. 10 m";
  private static final QuantityKey WIDTH =
      QuantityKey.of("width", Dimension.LENGTH, SIDES, "44 cm");
  private static final QuantityKey HEIGHT =
      QuantityKey.of("height", Dimension.LENGTH, SIDES, "110 cm");
  private static final QuantityKey CLEARANCE =
      QuantityKey.of("clearance", Dimension.LENGTH, "0 cm .. 5 m", "4 cm");

  private PanelSection() {}

  /** Returns the panel, or nothing when a value it needs is at fault. */
  static Optional<Panel> read(Section section) {
    OptionalDouble clearance = section.optional(CLEARANCE);
    return outline(section).map(outline -> new Panel(outline, clearance));
  }

  /** Returns the outline; each further shape of {@link Outline} gets its branch here. */
  private static Optional<Outline> outline(Section section) {
    if (section.has("outline") || section.has("diameter")) {
      section.fault(
          section.has("outline") ? "outline" : "diameter",
          "this version solves rectangular panels only",
          "width and height",
          "write width: 44 cm and height: 110 cm instead");
      return Optional.empty();
    }
    OptionalDouble width = section.required(WIDTH);
    OptionalDouble height = section.required(HEIGHT);
    return width.isPresent() && height.isPresent()
        ? Optional.of(new RectangularOutline(width.getAsDouble(), height.getAsDouble()))
        : Optional.empty();
  }
}

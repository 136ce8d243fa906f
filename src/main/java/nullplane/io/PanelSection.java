package nullplane.io;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import nullplane.acoustics.Corner;
import nullplane.acoustics.Outline;
import nullplane.acoustics.Panel;
import nullplane.acoustics.PolygonOutline;
import nullplane.acoustics.RectangularOutline;
import nullplane.acoustics.RoundOutline;
import nullplane.scoring.PanelStand;

/** Reads a panel: its outline and its clearance over the floor. */
final class PanelSection {
  static final String EXAMPLE = "{width: 44 cm, height: 110 cm, clearance: 4 cm}";
  static final List<String> KEYS =
      List.of("width", "height", "clearance", "outline", "diameter", "mass", "base-depth");

  private static final String SIDES = "5 cm .. 10 m";
  private static final QuantityKey WIDTH =
      QuantityKey.of("width", Dimension.LENGTH, SIDES, "44 cm");
  private static final QuantityKey HEIGHT =
      QuantityKey.of("height", Dimension.LENGTH, SIDES, "110 cm");
  private static final QuantityKey CLEARANCE =
      QuantityKey.of("clearance", Dimension.LENGTH, "0 cm .. 5 m", "4 cm");

  private static final QuantityKey MASS =
      QuantityKey.of("mass", Dimension.MASS, "100 g .. 500 kg", "6 kg");
  private static final QuantityKey BASE_DEPTH =
      QuantityKey.of("base-depth", Dimension.LENGTH, "0 cm .. 5 m", "30 cm");

  private static final String OUTLINE = "outline";
  private static final QuantityKey DIAMETER =
      QuantityKey.of("diameter", Dimension.LENGTH, SIDES, "60 cm");
  private static final String CORNERS_EXAMPLE =
      "[[-22 cm, -55 cm], [22 cm, -55 cm], [15 cm, 55 cm], [-15 cm, 55 cm]]";
  private static final int MOST_CORNERS = 64;
  private static final double LEAST_SIDE_M = 0.05;
  private static final double FARTHEST_M = 5;

  private PanelSection() {}

  /** Returns the panel, or nothing when a value it needs is at fault. */
  static Optional<Panel> read(Section section) {
    OptionalDouble clearance = section.optional(CLEARANCE);
    return outline(section).map(outline -> new Panel(outline, clearance));
  }

  /** Returns what is said of how the panel stands; a value at fault counts as not said. */
  static PanelStand stand(Section section) {
    return new PanelStand(section.optional(MASS), section.optional(BASE_DEPTH));
  }

  /** Returns the outline: round or a list of corners if the spec says so, else a rectangle. */
  private static Optional<Outline> outline(Section section) {
    Optional<YamlNode> shape = section.node(OUTLINE);
    if (shape.isEmpty()) {
      return rectangle(section);
    }
    refuse(section, "width");
    refuse(section, "height");
    if (shape.orElseThrow() instanceof YamlNode.Sequence corners) {
      refuse(section, DIAMETER.name());
      return polygon(section, corners);
    }
    if (shape.orElseThrow() instanceof YamlNode.Scalar word
        && word.text().strip().equals("round")) {
      OptionalDouble diameter = section.required(DIAMETER);
      return diameter.isPresent()
          ? Optional.of(new RoundOutline(diameter.getAsDouble()))
          : Optional.empty();
    }
    section.fault(
        OUTLINE,
        "unknown outline",
        "round, or a list of corners",
        "write outline: round with diameter: 60 cm, or outline: " + CORNERS_EXAMPLE);
    return Optional.empty();
  }

  private static Optional<Outline> rectangle(Section section) {
    if (section.has(DIAMETER.name()) && !section.has(OUTLINE)) {
      section.fault(
          DIAMETER.name(),
          "a diameter belongs to a round panel",
          "width and height, or outline: round and diameter",
          "write outline: round beside it");
      return Optional.empty();
    }
    OptionalDouble width = section.required(WIDTH);
    OptionalDouble height = section.required(HEIGHT);
    return width.isPresent() && height.isPresent()
        ? Optional.of(new RectangularOutline(width.getAsDouble(), height.getAsDouble()))
        : Optional.empty();
  }

  private static void refuse(Section section, String key) {
    if (section.node(key).isPresent()) {
      section.fault(
          key,
          "this outline takes no " + key,
          "outline: round with diameter, or outline with corners alone",
          "leave it out");
    }
  }

  private static Optional<Outline> polygon(Section section, YamlNode.Sequence list) {
    List<YamlNode> items = list.items();
    List<Corner> corners = new ArrayList<>();
    if (items.size() < 3 || items.size() > MOST_CORNERS) {
      section.fault(
          OUTLINE,
          items.size() + " corners",
          "3 to " + MOST_CORNERS + " corners in order",
          "write outline: " + CORNERS_EXAMPLE);
      return Optional.empty();
    }
    for (int i = 0; i < items.size(); i++) {
      corner(section, items.get(i), i).ifPresent(corners::add);
    }
    if (corners.size() < items.size()) {
      return Optional.empty();
    }
    Optional<String> fault = PolygonOutline.faultOf(corners);
    if (fault.isPresent()) {
      section.fault(
          OUTLINE,
          fault.orElseThrow(),
          "a polygon whose sides meet at the corners only",
          "list the corners in order, one way round");
      return Optional.empty();
    }
    PolygonOutline outline = new PolygonOutline(corners);
    if (Math.min(outline.widthM(), outline.heightM()) < LEAST_SIDE_M) {
      section.fault(
          OUTLINE, "the panel is too small", "5 cm or more each way", "check the corners' units");
      return Optional.empty();
    }
    return Optional.of(outline);
  }

  private static Optional<Corner> corner(Section section, YamlNode item, int index) {
    String path = section.path(OUTLINE + "[" + index + "]");
    if (item instanceof YamlNode.Sequence pair
        && pair.items().size() == 2
        && pair.items().get(0) instanceof YamlNode.Scalar x
        && pair.items().get(1) instanceof YamlNode.Scalar y) {
      try {
        double cornerX = Quantity.parse(x.text(), Dimension.LENGTH);
        double cornerY = Quantity.parse(y.text(), Dimension.LENGTH);
        if (Math.abs(cornerX) <= FARTHEST_M && Math.abs(cornerY) <= FARTHEST_M) {
          return Optional.of(new Corner(cornerX, cornerY));
        }
        section.faultAt(
            item.line(), path, pair.kind(), "out of range", "-5 m .. 5 m", "move the corner");
      } catch (UnreadableQuantityException e) {
        section.faultAt(item.line(), path, pair.kind(), e.problem(), "-5 m .. 5 m", e.hint());
      }
      return Optional.empty();
    }
    section.faultAt(
        item.line(),
        path,
        item.kind(),
        "a corner is a pair of lengths",
        "[x, y]",
        "write [-22 cm, -55 cm]");
    return Optional.empty();
  }
}

package nullplane.network;

/**
 * A part in its place.
 *
 * @param place where it sits
 * @param part the part, of the place's kind
 */
public record PlacedPart(PartPlace place, Part part) {
  /** Checks that the part is of the kind that belongs there. */
  public PlacedPart {
    if (part.kind() != place.kind()) {
      throw new IllegalArgumentException(
          place.label()
              + " is a "
              + part.kind().word()
              + "; allowed: a "
              + place.kind().word()
              + " only");
    }
  }
}

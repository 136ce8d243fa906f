package nullplane.network;

/**
 * A part in its place with what it must stand there.
 *
 * @param placed the part in its place
 * @param rating what it must stand
 */
public record RatedPart(PlacedPart placed, PartRating rating) {
  /** Returns where it sits. */
  public PartPlace place() {
    return placed.place();
  }

  /** Returns the part. */
  public Part part() {
    return placed.part();
  }
}

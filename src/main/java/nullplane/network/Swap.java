package nullplane.network;

/** What happens in one place of the network when one stack becomes another. */
public sealed interface Swap {
  /** Returns the place. */
  PartPlace place();

  /**
   * The part stays.
   *
   * @param part the part, with the rating that serves both stacks
   */
  record Stays(RatedPart part) implements Swap {
    @Override
    public PartPlace place() {
      return part.place();
    }
  }

  /**
   * A part of another value takes its place.
   *
   * @param old the part that goes
   * @param fresh the part that comes
   */
  record Changes(RatedPart old, RatedPart fresh) implements Swap {
    /** Checks that both sit in one place and differ. */
    public Changes {
      if (old.place() != fresh.place() || old.part().equals(fresh.part())) {
        throw new IllegalArgumentException("a change has one place and two parts");
      }
    }

    @Override
    public PartPlace place() {
      return old.place();
    }
  }

  /**
   * A part comes where there was none.
   *
   * @param part the part
   */
  record Comes(RatedPart part) implements Swap {
    @Override
    public PartPlace place() {
      return part.place();
    }
  }

  /**
   * A part goes and none takes its place.
   *
   * @param part the part
   */
  record Goes(RatedPart part) implements Swap {
    @Override
    public PartPlace place() {
      return part.place();
    }
  }
}

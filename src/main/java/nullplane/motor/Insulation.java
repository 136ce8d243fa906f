package nullplane.motor;

/**
 * How thick the enamel on a wire is. Source: IEC 60317-0-1, grades by overall diameter.
 *
 * <p>Coils are laid out with {@link #GRADE_1}; a wire with an extra bonding coat comes near {@link
 * #GRADE_2}.
 */
public enum Insulation {
  /** Grade 1, the usual single build. */
  GRADE_1("grade 1"),
  /** Grade 2, the heavier build. */
  GRADE_2("grade 2");

  private final String word;

  Insulation(String word) {
    this.word = word;
  }

  /** Returns the grade in plain words. */
  public String word() {
    return word;
  }
}

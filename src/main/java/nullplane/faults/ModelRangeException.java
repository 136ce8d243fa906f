package nullplane.faults;

/** The question lies outside what the model can say. Exit code 3. */
public final class ModelRangeException extends NullplaneException {
  private static final long serialVersionUID = 1L;

  /**
   * @param model the model, for example "panel solver"
   * @param quantity what left the range, with its value and unit
   * @param limits the valid range and what to do
   */
  public ModelRangeException(String model, String quantity, String limits) {
    super(3, model + ": " + quantity + " is outside what the model can say; " + limits);
  }
}

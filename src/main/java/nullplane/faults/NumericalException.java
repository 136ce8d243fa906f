package nullplane.faults;

/** A numerical method failed. Exit code 4. */
public final class NumericalException extends NullplaneException {
  private static final long serialVersionUID = 1L;

  /**
   * @param method the method
   * @param iterations iterations done
   * @param residual relative residual reached
   */
  public NumericalException(String method, int iterations, double residual) {
    super(
        4,
        method
            + " did not converge: relative residual "
            + residual
            + " after "
            + iterations
            + " iterations");
  }
}

package nullplane.network;

import java.util.Optional;

/**
 * The capacitor across the stack that makes a low-pass second order, with a damping resistor in
 * series with it.
 *
 * @param capacitor the capacitor
 * @param damping the damping resistor, if there is one
 */
public record ShuntCapacitor(Capacitor capacitor, Optional<Resistor> damping) {
  /** Returns a shunt of a capacitor alone. */
  public static ShuntCapacitor undamped(double capacitanceF) {
    return new ShuntCapacitor(new Capacitor(capacitanceF), Optional.empty());
  }
}

package nullplane.sample;

import java.util.List;

/**
 * One lever of a change request, and what it does if it is the only one moved.
 *
 * @param lever the lever
 * @param why the figures outside their aim that it brings nearer, as keys of the brief; empty if it
 *     only makes up for what another lever does
 * @param resonanceHz fs after this lever alone (Hz)
 * @param totalQ Qts after this lever alone (1)
 * @param levelDb change of the level above resonance by this lever alone (dB)
 * @param travelM change of the travel, one way (m)
 */
public record RequestRow(
    Lever lever,
    List<String> why,
    double resonanceHz,
    double totalQ,
    double levelDb,
    double travelM) {
  /** Copies the list. */
  public RequestRow {
    why = List.copyOf(why);
  }
}

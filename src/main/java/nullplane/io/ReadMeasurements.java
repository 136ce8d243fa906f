package nullplane.io;

import java.util.List;
import nullplane.sample.MeasuredSample;

/**
 * Measured samples as they were read from a description and its sweeps.
 *
 * @param samples the samples, in the order of the file
 * @param digest SHA-256 over the description's and the sweeps' digests in order, hexadecimal
 * @param fileName the file as the user named it
 */
public record ReadMeasurements(List<MeasuredSample> samples, String digest, String fileName) {
  /** Copies the list. */
  public ReadMeasurements {
    samples = List.copyOf(samples);
  }
}

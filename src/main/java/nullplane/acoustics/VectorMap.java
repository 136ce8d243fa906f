package nullplane.acoustics;

/**
 * A linear map on interleaved complex vectors. An implementation may hold work space for one
 * thread.
 */
interface VectorMap {
  /**
   * Maps a vector.
   *
   * @param input interleaved complex
   * @param output interleaved complex; overwritten
   */
  void apply(double[] input, double[] output);
}

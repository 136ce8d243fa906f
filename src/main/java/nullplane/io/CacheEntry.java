package nullplane.io;

import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import nullplane.acoustics.ComplexMatrix;
import nullplane.acoustics.PanelSolution;

/**
 * The bytes of a cache entry, all numbers with the highest byte first:
 *
 * <ul>
 *   <li>8 bytes: seven letters and the number of the format
 *   <li>32 bytes: the key
 *   <li>4 bytes: number of solutions
 *   <li>per solution: frequency and estimated error, 8 bytes each; then impedance, pressure and far
 *       field, each as rows and columns (4 bytes each), real parts, imaginary parts (8 bytes each)
 *   <li>32 bytes: SHA-256 of all before
 * </ul>
 */
final class CacheEntry {
  /** Number of the format; raise it when the bytes get another meaning. */
  static final int FORMAT = 1;

  /** The largest entry that is written or read (bytes): 64 MiB. */
  static final int MOST_BYTES = 64 << 20;

  private static final long START = 0x4E50_414E_454C_5300L | FORMAT; // "NPANELS"
  private static final int HEAD = Long.BYTES + Sha256.BYTES + Integer.BYTES;
  private static final int SHAPE = 2 * Integer.BYTES;
  private static final int LEAST_PER_SOLUTION = 2 * Double.BYTES + 3 * SHAPE;

  private CacheEntry() {}

  /** Returns why solutions cannot be an entry; empty if they can. */
  static Optional<String> objection(List<PanelSolution> solutions) {
    if (sizeOf(solutions) > MOST_BYTES) {
      return Optional.of("the result is larger than 64 MiB");
    }
    double lastHz = 0;
    for (PanelSolution solution : solutions) {
      if (!Double.isFinite(solution.frequencyHz())
          || !Double.isFinite(solution.estimatedError())
          || !matrices(solution).stream().allMatch(CacheEntry::isFinite)) {
        return Optional.of("a number of the result is not finite");
      }
      if (!(solution.frequencyHz() > lastHz)) {
        return Optional.of("the result's frequencies do not ascend");
      }
      lastHz = solution.frequencyHz();
    }
    return Optional.empty();
  }

  /** Returns the bytes for solutions without an {@link #objection}. */
  static byte[] encode(PanelCacheKey key, List<PanelSolution> solutions) {
    ByteBuffer buffer = ByteBuffer.allocate(Math.toIntExact(sizeOf(solutions)));
    buffer.putLong(START);
    buffer.put(HexFormat.of().parseHex(key.hex()));
    buffer.putInt(solutions.size());
    for (PanelSolution solution : solutions) {
      buffer.putDouble(solution.frequencyHz());
      buffer.putDouble(solution.estimatedError());
      for (ComplexMatrix matrix : matrices(solution)) {
        put(buffer, matrix);
      }
    }
    buffer.put(Sha256.digest(buffer.array(), buffer.position()));
    return buffer.array();
  }

  /**
   * Returns the solutions in an entry's bytes.
   *
   * @throws DamagedEntryException if the bytes are not a whole entry for the key
   */
  static List<PanelSolution> decode(PanelCacheKey key, byte[] bytes) throws DamagedEntryException {
    int end = bytes.length - Sha256.BYTES;
    require(end >= HEAD, "it is cut short");
    ByteBuffer buffer = ByteBuffer.wrap(bytes, 0, end);
    require(buffer.getLong() == START, "it does not start as an entry does");
    byte[] digest = Arrays.copyOfRange(bytes, end, bytes.length);
    require(Arrays.equals(digest, Sha256.digest(bytes, end)), "its check sum does not match");
    byte[] digits = new byte[Sha256.BYTES];
    buffer.get(digits);
    require(HexFormat.of().formatHex(digits).equals(key.hex()), "it belongs to another panel");
    int count = buffer.getInt();
    require(
        count >= 0 && count <= buffer.remaining() / LEAST_PER_SOLUTION, "it states a wrong count");
    List<PanelSolution> solutions = new ArrayList<>(count);
    double lastHz = 0;
    for (int i = 0; i < count; i++) {
      PanelSolution solution = solution(buffer);
      require(solution.frequencyHz() > lastHz, "its frequencies do not ascend");
      lastHz = solution.frequencyHz();
      solutions.add(solution);
    }
    require(!buffer.hasRemaining(), "it is too long");
    return List.copyOf(solutions);
  }

  private static PanelSolution solution(ByteBuffer buffer) throws DamagedEntryException {
    require(buffer.remaining() >= LEAST_PER_SOLUTION, "it states a wrong count");
    double frequencyHz = number(buffer);
    double estimatedError = number(buffer);
    return new PanelSolution(
        frequencyHz, matrix(buffer), matrix(buffer), matrix(buffer), estimatedError);
  }

  private static ComplexMatrix matrix(ByteBuffer buffer) throws DamagedEntryException {
    require(buffer.remaining() >= SHAPE, "it states a wrong count");
    int rows = buffer.getInt();
    int columns = buffer.getInt();
    require(
        rows >= 0 && columns >= 0 && bytesOf(rows, columns) <= buffer.remaining(),
        "it states a wrong count");
    require(rows == 0 || columns > 0, "it has rows without columns");
    double[] re = numbers(buffer, rows * columns);
    double[] im = numbers(buffer, rows * columns);
    return new ComplexMatrix(rows, columns, re, im);
  }

  private static double[] numbers(ByteBuffer buffer, int count) throws DamagedEntryException {
    double[] numbers = new double[count];
    for (int i = 0; i < count; i++) {
      numbers[i] = number(buffer);
    }
    return numbers;
  }

  private static double number(ByteBuffer buffer) throws DamagedEntryException {
    double number = buffer.getDouble();
    require(Double.isFinite(number), "a number is not finite");
    return number;
  }

  private static void put(ByteBuffer buffer, ComplexMatrix matrix) {
    buffer.putInt(matrix.rows());
    buffer.putInt(matrix.columns());
    for (int i = 0; i < matrix.rows(); i++) {
      for (int j = 0; j < matrix.columns(); j++) {
        buffer.putDouble(matrix.re(i, j));
      }
    }
    for (int i = 0; i < matrix.rows(); i++) {
      for (int j = 0; j < matrix.columns(); j++) {
        buffer.putDouble(matrix.im(i, j));
      }
    }
  }

  private static boolean isFinite(ComplexMatrix matrix) {
    for (int i = 0; i < matrix.rows(); i++) {
      for (int j = 0; j < matrix.columns(); j++) {
        if (!Double.isFinite(matrix.re(i, j)) || !Double.isFinite(matrix.im(i, j))) {
          return false;
        }
      }
    }
    return true;
  }

  private static List<ComplexMatrix> matrices(PanelSolution solution) {
    return List.of(solution.impedance(), solution.pressure(), solution.farField());
  }

  /** Bytes of an entry, or some number above the limit. */
  private static long sizeOf(List<PanelSolution> solutions) {
    long size = HEAD + Sha256.BYTES;
    for (PanelSolution solution : solutions) {
      size += LEAST_PER_SOLUTION;
      for (ComplexMatrix matrix : matrices(solution)) {
        size += bytesOf(matrix.rows(), matrix.columns());
        if (size > MOST_BYTES) {
          return size;
        }
      }
    }
    return size;
  }

  /** Bytes of a matrix without its shape; cannot overflow: the largest is 2^31 x 2^31 x 16. */
  private static long bytesOf(long rows, long columns) {
    long cells = rows * columns;
    return cells > MOST_BYTES ? Long.MAX_VALUE / 2 : 2 * Double.BYTES * cells;
  }

  private static void require(boolean condition, String otherwise) throws DamagedEntryException {
    if (!condition) {
      throw new DamagedEntryException(otherwise);
    }
  }
}

package nullplane.search;

import java.nio.BufferUnderflowException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import nullplane.units.Curve;

/**
 * The bytes of a search's state, all numbers with the highest byte first, doubles bit by bit:
 *
 * <ul>
 *   <li>8 bytes: seven letters and the number of the format
 *   <li>4 bytes: version of the search
 *   <li>two texts (4 bytes of length, then UTF-8): the problem's digest, the shape
 *   <li>4 bytes each: number of genes and of objectives
 *   <li>8 bytes each: generation, evaluations, time spent, stride of the history
 *   <li>the stop rule's state: two marks (8 bytes twice) with a generation (8 bytes) between, two
 *       counts (4 bytes)
 *   <li>population and archive: a count (4 bytes), then per candidate violation, objectives, genes
 *   <li>history: a count, then per entry generation, evaluations (8 bytes each), restarts, size (4
 *       bytes each), violation, hypervolume, bests (8 bytes each)
 *   <li>32 bytes: SHA-256 of all before (FIPS 180-4)
 * </ul>
 */
final class StateCodec {
  private static final int FORMAT = 1;
  private static final long START = 0x4E50_5041_5254_4F00L | FORMAT; // "NPPARTO"
  private static final int DIGEST = 32;
  private static final int LEAST = 2 * Long.BYTES + DIGEST;
  private static final int MOST_TEXT = 1 << 16;

  /** Version of the search that kept the state. */
  private final int version;

  StateCodec(int version) {
    this.version = version;
  }

  /** Returns the bytes of a state. */
  byte[] encode(SearchState state, int genes, int objectives) {
    byte[] problem = state.problem().getBytes(StandardCharsets.UTF_8);
    byte[] shape = state.shape().getBytes(StandardCharsets.UTF_8);
    int candidates = state.population().size() + state.archive().size();
    int fixed = 17 * Long.BYTES + problem.length + shape.length + DIGEST;
    int perCandidate = (1 + objectives + genes) * Double.BYTES;
    int perPoint = (5 + objectives) * Double.BYTES;
    ByteBuffer buffer =
        ByteBuffer.allocate(
            Math.addExact(
                fixed,
                Math.addExact(
                    Math.multiplyExact(candidates, perCandidate),
                    Math.multiplyExact(state.history().size(), perPoint))));
    buffer.putLong(START).putInt(version);
    buffer.putInt(problem.length).put(problem).putInt(shape.length).put(shape);
    buffer.putInt(genes).putInt(objectives);
    buffer.putLong(state.generation()).putLong(state.evaluations()).putLong(state.spentMillis());
    buffer.putLong(state.historyStride());
    Stall stall = state.stall();
    put(buffer, stall.best());
    buffer.putLong(stall.bestGeneration());
    put(buffer, stall.start());
    buffer.putInt(stall.fruitless()).putInt(stall.givenUp());
    put(buffer, state.population());
    put(buffer, state.archive());
    buffer.putInt(state.history().size());
    for (ConvergencePoint point : state.history()) {
      buffer.putLong(point.generation()).putLong(point.evaluations());
      buffer.putInt(point.restarts()).putInt(point.frontSize());
      buffer.putDouble(point.violation()).putDouble(point.hypervolume());
      put(buffer, point.bests());
    }
    byte[] body = Arrays.copyOf(buffer.array(), buffer.position());
    byte[] all = Arrays.copyOf(body, body.length + DIGEST);
    System.arraycopy(sha256(body), 0, all, body.length, DIGEST);
    return all;
  }

  private static void put(ByteBuffer buffer, Stall.Mark mark) {
    buffer.putDouble(mark.violation()).putDouble(mark.hypervolume());
  }

  private static void put(ByteBuffer buffer, List<Candidate> candidates) {
    buffer.putInt(candidates.size());
    for (Candidate candidate : candidates) {
      buffer.putDouble(candidate.merit().violation());
      put(buffer, candidate.merit().objectives());
      put(buffer, candidate.genes());
    }
  }

  private static void put(ByteBuffer buffer, Curve numbers) {
    for (int i = 0; i < numbers.size(); i++) {
      buffer.putDouble(numbers.at(i));
    }
  }

  /**
   * Returns the state in some bytes.
   *
   * @param bytes the bytes
   * @param problem digest of the problem it must belong to
   * @param shape shape it must have
   * @param genes genes of the problem
   * @param objectives objectives of the problem
   * @throws UnusableStateException if the bytes are damaged, or of another version, problem or
   *     shape
   */
  SearchState decode(byte[] bytes, String problem, String shape, int genes, int objectives)
      throws UnusableStateException {
    int end = bytes.length - DIGEST;
    require(bytes.length >= LEAST, "it is cut short");
    ByteBuffer buffer = ByteBuffer.wrap(bytes, 0, end);
    long start = buffer.getLong();
    require((start & ~0xFFL) == (START & ~0xFFL), "it is no kept state of a search");
    require(
        Arrays.equals(
            Arrays.copyOfRange(bytes, end, bytes.length), sha256(Arrays.copyOf(bytes, end))),
        "it is damaged: its check sum does not match");
    int found = buffer.getInt();
    require(
        start == START && found == version,
        "it was kept by version " + found + " of the search; this is version " + version);
    require(text(buffer).equals(problem), "it belongs to another problem");
    String foundShape = text(buffer);
    require(
        foundShape.equals(shape),
        "it was kept with other settings (" + foundShape + "); asked for: " + shape);
    try {
      return rest(buffer, problem, shape, genes, objectives);
    } catch (BufferUnderflowException | IllegalArgumentException e) {
      throw new UnusableStateException("it is damaged: its numbers make no state");
    }
  }

  private static SearchState rest(
      ByteBuffer buffer, String problem, String shape, int genes, int objectives)
      throws UnusableStateException {
    require(
        buffer.getInt() == genes && buffer.getInt() == objectives,
        "it belongs to a problem of other size");
    long generation = notNegative(buffer.getLong());
    long evaluations = notNegative(buffer.getLong());
    long spentMillis = notNegative(buffer.getLong());
    long stride = buffer.getLong();
    require(stride > 0, "it is damaged: its history makes no sense");
    Stall stall =
        new Stall(mark(buffer), buffer.getLong(), mark(buffer), buffer.getInt(), buffer.getInt());
    List<Candidate> population = candidates(buffer, genes, objectives);
    List<Candidate> archive = candidates(buffer, genes, objectives);
    int count = count(buffer, (5 + objectives) * Double.BYTES);
    List<ConvergencePoint> history = new ArrayList<>(count);
    for (int i = 0; i < count; i++) {
      long at = buffer.getLong();
      long evaluated = buffer.getLong();
      int restarts = buffer.getInt();
      int size = buffer.getInt();
      history.add(
          new ConvergencePoint(
              at,
              evaluated,
              restarts,
              buffer.getDouble(),
              buffer.getDouble(),
              numbers(buffer, objectives),
              size));
    }
    require(!buffer.hasRemaining(), "it is damaged: it is too long");
    return new SearchState(
        problem,
        shape,
        generation,
        evaluations,
        spentMillis,
        population,
        archive,
        stall,
        stride,
        history);
  }

  private static String text(ByteBuffer buffer) throws UnusableStateException {
    require(buffer.remaining() >= Integer.BYTES, "it is cut short");
    int length = buffer.getInt();
    require(length >= 0 && length <= MOST_TEXT && length <= buffer.remaining(), "it is cut short");
    byte[] text = new byte[length];
    buffer.get(text);
    return new String(text, StandardCharsets.UTF_8);
  }

  private static Stall.Mark mark(ByteBuffer buffer) {
    return new Stall.Mark(buffer.getDouble(), buffer.getDouble());
  }

  private static List<Candidate> candidates(ByteBuffer buffer, int genes, int objectives)
      throws UnusableStateException {
    int count = count(buffer, (1 + objectives + genes) * Double.BYTES);
    List<Candidate> candidates = new ArrayList<>(count);
    for (int i = 0; i < count; i++) {
      Merit merit = new Merit(buffer.getDouble(), numbers(buffer, objectives));
      candidates.add(new Candidate(numbers(buffer, genes), merit));
    }
    return candidates;
  }

  private static int count(ByteBuffer buffer, int bytesEach) throws UnusableStateException {
    int count = buffer.getInt();
    require(
        count >= 0 && (long) count * bytesEach <= buffer.remaining(),
        "it is damaged: it states a wrong count");
    return count;
  }

  private static Curve numbers(ByteBuffer buffer, int count) {
    double[] numbers = new double[count];
    for (int i = 0; i < count; i++) {
      numbers[i] = buffer.getDouble();
    }
    return Curve.of(numbers);
  }

  private static long notNegative(long number) throws UnusableStateException {
    require(number >= 0, "it is damaged: a count is negative");
    return number;
  }

  private static byte[] sha256(byte[] bytes) {
    try {
      return MessageDigest.getInstance("SHA-256").digest(bytes);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }

  private static void require(boolean condition, String otherwise) throws UnusableStateException {
    if (!condition) {
      throw new UnusableStateException(otherwise);
    }
  }
}

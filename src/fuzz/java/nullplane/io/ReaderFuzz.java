package nullplane.io;

import java.util.concurrent.atomic.AtomicLong;
import nullplane.faults.NullplaneException;

/** The fuzzer's way in: one reader of {@link FuzzedReader}, named by the first argument. */
public final class ReaderFuzz {
  private static final AtomicLong INPUTS = new AtomicLong();
  private static FuzzedReader reader = FuzzedReader.SPEC;

  private ReaderFuzz() {}

  /** Takes the reader's name. */
  public static void fuzzerInitialize(String[] arguments) {
    reader = FuzzedReader.of(arguments[0]);
    for (byte[] seed : reader.seeds()) {
      try {
        reader.read(seed); // loads the classes, which the fuzzer rewrites: that is not timed
      } catch (NullplaneException e) {
        // told again when the seed is tried
      }
    }
  }

  /** Reads one input. */
  public static void fuzzerTestOneInput(byte[] bytes) {
    INPUTS.incrementAndGet();
    reader.check(bytes);
  }

  /** Says how many inputs were tried. */
  public static void fuzzerTearDown() {
    System.err.println(FuzzRun.TRIED + INPUTS.get());
  }
}

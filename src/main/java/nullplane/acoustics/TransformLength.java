package nullplane.acoustics;

/** Lengths that a mixed-radix fast Fourier transform handles without detours. */
final class TransformLength {
  private TransformLength() {}

  /** Returns the smallest number with no prime factor above 5 that is not below the given one. */
  static int atLeast(int least) {
    int candidate = Math.max(1, least);
    while (!isSmooth(candidate)) {
      candidate++;
    }
    return candidate;
  }

  private static boolean isSmooth(int number) {
    int rest = number;
    for (int factor : new int[] {2, 3, 5}) {
      while (rest % factor == 0) {
        rest /= factor;
      }
    }
    return rest == 1;
  }
}

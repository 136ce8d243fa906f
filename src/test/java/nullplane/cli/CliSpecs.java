package nullplane.cli;

/** Spec files of a small workshop, for tests of the command line. */
final class CliSpecs {
  private CliSpecs() {}

  /** One woofer on one panel, everything left to the search. */
  static final String READING_ROOM =
      """
      title: Reading-room panel
      woofer: {nominal: 300 mm, effective-diameter: 260 mm}
      stacks:
        - name: single
          panel: {width: 44 cm, height: 110 cm, clearance: 4 cm}
          woofers: [{x: 0 cm, y: -25 cm}]
      listening: {distance: 3 m, height: 1 m}
      target: {level: 76 dB, loudest: 86 dB, low-corner: 40 Hz, upper-corner: 200 Hz}
      amplifier: {voltage: 28 V, lowest-load: 3 ohm}
      """;

  /**
   * The same with ranges so narrow that all candidates are one woofer within production spread: one
   * sheet instead of five.
   */
  static final String ONE_WOOFER =
      READING_ROOM.replace(
          "260 mm}",
          "260 mm, range: {fs: 38 Hz .. 40 Hz, qts: 1.20 .. 1.30, moving-mass: 44 g .. 46 g,"
              + " travel: 9 mm .. 9.5 mm}}");

  /** A wall with a small woofer, which takes long to solve. */
  static final String WALL =
      """
      title: Wall of the hall
      woofer: {nominal: 150 mm, effective-diameter: 120 mm}
      stacks:
        - name: wall
          panel: {width: 4 m, height: 4 m}
          woofers: [{x: 0 cm, y: 0 cm}]
      listening: {distance: 6 m, height: 1 m}
      target: {level: 76 dB, loudest: 86 dB, low-corner: 40 Hz, upper-corner: 200 Hz}
      amplifier: {voltage: 28 V, lowest-load: 3 ohm}
      """;

  /** A wall whose solution needs some hundreds of megabytes. */
  static final String LARGE =
      WALL.replace(
              "nominal: 150 mm, effective-diameter: 120 mm",
              "nominal: 10 cm, effective-diameter: 8 cm")
          .replace("width: 4 m, height: 4 m", "width: 6 m, height: 6 m");

  /** A wall that the panel solver declines. */
  static final String TOO_LARGE =
      WALL.replace(
              "nominal: 150 mm, effective-diameter: 120 mm",
              "nominal: 10 cm, effective-diameter: 5 cm")
          .replace("width: 4 m, height: 4 m", "width: 10 m, height: 10 m");
}

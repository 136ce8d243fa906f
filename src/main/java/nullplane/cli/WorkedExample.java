package nullplane.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What one types to try a command, and what one then sees. All command lines run from the folder
 * that holds {@code specs}, in their order; a test runs every one and looks for every printed line.
 *
 * @param lines the command lines as they stand in the help; one that ends in a backslash goes on in
 *     the next
 * @param says what one sees, in words
 * @param prints lines from the start of the output, as a real run gave them; may be none
 */
record WorkedExample(List<String> lines, String says, List<String> prints) {
  private static final String JAR = "java -jar target/nullplane.jar ";
  private static final String ON = "  ";

  private static final Map<String, WorkedExample> BY_COMMAND =
      Map.of(
          "nullplane",
          of(
              List.of(JAR + "design specs/village-hall.yaml"),
              "Some 20 seconds later the terminal shows the five best woofers for the three panels"
                  + " of a village hall. Their sheets, with pictures, are in results/village-hall:"
                  + " open index.html there with a browser."),
          "design",
          of(
              List.of(JAR + "design specs/village-hall.yaml"),
              "The terminal names the best woofer, what binds it, and the runners-up in a table."
                  + " results/village-hall/index.html leads to the pictures, and from each woofer's"
                  + " sheet to the brief that goes to a maker. The same line typed again gives the"
                  + " same woofers."),
          "judge",
          of(
              List.of(
                  JAR + "judge specs/village-hall.yaml \\",
                  ON + "--woofers specs/catalogue.csv --evaluations 0"),
              "30 invented woofers of a catalogue on the hall's panels, the best first. Without"
                  + " --evaluations 0 the best woofer that could be built stands above them.",
              "Nearly Right 12 suits these panels best. Every woofer lacks something."),
          "compare",
          of(
              List.of(
                  JAR + "compare specs/village-hall.yaml \\",
                  ON + "\"specs/catalogue.csv#Twin 12 A\" \"specs/catalogue.csv#Twin 12 B\""),
              "Two woofers of one catalogue that differ in few figures, and which of them counts:",
              "Twin 12 A suits these panels better: its score costs 0.27 dB less. The largest",
              "share in that is the electrical Q's, +0.42 dB from Twin 12 A to Twin 12 B."),
          "datasheet",
          of(
              List.of(
                  JAR + "datasheet specs/sample-12a.yaml \\",
                  ON + "--panel specs/village-hall.yaml"),
              "Every figure with where it comes from, and the air that the panels add:",
              "Cms       compliance                 0.338  mm/N   stated",
              "Kms       stiffness                   2960  N/m    from Cms",
              "free air         7.05  78.0  31.0  5.20  0.850  0.731",
              "panel: single    11.7  82.7  30.1  5.35  0.875  0.752"),
          "panel",
          of(
              List.of(JAR + "panel specs/flat.yaml"),
              "What each panel does, first the air it adds to a cone, then the way round it:",
              "one          1          3.07   3.07       1.80          3.61",
              "one        0.269     0.557     93.6    none  +5.68  0.267"),
          "sample",
          of(
              List.of(
                  JAR + "sample specs/village-hall.yaml \\",
                  ON + "specs/village-hall-rounds/brief-1.json \\",
                  ON + "specs/village-hall-rounds/round-1.yaml --lock winding"),
              "An invented first sample fails, and its maker is told what to change:",
              "fs     52.9  Hz     52.9 .. 52.9    41.0 .. 46.9     fail",
              "Qts    1.70  1      1.70 .. 1.71    1.33 .. 1.75     pass"),
          "rounds",
          of(
              List.of(
                  JAR + "sample specs/village-hall.yaml \\",
                  ON + "specs/village-hall-rounds/brief-1.json \\",
                  ON + "specs/village-hall-rounds/round-1.yaml --ledger results/hall-ledger",
                  JAR + "rounds results/hall-ledger"),
              "The first line records a round, the second shows what is on record:",
              "One round is on record; the last, round 1: fail."),
          "starter",
          of(
              List.of(JAR + "starter results/my-hall --units inch"),
              "Three files to change, and the two commands to type next:",
              "Wrote results/my-hall/spec.yaml",
              "Wrote results/my-hall/woofer.yaml"),
          "completion",
          of(List.of(JAR + "completion"), "A script for bash and zsh; see above how to load it."));

  WorkedExample {
    lines = List.copyOf(lines);
    prints = List.copyOf(prints);
  }

  private static WorkedExample of(List<String> lines, String says, String... prints) {
    return new WorkedExample(lines, says, List.of(prints));
  }

  /** Returns the example of a command; nothing if it needs none. */
  static Optional<WorkedExample> of(String command) {
    return Optional.ofNullable(BY_COMMAND.get(command));
  }

  /** Returns the paragraphs that end a command's help. */
  List<String> paragraphs() {
    List<String> all = new ArrayList<>(List.of("", "Example:"));
    lines.forEach(line -> all.add("  " + line));
    all.add("");
    all.add(says);
    prints.forEach(line -> all.add("  " + line));
    return all;
  }
}

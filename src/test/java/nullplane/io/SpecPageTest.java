package nullplane.io;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import nullplane.faults.InputFault;
import nullplane.faults.InvalidInputException;
import org.junit.jupiter.api.Test;

/** The page of spec keys names every key that the reader knows. */
class SpecPageTest {
  private static final String ODD = "zebracrossing: 1";

  /** An unknown key in every block makes the reader list the known ones. */
  private static final String EVERY_BLOCK =
      """
      zebracrossing: 1
      woofer: {zebracrossing: 1, range: {zebracrossing: 1}}
      stacks:
        - zebracrossing: 1
          panel: {zebracrossing: 1}
          woofers: [{zebracrossing: 1}]
          wiring: {zebracrossing: 1}
      listening: {zebracrossing: 1}
      target: {zebracrossing: 1}
      amplifier: {zebracrossing: 1}
      crossover: {zebracrossing: 1, coils: {zebracrossing: 1}, capacitors: {zebracrossing: 1}}
      main-driver: {zebracrossing: 1, high-pass: {zebracrossing: 1}}
      priorities: {zebracrossing: 1}
      """;

  private static List<InputFault> faults(String text) {
    return catchThrowableOfType(
            InvalidInputException.class,
            () -> SpecReader.read(text.getBytes(StandardCharsets.UTF_8), "x.yaml"))
        .faults();
  }

  @Test
  void everyKeyIsOnThePage() throws Exception {
    String page = Files.readString(Path.of("src/site/markdown/spec.md"));
    List<InputFault> unknown =
        List.of(EVERY_BLOCK, "crossover: {kind: active, correction: {zebracrossing: 1}}\n").stream()
            .flatMap(text -> faults(text).stream())
            .filter(fault -> fault.problem().equals("unknown key"))
            .toList();
    int blocks = EVERY_BLOCK.split(ODD, -1).length - 1;
    assertThat(unknown).hasSize(blocks + 1);
    for (InputFault fault : unknown) {
      for (String key : fault.allowed().split(", ", -1)) {
        assertThat(page)
            .as("%s beside %s", key, fault.key())
            .containsPattern(
                "`(" + key + "|[a-z-]+\\." + key + ")`|\\{[^`]*\\b" + key + ": [^`]*`");
      }
    }
  }
}

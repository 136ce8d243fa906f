package nullplane.validation;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Holds the page of comparisons to the comparisons that were made. It runs after all other classes
 * (junit-platform.properties) and looks at the classes that ran; the page as a whole is checked, or
 * written with -Dvalidation.write=true, when all of them did.
 */
@Tag("reference")
@Order(Integer.MAX_VALUE)
class ValidationPageReference {
  private static final Path ROOT = Path.of(System.getProperty("basedir", "."));
  private static final Path SOURCES = ROOT.resolve("src/test/java");
  private static final Path PAGE = ROOT.resolve("src/site/markdown/validation.md");
  private static final String HOW =
      "; if the change is right, write the page anew:"
          + " mvn test -Dgroups=reference -Dvalidation.write=true";

  /** Classes tagged as references, this one left out, with the last part of their package. */
  private static Map<String, String> referenceClasses() throws IOException, ClassNotFoundException {
    Map<String, String> packages = new HashMap<>();
    try (Stream<Path> files = Files.walk(SOURCES)) {
      for (Path file : files.filter(f -> f.toString().endsWith("Reference.java")).toList()) {
        String name = SOURCES.relativize(file).toString().replaceAll("[/\\\\]", ".");
        Class<?> type =
            Class.forName(
                name.substring(0, name.length() - ".java".length()),
                false,
                ValidationPageReference.class.getClassLoader());
        if (Recorder.isReference(type) && type != ValidationPageReference.class) {
          String full = type.getPackageName();
          packages.put(type.getSimpleName(), full.substring(full.lastIndexOf('.') + 1));
        }
      }
    }
    return packages;
  }

  @Test
  void thePageSaysWhatTheTestsCompared() throws Exception {
    List<Row> rows = Recorder.rows();
    Map<String, String> packages = referenceClasses();
    Set<String> ran = rows.stream().map(Row::testClass).collect(Collectors.toSet());
    boolean all = ran.containsAll(packages.keySet());
    if (Boolean.getBoolean("validation.write")) {
      assertThat(ran)
          .as("all reference tests must run to write the page")
          .isEqualTo(packages.keySet());
      Files.writeString(PAGE, ValidationPage.write(rows, packages));
    }
    String page = Files.readString(PAGE);
    List<ValidationPage.Printed> printed = ValidationPage.read(page);
    assertThat(printed.stream().map(ValidationPage.Printed::testClass).collect(Collectors.toSet()))
        .as("every class tagged as a reference has its comparisons on the page" + HOW)
        .isEqualTo(packages.keySet());
    Map<String, ValidationPage.Printed> byKey = new HashMap<>();
    printed.forEach(row -> byKey.put(row.key(), row));
    assertThat(byKey).as("titles are unique").hasSameSizeAs(printed);
    List<String> faults = new ArrayList<>();
    for (Row row : rows) {
      ValidationPage.Printed there = byKey.remove(row.key());
      if (there == null) {
        faults.add("not on the page: " + row.key());
      } else if (!row.saidBy(there.source(), there.cells())) {
        faults.add("the page says " + there.cells() + ", the test " + row.cells());
      }
    }
    byKey.values().stream()
        .filter(row -> ran.contains(row.testClass()))
        .forEach(row -> faults.add("on the page, but not compared: " + row.key()));
    assertThat(faults).as(PAGE + HOW).isEmpty();
    if (all) {
      assertThat(ValidationPage.frame(page))
          .as(PAGE + HOW)
          .isEqualTo(ValidationPage.frame(ValidationPage.write(rows, packages)));
    }
  }

  /** A figure that the last bits move is taken; any other is not. */
  @Test
  void onlyTheLastBitsMayDiffer() {
    Row row =
        new Row("T", "s", "a", "1 m", List.of("1.0001 m", "1.0002 m"), List.of("0.01 %"), "1 %");
    assertThat(row.saidBy("s", List.of("a", "1 m", "1.0002 m", "0.01 %", "1 %"))).isTrue();
    assertThat(row.saidBy("s", List.of("a", "1 m", "1.0003 m", "0.01 %", "1 %"))).isFalse();
    assertThat(row.saidBy("s", List.of("a", "1 m", "1.0001 m", "0.02 %", "1 %"))).isFalse();
    assertThat(row.saidBy("other", row.cells())).isFalse();
  }

  @Test
  void aPageIsReadAsItWasWritten() {
    Row row = new Row("T", "x | y.", "|Z| at 2 Hz", "1 m", List.of("1 m"), List.of("none"), "none");
    String page = ValidationPage.write(List.of(row), Map.of("T", "driver"));
    assertThat(ValidationPage.read(page))
        .containsExactly(new ValidationPage.Printed("T", "x | y.", row.cells()));
  }
}

package nullplane;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.lang.reflect.AnnotatedElement;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.platform.commons.annotation.Testable;
import org.junit.platform.commons.support.AnnotationSupport;

/** The build runs every test there is, and their number does not fall unnoticed. */
class TestSuiteTest {
  /** Test methods and rules in the sources when this was last raised; lower it only on purpose. */
  private static final int LEAST_TESTS = 300;

  private static final Path ROOT = Path.of(System.getProperty("basedir", "."));
  private static final Path SOURCES = ROOT.resolve("src/test/java");

  /** Ends of the class names that surefire lists, and failsafe's own. */
  private static Set<String> endsThatRun() throws IOException {
    String build = Files.readString(ROOT.resolve("pom.xml"));
    Matcher include = Pattern.compile("<include>\\*\\*/\\*(\\w+)\\.java</include>").matcher(build);
    Set<String> ends = new TreeSet<>(Set.of("IT"));
    while (include.find()) {
      ends.add(include.group(1));
    }
    return ends;
  }

  private static List<Class<?>> classes() throws IOException, ClassNotFoundException {
    List<Class<?>> classes = new ArrayList<>();
    try (Stream<Path> files = Files.walk(SOURCES)) {
      for (Path file : files.filter(f -> f.toString().endsWith(".java")).sorted().toList()) {
        String name = SOURCES.relativize(file).toString().replaceAll("[/\\\\]", ".");
        if (!name.endsWith("-info.java")) {
          String type = name.substring(0, name.length() - ".java".length());
          classes.add(Class.forName(type, false, TestSuiteTest.class.getClassLoader()));
        }
      }
    }
    return classes;
  }

  /** Counts what JUnit would run in a class and its nested ones. */
  private static long testsIn(Class<?> type) {
    long own =
        Stream.<AnnotatedElement>concat(
                Stream.of(type.getDeclaredMethods()), Stream.of(type.getDeclaredFields()))
            .filter(member -> AnnotationSupport.isAnnotated(member, Testable.class))
            .count();
    for (Class<?> inner : type.getDeclaredClasses()) {
      long nested = testsIn(inner);
      assertThat(nested == 0 || AnnotationSupport.isAnnotated(inner, Nested.class))
          .as("%s holds tests, so it must be @Nested", inner.getName())
          .isTrue();
      own += nested;
    }
    return own;
  }

  @Test
  void theBuildListsTheKindsOfTests() throws IOException {
    assertThat(endsThatRun()).containsExactlyInAnyOrder("IT", "Properties", "Reference", "Test");
  }

  @Test
  void everyClassWithTestsHasANameThatRuns() throws Exception {
    Set<String> ends = endsThatRun();
    for (Class<?> type : classes()) {
      assertThat(ends.stream().anyMatch(end -> type.getSimpleName().endsWith(end)))
          .as("%s: holds tests = its name is one that runs", type.getName())
          .isEqualTo(testsIn(type) > 0);
    }
  }

  @Test
  void theNumberOfTestsDoesNotFall() throws Exception {
    long tests = 0;
    for (Class<?> type : classes()) {
      tests += testsIn(type);
    }
    assertThat(tests).isGreaterThanOrEqualTo(LEAST_TESTS);
  }
}

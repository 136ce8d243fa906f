package nullplane;

import static com.tngtech.archunit.base.DescribedPredicate.not;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.Architectures.layeredArchitecture;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.AccessTarget;
import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaField;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.domain.JavaParameterizedType;
import com.tngtech.archunit.core.domain.JavaType;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The structure that holds the program together, as rules that fail the build. */
@AnalyzeClasses(packages = "nullplane", importOptions = ImportOption.DoNotIncludeTests.class)
class ArchitectureTest {
  /** What computes: same input, same output bits. */
  private static final String[] CORE = {
    "nullplane.units..",
    "nullplane.faults..",
    "nullplane.driver..",
    "nullplane.acoustics..",
    "nullplane.network..",
    "nullplane.motor..",
    "nullplane.fit..",
    "nullplane.scoring..",
    "nullplane.tolerance..",
    "nullplane.judging..",
    "nullplane.sample.."
  };

  private static final String[] PHYSICS = {
    "motor", "acoustics", "network", "driver", "units", "faults"
  };

  private static final String[] RESULTS = {
    "search", "scoring", "tolerance", "judging", "sample", "fit"
  };

  private static String[] with(String[] layers, String... more) {
    return Stream.concat(Stream.of(layers), Stream.of(more)).toArray(String[]::new);
  }

  /**
   * Types outside records and enums that are known to be immutable, by name; our own here wrap
   * arrays, and were looked at: they copy in and out.
   */
  private static final Set<String> IMMUTABLE =
      Set.of(
          "nullplane.units.Curve",
          "nullplane.acoustics.ComplexMatrix",
          "java.awt.Color",
          "java.lang.String",
          "java.lang.Boolean",
          "java.lang.Integer",
          "java.lang.Long",
          "java.lang.Double",
          "java.math.BigDecimal",
          "java.nio.file.Path",
          "java.util.Optional",
          "java.util.OptionalDouble",
          "java.util.OptionalInt",
          "java.util.OptionalLong");

  /** Collections that a record's constructor copies; see the immutable copies of List and Map. */
  private static final Set<String> COLLECTIONS =
      Set.of("java.util.List", "java.util.Set", "java.util.Map", "java.util.SortedMap");

  // 1. Arrows.

  @ArchTest
  static final ArchRule arrows =
      layeredArchitecture()
          .consideringOnlyDependenciesInLayers()
          .layer("units")
          .definedBy("nullplane.units..")
          .layer("faults")
          .definedBy("nullplane.faults..")
          .layer("driver")
          .definedBy("nullplane.driver..")
          .layer("acoustics")
          .definedBy("nullplane.acoustics..")
          .layer("network")
          .definedBy("nullplane.network..")
          .layer("motor")
          .definedBy("nullplane.motor..")
          .layer("fit")
          .definedBy("nullplane.fit..")
          .layer("scoring")
          .definedBy("nullplane.scoring..")
          .layer("tolerance")
          .definedBy("nullplane.tolerance..")
          .layer("judging")
          .definedBy("nullplane.judging..")
          .layer("sample")
          .definedBy("nullplane.sample..")
          .layer("search")
          .definedBy("nullplane.search..")
          .layer("report")
          .definedBy("nullplane.report..")
          .layer("io")
          .definedBy("nullplane.io..")
          .layer("cli")
          .definedBy("nullplane.cli..")
          .whereLayer("units")
          .mayNotAccessAnyLayer()
          .whereLayer("faults")
          .mayNotAccessAnyLayer()
          .whereLayer("driver")
          .mayOnlyAccessLayers("units", "faults")
          .whereLayer("acoustics")
          .mayOnlyAccessLayers("units", "faults")
          .whereLayer("network")
          .mayOnlyAccessLayers("units", "faults")
          .whereLayer("motor")
          .mayOnlyAccessLayers("driver", "units", "faults")
          .whereLayer("fit")
          .mayOnlyAccessLayers("driver", "acoustics", "units", "faults")
          .whereLayer("scoring")
          .mayOnlyAccessLayers(PHYSICS)
          .whereLayer("search")
          .mayOnlyAccessLayers(with(PHYSICS, "scoring", "tolerance"))
          .whereLayer("tolerance")
          .mayOnlyAccessLayers(with(PHYSICS, "scoring"))
          .whereLayer("judging")
          .mayOnlyAccessLayers(with(PHYSICS, "scoring", "tolerance"))
          .whereLayer("sample")
          .mayOnlyAccessLayers(with(PHYSICS, "scoring", "tolerance", "fit"))
          .whereLayer("report")
          .mayOnlyAccessLayers(with(PHYSICS, RESULTS))
          .whereLayer("io")
          .mayOnlyAccessLayers(with(PHYSICS, RESULTS))
          .whereLayer("cli")
          .mayNotBeAccessedByAnyLayer()
          .because("the physics must stand without the search, the search without files and pages");

  @ArchTest
  static final ArchRule readersAndWritersSeeResultsOfASearchOnly =
      noClasses()
          .that()
          .resideInAnyPackage("nullplane.io..", "nullplane.report..")
          .should()
          .dependOnClassesThat(
              resideInAPackage("nullplane.search..")
                  .and(not(recordOrEnum()))
                  .as("are the workings of the search"))
          .because("a result is a value: what shows it does not care how it was found");

  @ArchTest
  static final ArchRule everyClassHasAPlace =
      classes()
          .should()
          .resideInAnyPackage(
              "nullplane.units..",
              "nullplane.faults..",
              "nullplane.driver..",
              "nullplane.acoustics..",
              "nullplane.network..",
              "nullplane.motor..",
              "nullplane.fit..",
              "nullplane.scoring..",
              "nullplane.tolerance..",
              "nullplane.judging..",
              "nullplane.sample..",
              "nullplane.search..",
              "nullplane.report..",
              "nullplane.io..",
              "nullplane.cli..")
          .because("a package that the arrows do not name is under no rule");

  @ArchTest
  static final ArchRule noCycles =
      slices()
          .matching("nullplane.(*)..")
          .should()
          .beFreeOfCycles()
          .because("packages in a ring can only be understood and tested all at once");

  // 2. A pure core.

  @ArchTest
  static final ArchRule coreTouchesNoOutsideWorld =
      noClasses()
          .that()
          .resideInAnyPackage(CORE)
          .should()
          .dependOnClassesThat(
              resideInAnyPackage(
                      "java.io..",
                      "java.nio.file..",
                      "java.nio.channels..",
                      "java.net..",
                      "java.util.logging..",
                      "java.util.concurrent..",
                      "java.util.prefs..",
                      "org.slf4j..")
                  .and(
                      not(
                          DescribedPredicate.<JavaClass>describe(
                              "are the marker of serial form",
                              type -> type.getName().equals("java.io.Serializable"))))
                  .or(
                      DescribedPredicate.describe(
                          "are Thread, Process or Runtime",
                          type ->
                              Set.of(
                                      "java.lang.Thread",
                                      "java.lang.Process",
                                      "java.lang.ProcessBuilder",
                                      "java.lang.Runtime",
                                      "java.time.Clock")
                                  .contains(type.getName()))))
          .because("the core gives the same bits for the same input, on any machine");

  @ArchTest
  static final ArchRule coreAsksNoSystem =
      noClasses()
          .that()
          .resideInAnyPackage(CORE)
          .should()
          .accessTargetWhere(
              access(
                  "a console, clock, environment or default locale",
                  target ->
                      isOwner(target, "java.lang.System")
                              && Set.of(
                                      "out",
                                      "err",
                                      "in",
                                      "console",
                                      "getenv",
                                      "getProperty",
                                      "getProperties",
                                      "currentTimeMillis",
                                      "nanoTime",
                                      "lineSeparator")
                                  .contains(target.getName())
                          || target.getOwner().getPackageName().startsWith("java.time")
                              && target.getName().equals("now")
                          || isOwner(target, "java.util.Locale")
                              && target.getName().equals("getDefault")
                          || usesDefaultLocale(target)))
          .because("a result that depends on clock, machine or language cannot be reproduced");

  // 3. Libraries stay where they are wrapped.

  @ArchTest
  static final ArchRule jeneticsOnlyInSearch =
      library("search", "io.jenetics..")
          .because("how woofers are searched may change, the rest not");

  @ArchTest
  static final ArchRule jacksonOnlyInIo =
      library("io", "com.fasterxml..", "org.yaml..", "org.snakeyaml..")
          .because("the form of files is the business of one package");

  @ArchTest
  static final ArchRule chartsOnlyInReport =
      library("report", "org.knowm..", "de.erichseifert..", "com.openhtmltopdf..")
          .because("pictures and pages are the business of one package");

  @ArchTest
  static final ArchRule commandLineOnlyInCli =
      library("cli", "picocli..", "me.tongfei..")
          .because("the core must be callable without a terminal");

  @ArchTest
  static final ArchRule transformsOnlyInAcoustics =
      library("acoustics", "org.jtransforms..", "pl.edu.icm..")
          .because("the fast product is a detail of the panel solver");

  // 4. One place that prints and exits.

  @ArchTest
  static final ArchRule onlyCliEndsTheProgramOrPrints =
      noClasses()
          .that()
          .resideOutsideOfPackage("nullplane.cli..")
          .should()
          .accessTargetWhere(
              access(
                  "exit, halt or the console",
                  target ->
                      isOwner(target, "java.lang.System")
                              && Set.of("exit", "out", "err", "in").contains(target.getName())
                          || isOwner(target, "java.lang.Runtime")
                              && Set.of("exit", "halt").contains(target.getName())
                          || target.getName().equals("printStackTrace")))
          .because("exit codes and messages are promised to people and scripts in one place");

  // 5. No network.

  @ArchTest
  static final ArchRule nothingTalksToANetwork =
      noClasses()
          .should()
          .accessTargetWhere(
              access(
                  "a network",
                  target -> {
                    String owner = target.getOwner().getName();
                    boolean plainAddress =
                        Set.of("java.net.URI", "java.net.URISyntaxException").contains(owner)
                            || owner.equals("java.net.URL") && target.getName().equals("toURI");
                    return owner.startsWith("java.net.") && !plainAddress
                        || owner.startsWith("javax.net.")
                        || owner.startsWith("java.rmi.")
                        || owner.startsWith("com.sun.net.")
                        || owner.startsWith("java.nio.channels.") && owner.contains("Socket");
                  }))
          .because("a run depends on its files alone and tells nobody of them");

  // 6. Chance is seeded.

  @ArchTest
  static final ArchRule chanceIsSeeded =
      noClasses()
          .should()
          .accessTargetWhere(
              access(
                  "chance without a seed",
                  target -> {
                    String owner = target.getOwner().getName();
                    String name = target.getName();
                    boolean constructor = name.equals("<init>");
                    return owner.equals("java.lang.Math") && name.equals("random")
                        || owner.equals("java.lang.StrictMath") && name.equals("random")
                        || constructor
                            && Set.of("java.util.Random", "java.util.SplittableRandom")
                                .contains(owner)
                            && parameters(target) == 0
                        || constructor && owner.equals("java.security.SecureRandom")
                        || owner.equals("java.util.concurrent.ThreadLocalRandom")
                        || owner.equals("java.util.UUID") && name.equals("randomUUID")
                        || owner.equals("java.util.Collections")
                            && name.equals("shuffle")
                            && parameters(target) == 1
                        || owner.equals("java.util.random.RandomGenerator")
                            && Set.of("of", "getDefault").contains(name)
                        || owner.equals("java.util.random.RandomGeneratorFactory")
                            && name.equals("create")
                            && parameters(target) == 0;
                  }))
          .because("same spec and seed must give the same bytes");

  // 7. Every package says what it is.

  @ArchTest
  static final ArchRule everyPackageIsDescribed =
      classes()
          .should(
              new ArchCondition<JavaClass>("reside in a package that has a package-info") {
                @Override
                public void check(JavaClass type, ConditionEvents events) {
                  boolean described = type.getPackage().tryGetPackageInfo().isPresent();
                  events.add(
                      new SimpleConditionEvent(
                          type, described, type.getName() + ": package-info missing or unmarked"));
                }
              })
          .because("purpose, dependencies and sources of a package stand in its package-info");

  // 8. Records are values.

  @ArchTest
  static final ArchRule recordsHoldImmutableTypes =
      classes()
          .that()
          .areRecords()
          .should(holdImmutableFieldsOnly())
          .because("a record that can change under its holder is no value");

  // 9. No test code in the program.

  @ArchTest
  static final ArchRule noTestLibraries =
      noClasses()
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage(
              "org.junit..", "org.assertj..", "com.tngtech.archunit..", "org.openjdk.jmh..")
          .because("the program runs without its tests");

  // The rule on records is our own code, so it is checked too.

  record Good(double a, String b, Optional<List<String>> c, Map<String, JavaModifier> d) {}

  record BareArray(double[] values) {}

  record ListOfArrays(List<double[]> values) {}

  record MutableClass(StringBuilder text) {}

  record NestedMutable(Optional<List<StringBuilder>> text) {}

  static final class PlainValue {
    private final int count = 1;
  }

  static final class ArrayInside {
    private final double[] values = {1};

    double first() {
      return values[0];
    }
  }

  static final class Changeable {
    private int count;

    int next() {
      return ++count;
    }
  }

  record HoldsPlainValue(PlainValue value) {}

  record HoldsArrayInside(ArrayInside value) {}

  record HoldsChangeable(Changeable value) {}

  @Test
  void recordRuleTellsValuesFromOthers() {
    assertThat(violates(Good.class)).isFalse();
    assertThat(violates(HoldsPlainValue.class)).isFalse();
    assertThat(violates(HoldsArrayInside.class)).isTrue();
    assertThat(violates(HoldsChangeable.class)).isTrue();
    assertThat(violates(BareArray.class)).isTrue();
    assertThat(violates(ListOfArrays.class)).isTrue();
    assertThat(violates(MutableClass.class)).isTrue();
    assertThat(violates(NestedMutable.class)).isTrue();
  }

  private static boolean violates(Class<?> record) {
    return recordsHoldImmutableTypes
        .evaluate(new ClassFileImporter().importClasses(record))
        .hasViolation();
  }

  private static ArchCondition<JavaClass> holdImmutableFieldsOnly() {
    return new ArchCondition<>("hold fields of immutable types only") {
      @Override
      public void check(JavaClass record, ConditionEvents events) {
        for (JavaField field : record.getFields()) {
          if (!field.getModifiers().contains(JavaModifier.STATIC)) {
            events.add(
                new SimpleConditionEvent(
                    field,
                    immutable(field.getType()),
                    field.getFullName() + " is of type " + field.getType().getName()));
          }
        }
      }
    };
  }

  private static boolean immutable(JavaType type) {
    if (type instanceof JavaParameterizedType generic
        && !generic.getActualTypeArguments().stream().allMatch(ArchitectureTest::immutable)) {
      return false;
    }
    JavaClass raw = type.toErasure();
    return !raw.isArray()
        && (raw.isPrimitive()
            || raw.isEnum()
            || raw.isRecord()
            || IMMUTABLE.contains(raw.getName())
            || COLLECTIONS.contains(raw.getName())
            || raw.getPackageName().equals("java.time")
            || isOwnSealedInterface(raw)
            || isOwnPlainValue(raw));
  }

  /** Sealed: all its kinds are known, and as records they are under the same rule. */
  private static boolean isOwnSealedInterface(JavaClass type) {
    return type.isInterface()
        && type.getPackageName().startsWith("nullplane.")
        && type.reflect().isSealed();
  }

  /** A final class of ours whose instance fields are all private, final and plain. */
  private static boolean isOwnPlainValue(JavaClass type) {
    return type.getPackageName().startsWith("nullplane")
        && !type.isInterface()
        && type.getModifiers().contains(JavaModifier.FINAL)
        && type.getAllFields().stream()
            .filter(field -> !field.getModifiers().contains(JavaModifier.STATIC))
            .allMatch(
                field ->
                    field
                            .getModifiers()
                            .containsAll(Set.of(JavaModifier.PRIVATE, JavaModifier.FINAL))
                        && (field.getRawType().isPrimitive()
                            || field.getRawType().isEnum()
                            || IMMUTABLE.contains(field.getRawType().getName())));
  }

  private static DescribedPredicate<JavaClass> recordOrEnum() {
    return DescribedPredicate.describe("records or enums", t -> t.isRecord() || t.isEnum());
  }

  private static ArchRule library(String home, String... packages) {
    return noClasses()
        .that()
        .resideOutsideOfPackage("nullplane." + home + "..")
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage(packages);
  }

  private static DescribedPredicate<JavaAccess<?>> access(
      String description, java.util.function.Predicate<AccessTarget> test) {
    return DescribedPredicate.describe(description, access -> test.test(access.getTarget()));
  }

  private static boolean isOwner(AccessTarget target, String owner) {
    return target.getOwner().getName().equals(owner);
  }

  private static int parameters(AccessTarget target) {
    return target instanceof AccessTarget.CodeUnitAccessTarget call
        ? call.getRawParameterTypes().size()
        : -1;
  }

  /** Text made without naming a locale: 3.5 becomes 3,5 on another desk. */
  private static boolean usesDefaultLocale(AccessTarget target) {
    if (!isOwner(target, "java.lang.String")
        || !(target instanceof AccessTarget.CodeUnitAccessTarget call)) {
      return false;
    }
    return switch (target.getName()) {
      case "formatted" -> true;
      case "format" -> !call.getRawParameterTypes().get(0).getName().equals("java.util.Locale");
      case "toLowerCase", "toUpperCase" -> call.getRawParameterTypes().isEmpty();
      default -> false;
    };
  }
}

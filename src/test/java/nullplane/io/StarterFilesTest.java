package nullplane.io;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import nullplane.driver.Datasheet;
import nullplane.faults.InputFault;
import nullplane.faults.InvalidInputException;
import nullplane.io.StarterFiles.Units;
import nullplane.scoring.DesignSpec;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The files to begin with are read by the program's own readers, and what they say is true. */
class StarterFilesTest {
  private static final Pattern LEFT_OUT = Pattern.compile("( *)#(?:- )?([a-z][a-z-]*):.*");
  private static final Pattern QUANTITY =
      Pattern.compile("(-?[0-9]+(?:\\.[0-9]+)?) (cm2|in2|mm|cm|m|in|ft|ft3|l)\\b");
  private static final Pattern SCALAR = Pattern.compile(" *(?:- )?#? *([a-z][a-z-]*): ([^{\\[#]+)");

  @TempDir private Path folder;

  private List<String> write(Units units) {
    NewFiles.write(folder.resolve(units.word()), StarterFiles.in(units));
    return text(units, StarterFiles.SPEC).lines().toList();
  }

  private static String text(Units units, String name) {
    return new String(StarterFiles.in(units).get(name), StandardCharsets.UTF_8);
  }

  /** Reads a changed spec beside the other files. */
  private DesignSpec read(Units units, List<String> lines) throws IOException {
    Path changed = folder.resolve(units.word()).resolve("changed.yaml");
    return SpecReader.read(Files.write(changed, lines)).spec();
  }

  /** A key that is left out: its lines, from the first on. */
  private record LeftOut(int first, List<String> lines, int indent) {
    /** Returns the lines without the # before them. */
    List<String> taken() {
      return lines.stream()
          .map(line -> line.substring(0, indent) + line.substring(indent + 1))
          .toList();
    }
  }

  private static List<LeftOut> leftOut(List<String> lines) {
    List<LeftOut> found = new ArrayList<>();
    for (int i = 0; i < lines.size(); i++) {
      Matcher start = LEFT_OUT.matcher(lines.get(i));
      if (start.matches()) {
        String goesOn = start.group(1) + "#  ";
        int end = i + 1;
        while (end < lines.size() && lines.get(end).startsWith(goesOn)) {
          end++;
        }
        found.add(new LeftOut(i, lines.subList(i, end), start.group(1).length()));
        i = end - 1;
      }
    }
    return found;
  }

  private static List<String> with(List<String> lines, LeftOut key, List<String> taken) {
    List<String> changed = new ArrayList<>(lines);
    changed.subList(key.first(), key.first() + key.lines().size()).clear();
    changed.addAll(key.first(), taken);
    return changed;
  }

  @ParameterizedTest
  @EnumSource
  void theyAreReadAsTheyStand(Units units) throws IOException {
    List<String> lines = write(units);
    assertThat(lines).allMatch(line -> line.length() <= 80).noneMatch(line -> line.contains("|"));
    assertThat(read(units, lines).stacks()).hasSize(2);
    Path woofer = folder.resolve(units.word()).resolve(StarterFiles.WOOFER);
    Datasheet sheet = WooferReader.readDatasheet(woofer).sheet();
    assertThat(sheet.completed().contradictions()).isEmpty();
    assertThat(WooferFiles.readEach(woofer).woofers()).hasSize(1);
    assertThat(sheet.name()).contains("invented");
  }

  @ParameterizedTest
  @EnumSource
  void everyKeyThatIsLeftOutMayBeTakenIn(Units units) throws IOException {
    List<String> lines = write(units);
    List<LeftOut> keys = leftOut(lines);
    assertThat(keys).hasSizeGreaterThan(20);
    for (LeftOut key : keys) {
      assertThatCode(() -> read(units, with(lines, key, key.taken())))
          .as(String.join("\n", key.taken()))
          .doesNotThrowAnyException();
    }
  }

  /** Of a block, the keys that are needed in it and any one of the others are enough. */
  @ParameterizedTest
  @EnumSource
  void everyKeyOfABlockMayStandAlone(Units units) throws IOException {
    List<String> lines = write(units);
    int tried = 0;
    for (LeftOut key : leftOut(lines)) {
      List<String> taken = key.taken();
      for (int i = 1; i < taken.size() && !taken.get(0).contains("- name"); i++) {
        if (taken.get(i).strip().startsWith("#")) {
          continue;
        }
        List<String> alone = alone(taken, i);
        tried++;
        assertThatCode(() -> read(units, with(lines, key, alone)))
            .as(String.join("\n", alone))
            .doesNotThrowAnyException();
      }
    }
    assertThat(tried).isGreaterThan(25);
  }

  /** The head of a block, what is needed in it, and one line with those that it stands under. */
  private static List<String> alone(List<String> block, int kept) {
    Set<Integer> indices = new LinkedHashSet<>(List.of(0));
    for (int i = 1; i < block.size(); i++) {
      if (block.get(i - 1).contains("; needed")) {
        indices.add(i);
        addHeads(block, i, indices);
      }
    }
    indices.add(kept);
    addHeads(block, kept, indices);
    for (int i = kept + 1;
        i < block.size() && indent(block.get(i)) > indent(block.get(kept));
        i++) {
      indices.add(i);
    }
    return new TreeSet<>(indices).stream().map(block::get).toList();
  }

  private static void addHeads(List<String> block, int line, Set<Integer> indices) {
    int indent = indent(block.get(line));
    for (int i = line - 1; i >= 0; i--) {
      if (!block.get(i).strip().startsWith("#") && indent(block.get(i)) < indent) {
        indent = indent(block.get(i));
        indices.add(i);
      }
    }
  }

  private static int indent(String line) {
    return line.length() - line.stripLeading().length();
  }

  /** Line by line, lengths, areas and volumes differ by what the digits leave open. */
  @Test
  void bothUnitsDescribeOneSystem() throws Exception {
    int compared = 0;
    for (String name : List.of(StarterFiles.SPEC, StarterFiles.WOOFER)) {
      List<String> metric = text(Units.METRIC, name).lines().toList();
      List<String> inch = text(Units.INCH, name).lines().toList();
      assertThat(inch).hasSameSizeAs(metric);
      for (int i = 0; i < metric.size(); i++) {
        if (metric.get(i).strip().startsWith("# ") || metric.get(i).startsWith("#  #")) {
          continue; // words
        }
        List<MatchResult> ours = QUANTITY.matcher(metric.get(i)).results().toList();
        List<MatchResult> theirs = QUANTITY.matcher(inch.get(i)).results().toList();
        assertThat(theirs).as(inch.get(i)).hasSameSizeAs(ours);
        for (int q = 0; q < ours.size(); q++) {
          assertThat(Math.abs(si(ours.get(q)) - si(theirs.get(q))))
              .as("%s and %s", metric.get(i), inch.get(i))
              .isLessThanOrEqualTo(halfDigit(ours.get(q)) + halfDigit(theirs.get(q)));
          compared++;
        }
      }
    }
    assertThat(compared).isGreaterThan(20);
    DesignSpec one = read(Units.METRIC, write(Units.METRIC));
    DesignSpec other = read(Units.INCH, write(Units.INCH));
    assertThat(other.stacks().size()).isEqualTo(one.stacks().size());
    assertThat(other.woofer().radiusM() / one.woofer().radiusM()).isBetween(0.99, 1.01);
    assertThat(other.target()).isEqualTo(one.target());
    assertThat(text(Units.INCH, StarterFiles.SPEC)).contains("travel: 4 mm .. 14 mm");
    assertThat(text(Units.INCH, StarterFiles.SPEC)).doesNotContain(" cm");
  }

  private static double si(MatchResult quantity) {
    return Double.parseDouble(quantity.group(1)) * unit(quantity);
  }

  private static double unit(MatchResult quantity) {
    return Stream.of(Dimension.LENGTH, Dimension.AREA, Dimension.VOLUME)
        .map(dimension -> dimension.factor(quantity.group(2)))
        .flatMap(Optional::stream)
        .findFirst()
        .orElseThrow()
        .doubleValue();
  }

  private static double halfDigit(MatchResult quantity) {
    int dot = quantity.group(1).indexOf('.');
    int digits = dot < 0 ? 0 : quantity.group(1).length() - dot - 1;
    return 0.5 * Math.pow(10, -digits) * unit(quantity) * (1 + 1e-9);
  }

  /** The reader is asked what it allows by a value that nothing can have. */
  @Test
  void theCommentsSayWhatTheReaderAllows() throws IOException {
    List<String> lines = write(Units.METRIC);
    int checked = 0;
    for (LeftOut key : leftOut(lines)) {
      for (int i = 0; i < key.lines().size(); i++) {
        List<String> taken = new ArrayList<>(key.taken());
        Optional<String> allowed = allowedAt(lines, key, taken, i);
        int above = key.first() + i - 1;
        if (allowed.isPresent() && lines.get(above).matches("( *#)? *# [^ ].*")) {
          assertThat(lines.get(above)).as(key.lines().get(i)).contains(allowed.orElseThrow());
          checked++;
        }
      }
    }
    for (int i = 1; i < lines.size(); i++) {
      if (!lines.get(i).contains("#")) {
        LeftOut plain = new LeftOut(i, List.of(lines.get(i)), 0);
        Optional<String> allowed =
            allowedAt(lines, plain, new ArrayList<>(List.of(lines.get(i))), 0);
        if (allowed.isPresent() && lines.get(i - 1).strip().startsWith("#")) {
          assertThat(lines.get(i - 1)).as(lines.get(i)).contains(allowed.orElseThrow());
          checked++;
        }
      }
    }
    assertThat(checked).isGreaterThan(40);
  }

  /** Returns the range that the reader names for the key of a line, if it is one of a quantity. */
  private Optional<String> allowedAt(List<String> lines, LeftOut key, List<String> taken, int index)
      throws IOException {
    Matcher scalar = SCALAR.matcher(taken.get(index));
    if (!scalar.matches() || taken.get(index).strip().startsWith("#")) {
      return Optional.empty();
    }
    Matcher unit = Pattern.compile(".*[0-9] ?([A-Za-z/]*)").matcher(scalar.group(2).strip());
    if (!unit.matches()) {
      return Optional.empty();
    }
    String line = taken.get(index);
    taken.set(
        index, line.substring(0, line.indexOf(": ") + 2) + ("999999999 " + unit.group(1)).strip());
    InvalidInputException refused =
        catchThrowableOfType(
            InvalidInputException.class, () -> read(Units.METRIC, with(lines, key, taken)));
    return refused == null
        ? Optional.empty()
        : refused.faults().stream()
            .filter(fault -> fault.problem().equals("out of range"))
            .map(InputFault::allowed)
            .findFirst();
  }

  /** The page of keys names every key that there is; see {@link SpecPageTest}. */
  @ParameterizedTest
  @EnumSource
  void everyKeyOfThePageOccurs(Units units) throws IOException {
    String page = Files.readString(Path.of("src/site/markdown/spec.md"));
    Set<String> keys = new TreeSet<>();
    page.lines()
        .filter(line -> line.startsWith("| `"))
        .map(line -> line.substring(1, line.indexOf('|', 1)))
        .forEach(
            cell ->
                Pattern.compile("`([a-z-]+\\.)?([a-z][a-z-]*)`")
                    .matcher(cell)
                    .results()
                    .forEach(key -> keys.add(key.group(2))));
    assertThat(keys).hasSizeGreaterThan(55).contains("time-of-flight", "diameter", "most-parts");
    String starter = text(units, StarterFiles.SPEC);
    assertThat(keys)
        .allSatisfy(key -> assertThat(starter).containsPattern("(?m)(^|[# {-])" + key + ":( |$)"));
  }
}

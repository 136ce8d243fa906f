package nullplane.sample;

import java.time.LocalDate;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import nullplane.driver.Woofer;
import nullplane.scoring.StackAssessment;

/**
 * What a maker of woofers is given, and what samples are held against later.
 *
 * @param title title of the panel system
 * @param name what the woofer is called
 * @param rank its place in its run, from 1
 * @param specDigest digest of the spec, hexadecimal
 * @param specDate date of the spec, if it bears one
 * @param seed seed of the run
 * @param version version of the program
 * @param woofer the nominal woofer
 * @param values every value, in the order of the sheet; keys differ
 * @param tests acceptance tests
 * @param priorities what matters most, first things first
 * @param questions what the maker is asked
 * @param stacks what the nominal woofer does in each stack
 * @param impedance the window of the impedance sweep at incoming inspection
 */
public record MakerBrief(
    String title,
    String name,
    int rank,
    String specDigest,
    Optional<LocalDate> specDate,
    long seed,
    String version,
    Woofer woofer,
    List<BriefValue> values,
    List<BriefTest> tests,
    List<String> priorities,
    List<String> questions,
    List<StackAssessment> stacks,
    ImpedanceWindow impedance) {
  /** Copies the lists and checks that no key occurs twice. */
  public MakerBrief {
    values = List.copyOf(values);
    tests = List.copyOf(tests);
    priorities = List.copyOf(priorities);
    questions = List.copyOf(questions);
    stacks = List.copyOf(stacks);
    Set<String> keys = new HashSet<>();
    for (BriefValue value : values) {
      if (!keys.add(value.key())) {
        throw new IllegalArgumentException("the brief's key " + value.key() + " occurs twice");
      }
    }
  }

  /** Returns the value of a key, if the brief has one. */
  public Optional<BriefValue> value(String key) {
    return values.stream().filter(value -> value.key().equals(key)).findFirst();
  }

  /** Returns the values of a section, in order. */
  public List<BriefValue> values(BriefValue.Section section) {
    return values.stream().filter(value -> value.section() == section).toList();
  }
}

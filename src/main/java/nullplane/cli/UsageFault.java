package nullplane.cli;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import nullplane.io.Excerpt;
import nullplane.io.NearestKey;
import picocli.CommandLine;
import picocli.CommandLine.MissingParameterException;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import picocli.CommandLine.OverwrittenOptionException;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;

/** A wrong command line in one line: what is wrong, what is allowed, what to write. */
final class UsageFault {
  /** Letters of an option such as -h: any two of them look alike. */
  private static final int SHORT_OPTION = 2;

  private final ParameterException fault;
  private final List<String> words;
  private final CommandLine command;
  private final CommandSpec spec;

  private UsageFault(ParameterException fault, List<String> words) {
    this.fault = fault;
    this.words = words;
    this.command = fault.getCommandLine();
    this.spec = command.getCommandSpec();
  }

  /**
   * Returns what to tell the user.
   *
   * @param fault what the parser found
   * @param args the command line
   */
  static String line(ParameterException fault, String[] args) {
    UsageFault usage = new UsageFault(fault, List.of(args));
    String help = " (" + usage.spec.qualifiedName() + " --help ";
    List<String> unknown = usage.unknownOptions();
    if (fault instanceof MissingParameterException && !unknown.isEmpty()) {
      return usage.unmatched(unknown, help); // what is missing was most likely meant by it
    }
    return fault instanceof UnmatchedArgumentException unmatched
        ? usage.unmatched(unmatched.getUnmatched(), help)
        : usage.other() + help + "says more)";
  }

  /** Returns the words that look like options and are none of this command. */
  private List<String> unknownOptions() {
    return words.stream()
        .filter(word -> word.startsWith("--") && word.length() > SHORT_OPTION)
        .filter(word -> spec.findOption(word.split("=", 2)[0]) == null)
        .toList();
  }

  private String other() {
    if (fault instanceof MissingParameterException missing && !missing.getMissing().isEmpty()) {
      return missing(missing.getMissing());
    }
    ArgSpec place = fault.getArgSpec();
    if (fault instanceof OverwrittenOptionException overwritten) {
      return name(overwritten.getOverwritten()) + " stands there twice; write it once";
    }
    return place == null
        ? String.valueOf(fault.getMessage()).replaceAll("\\s*\\R\\s*", " ")
        : wrongValue(place);
  }

  private String unmatched(List<String> unknown, String help) {
    Optional<String> option = unknown.stream().filter(word -> word.startsWith("-")).findFirst();
    if (option.isPresent()) {
      String word = option.orElseThrow();
      int equals = word.indexOf('=');
      String typed = equals > 0 ? word.substring(0, equals) : word;
      Set<String> known = new TreeSet<>();
      spec.options().forEach(one -> known.addAll(Arrays.asList(one.names())));
      return spec.name()
          + " has no option "
          + quoted(typed)
          + (typed.length() > SHORT_OPTION ? near(typed, known).orElse("") : "")
          + help
          + "lists them)";
    }
    String typed = unknown.get(0);
    Set<String> commands = command.getSubcommands().keySet();
    if (!commands.isEmpty()) {
      return "there is no command "
          + quoted(typed)
          + near(typed, commands)
              .orElseGet(() -> "; allowed: " + String.join(", ", new TreeSet<>(commands)))
          + help
          + "lists them)";
    }
    return spec.name()
        + " takes "
        + spec.positionalParameters().stream()
            .map(PositionalParamSpec::paramLabel)
            .collect(Collectors.joining(", "))
        + " and options, and "
        + quoted(typed)
        + " is one too many; put a name that holds blanks in quotes"
        + help
        + "says more)";
  }

  private static Optional<String> near(String typed, Set<String> known) {
    return NearestKey.of(typed, known).map(near -> "; did you mean '" + near + "'?");
  }

  private String missing(List<ArgSpec> missing) {
    for (ArgSpec one : missing) {
      if (one instanceof OptionSpec option && isThere(option)) {
        return name(one)
            + " needs a value; write "
            + option.longestName()
            + " "
            + option.paramLabel();
      }
    }
    List<String> labels = new ArrayList<>();
    for (ArgSpec one : missing) {
      labels.add(
          one instanceof OptionSpec option
              ? option.longestName() + " " + option.paramLabel()
              : one.paramLabel());
    }
    return (labels.size() == 1
            ? labels.get(0) + " is missing: " + clause(missing.get(0))
            : String.join(" and ", labels) + " are missing")
        + "; write "
        + spec.qualifiedName()
        + spec.positionalParameters().stream()
            .map(one -> " " + one.paramLabel())
            .collect(Collectors.joining())
        + spec.requiredArgs().stream()
            .filter(OptionSpec.class::isInstance)
            .map(OptionSpec.class::cast)
            .map(one -> " " + one.longestName() + " " + one.paramLabel())
            .collect(Collectors.joining());
  }

  /** Returns whether the user wrote an option. */
  private boolean isThere(OptionSpec option) {
    return Arrays.stream(option.names())
        .anyMatch(name -> words.stream().anyMatch(w -> w.equals(name) || w.startsWith(name + "=")));
  }

  private String wrongValue(ArgSpec place) {
    if (place instanceof OptionSpec option && option.arity().max() == 0) {
      return name(place) + " takes no value; write " + option.longestName() + " alone";
    }
    Class<?> type = place.auxiliaryTypes()[0];
    String allowed =
        type.isEnum() && place.completionCandidates() != null
            ? String.join(", ", place.completionCandidates())
            : type == long.class || type == int.class || type == Integer.class
                ? "a whole number"
                : "a file name";
    return name(place)
        + " is "
        + quoted(value())
        + "; allowed: "
        + allowed
        + (place instanceof OptionSpec option
            ? "; write for example "
                + option.longestName()
                + " "
                + (type.isEnum() ? allowed.split(",", -1)[0] : "4")
            : "");
  }

  /** Returns the value at fault. */
  private String value() {
    return fault.getValue() == null ? "" : fault.getValue();
  }

  private static String name(ArgSpec place) {
    return place instanceof OptionSpec option ? option.longestName() : place.paramLabel();
  }

  /** Returns what an argument is, as a clause: its description without capital and full stop. */
  private static String clause(ArgSpec place) {
    String text = String.join(" ", place.description()).replaceAll("[.]$", "");
    return text.isEmpty() ? "" : text.substring(0, 1).toLowerCase(Locale.ROOT) + text.substring(1);
  }

  private static String quoted(String word) {
    return "'" + Excerpt.of(word) + "'";
  }
}

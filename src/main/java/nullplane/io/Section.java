package nullplane.io;

import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import nullplane.units.Range;

/**
 * A block of keys while it is read. Every method that finds a value wrong adds the fault to the
 * list and returns empty, so that reading goes on and all faults are told at once.
 */
final class Section {
  private static final int LONGEST_TEXT = 80;

  private final FaultList faults;
  private final String path;
  private final YamlNode.Mapping mapping;
  private final Map<String, YamlNode.Entry> entries = new LinkedHashMap<>();
  private final Set<String> meant = new HashSet<>();

  private Section(FaultList faults, String path, YamlNode.Mapping mapping, List<String> known) {
    this.faults = faults;
    this.path = path;
    this.mapping = mapping;
    for (YamlNode.Entry entry : mapping.entries()) {
      enter(entry, known);
    }
  }

  private void enter(YamlNode.Entry entry, List<String> known) {
    String shown = Excerpt.of(entry.key());
    if (!known.contains(entry.key())) {
      Optional<String> nearest = NearestKey.of(entry.key(), known);
      nearest.ifPresent(meant::add);
      faults.add(
          entry.line(),
          path(shown),
          "",
          "unknown key",
          String.join(", ", known),
          startsWithDigit(entry.key())
              ? "write numbers with a decimal point: within braces a comma starts a new key"
              : nearest.map(key -> "did you mean " + key + "?").orElse("leave it out"));
      return;
    }
    YamlNode.Entry earlier = entries.putIfAbsent(entry.key(), entry);
    if (earlier != null) {
      faults.add(
          entry.line(),
          path(shown),
          entry.value().kind(),
          "the key stands here twice, first in line " + earlier.line(),
          "each key once",
          "leave one of them out");
    }
  }

  private static boolean startsWithDigit(String key) {
    return !key.isEmpty() && Character.isDigit(key.charAt(0));
  }

  /**
   * Returns the section a node holds; a fault if it holds none.
   *
   * @param faults where faults go
   * @param path dotted path of the node; empty for the whole file
   * @param node the node
   * @param example what to write, for example "panel: {width: 44 cm, height: 110 cm}"
   * @param known the keys it may hold
   */
  static Optional<Section> of(
      FaultList faults, String path, YamlNode node, String example, List<String> known) {
    if (node instanceof YamlNode.Mapping mapping) {
      return Optional.of(new Section(faults, path, mapping, known));
    }
    faults.add(
        node.line(),
        path,
        node.kind(),
        "keys with values are needed here",
        String.join(", ", known),
        "write " + example);
    return Optional.empty();
  }

  /** Returns the dotted path of a key in this section. */
  String path(String key) {
    return path.isEmpty() ? key : path + "." + key;
  }

  /** Returns the section's own path. */
  String path() {
    return path;
  }

  /** Returns the line of a key, or the section's own if the key is absent. */
  int line(String key) {
    YamlNode.Entry entry = entries.get(key);
    return entry == null ? mapping.line() : entry.line();
  }

  /** Returns whether the key is there, or an unknown one that seems to be meant for it. */
  boolean has(String key) {
    return entries.containsKey(key) || meant.contains(key);
  }

  /** Adds a fault of one key, with the text found there. */
  void fault(String key, String problem, String allowed, String hint) {
    YamlNode.Entry entry = entries.get(key);
    String value = entry == null ? "" : entry.value().kind();
    faults.add(line(key), path(key), value, problem, allowed, hint);
  }

  /** Adds a fault of something within a key's value. */
  void faultAt(int line, String where, String value, String problem, String allowed, String hint) {
    faults.add(line, where, value, problem, allowed, hint);
  }

  /** Returns a quantity that must be there (SI); empty with a fault otherwise. */
  OptionalDouble required(QuantityKey key) {
    return requireKey(key.name(), key.write(), key.limits().words())
        ? optional(key)
        : OptionalDouble.empty();
  }

  /** Returns a quantity that may be left out (SI); a fault if it is there and wrong. */
  OptionalDouble optional(QuantityKey key) {
    return lower(read(key, false, true));
  }

  /** Returns a quantity as {@link #optional} does, without adding a fault a second time. */
  OptionalDouble quiet(QuantityKey key) {
    return lower(read(key, false, false));
  }

  private static OptionalDouble lower(Optional<Range> range) {
    return range.isPresent()
        ? OptionalDouble.of(range.orElseThrow().lower())
        : OptionalDouble.empty();
  }

  /** Returns a range that may be left out (SI); a fault if it is there and wrong. */
  Optional<Range> optionalRange(QuantityKey key) {
    return read(key, true, true);
  }

  private Optional<Range> read(QuantityKey key, boolean range, boolean aloud) {
    YamlNode.Entry entry = entries.get(key.name());
    if (entry == null) {
      return Optional.empty();
    }
    Limits limits = key.limits();
    String problem;
    String hint = key.write();
    if (entry.value() instanceof YamlNode.Scalar scalar) {
      try {
        Range found =
            range
                ? Quantity.parseRange(scalar.text(), key.form())
                : Range.pinned(Quantity.parse(scalar.text(), key.form()));
        if (limits.range().contains(found.lower()) && limits.range().contains(found.upper())) {
          return Optional.of(found);
        }
        problem = "out of range";
      } catch (UnreadableQuantityException e) {
        problem = e.problem();
        hint = e.hint();
      }
    } else {
      problem = "a single value is needed";
    }
    if (aloud) {
      fault(key.name(), problem, limits.words(), hint);
    }
    return Optional.empty();
  }

  /** Returns a short text that must be there; empty with a fault otherwise. */
  Optional<String> requiredText(String key, String example) {
    return requireKey(key, "write " + key + ": " + example, "a short text")
        ? optionalText(key, example)
        : Optional.empty();
  }

  /** Returns a short text that may be left out; a fault if it is there and wrong. */
  Optional<String> optionalText(String key, String example) {
    YamlNode.Entry entry = entries.get(key);
    if (entry == null) {
      return Optional.empty();
    }
    String allowed = "1 to " + LONGEST_TEXT + " visible characters on one line";
    if (entry.value() instanceof YamlNode.Scalar scalar) {
      String text = scalar.text().strip();
      if (!text.isEmpty()
          && text.length() <= LONGEST_TEXT
          && text.codePoints().allMatch(Excerpt::visible)) {
        return Optional.of(text);
      }
    }
    fault(key, "a short text is needed", allowed, "write " + key + ": " + example);
    return Optional.empty();
  }

  /** Returns a section that must be there; empty with a fault otherwise. */
  Optional<Section> requiredSection(String key, String example, List<String> known) {
    return requireKey(key, "write " + key + ": " + example, "")
        ? optionalSection(key, example, known)
        : Optional.empty();
  }

  /** Returns a section that may be left out; a fault if it is there and wrong. */
  Optional<Section> optionalSection(String key, String example, List<String> known) {
    YamlNode.Entry entry = entries.get(key);
    return entry == null
        ? Optional.empty()
        : of(faults, path(key), entry.value(), key + ": " + example, known);
  }

  /**
   * Returns the items of a list that must be there; none with a fault otherwise.
   *
   * @param most the most items it may have
   */
  List<YamlNode> requiredList(String key, int most, String example) {
    if (!requireKey(key, "write " + key + ": " + example, "a list")) {
      return List.of();
    }
    YamlNode.Entry entry = entries.get(key);
    if (entry == null) {
      return List.of();
    }
    String allowed = "a list of 1 to " + most;
    if (!(entry.value() instanceof YamlNode.Sequence sequence)) {
      fault(key, "a list is needed", allowed, "write " + key + ": " + example);
      return List.of();
    }
    int count = sequence.items().size();
    if (count < 1 || count > most) {
      faults.add(
          entry.line(),
          path(key),
          count + " entries",
          count < 1 ? "the list is empty" : "the list is too long",
          allowed,
          "write " + key + ": " + example);
      return List.of();
    }
    return sequence.items();
  }

  /** Returns the value of a key as it stands in the file. */
  Optional<YamlNode> node(String key) {
    return Optional.ofNullable(entries.get(key)).map(YamlNode.Entry::value);
  }

  /** Returns whether a key is there; adds a fault if neither it nor a near miss is. */
  private boolean requireKey(String key, String write, String allowed) {
    if (entries.containsKey(key)) {
      return true;
    }
    if (!meant.contains(key)) {
      faults.add(mapping.line(), path(key), "", "the key is missing", allowed, write);
    }
    return false;
  }
}

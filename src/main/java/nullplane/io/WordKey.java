package nullplane.io;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** A key whose value is one of a few words, or a list of them. */
final class WordKey<T> {
  private final String name;
  private final Map<String, T> known = new LinkedHashMap<>();

  WordKey(String name) {
    this.name = name;
  }

  /** Returns this key, which also knows a word. */
  WordKey<T> with(String word, T value) {
    known.put(word, value);
    return this;
  }

  /** Returns the key as it stands in the file. */
  String name() {
    return name;
  }

  /** Returns the words, for messages. */
  String allowed() {
    return String.join(", ", known.keySet());
  }

  /** Returns the value of the one word there; nothing if the key is absent or at fault. */
  Optional<T> one(Section section) {
    List<YamlNode> items = items(section);
    if (items.size() > 1) {
      fault(section, items.get(1), "one word is needed", known.keySet().iterator().next());
      return Optional.empty();
    }
    List<T> found = values(section, items);
    return found.isEmpty() ? Optional.empty() : Optional.of(found.get(0));
  }

  /** Returns the values of the words there, each once; none if the key is absent or at fault. */
  List<T> several(Section section) {
    return values(section, items(section));
  }

  private List<T> values(Section section, List<YamlNode> items) {
    List<T> found = new ArrayList<>();
    for (YamlNode item : items) {
      String word = item instanceof YamlNode.Scalar scalar ? scalar.text().strip() : "";
      T value = known.get(word);
      if (value == null) {
        String first = known.keySet().iterator().next();
        fault(
            section,
            item,
            "this is not one that is known",
            NearestKey.of(word, known.keySet()).orElse(first));
      } else {
        found.add(value);
      }
    }
    return found.size() < items.size() ? List.of() : found.stream().distinct().toList();
  }

  /** The items of a list, or a single value as a list of one; an empty list is a fault. */
  private List<YamlNode> items(Section section) {
    return items(section, name);
  }

  /** Returns the items of a list, or a single value as one; none, with a fault, if it is empty. */
  static List<YamlNode> items(Section section, String key) {
    Optional<YamlNode> node = section.node(key);
    if (node.isEmpty()) {
      return List.of();
    }
    if (node.orElseThrow() instanceof YamlNode.Sequence sequence) {
      if (sequence.items().isEmpty()) {
        section.fault(key, "the list is empty", "one value or more", "leave " + key + " out");
      }
      return sequence.items();
    }
    return List.of(node.orElseThrow());
  }

  private void fault(Section section, YamlNode item, String problem, String write) {
    section.faultAt(
        item.line(),
        section.path(name),
        item.kind(),
        problem,
        allowed(),
        "write " + name + ": " + write);
  }
}

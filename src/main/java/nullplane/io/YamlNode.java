package nullplane.io;

import java.util.List;

/** A piece of a YAML file that remembers where it stood. */
sealed interface YamlNode {
  /** Returns the line it starts on, counted from 1. */
  int line();

  /** Returns what it is, for messages. */
  String kind();

  /**
   * A single value, as text.
   *
   * @param line the line
   * @param text the text without quotes; empty for a null
   */
  record Scalar(int line, String text) implements YamlNode {
    @Override
    public String kind() {
      return text.isEmpty() ? "nothing" : Excerpt.of(text);
    }
  }

  /**
   * Keys and values in the order of the file; a key may occur twice.
   *
   * @param line the line
   * @param entries the entries
   */
  record Mapping(int line, List<Entry> entries) implements YamlNode {
    public Mapping {
      entries = List.copyOf(entries);
    }

    @Override
    public String kind() {
      return "a block of keys";
    }
  }

  /**
   * A key and its value.
   *
   * @param line the key's line
   * @param key the key
   * @param value the value
   */
  record Entry(int line, String key, YamlNode value) {}

  /**
   * A list.
   *
   * @param line the line
   * @param items the items
   */
  record Sequence(int line, List<YamlNode> items) implements YamlNode {
    public Sequence {
      items = List.copyOf(items);
    }

    @Override
    public String kind() {
      return "a list";
    }
  }
}

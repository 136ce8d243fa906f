package nullplane.io;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.dataformat.yaml.YAMLFactory;
import com.fasterxml.jackson.dataformat.yaml.YAMLParser;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import nullplane.faults.InvalidInputException;
import org.yaml.snakeyaml.error.MarkedYAMLException;
import org.yaml.snakeyaml.error.YAMLException;

/**
 * Reads YAML into a tree that knows its lines. Only what the program's files need: one document of
 * mappings, lists and plain values. Aliases, anchors and tags are refused, so a small file cannot
 * grow and no object is ever built from a name in a file.
 */
final class YamlTree {
  private static final int DEEPEST = 12;
  private static final int MOST_NODES = 20_000;

  private final String file;
  private final YAMLParser parser;
  private int nodes;

  private YamlTree(String file, YAMLParser parser) {
    this.file = file;
    this.parser = parser;
  }

  /**
   * Returns the tree of a text.
   *
   * @throws InvalidInputException if it is not YAML, or YAML that is refused
   */
  static YamlNode of(InputText input) {
    String file = input.fileName();
    try (YAMLParser parser = new YAMLFactory().createParser(input.text())) {
      return new YamlTree(file, parser).document();
    } catch (IOException | YAMLException e) {
      throw syntax(file, e);
    }
  }

  private YamlNode document() throws IOException {
    JsonToken first = parser.nextToken();
    if (first == null) {
      throw FaultList.fatal(file, 0, "", "the file is empty", "", "start from an example");
    }
    YamlNode root = node(first, 1);
    if (parser.nextToken() != null) {
      throw FaultList.fatal(
          file, line(), "", "a second document starts here", "one document", "use one file each");
    }
    return root;
  }

  private YamlNode node(JsonToken token, int depth) throws IOException {
    int line = line();
    refuse(line, depth);
    return switch (token) {
      case START_OBJECT -> mapping(line, depth);
      case START_ARRAY -> sequence(line, depth);
      case VALUE_NULL -> new YamlNode.Scalar(line, "");
      default -> new YamlNode.Scalar(line, parser.getText());
    };
  }

  private YamlNode mapping(int line, int depth) throws IOException {
    List<YamlNode.Entry> entries = new ArrayList<>();
    while (next() != JsonToken.END_OBJECT) {
      int keyLine = line();
      refuse(keyLine, depth);
      String key = parser.currentName();
      entries.add(new YamlNode.Entry(keyLine, key, node(next(), depth + 1)));
    }
    return new YamlNode.Mapping(line, entries);
  }

  private YamlNode sequence(int line, int depth) throws IOException {
    List<YamlNode> items = new ArrayList<>();
    JsonToken token = next();
    while (token != JsonToken.END_ARRAY) {
      items.add(node(token, depth + 1));
      token = next();
    }
    return new YamlNode.Sequence(line, items);
  }

  private JsonToken next() throws IOException {
    JsonToken token = parser.nextToken();
    if (token == null) {
      throw FaultList.fatal(
          file, line(), "", "this is not YAML: it ends too early", "", "close every bracket");
    }
    return token;
  }

  private void refuse(int line, int depth) throws IOException {
    nodes++;
    if (nodes > MOST_NODES) {
      throw FaultList.fatal(
          file, line, "", "the file holds too many values", MOST_NODES + " at most", "");
    }
    if (depth > DEEPEST) {
      throw FaultList.fatal(
          file, line, "", "the nesting is too deep", DEEPEST + " levels at most", "");
    }
    if (parser.isCurrentAlias() || parser.getObjectId() != null) {
      throw FaultList.fatal(
          file, line, "", "anchors and aliases are not read", "", "write the values in full");
    }
    if (parser.getTypeId() != null) {
      throw FaultList.fatal(
          file,
          line,
          parser.getTypeId(),
          "tags are not read",
          "",
          "leave out the word that starts with !");
    }
  }

  private int line() {
    return parser.currentTokenLocation().getLineNr();
  }

  /** Returns the fault of a text that is not YAML, at the place the scanner stumbled over. */
  private static InvalidInputException syntax(String file, Exception failure) {
    int line = 0;
    String problem = String.valueOf(failure.getMessage());
    if (failure instanceof JsonProcessingException json) {
      line = json.getLocation() == null ? 0 : json.getLocation().getLineNr();
      problem = String.valueOf(json.getOriginalMessage());
    }
    for (Throwable cause = failure; cause != null; cause = cause.getCause()) {
      if (cause instanceof MarkedYAMLException marked && marked.getProblemMark() != null) {
        line = marked.getProblemMark().getLine() + 1;
        problem = String.valueOf(marked.getProblem());
      }
    }
    String first = Excerpt.of(problem.lines().findFirst().orElse("unknown"));
    InvalidInputException fault =
        FaultList.fatal(
            file,
            line,
            "",
            "this is not YAML: " + first,
            "",
            first.contains("(TAB)")
                ? "indent with blanks, not with tabs"
                : "check indentation, colons, brackets and quotes");
    fault.initCause(failure);
    return fault;
  }
}

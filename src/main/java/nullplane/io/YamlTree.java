package nullplane.io;

import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.dataformat.yaml.YAMLFactory;
import com.fasterxml.jackson.dataformat.yaml.YAMLParser;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import nullplane.faults.InvalidInputException;
import org.jspecify.annotations.Nullable;
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
    } catch (JsonProcessingException e) {
      JsonLocation where = e.getLocation();
      int line = where == null ? 0 : where.getLineNr();
      throw syntax(file, line, e.getOriginalMessage(), e);
    } catch (MarkedYAMLException e) {
      throw syntax(file, e.getProblemMark().getLine() + 1, e.getProblem(), e);
    } catch (IOException | YAMLException e) {
      throw syntax(file, 0, e.getMessage(), e);
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
      throw syntax(file, line(), "the file ends too early", null);
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

  private static InvalidInputException syntax(
      String file, int line, @Nullable String message, @Nullable Exception cause) {
    String problem = message == null ? "unknown" : message;
    int end = problem.indexOf('\n');
    problem = Excerpt.of(end < 0 ? problem : problem.substring(0, end));
    String hint =
        problem.toLowerCase(Locale.ROOT).contains("\\t")
            ? "indent with blanks, not with tabs"
            : "check indentation, colons, brackets and quotes";
    InvalidInputException fault =
        FaultList.fatal(file, line, "", "this is not YAML: " + problem, "", hint);
    if (cause != null) {
      fault.initCause(cause);
    }
    return fault;
  }
}

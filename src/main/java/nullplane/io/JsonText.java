package nullplane.io;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.StreamWriteFeature;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import nullplane.units.Curve;

/**
 * JSON in the making: the same calls give the same bytes on every platform. No number that is not
 * finite gets in. Source: RFC 8259.
 */
final class JsonText {
  private final ByteArrayOutputStream bytes = new ByteArrayOutputStream();
  private final JsonGenerator json;
  private final Deque<String> path = new ArrayDeque<>();

  private JsonText(boolean indented) throws IOException {
    json =
        new JsonFactory()
            .createGenerator(bytes)
            // Shortest digits that give the same double, on every Java version alike.
            .enable(StreamWriteFeature.USE_FAST_DOUBLE_WRITER.mappedFeature());
    if (indented) {
      DefaultIndenter indenter = new DefaultIndenter("  ", "\n");
      json.setPrettyPrinter(new DefaultPrettyPrinter().withObjectIndenter(indenter));
    }
  }

  /** What fills an object. */
  interface Body {
    /** Writes the object's fields. */
    void write() throws IOException;
  }

  /** What fills a document. */
  interface Document {
    /** Writes the fields of the outermost object. */
    void write(JsonText json) throws IOException;
  }

  /** Returns the bytes of a document: one object, UTF-8, ended by a line feed. */
  static byte[] of(Document document) {
    return of(document, true);
  }

  /** Returns the bytes of a document in one line: one object, UTF-8, without a line feed. */
  static byte[] inOneLine(Document document) {
    return of(document, false);
  }

  private static byte[] of(Document document, boolean indented) {
    try {
      JsonText text = new JsonText(indented);
      text.json.writeStartObject();
      document.write(text);
      text.json.writeEndObject();
      if (indented) {
        text.json.writeRaw('\n');
      }
      text.json.close();
      return text.bytes.toByteArray();
    } catch (IOException e) {
      throw new UncheckedIOException("writing to memory cannot fail", e);
    }
  }

  void object(String field, Body body) throws IOException {
    json.writeFieldName(field);
    inside(field, body);
  }

  /** Writes a list of objects; the body writes the fields of one item. */
  <T> void objects(String field, List<T> items, ItemBody<T> body) throws IOException {
    json.writeArrayFieldStart(field);
    for (int i = 0; i < items.size(); i++) {
      T item = items.get(i);
      inside(field + "[" + i + "]", () -> body.write(item));
    }
    json.writeEndArray();
  }

  /** What fills one object of a list. */
  interface ItemBody<T> {
    /** Writes the fields of an item. */
    void write(T item) throws IOException;
  }

  private void inside(String step, Body body) throws IOException {
    path.addLast(step);
    json.writeStartObject();
    body.write();
    json.writeEndObject();
    path.removeLast();
  }

  void text(String field, String value) throws IOException {
    json.writeStringField(field, value);
  }

  void texts(String field, List<String> values) throws IOException {
    json.writeArrayFieldStart(field);
    for (String value : values) {
      json.writeString(value);
    }
    json.writeEndArray();
  }

  void flag(String field, boolean value) throws IOException {
    json.writeBooleanField(field, value);
  }

  void whole(String field, long value) throws IOException {
    json.writeNumberField(field, value);
  }

  /**
   * Writes a number.
   *
   * @throws IllegalStateException if it is not finite, naming the field
   */
  void number(String field, double value) throws IOException {
    json.writeNumberField(field, finite(field, value));
  }

  /**
   * Writes a list of numbers.
   *
   * @throws IllegalStateException if a value is not finite, naming field and index
   */
  void numbers(String field, List<Double> values) throws IOException {
    curve(field, Curve.of(values.stream().mapToDouble(Double::doubleValue).toArray()));
  }

  /** Writes a null, for a number that there is none of. */
  void none(String field) throws IOException {
    json.writeNullField(field);
  }

  /**
   * Writes a curve as a list of numbers.
   *
   * @throws IllegalStateException if a value is not finite, naming field and index
   */
  void curve(String field, Curve curve) throws IOException {
    json.writeArrayFieldStart(field);
    for (int i = 0; i < curve.size(); i++) {
      json.writeNumber(finite(field + "[" + i + "]", curve.at(i)));
    }
    json.writeEndArray();
  }

  /**
   * Writes a matrix as a list of its rows.
   *
   * @throws IllegalStateException if a value is not finite, naming field, row and column
   */
  void rows(String field, List<Curve> rows) throws IOException {
    json.writeArrayFieldStart(field);
    for (int i = 0; i < rows.size(); i++) {
      json.writeStartArray();
      for (int j = 0; j < rows.get(i).size(); j++) {
        json.writeNumber(finite(field + "[" + i + "][" + j + "]", rows.get(i).at(j)));
      }
      json.writeEndArray();
    }
    json.writeEndArray();
  }

  /**
   * Writes a level, or a null where there is no sound and it is infinite.
   *
   * @throws IllegalStateException if it is NaN, naming the field
   */
  void levelOrNone(String field, double levelDb) throws IOException {
    if (Double.isInfinite(levelDb)) {
      json.writeNullField(field);
    } else {
      number(field, levelDb);
    }
  }

  /** Writes a number, or a null where there is none. */
  void numberOrNone(String field, OptionalDouble value) throws IOException {
    if (value.isPresent()) {
      number(field, value.getAsDouble());
    } else {
      none(field);
    }
  }

  /** Writes a curve that may hold positive infinities, as nulls. NaN is refused. */
  void curveWithGaps(String field, Curve curve) throws IOException {
    json.writeArrayFieldStart(field);
    for (int i = 0; i < curve.size(); i++) {
      double value = curve.at(i);
      if (value == Double.POSITIVE_INFINITY) {
        json.writeNull();
      } else {
        json.writeNumber(finite(field + "[" + i + "]", value));
      }
    }
    json.writeEndArray();
  }

  private double finite(String field, double value) {
    if (!Double.isFinite(value)) {
      String where = path.stream().map(step -> step + ".").collect(Collectors.joining());
      throw new IllegalStateException(where + field + " is " + value + "; JSON has no such number");
    }
    return value;
  }
}

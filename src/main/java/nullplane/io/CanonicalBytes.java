package nullplane.io;

import java.io.ByteArrayOutputStream;
import java.lang.reflect.RecordComponent;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Values as bytes, so that two values have the same bytes only if they are equal to the last bit.
 * Each value starts with a letter for its kind; text, lists and records carry their lengths, and
 * records their own name and those of their components. Records are taken apart by their
 * components: a new component or a new kind of outline enters the bytes without a line here.
 */
final class CanonicalBytes {
  private final ByteArrayOutputStream bytes = new ByteArrayOutputStream();

  /** Returns the bytes so far. */
  byte[] toArray() {
    return bytes.toByteArray();
  }

  /**
   * Adds a value: a number, truth value, text, enum constant, list, optional or record of such.
   *
   * @throws IllegalArgumentException if the value is of another type
   */
  CanonicalBytes add(Object value) {
    if (value instanceof Double number) {
      bytes.write('d');
      addLong(Double.doubleToLongBits(number));
    } else if (value instanceof Integer || value instanceof Long) {
      bytes.write('i');
      addLong(((Number) value).longValue());
    } else if (value instanceof Boolean truth) {
      bytes.write(truth ? 'y' : 'n');
    } else if (value instanceof String text) {
      addText(text);
    } else if (value instanceof Enum<?> constant) {
      bytes.write('e');
      addText(constant.getDeclaringClass().getName());
      addText(constant.name());
    } else if (value instanceof List<?> list) {
      addList(list);
    } else if (value instanceof OptionalDouble optional) {
      addList(optional.stream().boxed().toList());
    } else if (value instanceof Optional<?> optional) {
      addList(optional.stream().toList());
    } else if (value instanceof Record taken) {
      addRecord(taken);
    } else {
      throw new IllegalArgumentException("no canonical bytes for " + value.getClass().getName());
    }
    return this;
  }

  private void addRecord(Record taken) {
    RecordComponent[] components = taken.getClass().getRecordComponents();
    bytes.write('r');
    addText(taken.getClass().getName());
    addLong(components.length);
    for (RecordComponent component : components) {
      addText(component.getName());
      try {
        add(Objects.requireNonNull(component.getAccessor().invoke(taken), component.getName()));
      } catch (ReflectiveOperationException e) {
        throw new IllegalStateException("a record keeps " + component + " to itself", e);
      }
    }
  }

  private void addList(List<?> list) {
    bytes.write('l');
    addLong(list.size());
    for (Object element : list) {
      add(element);
    }
  }

  /** Adds characters as they are; a byte encoding would make all broken pairs the same. */
  private void addText(String text) {
    bytes.write('s');
    addLong(text.length());
    for (int i = 0; i < text.length(); i++) {
      bytes.write(text.charAt(i) >> 8);
      bytes.write(text.charAt(i));
    }
  }

  private void addLong(long value) {
    for (int shift = Long.SIZE - Byte.SIZE; shift >= 0; shift -= Byte.SIZE) {
      bytes.write((int) (value >> shift));
    }
  }
}

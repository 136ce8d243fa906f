package nullplane.io;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import nullplane.driver.Woofer;
import nullplane.faults.InvalidInputException;
import nullplane.network.LowPassBranch;
import nullplane.network.SeriesCoil;
import nullplane.network.StackNetwork;
import nullplane.sample.BriefUnit;
import nullplane.sample.BriefValue;
import nullplane.sample.BriefWindow;
import nullplane.sample.SampleBrief;
import nullplane.scoring.Wiring;

/**
 * Reads a brief back that {@link BriefJson} wrote: what a sample is held against. Fields it does
 * not need are passed over. All faults of a file are told at once.
 */
public final class BriefReader {
  private static final String WRITE = "give a brief-N.json that design wrote, unchanged";
  private static final int MOST_VALUES = 500;

  private final FaultList faults;

  private BriefReader(FaultList faults) {
    this.faults = faults;
  }

  /**
   * Reads a brief.
   *
   * @param file the file
   * @throws InvalidInputException with every fault of the file
   */
  public static ReadBrief read(Path file) {
    return read(InputText.read(file));
  }

  /**
   * Reads a brief's text.
   *
   * @param input the text
   * @throws InvalidInputException with every fault of the text
   */
  static ReadBrief read(InputText input) {
    FaultList faults = new FaultList(input.fileName());
    Optional<SampleBrief> brief = new BriefReader(faults).brief(YamlTree.of(input));
    faults.throwIfAny();
    return new ReadBrief(brief.orElseThrow(), input.digest(), input.fileName());
  }

  private Optional<SampleBrief> brief(YamlNode root) {
    if (!BriefJson.KIND.equals(text(root, "kind"))) {
      faults.add(root.line(), "kind", "", "this is not a brief", BriefJson.KIND, WRITE);
      return Optional.empty();
    }
    if (!Integer.toString(BriefJson.FORMAT).equals(text(root, "format"))) {
      faults.add(
          root.line(),
          "format",
          text(root, "format"),
          "the brief is of another version of its form",
          Integer.toString(BriefJson.FORMAT),
          "run design again with this version of the program");
      return Optional.empty();
    }
    String name = visible(text(root, "name"), "woofer");
    Optional<Woofer> woofer = child(root, "woofer").flatMap(node -> woofer(node, name));
    List<BriefValue> values = new ArrayList<>();
    Set<String> keys = new HashSet<>();
    for (YamlNode node : items(root, "values")) {
      value(node)
          .ifPresent(
              value -> {
                if (keys.add(value.key())) {
                  values.add(value);
                } else {
                  faults.add(
                      node.line(),
                      "values." + value.key(),
                      "",
                      "the value is here twice",
                      "",
                      WRITE);
                }
              });
    }
    List<SampleBrief.StackParts> stacks = new ArrayList<>();
    items(root, "stacks").forEach(node -> stack(node).ifPresent(stacks::add));
    OptionalDouble rank = number(root, "rank", "rank");
    if (woofer.isEmpty() || values.isEmpty() || stacks.isEmpty() || rank.isEmpty()) {
      if (faults.isEmpty()) {
        faults.add(root.line(), "", "", "the brief lacks its woofer, values or stacks", "", WRITE);
      }
      return Optional.empty();
    }
    return Optional.of(
        new SampleBrief(
            visible(text(root, "title"), "no title"),
            name,
            (int) rank.getAsDouble(),
            visible(text(root, "specSha256"), ""),
            woofer.orElseThrow(),
            values,
            stacks));
  }

  private Optional<Woofer> woofer(YamlNode node, String name) {
    String[] fields = {
      "nominalM",
      "effectiveAreaM2",
      "reOhm",
      "leH",
      "movingMassKg",
      "kmsNPerM",
      "rmsNsPerM",
      "blTm",
      "travelM",
      "powerW"
    };
    double[] found = new double[fields.length];
    boolean whole = true;
    for (int i = 0; i < fields.length; i++) {
      OptionalDouble value = number(node, fields[i], "woofer." + fields[i]);
      boolean mayBeZero = "leH".equals(fields[i]);
      if (value.isEmpty()) {
        whole = false;
      } else if (!(value.getAsDouble() > 0 || (mayBeZero && value.getAsDouble() == 0))) {
        faults.add(
            node.line(),
            "woofer." + fields[i],
            text(node, fields[i]),
            "out of range",
            "above 0",
            WRITE);
        whole = false;
      }
      found[i] = value.orElse(0);
    }
    return whole
        ? Optional.of(
            new Woofer(
                name, found[0], found[1], found[2], found[3], found[4], found[5], found[6],
                found[7], found[8], found[9]))
        : Optional.empty();
  }

  private Optional<BriefValue> value(YamlNode node) {
    String key = visible(text(node, "key"), "");
    String where = "values." + key;
    Optional<BriefValue.Section> section = Optional.empty();
    for (BriefValue.Section one : BriefValue.Section.values()) {
      section = one.words().equals(text(node, "section")) ? Optional.of(one) : section;
    }
    Optional<BriefUnit> unit = Optional.empty();
    for (BriefUnit one : BriefUnit.values()) {
      boolean fits = unit.isEmpty() && one.si().equals(text(node, "unit"));
      unit = fits ? Optional.of(one) : unit;
    }
    if (key.isEmpty() || section.isEmpty() || unit.isEmpty()) {
      faults.add(node.line(), where, "", "the value lacks a known key, section or unit", "", WRITE);
      return Optional.empty();
    }
    OptionalDouble target = optional(node, "target", where);
    OptionalDouble lower = optional(node, "lower", where);
    OptionalDouble upper = optional(node, "upper", where);
    if (lower.isPresent() && upper.isPresent() && lower.getAsDouble() > upper.getAsDouble()) {
      faults.add(
          node.line(),
          where,
          lower.getAsDouble() + "",
          "the lower limit is above the upper",
          "",
          WRITE);
      return Optional.empty();
    }
    return Optional.of(
        new BriefValue(
            section.orElseThrow(),
            key,
            text(node, "symbol"),
            visible(text(node, "name"), key),
            unit.orElseThrow(),
            target,
            target.isPresent() ? "" : text(node, "words"),
            new BriefWindow(lower, upper, visible(text(node, "basis"), "the brief")),
            text(node, "condition"),
            text(node, "reason")));
  }

  private Optional<SampleBrief.StackParts> stack(YamlNode node) {
    String name = visible(text(node, "name"), "stack");
    String where = "stacks." + name;
    OptionalDouble strings = number(node, "strings", where);
    OptionalDouble inSeries = number(node, "inSeries", where);
    OptionalDouble coil = number(node, "coilInductanceH", where);
    OptionalDouble resistance = number(node, "coilResistanceOhm", where);
    if (strings.isEmpty() || inSeries.isEmpty() || coil.isEmpty() || resistance.isEmpty()) {
      return Optional.empty();
    }
    boolean inRange =
        strings.getAsDouble() >= 1
            && inSeries.getAsDouble() >= 1
            && strings.getAsDouble() * inSeries.getAsDouble() <= 64
            && coil.getAsDouble() >= 0
            && resistance.getAsDouble() >= 0;
    if (!inRange) {
      faults.add(node.line(), where, "", "wiring or coil is out of range", "", WRITE);
      return Optional.empty();
    }
    Optional<StackNetwork> network;
    try {
      network =
          child(node, "network").isPresent()
              ? BriefNetwork.of(child(node, "network").orElseThrow())
              : Optional.of(
                  LowPassBranch.ofCoil(
                      new SeriesCoil(coil.getAsDouble(), resistance.getAsDouble(), 0)));
    } catch (IllegalArgumentException e) {
      faults.add(node.line(), where + " network", "", String.valueOf(e.getMessage()), "", WRITE);
      return Optional.empty();
    }
    if (network.isEmpty()) {
      faults.add(node.line(), where + " network", "", "parts or filters cannot be read", "", WRITE);
    }
    return network.map(
        found ->
            new SampleBrief.StackParts(
                name,
                new Wiring((int) strings.getAsDouble(), (int) inSeries.getAsDouble()),
                found));
  }

  private OptionalDouble number(YamlNode node, String field, String where) {
    OptionalDouble found = optional(node, field, where);
    if (found.isEmpty() && text(node, field).isEmpty()) {
      faults.add(node.line(), where + " " + field, "", "the number is missing", "", WRITE);
    }
    return found;
  }

  private OptionalDouble optional(YamlNode node, String field, String where) {
    String text = text(node, field);
    if (text.isEmpty()) {
      return OptionalDouble.empty();
    }
    try {
      double value = Double.parseDouble(text);
      if (Double.isFinite(value)) {
        return OptionalDouble.of(value);
      }
    } catch (NumberFormatException e) {
      // told below
    }
    faults.add(node.line(), where + " " + field, text, "this is no number", "", WRITE);
    return OptionalDouble.empty();
  }

  private static String visible(String text, String otherwise) {
    String shown = text.replaceAll("\\p{Cntrl}+", " ").strip();
    return shown.isEmpty() ? otherwise : shown;
  }

  static String text(YamlNode node, String field) {
    return find(node, field) instanceof YamlNode.Scalar scalar ? scalar.text() : "";
  }

  static Optional<YamlNode> child(YamlNode node, String field) {
    return find(node, field) instanceof YamlNode.Mapping mapping
        ? Optional.of(mapping)
        : Optional.empty();
  }

  private List<YamlNode> items(YamlNode node, String field) {
    if (find(node, field) instanceof YamlNode.Sequence sequence
        && sequence.items().size() <= MOST_VALUES) {
      return sequence.items();
    }
    faults.add(node.line(), field, "", "a list is needed here", "1 to " + MOST_VALUES, WRITE);
    return List.of();
  }

  /** Returns the value of a field; an empty one if there is none. */
  static YamlNode find(YamlNode node, String field) {
    if (node instanceof YamlNode.Mapping mapping) {
      for (YamlNode.Entry entry : mapping.entries()) {
        if (entry.key().equals(field)) {
          return entry.value();
        }
      }
    }
    return new YamlNode.Scalar(node.line(), "");
  }
}

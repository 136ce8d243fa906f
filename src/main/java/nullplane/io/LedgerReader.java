package nullplane.io;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Stream;
import nullplane.fit.Finding;
import nullplane.sample.AskedChange;
import nullplane.sample.BenchFigure;
import nullplane.sample.BriefUnit;
import nullplane.sample.BriefValue;
import nullplane.sample.BriefWindow;
import nullplane.sample.Decision;
import nullplane.sample.LedgerEntry;
import nullplane.sample.LedgerEntry.BriefEntry;
import nullplane.sample.LedgerEntry.RequestEntry;
import nullplane.sample.LedgerEntry.RoundStamp;
import nullplane.sample.LedgerEntry.SampleEntry;
import nullplane.sample.Lever;

/** Reads records of a ledger back that {@link LedgerJson} wrote. */
final class LedgerReader {
  private static final ObjectMapper MAPPER = new ObjectMapper();

  private LedgerReader() {}

  /**
   * A record with its number.
   *
   * @param sequence its number, from 1
   * @param entry what it says
   */
  record Numbered(long sequence, LedgerEntry entry) {}

  /**
   * Returns a record.
   *
   * @param object its bytes without the checksum, which was found right
   * @return empty if it is of a form that this version does not know
   */
  static Optional<Numbered> read(byte[] object) {
    try {
      JsonNode node = MAPPER.readTree(object);
      long sequence = field(node, "seq").longValue();
      if (field(node, "format").intValue() != LedgerJson.FORMAT || sequence < 1) {
        return Optional.empty();
      }
      LedgerEntry entry =
          switch (text(node, "kind")) {
            case LedgerJson.BRIEF -> brief(node);
            case LedgerJson.SAMPLE -> sample(node);
            case LedgerJson.REQUEST -> request(node);
            default -> throw new IllegalArgumentException("unknown kind");
          };
      return Optional.of(new Numbered(sequence, entry));
    } catch (IOException | IllegalArgumentException | DateTimeException e) {
      return Optional.empty();
    }
  }

  private static BriefEntry brief(JsonNode node) {
    List<BriefValue> values = new ArrayList<>();
    for (JsonNode value : field(node, "values")) {
      values.add(value(value));
    }
    return new BriefEntry(text(node, "sha256"), text(node, "title"), text(node, "name"), values);
  }

  private static BriefValue value(JsonNode node) {
    String si = text(node, "unit");
    BriefUnit unit =
        Stream.of(BriefUnit.values())
            .filter(one -> one.si().equals(si))
            .findFirst()
            .orElse(BriefUnit.ONE);
    BriefValue.Section section = BriefValue.Section.TARGET;
    for (BriefValue.Section one : BriefValue.Section.values()) {
      section = one.words().equals(text(node, "section")) ? one : section;
    }
    return new BriefValue(
        section,
        text(node, "key"),
        text(node, "symbol"),
        text(node, "name"),
        unit,
        optional(node, "target"),
        "",
        new BriefWindow(optional(node, "lower"), optional(node, "upper"), "the brief"),
        "",
        "");
  }

  private static RoundStamp stamp(JsonNode node) {
    return new RoundStamp(
        field(node, "round").intValue(),
        Instant.parse(text(node, "time")),
        text(node, "briefSha256"),
        text(node, "measurementsSha256"),
        text(node, "version"));
  }

  private static SampleEntry sample(JsonNode node) {
    Map<BenchFigure, Finding.Estimate> values = new EnumMap<>(BenchFigure.class);
    field(node, "values")
        .properties()
        .forEach(
            value ->
                BenchFigure.ofKey(value.getKey())
                    .ifPresent(
                        figure ->
                            values.put(
                                figure,
                                new Finding.Estimate(
                                    number(value.getValue(), "value"),
                                    number(value.getValue(), "standardError"),
                                    number(value.getValue(), "lower95"),
                                    number(value.getValue(), "upper95")))));
    return new SampleEntry(
        stamp(node),
        text(node, "name"),
        field(node, "golden").booleanValue(),
        text(node, "mounting"),
        decision(node),
        values,
        optional(node, "restPositionM"));
  }

  private static RequestEntry request(JsonNode node) {
    JsonNode asked = field(node, "asked");
    JsonNode winding = field(asked, "winding");
    Map<Lever, Double> gains = new EnumMap<>(Lever.class);
    field(node, "gains")
        .properties()
        .forEach(gain -> gains.put(lever(gain.getKey()), gain.getValue().doubleValue()));
    Map<String, Double> predicted = new LinkedHashMap<>();
    field(node, "predicted")
        .properties()
        .forEach(figure -> predicted.put(figure.getKey(), figure.getValue().doubleValue()));
    Set<Lever> locked = EnumSet.noneOf(Lever.class);
    texts(node, "locked").forEach(word -> locked.add(lever(word)));
    return new RequestEntry(
        stamp(node),
        decision(node),
        text(node, "basis"),
        new AskedChange(
            number(asked, "massKg"),
            number(asked, "stiffnessShare"),
            number(asked, "fluxShare"),
            winding.isNull()
                ? Optional.empty()
                : Optional.of(
                    new AskedChange.WindingStep(
                        number(winding, "massKg"),
                        number(winding, "resistanceRatio"),
                        number(winding, "forceRatio"))),
            number(asked, "restMoveM")),
        gains,
        predicted,
        texts(node, "stillOutside"),
        locked);
  }

  private static Lever lever(String word) {
    return Lever.ofWord(word).orElseThrow(() -> new IllegalArgumentException("lever " + word));
  }

  private static Decision decision(JsonNode node) {
    for (Decision decision : Decision.values()) {
      if (decision.words().equals(text(node, "decision"))) {
        return decision;
      }
    }
    throw new IllegalArgumentException("unknown decision");
  }

  private static List<String> texts(JsonNode node, String name) {
    List<String> texts = new ArrayList<>();
    field(node, name).forEach(one -> texts.add(one.asText()));
    return texts;
  }

  private static JsonNode field(JsonNode node, String name) {
    JsonNode found = node.get(name);
    if (found == null) {
      throw new IllegalArgumentException("no field " + name);
    }
    return found;
  }

  private static String text(JsonNode node, String name) {
    return field(node, name).asText();
  }

  private static double number(JsonNode node, String name) {
    JsonNode found = field(node, name);
    if (!found.isNumber()) {
      throw new IllegalArgumentException("no number " + name);
    }
    return found.doubleValue();
  }

  private static OptionalDouble optional(JsonNode node, String name) {
    return field(node, name).isNull()
        ? OptionalDouble.empty()
        : OptionalDouble.of(number(node, name));
  }
}

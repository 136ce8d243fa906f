package nullplane.io;

import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import nullplane.driver.Agreement;
import nullplane.driver.CoilInductance;
import nullplane.driver.CompletedSet;
import nullplane.driver.CompletedValue;
import nullplane.driver.Contradiction;
import nullplane.driver.Datasheet;
import nullplane.driver.Gap;
import nullplane.driver.LoadedResonance;
import nullplane.driver.Mounting;
import nullplane.driver.Parameter;

/**
 * One woofer's data as JSON, full precision, SI; levels in dB re 20 uPa. Figures are named as the
 * keys of a woofer file. Source: RFC 8259.
 */
public final class DatasheetJson {
  private DatasheetJson() {}

  /**
   * Returns the bytes of the document.
   *
   * @param sheet the data, with the mountings wanted
   * @param digest SHA-256 of the file it came from, hexadecimal
   * @param version the program's version
   */
  public static byte[] of(Datasheet sheet, String digest, String version) {
    CompletedSet set = sheet.completed();
    return JsonText.of(
        json -> {
          json.text("name", sheet.name());
          json.flag("settled", set.settled());
          json.flag("consistent", set.contradictions().isEmpty());
          json.text(
              "mounting",
              set.stated().mounting() == Mounting.FREE_AIR ? "free-air" : "infinite-baffle");
          if (sheet.nominalM().isPresent()) {
            json.number("nominalM", sheet.nominalM().getAsDouble());
          }
          if (sheet.powerW().isPresent()) {
            json.number("powerW", sheet.powerW().getAsDouble());
          }
          json.objects("contradictions", set.contradictions(), found -> contradiction(json, found));
          json.objects("agreements", set.agreements(), found -> agreement(json, found));
          json.objects("missing", set.gaps(), gap -> gap(json, gap));
          json.objects(
              "figures", List.copyOf(set.values().values()), value -> figure(json, set, value));
          json.texts(
              "notDetermined",
              Stream.of(Parameter.values())
                  .filter(parameter -> !set.values().containsKey(parameter))
                  .map(WooferFigures::name)
                  .toList());
          if (sheet.inductance().isPresent()) {
            CoilInductance coil = sheet.inductance().orElseThrow();
            json.object("inductance", () -> inductance(json, coil));
          }
          json.objects("mountings", sheet.mountings(), mounting -> mounting(json, mounting));
          json.text("fileSha256", digest);
          json.text("version", version);
        });
  }

  private static void contradiction(JsonText json, Contradiction found) throws IOException {
    json.text("key", WooferFigures.name(found.parameter()));
    json.text("unit", found.parameter().unit());
    json.number("stated", found.stated());
    json.numberOrNone("found", found.found());
    json.numberOrNone("deviation", found.deviation());
    json.number("tolerance", found.tolerance());
    json.texts("against", names(found.against()));
    json.text("route", found.route().words());
    json.text("cause", found.cause().kind().name().toLowerCase(Locale.ROOT).replace('_', '-'));
    json.text("causeInWords", found.cause().sentence());
  }

  private static void agreement(JsonText json, Agreement found) throws IOException {
    json.text("key", WooferFigures.name(found.parameter()));
    json.number("deviation", found.deviation());
    json.number("tolerance", found.tolerance());
  }

  private static void gap(JsonText json, Gap gap) throws IOException {
    json.text("cheapest", WooferFigures.name(gap.cheapest()));
    json.texts("instead", names(gap.instead()));
  }

  private static void figure(JsonText json, CompletedSet set, CompletedValue value)
      throws IOException {
    json.text("key", WooferFigures.name(value.parameter()));
    json.text("symbol", value.parameter().symbol());
    json.text("words", value.parameter().words());
    json.number("value", value.value());
    json.text("unit", value.parameter().unit());
    json.text("origin", value.origin().name().toLowerCase(Locale.ROOT));
    if (value.origin() == CompletedValue.Origin.CORRECTED) {
      json.number("stated", set.stated().value(value.parameter()).orElseThrow());
    }
    json.number("consistent", value.consistent());
    json.texts("from", names(value.route().origins()));
    json.text("route", value.route().words());
  }

  private static void inductance(JsonText json, CoilInductance coil) throws IOException {
    json.number("at1kHzH", coil.inductanceAt(1000));
    if (coil instanceof CoilInductance.WithEddyCurrents eddy) {
      json.number("leH", eddy.inductanceH());
      json.number("l2H", eddy.secondH());
      json.number("r2Ohm", eddy.shuntOhm());
    } else if (coil instanceof CoilInductance.SemiInductance semi) {
      json.number("factor", semi.factor());
      json.number("exponent", semi.exponent());
    }
  }

  private static void mounting(JsonText json, Datasheet.InMounting mounting) throws IOException {
    LoadedResonance figures = mounting.figures();
    json.text("mounting", mounting.mounting());
    json.number("airMassKg", figures.airMassKg());
    json.number("movingMassKg", figures.movingMassKg());
    json.number("resonanceHz", figures.resonanceHz());
    json.number("mechanicalQ", figures.mechanicalQ());
    json.number("electricalQ", figures.electricalQ());
    json.number("totalQ", figures.totalQ());
  }

  private static List<String> names(List<Parameter> parameters) {
    return parameters.stream().map(WooferFigures::name).toList();
  }
}

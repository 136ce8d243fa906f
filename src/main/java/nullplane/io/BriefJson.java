package nullplane.io;

import java.io.IOException;
import java.util.OptionalDouble;
import nullplane.driver.Woofer;
import nullplane.sample.BriefTest;
import nullplane.sample.BriefValue;
import nullplane.sample.ImpedanceWindow;
import nullplane.sample.MakerBrief;
import nullplane.scoring.StackAssessment;

/**
 * A brief as JSON: targets, windows, conditions, stacks and digest, in SI at full precision. What a
 * sample is held against later is read from it. Source: RFC 8259.
 */
public final class BriefJson {
  /** What stands in the first field, so that a file is known as a brief. */
  static final String KIND = "nullplane brief";

  /** Raised when fields change their meaning. */
  static final int FORMAT = 1;

  private final JsonText json;

  private BriefJson(JsonText json) {
    this.json = json;
  }

  /**
   * Returns the bytes of the document.
   *
   * @param brief the brief
   * @throws IllegalStateException if a number to be written is not finite; the message names it
   */
  public static byte[] of(MakerBrief brief) {
    return JsonText.of(json -> new BriefJson(json).document(brief));
  }

  private void document(MakerBrief brief) throws IOException {
    json.text("kind", KIND);
    json.whole("format", FORMAT);
    json.text("title", brief.title());
    json.text("name", brief.name());
    json.whole("rank", brief.rank());
    json.text("specSha256", brief.specDigest());
    if (brief.specDate().isPresent()) {
      json.text("specDate", brief.specDate().get().toString());
    } else {
      json.none("specDate");
    }
    json.whole("seed", brief.seed());
    json.text("version", brief.version());
    json.object("woofer", () -> woofer(brief.woofer()));
    json.objects("values", brief.values(), this::value);
    json.objects("tests", brief.tests(), this::test);
    json.texts("priorities", brief.priorities());
    json.texts("questions", brief.questions());
    json.objects("stacks", brief.stacks(), this::stack);
    json.object("impedanceWindow", () -> impedance(brief.impedance()));
  }

  private void woofer(Woofer woofer) throws IOException {
    json.number("nominalM", woofer.nominalM());
    json.number("effectiveAreaM2", woofer.effectiveAreaM2());
    WooferJson.parts(json, woofer);
  }

  private void value(BriefValue value) throws IOException {
    json.text("section", value.section().words());
    json.text("key", value.key());
    json.text("symbol", value.symbol());
    json.text("name", value.name());
    json.text("unit", value.unit().si());
    optional("target", value.target());
    if (!value.words().isEmpty()) {
      json.text("words", value.words());
    }
    optional("lower", value.window().lower());
    optional("upper", value.window().upper());
    json.text("basis", value.window().basis());
    json.text("condition", value.condition());
    json.text("reason", value.reason());
  }

  private void optional(String field, OptionalDouble value) throws IOException {
    if (value.isPresent()) {
      json.number(field, value.getAsDouble());
    } else {
      json.none(field);
    }
  }

  private void test(BriefTest test) throws IOException {
    json.text("name", test.name());
    json.text("method", test.method());
    json.text("limit", test.limit());
    json.text("count", test.count());
  }

  private void stack(StackAssessment stack) throws IOException {
    json.text("name", stack.brief().name());
    json.number("levelDb", stack.brief().levelDb());
    json.number("loudestDb", stack.brief().loudestDb());
    json.whole("woofers", stack.brief().pistons().size());
    json.whole("strings", stack.wiring().strings());
    json.whole("inSeries", stack.wiring().inSeries());
    json.number("coilInductanceH", stack.coil().inductanceH());
    json.number("coilResistanceOhm", stack.coil().resistanceOhm());
    json.object("network", () -> NetworkJson.write(json, stack.network()));
    json.number("rmsDeviationDb", stack.figures().rmsDeviationDb());
    json.number("worstExcessDb", stack.figures().worstExcessDb());
    json.number("outputMarginDb", stack.figures().outputMarginDb());
    json.number("panelFsHz", stack.figures().panelResonanceHz());
    json.number("panelQts", stack.figures().panelTotalQ());
  }

  private void impedance(ImpedanceWindow window) throws IOException {
    json.curve("frequencyHz", window.frequencyHz());
    json.curve("nominalOhm", window.nominalOhm());
    json.curve("lowerOhm", window.lowerOhm());
    json.curve("upperOhm", window.upperOhm());
  }
}

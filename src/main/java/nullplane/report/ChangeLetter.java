package nullplane.report;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Collectors;
import nullplane.sample.BriefValue;
import nullplane.sample.ChangeRequest;
import nullplane.sample.Lever;
import nullplane.sample.PartsFigures;
import nullplane.sample.RequestRow;
import nullplane.sample.SampleOutcome;

/**
 * What a maker is sent: what to change, why, and what should come of it; one page of plain words.
 */
final class ChangeLetter {
  private final SampleOutcome outcome;
  private final ChangeRequest request;
  private final SampleTexts texts;

  /**
   * @param outcome the samples
   * @param request the change, with at least one row
   */
  ChangeLetter(SampleOutcome outcome, ChangeRequest request) {
    this.outcome = outcome;
    this.request = request;
    this.texts = new SampleTexts(outcome.brief());
  }

  /**
   * Returns the page.
   *
   * @param foot one line at its end that tells two prints apart
   */
  Document document(String foot) {
    List<Document.Block> blocks = new ArrayList<>();
    blocks.add(
        new Document.Paragraph(
            "Please change the next sample as follows. Everything else stays as it is, the area of"
                + " the cone above all.",
            true));
    List<List<String>> rows = new ArrayList<>();
    for (RequestRow row : request.rows()) {
      rows.add(
          List.of(
              row.lever().inWords(),
              texts.amount(row.lever(), request) + texts.fromTo(row.lever(), request),
              texts.why(row, request),
              SampleTexts.effect(row)));
    }
    blocks.add(
        new Document.Table(
            List.of("What", "Please", "Why", "What it gives by itself"),
            rows,
            List.of(false, false, false, false),
            List.of(16, 30, 27, 27)));
    blocks.add(new Document.Heading(2, "What all changes together should give"));
    blocks.add(expected());
    blocks.add(new Document.Paragraph("Starting point: " + Lettering.clean(request.basis()) + "."));
    if (!request.stillOutside().isEmpty()) {
      blocks.add(
          new Document.Paragraph(
              "These changes do not bring into the window: "
                  + request.stillOutside().stream()
                      .map(texts::label)
                      .collect(Collectors.joining(", "))
                  + ". Please say what you would propose for that."));
    }
    if (!request.locked().isEmpty()) {
      blocks.add(
          new Document.Paragraph(
              "Left as they are by agreement: "
                  + request.locked().stream().map(Lever::inWords).collect(Collectors.joining(", "))
                  + "."));
    }
    blocks.add(new Document.Heading(2, "What it does on our panels"));
    blocks.add(beforeAfter(request.stacksBefore(), request.stacksAfter(), outcome.nominal()));
    blocks.add(new Document.Heading(2, "With the next sample, please send"));
    blocks.add(
        new Document.Bullets(
            List.of(
                "by how much each of the above was really changed;",
                "impedance in free air, after break-in, modulus and phase, from 10 Hz to 1 kHz or"
                    + " beyond, and a second sweep with a known mass on the cone;",
                "anything that changed besides.")));
    return new Document("Change request: " + Lettering.clean(outcome.brief().name()), blocks, foot);
  }

  private Document.Table expected() {
    List<List<String>> rows = new ArrayList<>();
    for (BriefValue value : outcome.brief().values()) {
      Double before = request.before().get(value.key());
      Double after = request.after().get(value.key());
      if (before != null && after != null && value.window().limits()) {
        rows.add(
            List.of(
                SampleTexts.label(value),
                Lettering.clean(value.name()),
                SampleTexts.number(before, value.unit()),
                SampleTexts.number(after, value.unit()),
                SampleTexts.window(value),
                value.unit().shown()));
      }
    }
    return new Document.Table(
        List.of("Symbol", "Value", "Now", "Afterwards", "Window", "Unit"),
        rows,
        List.of(false, false, true, true, true, false));
  }

  /** Figures before and after; those of the brief's woofer in brackets, where they are given. */
  static Document.Table beforeAfter(
      List<PartsFigures> before, List<PartsFigures> after, List<PartsFigures> nominal) {
    List<List<String>> rows = new ArrayList<>();
    for (int s = 0; s < before.size(); s++) {
      List<PartsFigures> three =
          nominal.isEmpty()
              ? List.of(before.get(s), after.get(s))
              : List.of(before.get(s), after.get(s), nominal.get(s));
      rows.add(
          List.of(
              Lettering.clean(before.get(s).stack()),
              steps(three, stack -> Figures.decibelNumber(stack.rmsDeviationDb())),
              steps(three, stack -> Figures.signedDecibelNumber(stack.meanDeviationDb())),
              steps(three, stack -> Figures.decibelNumber(stack.worstExcessDb())),
              steps(three, stack -> Figures.signedDecibelNumber(stack.outputMarginDb())),
              steps(three, stack -> Figures.decibelNumber(stack.correctionDb()))));
    }
    String how =
        nominal.isEmpty() ? "Stack; now to afterwards" : "Stack; now to afterwards (brief)";
    return new Document.Table(
        List.of(
            how,
            "Level deviation, rms (dB)",
            "Level against target (dB)",
            "Outside the corridor (dB)",
            "Loudest-level margin (dB)",
            "Correction needed (dB)"),
        rows,
        List.of(false, true, true, true, true, true));
  }

  private static String steps(List<PartsFigures> stacks, Function<PartsFigures, String> figure) {
    String change = figure.apply(stacks.get(0)) + " to " + figure.apply(stacks.get(1));
    return stacks.size() > 2 ? change + " (" + figure.apply(stacks.get(2)) + ")" : change;
  }
}

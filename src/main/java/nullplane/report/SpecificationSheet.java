package nullplane.report;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import nullplane.scoring.Assessment;
import nullplane.scoring.DesignSpec;
import nullplane.scoring.FamilyParts;
import nullplane.scoring.GradePart;
import nullplane.scoring.WooferBrief;

/** The specification sheet of one woofer, which a maker can quote from. */
public final class SpecificationSheet {
  private final DesignSpec spec;
  private final Assessment woofer;
  private final int rank;
  private final RunInfo run;
  private final FamilyParts family;

  /**
   * @param spec the spec
   * @param woofer the woofer
   * @param rank its place, from 1
   * @param run what tells two prints apart
   */
  public SpecificationSheet(DesignSpec spec, Assessment woofer, int rank, RunInfo run) {
    this(spec, woofer, rank, run, FamilyParts.of(spec, woofer));
  }

  /**
   * A sheet that may say what sharing parts costs.
   *
   * @param spec the spec
   * @param woofer the woofer
   * @param rank its place, from 1
   * @param run what tells two prints apart
   * @param family the parts of its stacks
   */
  public SpecificationSheet(
      DesignSpec spec, Assessment woofer, int rank, RunInfo run, FamilyParts family) {
    this.spec = spec;
    this.woofer = woofer;
    this.rank = rank;
    this.run = run;
    this.family = family;
  }

  /** Returns the sheet as Markdown; pictures are linked as SVG files beside it. */
  public String markdown() {
    return MarkdownWriter.write(document());
  }

  /**
   * Returns the sheet as HTML that needs nothing from outside.
   *
   * @param svg gives the SVG text of a picture by its file name, for example "level.svg"
   */
  public String html(Function<String, String> svg) {
    return HtmlWriter.write(document(), svg);
  }

  /** Returns what a woofer is called by its place, with its own name if that says more. */
  static String title(Assessment woofer, int rank) {
    String place = "Woofer " + rank;
    String name = Lettering.clean(woofer.woofer().name());
    return name.equalsIgnoreCase(place) ? place : place + " (" + name + ")";
  }

  /** Returns the line at the end of every page. */
  static String foot(DesignSpec spec, RunInfo run) {
    return Lettering.clean(spec.title()) + "; " + run.oneLine();
  }

  Document document() {
    Verdict verdict = new Verdict(spec, woofer, "Woofer " + rank);
    List<Document.Block> blocks = new ArrayList<>();
    blocks.add(
        new Document.Paragraph(
            verdict.shape() + " " + verdict.output() + verdict.constraints(), true));
    verdict.remedies().forEach(remedy -> blocks.add(new Document.Paragraph(remedy)));
    if (!woofer.violations().isEmpty()) {
      blocks.add(new Document.Heading(2, "Constraints broken"));
      blocks.add(new Document.Bullets(woofer.violations()));
    }
    blocks.add(new Document.Heading(2, "Five deciding figures"));
    blocks.add(
        new Document.Table(
            List.of("Figure", "Value", "Where"), verdict.deciding(), List.of(false, true, false)));
    blocks.add(new Document.Heading(2, "Parameters"));
    ParameterTable parameters = new ParameterTable(spec, woofer, verdict);
    blocks.add(parameters.values());
    blocks.add(
        new Document.Paragraph(
            "Terms and conditions as in IEC 60268-5. Usual tolerances are common practice; what the"
                + " response of these stacks tolerates stands in the maker's sheet and in"
                + " ranking.json. Break-in is common practice too: 1 to 2 h near fs at about 0.8 of the travel,"
                + " then 24 h rest."));
    blocks.add(new Document.Heading(2, "Why these values"));
    blocks.add(parameters.reasons());
    coil(blocks);
    given(blocks);
    blocks.add(new Document.Heading(2, "In each stack"));
    blocks.addAll(new StackTables(woofer).blocks());
    blocks.addAll(new LimitTables(woofer).blocks());
    blocks.add(new Document.Heading(2, "Parts, and what to swap between stacks"));
    blocks.addAll(new SwapTables(spec, family).blocks());
    blocks.add(new Document.Heading(2, "Pictures"));
    for (Charts.Kind kind : Charts.Kind.values()) {
      blocks.add(new Document.Figure(kind.fileStem() + ".svg", caption(kind)));
    }
    grade(blocks);
    Cautions cautions = new Cautions(spec, woofer);
    blocks.add(new Document.Heading(2, "What the model leaves out"));
    blocks.add(new Document.Bullets(cautions.model()));
    blocks.add(new Document.Heading(2, "Cautions"));
    blocks.add(new Document.Bullets(cautions.sentences()));
    return new Document(
        Lettering.clean(spec.title()) + ": " + title(woofer, rank), blocks, foot(spec, run));
  }

  /** Returns what a picture shows and how to read it. */
  static String caption(Charts.Kind kind) {
    return switch (kind) {
      case LEVEL ->
          "Level of each stack against its target. The filled band is the corridor; dashed is the"
              + " stack without its network, dash-dotted with hot voice coils. Where a main driver is"
              + " known, the broad line is the sum of both.";
      case LOUDEST ->
          "Loudest level of each stack. The thin line that lies on the broad one is the limit that"
              + " binds; the ring marks the least margin; dotted is the level asked for.";
      case IMPEDANCE -> "Load of each stack on the amplifier; dotted is the lowest load allowed.";
      case EXCURSION ->
          "Peak excursion of the cone that moves most, in each stack; dotted is the travel.";
    };
  }

  private void coil(List<Document.Block> blocks) {
    blocks.add(new Document.Heading(2, "Coil and motor"));
    blocks.addAll(new MotorTable(woofer, spec.woofer()).blocks());
  }

  private void given(List<Document.Block> blocks) {
    WooferBrief brief = spec.woofer();
    blocks.add(new Document.Heading(2, "Given, not searched"));
    blocks.add(
        new Document.Table(
            List.of("Symbol", "Quantity", "Value"),
            List.of(
                List.of(
                    "Qms", "mechanical Q factor, free air", Figures.number(brief.mechanicalQ())),
                List.of(
                    "Re", "coil resistance", MotorTable.span(brief.coil().resistanceOhm(), "ohm")),
                List.of("B", "flux density in the gap", MotorTable.span(brief.coil().fluxT(), "T")),
                List.of("P", "rated power", Figures.of(brief.powerW(), "W")),
                List.of(
                    "d", "effective diameter", Figures.millimetres(brief.effectiveDiameterM()))),
            List.of(false, false, true)));
  }

  private void grade(List<Document.Block> blocks) {
    blocks.add(new Document.Heading(2, "Why it stands where it stands"));
    List<List<String>> rows = new ArrayList<>();
    for (GradePart part : woofer.parts()) {
      rows.add(
          List.of(
              part.name(),
              part.unit().startsWith("dB")
                  ? Figures.decibels(part.value())
                  : Figures.of(part.value(), part.unit()),
              Figures.decibels(part.cost()),
              part.reason()));
    }
    if (rows.isEmpty()) {
      blocks.add(
          new Document.Paragraph("The terms of the grade are " + Figures.NOT_DETERMINED + "."));
      return;
    }
    blocks.add(
        new Document.Table(
            List.of("Term", "Figure", "Adds to the cost", "Reason"),
            rows,
            List.of(false, true, true, false)));
    blocks.add(
        new Document.Paragraph(
            "Cost in all: "
                + Figures.decibels(woofer.grade().costDb())
                + ". Smaller is better; a woofer that breaks a constraint stands behind all that"
                + " break none."));
  }
}

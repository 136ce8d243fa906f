package nullplane.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Stream;
import nullplane.sample.BriefTest;
import nullplane.sample.BriefUnit;
import nullplane.sample.BriefValue;
import nullplane.sample.BriefValue.Section;
import nullplane.sample.ImpedanceWindow;
import nullplane.sample.MakerBrief;
import nullplane.scoring.Assessment;
import nullplane.scoring.DesignSpec;
import nullplane.units.Curve;

/**
 * The sheet that a maker of woofers quotes from: what is asked for, what is accepted, how it is
 * measured and why. Gives pages for people, and the {@link MakerBrief} for machines.
 */
public final class FactorySheet {
  /** File name of the picture that only this sheet has, without its ending. */
  static final String WINDOW_PICTURE = "window";

  /** Values that count whole things. */
  private static final List<String> COUNTED = List.of("layers", "turns");

  private static final int SWEEP_POINTS = 171;
  private static final String LEVEL_FILE = Charts.Kind.LEVEL.fileStem() + ".svg";
  private static final String LOUDEST_FILE = Charts.Kind.LOUDEST.fileStem() + ".svg";
  private static final String WINDOW_FILE = WINDOW_PICTURE + ".svg";

  private final DesignSpec spec;
  private final Assessment assessment;
  private final RunInfo run;
  private final FactoryParts parts;
  private final String title;
  private final MakerBrief brief;
  private final FactoryTexts texts;

  /**
   * @param spec the spec
   * @param assessment the woofer
   * @param rank its place, from 1
   * @param run what tells two prints apart
   * @param parts what other computations add
   */
  public FactorySheet(
      DesignSpec spec, Assessment assessment, int rank, RunInfo run, FactoryParts parts) {
    this.spec = spec;
    this.assessment = assessment;
    this.run = run;
    this.parts = parts;
    title = SpecificationSheet.title(assessment, rank);
    texts = new FactoryTexts(spec, assessment);
    brief = made(rank);
  }

  private MakerBrief made(int rank) {
    Verdict verdict = new Verdict(spec, assessment, "Woofer " + rank);
    List<BriefValue> values = new FactoryValues(spec, assessment, verdict, parts).all();
    return new MakerBrief(
        Lettering.clean(spec.title()),
        title,
        rank,
        run.digest(),
        parts.specDate(),
        run.seed(),
        run.version(),
        assessment.woofer(),
        values,
        tests(),
        parts.priorities().isEmpty() ? texts.priorities() : parts.priorities(),
        texts.questions(),
        assessment.stacks(),
        window(values));
  }

  /** The usual tests, those replaced that the parts know better. */
  private List<BriefTest> tests() {
    List<String> replaced = parts.tests().stream().map(BriefTest::name).toList();
    return Stream.concat(
            texts.tests().stream().filter(test -> !replaced.contains(test.name())),
            parts.tests().stream())
        .toList();
  }

  private ImpedanceWindow window(List<BriefValue> values) {
    ImpedanceWindow.Parameters nominal =
        new ImpedanceWindow.Parameters(
            assessment.woofer().resistanceOhm(),
            assessment.freeAir().resonanceHz(),
            assessment.freeAir().mechanicalQ(),
            assessment.freeAir().electricalQ(),
            assessment.woofer().inductanceH());
    return ImpedanceWindow.of(
        nominal,
        FactoryValues.range(values, "re", nominal.resistanceOhm()),
        FactoryValues.range(values, "fs", nominal.resonanceHz()),
        FactoryValues.range(values, "qms", nominal.mechanicalQ()),
        FactoryValues.range(values, "qes", nominal.electricalQ()),
        FactoryValues.range(values, "le", nominal.inductanceH()),
        Curve.logSpaced(
            PlotFrame.AUDIO_LOW_END.lower(), PlotFrame.AUDIO_LOW_END.upper(), SWEEP_POINTS));
  }

  /** Returns the brief for machines. */
  public MakerBrief brief() {
    return brief;
  }

  /**
   * Returns the sheet as HTML that needs nothing from outside.
   *
   * @param svg gives the SVG text of a picture by its file name, for example "level.svg"
   */
  public String html(Function<String, String> svg) {
    return HtmlWriter.write(document(), svg);
  }

  /**
   * Returns the sheet as PDF; the same sheet gives the same bytes.
   *
   * @param paper what it is printed on
   * @param ranges the axes, the same for all woofers of a run
   * @throws nullplane.faults.OutputException if the machine has no font for the pictures
   */
  public byte[] pdf(Paper paper, PlotRanges ranges) {
    Map<String, Picture> pictures =
        Map.of(
            LEVEL_FILE, Charts.of(Charts.Kind.LEVEL, spec, assessment, title, ranges),
            LOUDEST_FILE, Charts.of(Charts.Kind.LOUDEST, spec, assessment, title, ranges),
            WINDOW_FILE, windowPicture());
    return PdfWriter.write(
        document(),
        paper,
        path -> {
          Picture picture = pictures.get(path);
          if (picture == null) {
            throw new IllegalStateException("no picture " + path);
          }
          return picture;
        },
        run.digest(),
        parts.specDate());
  }

  /** Returns the impedance band as a picture. */
  Picture windowPicture() {
    return ImpedanceWindowChart.picture(brief.impedance(), title);
  }

  Document document() {
    List<Document.Block> blocks = new ArrayList<>();
    values(blocks);
    motor(blocks);
    tests(blocks);
    pictures(blocks);
    reasons(blocks);
    return new Document("Woofer to be quoted: " + brief.title() + ", " + title, blocks, foot());
  }

  private String foot() {
    return brief.title()
        + ", "
        + title
        + "; spec "
        + parts.specDate().map(date -> "of " + date).orElse("undated")
        + ", digest "
        + run.shortDigest()
        + ", seed "
        + run.seed()
        + "; version "
        + Lettering.clean(run.version());
  }

  private void values(List<Document.Block> blocks) {
    texts.purpose().forEach(text -> blocks.add(new Document.Paragraph(text)));
    blocks.add(new Document.Heading(2, "Target values, windows and conditions"));
    blocks.add(table(Section.TARGET));
    blocks.add(new Document.Paragraph(texts.conditions()));
    if (parts.windows().isEmpty()) {
      blocks.add(
          new Document.Paragraph(
              "Windows are common practice for now; what the response of these panels tolerates is "
                  + Figures.NOT_DETERMINED
                  + " on this sheet."));
    }
  }

  private void motor(List<Document.Block> blocks) {
    blocks.add(new Document.Heading(2, "Coil and motor", true));
    blocks.add(table(Section.COIL));
    blocks.add(new Document.Heading(2, "Large signal"));
    blocks.add(table(Section.LARGE_SIGNAL));
    blocks.add(new Document.Heading(2, "Priorities, first things first"));
    blocks.add(numbered("Priority", brief.priorities()));
  }

  private void tests(List<Document.Block> blocks) {
    blocks.add(new Document.Heading(2, "Acceptance tests"));
    List<List<String>> rows = new ArrayList<>();
    for (BriefTest test : brief.tests()) {
      rows.add(List.of(test.name(), test.method(), test.limit(), test.count()));
    }
    blocks.add(
        new Document.Table(
            List.of("Test", "How", "What passes", "How many"),
            rows,
            List.of(false, false, false, false),
            List.of(15, 43, 29, 13)));
    blocks.add(new Document.Heading(2, "Open questions to the maker"));
    blocks.add(numbered("Question", brief.questions()));
    blocks.add(new Document.Heading(2, "Drawings"));
    texts.drawings().forEach(text -> blocks.add(new Document.Paragraph(text)));
  }

  private void pictures(List<Document.Block> blocks) {
    blocks.add(new Document.Heading(2, "On the customer's own panels"));
    blocks.add(new Document.Figure(LEVEL_FILE, SpecificationSheet.caption(Charts.Kind.LEVEL)));
    blocks.add(new Document.Figure(LOUDEST_FILE, SpecificationSheet.caption(Charts.Kind.LOUDEST)));
    blocks.add(new Document.Heading(2, "Impedance window for incoming inspection"));
    blocks.add(
        new Document.Figure(
            WINDOW_FILE,
            "Free air, small signal. A curve that leaves the band has a parameter outside its"
                + " window; a curve inside it does not prove that all are inside. The values stand"
                + " in the workbook."));
  }

  private void reasons(List<Document.Block> blocks) {
    if (!parts.windowNotes().isEmpty()) {
      blocks.add(new Document.Heading(2, "Why these windows"));
      blocks.add(new Document.Bullets(parts.windowNotes()));
    }
    blocks.add(new Document.Heading(2, "Why each value"));
    List<List<String>> rows = new ArrayList<>();
    for (BriefValue value : brief.values()) {
      if (value.target().isPresent() || value.window().limits() || !value.words().isEmpty()) {
        rows.add(List.of(symbol(value), value.name(), shown(value), value.reason()));
      }
    }
    blocks.add(
        new Document.Table(
            List.of("Symbol", "Quantity", "Target", "Reason"),
            rows,
            List.of(false, false, true, false),
            List.of(9, 23, 14, 54)));
    Cautions cautions = new Cautions(spec, assessment);
    blocks.add(new Document.Heading(2, "Cautions"));
    blocks.add(new Document.Bullets(cautions.sentences()));
    blocks.add(new Document.Heading(2, "What the computation leaves out"));
    blocks.add(new Document.Bullets(cautions.model()));
  }

  private Document.Table table(Section section) {
    List<List<String>> rows = new ArrayList<>();
    for (BriefValue value : brief.values(section)) {
      rows.add(
          List.of(
              symbol(value),
              value.name(),
              target(value),
              value.words().isEmpty() ? value.unit().shown() : "-",
              window(value),
              value.window().basis(),
              value.condition()));
    }
    return new Document.Table(
        List.of("Symbol", "Quantity", "Target", "Unit", "Window", "Basis", "Condition, method"),
        rows,
        List.of(false, false, true, false, true, false, false),
        List.of(7, 18, 13, 9, 13, 14, 26));
  }

  private static Document.Table numbered(String head, List<String> items) {
    List<List<String>> rows = new ArrayList<>();
    for (int i = 0; i < items.size(); i++) {
      rows.add(List.of(Integer.toString(i + 1), items.get(i)));
    }
    return new Document.Table(List.of("No.", head), rows, List.of(true, false), List.of(5, 95));
  }

  private static String symbol(BriefValue value) {
    return value.symbol().isEmpty() ? "-" : value.symbol();
  }

  private static String shown(BriefValue value) {
    return value.words().isEmpty() && value.target().isPresent() && value.unit() != BriefUnit.ONE
        ? target(value) + " " + value.unit().shown()
        : target(value);
  }

  private static String target(BriefValue value) {
    if (!value.words().isEmpty()) {
      return value.words();
    }
    if (COUNTED.contains(value.key()) && value.target().isPresent()) {
      return Long.toString(Math.round(value.target().getAsDouble()));
    }
    boolean limitOnly = value.target().isEmpty() && value.window().limits();
    return limitOnly ? "-" : number(value.target(), value.unit());
  }

  private static String number(OptionalDouble value, BriefUnit unit) {
    if (value.isEmpty()) {
      return "";
    }
    double shown = unit.toShown(value.getAsDouble());
    return unit == BriefUnit.DECIBEL ? Figures.decibelNumber(shown) : Figures.number(shown);
  }

  private static String window(BriefValue value) {
    OptionalDouble lower = value.window().lower();
    OptionalDouble upper = value.window().upper();
    if (lower.isPresent() && upper.isPresent()) {
      return number(lower, value.unit()) + " to " + number(upper, value.unit());
    }
    if (lower.isPresent()) {
      return number(lower, value.unit()) + " or more";
    }
    return upper.isPresent() ? number(upper, value.unit()) + " or less" : "-";
  }
}

package nullplane.report;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import nullplane.scoring.DesignSpec;

/** The page of a panel run: the deciding figures, then each stack's pictures with what to see. */
final class PanelPage {
  private final DesignSpec spec;
  private final List<StudyCurves> stacks;
  private final RunInfo run;

  PanelPage(DesignSpec spec, List<StudyCurves> stacks, RunInfo run) {
    this.spec = spec;
    this.stacks = List.copyOf(stacks);
    this.run = run;
  }

  /** Returns the page as Markdown. */
  String markdown() {
    return MarkdownWriter.write(document());
  }

  /**
   * Returns the page as HTML that needs nothing from outside.
   *
   * @param svg gives the SVG text of a picture by its relative path
   */
  String html(Function<String, String> svg) {
    return HtmlWriter.write(document(), svg);
  }

  private Document document() {
    List<Document.Block> blocks = new ArrayList<>();
    blocks.add(
        new Document.Paragraph(
            "What each panel does to its woofers and to the sound, whatever woofer sits in it: all"
                + " woofers of a stack move together, and nothing here depends on a driver."));
    blocks.add(figures());
    for (int i = 0; i < stacks.size(); i++) {
      PanelRemarks remarks = new PanelRemarks(spec, stacks.get(i));
      blocks.add(new Document.Heading(2, stacks.get(i).study().brief().name()));
      for (StudyCharts.Kind kind : StudyCharts.Kind.values()) {
        blocks.add(
            new Document.Figure(
                PanelReport.folder(i) + kind.fileStem() + ".svg", remarks.of(kind)));
      }
      for (String table : List.of("figures", "impedance", "directivity")) {
        blocks.add(
            new Document.Link(
                PanelReport.folder(i) + table + ".csv",
                "Table: " + table + " of " + stacks.get(i).study().brief().name()));
      }
    }
    blocks.add(new Document.Heading(2, "What the words mean"));
    blocks.add(
        new Document.Bullets(
            List.of(
                "Added mass: the air that a cone has to move along, both faces, Im Z/w. The bare"
                    + " disc moves (8/3) rho a^3, a piston in an endless wall (16/3) rho a^3.",
                "Effective path length: the distance D of two opposite point sources that sound the"
                    + " same on the axis, |r p|/(k rho w V/4 pi). The mirror image in a floor"
                    + " counts.",
                "Free monopole: one small source of the same volume velocity V without a panel and"
                    + " without a floor, |r p| = rho w V/4 pi.",
                "Level at the listening point: for one cone acceleration at all frequencies, which"
                    + " is about what a woofer does above its resonance.")));
    blocks.add(new Document.Heading(2, "What the model leaves out"));
    blocks.add(new Document.Bullets(model(spec, stacks)));
    List<String> cautions =
        stacks.stream().flatMap(s -> new PanelRemarks(spec, s).cautions().stream()).toList();
    if (!cautions.isEmpty()) {
      blocks.add(new Document.Heading(2, "Cautions"));
      blocks.add(new Document.Bullets(cautions));
    }
    blocks.add(new Document.Link("panel.json", "All numbers of the chosen points: panel.json"));
    return new Document(
        Lettering.clean(spec.title()) + ": the panels",
        blocks,
        Lettering.clean(spec.title()) + "; " + PanelReport.oneLine(run));
  }

  /** Returns what the model leaves out, for the spec's own woofer size and band. */
  static List<String> model(DesignSpec spec, List<StudyCurves> stacks) {
    return Cautions.panelModel(
        new PanelRemarks(spec, stacks.get(0)).pistonLimitHz(), spec.highestCornerHz());
  }

  private Document.Table figures() {
    List<List<String>> rows = new ArrayList<>();
    for (StudyCurves stack : stacks) {
      PanelRemarks remarks = new PanelRemarks(spec, stack);
      rows.add(
          List.of(
              stack.study().brief().name(),
              remarks.masses() + " g",
              Figures.of(stack.freeDiscG(), "g") + ", " + Figures.of(stack.endlessWallG(), "g"),
              Figures.metres(stack.pathM(true).at(0)),
              stack.study().overFloor() ? Figures.metres(stack.pathM(false).at(0)) : "no floor",
              stack.firstDip().map(dip -> Figures.hertz(dip.frequencyHz())).orElse("none to 1 kHz"),
              stack.study().overFloor()
                  ? Figures.signedDecibels(remarks.floorGainDb())
                  : "no floor",
              Figures.percent(remarks.error())));
    }
    double lowest = new PanelRemarks(spec, stacks.get(0)).lowestHz();
    return new Document.Table(
        List.of(
            "Stack",
            "Air per cone at " + Figures.hertz(lowest),
            "Bare disc, endless wall",
            "Path length, free space",
            "Path length, over floor",
            "First dip on axis",
            "Floor gain at the ear, 50 Hz",
            "Estimated error"),
        rows,
        List.of(false, true, true, true, true, true, true, true));
  }
}

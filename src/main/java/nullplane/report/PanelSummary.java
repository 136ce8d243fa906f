package nullplane.report;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import nullplane.scoring.DesignSpec;
import nullplane.scoring.PanelStudy;

/** A panel run at a glance, as plain text of at most 80 columns. */
public final class PanelSummary {
  private static final int WIDTH = TerminalPage.WIDTH;

  private final DesignSpec spec;
  private final List<StudyCurves> stacks = new ArrayList<>();
  private final TerminalPage page;

  private PanelSummary(DesignSpec spec, List<PanelStudy> studies, boolean colour) {
    this.spec = spec;
    this.page = new TerminalPage(colour);
    studies.forEach(study -> stacks.add(new StudyCurves(study)));
  }

  /**
   * Returns the summary, each line ended by a line feed.
   *
   * @param spec the spec
   * @param studies its stacks, each solved at least at the frequencies of the pictures
   * @param run what tells two runs apart
   * @param folder where the files went; the last line, which may be wider than 80 columns so that
   *     the path can be copied whole
   * @param colour whether to set heads off by terminal codes
   */
  public static String of(
      DesignSpec spec, List<PanelStudy> studies, RunInfo run, String folder, boolean colour) {
    return new PanelSummary(spec, studies, colour).text(run, folder);
  }

  private String text(RunInfo run, String folder) {
    double lowest = new PanelRemarks(spec, stacks.get(0)).lowestHz();
    page.head(
        "Air that moves with each cone at " + Figures.hertz(lowest) + ", all woofers together");
    PlainTable air =
        new PlainTable(
            List.of(
                List.of("Stack", "woofers", "per cone", "stack", "bare disc", "endless wall"),
                List.of("", "", "g", "g", "g", "g")));
    for (StudyCurves stack : stacks) {
      int count = stack.study().brief().pistons().size();
      air.add(
          List.of(
              name(stack),
              Integer.toString(count),
              new PanelRemarks(spec, stack).masses(),
              Figures.number(stack.meanMassG().at(0) * count),
              Figures.number(stack.freeDiscG()),
              Figures.number(stack.endlessWallG())));
    }
    page.table(air);
    page.blank();
    page.head("The way round the panel, and the floor");
    PlainTable way =
        new PlainTable(
            List.of(
                List.of("Stack", "path free", "on floor", "0 dB at", "dip at", "floor", "error"),
                List.of("", "m", "m", "Hz", "Hz", "dB", "%")));
    for (StudyCurves stack : stacks) {
      PanelRemarks remarks = new PanelRemarks(spec, stack);
      boolean floor = stack.study().overFloor();
      way.add(
          List.of(
              name(stack),
              Figures.number(stack.pathM(true).at(0)),
              floor ? Figures.number(stack.pathM(false).at(0)) : "no floor",
              stack.reachesMonopoleHz().map(Figures::number).orElse("none"),
              stack.firstDip().map(dip -> Figures.number(dip.frequencyHz())).orElse("none"),
              floor ? Figures.signedDecibelNumber(remarks.floorGainDb()) : "no floor",
              Figures.number(100 * remarks.error())));
    }
    page.table(way);
    for (String sentence :
        List.of(
            "path: distance of two opposite point sources that sound the same on the axis at "
                + Figures.hertz(lowest)
                + "; on the floor its mirror image counts.",
            "0 dB at: where the axis draws level with a free monopole. dip: first on the axis up to"
                + " 1 kHz, 3 dB or deeper. floor: what it adds at the listening point at 50 Hz."
                + " error: largest estimate.")) {
      PlainTable.wrapped(sentence, WIDTH - 2, 0).forEach(line -> page.line("  " + line));
    }
    page.blank();
    cautions();
    page.paragraph(
        PlainTable.shortened(Lettering.clean(spec.title()), 30)
            + ": "
            + PanelReport.oneLine(run)
            + ".");
    page.line("Files: " + Lettering.clean(folder));
    return page.text();
  }

  private static String name(StudyCurves stack) {
    return Lettering.clean(stack.study().brief().name());
  }

  private void cautions() {
    page.head("Cautions");
    List<String> cautions = new ArrayList<>(PanelPage.model(spec, stacks));
    Function<StudyCurves, List<String>> own = stack -> new PanelRemarks(spec, stack).cautions();
    stacks.forEach(stack -> cautions.addAll(own.apply(stack)));
    page.list(cautions);
    page.blank();
  }
}

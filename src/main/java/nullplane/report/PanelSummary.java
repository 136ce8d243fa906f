package nullplane.report;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import nullplane.scoring.DesignSpec;
import nullplane.scoring.PanelStudy;

/** A panel run at a glance, as plain text of at most 80 columns. */
public final class PanelSummary {
  private static final String BOLD = "\u001b[1m";
  private static final String PLAIN = "\u001b[0m";
  private static final int WIDTH = TerminalSummary.WIDTH;

  private final DesignSpec spec;
  private final boolean colour;
  private final List<StudyCurves> stacks = new ArrayList<>();
  private final List<String> lines = new ArrayList<>();

  private PanelSummary(DesignSpec spec, List<PanelStudy> studies, boolean colour) {
    this.spec = spec;
    this.colour = colour;
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
    head("Air that moves with each cone at " + Figures.hertz(lowest) + ", all woofers together");
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
    table(air);
    blank();
    head("The way round the panel, and the floor");
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
    table(way);
    for (String sentence :
        List.of(
            "path: distance of two opposite point sources that sound the same on the axis at "
                + Figures.hertz(lowest)
                + "; on the floor its mirror image counts.",
            "0 dB at: where the axis draws level with a free monopole. dip: first on the axis up to"
                + " 1 kHz, 3 dB or deeper. floor: what it adds at the listening point at 50 Hz."
                + " error: largest estimate.")) {
      PlainTable.wrapped(sentence, WIDTH - 2, 0).forEach(line -> lines.add("  " + line));
    }
    blank();
    cautions();
    paragraph(
        PlainTable.shortened(Lettering.clean(spec.title()), 30)
            + ": "
            + PanelReport.oneLine(run)
            + ".");
    lines.add("Files: " + Lettering.clean(folder));
    return String.join("\n", lines) + "\n";
  }

  private static String name(StudyCurves stack) {
    return Lettering.clean(stack.study().brief().name());
  }

  private void cautions() {
    head("Cautions");
    List<String> cautions = new ArrayList<>(PanelPage.model(spec, stacks));
    Function<StudyCurves, List<String>> own = stack -> new PanelRemarks(spec, stack).cautions();
    stacks.forEach(stack -> cautions.addAll(own.apply(stack)));
    for (String caution : cautions) {
      List<String> wrapped = PlainTable.wrapped(Lettering.clean(caution), WIDTH - 2, 0);
      for (int i = 0; i < wrapped.size(); i++) {
        lines.add((i == 0 ? "- " : "  ") + wrapped.get(i));
      }
    }
    blank();
  }

  private void table(PlainTable table) {
    List<String> rows = table.lines(WIDTH);
    for (int i = 0; i < rows.size(); i++) {
      lines.add(i < table.headRows() ? strong(rows.get(i)) : rows.get(i));
    }
  }

  private void head(String text) {
    lines.add(strong(text));
  }

  private String strong(String text) {
    return colour ? BOLD + text + PLAIN : text;
  }

  private void paragraph(String text) {
    lines.addAll(PlainTable.wrapped(text, WIDTH, 0));
  }

  private void blank() {
    lines.add("");
  }
}

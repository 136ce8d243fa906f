package nullplane.report;

import java.awt.Color;
import java.awt.Graphics2D;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import nullplane.report.Lettering.Align;
import nullplane.scoring.DesignSpec;
import nullplane.scoring.PanelStudy;
import nullplane.units.Curve;
import nullplane.units.Range;

/** The pictures of one stack's panel. */
final class StudyCharts {
  static final int WIDTH_PX = PanelGrid.WIDTH_PX;

  private static final int LEFT_PX = 76;
  private static final int RIGHT_PX = 168;
  private static final int TOP_PX = 36;
  private static final int FRAME_HEIGHT_PX = 320;
  private static final int FOOT_PX = 56;
  private static final int MOST_WOOFER_CURVES = 4;
  private static final List<String> MARKS =
      List.of(" (circles)", " (squares)", " (triangles)", " (diamonds)");
  private static final List<String> EXTREMES = List.of(", least", ", most");
  private static final double DB_PER_DECADE = 50;

  private final DesignSpec spec;
  private final StudyCurves curves;
  private final int index;
  private final StudyRanges ranges;

  /** What a picture shows. */
  enum Kind {
    /** The panel with its woofers, the floor and the ear. */
    DRAWING("panel"),
    /** Air that moves with the cones. */
    MASS("added-mass"),
    /** Effective path length round the panel. */
    PATH("path-length"),
    /** Far field on the axis. */
    ON_AXIS("on-axis"),
    /** Far field round the panel at some frequencies. */
    POLARS("polars"),
    /** Far field over frequency and angle. */
    MAP("directivity-map"),
    /** Level at the listening point. */
    LISTENING("listening-point");

    private final String fileStem;

    Kind(String fileStem) {
      this.fileStem = fileStem;
    }

    /** Returns the picture's file name without its ending. */
    String fileStem() {
      return fileStem;
    }
  }

  /**
   * @param spec the spec
   * @param curves the stack's panel
   * @param index its place in the spec, from 0
   * @param ranges the axes, the same for all stacks of a run
   */
  StudyCharts(DesignSpec spec, StudyCurves curves, int index, StudyRanges ranges) {
    this.spec = spec;
    this.curves = curves;
    this.index = index;
    this.ranges = ranges;
  }

  /** Returns a picture. */
  Picture of(Kind kind) {
    return switch (kind) {
      case DRAWING -> new PanelDrawing(spec, curves.study(), index).picture(name(kind), title());
      case MASS -> mass();
      case PATH -> path();
      case ON_AXIS -> onAxis();
      case POLARS -> new PolarChart(curves.study(), colour()).picture(name(kind), title());
      case MAP -> new DirectivityMap(curves.study()).picture(name(kind), title());
      case LISTENING -> listening();
    };
  }

  private PanelStudy study() {
    return curves.study();
  }

  private Color colour() {
    return Palette.stack(index);
  }

  private String title() {
    return study().brief().name();
  }

  /** Names must differ on a page that holds all stacks, and hold letters alone. */
  private String name(Kind kind) {
    return (char) ('a' + index) + kind.fileStem().replace("-", "");
  }

  private Picture mass() {
    Range grams = ranges.massG();
    double step = StudyRanges.step(grams.upper());
    CurvePlot plot =
        new CurvePlot(
            frame(grams),
            "Air mass per cone (g)",
            Charts.multiples(grams, step),
            Charts.multiples(grams, step / 2));
    plot.level("bare disc", curves.freeDiscG());
    plot.level("endless wall", curves.endlessWallG());
    List<List<Integer>> groups = PanelNames.groups(study(), curves.indices());
    List<List<Integer>> shown =
        groups.size() > MOST_WOOFER_CURVES ? List.of(least(groups), most(groups)) : groups;
    if (groups.size() > 1) {
      for (int i = 0; i < shown.size(); i++) {
        plot.add(
            line(
                PanelNames.of(shown.get(i))
                    + (groups.size() > shown.size() ? EXTREMES.get(i) : "")
                    + MARKS.get(i),
                curves.addedMassG(shown.get(i).get(0)),
                Palette.SOFT_INK,
                LineStyle.BARE,
                i));
      }
    }
    plot.add(
        line(
            groups.size() > 1 ? "mean of the stack" : PanelNames.of(groups.get(0)),
            curves.meanMassG(),
            colour(),
            LineStyle.MAIN,
            -1));
    return picture(
        Kind.MASS,
        "air that moves with each cone",
        "air that moves with each cone over frequency, against a bare disc and an endless wall",
        plot,
        FRAME_HEIGHT_PX);
  }

  private List<Integer> least(List<List<Integer>> groups) {
    return groups.stream().min(java.util.Comparator.comparingDouble(this::firstMass)).orElseThrow();
  }

  private List<Integer> most(List<List<Integer>> groups) {
    return groups.stream().max(java.util.Comparator.comparingDouble(this::firstMass)).orElseThrow();
  }

  private double firstMass(List<Integer> group) {
    return curves.addedMassG(group.get(0)).at(0);
  }

  private Picture path() {
    Range metres = ranges.pathM();
    double step = StudyRanges.step(metres.upper());
    CurvePlot plot =
        new CurvePlot(
            frame(metres),
            "Effective path length (m)",
            Charts.multiples(metres, step),
            Charts.multiples(metres, step / 2));
    plot.level("width of the panel", study().brief().panel().outline().widthM());
    addBoth(plot, curves.pathM(false), curves.pathM(true));
    return picture(
        Kind.PATH,
        "effective path length from front to back",
        "effective path length over frequency",
        plot,
        FRAME_HEIGHT_PX);
  }

  private Picture onAxis() {
    PlotFrame frame = levels(StudyRanges.ON_AXIS_DB);
    CurvePlot plot = levelPlot(frame, "On axis, far away (dB re free monopole)");
    plot.level("free monopole", 0);
    addBoth(plot, curves.onAxisDb(false), curves.onAxisDb(true));
    return picture(
        Kind.ON_AXIS,
        "response on the axis for equal volume acceleration",
        "far field on the axis over frequency, against one free monopole",
        plot,
        frame.heightPx());
  }

  private Picture listening() {
    PlotFrame frame = levels(ranges.listeningDb());
    CurvePlot plot =
        levelPlot(
            frame,
            Charts.levelTitle(
                spec,
                "Level",
                ", cones at " + Charts.plain(StudyCurves.ACCELERATION_M_PER_S2) + " m/s\u00b2"));
    addBoth(plot, curves.listeningDb(false), curves.listeningDb(true));
    return picture(
        Kind.LISTENING,
        "level at the listening point for equal cone acceleration",
        "level at the listening point over frequency, with and without the floor",
        plot,
        frame.heightPx());
  }

  private void addBoth(CurvePlot plot, Curve stands, Curve free) {
    if (study().overFloor()) {
      plot.add(line("without the floor", free, Palette.SOFT_INK, LineStyle.BARE, -1));
    }
    plot.add(
        line(
            study().overFloor() ? "over the floor" : "in free space",
            stands,
            colour(),
            LineStyle.MAIN,
            -1));
  }

  private static CurvePlot levelPlot(PlotFrame frame, String axis) {
    return new CurvePlot(
        frame, axis, Charts.multiples(frame.value(), 10), Charts.multiples(frame.value(), 2));
  }

  private CurvePlot.Line line(String name, Curve values, Color colour, LineStyle style, int mark) {
    return new CurvePlot.Line(name, curves.fineHz(), curves.smooth(values), colour, style, mark);
  }

  private static PlotFrame levels(Range decibels) {
    return PlotFrame.ofLevels(WIDTH_PX - LEFT_PX - RIGHT_PX, decibels, DB_PER_DECADE);
  }

  private static PlotFrame frame(Range values) {
    return new PlotFrame(
        WIDTH_PX - LEFT_PX - RIGHT_PX, FRAME_HEIGHT_PX, PlotFrame.AUDIO_LOW_END, values, false);
  }

  private Picture picture(
      Kind kind, String heading, String description, CurvePlot plot, int frameHeightPx) {
    return new Picture(
        name(kind),
        WIDTH_PX,
        TOP_PX + frameHeightPx + FOOT_PX,
        title() + ": " + description,
        g -> {
          heading(g, title() + ": " + heading, LEFT_PX);
          plot.paint(g, LEFT_PX, TOP_PX, RIGHT_PX);
        });
  }

  /** Writes a picture's heading. */
  static void heading(Graphics2D g, String text, double leftPx) {
    Lettering.BOLD.draw(
        g, Lettering.BOLD.fitted(text, WIDTH_PX - 80.0), leftPx, 20, Align.LEFT, Palette.INK);
  }

  /** Does something to a graphics context and leaves its clip as it was. */
  static void clipped(Graphics2D g, java.awt.Shape clip, Consumer<Graphics2D> painter) {
    java.awt.Shape before = g.getClip();
    g.clip(clip);
    painter.accept(g);
    g.setClip(before);
  }

  /** Returns as many points from one end to the other, both included. */
  static double[] even(double from, double to, int points) {
    List<Double> values = new ArrayList<>();
    for (int i = 0; i < points; i++) {
      values.add(from + (to - from) * i / (points - 1));
    }
    return values.stream().mapToDouble(v -> v).toArray();
  }
}

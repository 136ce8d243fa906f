package nullplane.report;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.function.Supplier;
import nullplane.judging.Comparison;
import nullplane.judging.ParameterGroup;
import nullplane.judging.StackDifference;
import nullplane.judging.WooferDifference;
import nullplane.report.CurvesByStack.Named;
import nullplane.scoring.Assessment;
import nullplane.scoring.DesignSpec;
import nullplane.scoring.StackAssessment;
import nullplane.scoring.StackCurves;
import nullplane.units.Curve;
import nullplane.units.Range;

/** Every file for people that comparing two woofers gives: the page and its pictures, as bytes. */
public final class ComparisonReport {
  private final DesignSpec spec;
  private final Comparison comparison;
  private final RunInfo run;
  private final ComparisonWords words;

  private ComparisonReport(DesignSpec spec, Comparison comparison, RunInfo run) {
    this.spec = spec;
    this.comparison = comparison;
    this.run = run;
    this.words = new ComparisonWords(spec, comparison);
  }

  /**
   * Returns what makes each file, by its relative path. The suppliers can be called in any order
   * and on several threads.
   *
   * @param spec the spec
   * @param comparison the two woofers
   * @param run what tells two prints apart; its seed is not shown, since no chance is used
   */
  public static SortedMap<String, Supplier<byte[]>> parts(
      DesignSpec spec, Comparison comparison, RunInfo run) {
    ComparisonReport report = new ComparisonReport(spec, comparison, run);
    SortedMap<String, Supplier<byte[]>> parts = new TreeMap<>();
    DesignReport.picture(parts, "bare-level", () -> report.levels("bare-level"));
    DesignReport.picture(parts, "level", () -> report.levels("level"));
    DesignReport.picture(parts, "loudest", () -> report.levels("loudest"));
    DesignReport.picture(parts, "shares", report::shares);
    DesignReport.picture(parts, "impedance", () -> report.logarithmic("impedance"));
    DesignReport.picture(parts, "excursion", () -> report.logarithmic("excursion"));
    DesignReport.picture(parts, "step", () -> new StepChart(spec, comparison).picture());
    parts.put("index.md", () -> DesignReport.utf8(MarkdownWriter.write(report.document())));
    parts.put(
        "index.html",
        () ->
            DesignReport.utf8(
                HtmlWriter.write(report.document(), DesignReport.pictures(parts, ""))));
    return Collections.unmodifiableSortedMap(parts);
  }

  private List<Assessment> both() {
    return List.of(comparison.first(), comparison.second());
  }

  private List<Named> named(Function<StackCurves, Curve> which) {
    return both().stream()
        .map(
            woofer ->
                new Named(
                    woofer.woofer().name(),
                    woofer.stacks().stream().map(stack -> stack.curves().frequencyHz()).toList(),
                    woofer.stacks().stream().map(stack -> which.apply(stack.curves())).toList()))
        .toList();
  }

  private Picture levels(String stem) {
    PlotRanges ranges = PlotRanges.of(spec, both());
    String volts = ", " + Charts.plain(spec.target().voltageV()) + " V";
    return switch (stem) {
      case "bare-level" ->
          new CurvesByStack(
                  spec,
                  stem,
                  "Level without any network",
                  Charts.levelTitle(spec, "Level", volts),
                  ranges.levelDb(),
                  named(StackCurves::bareLevelDb),
                  true)
              .picture();
      case "level" ->
          new CurvesByStack(
                  spec,
                  stem,
                  "Level with the best network of each",
                  Charts.levelTitle(spec, "Level", volts),
                  ranges.levelDb(),
                  named(StackCurves::levelDb),
                  true)
              .picture();
      default ->
          new CurvesByStack(
                  spec,
                  stem,
                  "Loudest level",
                  Charts.levelTitle(spec, "Loudest level", ""),
                  ranges.loudestDb(),
                  named(StackCurves::loudestDb),
                  false)
              .picture();
    };
  }

  /** The parameters with the largest shares; what is left is summed up. */
  private Picture shares() {
    WooferDifference difference = comparison.difference();
    List<ParameterGroup> byShare = new ArrayList<>(List.of(ParameterGroup.values()));
    byShare.sort(Comparator.comparingDouble(group -> -largest(group)));
    List<ParameterGroup> shown =
        byShare.stream()
            .filter(group -> largest(group) > 0.05)
            .limit(CurvesByStack.MOST - 1)
            .toList();
    List<Named> curves = new ArrayList<>();
    List<Curve> axes = difference.stacks().stream().map(StackDifference::frequencyHz).toList();
    curves.add(
        new Named(
            "whole difference",
            axes,
            difference.stacks().stream()
                .map(stack -> sum(stack, List.of(ParameterGroup.values())))
                .toList()));
    for (ParameterGroup group : shown) {
      curves.add(
          new Named(
              group.symbol(),
              axes,
              difference.stacks().stream().map(stack -> stack.shareDb(group)).toList()));
    }
    double most = 4;
    for (Named curve : curves) {
      for (Curve values : curve.values()) {
        most = Math.max(most, values.stream().map(Math::abs).max().orElse(0));
      }
    }
    double end = Math.min(30, most > 14 ? 10 * Math.ceil(most / 10) : 2 * Math.ceil(most / 2));
    return new CurvesByStack(
            spec,
            "shares",
            "What each parameter adds on the way from the first woofer to the second",
            "Difference in level (dB)",
            new Range(-end, end),
            curves,
            false)
        .picture();
  }

  private double largest(ParameterGroup group) {
    return comparison.difference().stacks().stream()
        .mapToDouble(stack -> Math.abs(stack.shareDb(group).at(stack.largestAt(group))))
        .max()
        .orElse(0);
  }

  private static Curve sum(StackDifference stack, List<ParameterGroup> groups) {
    double[] sum = new double[stack.frequencyHz().size()];
    for (ParameterGroup group : groups) {
      for (int f = 0; f < sum.length; f++) {
        sum[f] += stack.shareDb(group).at(f);
      }
    }
    return Curve.of(sum);
  }

  private Picture logarithmic(String stem) {
    PlotRanges ranges = PlotRanges.of(spec, both());
    return new PairChart(spec, both(), ranges, stem).picture();
  }

  private Document document() {
    List<Document.Block> blocks = new ArrayList<>();
    blocks.add(new Document.Paragraph(words.verdict(), true));
    blocks.add(new Document.Heading(2, "The two woofers"));
    blocks.add(words.parameters());
    blocks.add(new Document.Heading(2, "Without any network"));
    figure(blocks, "bare-level", "Level of both at the same voltage; the band is the corridor.");
    blocks.add(new Document.Heading(2, "Which parameter makes the difference"));
    blocks.add(
        new Document.Paragraph(
            "Each parameter of the first woofer is exchanged for that of the second, in every order,"
                + " and the mean of what that changes is its share (Shapley 1953). The shares add up"
                + " to the whole difference at every frequency."));
    figure(blocks, "shares", "Share of each parameter over frequency.");
    for (int s = 0; s < spec.stacks().size(); s++) {
      blocks.add(new Document.Heading(3, Lettering.clean(spec.stacks().get(s).name())));
      blocks.add(words.shares(s));
    }
    blocks.add(new Document.Heading(3, "In the score"));
    blocks.add(words.scoreShares());
    blocks.add(new Document.Heading(2, "What each parameter does on a panel"));
    blocks.add(words.lessons());
    blocks.add(new Document.Heading(2, "With the best network of each"));
    figure(blocks, "level", "Level with the best wiring and network of each.");
    blocks.add(words.networks());
    blocks.add(new Document.Heading(2, "How loud, how far, how long"));
    figure(blocks, "loudest", "Loudest level before a limit binds.");
    figure(blocks, "excursion", "Peak excursion at the target's voltage.");
    figure(blocks, "impedance", "Load on the amplifier.");
    figure(
        blocks,
        "step",
        "Displacement after a step of voltage, from resonance and Q on the panel with the network in"
            + " place.");
    Cautions cautions = new Cautions(spec, comparison.first());
    blocks.add(new Document.Heading(2, "What the model leaves out"));
    blocks.add(new Document.Bullets(cautions.model()));
    blocks.add(new Document.Heading(2, "Cautions"));
    blocks.add(new Document.Bullets(cautions.sentences()));
    return new Document(
        Lettering.clean(spec.title()) + ": " + words.first() + " and " + words.second(),
        blocks,
        Lettering.clean(spec.title()) + "; " + PanelReport.oneLine(run));
  }

  private static void figure(List<Document.Block> blocks, String stem, String caption) {
    blocks.add(new Document.Figure(stem + ".svg", caption));
  }

  /** Returns a stack's curves of both woofers. */
  static List<StackAssessment> inStack(List<Assessment> woofers, int stack) {
    return woofers.stream().map(woofer -> woofer.stacks().get(stack)).toList();
  }
}

package nullplane.report;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.function.Supplier;
import nullplane.scoring.Assessment;
import nullplane.scoring.DesignSpec;
import nullplane.scoring.FamilyParts;
import nullplane.search.FrontObjective;
import nullplane.search.SearchOutcome;
import nullplane.tolerance.ToleranceStudy;

/** Every file for people that a design run gives: pages and pictures, as bytes. */
public final class DesignReport {
  /** How many woofers get a sheet. */
  public static final int MOST_SHEETS = 5;

  static final String NOTHING_FOUND =
      "No woofer was found that can be ranked. Widen the ranges that the search may choose from, or"
          + " ask for less.";

  private DesignReport() {}

  /**
   * Returns every file of a run by its relative path.
   *
   * @param spec the spec
   * @param outcome what was found
   * @param run what tells two prints apart
   * @throws nullplane.faults.OutputException if the machine has no font for the pictures
   */
  public static SortedMap<String, byte[]> files(
      DesignSpec spec, SearchOutcome outcome, RunInfo run) {
    SortedMap<String, byte[]> files = new TreeMap<>();
    parts(spec, outcome, run).forEach((path, bytes) -> files.put(path, bytes.get()));
    return Collections.unmodifiableSortedMap(files);
  }

  /**
   * Returns what makes each file of a run, by its relative path. The suppliers can be called in any
   * order and on several threads; a picture's SVG is drawn once and shared with the pages that hold
   * it.
   *
   * @param spec the spec
   * @param outcome what was found
   * @param run what tells two prints apart
   */
  public static SortedMap<String, Supplier<byte[]>> parts(
      DesignSpec spec, SearchOutcome outcome, RunInfo run) {
    return parts(spec, outcome, run, sheets(spec, outcome, List.of(), run, Optional.empty()));
  }

  /**
   * Returns the sheets for makers, one for each woofer that gets a sheet, best first.
   *
   * @param spec the spec
   * @param outcome what was found
   * @param tolerances a study for each woofer, in their order; none where nothing was studied
   * @param run what tells two prints apart
   * @param specDate date that the spec bears
   */
  public static List<FactorySheet> sheets(
      DesignSpec spec,
      SearchOutcome outcome,
      List<ToleranceStudy> tolerances,
      RunInfo run,
      Optional<LocalDate> specDate) {
    List<FactorySheet> sheets = new ArrayList<>();
    for (Assessment woofer : shown(outcome)) {
      int index = sheets.size();
      FactoryParts parts =
          index < tolerances.size() ? ToleranceParts.of(tolerances.get(index)) : FactoryParts.NONE;
      sheets.add(new FactorySheet(spec, woofer, index + 1, run, parts.withDate(specDate)));
    }
    return sheets;
  }

  /** As above, with sheets for makers that may hold more than the assessments do. */
  public static SortedMap<String, Supplier<byte[]>> parts(
      DesignSpec spec, SearchOutcome outcome, RunInfo run, List<FactorySheet> sheets) {
    return parts(
        spec,
        outcome,
        run,
        sheets,
        shown(outcome).stream().map(woofer -> FamilyParts.of(spec, woofer)).toList());
  }

  /**
   * As above, with what sharing parts between stacks costs.
   *
   * @param spec the spec
   * @param outcome what was found
   * @param run what tells two prints apart
   * @param sheets sheets for makers, one for each woofer that gets a sheet
   * @param families parts of the stacks, one for each woofer that gets a sheet
   */
  public static SortedMap<String, Supplier<byte[]>> parts(
      DesignSpec spec,
      SearchOutcome outcome,
      RunInfo run,
      List<FactorySheet> sheets,
      List<FamilyParts> families) {
    SortedMap<String, Supplier<byte[]>> parts = new TreeMap<>();
    List<Assessment> shown = shown(outcome);
    if (!shown.isEmpty()) {
      PlotRanges ranges = PlotRanges.of(spec, shown);
      for (int i = 0; i < shown.size(); i++) {
        woofer(
            parts,
            spec,
            shown.get(i),
            new SpecificationSheet(spec, shown.get(i), i + 1, run, families.get(i)),
            i + 1,
            ranges);
        maker(parts, sheets.get(i), i + 1, ranges);
      }
    }
    if (!outcome.front().isEmpty()) {
      for (FrontObjective other : TradeChart.others()) {
        picture(parts, TradeChart.stem(other), () -> TradeChart.picture(other, outcome.front()));
      }
    }
    if (!outcome.history().isEmpty()) {
      picture(parts, ConvergenceChart.STEM, () -> ConvergenceChart.picture(outcome));
    }
    IndexPage index = new IndexPage(spec, outcome, run);
    parts.put("index.md", () -> utf8(index.markdown()));
    parts.put("index.html", () -> utf8(index.html(pictures(parts, ""))));
    return Collections.unmodifiableSortedMap(parts);
  }

  /**
   * Checks that this machine can draw letters, so that a run can fail before its search and not
   * after.
   *
   * @throws nullplane.faults.OutputException if the machine has no font
   */
  public static void requireFonts() {
    Lettering.PLAIN.width("0");
  }

  private static void woofer(
      SortedMap<String, Supplier<byte[]>> parts,
      DesignSpec spec,
      Assessment woofer,
      SpecificationSheet sheet,
      int rank,
      PlotRanges ranges) {
    String folder = folder(rank);
    String title = SpecificationSheet.title(woofer, rank);
    for (Charts.Kind kind : Charts.Kind.values()) {
      picture(parts, folder + kind.fileStem(), () -> Charts.of(kind, spec, woofer, title, ranges));
    }
    parts.put(folder + "sheet.md", () -> utf8(sheet.markdown()));
    parts.put(folder + "sheet.html", () -> utf8(sheet.html(pictures(parts, folder))));
  }

  private static void maker(
      SortedMap<String, Supplier<byte[]>> parts, FactorySheet sheet, int rank, PlotRanges ranges) {
    String folder = folder(rank);
    parts.put(
        folder + FactorySheet.WINDOW_PICTURE + ".svg", new Once(() -> sheet.windowPicture().svg()));
    parts.put(makerFile(rank, ".html"), () -> utf8(sheet.html(pictures(parts, folder))));
    for (Paper paper : Paper.values()) {
      parts.put(makerFile(rank, "-" + paper.word() + ".pdf"), () -> sheet.pdf(paper, ranges));
    }
  }

  /**
   * Returns the path of a file of the sheet for makers.
   *
   * @param rank the woofer's place, from 1
   * @param ending what the name ends with, for example ".json"
   */
  public static String makerFile(int rank, String ending) {
    return folder(rank) + "brief-" + rank + ending;
  }

  /**
   * Returns the path of a woofer's table of parts to swap.
   *
   * @param rank the woofer's place, from 1
   */
  public static String swapFile(int rank) {
    return folder(rank) + "swap-list-" + rank + ".csv";
  }

  /**
   * Returns the path of a woofer's table of parts to keep.
   *
   * @param rank the woofer's place, from 1
   */
  public static String kitFile(int rank) {
    return folder(rank) + "owner-kit-" + rank + ".csv";
  }

  /**
   * Adds a picture as PNG and as SVG. XChart's charts keep state while they are painted, so each
   * file draws its own; the SVG is drawn once and shared with the pages that hold it.
   */
  static void picture(
      SortedMap<String, Supplier<byte[]>> parts, String path, Supplier<Picture> maker) {
    parts.put(path + ".png", () -> maker.get().png());
    parts.put(path + ".svg", new Once(() -> maker.get().svg()));
  }

  /** Returns what finds the SVG text of a picture by its path within a folder of a run. */
  static Function<String, String> pictures(
      SortedMap<String, Supplier<byte[]>> parts, String folder) {
    return path -> {
      Supplier<byte[]> svg = parts.get(folder + path);
      if (svg == null) {
        throw new IllegalStateException("no picture " + folder + path);
      }
      return new String(svg.get(), StandardCharsets.UTF_8);
    };
  }

  /** Returns the woofers that get a sheet, best first. */
  static List<Assessment> shown(SearchOutcome outcome) {
    return outcome.ranked().subList(0, Math.min(MOST_SHEETS, outcome.ranked().size()));
  }

  /** Returns the folder of a woofer's files, with its slash at the end. */
  static String folder(int rank) {
    return "woofer-" + rank + "/";
  }

  static byte[] utf8(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  /** Makes bytes at the first call and keeps them. */
  static final class Once implements Supplier<byte[]> {
    private final Supplier<byte[]> maker;
    private byte[] kept = {};

    Once(Supplier<byte[]> maker) {
      this.maker = maker;
    }

    @Override
    public synchronized byte[] get() {
      if (kept.length == 0) {
        kept = maker.get();
      }
      return kept.clone();
    }
  }
}

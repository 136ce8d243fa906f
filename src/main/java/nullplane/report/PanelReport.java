package nullplane.report;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Supplier;
import nullplane.scoring.DesignSpec;
import nullplane.scoring.PanelStudy;

/** Every file for people that a panel run gives: the index page and the pictures, as bytes. */
public final class PanelReport {
  private PanelReport() {}

  /**
   * Returns what makes each file of a run, by its relative path. The suppliers can be called in any
   * order and on several threads.
   *
   * @param spec the spec
   * @param studies its stacks, each solved at least at the frequencies of the pictures
   * @param run what tells two prints apart; its seed is not shown, since no chance is used
   */
  public static SortedMap<String, Supplier<byte[]>> parts(
      DesignSpec spec, List<PanelStudy> studies, RunInfo run) {
    SortedMap<String, Supplier<byte[]>> parts = new TreeMap<>();
    List<StudyCurves> curves = new ArrayList<>();
    studies.forEach(study -> curves.add(new StudyCurves(study)));
    StudyRanges ranges = StudyRanges.of(curves);
    for (int i = 0; i < curves.size(); i++) {
      StudyCharts charts = new StudyCharts(spec, curves.get(i), i, ranges);
      for (StudyCharts.Kind kind : StudyCharts.Kind.values()) {
        String path = folder(i) + kind.fileStem();
        DesignReport.picture(parts, path, () -> charts.of(kind));
      }
    }
    PanelPage page = new PanelPage(spec, curves, run);
    parts.put("index.md", () -> DesignReport.utf8(page.markdown()));
    parts.put("index.html", () -> DesignReport.utf8(page.html(DesignReport.pictures(parts, ""))));
    return Collections.unmodifiableSortedMap(parts);
  }

  /** Returns the folder of a stack's files, by its place in the spec from 0, slash at the end. */
  public static String folder(int index) {
    return "stack-" + (index + 1) + "/";
  }

  /** Returns what tells two prints apart, in one line. */
  static String oneLine(RunInfo run) {
    return "spec " + run.shortDigest() + ", version " + run.version();
  }
}

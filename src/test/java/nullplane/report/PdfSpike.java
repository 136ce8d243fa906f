package nullplane.report;
import java.nio.file.*;
import java.util.*;
public class PdfSpike {
  public static void main(String[] a) throws Exception {
    var spec = InventedRun.spec();
    var out = InventedRun.outcome(spec);
    var ranges = PlotRanges.of(spec, out.ranked());
    for (int r = 0; r < 2; r++) {
      long t = System.nanoTime();
      var sheet = DesignReport.sheets(spec, out, InventedRun.INFO, Optional.of(java.time.LocalDate.of(2026, 11, 25))).get(0);
      System.out.println((System.nanoTime() - t) / 1000000 + " ms sheet");
      byte[] b = sheet.pdf(r % 2 == 0 ? Paper.A4 : Paper.LETTER, ranges);
      System.out.println((System.nanoTime() - t) / 1000000 + " ms " + b.length);
      Files.write(Path.of("/tmp/paperspike/f" + r + ".pdf"), b);
    }
    Files.writeString(Path.of("/tmp/paperspike/f.html"), DesignReport.sheets(spec, out, InventedRun.INFO, Optional.empty()).get(0).html(p -> "<svg></svg>"));
  }
}

package nullplane.io;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Function;
import nullplane.network.Part;
import nullplane.network.PlacedPart;
import nullplane.network.SeriesCoil;
import nullplane.sample.BriefValue;
import nullplane.sample.ImpedanceWindow;
import nullplane.sample.MakerBrief;
import nullplane.scoring.StackAssessment;
import nullplane.scoring.StackCurves;
import nullplane.units.Curve;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;

/**
 * A brief as a workbook that an engineer of a factory works in: values, a form for inspection,
 * curves and parts. Numbers are numbers at full precision in the units that people read, text is
 * text whatever it begins with, and there is no formula. The same brief gives the same bytes.
 *
 * <p>Source: ECMA-376 (Office Open XML), through fastexcel.
 */
public final class BriefWorkbook {
  private static final String HEAD_FILL = "DCE9F2";
  private static final LocalDate NO_DATE = LocalDate.of(2000, 1, 1);
  private static final String MIDNIGHT = "T00:00:00Z";
  private static final String CORE = "docProps/core.xml";

  private final Workbook workbook;
  private final MakerBrief brief;

  private BriefWorkbook(Workbook workbook, MakerBrief brief) {
    this.workbook = workbook;
    this.brief = brief;
  }

  /**
   * Returns the bytes of the workbook.
   *
   * @param brief the brief
   * @throws IllegalStateException if a number to be written is not finite
   */
  public static byte[] of(MakerBrief brief) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try {
      Workbook workbook = new Workbook(bytes, "nullplane", "1.0");
      new BriefWorkbook(workbook, brief).fill();
      workbook.finish();
      return timeless(bytes.toByteArray(), brief.specDate().orElse(NO_DATE));
    } catch (IOException e) {
      throw new UncheckedIOException("writing to memory cannot fail", e);
    }
  }

  private void fill() throws IOException {
    values();
    inspection();
    impedance();
    curves();
    parts();
    about();
  }

  private void values() throws IOException {
    Worksheet sheet =
        sheet(
            "Values",
            List.of(
                "Section",
                "Symbol",
                "Quantity",
                "Unit",
                "Target",
                "Lower limit",
                "Upper limit",
                "Basis of the window",
                "Condition, method",
                "Reason"),
            12,
            8,
            34,
            12,
            14,
            14,
            14,
            30,
            60,
            80);
    int row = 1;
    for (BriefValue value : brief.values()) {
      text(sheet, row, 0, value.section().words());
      text(sheet, row, 1, value.symbol().isEmpty() ? "none" : value.symbol());
      text(sheet, row, 2, value.name());
      text(sheet, row, 3, value.unit().shown());
      target(sheet, row, 4, value);
      number(sheet, row, 5, value.window().lower(), value, BriefCsv.NO_LIMIT);
      number(sheet, row, 6, value.window().upper(), value, BriefCsv.NO_LIMIT);
      text(sheet, row, 7, value.window().basis());
      text(sheet, row, 8, value.condition());
      text(sheet, row, 9, value.reason());
      row++;
    }
    sheet.finish();
  }

  private void inspection() throws IOException {
    Worksheet sheet =
        sheet(
            "Inspection",
            List.of(
                "Symbol",
                "Quantity",
                "Unit",
                "Lower limit",
                "Upper limit",
                "Target",
                "Measured",
                "Passes (yes, no)",
                "Condition, method",
                "Allowed words"),
            8,
            34,
            12,
            14,
            14,
            14,
            14,
            16,
            60,
            16);
    List<BriefValue> held = brief.values().stream().filter(v -> v.window().limits()).toList();
    int row = 1;
    for (BriefValue value : held) {
      text(sheet, row, 0, value.symbol().isEmpty() ? "none" : value.symbol());
      text(sheet, row, 1, value.name());
      text(sheet, row, 2, value.unit().shown());
      number(sheet, row, 3, value.window().lower(), value, BriefCsv.NO_LIMIT);
      number(sheet, row, 4, value.window().upper(), value, BriefCsv.NO_LIMIT);
      target(sheet, row, 5, value);
      text(sheet, row, 8, value.condition());
      row++;
    }
    text(sheet, 1, 9, "yes");
    text(sheet, 2, 9, "no");
    if (row > 1) {
      sheet.range(1, 6, row - 1, 7).style().borderStyle("thin").set();
      sheet
          .range(1, 7, row - 1, 7)
          .validateWithList(sheet.range(1, 9, 2, 9))
          .allowBlank(true)
          .showErrorMessage(true)
          .errorTitle("Passes")
          .error("Write yes or no.");
    }
    for (String name :
        List.of("Serial number", "Date", "Measured by", "Coil temperature (\u00b0C)")) {
      row++;
      text(sheet, row, 1, name);
      sheet.style(row, 6).borderStyle("thin").set();
    }
    sheet.finish();
  }

  private void impedance() throws IOException {
    ImpedanceWindow window = brief.impedance();
    columns(
        "Impedance window",
        List.of(
            "Frequency (Hz)",
            "Least modulus accepted (ohm)",
            "Nominal modulus (ohm)",
            "Greatest modulus accepted (ohm)"),
        List.of(window.frequencyHz(), window.lowerOhm(), window.nominalOhm(), window.upperOhm()));
  }

  private void curves() throws IOException {
    List<String> heads = new ArrayList<>();
    List<Curve> columns = new ArrayList<>();
    for (StackAssessment stack : brief.stacks()) {
      StackCurves curves = stack.curves();
      if (columns.isEmpty() || !columns.get(0).equals(curves.frequencyHz())) {
        add(heads, columns, stack, "frequency (Hz)", StackCurves::frequencyHz);
      }
      add(
          heads,
          columns,
          stack,
          "level at the target's voltage (dB re 20 \u00b5Pa)",
          StackCurves::levelDb);
      add(
          heads,
          columns,
          stack,
          "the same without its network (dB re 20 \u00b5Pa)",
          StackCurves::bareLevelDb);
      add(heads, columns, stack, "loudest level (dB re 20 \u00b5Pa)", StackCurves::loudestDb);
      add(heads, columns, stack, "load, real part (ohm)", StackCurves::impedanceReOhm);
      add(heads, columns, stack, "load, imaginary part (ohm)", StackCurves::impedanceImOhm);
    }
    columns("Curves", heads, columns);
  }

  private static void add(
      List<String> heads,
      List<Curve> columns,
      StackAssessment stack,
      String what,
      Function<StackCurves, Curve> curve) {
    heads.add(stack.brief().name() + ": " + what);
    columns.add(curve.apply(stack.curves()));
  }

  /** One row per part or filter setting; a stack without any has one row too. */
  private void parts() throws IOException {
    Worksheet sheet =
        sheet(
            "Parts",
            List.of(
                "Stack",
                "Woofers",
                "Strings in parallel",
                "In series in each",
                "Designator",
                "Part or filter",
                "Value",
                "Unit",
                "Coil resistance (ohm)",
                "Coil copper (g)"),
            24,
            10,
            18,
            18,
            12,
            44,
            14,
            8,
            20,
            16);
    int row = 1;
    for (StackAssessment stack : brief.stacks()) {
      int first = row;
      for (PlacedPart placed : stack.network().parts()) {
        text(sheet, row, 4, placed.place().designator());
        text(sheet, row, 5, placed.place().label());
        Part part = placed.part();
        number(sheet, row, 6, Double.parseDouble(NetworkText.value(part)));
        text(sheet, row, 7, NetworkText.unit(part));
        if (part instanceof SeriesCoil coil) {
          number(sheet, row, 8, coil.resistanceOhm());
          number(sheet, row, 9, coil.copperKg() * 1e3);
        }
        row++;
      }
      if (row == first) {
        text(sheet, row, 5, NetworkText.of(stack.network()));
        row++;
      }
      for (int r = first; r < row; r++) {
        text(sheet, r, 0, stack.brief().name());
        number(sheet, r, 1, stack.brief().pistons().size());
        number(sheet, r, 2, stack.wiring().strings());
        number(sheet, r, 3, stack.wiring().inSeries());
      }
    }
    sheet.finish();
  }

  private void about() throws IOException {
    Worksheet sheet = sheet("About", List.of("What", "Text"), 24, 90);
    List<List<String>> rows =
        List.of(
            List.of("Title", brief.title()),
            List.of("Woofer", brief.name()),
            List.of(
                "Date of the spec", brief.specDate().map(LocalDate::toString).orElse("undated")),
            List.of("Digest of the spec", brief.specDigest()),
            List.of("Seed", Long.toString(brief.seed())),
            List.of("Version", brief.version()));
    for (int i = 0; i < rows.size(); i++) {
      text(sheet, i + 1, 0, rows.get(i).get(0));
      text(sheet, i + 1, 1, rows.get(i).get(1));
    }
    sheet.finish();
  }

  private void columns(String name, List<String> heads, List<Curve> columns) throws IOException {
    Worksheet sheet = sheet(name, heads);
    for (int c = 0; c < columns.size(); c++) {
      for (int i = 0; i < columns.get(c).size(); i++) {
        number(sheet, i + 1, c, columns.get(c).at(i));
      }
      sheet.width(c, 22);
    }
    sheet.finish();
  }

  private Worksheet sheet(String name, List<String> heads, double... widths) {
    Worksheet sheet = workbook.newWorksheet(name);
    for (int c = 0; c < heads.size(); c++) {
      text(sheet, 0, c, heads.get(c));
      if (c < widths.length) {
        sheet.width(c, widths[c]);
      }
    }
    sheet.range(0, 0, 0, heads.size() - 1).style().bold().fillColor(HEAD_FILL).wrapText(true).set();
    sheet.freezePane(0, 1);
    sheet.repeatRows(0);
    sheet.pageOrientation("landscape");
    sheet.setFitToPage(true);
    sheet.fitToWidth((short) 1);
    sheet.fitToHeight((short) 0);
    return sheet;
  }

  private static void target(Worksheet sheet, int row, int column, BriefValue value) {
    if (!value.words().isEmpty()) {
      text(sheet, row, column, value.words());
    } else {
      String otherwise = value.window().limits() ? BriefCsv.NO_TARGET : BriefCsv.NOT_DETERMINED;
      number(sheet, row, column, value.target(), value, otherwise);
    }
  }

  private static void number(
      Worksheet sheet, int row, int column, OptionalDouble si, BriefValue value, String otherwise) {
    if (si.isPresent()) {
      number(
          sheet,
          row,
          column,
          Double.parseDouble(DecimalText.shifted(si.getAsDouble(), value.unit().decimals())));
    } else {
      text(sheet, row, column, otherwise);
    }
  }

  private static void number(Worksheet sheet, int row, int column, double value) {
    if (!Double.isFinite(value)) {
      throw new IllegalStateException(
          sheet.getName() + ", row " + (row + 1) + ", column " + (column + 1) + " is " + value);
    }
    sheet.value(row, column, value);
  }

  /** Writes text; a cell of text is never a formula, whatever it begins with. */
  private static void text(Worksheet sheet, int row, int column, String text) {
    StringBuilder visible = new StringBuilder();
    text.codePoints().forEach(c -> visible.appendCodePoint(Excerpt.visible(c) ? c : ' '));
    sheet.value(row, column, visible.toString());
  }

  /** Puts one date in the place of the moment of writing, in the archive and in the properties. */
  private static byte[] timeless(byte[] archive, LocalDate date) throws IOException {
    return TimelessArchive.of(
        archive,
        date,
        (name, content) ->
            name.equals(CORE)
                ? new String(content, StandardCharsets.UTF_8)
                    .replaceAll("(<dcterms:(created|modified)[^>]*>)[^<]*", "$1" + date + MIDNIGHT)
                    .getBytes(StandardCharsets.UTF_8)
                : content);
  }
}

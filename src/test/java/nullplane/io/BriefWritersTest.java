package nullplane.io;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.List;
import nullplane.faults.InvalidInputException;
import nullplane.report.FactoryParts;
import nullplane.report.FactorySheet;
import nullplane.report.RunInfo;
import nullplane.sample.BriefValue;
import nullplane.sample.MakerBrief;
import nullplane.scoring.Assessment;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;

class BriefWritersTest {
  private static final String SPEC =
      """
      title: "=HYPERLINK(1)"
      date: 2026-11-25
      woofer: {nominal: 300 mm, effective-diameter: 260 mm}
      stacks:
        - name: "+cmd|x"
          panel: {width: 44 cm, height: 110 cm, clearance: 4 cm}
          woofers: [{x: 0 cm, y: -25 cm}]
        - name: "-2+3"
          panel: {width: 44 cm, height: 110 cm, clearance: 4 cm}
          woofers: [{x: 0 cm, y: -25 cm}]
        - name: "@SUM(1)"
          panel: {width: 44 cm, height: 110 cm, clearance: 4 cm}
          woofers: [{x: 0 cm, y: -25 cm}]
      listening: {distance: 3 m, height: 1 m}
      target: {level: 74 dB, loudest: 84 dB, low-corner: 45 Hz, upper-corner: 200 Hz}
      amplifier: {voltage: 28 V, lowest-load: 3 ohm}
      """;

  private static final ReadSpec READ = read(SPEC);
  private static final MakerBrief BRIEF = brief("<b>\t=1+1\u0007");

  private static ReadSpec read(String text) {
    return SpecReader.read(text.getBytes(StandardCharsets.UTF_8), "x.yaml");
  }

  private static MakerBrief brief(String name) {
    Assessment woofer = ExampleOutcome.of(READ, List.of(name), 74).ranked().get(0);
    return new FactorySheet(
            READ.spec(),
            woofer,
            1,
            new RunInfo(READ.digest(), 7, "0.1.0"),
            FactoryParts.NONE.withDate(READ.date()))
        .brief();
  }

  @Test
  void specMayBearADate() {
    assertThat(READ.date()).hasValue(LocalDate.of(2026, 11, 25));
    assertThat(read(SPEC.replace("date: 2026-11-25\n", "")).date()).isEmpty();
    assertThatThrownBy(() -> read(SPEC.replace("2026-11-25", "25.11.2026")))
        .isInstanceOf(InvalidInputException.class)
        .hasMessageContaining("date: 2026-11-25");
  }

  @Test
  void jsonHoldsEveryValueAtFullPrecision() throws Exception {
    byte[] bytes = BriefJson.of(BRIEF);
    JsonNode json = new ObjectMapper().readTree(bytes);
    assertThat(json.get("kind").asText()).isEqualTo("nullplane brief");
    assertThat(json.get("specSha256").asText()).isEqualTo(READ.digest());
    assertThat(json.get("specDate").asText()).isEqualTo("2026-11-25");
    assertThat(json.get("stacks")).hasSize(3);
    assertThat(json.get("stacks").get(0).get("name").asText()).isEqualTo("+cmd|x");
    assertThat(json.get("values")).hasSize(BRIEF.values().size());
    for (int i = 0; i < BRIEF.values().size(); i++) {
      BriefValue value = BRIEF.values().get(i);
      JsonNode node = json.get("values").get(i);
      assertThat(node.get("key").asText()).isEqualTo(value.key());
      assertThat(node.get("target").isNull()).isEqualTo(value.target().isEmpty());
      value.target().ifPresent(t -> assertThat(node.get("target").asDouble()).isEqualTo(t));
      value.window().lower().ifPresent(t -> assertThat(node.get("lower").asDouble()).isEqualTo(t));
      value.window().upper().ifPresent(t -> assertThat(node.get("upper").asDouble()).isEqualTo(t));
      assertThat(node.get("condition").asText()).isNotBlank();
      assertThat(node.get("reason").asText()).isNotBlank();
    }
    assertThat(BriefJson.of(brief("<b>\t=1+1\u0007"))).isEqualTo(bytes);
  }

  @Test
  void csvHasOneRowPerValueAndNoFormula() {
    List<String> lines = new String(BriefCsv.of(BRIEF), StandardCharsets.UTF_8).lines().toList();
    assertThat(lines).hasSize(BRIEF.values().size() + 1);
    assertThat(lines.get(0))
        .isEqualTo("key,name,symbol,unit,target,lower,upper,basis,condition,reason");
    for (String line : lines) {
      assertThat(line).doesNotContain(",,").doesNotContainPattern("(^|,)\"?[=+@\t]");
    }
    // Mms in grams, digit for digit
    assertThat(lines)
        .anyMatch(
            line ->
                line.startsWith(
                    "mms,moving mass with air,Mms,g,"
                        + DecimalText.shifted(
                            BRIEF.value("mms").orElseThrow().target().orElseThrow(), 3)));
  }

  @Test
  void workbookOpensWithNumbersAsNumbersAndTextAsText() throws Exception {
    try (XSSFWorkbook book = new XSSFWorkbook(new ByteArrayInputStream(BriefWorkbook.of(BRIEF)))) {
      assertThat(book.getNumberOfSheets()).isEqualTo(6);
      for (Sheet sheet : book) {
        assertThat(sheet.getPaneInformation().getHorizontalSplitTopRow()).isEqualTo((short) 1);
        assertThat(sheet.getPaneInformation().isFreezePane()).isTrue();
        for (Row row : sheet) {
          for (Cell cell : row) {
            assertThat(cell.getCellType()).isNotIn(CellType.FORMULA, CellType.ERROR);
          }
        }
      }
      Sheet values = book.getSheet("Values");
      assertThat(values.getLastRowNum()).isEqualTo(BRIEF.values().size());
      for (int i = 0; i < BRIEF.values().size(); i++) {
        BriefValue value = BRIEF.values().get(i);
        Row row = values.getRow(i + 1);
        number(row.getCell(4), value, value.target());
        number(row.getCell(5), value, value.window().lower());
        number(row.getCell(6), value, value.window().upper());
      }
      Sheet curves = book.getSheet("Curves");
      assertThat(curves.getRow(0).getCell(0).getStringCellValue())
          .isEqualTo("+cmd|x: frequency (Hz)");
      assertThat(curves.getRow(1).getCell(0).getNumericCellValue()).isEqualTo(20);
      Sheet parts = book.getSheet("Parts");
      for (int i = 0; i < 3; i++) {
        Cell name = parts.getRow(i + 1).getCell(0);
        assertThat(name.getCellType()).isEqualTo(CellType.STRING);
        assertThat(name.getStringCellValue()).isEqualTo(READ.spec().stacks().get(i).name());
        assertThat(parts.getRow(i + 1).getCell(4).getStringCellValue()).isEqualTo("L1");
        assertThat(parts.getRow(i + 1).getCell(6).getNumericCellValue())
            .isCloseTo(3.3, within(1e-12));
        assertThat(parts.getRow(i + 1).getCell(7).getStringCellValue()).isEqualTo("mH");
        assertThat(parts.getRow(i + 1).getCell(8).getNumericCellValue())
            .isCloseTo(0.4, within(1e-12));
      }
      Sheet about = book.getSheet("About");
      assertThat(about.getRow(1).getCell(1).getStringCellValue()).isEqualTo("=HYPERLINK(1)");
      assertThat(about.getRow(2).getCell(1).getStringCellValue()).contains("<b> =1+1");
      Sheet inspection = book.getSheet("Inspection");
      long held = BRIEF.values().stream().filter(v -> v.window().limits()).count();
      assertThat(inspection.getDataValidations()).hasSize(1);
      assertThat(inspection.getRow((int) held).getCell(1)).isNotNull();
      assertThat(inspection.getRow(1).getCell(6).getCellType()).isEqualTo(CellType.BLANK);
    }
  }

  private static void number(Cell cell, BriefValue value, java.util.OptionalDouble si) {
    if (si.isPresent()) {
      assertThat(cell.getCellType()).as(value.key()).isEqualTo(CellType.NUMERIC);
      assertThat(cell.getNumericCellValue())
          .isCloseTo(
              value.unit().toShown(si.getAsDouble()),
              within(1e-12 * Math.abs(value.unit().toShown(si.getAsDouble()))));
    } else {
      assertThat(cell.getStringCellValue()).isNotBlank();
    }
  }

  @Test
  void workbookIsTheSameBytesAndDiffersWithItsSpec() {
    byte[] first = BriefWorkbook.of(BRIEF);
    assertThat(BriefWorkbook.of(brief("<b>\t=1+1\u0007"))).isEqualTo(first);
    assertThat(BriefWorkbook.of(brief("other"))).isNotEqualTo(first);
  }
}

package nullplane.io;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import nullplane.driver.Mounting;
import nullplane.driver.SmallSignal;
import nullplane.driver.Woofer;
import nullplane.faults.InputFault;
import nullplane.faults.InvalidInputException;
import nullplane.units.Air;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Tables and folders of woofers, good and bad. */
class WooferFilesTest {
  private static final String HEADER =
      "name,nominal [mm],sd [cm2],re [ohm],fs [Hz],qms,qes,mms [g],travel [mm],le [mH],power [W]\n";
  private static final String ROW = "Bench 12,300,531,5.6,31,5.2,0.85,78,8,0.9,150\n";

  @TempDir private Path folder;

  private Path table(String text) throws IOException {
    return Files.writeString(folder.resolve("woofers.csv"), text);
  }

  private static Woofer only(ReadWoofers read) {
    assertThat(read.refused()).isEmpty();
    assertThat(read.woofers()).hasSize(1);
    return read.woofers().get(0).woofer();
  }

  @Test
  void aRowIsReadAsTheYamlFileWithTheSameKeys() throws IOException {
    Path yaml =
        Files.writeString(
            folder.resolve("one.yaml"),
            """
            name: Bench 12
            nominal: 300 mm
            sd: 531 cm2
            re: 5.6 ohm
            fs: 31 Hz
            qms: 5.2
            qes: 0.85
            mms: 78 g
            travel: 8 mm
            le: 0.9 mH
            power: 150 W
            """);
    Woofer fromTable = only(WooferFiles.readEach(table("# invented\n\n" + HEADER + ROW)));
    assertThat(fromTable).isEqualTo(WooferReader.read(yaml).woofer());
  }

  @Test
  void columnsStandInAnyOrderAndOtherUnitsAreConverted() throws IOException {
    Woofer woofer =
        only(
            WooferFiles.readEach(
                table(
                    "travel [cm];power [kW];le [uH];mms [kg];qes;qms;fs [Hz];re [ohm];sd [m2];nominal [in];name\n"
                        + "0.8;0.15;900;0.078;0.85;5.2;31;5.6;0.0531;12;\"Bench; quoted\"\n")));
    assertThat(woofer.name()).isEqualTo("Bench; quoted");
    assertThat(woofer.travelM()).isCloseTo(0.008, within(1e-15));
    assertThat(woofer.powerW()).isCloseTo(150, within(1e-10));
    assertThat(SmallSignal.of(woofer, Mounting.FREE_AIR, Air.standard()).resonanceHz())
        .isCloseTo(31, within(1e-9));
  }

  @Test
  void aDecimalCommaIsReadWhereTheLocaleIsStated() throws IOException {
    String german =
        "# locale: de\n"
            + HEADER.replace(',', ';')
            + "Bench 12;300;531;5,6;31;5,2;0,85;78;8;0,9;150\n";
    Woofer woofer = only(WooferFiles.readEach(table(german)));
    assertThat(woofer.resistanceOhm()).isEqualTo(5.6);
    assertThatThrownBy(() -> WooferFiles.readEach(table(german.replace("# locale: de\n", ""))))
        .isInstanceOf(InvalidInputException.class)
        .hasMessageContaining("re");
    assertThatThrownBy(() -> WooferFiles.readEach(table(german.replace(": de", ": 1_x!"))))
        .hasMessageContaining("locale");
  }

  @Test
  void everyBadRowIsToldWithItsLineAndTheGoodOnesAreRead() throws IOException {
    ReadWoofers read =
        WooferFiles.readEach(
            table(
                HEADER
                    + ROW
                    + "No mass,300,531,5.6,31,5.2,0.85,,8,0.9,150\n"
                    + "# a remark between the rows\n"
                    + "Wild fs,300,531,5.6,31000,5.2,0.85,78,8,0.9,150\n"
                    + "Other 12,300,531,5.6,33,5.2,0.85,78,8,0.9,150\n"
                    + ROW));
    assertThat(read.woofers())
        .extracting(w -> w.woofer().name())
        .containsExactly("Bench 12", "Other 12");
    assertThat(read.refused()).extracting(InputFault::line).containsExactly(3, 5, 7);
    assertThat(read.refused().get(2).problem()).contains("line 2").contains("has this name too");
  }

  @Test
  void aWrongHeaderIsToldAtOnce() {
    assertThatThrownBy(() -> WooferFiles.readEach(table("name,fss [Hz],colour,name\nA,1,2,3\n")))
        .isInstanceOfSatisfying(
            InvalidInputException.class,
            e ->
                assertThat(e.faults())
                    .extracting(InputFault::key)
                    .containsExactly("fss [Hz]", "colour", "name"))
        .hasMessageContaining("did you mean fs?");
    assertThatThrownBy(() -> WooferFiles.readEach(table(HEADER))).hasMessageContaining("no rows");
    assertThatThrownBy(() -> WooferFiles.readEach(table("# nothing\n")))
        .hasMessageContaining("no header");
  }

  @Test
  void aFolderHoldsFilesAndTables() throws IOException {
    Files.writeString(folder.resolve("b.csv"), HEADER + ROW);
    Files.writeString(folder.resolve("a.yaml"), "name: [\n");
    Files.writeString(folder.resolve("notes.txt"), "not a woofer");
    ReadWoofers read = WooferFiles.readEach(folder);
    assertThat(read.woofers()).hasSize(1);
    assertThat(read.refused()).isNotEmpty();
    assertThat(read.refused().get(0).file()).endsWith("a.yaml");
    Files.delete(folder.resolve("b.csv"));
    assertThatThrownBy(() -> WooferFiles.readEach(folder))
        .isInstanceOf(InvalidInputException.class);
    assertThat(List.of(read.woofers().get(0).fileName()).toString()).contains("b.csv line 2");
  }
}

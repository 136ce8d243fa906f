package nullplane.io;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Map;
import nullplane.driver.Cause;
import nullplane.driver.Contradiction;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** The example catalogue: every sheet that was made wrong is found out, and no other is accused. */
class CatalogueTest {
  /** What was done to the six wrong sheets. */
  private static final Map<String, Cause.Kind> PLANTED =
      Map.of(
          "One Watt 12", Cause.Kind.LEVELS_MIXED,
          "Grand Volume 12", Cause.Kind.OTHER_AREA,
          "Peak to Peak 12", Cause.Kind.PEAK_TO_PEAK,
          "Odd Q 12", Cause.Kind.UNKNOWN,
          "Airless 12", Cause.Kind.WITHOUT_AIR,
          "Strong Claim 10", Cause.Kind.UNKNOWN);

  private static ReadWoofers catalogue;

  @BeforeAll
  static void read() {
    catalogue = WooferFiles.readEach(Path.of("specs", "catalogue.csv"));
  }

  @Test
  void everyRowIsReadAndSaidToBeInvented() throws Exception {
    assertThat(catalogue.refused()).isEmpty();
    assertThat(catalogue.woofers()).hasSizeGreaterThanOrEqualTo(24);
    assertThat(java.nio.file.Files.readString(Path.of("specs", "catalogue.csv")))
        .startsWith("# Invented woofers");
  }

  @Test
  void everyPlantedContradictionIsFoundAndNamed() {
    for (ReadWoofer woofer : catalogue.woofers()) {
      Cause.Kind planted = PLANTED.get(woofer.woofer().name());
      if (planted != null) {
        assertThat(woofer.contradictions())
            .as(woofer.woofer().name())
            .extracting(Contradiction::cause)
            .extracting(Cause::kind)
            .contains(planted);
      }
    }
  }

  @Test
  void noCleanSheetIsAccused() {
    assertThat(catalogue.woofers())
        .filteredOn(woofer -> !PLANTED.containsKey(woofer.woofer().name()))
        .allSatisfy(
            woofer -> assertThat(woofer.contradictions()).as(woofer.woofer().name()).isEmpty());
  }
}

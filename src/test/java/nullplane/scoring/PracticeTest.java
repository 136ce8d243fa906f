package nullplane.scoring;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.OptionalDouble;
import nullplane.driver.Woofer;
import nullplane.units.Range;
import org.junit.jupiter.api.Test;

/** What people who build open panels have found. Common practice, without a source. */
class PracticeTest {

  private static WooferBrief sized(double nominalM, double diameterM) {
    return new WooferBrief(
        nominalM,
        diameterM,
        Range.pinned(33),
        Range.pinned(0.8),
        Range.pinned(0.06),
        Range.pinned(0.008),
        5,
        OptionalDouble.of(0.0009),
        300,
        WorkshopSpecs.coil(5.6));
  }

  private static StackCurves pairOnOnePanel(double nominalM, double diameterM) {
    WooferBrief brief = sized(nominalM, diameterM);
    DesignSpec spec =
        WorkshopSpecs.spec(
            brief, WorkshopSpecs.column("pair", 0.5, 1.5, diameterM / 2, 81, 92, -0.4, 0.4));
    Woofer woofer = WorkshopSpecs.woofer(brief, 33, 0.8, 0.06, 0.008);
    return WorkshopSpecs.scorer(spec).assess(woofer).stacks().get(0).curves();
  }

  /** With the same travel, less area plays less loud where excursion binds. */
  @Test
  void smallWoofersOfEqualTravelPlayLessLoud() {
    StackCurves small = pairOnOnePanel(0.25, 0.208);
    StackCurves large = pairOnOnePanel(0.38, 0.33);
    ScoringAxis axis = ScoringAxis.of(WorkshopSpecs.singleAndPair());
    int at40 = axis.firstInBand();
    assertThat(small.binding().get(at40)).isEqualTo(Limit.EXCURSION);
    assertThat(large.binding().get(at40)).isEqualTo(Limit.EXCURSION);
    double difference = large.loudestDb().at(at40) - small.loudestDb().at(at40);
    // the areas differ by 20 lg (0.33/0.208)^2 = 8.0 dB; the larger pistons leave less panel
    assertThat(difference).isBetween(6.0, 8.1);
  }

  /** A woofer made for a box needs its low end lifted on a bare panel, one of high Q hardly. */
  @Test
  void aWooferOfLowQNeedsMoreCorrectionAtTheLowCorner() {
    DesignSpec spec = WorkshopSpecs.singleAndPair();
    SystemScorer scorer = WorkshopSpecs.scorer(spec);
    Assessment low = scorer.assess(WorkshopSpecs.woofer(spec.woofer(), 33, 0.25, 0.06, 0.008));
    Assessment high = scorer.assess(WorkshopSpecs.woofer(spec.woofer(), 33, 0.8, 0.06, 0.008));
    for (int s = 0; s < 2; s++) {
      StackFigures ofLow = low.stacks().get(s).figures();
      StackFigures ofHigh = high.stacks().get(s).figures();
      assertThat(ofLow.lowCornerLiftDb()).isGreaterThan(ofHigh.lowCornerLiftDb() + 3);
      assertThat(ofLow.correctionDb()).isGreaterThan(ofHigh.correctionDb() + 5);
    }
  }
}

package nullplane.sample;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/**
 * Gains of one lever in closed form: with rows y = g x of standard error s and a prior of 1 +- 0.3,
 * g = (sum(x y/s^2) + 1/0.09)/(sum(x^2/s^2) + 1/0.09), the weighted mean of C. F. Gauss (JCGM
 * 100:2008, F.1).
 */
class MakerResponseTest {
  private static final double PRIOR = 1 / (0.3 * 0.3);

  private static MakerResponse one(
      Lever lever, AskedChange asked, LeverReading before, LeverReading after) {
    return MakerResponse.learned(
        List.of(new MakerMove(1, 2, asked, Map.of(), Map.of(lever, before), Map.of(lever, after))));
  }

  private static void learned(LearnedGain found, double gain, double error) {
    assertThat(found.gain()).isCloseTo(gain, within(1e-12));
    assertThat(found.standardError()).isCloseTo(error, within(1e-12));
  }

  /**
   * 6 g of 60 asked, 4.5 g came: 0.1 and 0.075 of the mass before. Errors of 1 % and 1.5 % of it,
   * scatter of 2 % over two and four samples: 0.0001 + 0.000225 + 0.0002 + 0.0001 = 0.025^2.
   */
  @Test
  void massIsLearnedInSharesOfTheMassBefore() {
    AskedChange asked = new AskedChange(0.006, 0, 0, Optional.empty(), 0);
    LeverReading before = new LeverReading(0.06, 0.0006, 2);
    MakerResponse response = one(Lever.MASS, asked, before, new LeverReading(0.0645, 0.0009, 4));
    learned(response.of(Lever.MASS), (16 * 0.75 + PRIOR) / (16 + PRIOR), 1 / Math.sqrt(16 + PRIOR));
    assertThat(response.of(Lever.MASS).rounds()).isEqualTo(1);
    assertThat(response.knows(Lever.MASS)).isTrue();
    assertThat(response.knows(Lever.FLUX)).isFalse();
    assertThat(response.knowsAnything()).isTrue();
    learned(response.of(Lever.FLUX), 1, 0.3);
    assertThat(MakerResponse.AS_ASKED.knowsAnything()).isFalse();
    // 50 % came, 0.4 too much: chi squared is 0.4^2/(0.025^2 + 0.1^2 0.3^2) of one row (Birge 1932)
    MakerResponse wild = one(Lever.MASS, asked, before, new LeverReading(0.09, 0.0009, 4));
    learned(
        wild.of(Lever.MASS),
        (16 * 5 + PRIOR) / (16 + PRIOR),
        Math.sqrt(0.16 / (0.000625 + 0.0009) / (16 + PRIOR)));
  }

  /** 1 mm asked, 1.2 mm came; 0.1 and 0.2 mm of error, 0.2 mm of scatter, twice: 0.13 mm^2. */
  @Test
  void restPositionIsLearnedInMetres() {
    double data = 1 / 0.13;
    MakerResponse response =
        one(
            Lever.REST_POSITION,
            new AskedChange(0, 0, 0, Optional.empty(), 1e-3),
            new LeverReading(-0.9e-3, 0.1e-3, 1),
            new LeverReading(0.3e-3, 0.2e-3, 1));
    learned(
        response.of(Lever.REST_POSITION),
        (1.2 * data + PRIOR) / (data + PRIOR),
        1 / Math.sqrt(data + PRIOR));
  }

  /** A new winding shows in Re, in the mass and in Bl: three rows for one gain. */
  @Test
  void windingIsLearnedFromAllThatItMoves() {
    AskedChange asked =
        new AskedChange(0, 0, 0, Optional.of(new AskedChange.WindingStep(0.003, 1.2, 0.9)), 0);
    Map<Lever, LeverReading> before =
        Map.of(
            Lever.WINDING, new LeverReading(6, 0, 1),
            Lever.MASS, new LeverReading(0.06, 0, 1),
            Lever.FLUX, new LeverReading(10, 0, 1),
            Lever.STIFFNESS, new LeverReading(3000, 0, 1));
    Map<Lever, LeverReading> after =
        Map.of(
            Lever.WINDING, new LeverReading(6 * 1.17, 0, 1),
            Lever.MASS, new LeverReading(0.0624, 0, 1),
            Lever.FLUX, new LeverReading(9.2, 0, 1),
            Lever.STIFFNESS, new LeverReading(4000, 0, 1));
    MakerResponse response =
        MakerResponse.learned(List.of(new MakerMove(1, 2, asked, Map.of(), before, after)));
    double re = 1 / (2 * 0.015 * 0.015);
    double mass = 1 / (2 * 0.02 * 0.02);
    double bl = 1 / (2 * 0.02 * 0.02);
    double data = re * square(Math.log(1.2)) + mass * square(0.05) + bl * square(Math.log(0.9));
    double both =
        re * Math.log(1.2) * Math.log(1.17)
            + mass * 0.05 * 0.04
            + bl * Math.log(0.9) * Math.log(0.92);
    learned(
        response.of(Lever.WINDING), (both + PRIOR) / (data + PRIOR), 1 / Math.sqrt(data + PRIOR));
    assertThat(response.of(Lever.WINDING).rounds()).isEqualTo(1);
    for (Lever lever : List.of(Lever.MASS, Lever.FLUX, Lever.STIFFNESS)) {
      assertThat(response.knows(lever)).isFalse();
    }
    // what the next samples do not show teaches nothing
    MakerResponse unseen =
        MakerResponse.learned(List.of(new MakerMove(1, 2, asked, Map.of(), before, Map.of())));
    assertThat(unseen.knowsAnything()).isFalse();
    assertThat(
            MakerResponse.learned(List.of(new MakerMove(1, 2, asked, Map.of(), Map.of(), after)))
                .knowsAnything())
        .isFalse();
  }

  private static double square(double x) {
    return x * x;
  }

  /** A winding of the same mass and force teaches by Re alone: one row, and its misfit counts. */
  @Test
  void windingThatKeepsMassAndForceIsSeenInResistanceOnly() {
    AskedChange asked =
        new AskedChange(0, 0, 0, Optional.of(new AskedChange.WindingStep(0, 1.2, 1)), 0);
    Map<Lever, LeverReading> before =
        Map.of(
            Lever.WINDING, new LeverReading(6, 0, 1),
            Lever.MASS, new LeverReading(0.06, 0, 1),
            Lever.FLUX, new LeverReading(10, 0, 1));
    Map<Lever, LeverReading> after =
        Map.of(
            Lever.WINDING, new LeverReading(9, 0, 1),
            Lever.MASS, new LeverReading(0.07, 0, 1),
            Lever.FLUX, new LeverReading(11, 0, 1));
    double variance = 2 * 0.015 * 0.015;
    double x = Math.log(1.2);
    double y = Math.log(1.5);
    double data = x * x / variance;
    learned(
        MakerResponse.learned(List.of(new MakerMove(1, 2, asked, Map.of(), before, after)))
            .of(Lever.WINDING),
        (data * y / x + PRIOR) / (data + PRIOR),
        Math.sqrt(square(y - x) / (variance + 0.09 * x * x) / (data + PRIOR)));
  }

  /** Powers of ratios by their gain, lengths and masses times theirs; the travel stays. */
  @Test
  void everyLeverIsExpectedByItsOwnGain() {
    Map<Lever, LearnedGain> gains = new EnumMap<>(Lever.class);
    double gain = 0.4;
    for (Lever lever : Lever.values()) {
      gains.put(lever, new LearnedGain(gain, 0.1, 1));
      gain += 0.2;
    }
    MakerResponse response = new MakerResponse(gains);
    Change.Rewound rewound = new Change.Rewound(MakerBriefs.WINDING, MakerBriefs.WINDING);
    Change expected =
        response.expected(new Change(0.005, 0.5, -0.2, Optional.of(rewound), -1e-3, 0.4e-3));
    assertThat(expected.massKg()).isCloseTo(0.4 * 0.005, within(1e-15));
    assertThat(expected.stiffnessShare()).isCloseTo(Math.pow(1.5, 0.6) - 1, within(1e-12));
    assertThat(expected.fluxShare()).isCloseTo(Math.pow(0.8, 0.8) - 1, within(1e-12));
    assertThat(expected.winding().orElseThrow().share()).isCloseTo(1, within(1e-12));
    assertThat(expected.restMoveM()).isCloseTo(-1.2e-3, within(1e-15));
    assertThat(expected.travelGainM()).isEqualTo(0.4e-3);
    gains.remove(Lever.FLUX);
    assertThatThrownBy(() -> new MakerResponse(gains)).isInstanceOf(IllegalArgumentException.class);
  }
}

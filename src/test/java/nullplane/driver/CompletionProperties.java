package nullplane.driver;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import nullplane.units.Air;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Sheets of random woofers, completed from random parts. What a sheet should state is computed here
 * from {@link SmallSignal} and definitions; whether a part suffices is found from differences,
 * apart from the completion.
 */
class CompletionProperties {
  private static final Air AIR = Air.standard();
  private static final List<Parameter> SMALL_SIGNAL =
      List.of(Parameter.values()).subList(0, Parameter.TRAVEL.ordinal());

  /** Returns a woofer as they are made: air lighter than the moving parts, Qms above 1.2 Qes. */
  private static Woofer made(Random random, Mounting mounting) {
    while (true) {
      Woofer woofer = Woofers.random(random.nextLong(), 1).findFirst().orElseThrow();
      SmallSignal set = SmallSignal.of(woofer, mounting, AIR);
      if (set.mechanicalQ() > 1.2 * set.electricalQ()
          && set.movingMassKg() < 2 * woofer.bareMassKg()) {
        return woofer;
      }
    }
  }

  /** Returns everything a sheet may state about a woofer. */
  private static Map<Parameter, Double> sheet(Woofer woofer, Mounting mounting) {
    SmallSignal set = SmallSignal.of(woofer, mounting, AIR);
    double level = SmallSignal.levelAtOneWatt(set.referenceEfficiency(), AIR);
    Map<Parameter, Double> sheet = new EnumMap<>(Parameter.class);
    sheet.put(Parameter.AREA, woofer.effectiveAreaM2());
    sheet.put(Parameter.DIAMETER, 2 * woofer.radiusM());
    sheet.put(Parameter.RESISTANCE, woofer.resistanceOhm());
    sheet.put(Parameter.RESONANCE, set.resonanceHz());
    sheet.put(Parameter.BARE_MASS, woofer.bareMassKg());
    sheet.put(Parameter.MOVING_MASS, set.movingMassKg());
    sheet.put(Parameter.MECHANICAL_Q, set.mechanicalQ());
    sheet.put(Parameter.ELECTRICAL_Q, set.electricalQ());
    sheet.put(Parameter.FORCE_FACTOR, woofer.forceFactorTm());
    sheet.put(Parameter.LOSS, woofer.lossNsPerM());
    sheet.put(Parameter.STIFFNESS, woofer.stiffnessNPerM());
    sheet.put(Parameter.COMPLIANCE, set.complianceMPerN());
    sheet.put(Parameter.TOTAL_Q, set.totalQ());
    sheet.put(Parameter.VOLUME, set.equivalentVolumeM3());
    sheet.put(Parameter.EFFICIENCY, set.referenceEfficiency());
    sheet.put(Parameter.LEVEL_ONE_WATT, level);
    sheet.put(
        Parameter.LEVEL_VOLTAGE,
        level + SmallSignal.levelOverOneWatt(2.83, woofer.resistanceOhm()));
    sheet.put(Parameter.TRAVEL, woofer.travelM());
    sheet.put(Parameter.DISPLACEMENT, woofer.travelM() * woofer.effectiveAreaM2());
    sheet.put(Parameter.GEOMETRIC_TRAVEL, woofer.travelM());
    return sheet;
  }

  private static StatedSet stated(
      Map<Parameter, Double> sheet, Mounting mounting, List<Parameter> chosen) {
    StatedSet set = StatedSet.in(mounting);
    for (Parameter parameter : chosen) {
      set = set.with(parameter, sheet.get(parameter));
    }
    return set;
  }

  @ParameterizedTest
  @EnumSource(Mounting.class)
  void anySufficientSubsetGivesTheWholeSetBack(Mounting mounting) {
    Random random = new Random(mounting.ordinal() + 17);
    int sufficient = 0;
    int insufficient = 0;
    for (int draw = 0; draw < 2_000; draw++) {
      Woofer woofer = made(random, mounting);
      Map<Parameter, Double> sheet = sheet(woofer, mounting);
      List<Parameter> shuffled = new ArrayList<>(SMALL_SIGNAL);
      Collections.shuffle(shuffled, random);
      List<Parameter> chosen = shuffled.subList(0, 6 + random.nextInt(3));
      double condition = new Determination(woofer, mounting).worstAmplification(chosen);
      CompletedSet completed = Completion.of(stated(sheet, mounting, chosen), AIR);
      if (condition > 2e4) { // differences resolve no more than this
        insufficient++;
        assertThat(completed.settled()).as("%s", chosen).isFalse();
        continue;
      }
      assertThat(completed.settled()).as("%s", chosen).isTrue();
      assertThat(completed.contradictions()).as("%s", chosen).isEmpty();
      if (condition > 1e3) {
        continue; // the figures' own rounding grows to 1e-12
      }
      sufficient++;
      for (Parameter parameter : SMALL_SIGNAL) {
        assertThat(completed.value(parameter).orElseThrow() / sheet.get(parameter))
            .as("%s from %s", parameter, chosen)
            .isEqualTo(1, offset(1e-9));
      }
    }
    assertThat(sufficient).isGreaterThan(700);
    assertThat(insufficient).isGreaterThan(50);
  }

  /** Six unknowns and finite differences of what a sheet states, by rows of logarithms. */
  private record Determination(Woofer woofer, Mounting mounting) {
    /**
     * Returns how much an error of the chosen figures can grow in any of the six that make a
     * woofer, by the pseudo-inverse; infinite or huge if they do not settle them.
     */
    double worstAmplification(List<Parameter> chosen) {
      double[][] rows = new double[chosen.size()][6];
      for (int u = 0; u < 6; u++) {
        Map<Parameter, Double> up = sheet(moved(u, 1e-5), mounting);
        Map<Parameter, Double> down = sheet(moved(u, -1e-5), mounting);
        for (int i = 0; i < rows.length; i++) {
          Parameter p = chosen.get(i);
          double difference =
              p.level()
                  ? (up.get(p) - down.get(p)) * Math.log(10) / 10
                  : Math.log(up.get(p) / down.get(p));
          rows[i][u] = difference / 2e-5;
        }
      }
      double[][] normal = new double[6][6];
      for (int a = 0; a < 6; a++) {
        for (int b = 0; b < 6; b++) {
          for (double[] row : rows) {
            normal[a][b] += row[a] * row[b];
          }
        }
      }
      return 1 / Math.sqrt(Math.max(0, leastEigenvalue(normal)));
    }

    private Woofer moved(int unknown, double log) {
      double[] f = {1, 1, 1, 1, 1, 1};
      f[unknown] = Math.exp(log);
      return Woofers.plain(
          woofer.bareMassKg() * f[0],
          woofer.stiffnessNPerM() * f[1],
          woofer.lossNsPerM() * f[2],
          woofer.forceFactorTm() * f[3],
          woofer.resistanceOhm() * f[4],
          woofer.effectiveAreaM2() * f[5]);
    }
  }

  /** Least eigenvalue of a symmetric matrix, by Jacobi's rotations. */
  private static double leastEigenvalue(double[][] a) {
    int n = a.length;
    for (int sweep = 0; sweep < 12; sweep++) { // converges quadratically, 6 suffice for 6 x 6
      for (int p = 0; p < n; p++) {
        for (int q = p + 1; q < n; q++) {
          if (Math.abs(a[p][q]) < 1e-300) {
            continue;
          }
          double angle = 0.5 * Math.atan2(2 * a[p][q], a[q][q] - a[p][p]);
          double c = Math.cos(angle);
          double s = Math.sin(angle);
          for (int k = 0; k < n; k++) {
            double kp = a[k][p];
            double kq = a[k][q];
            a[k][p] = c * kp - s * kq;
            a[k][q] = s * kp + c * kq;
          }
          for (int k = 0; k < n; k++) {
            double pk = a[p][k];
            double qk = a[q][k];
            a[p][k] = c * pk - s * qk;
            a[q][k] = s * pk + c * qk;
          }
        }
      }
    }
    double least = Double.POSITIVE_INFINITY;
    for (int i = 0; i < n; i++) {
      least = Math.min(least, a[i][i]);
    }
    return least;
  }

  /** Three digits are what sheets print; two where they are careless. */
  @Test
  void noCleanSheetIsAccused() {
    Random random = new Random(5);
    for (int draw = 0; draw < 2_000; draw++) {
      Mounting mounting = Mounting.values()[draw % 2];
      Map<Parameter, Double> sheet = sheet(made(random, mounting), mounting);
      List<Parameter> chosen = new ArrayList<>(List.of(Parameter.values()));
      Collections.shuffle(chosen, random);
      chosen = chosen.subList(0, 5 + random.nextInt(16));
      StatedSet set = StatedSet.in(mounting);
      for (Parameter parameter : chosen) {
        int digits = random.nextInt(4) == 0 ? 2 : 3;
        BigDecimal exact = BigDecimal.valueOf(sheet.get(parameter));
        BigDecimal printed =
            parameter.level()
                ? exact.setScale(digits - 2, RoundingMode.HALF_EVEN)
                : exact.round(new MathContext(digits));
        double half = printed.ulp().doubleValue() / 2;
        set =
            set.with(
                parameter,
                printed.doubleValue(),
                parameter.level() ? half : half / printed.doubleValue());
      }
      assertThat(Completion.of(set, AIR).contradictions()).as("%s", set).isEmpty();
    }
  }

  /** Every step of every way is its formula: the printed relation holds for the numbers. */
  @Test
  void everyValueFollowsByTheFormulaNamed() {
    Random random = new Random(8);
    for (int draw = 0; draw < 500; draw++) {
      Mounting mounting = Mounting.values()[draw % 2];
      Map<Parameter, Double> sheet = sheet(made(random, mounting), mounting);
      List<Parameter> chosen = new ArrayList<>(List.of(Parameter.values()));
      Collections.shuffle(chosen, random);
      CompletedSet completed = Completion.of(stated(sheet, mounting, chosen.subList(0, 7)), AIR);
      for (CompletedValue value : completed.values().values()) {
        boolean isStated = value.origin() == CompletedValue.Origin.STATED;
        assertThat(completed.stated().value(value.parameter()).isPresent()).isEqualTo(isStated);
        if (!isStated) {
          assertThat(completed.stated().figures().keySet())
              .as("%s", value)
              .containsAll(value.route().origins());
          Route.Step last = value.route().steps().get(value.route().steps().size() - 1);
          assertThat(last.result()).isEqualTo(value.parameter());
          assertThat(last.value()).isEqualTo(value.value());
          last.relation()
              .ifPresent(
                  relation ->
                      assertThat(relation.members())
                          .contains(value.parameter())
                          .containsAll(last.inputs()));
        }
      }
    }
  }
}

package nullplane.sample;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;

/**
 * How a maker answers requests: achieved over asked, for each lever, learned from the rounds there
 * were.
 *
 * <p>Symbols: g gain of a lever; x asked, y achieved; m bare mass, K stiffness, B force factor, R
 * resistance, z rest position; index w what a new winding does by itself. Each request and the
 * samples that followed give one row for every part that was to move:
 *
 * <pre>
 *   (m' - m)/m = g_mass x/m + g_winding m_w/m        ln(K'/K) = g_stiffness ln(1 + x)
 *   ln(B'/B)   = g_flux ln(1 + x) + g_winding ln b_w ln(R'/R) = g_winding ln r_w
 *   z' - z     = g_rest x
 * </pre>
 *
 * <p>The gains minimise the sum of squared errors of the rows, each over its variance, plus ((g -
 * 1)/0.3)^2 for every lever: with few rounds, or small changes, a gain stays near 1. The variance
 * of a row is that of both measurements and of the scatter from sample to sample, over the number
 * of samples. Where the rows scatter more than that, the uncertainties grow with them.
 *
 * <p>Source: A. E. Hoerl and R. W. Kennard, Technometrics 12(1) (1970) 55, sec. 6 (least squares
 * with a prior); R. T. Birge, Phys. Rev. 40 (1932) 207 (uncertainty from the scatter of the rows).
 * The prior's width and the scatter of samples are proposed here and have no source. Valid for a
 * maker whose gains stay the same from round to round.
 *
 * @param gains the gain of every lever
 */
public record MakerResponse(Map<Lever, LearnedGain> gains) {
  /** Standard deviation of a maker's gain before anything is known (1). */
  static final double PRIOR = 0.3;

  private static final double MASS_SCATTER = 0.02;
  private static final double STIFFNESS_SCATTER = 0.05;
  private static final double FLUX_SCATTER = 0.02;
  private static final double RESISTANCE_SCATTER = 0.015;
  private static final double REST_SCATTER_M = 0.2e-3;

  /** A maker who does what is asked, as far as is known. */
  public static final MakerResponse AS_ASKED = learned(List.of());

  /** Copies the map; every lever must have a gain. */
  public MakerResponse {
    Map<Lever, LearnedGain> copy = new EnumMap<>(Lever.class);
    copy.putAll(gains);
    if (copy.size() != Lever.values().length) {
      throw new IllegalArgumentException("a maker's response needs a gain for every lever");
    }
    gains = Collections.unmodifiableMap(copy);
  }

  /** One row: what each lever should have given at gain 1, and what came; over its error. */
  private record Row(Map<Lever, Double> asked, double achieved) {}

  /**
   * Learns the gains.
   *
   * @param moves what came of each request, in any order
   */
  public static MakerResponse learned(List<MakerMove> moves) {
    List<Row> rows = new ArrayList<>();
    Map<Lever, Integer> rounds = new EnumMap<>(Lever.class);
    for (MakerMove move : moves) {
      Set<Lever> told = EnumSet.noneOf(Lever.class);
      for (Lever part : Lever.values()) {
        Map<Lever, Double> asked = asked(part, move);
        if (!asked.isEmpty() && move.shows(part)) {
          rows.add(row(part, asked, move));
          told.addAll(asked.keySet());
        }
      }
      told.forEach(lever -> rounds.merge(lever, 1, Integer::sum));
    }
    Map<Lever, LearnedGain> gains = new EnumMap<>(Lever.class);
    for (Lever lever : Lever.values()) {
      gains.put(lever, new LearnedGain(1, PRIOR, 0));
    }
    if (!rows.isEmpty()) {
      gains.putAll(solve(rows, rounds));
    }
    return new MakerResponse(gains);
  }

  /** What the levers should give of a part at gain 1, in the measure of the part's row. */
  private static Map<Lever, Double> asked(Lever part, MakerMove move) {
    Map<Lever, Double> asked = new EnumMap<>(Lever.class);
    AskedChange change = move.asked();
    LeverReading before = move.before().get(part);
    if (before == null) {
      return asked;
    }
    double amount = change.amount(part);
    if (amount != 0) {
      asked.put(
          part,
          switch (part) {
            case MASS -> amount / before.value();
            case REST_POSITION -> amount;
            default -> Math.log1p(amount);
          });
    }
    change
        .winding()
        .ifPresent(
            step -> {
              if (part == Lever.MASS && step.massKg() != 0) {
                asked.put(Lever.WINDING, step.massKg() / before.value());
              } else if (part == Lever.FLUX && step.forceRatio() != 1) {
                asked.put(Lever.WINDING, Math.log(step.forceRatio()));
              }
            });
    return asked;
  }

  private static Row row(Lever part, Map<Lever, Double> asked, MakerMove move) {
    LeverReading was = move.before().get(part);
    LeverReading is = move.after().get(part);
    if (was == null || is == null) {
      throw new IllegalArgumentException("the rounds do not show the " + part.inWords());
    }
    double achieved =
        switch (part) {
          case MASS -> is.value() / was.value() - 1;
          case REST_POSITION -> is.value() - was.value();
          default -> Math.log(is.value() / was.value());
        };
    double scale = part == Lever.REST_POSITION ? 1 : was.value();
    double scaleAfter = part == Lever.REST_POSITION || part == Lever.MASS ? scale : is.value();
    double scatter = scatter(part);
    double error =
        Math.sqrt(
            square(was.standardError() / scale)
                + square(is.standardError() / scaleAfter)
                + square(scatter) / was.samples()
                + square(scatter) / is.samples());
    Map<Lever, Double> weighted = new EnumMap<>(Lever.class);
    asked.forEach((lever, amount) -> weighted.put(lever, amount / error));
    return new Row(weighted, achieved / error);
  }

  private static double scatter(Lever part) {
    return switch (part) {
      case MASS -> MASS_SCATTER;
      case STIFFNESS -> STIFFNESS_SCATTER;
      case FLUX -> FLUX_SCATTER;
      case WINDING -> RESISTANCE_SCATTER;
      case REST_POSITION -> REST_SCATTER_M;
    };
  }

  private static Map<Lever, LearnedGain> solve(List<Row> rows, Map<Lever, Integer> rounds) {
    List<Lever> levers = List.copyOf(rounds.keySet());
    int count = levers.size();
    RealMatrix asked = new Array2DRowRealMatrix(rows.size() + count, count);
    RealVector achieved = new ArrayRealVector(rows.size() + count);
    for (int r = 0; r < rows.size(); r++) {
      for (int l = 0; l < count; l++) {
        asked.setEntry(r, l, rows.get(r).asked().getOrDefault(levers.get(l), 0.0));
      }
      achieved.setEntry(r, rows.get(r).achieved());
    }
    for (int l = 0; l < count; l++) {
      asked.setEntry(rows.size() + l, l, 1 / PRIOR);
      achieved.setEntry(rows.size() + l, 1 / PRIOR);
    }
    RealMatrix transposed = asked.transpose();
    RealMatrix covariance =
        new CholeskyDecomposition(transposed.multiply(asked)).getSolver().getInverse();
    RealVector gain = covariance.operate(transposed.operate(achieved));
    RealVector errors = asked.operate(gain).subtract(achieved);
    double birge = Math.max(1, errors.dotProduct(errors) / rows.size());
    Map<Lever, LearnedGain> gains = new EnumMap<>(Lever.class);
    for (int l = 0; l < count; l++) {
      gains.put(
          levers.get(l),
          new LearnedGain(
              gain.getEntry(l),
              Math.sqrt(birge * covariance.getEntry(l, l)),
              rounds.getOrDefault(levers.get(l), 0)));
    }
    return gains;
  }

  private static double square(double x) {
    return x * x;
  }

  /** Returns the gain of a lever. */
  public LearnedGain of(Lever lever) {
    LearnedGain gain = gains.get(lever);
    if (gain == null) {
      throw new IllegalStateException("no gain of the " + lever.inWords());
    }
    return gain;
  }

  /** Returns the gain that a request reckons with (1). */
  public double used(Lever lever) {
    return of(lever).used();
  }

  /** Returns whether anything was learned about a lever. */
  public boolean knows(Lever lever) {
    return of(lever).rounds() > 0;
  }

  /** Returns whether anything was learned at all. */
  public boolean knowsAnything() {
    return gains.values().stream().anyMatch(gain -> gain.rounds() > 0);
  }

  /**
   * Returns what is expected to come of a change; the travel that a move of the rest position gives
   * stays as it is.
   *
   * @param asked the change asked for
   */
  public Change expected(Change asked) {
    return new Change(
        used(Lever.MASS) * asked.massKg(),
        ratio(Lever.STIFFNESS, 1 + asked.stiffnessShare()) - 1,
        ratio(Lever.FLUX, 1 + asked.fluxShare()) - 1,
        asked.winding().map(wound -> wound.inPart(used(Lever.WINDING))),
        used(Lever.REST_POSITION) * asked.restMoveM(),
        asked.travelGainM());
  }

  /** Returns the ratio that is expected of one asked for: its power by the gain (1). */
  double ratio(Lever lever, double asked) {
    double gain = used(lever);
    return gain == 1 ? asked : Math.pow(asked, gain);
  }
}

package nullplane.judging;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import nullplane.driver.Woofer;
import nullplane.scoring.Grade;
import nullplane.scoring.ScorersBySize;
import nullplane.scoring.SystemScorer;
import nullplane.scoring.Wiring;
import nullplane.units.Air;
import nullplane.units.Curve;

/**
 * Which parameter makes which part of the difference between two woofers on one spec.
 *
 * <p>The parameters of the first woofer are exchanged for those of the second, all sets of them,
 * and each gets its Shapley share; see {@link ShapleyValues}. The shares add up to the whole
 * difference, change sign when the woofers change places, and are nothing for a parameter that both
 * have in common. The level is that of each stack without a network, both woofers wired alike; the
 * score is that of the best wiring and network for each mixture.
 *
 * @param first the woofer the difference starts from
 * @param second the woofer it goes to
 * @param firstGrade grade of the first
 * @param secondGrade grade of the second
 * @param costSharesDb what each parameter adds to the score's cost (dB)
 * @param violationShares what each parameter adds to the distance to buildability (1), in that
 *     order
 * @param stacks one entry per stack, in the spec's order
 */
public record WooferDifference(
    Woofer first,
    Woofer second,
    Grade firstGrade,
    Grade secondGrade,
    Map<ParameterGroup, Double> costSharesDb,
    Map<ParameterGroup, Double> violationShares,
    List<StackDifference> stacks) {
  /** Copies the lists. */
  public WooferDifference {
    costSharesDb = Map.copyOf(costSharesDb);
    violationShares = Map.copyOf(violationShares);
    stacks = List.copyOf(stacks);
  }

  /**
   * Returns what a parameter adds to the score's cost (dB).
   *
   * @param group the parameter
   */
  public double costShareDb(ParameterGroup group) {
    return Objects.requireNonNull(costSharesDb.get(group));
  }

  /**
   * Works out the difference.
   *
   * @param first the woofer the difference starts from
   * @param second the woofer it goes to
   * @param scorers scorers for both sizes
   */
  public static WooferDifference between(Woofer first, Woofer second, ScorersBySize scorers) {
    Air air = scorers.air();
    FreeAirSheet from = FreeAirSheet.of(first, air);
    FreeAirSheet to = FreeAirSheet.of(second, air);
    List<Wiring> wirings = commonWirings(first, second, scorers);
    Grade firstGrade = gradeOf(first, scorers);
    Grade secondGrade = gradeOf(second, scorers);
    double[][] shares =
        ShapleyValues.of(
            ParameterGroup.values().length,
            bits -> figuresOf(from.with(to, bits).woofer(air), wirings, scorers));
    List<ParameterGroup> groups = List.of(ParameterGroup.values());
    Map<ParameterGroup, Double> cost = new EnumMap<>(ParameterGroup.class);
    Map<ParameterGroup, Double> violation = new EnumMap<>(ParameterGroup.class);
    for (int i = 0; i < shares.length; i++) {
      cost.put(groups.get(i), shares[i][0]);
      violation.put(groups.get(i), shares[i][1]);
    }
    List<Curve> firstLevels = levelsOf(first, wirings, scorers);
    List<Curve> secondLevels = levelsOf(second, wirings, scorers);
    Curve axis = scorers.of(first).axis().frequencyHz();
    List<StackDifference> stacks = new ArrayList<>();
    for (int s = 0; s < wirings.size(); s++) {
      Map<ParameterGroup, Curve> ofStack = new EnumMap<>(ParameterGroup.class);
      for (int i = 0; i < shares.length; i++) {
        ofStack.put(groups.get(i), part(shares[i], 2 + s * axis.size(), axis.size()));
      }
      stacks.add(
          new StackDifference(
              scorers.spec().stacks().get(s).name(),
              axis,
              firstLevels.get(s),
              secondLevels.get(s),
              ofStack));
    }
    return new WooferDifference(first, second, firstGrade, secondGrade, cost, violation, stacks);
  }

  private static Curve part(double[] figures, int from, int count) {
    double[] part = new double[count];
    System.arraycopy(figures, from, part, 0, count);
    return Curve.of(part);
  }

  /** Cost, violation, then the bare levels of all stacks. */
  private static double[] figuresOf(Woofer woofer, List<Wiring> wirings, ScorersBySize scorers) {
    SystemScorer scorer = scorers.of(woofer);
    SystemScorer.Workspace space = scorer.newWorkspace();
    Grade grade = scorer.grade(woofer, space);
    List<Curve> levels = scorer.bareLevels(woofer, wirings, space);
    int points = levels.get(0).size();
    double[] figures = new double[2 + points * levels.size()];
    figures[0] = grade.costDb();
    figures[1] = grade.violation();
    for (int s = 0; s < levels.size(); s++) {
      System.arraycopy(levels.get(s).toArray(), 0, figures, 2 + s * points, points);
    }
    return figures;
  }

  private static Grade gradeOf(Woofer woofer, ScorersBySize scorers) {
    SystemScorer scorer = scorers.of(woofer);
    return scorer.grade(woofer, scorer.newWorkspace());
  }

  private static List<Curve> levelsOf(Woofer woofer, List<Wiring> wirings, ScorersBySize scorers) {
    SystemScorer scorer = scorers.of(woofer);
    return scorer.bareLevels(woofer, wirings, scorer.newWorkspace());
  }

  /**
   * The wirings that both are shown with: those of the better of the two, or of the one with fewer
   * strings if they are equally good, so that the order of the two does not matter.
   */
  private static List<Wiring> commonWirings(Woofer first, Woofer second, ScorersBySize scorers) {
    List<Wiring> ofFirst = wiringsOf(first, scorers);
    List<Wiring> ofSecond = wiringsOf(second, scorers);
    int better = gradeOf(first, scorers).compareTo(gradeOf(second, scorers));
    for (int s = 0; better == 0 && s < ofFirst.size(); s++) {
      better = Integer.compare(ofFirst.get(s).strings(), ofSecond.get(s).strings());
    }
    return better <= 0 ? ofFirst : ofSecond;
  }

  private static List<Wiring> wiringsOf(Woofer woofer, ScorersBySize scorers) {
    return scorers.of(woofer).assessInShort(woofer).stacks().stream().map(s -> s.wiring()).toList();
  }
}

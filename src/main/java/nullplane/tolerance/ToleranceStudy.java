package nullplane.tolerance;

import java.util.List;
import nullplane.driver.Woofer;
import nullplane.scoring.Assessment;
import nullplane.scoring.FixedStacks;
import nullplane.scoring.SystemScorer;

/**
 * What making a woofer in numbers does to the stacks, and what to hold its maker to.
 *
 * @param conduct how the study ran
 * @param spread the production spread assumed
 * @param production what a run with that spread does
 * @param windows windows for incoming inspection
 * @param influences production variables, the one that matters most first
 * @param sampling sampling plan for an order
 * @param lotTakenIfBad how often that plan takes a lot in which as many units are bad as the wanted
 *     yield leaves (1)
 * @param everyUnit whether every unit of the order should be tested instead
 * @param findings what to know about it, in sentences
 */
public record ToleranceStudy(
    ToleranceConduct conduct,
    ProductionSpread spread,
    ProductionYield production,
    AcceptanceWindows windows,
    List<Influence> influences,
    SamplingPlan sampling,
    double lotTakenIfBad,
    boolean everyUnit,
    List<String> findings) {
  /** Copies the lists. */
  public ToleranceStudy {
    influences = List.copyOf(influences);
    findings = List.copyOf(findings);
  }

  /**
   * Studies a woofer with the usual production spread.
   *
   * @param scorer the scorer that assessed it
   * @param assessment the woofer's assessment by that scorer
   * @param conduct how to run
   * @param runner runs the parts; has no influence on the result
   */
  public static ToleranceStudy of(
      SystemScorer scorer, Assessment assessment, ToleranceConduct conduct, BatchRunner runner) {
    return of(scorer, assessment, ProductionSpread.usual(), conduct, runner);
  }

  /**
   * Studies a woofer.
   *
   * @param scorer the scorer that assessed it
   * @param assessment the woofer's assessment by that scorer
   * @param spread how much production varies
   * @param conduct how to run
   * @param runner runs the parts; has no influence on the result
   */
  public static ToleranceStudy of(
      SystemScorer scorer,
      Assessment assessment,
      ProductionSpread spread,
      ToleranceConduct conduct,
      BatchRunner runner) {
    return of(scorer, assessment, spread, conduct, new Batches(runner, Batches.USUAL_SIZE));
  }

  static ToleranceStudy of(
      SystemScorer scorer,
      Assessment assessment,
      ProductionSpread spread,
      ToleranceConduct conduct,
      Batches batches) {
    Woofer nominal = assessment.woofer();
    FixedStacks stacks = FixedStacks.of(scorer, assessment);
    PermittedResponse permitted = new PermittedResponse(stacks, nominal, conduct.allowanceDb());
    UnitChance chance = ProductionSpread.chance(conduct.seed());
    ProductionYield production =
        ProductionRun.of(
            stacks,
            nominal,
            permitted,
            conduct.units(),
            unit -> spread.unit(nominal, chance, unit),
            batches);
    AcceptanceWindows windows =
        new WindowSearch(
                stacks, permitted, new WindowFill(nominal, spread, stacks.air()), conduct, batches)
            .find(nominal, spread);
    List<Influence> influences =
        InfluenceRanking.of(stacks, nominal, spread, conduct.sensitivitySamples(), batches);
    SamplingPlan sampling =
        SamplingPlan.of(conduct.lotSize(), conduct.inspectionLevel(), conduct.acceptanceQuality());
    double badShare = 1 - conduct.wantedYield();
    double taken = sampling.acceptanceProbability(badShare);
    boolean everyUnit = sampling.everyUnitBetter(badShare);
    return new ToleranceStudy(
        conduct,
        spread,
        production,
        windows,
        influences,
        sampling,
        taken,
        everyUnit,
        ToleranceFindings.of(
            stacks, permitted, conduct, production, windows, influences, sampling));
  }
}

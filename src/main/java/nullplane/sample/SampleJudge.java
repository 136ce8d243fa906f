package nullplane.sample;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import nullplane.driver.Mounting;
import nullplane.driver.Woofer;
import nullplane.fit.Finding;
import nullplane.fit.FitInput;
import nullplane.fit.FittedParameter;
import nullplane.fit.SweepFit;
import nullplane.fit.WooferFit;
import nullplane.scoring.Assessment;
import nullplane.units.Air;

/** Holds samples against a brief, on the bench and in every stack. */
public final class SampleJudge {
  /** Travel left where the coil rests beyond its own travel, as a share of it (1). */
  private static final double LEAST_TRAVEL = 0.01;

  private static final String REST = "rest-position";

  private final BriefStacks stacks;
  private final SampleBrief brief;
  private final Air air;
  private final double voltageV;

  /**
   * @param stacks the stacks, with the brief
   */
  public SampleJudge(BriefStacks stacks) {
    this.stacks = stacks;
    brief = stacks.brief();
    air = stacks.scorer().air();
    voltageV = stacks.scorer().spec().target().voltageV();
  }

  /**
   * Holds samples against the brief.
   *
   * @param measured the samples, one or more
   * @param locked levers that the maker cannot move
   * @param notes what holds for all samples, one sentence each
   */
  public SampleOutcome judge(List<MeasuredSample> measured, Set<Lever> locked, List<String> notes) {
    List<SampleResult> results = new ArrayList<>();
    measured.forEach(sample -> results.add(result(sample)));
    boolean fails = results.stream().anyMatch(result -> result.decision() == Decision.FAIL);
    List<BatchSpread> spreads = BatchSpread.all(results);
    List<String> allNotes = new ArrayList<>(notes);
    for (BatchSpread spread : spreads) {
      if (spread.tooWide()) {
        allNotes.add(
            spread.value().name()
                + ": the samples scatter by more than the window bears, a sixth of its width; no"
                + " change of the mean mends that, so ask for less scatter too");
      }
    }
    return new SampleOutcome(
        brief,
        stacks.asked(),
        stacks.withBriefParts(brief.woofer()),
        results,
        spreads,
        fails ? request(measured, results, locked) : Optional.empty(),
        allNotes);
  }

  private SampleResult result(MeasuredSample sample) {
    SweepFit fit =
        WooferFit.of(
            FitInput.inFreeAir(
                sample.sweep(), sample.anchor(), brief.woofer().effectiveAreaM2(), air));
    SampleFindings findings =
        new SampleFindings(fit, brief.woofer().effectiveAreaM2(), air, voltageV);
    List<ValueCheck> checks = new ArrayList<>();
    List<String> notMeasured = new ArrayList<>();
    for (BriefValue value : brief.values()) {
      Optional<BenchFigure> figure = BenchFigure.ofKey(value.key());
      if (figure.isPresent()) {
        checks.add(ValueCheck.of(value, findings.of(figure.orElseThrow())));
      } else if (value.key().equals(REST) && sample.restPositionM().isPresent()) {
        double rest = sample.restPositionM().getAsDouble();
        checks.add(ValueCheck.of(value, new Finding.Estimate(rest, 0, rest, rest)));
      } else if (value.window().limits()) {
        notMeasured.add(value.key());
      }
    }
    List<String> notes = new ArrayList<>(sample.notes());
    notes.addAll(fit.warnings());
    boolean massAssumed = fit.estimate(FittedParameter.BARE_MASS).isEmpty();
    Optional<Woofer> woofer = woofer(sample, fit, findings);
    if (woofer.isEmpty()) {
      return new SampleResult(
          sample.name(),
          fit,
          checks,
          notMeasured,
          woofer,
          massAssumed,
          Optional.empty(),
          List.of(),
          notes);
    }
    if (massAssumed) {
      notes.add(
          "the moving mass is not known; for the stacks, and for any change, it is taken from the"
              + " brief");
    }
    Assessment best = stacks.scorer().assess(woofer.orElseThrow());
    return new SampleResult(
        sample.name(),
        fit,
        checks,
        notMeasured,
        woofer,
        massAssumed,
        Optional.of(best),
        stacks.withBriefParts(woofer.orElseThrow()),
        notes);
  }

  /** The sample as a woofer: what the fit determines; size, travel and power from the brief. */
  private Optional<Woofer> woofer(MeasuredSample sample, SweepFit fit, SampleFindings findings) {
    Optional<Finding.Estimate> re = fit.estimate(FittedParameter.RE);
    Optional<Finding.Estimate> fs = fit.estimate(FittedParameter.FS);
    Optional<Finding.Estimate> qms = fit.estimate(FittedParameter.QMS);
    Optional<Finding.Estimate> qts = fit.estimate(FittedParameter.QTS);
    if (re.isEmpty() || fs.isEmpty() || qms.isEmpty() || qts.isEmpty()) {
      return Optional.empty();
    }
    Woofer nominal = brief.woofer();
    double off = Math.abs(sample.restPositionM().orElse(0));
    Woofer shell =
        new Woofer(
            sample.name(),
            nominal.nominalM(),
            nominal.effectiveAreaM2(),
            re.orElseThrow().value(),
            findings.of(BenchFigure.LE) instanceof Finding.Estimate le
                ? le.value()
                : nominal.inductanceH(),
            fit.estimate(FittedParameter.BARE_MASS)
                .map(Finding.Estimate::value)
                .orElse(nominal.bareMassKg()),
            1, // Kms, Rms and Bl are replaced
            1,
            1,
            Math.max(nominal.travelM() - off, LEAST_TRAVEL * nominal.travelM()),
            nominal.powerW());
    return Optional.of(
        Woofer.withResonance(
            shell,
            fs.orElseThrow().value(),
            qms.orElseThrow().value(),
            qts.orElseThrow().value(),
            Mounting.FREE_AIR,
            air));
  }

  private Optional<ChangeRequest> request(
      List<MeasuredSample> measured, List<SampleResult> results, Set<Lever> locked) {
    List<SampleResult> known = results.stream().filter(r -> r.woofer().isPresent()).toList();
    if (known.isEmpty()) {
      return Optional.empty();
    }
    List<Woofer> woofers = known.stream().map(r -> r.woofer().orElseThrow()).toList();
    Woofer typical = typical(woofers);
    double[] rests =
        measured.stream()
            .filter(sample -> sample.restPositionM().isPresent())
            .mapToDouble(sample -> sample.restPositionM().getAsDouble())
            .toArray();
    OptionalDouble rest = Arrays.stream(rests).average();
    RequestPlan plan =
        RequestPlan.of(brief, typical, uncertainty(known), rest, locked, air, voltageV);
    Assessment before = stacks.scorer().assess(typical);
    Assessment after = stacks.scorer().assess(plan.changed());
    return Optional.of(
        new ChangeRequest(
            known.size() == 1
                ? "sample " + known.get(0).name()
                : "the mean of " + known.size() + " samples",
            plan.change(),
            plan.rows(),
            locked,
            typical,
            plan.changed(),
            plan.before(),
            plan.after(),
            plan.stillOutside(),
            stacks.withBriefParts(typical),
            stacks.withBriefParts(plan.changed()),
            before,
            after));
  }

  /**
   * Half widths of the 95 % intervals: of one sample as they are; of several the mean of them, or
   * the scatter from unit to unit where that is more.
   */
  private static Map<BenchFigure, Double> uncertainty(List<SampleResult> samples) {
    Map<BenchFigure, Double> half = new EnumMap<>(BenchFigure.class);
    for (BenchFigure figure : BenchFigure.values()) {
      List<Finding.Estimate> found =
          samples.stream().flatMap(sample -> sample.estimate(figure.key()).stream()).toList();
      double mean =
          found.stream().mapToDouble(e -> (e.upper95() - e.lower95()) / 2).average().orElse(0);
      double value = found.stream().mapToDouble(Finding.Estimate::value).average().orElse(0);
      double squares =
          found.stream().mapToDouble(e -> (e.value() - value) * (e.value() - value)).sum();
      double scatter = found.size() < 2 ? 0 : Math.sqrt(squares / (found.size() - 1));
      half.put(figure, Math.max(mean, scatter));
    }
    return half;
  }

  /** The woofer in the middle of several: geometric means, so that its fs and Q are theirs too. */
  private static Woofer typical(List<Woofer> woofers) {
    Woofer first = woofers.get(0);
    if (woofers.size() == 1) {
      return first;
    }
    return new Woofer(
        "mean of " + woofers.size(),
        first.nominalM(),
        first.effectiveAreaM2(),
        mean(woofers, Woofer::resistanceOhm),
        woofers.stream().mapToDouble(Woofer::inductanceH).average().orElseThrow(),
        mean(woofers, Woofer::bareMassKg),
        mean(woofers, Woofer::stiffnessNPerM),
        mean(woofers, Woofer::lossNsPerM),
        mean(woofers, Woofer::forceFactorTm),
        mean(woofers, Woofer::travelM),
        first.powerW());
  }

  private static double mean(List<Woofer> woofers, ToDoubleFunction<Woofer> value) {
    return Math.exp(
        woofers.stream()
            .mapToDouble(w -> Math.log(value.applyAsDouble(w)))
            .average()
            .orElseThrow());
  }
}

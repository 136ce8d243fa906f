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
import nullplane.fit.FittedParameter;
import nullplane.fit.SweepFit;
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
  private final SampleFitting fitting;

  /**
   * @param stacks the stacks, with the brief
   * @param panels the panels that samples were measured on
   */
  public SampleJudge(BriefStacks stacks, PanelAir panels) {
    this.stacks = stacks;
    brief = stacks.brief();
    air = stacks.scorer().air();
    fitting = new SampleFitting(brief.woofer().effectiveAreaM2(), air, panels);
    voltageV = stacks.scorer().spec().target().voltageV();
  }

  /**
   * Holds samples against the brief.
   *
   * @param measured the samples, one or more
   * @param locked levers that the maker cannot move
   * @param notes what holds for all samples, one sentence each
   * @param open the project's round that they are; empty without a ledger
   */
  public SampleOutcome judge(
      List<MeasuredSample> measured,
      Set<Lever> locked,
      List<String> notes,
      Optional<OpenRound> open) {
    List<SampleResult> results = new ArrayList<>();
    measured.forEach(sample -> results.add(result(sample)));
    List<SampleResult> judged = SampleOutcome.judged(results);
    Decision decision = SampleOutcome.decision(judged);
    List<BatchSpread> spreads = BatchSpread.all(judged);
    List<String> allNotes = new ArrayList<>(notes);
    for (BatchSpread spread : spreads) {
      if (spread.tooWide()) {
        allNotes.add(
            spread.value().name()
                + ": the samples scatter by more than the window bears, a sixth of its width; no"
                + " change of the mean mends that, so ask for less scatter too");
      }
    }
    Optional<ProjectRound> samplesOnly =
        open.map(round -> round(round, results, decision, locked, Optional.empty()));
    MakerResponse response =
        samplesOnly
            .map(round -> MakerResponse.learned(known(open, round).moves()))
            .orElse(MakerResponse.AS_ASKED);
    Optional<ChangeRequest> request =
        decision == Decision.FAIL ? request(judged, locked, response) : Optional.empty();
    Optional<ProjectStory> story =
        open.map(
            round ->
                ProjectStory.of(known(open, round(round, results, decision, locked, request))));
    return new SampleOutcome(
        brief,
        stacks.asked(),
        stacks.withBriefParts(brief.woofer()),
        results,
        spreads,
        request,
        story,
        allNotes);
  }

  /** The rounds on record with a round at their end. */
  private static RoundHistory known(Optional<OpenRound> open, ProjectRound round) {
    return open.map(one -> one.earlier().with(one.brief()).with(round)).orElse(RoundHistory.NONE);
  }

  private static ProjectRound round(
      OpenRound open,
      List<SampleResult> results,
      Decision decision,
      Set<Lever> locked,
      Optional<ChangeRequest> request) {
    List<LedgerEntry.SampleEntry> samples = new ArrayList<>();
    for (SampleResult result : results) {
      samples.add(
          new LedgerEntry.SampleEntry(
              open.stamp(),
              result.name(),
              result.golden(),
              result.measured().place().map(PanelPlace::words).orElse("free air"),
              result.decision(),
              result.figures(),
              result.measured().restPositionM()));
    }
    Map<Lever, Double> gains = new EnumMap<>(Lever.class);
    request.ifPresent(
        asked ->
            asked
                .change()
                .levers()
                .forEach(lever -> gains.put(lever, asked.response().used(lever))));
    return new ProjectRound(
        open.stamp(),
        samples,
        Optional.of(
            new LedgerEntry.RequestEntry(
                open.stamp(),
                decision,
                request.map(ChangeRequest::basis).orElse(""),
                request.map(asked -> AskedChange.of(asked.change())).orElse(AskedChange.NONE),
                gains,
                request.map(ChangeRequest::after).orElse(Map.of()),
                request.map(ChangeRequest::stillOutside).orElse(List.of()),
                locked)));
  }

  private SampleResult result(MeasuredSample sample) {
    SweepFit fit = fitting.of(sample, found -> woofer(sample, found, findings(found)));
    SampleFindings findings = findings(fit);
    Map<BenchFigure, Finding.Estimate> figures = new EnumMap<>(BenchFigure.class);
    for (BenchFigure figure : BenchFigure.values()) {
      if (findings.of(figure) instanceof Finding.Estimate estimate) {
        figures.put(figure, estimate);
      }
    }
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
    sample
        .place()
        .ifPresent(
            place ->
                notes.add(
                    "measured "
                        + place.words()
                        + "; the panel's solved air is taken off, the values hold for free air"));
    notes.addAll(fit.warnings());
    boolean massAssumed = fit.estimate(FittedParameter.BARE_MASS).isEmpty();
    Optional<Woofer> woofer = woofer(sample, fit, findings);
    if (woofer.isPresent() && massAssumed) {
      notes.add(
          "the moving mass is not known; for the stacks, and for any change, it is taken from the"
              + " brief");
    }
    return new SampleResult(
        sample.name(),
        sample,
        fit,
        figures,
        checks,
        notMeasured,
        woofer,
        massAssumed,
        woofer.map(stacks.scorer()::assess),
        woofer.map(stacks::withBriefParts).orElse(List.of()),
        notes);
  }

  private SampleFindings findings(SweepFit fit) {
    return new SampleFindings(fit, brief.woofer().effectiveAreaM2(), air, voltageV);
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
      List<SampleResult> results, Set<Lever> locked, MakerResponse response) {
    List<SampleResult> known = results.stream().filter(r -> r.woofer().isPresent()).toList();
    if (known.isEmpty()) {
      return Optional.empty();
    }
    List<Woofer> woofers = known.stream().map(r -> r.woofer().orElseThrow()).toList();
    Woofer typical = typical(woofers);
    double[] rests =
        results.stream()
            .map(result -> result.measured().restPositionM())
            .filter(OptionalDouble::isPresent)
            .mapToDouble(OptionalDouble::getAsDouble)
            .toArray();
    OptionalDouble rest = Arrays.stream(rests).average();
    RequestPlan plan =
        RequestPlan.of(brief, typical, uncertainty(known), rest, locked, response, air, voltageV);
    Assessment before = stacks.scorer().assess(typical);
    Assessment after = stacks.scorer().assess(plan.changed());
    return Optional.of(
        new ChangeRequest(
            known.size() == 1
                ? "sample " + known.get(0).name()
                : "the mean of " + known.size() + " samples",
            plan.change(),
            plan.expected(),
            response,
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

package nullplane.sample;

import java.util.List;
import java.util.Optional;
import nullplane.scoring.Assessment;

/**
 * Samples against a brief, and what the maker should change.
 *
 * @param brief the brief
 * @param asked what the brief's woofer does with the best available parts
 * @param nominal every stack with the brief's woofer and parts
 * @param samples the samples, in the order of the file
 * @param spreads how the values scatter; empty for one sample
 * @param request what to change; empty if no sample fails
 * @param story the rounds of the project, this one last; empty without a ledger
 * @param notes what holds for all samples, one sentence each
 */
public record SampleOutcome(
    SampleBrief brief,
    Assessment asked,
    List<PartsFigures> nominal,
    List<SampleResult> samples,
    List<BatchSpread> spreads,
    Optional<ChangeRequest> request,
    Optional<ProjectStory> story,
    List<String> notes) {
  /** Copies the lists and checks that there is a sample. */
  public SampleOutcome {
    nominal = List.copyOf(nominal);
    samples = List.copyOf(samples);
    spreads = List.copyOf(spreads);
    notes = List.copyOf(notes);
    if (samples.isEmpty()) {
      throw new IllegalArgumentException("no sample");
    }
  }

  /** Returns the samples that decide: not the golden ones, unless all are. */
  public List<SampleResult> judged() {
    return judged(samples);
  }

  static List<SampleResult> judged(List<SampleResult> samples) {
    List<SampleResult> judged = samples.stream().filter(sample -> !sample.golden()).toList();
    return judged.isEmpty() ? samples : judged;
  }

  /** Returns the decision on all samples that decide: one that fails decides. */
  public Decision decision() {
    return decision(judged());
  }

  static Decision decision(List<SampleResult> judged) {
    Decision all = Decision.PASS;
    for (SampleResult sample : judged) {
      all = all.and(sample.decision());
    }
    return all;
  }

  /** Returns how many of the samples that decide have a decision. */
  public int count(Decision decision) {
    return (int) judged().stream().filter(s -> s.decision() == decision).count();
  }
}

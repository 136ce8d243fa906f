package nullplane.sample;

import java.util.Collections;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import nullplane.driver.Woofer;
import nullplane.scoring.Assessment;
import nullplane.scoring.Grade;

/**
 * What a maker should change next, and what comes of it, computed on the changed woofer.
 *
 * @param basis what the change starts from, in words
 * @param change the change asked for; none if no lever helps
 * @param expected what this maker is expected to make of it
 * @param response how far the maker goes when a lever is to be moved
 * @param rows one per lever moved
 * @param locked levers that were not to be moved
 * @param woofer the woofer before
 * @param changed the woofer after what is expected
 * @param before figures of the brief before, by key (SI)
 * @param after the same after (SI)
 * @param stillOutside keys of the figures that stay outside their windows
 * @param stacksBefore every stack before, with the brief's parts
 * @param stacksAfter every stack after, with the brief's parts
 * @param assessmentBefore what it does before, with the best available parts
 * @param assessmentAfter what it does after, with the best available parts
 */
public record ChangeRequest(
    String basis,
    Change change,
    Change expected,
    MakerResponse response,
    List<RequestRow> rows,
    Set<Lever> locked,
    Woofer woofer,
    Woofer changed,
    Map<String, Double> before,
    Map<String, Double> after,
    List<String> stillOutside,
    List<PartsFigures> stacksBefore,
    List<PartsFigures> stacksAfter,
    Assessment assessmentBefore,
    Assessment assessmentAfter) {
  /** Copies the collections. */
  public ChangeRequest {
    rows = List.copyOf(rows);
    Set<Lever> copy = EnumSet.noneOf(Lever.class);
    copy.addAll(locked);
    locked = Collections.unmodifiableSet(copy);
    before = Collections.unmodifiableMap(new LinkedHashMap<>(before));
    after = Collections.unmodifiableMap(new LinkedHashMap<>(after));
    stillOutside = List.copyOf(stillOutside);
    stacksBefore = List.copyOf(stacksBefore);
    stacksAfter = List.copyOf(stacksAfter);
  }

  /** Returns the grade before, with the best parts for it. */
  public Grade gradeBefore() {
    return assessmentBefore.grade();
  }

  /** Returns the grade after, with the best parts for it. */
  public Grade gradeAfter() {
    return assessmentAfter.grade();
  }

  /** Returns every stack before, with the best available parts. */
  public List<PartsFigures> bestBefore() {
    return BriefStacks.withBestParts(assessmentBefore);
  }

  /** Returns every stack after, with the best available parts. */
  public List<PartsFigures> bestAfter() {
    return BriefStacks.withBestParts(assessmentAfter);
  }

  /** Returns whether anything is asked for. */
  public boolean asksForSomething() {
    return !rows.isEmpty();
  }
}

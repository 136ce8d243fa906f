package nullplane.sample;

import java.time.Instant;
import java.util.Collections;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import nullplane.fit.Finding;
import nullplane.units.Checks;

/**
 * One record of a project's rounds. A later record of the same round takes an earlier one's place.
 */
public sealed interface LedgerEntry {

  /**
   * A brief as it came into use.
   *
   * @param digest its digest, hexadecimal
   * @param title title of the panel system
   * @param name what the woofer is called
   * @param values its values with their windows, in the order of the sheet
   */
  record BriefEntry(String digest, String title, String name, List<BriefValue> values)
      implements LedgerEntry {
    /** Copies the list. */
    public BriefEntry {
      values = List.copyOf(values);
    }
  }

  /**
   * One sample of a round, as it was fitted.
   *
   * @param stamp the round
   * @param name what people call it
   * @param golden whether it is a reference that is measured again each round
   * @param mounting how it was measured, in words
   * @param decision the decision on it
   * @param values what its sweeps say (SI; dB re 20 uPa for the level)
   * @param restPositionM coil's rest position (m), if it was measured
   */
  record SampleEntry(
      RoundStamp stamp,
      String name,
      boolean golden,
      String mounting,
      Decision decision,
      Map<BenchFigure, Finding.Estimate> values,
      OptionalDouble restPositionM)
      implements LedgerEntry {
    /** Copies the map and checks the position. */
    public SampleEntry {
      Map<BenchFigure, Finding.Estimate> copy = new EnumMap<>(BenchFigure.class);
      copy.putAll(values);
      values = Collections.unmodifiableMap(copy);
      restPositionM.ifPresent(x -> Checks.finite(x, "rest position", "m"));
      if (name.isBlank()) {
        throw new IllegalArgumentException("a sample needs a name");
      }
    }
  }

  /**
   * The end of a round: the decision, and what was asked for.
   *
   * @param stamp the round
   * @param decision the decision on all samples
   * @param basis what the request starts from, in words; empty if nothing is asked for
   * @param asked what the maker is asked for
   * @param gains the gain that the request reckons with, by lever (1)
   * @param predicted figures that should come of it, by key (SI); empty if nothing is asked for
   * @param stillOutside keys of the figures that stay outside their windows
   * @param locked levers that were not to be moved
   */
  record RequestEntry(
      RoundStamp stamp,
      Decision decision,
      String basis,
      AskedChange asked,
      Map<Lever, Double> gains,
      Map<String, Double> predicted,
      List<String> stillOutside,
      Set<Lever> locked)
      implements LedgerEntry {
    /** Copies the collections. */
    public RequestEntry {
      Map<Lever, Double> copy = new EnumMap<>(Lever.class);
      copy.putAll(gains);
      gains = Collections.unmodifiableMap(copy);
      predicted = Collections.unmodifiableMap(new LinkedHashMap<>(predicted));
      stillOutside = List.copyOf(stillOutside);
      Set<Lever> levers = EnumSet.noneOf(Lever.class);
      levers.addAll(locked);
      locked = Collections.unmodifiableSet(levers);
    }
  }

  /**
   * What all records of one run bear.
   *
   * @param round the round, from 1
   * @param time when it was recorded
   * @param briefDigest digest of the brief, hexadecimal
   * @param measurementsDigest digest of the measurements, hexadecimal
   * @param version version of the program
   */
  record RoundStamp(
      int round, Instant time, String briefDigest, String measurementsDigest, String version) {
    /** Checks the round. */
    public RoundStamp {
      if (round < 1) {
        throw new IllegalArgumentException("round " + round + "; allowed: 1 or more");
      }
    }

    /** Returns the stamp of the same run at another time. */
    RoundStamp at(Instant other) {
      return new RoundStamp(round, other, briefDigest, measurementsDigest, version);
    }
  }
}

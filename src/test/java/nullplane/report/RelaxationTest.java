package nullplane.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import nullplane.driver.CoilBudget;
import nullplane.network.LowPassBranch;
import nullplane.network.NetworkCatalogue;
import nullplane.network.NetworkOffer;
import nullplane.network.SeriesCoil;
import nullplane.scoring.Amplifier;
import nullplane.scoring.Assessment;
import nullplane.scoring.DesignSpec;
import nullplane.scoring.Grade;
import nullplane.scoring.StackAssessment;
import nullplane.scoring.Target;
import nullplane.search.FrontMember;
import nullplane.search.SearchOutcome;
import org.junit.jupiter.api.Test;

/** What a run says when no woofer meets the corridor in every stack. */
class RelaxationTest {
  private static final DesignSpec SPEC = InventedRun.spec();

  private static SearchOutcome outcome(List<FrontMember> front, Assessment... ranked) {
    return new SearchOutcome(
        List.of(ranked), front, 1000, 10, 0, InventedRun.history(5, 4), "the time was up", 1);
  }

  private static Assessment at(DesignSpec spec, double resonanceHz) {
    return InventedRun.assessment(spec, "Woofer 1", resonanceHz, 0.85, 0.008);
  }

  private static DesignSpec with(Target target, Amplifier amplifier, NetworkOffer networks) {
    return new DesignSpec(
        SPEC.title(),
        SPEC.woofer(),
        SPEC.stacks(),
        SPEC.listening(),
        target,
        amplifier,
        networks,
        SPEC.weights());
  }

  private static DesignSpec withCorridor(double corridorDb) {
    return with(new Target(2.83, 40, 200, corridorDb), SPEC.amplifier(), SPEC.networks());
  }

  @Test
  void nothingIsSaidWhereTheBestMeetsAll() {
    DesignSpec wide = withCorridor(9);
    Relaxation relaxation = new Relaxation(wide, outcome(List.of(), at(wide, 30)));
    assertThat(relaxation.verdict()).isEmpty();
    assertThat(relaxation.ways()).isEmpty();
    assertThat(new Relaxation(wide, outcome(List.of())).verdict()).isEmpty();
  }

  @Test
  void aLaterWooferThatMeetsAllIsNamed() {
    DesignSpec spec = withCorridor(2.2);
    Assessment far = at(spec, 33);
    Assessment near = at(spec, 30);
    double most = new Verdict(spec, far, "x").worstExcess().figures().worstExcessDb();
    double least = new Verdict(spec, near, "x").worstExcess().figures().worstExcessDb();
    assertThat(most).isPositive();
    // a corridor between the two lets the second in alone
    DesignSpec between = withCorridor(2.2 + Math.max(0, least) + 0.01);
    Relaxation relaxation =
        new Relaxation(between, outcome(List.of(), at(between, 33), at(between, 30)));
    assertThat(least).isLessThan(most - 0.02);
    assertThat(relaxation.verdict().orElseThrow()).startsWith("Woofer 2 meets the corridor");
    assertThat(relaxation.ways()).isEmpty();
  }

  @Test
  void theFrontIsAskedBeforeItIsDenied() {
    Assessment woofer = at(SPEC, 30);
    List<FrontMember> front = InventedRun.front(SPEC, List.of(woofer));
    assertThat(new Relaxation(SPEC, outcome(front, woofer)).verdict().orElseThrow())
        .contains("1 of the 12 compromises");
    Relaxation denied = new Relaxation(SPEC, outcome(front.subList(1, 12), woofer));
    double miss = new Verdict(SPEC, woofer, "x").worstExcess().figures().worstExcessDb();
    assertThat(denied.verdict().orElseThrow())
        .startsWith("No buildable woofer was found that meets the corridor in every stack.")
        .contains("misses it by " + Figures.decibels(miss) + " in stack single");
    assertThat(denied.ways().get(0))
        .isEqualTo(
            "Corridor: "
                + Figures.decibels(2 + miss)
                + " instead of 2.00 dB would do as it stands.");
  }

  @Test
  void aRangeAtItsEndIsNamed() {
    assertThat(new Relaxation(SPEC, outcome(List.of(), at(SPEC, 30))).ways())
        .noneMatch(way -> way.startsWith("Range:"));
    assertThat(new Relaxation(SPEC, outcome(List.of(), at(SPEC, 44.9))).ways())
        .contains(
            "Range: fs stands at 44.9 Hz, the upper end of what the search may choose (45.0 Hz);"
                + " allow more.");
    assertThat(new Relaxation(SPEC, outcome(List.of(), at(SPEC, 20.1))).ways())
        .anyMatch(way -> way.startsWith("Range: fs stands at 20.1 Hz, the lower end"));
  }

  @Test
  void aLoadAtItsLimitIsNamedWithItsRatio() {
    Assessment woofer = at(SPEC, 30);
    double least = new Verdict(SPEC, woofer, "x").leastLoad().figures().leastLoadOhm();
    DesignSpec tight = with(SPEC.target(), new Amplifier(28, least / 1.01), SPEC.networks());
    assertThat(new Relaxation(tight, outcome(List.of(), woofer)).ways())
        .anyMatch(
            way -> way.startsWith("Constraint: Load by stack") && way.contains("ratio of 1.01"));
    DesignSpec broken = with(SPEC.target(), new Amplifier(28, least / 0.8), SPEC.networks());
    Relaxation none = new Relaxation(broken, outcome(List.of(), at(broken, 30)));
    assertThat(none.verdict())
        .contains("No buildable woofer was found: the closest breaks 1 constraint.");
    assertThat(none.ways())
        .anyMatch(way -> way.startsWith("Constraint: Load by") && way.contains("ratio of 0.800"));
  }

  @Test
  void aConeWithoutMassIsNamed() {
    Assessment a = at(SPEC, 30);
    Assessment light =
        new Assessment(
            a.woofer(),
            a.freeAir(),
            new CoilBudget(0.02, 0.03, 0.0404, 0.04),
            a.motor(),
            a.stacks(),
            a.grade(),
            a.parts(),
            a.violations());
    assertThat(new Relaxation(SPEC, outcome(List.of(), light)).ways())
        .contains(
            "Constraint: Mass left for the cone is 40.4 g where 40.0 g is the limit, a ratio of"
                + " 1.01.");
  }

  @Test
  void networksAtTheirLimitAreNamed() {
    NetworkCatalogue list = NetworkCatalogue.standard();
    DesignSpec spec = with(SPEC.target(), SPEC.amplifier(), new NetworkOffer.Passive(list, 1));
    SeriesCoil largest = list.coils().get(list.coils().size() - 1);
    Assessment a = at(spec, 30);
    StackAssessment worst = new Verdict(spec, a, "x").worstExcess();
    List<StackAssessment> stacks =
        a.stacks().stream()
            .map(
                s ->
                    s.equals(worst)
                        ? new StackAssessment(
                            s.brief(),
                            s.wiring(),
                            LowPassBranch.ofCoil(largest),
                            s.figures(),
                            s.curves())
                        : s)
            .toList();
    List<String> ways = new Relaxation(spec, outcome(List.of(), with(a, stacks, a.grade()))).ways();
    assertThat(ways)
        .anyMatch(way -> way.contains("uses all 1 part that a network may have"))
        .anyMatch(way -> way.contains("is the largest of the list, 33.0 mH"));
  }

  /** With the level moved as advised, the deviations are the same either way. */
  @Test
  void aLevelIsAdvisedThatCentresTheResponse() {
    DesignSpec narrow = withCorridor(0.5);
    Assessment woofer = at(narrow, 30);
    List<String> ways = new Relaxation(narrow, outcome(List.of(), woofer)).ways();
    StackAssessment worst = new Verdict(narrow, woofer, "x").worstExcess();
    double least = Double.POSITIVE_INFINITY;
    double most = Double.NEGATIVE_INFINITY;
    for (int f = 0; f < worst.curves().frequencyHz().size(); f++) {
      double hz = worst.curves().frequencyHz().at(f);
      if (hz >= 40 && hz <= 200) {
        least = Math.min(least, worst.curves().levelDb().at(f));
        most = Math.max(most, worst.curves().levelDb().at(f));
      }
    }
    String level = "even at its best level, " + Figures.decibels((least + most) / 2);
    String strays = "strays by " + Figures.decibels((most - least) / 2);
    assertThat(ways)
        .anyMatch(way -> way.startsWith("Level: ") && way.contains(level) && way.contains(strays));
  }

  @Test
  void pagesAndTerminalSayItFirst() {
    SearchOutcome outcome = outcome(List.of(), at(SPEC, 44.9));
    String terminal = TerminalSummary.of(SPEC, outcome, InventedRun.INFO, "x", false);
    assertThat(terminal).startsWith("No buildable woofer was found that meets the corridor");
    assertThat(terminal.lines()).allSatisfy(line -> assertThat(line.length()).isLessThan(81));
    assertThat(terminal).contains("What to relax:").contains("- Range: fs stands at 44.9 Hz");
    String index = new IndexPage(SPEC, outcome, InventedRun.INFO).markdown();
    assertThat(index.indexOf("No buildable woofer was found")).isBetween(0, 200);
    assertThat(index).contains("## What to relax").contains("Range: fs stands at 44.9 Hz");
  }

  private static Assessment with(Assessment a, List<StackAssessment> stacks, Grade grade) {
    return new Assessment(
        a.woofer(),
        a.freeAir(),
        a.budget(),
        Optional.empty(),
        stacks,
        grade,
        a.parts(),
        a.violations());
  }
}

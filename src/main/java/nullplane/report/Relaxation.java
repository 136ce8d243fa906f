package nullplane.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import nullplane.driver.SuspensionLimits;
import nullplane.motor.MotorDesign;
import nullplane.network.NetworkCatalogue;
import nullplane.network.NetworkOffer;
import nullplane.scoring.Assessment;
import nullplane.scoring.DesignSpec;
import nullplane.scoring.StackAssessment;
import nullplane.scoring.StackFigures;
import nullplane.scoring.WooferBrief;
import nullplane.search.FrontMember;
import nullplane.search.SearchOutcome;
import nullplane.units.Curve;
import nullplane.units.Range;

/**
 * What to say when a search found no buildable woofer that meets the corridor in every stack: that
 * it is so, what binds, and by how much each would have to give.
 *
 * <p>A limit is taken to bind if the closest woofer stands within a fiftieth of it, a range if it
 * stands within a hundredth of its span from an end.
 */
final class Relaxation {
  private static final double NEAR_LIMIT = 0.02;
  private static final double NEAR_END = 0.01;

  /** Shift of a level that shows in print (dB). */
  private static final double SEEN_SHIFT_DB = 0.05;

  private final DesignSpec spec;
  private final SearchOutcome outcome;

  Relaxation(DesignSpec spec, SearchOutcome outcome) {
    this.spec = spec;
    this.outcome = outcome;
  }

  /** Returns whether a ranked woofer breaks nothing and meets the corridor in every stack. */
  boolean isMet() {
    return rankThatMeets() >= 0;
  }

  private int rankThatMeets() {
    List<Assessment> ranked = outcome.ranked();
    for (int i = 0; i < ranked.size(); i++) {
      if (ranked.get(i).grade().feasible() && verdict(i).insideEverywhere()) {
        return i;
      }
    }
    return -1;
  }

  private Verdict verdict(int index) {
    return new Verdict(spec, outcome.ranked().get(index), "Woofer " + (index + 1));
  }

  /** Returns the verdict on the whole search in a sentence or two; empty if the best meets all. */
  Optional<String> verdict() {
    if (outcome.ranked().isEmpty() || rankThatMeets() == 0) {
      return Optional.empty();
    }
    int meets = rankThatMeets();
    if (meets > 0) {
      return Optional.of(
          "Woofer "
              + (meets + 1)
              + " meets the corridor in every stack; woofer 1 does not, and stands before it for"
              + " what else the priorities ask for.");
    }
    Assessment closest = outcome.ranked().get(closest());
    if (!closest.grade().feasible()) {
      int broken = closest.violations().size();
      return Optional.of(
          "No buildable woofer was found: the closest breaks "
              + broken
              + (broken == 1 ? " constraint." : " constraints."));
    }
    long inside = outcome.front().stream().filter(Relaxation::isInside).count();
    if (inside > 0) {
      return Optional.of(
          "No ranked woofer meets the corridor in every stack, but "
              + inside
              + " of the "
              + outcome.front().size()
              + " compromises in front.csv do: weigh the corridor more to have them ranked.");
    }
    StackAssessment worst = verdict(closest()).worstExcess();
    return Optional.of(
        "No buildable woofer was found that meets the corridor in every stack. The closest, woofer "
            + (closest() + 1)
            + ", misses it by "
            + Figures.decibels(worst.figures().worstExcessDb())
            + " in "
            + Verdict.stack(worst)
            + " at "
            + Figures.hertz(worst.figures().worstExcessHz())
            + ".");
  }

  private static boolean isInside(FrontMember member) {
    return member.score().grade().feasible() && member.score().outsideDb() < Verdict.UNSEEN_DB;
  }

  /** Returns the index of the ranked woofer that is closest to what is asked for. */
  private int closest() {
    int closest = 0;
    for (int i = 1; i < outcome.ranked().size(); i++) {
      if (order().compare(i, closest) < 0) {
        closest = i;
      }
    }
    return closest;
  }

  private Comparator<Integer> order() {
    return Comparator.comparingDouble((Integer i) -> outcome.ranked().get(i).grade().violation())
        .thenComparingDouble(i -> verdict(i).worstExcess().figures().worstExcessDb());
  }

  /** Returns what could give, each with its figure; empty if a ranked woofer meets everything. */
  List<String> ways() {
    if (outcome.ranked().isEmpty() || isMet()) {
      return List.of();
    }
    Assessment woofer = outcome.ranked().get(closest());
    Verdict verdict = verdict(closest());
    List<String> ways = new ArrayList<>();
    corridor(verdict, ways);
    int before = ways.size();
    ranges(woofer, ways);
    motor(woofer, ways);
    suspension(woofer, ways);
    load(verdict, ways);
    travel(woofer, ways);
    networks(verdict.worstExcess(), ways);
    if (!verdict.loudEverywhere()) {
      StackFigures least = verdict.leastMargin().figures();
      ways.add(
          "Output: "
              + Verdict.stack(verdict.leastMargin())
              + " lacks "
              + Figures.decibels(-least.outputMarginDb())
              + " at its loudest; asking for less leaves more woofers to choose from.");
    }
    if (ways.size() == before) {
      ways.add(
          "No range and no constraint binds: only the panel, the low corner or the target can"
              + " change this.");
    }
    return List.copyOf(ways);
  }

  private void corridor(Verdict verdict, List<String> ways) {
    if (verdict.insideEverywhere()) {
      return;
    }
    StackAssessment worst = verdict.worstExcess();
    double corridor = spec.target().corridorDb();
    ways.add(
        "Corridor: "
            + Figures.decibels(corridor + worst.figures().worstExcessDb())
            + " instead of "
            + Figures.decibels(corridor)
            + " would do as it stands.");
    for (StackAssessment stack : verdict.outside()) {
      level(stack, corridor, ways);
    }
  }

  /** A level that is merely too high or too low needs no other woofer. */
  private void level(StackAssessment stack, double corridor, List<String> ways) {
    Range deviation = deviationDb(stack);
    double shift = (deviation.upper() + deviation.lower()) / 2;
    double half = (deviation.upper() - deviation.lower()) / 2;
    String to =
        Figures.decibels(stack.brief().levelDb() + shift)
            + " instead of "
            + Figures.decibels(stack.brief().levelDb());
    if (half <= corridor) {
      ways.add(
          "Level: "
              + Verdict.stack(stack)
              + " has the shape but not the level; ask for "
              + to
              + ".");
    } else if (Math.abs(shift) < SEEN_SHIFT_DB) {
      ways.add(
          "Shape: "
              + Verdict.stack(stack)
              + " has the right level and strays by "
              + Figures.decibels(half)
              + " either way.");
    } else {
      ways.add(
          "Level: even at its best level, "
              + to
              + ", "
              + Verdict.stack(stack)
              + " strays by "
              + Figures.decibels(half)
              + " either way.");
    }
  }

  /** Returns the least and greatest deviation from the wanted level over the band (dB). */
  private Range deviationDb(StackAssessment stack) {
    Curve frequency =
        stack.curves().sum().map(sum -> sum.frequencyHz()).orElse(stack.curves().frequencyHz());
    Curve level = stack.curves().sum().map(sum -> sum.sumDb()).orElse(stack.curves().levelDb());
    Range band = Charts.judgedBand(spec);
    double least = Double.POSITIVE_INFINITY;
    double most = Double.NEGATIVE_INFINITY;
    for (int f = 0; f < frequency.size(); f++) {
      double at = frequency.at(f);
      if (at >= band.lower() * (1 - 1e-9) && at <= band.upper() * (1 + 1e-9)) {
        double deviation = level.at(f) - spec.wantedDb(stack.brief(), at);
        least = Math.min(least, deviation);
        most = Math.max(most, deviation);
      }
    }
    return least <= most ? new Range(least, most) : Range.pinned(0);
  }

  private void ranges(Assessment woofer, List<String> ways) {
    WooferBrief brief = spec.woofer();
    double travelStep = 0.25e-3;
    end("fs", woofer.freeAir().resonanceHz(), brief.resonanceHz(), 0, 1, "Hz", ways);
    end("Qts", woofer.freeAir().totalQ(), brief.totalQ(), 0, 1, "", ways);
    end("bare mass", woofer.woofer().bareMassKg(), brief.bareMassKg(), 0, 1e3, "g", ways);
    end("travel", woofer.woofer().travelM(), brief.travelM(), travelStep, 1e3, "mm", ways);
    Range asked = brief.coil().resistanceOhm();
    if (!asked.isPinned()) {
      end("Re", woofer.woofer().resistanceOhm(), asked, 0, 1, "ohm", ways);
    }
  }

  /** Says that a value stands at an end of its range; pinned ranges are what the spec fixes. */
  private static void end(
      String name,
      double value,
      Range range,
      double slack,
      double scale,
      String unit,
      List<String> ways) {
    if (range.isPinned()) {
      return;
    }
    double near = Math.max(slack, NEAR_END * (range.upper() - range.lower()));
    boolean top = value >= range.upper() - near;
    if (top || value <= range.lower() + near) {
      double bound = (top ? range.upper() : range.lower()) * scale;
      ways.add(
          "Range: "
              + name
              + " stands at "
              + (Figures.number(value * scale) + " " + unit).strip()
              + ", the "
              + (top ? "upper" : "lower")
              + " end of what the search may choose ("
              + (Figures.number(bound) + " " + unit).strip()
              + "); allow "
              + (top ? "more." : "less."));
    }
  }

  private void motor(Assessment woofer, List<String> ways) {
    woofer
        .motor()
        .ifPresent(
            motor -> {
              Range flux = spec.woofer().coil().fluxT();
              boolean top = motor.fluxT() >= flux.upper() * (1 - NEAR_LIMIT);
              if (top || motor.fluxT() <= flux.lower() * (1 + NEAR_LIMIT)) {
                double limit = top ? flux.upper() : flux.lower();
                ways.add(limit("Flux in the gap", motor.fluxT(), limit, "T"));
              }
              if (motor.poleFluxT() >= MotorDesign.STEEL_LIMIT_T * (1 - NEAR_LIMIT)) {
                ways.add(
                    limit(
                        "Flux in the steel of the pole",
                        motor.poleFluxT(),
                        MotorDesign.STEEL_LIMIT_T,
                        "T"));
              }
            });
    double left = woofer.budget().remainderKg();
    double needed = woofer.budget().leastRemainderKg();
    if (left <= needed * (1 + NEAR_LIMIT)) {
      ways.add(limit("Mass left for the cone", left * 1e3, needed * 1e3, "g"));
    }
  }

  private void suspension(Assessment woofer, List<String> ways) {
    Range allowed = SuspensionLimits.forNominal(spec.woofer().nominalM()).stiffnessNPerM();
    double stiffness = woofer.woofer().stiffnessNPerM();
    if (stiffness >= allowed.upper() * (1 - NEAR_LIMIT)) {
      ways.add(limit("Stiffness of the suspension", stiffness, allowed.upper(), "N/m"));
    } else if (stiffness <= allowed.lower() * (1 + NEAR_LIMIT)) {
      ways.add(limit("Stiffness of the suspension", stiffness, allowed.lower(), "N/m"));
    }
  }

  private void load(Verdict verdict, List<String> ways) {
    double load = verdict.leastLoad().figures().leastLoadOhm();
    double lowest = spec.amplifier().lowestLoadOhm();
    if (load <= lowest * (1 + NEAR_LIMIT)) {
      ways.add(limit("Load by " + Verdict.stack(verdict.leastLoad()), load, lowest, "ohm"));
    }
  }

  private void travel(Assessment woofer, List<String> ways) {
    for (StackAssessment stack : woofer.stacks()) {
      double share = stack.figures().travelShare();
      if (share >= 1 - NEAR_LIMIT) {
        double travel = woofer.woofer().travelM() * 1e3;
        ways.add(
            limit(
                "Excursion at the target's voltage in " + Verdict.stack(stack),
                share * travel,
                travel,
                "mm"));
      }
    }
  }

  private void networks(StackAssessment worst, List<String> ways) {
    if (!(spec.networks() instanceof NetworkOffer.Passive passive)) {
      return;
    }
    int parts = worst.network().partCount();
    if (parts > 0 && parts == passive.mostParts() && hasMore(passive, parts)) {
      ways.add(
          "Networks: "
              + Verdict.stack(worst)
              + " uses all "
              + parts
              + (parts == 1 ? " part" : " parts")
              + " that a network may have; allow one more.");
    }
    NetworkCatalogue catalogue = passive.catalogue();
    if (worst.coil().present()
        && worst.coil().equals(catalogue.coils().get(catalogue.coils().size() - 1))) {
      ways.add(
          "Networks: the coil of "
              + Verdict.stack(worst)
              + " is the largest of the list, "
              + Figures.millihenries(worst.coil().inductanceH())
              + "; offer larger ones.");
    }
  }

  /** Returns whether the lists of parts would give a network with one part more. */
  private static boolean hasMore(NetworkOffer.Passive passive, int parts) {
    NetworkCatalogue list = passive.catalogue();
    int most =
        (list.resistors().isEmpty() ? 0 : 1)
            + (list.coils().isEmpty() ? 0 : 1)
            + (list.capacitors().isEmpty() ? 0 : list.dampings().isEmpty() ? 1 : 2)
            + (list.resonances().isEmpty() ? 0 : 3)
            + (list.zobels().isEmpty() ? 0 : 2);
    return most > parts;
  }

  private static String limit(String name, double value, double limit, String unit) {
    return "Constraint: "
        + name
        + " is "
        + Figures.of(value, unit)
        + " where "
        + Figures.of(limit, unit)
        + " is the limit, a ratio of "
        + Figures.number(value / limit)
        + ".";
  }
}

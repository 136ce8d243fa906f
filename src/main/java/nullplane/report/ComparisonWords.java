package nullplane.report;

import java.util.ArrayList;
import java.util.List;
import nullplane.driver.SmallSignal;
import nullplane.driver.Woofer;
import nullplane.judging.Comparison;
import nullplane.judging.ParameterGroup;
import nullplane.judging.StackDifference;
import nullplane.judging.WooferDifference;
import nullplane.scoring.Assessment;
import nullplane.scoring.DesignSpec;
import nullplane.scoring.StackAssessment;

/** The sentences and tables that say how two woofers differ. */
final class ComparisonWords {
  /** A share too small to print (dB). */
  private static final double UNSEEN_DB = 0.005;

  private final DesignSpec spec;
  private final Comparison comparison;

  ComparisonWords(DesignSpec spec, Comparison comparison) {
    this.spec = spec;
    this.comparison = comparison;
  }

  String first() {
    return Lettering.clean(comparison.first().woofer().name());
  }

  String second() {
    return Lettering.clean(comparison.second().woofer().name());
  }

  /** Returns the verdict: which is better by how much, and what makes most of it. */
  String verdict() {
    WooferDifference difference = comparison.difference();
    double cost = difference.secondGrade().costDb() - difference.firstGrade().costDb();
    boolean secondBetter = difference.secondGrade().compareTo(difference.firstGrade()) < 0;
    boolean equal = difference.secondGrade().compareTo(difference.firstGrade()) == 0;
    ParameterGroup group = ParameterGroup.RESONANCE;
    for (ParameterGroup other : ParameterGroup.values()) {
      if (Math.abs(difference.costShareDb(other)) > Math.abs(difference.costShareDb(group))) {
        group = other;
      }
    }
    if (equal) {
      return first() + " and " + second() + " are worth the same on these panels.";
    }
    return (secondBetter ? second() : first())
        + " suits these panels better: its score costs "
        + Figures.decibels(Math.abs(cost))
        + (secondBetter == (cost < 0) ? " less" : " more, but it breaks fewer constraints")
        + ". The largest share in that is the "
        + group.word()
        + "'s, "
        + Figures.signedDecibels(difference.costShareDb(group))
        + " from "
        + first()
        + " to "
        + second()
        + ".";
  }

  /** Returns a parameter of a woofer as it is printed. */
  private static String value(ParameterGroup group, Assessment assessment) {
    Woofer woofer = assessment.woofer();
    SmallSignal set = assessment.freeAir();
    return switch (group) {
      case RESONANCE -> Figures.hertz(set.resonanceHz());
      case ELECTRICAL_Q -> Figures.number(set.electricalQ());
      case MECHANICAL_Q -> Figures.number(set.mechanicalQ());
      case MOVING_MASS -> Figures.grams(woofer.bareMassKg());
      case AREA -> Figures.of(woofer.effectiveAreaM2() * 1e4, "cm\u00b2");
      case TRAVEL -> Figures.millimetres(woofer.travelM());
      case INDUCTANCE -> Figures.millihenries(woofer.inductanceH());
      case RESISTANCE -> Figures.ohms(woofer.resistanceOhm());
      case POWER -> Figures.of(woofer.powerW(), "W");
    };
  }

  /** Returns both sheets side by side. */
  Document.Table parameters() {
    List<List<String>> rows = new ArrayList<>();
    for (ParameterGroup group : ParameterGroup.values()) {
      rows.add(
          List.of(
              group.symbol(),
              group.word(),
              value(group, comparison.first()),
              value(group, comparison.second())));
    }
    rows.add(
        List.of(
            "Qts",
            "total Q, follows",
            Figures.number(comparison.first().freeAir().totalQ()),
            Figures.number(comparison.second().freeAir().totalQ())));
    rows.add(
        List.of(
            "Kms",
            "stiffness, follows",
            Figures.of(comparison.first().woofer().stiffnessNPerM(), "N/m"),
            Figures.of(comparison.second().woofer().stiffnessNPerM(), "N/m")));
    rows.add(
        List.of(
            "Bl",
            "force factor, follows",
            Figures.of(comparison.first().woofer().forceFactorTm(), "T m"),
            Figures.of(comparison.second().woofer().forceFactorTm(), "T m")));
    return new Document.Table(
        List.of("Symbol", "Parameter, free air", first(), second()),
        rows,
        List.of(false, false, true, true));
  }

  /** Returns the shares of one stack at the corners and the band's middle. */
  Document.Table shares(int stack) {
    StackDifference difference = comparison.difference().stacks().get(stack);
    double low = spec.target().lowCornerHz();
    double high = spec.highestCornerHz();
    List<Integer> at =
        List.of(
            nearest(difference, low),
            nearest(difference, Math.sqrt(low * high)),
            nearest(difference, high));
    List<List<String>> rows = new ArrayList<>();
    double[] sums = new double[at.size()];
    for (ParameterGroup group : ParameterGroup.values()) {
      List<String> row = new ArrayList<>(List.of(group.symbol()));
      for (int i = 0; i < at.size(); i++) {
        double share = difference.shareDb(group).at(at.get(i));
        sums[i] += share;
        row.add(signed(share));
      }
      rows.add(row);
    }
    List<String> total = new ArrayList<>(List.of("whole difference"));
    for (double sum : sums) {
      total.add(signed(sum));
    }
    rows.add(total);
    List<String> head = new ArrayList<>(List.of("Share of"));
    at.forEach(f -> head.add("at " + Figures.hertz(difference.frequencyHz().at(f))));
    return new Document.Table(head, rows, List.of(false, true, true, true));
  }

  private static String signed(double decibels) {
    return Math.abs(decibels) < UNSEEN_DB ? "0 dB" : Figures.signedDecibels(decibels);
  }

  private static int nearest(StackDifference difference, double frequencyHz) {
    int nearest = 0;
    for (int f = 1; f < difference.frequencyHz().size(); f++) {
      if (Math.abs(Math.log(difference.frequencyHz().at(f) / frequencyHz))
          < Math.abs(Math.log(difference.frequencyHz().at(nearest) / frequencyHz))) {
        nearest = f;
      }
    }
    return nearest;
  }

  /** Returns the shares in the score's cost. */
  Document.Table scoreShares() {
    WooferDifference difference = comparison.difference();
    List<List<String>> rows = new ArrayList<>();
    double sum = 0;
    for (ParameterGroup group : ParameterGroup.values()) {
      double share = difference.costShareDb(group);
      sum += share;
      rows.add(List.of(group.symbol(), signed(share)));
    }
    rows.add(List.of("whole difference", signed(sum)));
    return new Document.Table(List.of("Share of", "Adds to the cost"), rows, List.of(false, true));
  }

  /** Returns what each parameter does, with its sign and size here. */
  Document.Bullets lessons() {
    List<String> lessons = new ArrayList<>();
    for (ParameterGroup group : ParameterGroup.values()) {
      lessons.add(
          group.symbol()
              + ", from "
              + value(group, comparison.first())
              + " to "
              + value(group, comparison.second())
              + ". "
              + ParameterLesson.of(group)
              + " "
              + size(group));
    }
    return new Document.Bullets(lessons);
  }

  private String size(ParameterGroup group) {
    StackDifference largest = comparison.difference().stacks().get(0);
    for (StackDifference stack : comparison.difference().stacks()) {
      if (Math.abs(stack.shareDb(group).at(stack.largestAt(group)))
          > Math.abs(largest.shareDb(group).at(largest.largestAt(group)))) {
        largest = stack;
      }
    }
    int at = largest.largestAt(group);
    double share = largest.shareDb(group).at(at);
    double cost = comparison.difference().costShareDb(group);
    String inLevel =
        Math.abs(share) < UNSEEN_DB
            ? "Here it changes no response"
            : "Here it adds at most "
                + Figures.signedDecibels(share)
                + ", at "
                + Figures.hertz(largest.frequencyHz().at(at))
                + " in stack "
                + Lettering.clean(largest.stack());
    return inLevel
        + (Math.abs(cost) < UNSEEN_DB
            ? ", and has no part in the score."
            : ", and " + Figures.signedDecibels(cost) + " to the score's cost.");
  }

  /** Returns what network each needs in each stack. */
  Document.Table networks() {
    List<List<String>> rows = new ArrayList<>();
    for (int s = 0; s < spec.stacks().size(); s++) {
      for (StackAssessment stack :
          ComparisonReport.inStack(List.of(comparison.first(), comparison.second()), s)) {
        boolean isFirst = stack.equals(comparison.first().stacks().get(s));
        rows.add(
            List.of(
                Verdict.name(stack),
                isFirst ? first() : second(),
                stack.wiring().inWords(),
                NetworkWords.shortly(stack.network()),
                Figures.decibels(stack.figures().correctionDb()),
                Figures.decibels(stack.figures().levelLossDb()),
                Figures.signedDecibels(stack.figures().meanDeviationDb()),
                Figures.signedDecibels(stack.figures().outputMarginDb())));
      }
    }
    return new Document.Table(
        List.of(
            "Stack",
            "Woofer",
            "Wiring",
            "Network",
            "Correction needed",
            "Level it costs",
            "Level against target",
            "Loudest-level margin"),
        rows,
        List.of(false, false, false, true, true, true, true, true));
  }
}

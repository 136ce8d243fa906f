package nullplane.report;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import nullplane.scoring.Assessment;
import nullplane.scoring.StackAssessment;
import nullplane.scoring.StackFigures;

/** What a woofer does in each stack, as tables. */
final class StackTables {
  private static final List<String> PRICE =
      List.of(
          "Stack",
          "Correction needed",
          "Lift lacking at the low corner",
          "Bend by the network",
          "Level lost in it",
          "Parts",
          "Copper",
          "Capacitors");

  private final Assessment woofer;

  StackTables(Assessment woofer) {
    this.woofer = woofer;
  }

  List<Document.Block> blocks() {
    return List.of(
        new Document.Heading(3, "Wiring, network and level"),
        table(
            List.of(
                "Stack",
                "Wiring",
                "Network",
                "Level deviation, rms",
                "Mean",
                "Gain needed",
                "Furthest outside the corridor"),
            stack -> {
              StackFigures figures = stack.figures();
              return List.of(
                  stack.wiring().inWords(),
                  NetworkWords.fully(stack.network()),
                  Figures.decibels(figures.rmsDeviationDb()),
                  Figures.signedDecibels(figures.meanDeviationDb()),
                  Figures.signedDecibels(-figures.meanDeviationDb()),
                  figures.worstExcessDb() > 0
                      ? Figures.decibels(figures.worstExcessDb())
                          + " at "
                          + Figures.hertz(figures.worstExcessHz())
                      : "inside everywhere");
            },
            3),
        new Document.Paragraph(
            "Deviation is level minus target at the listening point, between the corners. Gain"
                + " needed is what the woofer channel must add (above 0 dB) or pad (below 0 dB) to"
                + " meet the main driver on average."),
        new Document.Heading(3, "Loudness and load"),
        table(
            List.of(
                "Stack",
                "Loudest-level margin",
                "at",
                "Binding limit",
                "Travel used at the target's voltage",
                "Least load",
                "at"),
            stack -> {
              StackFigures figures = stack.figures();
              return List.of(
                  Figures.signedDecibels(figures.outputMarginDb()),
                  Figures.hertz(figures.outputMarginHz()),
                  figures.outputLimit().word(),
                  Figures.percent(figures.travelShare()),
                  Figures.ohms(figures.leastLoadOhm()),
                  Figures.hertz(figures.leastLoadHz()));
            },
            1),
        new Document.Heading(3, "The price of correction"),
        price(woofer),
        new Document.Paragraph(
            "Correction needed is what the bare stack's level strays over the band, greatest against"
                + " least; a woofer made for its panel needs little. The network bends the level by as"
                + " much as pays, and takes level, copper and capacitors for it."),
        new Document.Heading(3, "On the panel and in free air"),
        table(
            List.of(
                "Stack",
                "fs on the panel",
                "against free air",
                "Qts on the panel",
                "against free air"),
            stack -> {
              StackFigures figures = stack.figures();
              double fs = woofer.freeAir().resonanceHz();
              double qts = woofer.freeAir().totalQ();
              return List.of(
                  Figures.hertz(figures.panelResonanceHz()),
                  signedPercent(figures.panelResonanceHz() / fs - 1),
                  Figures.number(figures.panelTotalQ()),
                  signedPercent(figures.panelTotalQ() / qts - 1));
            },
            1),
        new Document.Paragraph(
            "Free air reads fs "
                + Figures.hertz(woofer.freeAir().resonanceHz())
                + " and Qts "
                + Figures.number(woofer.freeAir().totalQ())
                + ". The difference is the air that the panel and the neighbouring woofers make the"
                + " cone carry; Qts on the panel also holds the resistance in series."));
  }

  /** Returns what correction a woofer needs in each stack, and what its networks pay for it. */
  static Document.Table price(Assessment woofer) {
    return new StackTables(woofer).table(PRICE, StackTables::price, 1);
  }

  /**
   * Returns the same with another woofer beside it.
   *
   * @param woofer the woofer
   * @param best the best that could be built, if it is known
   */
  static Document.Table price(Assessment woofer, Optional<Assessment> best) {
    if (best.isEmpty()) {
      return price(woofer);
    }
    List<String> head = new ArrayList<>(PRICE);
    head.add(1, "Woofer");
    List<List<String>> rows = new ArrayList<>();
    for (int s = 0; s < woofer.stacks().size(); s++) {
      rows.add(named(woofer.stacks().get(s), Lettering.clean(woofer.woofer().name())));
      rows.add(named(best.get().stacks().get(s), "best buildable"));
    }
    List<Boolean> numeric = new ArrayList<>(Collections.nCopies(head.size(), true));
    numeric.set(0, false);
    numeric.set(1, false);
    return new Document.Table(head, rows, numeric);
  }

  private static List<String> named(StackAssessment stack, String woofer) {
    List<String> row = new ArrayList<>(List.of(Verdict.name(stack), woofer));
    row.addAll(price(stack));
    return row;
  }

  private static List<String> price(StackAssessment stack) {
    StackFigures figures = stack.figures();
    return List.of(
        Figures.decibels(figures.correctionDb()),
        Figures.signedDecibels(figures.lowCornerLiftDb()),
        Figures.decibels(figures.networkBendDb()),
        Figures.decibels(figures.levelLossDb()),
        Integer.toString(stack.network().partCount()),
        Figures.grams(stack.network().copperKg()),
        Figures.of(stack.network().capacitanceF() * 1e6, "uF"));
  }

  private static String signedPercent(double share) {
    return (share > 0 ? "+" : "") + Figures.percent(share);
  }

  private Document.Table table(
      List<String> head, Function<StackAssessment, List<String>> cells, int firstNumeric) {
    List<List<String>> rows = new ArrayList<>();
    for (StackAssessment stack : woofer.stacks()) {
      List<String> row = new ArrayList<>();
      row.add(Verdict.name(stack));
      row.addAll(cells.apply(stack));
      rows.add(row);
    }
    List<Boolean> numeric = new ArrayList<>(Collections.nCopies(head.size(), true));
    for (int i = 0; i < firstNumeric; i++) {
      numeric.set(i, false);
    }
    return new Document.Table(head, rows, numeric);
  }
}

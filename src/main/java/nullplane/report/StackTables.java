package nullplane.report;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.function.Function;
import nullplane.scoring.Assessment;
import nullplane.scoring.StackAssessment;
import nullplane.scoring.StackFigures;

/** What a woofer does in each stack, as tables. */
final class StackTables {
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
        new Document.Heading(3, "Correction"),
        table(
            List.of(
                "Stack",
                "Correction needed",
                "Lift lacking at the low corner",
                "Bend by the network",
                "Level lost in the network"),
            stack -> {
              StackFigures figures = stack.figures();
              return List.of(
                  Figures.decibels(figures.correctionDb()),
                  Figures.signedDecibels(figures.lowCornerLiftDb()),
                  Figures.decibels(figures.networkBendDb()),
                  Figures.decibels(figures.levelLossDb()));
            },
            1),
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

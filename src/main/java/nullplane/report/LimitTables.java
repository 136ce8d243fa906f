package nullplane.report;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.BiFunction;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import nullplane.driver.TravelCriteria;
import nullplane.scoring.Assessment;
import nullplane.scoring.LimitStudy;
import nullplane.scoring.LimitStudy.HeatState;
import nullplane.scoring.LimitStudy.ProgrammeLevel;
import nullplane.scoring.LimitStudy.SubsonicDemand;
import nullplane.scoring.StackAssessment;

/** What holds a woofer back in each stack: heat, amplifier, signals below the band, programme. */
final class LimitTables {
  private static final double ROOM_CELSIUS = 20;

  /** What a Butterworth high-pass takes at its own corner (dB). */
  private static final double HALF_POWER_DB = 10 * Math.log10(2);

  private final List<StackAssessment> stacks;

  LimitTables(Assessment woofer) {
    stacks = woofer.stacks().stream().filter(stack -> stack.limits().isPresent()).toList();
  }

  /** Returns the tables; none if no stack has its limits worked out. */
  List<Document.Block> blocks() {
    if (stacks.isEmpty()) {
      return List.of();
    }
    LimitStudy first = stacks.get(0).limits().orElseThrow();
    List<Document.Block> blocks = new ArrayList<>();
    heat(blocks, first);
    amplifier(blocks);
    subsonic(blocks);
    programme(blocks, first);
    travel(blocks, first.travel());
    return blocks;
  }

  private void heat(List<Document.Block> blocks, LimitStudy first) {
    blocks.add(new Document.Heading(3, "Heat"));
    blocks.add(
        table(
            List.of(
                "Stack",
                "Level lost at rated power, mean of the band",
                "at the low corner",
                "Low corner against the mean",
                "Qts on the panel, cold",
                "hot"),
            (stack, limits) -> {
              HeatState hot = limits.rated();
              return List.of(
                  Figures.decibels(hot.bandLossDb()),
                  Figures.decibels(hot.lowCornerLossDb()),
                  Figures.signedDecibels(hot.lowCornerGrowthDb()),
                  Figures.number(limits.cold().panelTotalQ()),
                  Figures.number(hot.panelTotalQ()));
            }));
    blocks.add(
        new Document.Paragraph(
            "At rated power, "
                + Figures.of(first.rated().heatW(), "W")
                + " of heat in the long term, the voice coil is taken to settle at "
                + celsius(first.limitRiseK())
                + " in a room of "
                + celsius(0)
                + " (common practice, to be confirmed by the maker), which is "
                + Figures.of(first.thermalResistanceKPerW(), "K/W")
                + ". Re is then "
                + Figures.ohms(first.rated().resistanceOhm())
                + "; above all resonances that alone costs "
                + Figures.decibels(first.rated().levelLossDb())
                + " at constant voltage. A hot voice coil brakes less, so Q rises and the low end loses"
                + " less than the rest. The heat limit of the loudest level counts cold voice coils."));
  }

  private void amplifier(List<Document.Block> blocks) {
    blocks.add(new Document.Heading(3, "Amplifier"));
    blocks.add(
        table(
            List.of(
                "Stack",
                "Least load over the lowest allowed",
                "Resistance at direct current",
                "Rated impedance",
                "Peak current at full voltage",
                "Voltage margin"),
            (stack, limits) ->
                List.of(
                    Figures.percent(limits.load().loadShare()),
                    Figures.ohms(limits.load().directCurrentOhm()),
                    rated(limits.load().ratedClassOhm()),
                    Figures.of(limits.load().peakCurrentA(), "A"),
                    Figures.signedDecibels(limits.load().voltageMarginDb()))));
    blocks.add(
        new Document.Paragraph(
            "Rated impedance: the highest usual value that the least load is at least 80 % of (IEC"
                + " 60268-5). Voltage margin: the amplifier's voltage over what the loudest level"
                + " asked for needs where the band needs most."));
  }

  private static String rated(OptionalDouble ratedOhm) {
    return ratedOhm.isPresent() ? Figures.ohms(ratedOhm.getAsDouble()) : "below 2 ohm";
  }

  private void subsonic(List<Document.Block> blocks) {
    blocks.add(new Document.Heading(3, "Signals below the band"));
    blocks.add(new Document.Paragraph(protection()));
    blocks.add(
        table(
            List.of(
                "Stack",
                "Full voltage: past the travel below",
                "Most travel used",
                "High-pass that holds it",
                "Voltage that the band allows",
                "High-pass that holds that"),
            (stack, limits) -> {
              SubsonicDemand full = limits.fullVoltage();
              SubsonicDemand band = limits.bandVoltage();
              return List.of(
                  full.beyondTravelBelowHz().isPresent()
                      ? Figures.hertz(full.beyondTravelBelowHz().getAsDouble())
                      : "nowhere",
                  Figures.percent(full.greatestShare()) + " at " + Figures.hertz(full.greatestHz()),
                  corner(full),
                  Figures.of(band.voltageV(), "V"),
                  corner(band));
            }));
    blocks.add(
        new Document.Paragraph(
            "For a sine from 5 Hz to the low corner, and a second-order Butterworth high-pass ahead"
                + " of the amplifier; the lowest corner that keeps every cone within its travel, and what it costs at the low corner. The"
                + " voltage that the band allows is that at which a sine inside the band uses the"
                + " whole travel, or the amplifier's if that is less. A panel that is open at the"
                + " back has no air spring: below its resonance only the suspension holds the"
                + " cone."));
  }

  private static String corner(SubsonicDemand demand) {
    return demand.highPassHz().isPresent()
        ? Figures.hertz(demand.highPassHz().getAsDouble())
            + (demand.lowCornerLossDb() > HALF_POWER_DB ? ", inside the band; costs " : ", costs ")
            + Figures.decibels(demand.lowCornerLossDb())
        : "none needed";
  }

  /** Says whether the cones need protection from signals below the band. */
  private String protection() {
    String byProgramme =
        names(limits -> limits.programmes().stream().anyMatch(p -> p.highPassHz().orElse(1) > 0));
    String bySine = names(limits -> limits.fullVoltage().protectionNeeded());
    if (!byProgramme.isEmpty()) {
      return "Protection below the band is needed: at the amplifier's full voltage a musical"
          + " programme drives the cones past their travel in "
          + byProgramme
          + ". Put a high-pass ahead of the amplifier, or turn down.";
    }
    if (!bySine.isEmpty()) {
      return "A musical programme of the spectrum stated below needs no protection under the band. A"
          + " steady tone there at the"
          + " amplifier's full voltage drives the cones past their travel in "
          + bySine
          + ": where test tones, synthesised bass or faults of the source may come, put a high-pass"
          + " ahead of the amplifier.";
    }
    return "Protection below the band is not needed: the amplifier's full voltage cannot drive a"
        + " cone past its travel there.";
  }

  private String names(Predicate<LimitStudy> holds) {
    return stacks.stream()
        .filter(stack -> holds.test(stack.limits().orElseThrow()))
        .map(Verdict::name)
        .collect(Collectors.joining(", "));
  }

  private void programme(List<Document.Block> blocks, LimitStudy first) {
    blocks.add(new Document.Heading(3, "Programme"));
    List<List<String>> rows = new ArrayList<>();
    for (StackAssessment stack : stacks) {
      for (ProgrammeLevel programme : stack.limits().orElseThrow().programmes()) {
        rows.add(
            List.of(
                Verdict.name(stack),
                Figures.number(programme.crestFactor()),
                Figures.decibels(programme.wholeDb()),
                Figures.decibels(programme.wooferBandDb()),
                programme.binding().word() + " at " + Figures.of(programme.voltageV(), "V"),
                celsius(programme.settled().riseK()),
                celsius(programme.atFullVoltage().riseK()),
                programmeCorner(programme)));
      }
    }
    List<Boolean> numeric = new ArrayList<>(Collections.nCopies(8, true));
    numeric.set(0, false);
    numeric.set(4, false);
    blocks.add(
        new Document.Table(
            List.of(
                "Stack",
                "Crest factor",
                "Level of the whole programme",
                "of it below the upper corner",
                "Binding limit",
                "Voice coil settles at",
                "at the amplifier's full voltage",
                "High-pass needed there"),
            rows,
            numeric));
    blocks.add(
        new Document.Paragraph(
            "Level at the listening point before a limit binds. Spectrum: the simulated programme"
                + " of IEC 60268-1, its values recalled from memory, with the crest factor "
                + Figures.number(first.programmes().get(0).crestFactor())
                + " of test noise and, as common practice, a higher one for music. A piece with more"
                + " below the band than this spectrum moves the cones further. One amplifier"
                + " carries all of it; above the upper corner a main driver keeps the level asked"
                + " for. A cone's peak is the crest factor times its root-mean-square excursion."
                + " Temperatures are those of the steady state."));
  }

  private static String programmeCorner(ProgrammeLevel programme) {
    OptionalDouble corner = programme.highPassHz();
    if (corner.isEmpty()) {
      return "none is enough; turn down by "
          + Figures.decibels(20 * Math.log10(programme.excursionShare()));
    }
    return corner.getAsDouble() > 0 ? Figures.hertz(corner.getAsDouble()) : "no";
  }

  private static void travel(List<Document.Block> blocks, TravelCriteria travel) {
    blocks.add(new Document.Heading(3, "Travel by criterion"));
    blocks.add(
        new Document.Table(
            List.of("Criterion", "Travel, one way", "Standing"),
            List.of(
                List.of(
                    "geometric, (winding height - gap height)/2",
                    Figures.millimetres(travel.geometricM()),
                    "computed; the limit used throughout"),
                List.of(
                    "Bl at 82 % of its value at rest",
                    Figures.millimetres(travel.forceFactorM()),
                    "estimate for a uniform gap without fringe field; to be measured"),
                List.of(
                    "compliance at 75 % of its value at rest",
                    Figures.NOT_DETERMINED, "wish: not less than the geometric travel"),
                List.of(
                    "10 % distortion",
                    Figures.NOT_DETERMINED, "wish: not less than the geometric travel")),
            List.of(false, true, false)));
    blocks.add(
        new Document.Paragraph(
            "Large-signal criteria as in IEC 62458; state the criterion beside every travel."));
  }

  private static String celsius(double riseK) {
    return Figures.of(ROOM_CELSIUS + riseK, "\u00b0C");
  }

  private Document.Table table(
      List<String> head, BiFunction<StackAssessment, LimitStudy, List<String>> cells) {
    List<List<String>> rows = new ArrayList<>();
    for (StackAssessment stack : stacks) {
      List<String> row = new ArrayList<>();
      row.add(Verdict.name(stack));
      row.addAll(cells.apply(stack, stack.limits().orElseThrow()));
      rows.add(row);
    }
    List<Boolean> numeric = new ArrayList<>(Collections.nCopies(head.size(), true));
    numeric.set(0, false);
    return new Document.Table(head, rows, numeric);
  }
}

package nullplane.report;

import java.util.ArrayList;
import java.util.List;
import nullplane.acoustics.Piston;
import nullplane.network.RatedPart;
import nullplane.scoring.Assessment;
import nullplane.scoring.DesignSpec;
import nullplane.scoring.StackAssessment;
import nullplane.scoring.StackBrief;
import nullplane.scoring.StackCurves;
import nullplane.scoring.StackRatings;
import nullplane.units.AWeighting;
import nullplane.units.Air;
import nullplane.units.Curve;

/** What the model leaves out, and what can do harm: said where the figures call for it. */
final class Cautions {
  /** ka up to which a stiff cone may be taken for a flat piston; common practice. */
  private static final double PISTON_KA = 1.5;

  /** Up to here A-weighting only takes off. */
  private static final double FLAT_HZ = 1000;

  private static final double ROOM_CELSIUS = 20;

  private final DesignSpec spec;
  private final Assessment woofer;

  Cautions(DesignSpec spec, Assessment woofer) {
    this.spec = spec;
    this.woofer = woofer;
  }

  /** Returns the frequency at which ka of a single cone reaches 1.5 (Hz). */
  double pistonLimitHz() {
    return pistonLimitHz(woofer.woofer().radiusM());
  }

  /** Returns the frequency at which ka of a cone reaches 1.5 (Hz), from its radius (m). */
  static double pistonLimitHz(double radiusM) {
    return PISTON_KA * Air.standard().speedOfSoundMPerS() / (2 * Math.PI * radiusM);
  }

  /** Returns what the model leaves out. */
  List<String> model() {
    List<String> sentences = new ArrayList<>(panelModel(pistonLimitHz(), spec.highestCornerHz()));
    sentences.add(
        "Suspension, force factor and inductance are those of small signals; the limits are"
            + " excursion, heat and amplifier voltage.");
    return sentences;
  }

  /**
   * Returns what the model of the panel leaves out.
   *
   * @param limitHz where ka of a single cone reaches 1.5 (Hz)
   * @param upperHz the upper end of the band asked for (Hz)
   */
  static List<String> panelModel(double limitHz, double upperHz) {
    return List.of(
        "The cone is a flat, stiff piston: break-up and cone depth are left out. Trust the curves"
            + " below about ka = 1.5 of a single cone, which is "
            + Figures.hertz(limitHz)
            + " here"
            + (limitHz < upperHz
                ? "; the band asked for ends above it, at " + Figures.hertz(upperHz)
                : "")
            + ".",
        "The panel is modelled as rigid: flexing and its resonances are left out.",
        "The panel has no thickness, and the cavity between basket and panel is left out.",
        "Losses in air, room walls and furniture are left out; only the floor is there where the"
            + " spec gives a clearance.");
  }

  /** Returns the cautions: what the figures call for, then what always holds. */
  List<String> sentences() {
    List<String> cautions = new ArrayList<>();
    hearing(cautions);
    load(cautions);
    hotParts(cautions);
    hotVoiceCoils(cautions);
    StabilityCaution.of(stacks(), woofer.woofer(), woofer.motor()).ifPresent(cautions::add);
    frames(cautions);
    cautions.add(magnets());
    cautions.add(
        "Amplifiers and test benches run on mains: work on them is for people licensed for it, and"
            + " local codes come before this sheet.");
    cautions.add(
        "A simulation does not replace a measured sample: order samples, measure them in the"
            + " conditions stated, and listen, before a series is made.");
    return cautions;
  }

  private List<StackBrief> stacks() {
    return woofer.stacks().stream().map(StackAssessment::brief).toList();
  }

  private String magnets() {
    int most = woofer.stacks().stream().mapToInt(s -> s.brief().pistons().size()).max().orElse(0);
    return "Magnets: they pull tools and crush fingers; keep pacemakers and data carriers away. "
        + woofer
            .motor()
            .map(
                motor ->
                    "That of one woofer, "
                        + motor.magnet().word()
                        + ", weighs about "
                        + Figures.of(motor.magnetMassKg(), "kg")
                        + " without its steel")
            .orElse("What that of one woofer weighs is " + Figures.NOT_DETERMINED + " here")
        + "; up to "
        + most
        + (most == 1 ? " sits" : " sit")
        + " on one panel. Fasten the baskets to hold them.";
  }

  private void hearing(List<String> cautions) {
    double loudest = 0;
    double atHz = 0;
    StackAssessment where = woofer.stacks().get(0);
    for (StackAssessment stack : woofer.stacks()) {
      Curve frequency = stack.curves().frequencyHz();
      for (int i = 0; i < frequency.size(); i++) {
        double level = stack.curves().loudestDb().at(i);
        if (frequency.at(i) <= FLAT_HZ && level > loudest) {
          loudest = level;
          atHz = frequency.at(i);
          where = stack;
        }
      }
    }
    if (loudest > NoiseExposure.LEAST_DB) {
      cautions.add(
          "Hearing: "
              + Verdict.stack(where)
              + " reaches "
              + Figures.decibels(loudest)
              + " at "
              + Figures.hertz(atHz)
              + ", a sine without weighting at the listening point; A-weighting (IEC 61672-1) takes"
              + " off "
              + Figures.decibels(-AWeighting.atDb(atHz))
              + " there, so that the times here err on the safe side. Rules allow at this level"
              + (loudest > NoiseExposure.WORKING_DAY_DB
                  ? " at work (NIOSH 98-126: 85 dB(A) for 8 h, 3 dB for half the time) "
                      + duration(NoiseExposure.minutesPerDay(loudest))
                      + " a day;"
                  : "")
              + " for pleasure (ITU-T H.870, from memory: 80 dB(A) for 40 h, children 75) "
              + duration(NoiseExposure.minutesPerWeek(loudest, NoiseExposure.ADULTS_PA2H))
              + " a week, children "
              + duration(NoiseExposure.minutesPerWeek(loudest, NoiseExposure.CHILDREN_PA2H))
              + ". More speakers are louder. Protect ears while testing.");
    }
  }

  private static String duration(double minutes) {
    return minutes >= 60
        ? Figures.of(minutes / 60, "h")
        : minutes >= 1 ? Figures.of(minutes, "min") : Figures.of(minutes * 60, "s");
  }

  private void load(List<String> cautions) {
    double lowest = spec.amplifier().lowestLoadOhm();
    for (StackAssessment stack : woofer.stacks()) {
      double load = stack.figures().leastLoadOhm();
      if (load < 1.1 * lowest) {
        cautions.add(
            "Amplifier: "
                + Verdict.stack(stack)
                + " loads it with "
                + Figures.ohms(load)
                + " at "
                + Figures.hertz(stack.figures().leastLoadHz())
                + (load < lowest ? ", below" : ", less than 10 % above")
                + " its lowest load of "
                + Figures.ohms(lowest)
                + ". Coil tolerance and parallel speakers come on top; its maker's word counts.");
      }
    }
  }

  /** The part that turns most into heat, as the sheet's tables of parts state it. */
  private void hotParts(List<String> cautions) {
    double hottestW = 0;
    String part = "";
    StackAssessment where = woofer.stacks().get(0);
    for (StackAssessment stack : woofer.stacks()) {
      for (RatedPart rated : StackRatings.of(spec.amplifier(), stack).parts()) {
        if (rated.rating().powerW() > hottestW) {
          hottestW = rated.rating().powerW();
          part = rated.place().label();
          where = stack;
        }
      }
    }
    if (hottestW >= 1) {
      cautions.add(
          "Heat: the "
              + part
              + " of "
              + Verdict.stack(where)
              + " turns up to "
              + Figures.of(hottestW, "W")
              + " into heat in a lasting sine, the most of all parts. Mount coils and resistors in"
              + " free air, away from plastics.");
    }
  }

  /** Voice coils that the amplifier can heat beyond their rating. */
  private void hotVoiceCoils(List<String> cautions) {
    double mostDb = 0;
    double atHz = 0;
    StackAssessment where = woofer.stacks().get(0);
    for (StackAssessment stack : woofer.stacks()) {
      StackCurves curves = stack.curves();
      for (int i = 0; i < curves.frequencyHz().size(); i++) {
        double beyondDb = curves.amplifierLimitDb().at(i) - curves.heatLimitDb().at(i);
        if (beyondDb > mostDb) {
          mostDb = beyondDb;
          atHz = curves.frequencyHz().at(i);
          where = stack;
        }
      }
    }
    double times = Math.pow(10, mostDb / 10);
    if (times >= 1.01) {
      cautions.add(
          "Heat: the amplifier can put "
              + Figures.number(times)
              + " times the rated power into a voice coil of "
              + Verdict.stack(where)
              + " with a lasting sine at "
              + Figures.hertz(atHz)
              + where
                  .limits()
                  .map(
                      limits ->
                          "; rated power alone brings it to about "
                              + Figures.of(ROOM_CELSIUS + limits.rated().riseK(), "\u00b0C"))
                  .orElse("")
              + ". Limit what it is fed: coils that char can burn.");
    }
  }

  /** Frames that miss each other by less than this count as touching (m). */
  private static final double TOUCH_M = 1e-6;

  /** Frames are wider than pistons; what the sound allows may not fit. */
  private void frames(List<String> cautions) {
    for (StackAssessment stack : woofer.stacks()) {
      double frame = woofer.woofer().nominalM();
      double rim = Double.POSITIVE_INFINITY;
      double apart = Double.POSITIVE_INFINITY;
      List<Piston> pistons = stack.brief().pistons();
      for (int i = 0; i < pistons.size(); i++) {
        Piston one = pistons.get(i);
        rim = Math.min(rim, stack.brief().panel().outline().distanceToRim(one.xM(), one.yM()));
        for (int j = 0; j < i; j++) {
          Piston other = pistons.get(j);
          apart = Math.min(apart, Math.hypot(one.xM() - other.xM(), one.yM() - other.yM()));
        }
      }
      if (apart < frame - TOUCH_M || rim < frame / 2 - TOUCH_M) {
        cautions.add(
            "Fit: in "
                + Verdict.stack(stack)
                + " frames of "
                + Figures.millimetres(frame)
                + (apart < frame - TOUCH_M ? " overlap each other" : " reach over the rim")
                + "; the pistons do not. Check the frame's real size before cutting.");
      }
    }
  }
}

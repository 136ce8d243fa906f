package nullplane.report;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import nullplane.acoustics.Piston;
import nullplane.scoring.Assessment;
import nullplane.scoring.DesignSpec;
import nullplane.scoring.StackAssessment;
import nullplane.units.Air;
import nullplane.units.Curve;

/** What the model leaves out, and what can do harm: said where the figures call for it. */
final class Cautions {
  /**
   * Level and time of the exposure rule. Source: NIOSH Publication 98-126 (1998), criteria for
   * occupational noise exposure: 85 dB(A) over 8 h, 3 dB for half the time.
   */
  private static final double EXPOSURE_DB = 85;

  private static final double EXPOSURE_MIN = 480;
  private static final double EXCHANGE_DB = 3;
  private static final double TALL_M = 1.0;

  /** ka up to which a stiff cone may be taken for a flat piston; common practice. */
  private static final double PISTON_KA = 1.5;

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

  /** Returns the cautions; the short ones that fit a terminal first carry the figures. */
  List<String> sentences() {
    List<String> cautions = new ArrayList<>();
    hearing(cautions);
    load(cautions);
    hotCoils(cautions);
    tall(cautions);
    frames(cautions);
    cautions.add(
        "Heavy magnets pull tools and fingers and load the panel: "
            + mostWoofers()
            + (mostWoofers() == 1 ? " woofer sits" : " woofers sit")
            + " on the largest panel; the magnet of one weighs "
            + woofer
                .motor()
                .map(
                    motor ->
                        "about " + Figures.of(motor.magnetMassKg(), "kg") + " without its steel")
                .orElse("what is " + Figures.NOT_DETERMINED + " here")
            + ". Fasten the baskets to hold it.");
    cautions.add(
        "Amplifiers and test benches run on mains: work on them is for people licensed for it, and"
            + " local codes come before this sheet.");
    cautions.add(
        "A simulation does not replace a measured sample: order samples, measure them in the"
            + " conditions stated, and listen, before a series is made.");
    return cautions;
  }

  /** Returns the longest time per day at a level, in minutes. */
  static double minutesAt(double levelDb) {
    return EXPOSURE_MIN * Math.pow(2, -(levelDb - EXPOSURE_DB) / EXCHANGE_DB);
  }

  private void hearing(List<String> cautions) {
    double loudest = 0;
    double atHz = 0;
    StackAssessment where = woofer.stacks().get(0);
    for (StackAssessment stack : woofer.stacks()) {
      Curve frequency = stack.curves().frequencyHz();
      for (int i = 0; i < frequency.size(); i++) {
        double level = stack.curves().loudestDb().at(i);
        boolean inBand =
            frequency.at(i) >= spec.target().lowCornerHz()
                && frequency.at(i) <= spec.upperCornerHz(stack.brief());
        if (inBand && level > loudest) {
          loudest = level;
          atHz = frequency.at(i);
          where = stack;
        }
      }
    }
    if (loudest > EXPOSURE_DB) {
      cautions.add(
          "Hearing: "
              + Verdict.stack(where)
              + " reaches "
              + Figures.decibels(loudest)
              + " at "
              + Figures.hertz(atHz)
              + " at the listening point. Exposure rules allow 85 dB(A) for 8 h and half the time"
              + " for every 3 dB more; at this level, taken as dB(A), "
              + duration(minutesAt(loudest))
              + " a day. Protect ears while testing.");
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
                + ". Coil tolerance and parallel speakers come on top.");
      }
    }
  }

  private void hotCoils(List<String> cautions) {
    double hottestW = 0;
    StackAssessment where = woofer.stacks().get(0);
    for (StackAssessment stack : woofer.stacks()) {
      double current = spec.amplifier().voltageV() / stack.figures().leastLoadOhm();
      double heatW = current * current * stack.coil().resistanceOhm();
      if (heatW > hottestW) {
        hottestW = heatW;
        where = stack;
      }
    }
    if (hottestW >= 1) {
      cautions.add(
          "Heat: the series coil of "
              + Verdict.stack(where)
              + " turns up to "
              + Figures.of(hottestW, "W")
              + " into heat at "
              + Figures.of(spec.amplifier().voltageV(), "V")
              + " and the least load, the most of all stacks. Mount coils in free air, away from"
              + " plastics; voice coils get hotter still.");
    }
  }

  /** Frames that miss each other by less than this count as touching (m). */
  private static final double TOUCH_M = 1e-6;

  private void tall(List<String> cautions) {
    List<StackAssessment> tall =
        woofer.stacks().stream()
            .filter(s -> s.brief().panel().outline().heightM() >= TALL_M)
            .toList();
    if (!tall.isEmpty()) {
      cautions.add(
          "Stability: tall panels tip: "
              + tall.stream()
                  .map(
                      s ->
                          Verdict.stack(s)
                              + " is "
                              + Figures.metres(s.brief().panel().outline().heightM())
                              + " tall and "
                              + Figures.metres(s.brief().panel().outline().widthM())
                              + " wide")
                  .collect(Collectors.joining("; "))
              + ". With the centre of gravity at half its height, the tallest needs a foot that reaches "
              + Figures.millimetres(tallestFootM(tall))
              + " to the front and to the rear to stand a tilt by 10 degrees (IEC 62368-1), more with"
              + " woofers placed high. Fix panels to a wall or give them a wide, heavy foot.");
    }
  }

  private static double tallestFootM(List<StackAssessment> tall) {
    return tall.stream()
        .map(s -> s.brief().panel())
        .mapToDouble(
            panel ->
                PanelStability.halfBaseForTiltM(
                    panel.clearanceM().orElse(0) + panel.outline().heightM() / 2))
        .max()
        .orElse(0);
  }

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

  private int mostWoofers() {
    return woofer.stacks().stream().mapToInt(s -> s.brief().pistons().size()).max().orElse(0);
  }
}

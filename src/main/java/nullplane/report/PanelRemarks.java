package nullplane.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import nullplane.acoustics.Panel;
import nullplane.scoring.DesignSpec;
import nullplane.scoring.PanelStudy;
import nullplane.units.Curve;
import nullplane.units.Levels;

/** What there is to see in the pictures of a panel, in sentences with the panel's own figures. */
final class PanelRemarks {
  private static final double FLOOR_HZ = 50;
  private static final double LARGE_ERROR = 0.01;

  private final DesignSpec spec;
  private final StudyCurves curves;
  private final PanelStudy study;

  PanelRemarks(DesignSpec spec, StudyCurves curves) {
    this.spec = spec;
    this.curves = curves;
    study = curves.study();
  }

  /** Returns the sentences to a picture. */
  String of(StudyCharts.Kind kind) {
    return switch (kind) {
      case DRAWING -> drawing();
      case MASS -> mass();
      case PATH -> path();
      case ON_AXIS -> onAxis();
      case POLARS -> polars();
      case MAP -> map();
      case LISTENING -> listening();
    };
  }

  private String drawing() {
    Panel panel = study.brief().panel();
    int count = study.brief().pistons().size();
    double above = study.ear().yM();
    return "The panel is "
        + PanelDrawing.centimetres(panel.outline().widthM())
        + " wide and "
        + PanelDrawing.centimetres(panel.outline().heightM())
        + " high"
        + (study.overFloor()
            ? ", " + PanelDrawing.centimetres(panel.clearanceM().orElse(0)) + " above the floor"
            : ", in free space")
        + ", with "
        + count
        + (count == 1 ? " piston" : " pistons")
        + " of "
        + PanelDrawing.centimetres(2 * study.brief().pistons().get(0).radiusM())
        + " diameter. The ear is "
        + PanelDrawing.centimetres(spec.listening().distanceM())
        + " away, "
        + PanelDrawing.centimetres(Math.abs(above))
        + (above < 0 ? " below" : " above")
        + " the panel's centre.";
  }

  /** Returns the lowest frequency of the pictures (Hz). */
  double lowestHz() {
    return curves.frequencyHz().at(0);
  }

  /** Returns the least added mass of the woofers at the lowest frequency (g). */
  double leastMassG() {
    return study.figures(curves.indices().get(0)).addedMassKg().stream().min().orElse(0) * 1e3;
  }

  /** Returns the greatest added mass of the woofers at the lowest frequency (g). */
  double greatestMassG() {
    return study.figures(curves.indices().get(0)).addedMassKg().stream().max().orElse(0) * 1e3;
  }

  /** Returns the added mass of the woofers at the lowest frequency, "9.1" or "8.9 to 9.4" (g). */
  String masses() {
    String least = Figures.number(leastMassG());
    String greatest = Figures.number(greatestMassG());
    return least.equals(greatest) ? least : least + " to " + greatest;
  }

  private String mass() {
    double mean = curves.meanMassG().at(0);
    return "At "
        + Figures.hertz(lowestHz())
        + " each cone moves "
        + masses()
        + " g of air to and fro: "
        + Figures.number(mean / curves.freeDiscG())
        + " times what a bare disc of its size moves ("
        + Figures.of(curves.freeDiscG(), "g")
        + ") and "
        + Figures.number(mean / curves.endlessWallG())
        + " times what it would move in an endless wall ("
        + Figures.of(curves.endlessWallG(), "g")
        + "). Add it to the bare moving mass to find the resonance on the panel"
        + (study.brief().pistons().size() > 1
            ? "; neighbours that move along load each other."
            : ".");
  }

  private String path() {
    double stands = curves.pathM(false).at(0);
    double free = curves.pathM(true).at(0);
    StringBuilder text = new StringBuilder();
    text.append("At ")
        .append(Figures.hertz(lowestHz()))
        .append(" the panel")
        .append(study.overFloor() ? " without its floor" : "")
        .append(" sounds on the axis like two opposite point sources ")
        .append(Figures.metres(free))
        .append(" apart; its width is ")
        .append(Figures.metres(study.brief().panel().outline().widthM()))
        .append('.');
    if (study.overFloor()) {
      text.append(" Over the floor the length is ")
          .append(Figures.metres(stands))
          .append(
              ": the mirror image doubles the sound, and the floor so near changes the panel's own")
          .append(" length by a factor of ")
          .append(Figures.number(stands / free / 2))
          .append('.');
    }
    return text.append(
            " The curve stays level as long as the length is small against the wavelength.")
        .toString();
  }

  private String onAxis() {
    Curve level = curves.onAxisDb(false);
    StudyCurves.Point peak = curves.highest(level);
    int octave = study.indexOf(1000 * Math.pow(10, -1.4));
    double slope =
        Levels.ofAmplitudeRatio(
            study.figures(octave).onAxisRatio()
                / study.figures(curves.indices().get(0)).onAxisRatio());
    return "Front and back cancel at low frequency: the response is "
        + Figures.decibels(level.at(0))
        + " re a free monopole at "
        + Figures.hertz(lowestHz())
        + " and rises by "
        + Figures.decibels(slope)
        + " in the octave above it. "
        + curves
            .reachesMonopoleHz()
            .map(hertz -> "It draws level with the monopole at " + Figures.hertz(hertz) + ", and ")
            .orElse("It ")
        + "is highest at "
        + Figures.hertz(peak.frequencyHz())
        + " with "
        + Figures.signedDecibels(peak.value())
        + "; "
        + dip()
        + ".";
  }

  /** Returns where the first dip on the axis is, or that there is none. */
  String dip() {
    Optional<StudyCurves.Point> dip = curves.firstDip();
    return dip.map(
            point ->
                "its first dip is at "
                    + Figures.hertz(point.frequencyHz())
                    + ", "
                    + Figures.decibels(point.value())
                    + " below the peak before it")
        .orElse("it has no dip of 3 dB or more up to 1 kHz");
  }

  private double atDeg(boolean vertical, double hertz, double degrees) {
    double[] moduli =
        new ArcField(study, vertical).moduli(new double[] {hertz}, new double[] {0, degrees})[0];
    return Levels.ofAmplitudeRatio(moduli[1] / moduli[0]);
  }

  private String polars() {
    List<Double> shown = PolarChart.FREQUENCIES_HZ;
    double low = shown.get(0);
    double high = shown.get(shown.size() - 1);
    return "At "
        + Figures.hertz(low)
        + " the horizontal pattern is close to a lying eight: "
        + Figures.signedDecibels(atDeg(false, low, 60))
        + " at 60\u00b0 to the side (-6.02 dB for the ideal one) and nothing in the panel's plane."
        + " At "
        + Figures.hertz(high)
        + " it is "
        + Figures.signedDecibels(atDeg(false, high, 60))
        + " at 60\u00b0 to the side and "
        + Figures.signedDecibels(atDeg(true, high, 30))
        + " at 30\u00b0 upwards, both re the axis.";
  }

  private String map() {
    ArcField horizontal = new ArcField(study, false);
    ArcField vertical = new ArcField(study, true);
    return "Bright is loud. At 100 Hz the level is 6 dB below the axis at "
        + degrees(horizontal.widthDeg(100, 6))
        + " to the side and "
        + degrees(vertical.widthDeg(100, 6))
        + " upwards; at 500 Hz at "
        + degrees(horizontal.widthDeg(500, 6))
        + " and "
        + degrees(vertical.widthDeg(500, 6))
        + ". Dark tongues are directions in which parts of the sound cancel.";
  }

  private static String degrees(double angle) {
    return Math.round(angle) + "\u00b0";
  }

  /** Returns what the floor adds at the listening point near 50 Hz (dB). */
  double floorGainDb() {
    return Levels.ofAmplitudeRatio(study.floorRatio(curves.near(FLOOR_HZ)));
  }

  /** Returns the frequency of {@link #floorGainDb} (Hz). */
  double floorGainHz() {
    return study.solution(curves.near(FLOOR_HZ)).frequencyHz();
  }

  private String listening() {
    Curve level = curves.listeningDb(false);
    int at = curves.indices().indexOf(curves.near(FLOOR_HZ));
    String start =
        "With every cone at "
            + Charts.plain(StudyCurves.ACCELERATION_M_PER_S2)
            + " m/s\u00b2 rms the listening point gets "
            + Figures.decibels(level.at(at))
            + " at "
            + Figures.hertz(floorGainHz());
    if (!study.overFloor()) {
      return start + "; the spec has no floor here, so this is the panel in free space.";
    }
    StudyCurves.Point least = curves.lowest(curves.floorGainDb());
    return start
        + ". The floor adds "
        + Figures.signedDecibels(floorGainDb())
        + " there; it helps least at "
        + Figures.hertz(least.frequencyHz())
        + " with "
        + Figures.signedDecibels(least.value())
        + ", where direct and reflected sound meet worst.";
  }

  /** Returns the largest estimated relative error, the free-space solutions included (1). */
  double error() {
    return Math.max(
        study.response().largestEstimatedError(),
        study.freeSpace().map(free -> free.largestEstimatedError()).orElse(0.0));
  }

  /** Returns the frequency at which ka of a single cone reaches 1.5 (Hz). */
  double pistonLimitHz() {
    return Cautions.pistonLimitHz(study.brief().pistons().get(0).radiusM());
  }

  /** Returns the cautions that apply to this panel alone. */
  List<String> cautions() {
    List<String> cautions = new ArrayList<>();
    String name = study.brief().name();
    if (error() > LARGE_ERROR) {
      cautions.add(
          "Accuracy: the estimated error of "
              + name
              + " is "
              + Figures.percent(error())
              + ", above 1 %; take its last digits with care.");
    }
    StabilityCaution.of(study.brief(), spec.woofer().nominalM()).ifPresent(cautions::add);
    return cautions;
  }
}

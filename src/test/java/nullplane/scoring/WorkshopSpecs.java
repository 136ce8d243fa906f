package nullplane.scoring;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import nullplane.acoustics.Panel;
import nullplane.acoustics.PanelResponse;
import nullplane.acoustics.PanelSolver;
import nullplane.acoustics.Piston;
import nullplane.acoustics.PistonSizes;
import nullplane.driver.Mounting;
import nullplane.driver.Woofer;
import nullplane.motor.CoilBrief;
import nullplane.motor.MagnetMaterial;
import nullplane.network.CoilCatalogue;
import nullplane.network.NetworkOffer;
import nullplane.units.Air;
import nullplane.units.ConductorMaterial;
import nullplane.units.Range;

/** Invented panel systems of a small workshop, for tests. */
public final class WorkshopSpecs {
  /** The air of every test. */
  public static final Air AIR = Air.standard();

  private WorkshopSpecs() {}

  /** A brief for 300 mm woofers with wide ranges. */
  public static WooferBrief brief300() {
    return new WooferBrief(
        0.3,
        0.26,
        new Range(20, 45),
        new Range(0.25, 1.5),
        new Range(0.03, 0.11),
        new Range(0.004, 0.014),
        5,
        OptionalDouble.of(0.0009),
        150,
        coil(5.6));
  }

  /** A brief like another, with pinned or narrowed free quantities. */
  public static WooferBrief with(
      WooferBrief brief, Range resonanceHz, Range totalQ, Range massKg, Range travelM) {
    return new WooferBrief(
        brief.nominalM(),
        brief.effectiveDiameterM(),
        resonanceHz,
        totalQ,
        massKg,
        travelM,
        brief.mechanicalQ(),
        brief.statedInductanceH(),
        brief.powerW(),
        brief.coil());
  }

  /** A copper coil of 50 mm in a gap of 8 mm and up to 1 T. */
  public static CoilBrief coil(double resistanceOhm) {
    return new CoilBrief(
        Range.pinned(resistanceOhm),
        CoilBrief.fluxUpTo(1),
        List.of(0.008),
        List.of(0.05),
        List.of(ConductorMaterial.COPPER),
        CoilBrief.USUAL_LAYERS,
        MagnetMaterial.FERRITE);
  }

  /** A woofer of a brief whose winding is not stated: Re and Le exactly as they are asked for. */
  public static Woofer woofer(
      WooferBrief brief, double fs, double qts, double bareMassKg, double travelM) {
    Woofer shell =
        new Woofer(
            "test",
            brief.nominalM(),
            brief.effectiveAreaM2(),
            brief.coil().resistanceOhm().lower(),
            brief.statedInductanceH().orElseThrow(),
            bareMassKg,
            1,
            1,
            1,
            travelM,
            brief.powerW());
    return Woofer.withResonance(shell, fs, brief.mechanicalQ(), qts, Mounting.FREE_AIR, AIR);
  }

  /** The same woofer with another travel and power. */
  public static Woofer limited(Woofer woofer, double travelM, double powerW) {
    return new Woofer(
        woofer.name(),
        woofer.nominalM(),
        woofer.effectiveAreaM2(),
        woofer.resistanceOhm(),
        woofer.inductanceH(),
        woofer.bareMassKg(),
        woofer.stiffnessNPerM(),
        woofer.lossNsPerM(),
        woofer.forceFactorTm(),
        travelM,
        powerW);
  }

  /** The same stack with an upper corner of its own. */
  public static StackBrief withCorner(StackBrief stack, double upperCornerHz) {
    return new StackBrief(
        stack.name(),
        stack.panel(),
        stack.pistons(),
        stack.levelDb(),
        stack.loudestDb(),
        stack.wiring(),
        OptionalDouble.of(upperCornerHz),
        stack.main());
  }

  /** A stack of woofers one above the other on the centre line. */
  public static StackBrief column(
      String name,
      double widthM,
      double heightM,
      double radiusM,
      double levelDb,
      double loudestDb,
      double... centresM) {
    List<Piston> pistons = new ArrayList<>();
    for (double y : centresM) {
      pistons.add(new Piston(0, y, radiusM));
    }
    return new StackBrief(
        name,
        Panel.overFloor(widthM, heightM, 0.04),
        pistons,
        levelDb,
        loudestDb,
        Optional.empty());
  }

  /**
   * A spec of the given woofer and stacks with the hall's listening point, target and amplifier.
   */
  public static DesignSpec spec(WooferBrief brief, StackBrief... stacks) {
    return new DesignSpec(
        "test system",
        brief,
        List.of(stacks),
        new Listening(3, 1),
        new Target(2.83, 40, 200, 2),
        new Amplifier(28, 3));
  }

  /** Single and pair on 44 cm panels. */
  public static DesignSpec singleAndPair() {
    return spec(
        brief300(),
        column("single", 0.44, 1.1, 0.13, 75, 86, -0.25),
        column("pair", 0.44, 1.5, 0.13, 81, 92, -0.45, 0.45));
  }

  /** The same spec with one series coil per stack at most. */
  public static DesignSpec coilsOnly(DesignSpec spec) {
    return spec.withNetworks(NetworkOffer.Passive.ofCoils(CoilCatalogue.standard()));
  }

  /** Solves a spec's panels and returns its scorer. */
  public static SystemScorer scorer(DesignSpec spec) {
    ScoringAxis axis = ScoringAxis.of(spec);
    return new SystemScorer(spec, axis, acoustics(spec, axis), AIR);
  }

  /** Scorers for pistons of 0.12 to 0.14 m, from three solved radii. */
  public static ScorersBySize scorersBySize(DesignSpec spec) {
    ScoringAxis axis = ScoringAxis.of(spec);
    List<Double> radii = PistonSizes.radii(0.12, 0.14, 3);
    List<List<PanelResponse>> byStack = new ArrayList<>();
    spec.stacks().forEach(stack -> byStack.add(new ArrayList<>()));
    for (double radius : radii) {
      List<StackAcoustics> solved = acoustics(spec.withPistonRadius(radius), axis);
      for (int s = 0; s < solved.size(); s++) {
        byStack.get(s).add(solved.get(s).response());
      }
    }
    List<PistonSizes> sizes =
        byStack.stream().map(responses -> new PistonSizes(radii, responses)).toList();
    return new ScorersBySize(scorer(spec), axis, sizes, sizes, AIR);
  }

  /** Solves a spec's panels. */
  public static List<StackAcoustics> acoustics(DesignSpec spec, ScoringAxis axis) {
    return spec.stacks().stream()
        .map(
            stack ->
                new StackAcoustics(
                    stack,
                    new PanelSolver(stack.panel(), stack.pistons(), AIR)
                        .respond(
                            axis.frequencyHz(),
                            List.of(spec.listening().pointFor(stack.panel())),
                            List.of())))
        .toList();
  }
}

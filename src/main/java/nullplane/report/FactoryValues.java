package nullplane.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import java.util.stream.DoubleStream;
import nullplane.driver.MountedWoofer;
import nullplane.driver.Mounting;
import nullplane.driver.RatedImpedance;
import nullplane.driver.RoundWireCoil;
import nullplane.driver.SmallSignal;
import nullplane.driver.Woofer;
import nullplane.motor.MotorDesign;
import nullplane.motor.Winding;
import nullplane.sample.BenchDrive;
import nullplane.sample.BriefUnit;
import nullplane.sample.BriefValue;
import nullplane.sample.BriefValue.Section;
import nullplane.sample.BriefWindow;
import nullplane.sample.CommonPractice;
import nullplane.scoring.Assessment;
import nullplane.scoring.DesignSpec;
import nullplane.units.Air;
import nullplane.units.Curve;

/** Every value of a factory sheet, with window, condition and reason. Terms: IEC 60268-5. */
final class FactoryValues {
  /** Ratings that woofers are sold by (ohm). */
  private static final List<Double> RATINGS_OHM = List.of(2.0, 3.0, 4.0, 6.0, 8.0, 12.0, 16.0);

  /** Clearance over the travel (1). Common practice. */
  private static final double CLEARANCE = 1.25;

  /** Bl and compliance left at the travel (1). Source: criteria as in IEC 62458. */
  private static final double FORCE_FACTOR_LEFT = 0.82;

  private static final double COMPLIANCE_LEFT = 0.75;
  private static final String FOLLOWS = "Follows from the values above; tells errors apart.";

  private final DesignSpec spec;
  private final Assessment assessment;
  private final Woofer woofer;
  private final SmallSignal freeAir;
  private final ParameterTable reasons;
  private final FactoryParts parts;
  private final String sweep;
  private final List<BriefValue> values = new ArrayList<>();

  FactoryValues(DesignSpec spec, Assessment assessment, Verdict verdict, FactoryParts parts) {
    this.spec = spec;
    this.assessment = assessment;
    this.parts = parts;
    woofer = assessment.woofer();
    freeAir = assessment.freeAir();
    reasons = new ParameterTable(spec, assessment, verdict);
    sweep =
        "free air, "
            + Charts.plain(new BenchDrive(woofer, Air.standard()).sweepV())
            + " V"
            + ", 20 \u00b0C, after break-in; impedance sweep";
  }

  /** Returns all values, in the order of the sheet. */
  List<BriefValue> all() {
    targets();
    derived();
    coil();
    largeSignal();
    parts.values().forEach(this::put);
    List<BriefValue> finished = new ArrayList<>();
    for (BriefValue value : values) {
      BriefWindow window = parts.windows().get(value.key());
      finished.add(window == null ? value : value.withWindow(window));
    }
    return finished;
  }

  /** Puts a value in the place of the one with its key, or at the end. */
  private void put(BriefValue value) {
    for (int i = 0; i < values.size(); i++) {
      if (values.get(i).key().equals(value.key())) {
        values.set(i, value);
        return;
      }
    }
    values.add(value);
  }

  private void targets() {
    target(
        "fs",
        "fs",
        "resonance frequency",
        BriefUnit.HERTZ,
        freeAir.resonanceHz(),
        sweep,
        reasons.reason("fs"));
    target(
        "qts",
        "Qts",
        "total Q factor",
        BriefUnit.ONE,
        freeAir.totalQ(),
        sweep + ", source of 0 ohm",
        reasons.reason("Qts"));
    target(
        "qes",
        "Qes",
        "electrical Q factor",
        BriefUnit.ONE,
        freeAir.electricalQ(),
        sweep,
        reasons.reason("Qes"));
    target(
        "qms",
        "Qms",
        "mechanical Q factor",
        BriefUnit.ONE,
        freeAir.mechanicalQ(),
        sweep,
        reasons.reason("Qms") + " More does no harm to the sound; Qts is what counts.");
    target(
        "re",
        "Re",
        "direct-current resistance of the coil",
        BriefUnit.OHM,
        woofer.resistanceOhm(),
        "direct current, 20 \u00b0C, at the terminals",
        reasons.reason("Re"));
    rated();
    target(
        "moving-mass",
        "Mmd",
        "moving mass, bare",
        BriefUnit.KILOGRAM,
        woofer.bareMassKg(),
        "without air; weighed before assembly, half of surround and spider counted",
        reasons.reason("Mmd"));
    target(
        "mms",
        "Mms",
        "moving mass with air",
        BriefUnit.KILOGRAM,
        freeAir.movingMassKg(),
        "free air, small signal, after break-in; two sweeps, one with an added mass",
        reasons.reason("Mms"));
    target(
        "bl",
        "Bl",
        "force factor",
        BriefUnit.TESLA_METRE,
        woofer.forceFactorTm(),
        "small signal, coil at rest; from Qes, fs, Mms and Re",
        reasons.reason("Bl"));
    target(
        "sd",
        "Sd",
        "effective area of the piston",
        BriefUnit.SQUARE_METRE,
        woofer.effectiveAreaM2(),
        "to the middle of the surround, diameter " + Figures.millimetres(2 * woofer.radiusM()),
        reasons.reason("Sd"));
    if (woofer.inductanceH() > 0) {
      target(
          "le",
          "Le",
          "inductance of the coil",
          BriefUnit.HENRY,
          woofer.inductanceH(),
          "free air, at 1 kHz, as one inductance in series with Re",
          reasons.reason("Le"));
    }
  }

  /** Adds the rated impedance, which the least modulus above resonance decides. */
  private void rated() {
    double least = leastModulusOhm();
    double highest = RatedImpedance.highestRatedOhm(least);
    OptionalDouble rating =
        RATINGS_OHM.stream().mapToDouble(r -> r).filter(r -> r <= highest * 1.005).max();
    add(
        Section.TARGET,
        "rated-impedance",
        "Z",
        "rated impedance",
        BriefUnit.OHM,
        rating,
        BriefWindow.NONE,
        "least modulus from 20 Hz to 1 kHz "
            + Figures.ohms(least)
            + "; IEC 60268-5 asks for 80 % of the rating or more",
        "Follows from Re and Le; nothing on the panels is computed from it.");
  }

  private double leastModulusOhm() {
    MountedWoofer mounted = new MountedWoofer(woofer, Mounting.FREE_AIR, Air.standard());
    return Curve.logSpaced(20, 1000, 341).stream()
        .map(mounted::impedanceModulusOhm)
        .min()
        .orElseThrow();
  }

  private void derived() {
    add(
        Section.TARGET,
        "kms",
        "Kms",
        "stiffness of the suspension",
        BriefUnit.NEWTON_PER_METRE,
        OptionalDouble.of(woofer.stiffnessNPerM()),
        BriefWindow.NONE,
        "small signal, at rest, after break-in",
        FOLLOWS);
    add(
        Section.TARGET,
        "rms",
        "Rms",
        "mechanical resistance",
        BriefUnit.NEWTON_SECOND_PER_METRE,
        OptionalDouble.of(woofer.lossNsPerM()),
        BriefWindow.NONE,
        "small signal",
        FOLLOWS);
    target(
        "vas",
        "Vas",
        "equivalent volume of the compliance",
        BriefUnit.CUBIC_METRE,
        freeAir.equivalentVolumeM3(),
        "from Mms, fs and Sd; air of 20 \u00b0C, 101.3 kPa",
        reasons.reason("Vas"));
    double halfSpace =
        SmallSignal.levelAtOneWatt(freeAir.referenceEfficiency(), Air.standard())
            + SmallSignal.levelOverOneWatt(spec.target().voltageV(), woofer.resistanceOhm());
    target(
        "level",
        "L",
        "level at " + Charts.plain(spec.target().voltageV()) + " V",
        BriefUnit.DECIBEL,
        halfSpace,
        "half space, 1 m, above resonance; computed, not the level on a panel",
        reasons.reason("L"));
    SmallSignal baffle = SmallSignal.of(woofer, Mounting.INFINITE_BAFFLE, Air.standard());
    add(
        Section.TARGET,
        "fs-baffle",
        "fs",
        "resonance frequency in a standard baffle",
        BriefUnit.HERTZ,
        OptionalDouble.of(baffle.resonanceHz()),
        BriefWindow.NONE,
        "large baffle instead of free air",
        "For makers who measure in a baffle: more air moves along.");
    add(
        Section.TARGET,
        "qts-baffle",
        "Qts",
        "total Q factor in a standard baffle",
        BriefUnit.ONE,
        OptionalDouble.of(baffle.totalQ()),
        BriefWindow.NONE,
        "large baffle instead of free air",
        "As above.");
  }

  private void coil() {
    Optional<MotorDesign> motor = assessment.motor();
    Optional<Winding> winding = motor.map(MotorDesign::winding);
    Optional<RoundWireCoil> wound = winding.map(Winding::coil);
    coilValue(
        "former-diameter",
        "inside diameter of the former",
        BriefUnit.METRE,
        of(winding, w -> w.former().insideDiameterM()),
        "glass fibre or polyimide, no metal ring: eddy currents would lower Qms");
    coilValue(
        "wire-diameter",
        "bare diameter of the wire",
        BriefUnit.METRE,
        of(wound, RoundWireCoil::bareDiameterM),
        wound.map(w -> w.material().word()).orElse("the maker's choice"));
    coilValue(
        "layers", "layers of the winding", BriefUnit.ONE, of(wound, w -> w.layers()), "whole");
    coilValue("turns", "turns of the winding", BriefUnit.ONE, of(wound, w -> w.turns()), "whole");
    coilValue(
        "winding-height",
        "hc, height of the winding",
        BriefUnit.METRE,
        OptionalDouble.of(assessment.budget().windingHeightM()),
        "geometric");
    coilValue(
        "gap-height",
        "hg, height of the gap",
        BriefUnit.METRE,
        of(winding, Winding::gapHeightM),
        "top plate");
    coilValue(
        "flux",
        "B, mean flux density in the gap",
        BriefUnit.TESLA,
        of(motor, MotorDesign::fluxT),
        "follows from Bl, which is what counts");
    coilValue(
        "gap-energy",
        "energy in the gap",
        BriefUnit.JOULE,
        of(motor, MotorDesign::gapEnergyJ),
        "B\u00b2 V/(2 \u00b50)");
    coilValue(
        "magnet",
        "magnet, first estimate of its mass",
        BriefUnit.KILOGRAM,
        of(motor, MotorDesign::magnetMassKg),
        motor.map(m -> m.magnet().word()).orElse("the maker's choice"));
    coilValue(
        "rear-room",
        "room behind the top plate, at least",
        BriefUnit.METRE,
        of(motor, MotorDesign::rearRoomM),
        "clearance for 1.4 times the travel");
    coilValue(
        "wire-mass",
        "mass of the coil, enamel included",
        BriefUnit.KILOGRAM,
        OptionalDouble.of(assessment.budget().coilMassKg()),
        "all of the winding");
    coilValue(
        "cone-mass",
        "left for cone, former and shares",
        BriefUnit.KILOGRAM,
        OptionalDouble.of(assessment.budget().remainderKg()),
        "a cone of this size needs "
            + Figures.grams(assessment.budget().leastRemainderKg())
            + " or more (common practice)");
  }

  private static <T> OptionalDouble of(Optional<T> part, ToDoubleFunction<T> value) {
    return part.isPresent()
        ? OptionalDouble.of(value.applyAsDouble(part.orElseThrow()))
        : OptionalDouble.empty();
  }

  /** One winding of stock wire gives Re, Bl and travel together; another that does is welcome. */
  private void coilValue(
      String key, String words, BriefUnit unit, OptionalDouble value, String condition) {
    add(
        Section.COIL,
        key,
        "",
        words,
        unit,
        value,
        BriefWindow.NONE,
        condition,
        "The maker may propose another that gives Re, Bl and travel together.");
  }

  private void largeSignal() {
    double travel = woofer.travelM();
    add(
        Section.LARGE_SIGNAL,
        "travel",
        "xmax",
        "travel, one way",
        BriefUnit.METRE,
        OptionalDouble.of(travel),
        BriefWindow.atLeast(travel, "needed for the loudest level"),
        "peak, from rest; geometric, (hc - hg)/2",
        reasons.reason("xmax"));
    add(
        Section.LARGE_SIGNAL,
        "bl-at-travel",
        "",
        "Bl left at the travel, both ways",
        BriefUnit.SHARE,
        OptionalDouble.empty(),
        BriefWindow.atLeast(FORCE_FACTOR_LEFT, "criterion as in IEC 62458"),
        "share of Bl at rest, at the travel outwards and inwards",
        "The weak motor is all that brakes the cone; it must not let go on one side.");
    add(
        Section.LARGE_SIGNAL,
        "cms-at-travel",
        "",
        "compliance left at the travel, both ways",
        BriefUnit.SHARE,
        OptionalDouble.empty(),
        BriefWindow.atLeast(COMPLIANCE_LEFT, "criterion as in IEC 62458"),
        "share of Cms at rest, at the travel outwards and inwards",
        "No air spring of a box evens out the suspension: it must be symmetric by itself.");
    BriefValue rest =
        new BriefValue(
            Section.LARGE_SIGNAL,
            "rest-position",
            "x0",
            "rest position of the coil",
            BriefUnit.METRE,
            OptionalDouble.of(0),
            "",
            BriefWindow.NONE,
            "from the middle of the gap, after break-in, axis horizontal",
            "An offset takes travel away on one side and shifts Bl.");
    values.add(rest.withWindow(CommonPractice.window("rest-position", 0).orElseThrow()));
    add(
        Section.LARGE_SIGNAL,
        "clearance",
        "",
        "mechanical clearance, one way",
        BriefUnit.METRE,
        OptionalDouble.of(CLEARANCE * travel),
        BriefWindow.atLeast(CLEARANCE * travel, "common practice, 1.25 x travel"),
        "nothing touches: coil and back plate, spider and top plate, cone and basket",
        "A bare panel has no box that stops the cone before it strikes.");
    add(
        Section.LARGE_SIGNAL,
        "power",
        "P",
        "rated noise power",
        BriefUnit.WATT,
        OptionalDouble.of(woofer.powerW()),
        BriefWindow.atLeast(woofer.powerW(), "given by the spec"),
        "long term, as heat in the coil; no box to warm up, open at the rear",
        reasons.reason("P"));
  }

  private void target(
      String key,
      String symbol,
      String name,
      BriefUnit unit,
      double target,
      String condition,
      String reason) {
    add(
        Section.TARGET,
        key,
        symbol,
        name,
        unit,
        OptionalDouble.of(target),
        CommonPractice.window(key, target).orElse(BriefWindow.NONE),
        condition,
        reason);
  }

  private void add(
      Section section,
      String key,
      String symbol,
      String name,
      BriefUnit unit,
      OptionalDouble target,
      BriefWindow window,
      String condition,
      String reason) {
    values.add(
        new BriefValue(section, key, symbol, name, unit, target, "", window, condition, reason));
  }

  /** Returns the range of a value's window, closed by the target where it is open (SI). */
  static nullplane.units.Range range(List<BriefValue> values, String key, double target) {
    BriefWindow window =
        values.stream()
            .filter(value -> value.key().equals(key))
            .map(BriefValue::window)
            .findFirst()
            .orElse(BriefWindow.NONE);
    double lower = DoubleStream.of(window.lower().orElse(target), target).min().orElse(target);
    return new nullplane.units.Range(lower, Math.max(target, window.upper().orElse(target)));
  }
}

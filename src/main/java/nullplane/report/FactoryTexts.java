package nullplane.report;

import java.util.List;
import java.util.stream.Collectors;
import nullplane.acoustics.Outline;
import nullplane.driver.SmallSignal;
import nullplane.driver.Woofer;
import nullplane.sample.BenchDrive;
import nullplane.sample.BriefTest;
import nullplane.scoring.Assessment;
import nullplane.scoring.DesignSpec;
import nullplane.scoring.Limit;
import nullplane.scoring.StackAssessment;
import nullplane.tolerance.SamplingPlan;
import nullplane.units.Air;
import nullplane.units.FiniteText;

/** The sentences of a factory sheet: purpose, priorities, tests, questions and drawings. */
final class FactoryTexts {
  /** Total Q of woofers made for boxes: up to about this (1). Common practice. */
  private static final double BOX_Q = 0.5;

  private static final int LOT_SAMPLE = 50;
  private static final int LOT_ACCEPTED = 1;
  private static final double BAD_SHARE = 0.05;

  private final DesignSpec spec;
  private final Assessment assessment;
  private final Woofer woofer;
  private final SmallSignal freeAir;
  private final BenchDrive bench;

  FactoryTexts(DesignSpec spec, Assessment assessment) {
    this.spec = spec;
    this.assessment = assessment;
    woofer = assessment.woofer();
    freeAir = assessment.freeAir();
    bench = new BenchDrive(woofer, Air.standard());
  }

  /** Returns what the woofer is for, and why its values are unusual. */
  List<String> purpose() {
    String q = Figures.number(freeAir.totalQ());
    return List.of(
        "This woofer of "
            + Charts.plain(woofer.nominalM() * 1e3)
            + " mm"
            + " nominal size sits in a bare flat panel, open at the back, with no box. It plays from "
            + Charts.plain(spec.target().lowCornerHz())
            + " Hz to "
            + Charts.plain(spec.highestCornerHz())
            + " Hz; a main driver takes over above. The same woofer serves every stack: "
            + assessment.stacks().stream()
                .map(FactoryTexts::stack)
                .collect(Collectors.joining("; "))
            + ".",
        "Front and rear waves meet round the rim, so the pressure falls by 6 dB per octave below the"
            + " panel's corner. The woofer's own resonance makes up for that: "
            + (freeAir.totalQ() >= BOX_Q
                ? "a Qts of "
                    + q
                    + " is wanted and is no mistake, although woofers for boxes have about 0.2 to"
                    + " 0.5 (common practice). Please do not raise flux or winding to lower it:"
                : "it asks for a Qts of " + q + ". Please hold it both ways:")
            + " 10 % less Qts costs "
            + Figures.decibels(-20 * Math.log10(0.9))
            + " at resonance.",
        "No air spring of a box evens out the suspension, and the motor is weak on purpose. So"
            + " stiffness must be symmetric and the coil centred. The rear is heard as well as the"
            + " front: basket, spider, vents and pole piece must be quiet.");
  }

  private static String stack(StackAssessment stack) {
    Outline outline = stack.brief().panel().outline();
    int woofers = stack.brief().pistons().size();
    return Verdict.name(stack)
        + " ("
        + (woofers == 1 ? "1 woofer" : woofers + " woofers, " + stack.wiring().inWords())
        + ", on "
        + Charts.plain(outline.widthM() * 100)
        + " cm x "
        + Charts.plain(outline.heightM() * 100)
        + " cm)";
  }

  /** Returns the conditions that hold unless a row says otherwise. */
  String conditions() {
    return "Unless a row says otherwise: terms as in IEC 60268-5; axis horizontal, hung in free air,"
        + " 1 m or more from any surface; 20 \u00b0C, 101.3 kPa; "
        + Charts.plain(bench.sweepV())
        + "\u00a0V"
        + " root mean square at the terminals, source below 0.05 ohm, sine sweep from 10 Hz to 1"
        + " kHz upwards, 24 points or more per octave; after break-in: "
        + Figures.of(breakInV(), "V")
        + " at "
        + Figures.hertz(freeAir.resonanceHz())
        + " in free air for 1 to 2 h, which is about 0.8 of the travel at first, then 24 h rest"
        + " (common practice). Lower the voltage if the travel is passed.";
  }

  private double breakInV() {
    return bench.toneV(freeAir.resonanceHz(), BenchDrive.STRONG_SHARE);
  }

  /** Returns what matters most, first things first. */
  List<String> priorities() {
    long byTravel =
        assessment.stacks().stream()
            .filter(s -> s.figures().outputLimit() == Limit.EXCURSION)
            .count();
    return List.of(
        "Qts and fs: they shape the low end of every stack, and no part of the crossover mends them."
            + " 10 % of Qts is "
            + Figures.decibels(20 * Math.log10(1.1))
            + " at resonance.",
        "Travel, centred coil, symmetric suspension: at a fixed travel a dipole loses 18 dB per octave"
            + " downwards. Travel sets the loudest level in "
            + byTravel
            + " of "
            + assessment.stacks().size()
            + " stacks.",
        "Silence at the rear: no rub, buzz, wind or leak; the rear is heard.",
        "Bare moving mass and Bl: they set the level, which must meet the main driver's at the same"
            + " voltage. 5 % more mass is "
            + Figures.decibels(20 * Math.log10(1.05))
            + " less above resonance.",
        "Re: it sets the load on the amplifier and the share that a series coil takes.",
        "Units alike: woofers of one stack move together and should come from one lot.",
        "Le, power and price, in this order.");
  }

  /** Returns the tests of acceptance. */
  List<BriefTest> tests() {
    double strongV =
        Math.min(
            bench.sweptV(BenchDrive.STRONG_SHARE),
            Math.sqrt(woofer.powerW() * woofer.resistanceOhm()));
    String everyUnit = "every unit";
    String odds =
        FiniteText.of(
            "Sampling plan by ISO 2859-1, normal inspection, agreed with the lot's size. With n = %d"
                + " and Ac = %d a lot of which %.0f %% are bad still passes %.0f times in 100, so"
                + " small orders are tested in full",
            LOT_SAMPLE,
            LOT_ACCEPTED,
            100 * BAD_SHARE,
            100 * SamplingPlan.passing(LOT_SAMPLE, LOT_ACCEPTED, BAD_SHARE));
    return List.of(
        new BriefTest(
            "Polarity",
            "1.5 V direct current, plus at the marked terminal.",
            "The cone moves outwards.",
            everyUnit),
        new BriefTest(
            "Direct-current resistance",
            "Four wires, at rest, read with the temperature and brought to 20 \u00b0C by 0.393 % per"
                + " kelvin (copper).",
            "Window of Re.",
            everyUnit),
        new BriefTest(
            "Impedance sweep",
            "Free air, "
                + Charts.plain(bench.sweepV())
                + "\u00a0V"
                + ", 20 Hz to 1 kHz; modulus and phase recorded.",
            "Modulus inside the band of the picture and of the workbook; then fs, Qms, Qes and Qts"
                + " from the sweep in their windows.",
            everyUnit),
        new BriefTest(
            "Moving mass",
            "Second sweep with "
                + Figures.grams(bench.addedMassKg())
                + " fixed to the cone's neck, which lowers fs by a fifth.",
            "Windows of Mms and Bl.",
            "samples; then by the plan"),
        new BriefTest(
            "Rub and buzz",
            "Sine sweep 20 Hz to 1 kHz in 10 s or more, free air, "
                + Figures.of(strongV, "V")
                + ", which is at most 0.8 of the travel; one person listens at the REAR at 0.5 m and"
                + " then at the front. The rear is heard in use.",
            "No rub, buzz, tick, whistle or wind noise that is not the tone. Protect ears.",
            everyUnit),
        new BriefTest(
            "Coil rest position",
            "Depth gauge against the top plate after break-in, axis horizontal.",
            "Window of x0.",
            "samples; then by the plan"),
        new BriefTest(
            "Travel and clearance",
            "Bl(x) and Cms(x) of one sample after break-in; then the cone pushed in and out to the"
                + " clearance by hand.",
            "The large-signal values; nothing touches.",
            "2 samples"),
        new BriefTest(
            "Samples",
            samples()
                + " from series tools: enough for the largest stack, one to cut open, one that the"
                + " maker keeps. Each with its own sweep, Re and moving mass.",
            "All tests above.",
            "before a series"),
        new BriefTest(
            "Lots",
            odds + ".",
            "At most Ac units outside a window; no unit that rubs, buzzes or has the wrong polarity.",
            "each lot"));
  }

  private String samples() {
    int most =
        assessment.stacks().stream().mapToInt(s -> s.brief().pistons().size()).max().orElse(1);
    return most + 2 + " samples";
  }

  /** Returns what the maker is asked. */
  List<String> questions() {
    return List.of(
        "Which frame, cone, surround, spider, former and magnet of your stock come nearest, and which"
            + " of the values above move with them, by how much?",
        "Former diameter, wire (material, bare diameter), layers, turns, winding height, and flux"
            + " density from a measured or simulated gap: which do you propose?",
        "Where does the bare moving mass go: cone, dust cap, half surround, half spider, former, wire,"
            + " glue?",
        "Which stiffness does that spider keep after break-in, how far does it spread between lots,"
            + " and how symmetric is it at the travel?",
        "Which windows can you hold at no extra cost, at which share of the units, and which one costs"
            + " most?",
        "By which criterion do you state travel: winding and gap, Bl down to 82 %, compliance down to"
            + " 75 %, or 10 % distortion?",
        "How do L and R of the coil change from 100 Hz to 10 kHz, and is there a conducting ring?",
        "Depth, mass and outer diameter of the woofer; how is the coil vented, and how loud is the"
            + " vent at the travel?",
        "The rear stands open to a room: which dust, moisture and light does cone and gap bear?",
        "Price at 50, 200 and 1000 units, tooling, lead time of samples and of a series?");
  }

  /** Returns what is said about drawings. */
  List<String> drawings() {
    double room = frameRoomM();
    return List.of(
        "Drawings are left to the maker. Please send an outline with holes, cut-out, depth and the"
            + " coil's rest position before the panels are cut, and a section of the motor with every"
            + " dimension that the coil data above name.",
        "Nominal size "
            + Charts.plain(woofer.nominalM() * 1e3)
            + " mm"
            + ". Woofers and rims of these panels leave room for an outer diameter of at most "
            + (room > 0 ? Figures.millimetres(room) : Figures.NOT_DETERMINED)
            + (room < woofer.nominalM()
                ? ", which is less than the nominal size: please state the frame's real diameter."
                : ".")
            + " The panel's thickness is not known here; the frame is mounted from the front.");
  }

  /** Returns the greatest frame diameter that touches neither rim nor neighbour (m). */
  private double frameRoomM() {
    return assessment.stacks().stream()
        .mapToDouble(stack -> 2 * stack.brief().largestPistonRadiusM())
        .min()
        .orElse(Double.POSITIVE_INFINITY);
  }
}

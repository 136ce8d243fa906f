package nullplane.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SortedMap;
import java.util.function.Supplier;
import javax.imageio.ImageIO;
import javax.xml.parsers.DocumentBuilderFactory;
import nullplane.acoustics.Direction;
import nullplane.acoustics.FieldPlan;
import nullplane.acoustics.FieldPoint;
import nullplane.acoustics.Panel;
import nullplane.acoustics.PanelSolver;
import nullplane.acoustics.Piston;
import nullplane.scoring.DesignSpec;
import nullplane.scoring.PanelStudy;
import nullplane.scoring.StackBrief;
import nullplane.scoring.StudyAxis;
import nullplane.units.Air;
import nullplane.units.Levels;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Two solved panels: one over a floor with an awkward name, one in free space. */
class PanelReportTest {
  private static final Air AIR = Air.standard();
  private static final String ODD = "<script>alert(1)</script> & \"pair\" " + "long ".repeat(30);
  private static final List<PanelStudy> STUDIES = new ArrayList<>();
  private static DesignSpec spec;

  @BeforeAll
  static void solve() {
    StackBrief floor =
        new StackBrief(
            ODD,
            Panel.overFloor(0.4, 0.7, 0.05),
            List.of(new Piston(0, -0.15, 0.08), new Piston(0.05, 0.15, 0.08)),
            76,
            92,
            Optional.empty());
    StackBrief free =
        new StackBrief(
            "hanging",
            Panel.inFreeSpace(0.5, 0.5),
            List.of(new Piston(0, 0, 0.08)),
            76,
            92,
            Optional.empty());
    DesignSpec invented = InventedRun.spec();
    spec =
        new DesignSpec(
            "Panels",
            invented.woofer(),
            List.of(floor, free),
            invented.listening(),
            invented.target(),
            invented.amplifier());
    for (StackBrief stack : spec.stacks()) {
      boolean over = stack.panel().clearanceM().isPresent();
      FieldPlan plan = FieldPlan.of(List.of(), over);
      FieldPoint ear = spec.listening().pointFor(stack.panel());
      PanelSolver solver = new PanelSolver(stack.panel(), stack.pistons(), AIR);
      PanelSolver alone =
          new PanelSolver(
              new Panel(stack.panel().outline(), OptionalDouble.empty()), stack.pistons(), AIR);
      STUDIES.add(
          new PanelStudy(
              stack,
              ear,
              plan,
              solver.respond(StudyAxis.pictures(), List.of(ear), plan.directions()),
              over
                  ? Optional.of(
                      alone.respond(
                          StudyAxis.pictures(), List.of(ear), List.of(new Direction(0, 0))))
                  : Optional.empty(),
              AIR));
    }
  }

  private static SortedMap<String, Supplier<byte[]>> parts() {
    return PanelReport.parts(spec, STUDIES, InventedRun.INFO);
  }

  @Test
  void picturesAreWholeWellFormedAndTheSameEachTime() throws Exception {
    SortedMap<String, Supplier<byte[]>> once = parts();
    SortedMap<String, Supplier<byte[]>> again = parts();
    assertThat(once.keySet().stream().filter(name -> name.endsWith(".png"))).hasSize(14);
    for (String name : once.keySet()) {
      byte[] bytes = once.get(name).get();
      if (name.startsWith("stack-1") || !name.endsWith(".png")) {
        assertThat(again.get(name).get()).as(name).isEqualTo(bytes);
      }
      if (name.endsWith(".png")) {
        noneCutOff(name, ImageIO.read(new ByteArrayInputStream(bytes)));
      } else if (name.endsWith(".svg")) {
        var document =
            DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(new ByteArrayInputStream(bytes));
        assertThat(document.getElementsByTagName("title").getLength()).isEqualTo(1);
        assertThat(document.getElementsByTagName("script").getLength()).isZero();
        String text = new String(bytes, StandardCharsets.UTF_8);
        assertThat(text).as(name).doesNotContain("NaN").doesNotContain("<image");
        assertThat(text.replaceAll("xmlns(:xlink)?=\"[^\"]*\"", "")).doesNotContain("http");
      }
    }
  }

  private static void noneCutOff(String name, BufferedImage image) {
    assertThat(image.getWidth()).isEqualTo(1800);
    int white = Color.WHITE.getRGB();
    for (int x = 0; x < image.getWidth(); x++) {
      assertThat(image.getRGB(x, 0)).as(name).isEqualTo(white);
      assertThat(image.getRGB(x, image.getHeight() - 1)).as(name).isEqualTo(white);
    }
    for (int y = 0; y < image.getHeight(); y++) {
      assertThat(image.getRGB(0, y)).as(name).isEqualTo(white);
      assertThat(image.getRGB(image.getWidth() - 1, y)).as(name).isEqualTo(white);
    }
  }

  @Test
  void thePageHoldsEveryPictureWithItsSentence() {
    String page = new String(parts().get("index.html").get(), StandardCharsets.UTF_8);
    assertThat(page.split("<figcaption>", -1)).hasSize(15);
    assertThat(page).doesNotContain("<script>alert").doesNotContain("NaN");
    assertThat(page).contains("spec 0123456789ab, version 0.1.0").doesNotContain("seed 42");
    String markdown = new String(parts().get("index.md").get(), StandardCharsets.UTF_8);
    for (StudyCharts.Kind kind : StudyCharts.Kind.values()) {
      assertThat(markdown).contains("](stack-2/" + kind.fileStem() + ".svg)");
    }
    assertThat(markdown).doesNotContain("not determined");
  }

  /** Pages name clips by picture; two pictures of one page must not share a name. */
  @Test
  void clipNamesDifferBetweenStacks() {
    String one = new String(parts().get("stack-1/on-axis.svg").get(), StandardCharsets.UTF_8);
    String two = new String(parts().get("stack-2/on-axis.svg").get(), StandardCharsets.UTF_8);
    assertThat(one).contains("id=\"aonaxis-clip-1\"");
    assertThat(two).contains("id=\"bonaxis-clip-1\"");
  }

  @Test
  void theSummaryFitsEightyColumns() {
    String text = PanelSummary.of(spec, STUDIES, InventedRun.INFO, "results/x", true);
    assertThat(text.replaceAll("\u001b\\[[0-9]*m", "").lines())
        .allMatch(line -> line.codePointCount(0, line.length()) <= 80);
    assertThat(text).endsWith("Files: results/x\n");
    assertThat(PanelSummary.of(spec, STUDIES, InventedRun.INFO, "results/x", false))
        .doesNotContain("\u001b");
  }

  /** The splines pass through the solved field, and between its points stay near a new solution. */
  @Test
  void theArcIsTheSolvedField() {
    PanelStudy study = STUDIES.get(0);
    double between = 1000 * Math.pow(10, -0.5 / 20);
    double aside = Math.toRadians(33);
    Direction up = new Direction(0, aside);
    var own =
        new PanelSolver(study.brief().panel(), study.brief().pistons(), AIR)
            .solve(between, List.of(), List.of(up));
    double expected =
        nullplane.acoustics.PanelFigures.sumModulus(own.farField(), 0)
            / nullplane.acoustics.PanelFigures.monopole(
                between,
                nullplane.acoustics.PanelFigures.volumeVelocity(study.brief().pistons()),
                AIR);
    double drawn =
        new ArcField(study, true).moduli(new double[] {between}, new double[] {33})[0][0];
    // pictures are read to about half a decibel
    assertThat(Levels.ofAmplitudeRatio(drawn / expected)).isCloseTo(0, within(0.2));
    StudyCurves curves = new StudyCurves(study);
    double axis = new ArcField(study, false).moduli(new double[] {1000}, new double[] {0})[0][0];
    assertThat(Levels.ofAmplitudeRatio(axis))
        .isCloseTo(curves.onAxisDb(false).at(42), within(1e-9));
  }

  /** An ideal eight is 6.02 dB down at 60 degrees; at 20 Hz the panel is nearly one. */
  @Test
  void widthOfTheEight() {
    ArcField horizontal = new ArcField(STUDIES.get(1), false);
    assertThat(horizontal.widthDeg(20, 6.0206)).isCloseTo(60, within(0.3));
  }

  @Test
  void equalWoofersShareAName() {
    StudyCurves curves = new StudyCurves(STUDIES.get(0));
    assertThat(PanelNames.groups(STUDIES.get(0), curves.indices())).hasSize(2);
    assertThat(PanelNames.of(List.of(0, 3))).isEqualTo("woofers 1, 4");
    assertThat(PanelNames.of(List.of(2))).isEqualTo("woofer 3");
  }
}

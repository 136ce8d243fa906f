package nullplane.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import javax.imageio.ImageIO;
import javax.xml.parsers.DocumentBuilderFactory;
import nullplane.faults.OutputException;
import nullplane.scoring.Assessment;
import nullplane.scoring.DesignSpec;
import nullplane.scoring.StackAssessment;
import nullplane.scoring.StackCurves;
import nullplane.scoring.Target;
import nullplane.search.SearchOutcome;
import nullplane.units.Curve;
import nullplane.units.Range;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.knowm.xchart.XYChart;

class ChartsTest {
  private static final DesignSpec SPEC = InventedRun.spec();
  private static final SearchOutcome OUTCOME = InventedRun.outcome(SPEC);
  private static final PlotRanges RANGES = PlotRanges.of(SPEC, OUTCOME.ranked());

  private static Picture picture(Charts.Kind kind) {
    return Charts.of(kind, SPEC, OUTCOME.ranked().get(0), "Woofer 1", RANGES);
  }

  private static DesignSpec stacks(int count) {
    return InventedRun.spec(
        "Village hall",
        IntStream.range(0, count).mapToObj(i -> "stack " + i).toArray(String[]::new));
  }

  /** IEC 60263: one decade of frequency as long as 25 dB or 50 dB; read off what XChart painted. */
  @ParameterizedTest
  @CsvSource({"1, 50", "2, 25", "3, 25", "4, 25", "5, 25"})
  void oneDecadeIsAsLongAsTheStandardSays(int stackCount, double decibels) {
    DesignSpec spec = stacks(stackCount);
    SearchOutcome outcome = InventedRun.outcome(spec);
    PlotRanges ranges = PlotRanges.of(spec, outcome.ranked());
    FrequencyPlot plot = new LevelChart(spec, outcome.ranked().get(0), "Woofer 1", ranges).plot(0);
    BufferedImage image = new BufferedImage(1000, 1000, BufferedImage.TYPE_INT_RGB);
    plot.paint(image.createGraphics(), 0, 0);
    XYChart chart = plot.chart();
    double low = ranges.levelDb().lower();
    double decade = chart.getScreenXFromChart(200) - chart.getScreenXFromChart(20);
    double tenDecibels = chart.getScreenYFromChart(low) - chart.getScreenYFromChart(low + 10);
    assertThat(decade / tenDecibels * 10).isCloseTo(decibels, within(0.01 * decibels));
    assertThat(plot.frame().valuePerDecade()).isCloseTo(decibels, within(0.01 * decibels));
  }

  @Test
  void theFrameIsWhereXchartPaints() {
    for (boolean log : new boolean[] {false, true}) {
      PlotFrame frame = new PlotFrame(340, 200, PlotFrame.AUDIO_LOW_END, new Range(2, 100), log);
      FrequencyPlot plot = new FrequencyPlot(frame);
      plot.level(frame.frequencyHz(), 5, Color.RED, LineStyle.MAIN);
      plot.paint(new BufferedImage(400, 300, BufferedImage.TYPE_INT_RGB).createGraphics(), 9, 7);
      for (double hz : new double[] {20, 63, 500, 1000}) {
        assertThat(plot.chart().getScreenXFromChart(hz)).isCloseTo(frame.xOf(hz), within(1e-9));
        assertThat(frame.frequencyAt(frame.xOf(hz))).isCloseTo(hz, within(1e-9));
      }
      for (double value : new double[] {2, 5, 50, 100}) {
        assertThat(plot.chart().getScreenYFromChart(value))
            .isCloseTo(frame.yOf(value), within(1e-9));
        assertThat(frame.valueAt(frame.yOf(value))).isCloseTo(value, within(1e-9));
      }
    }
  }

  @ParameterizedTest
  @EnumSource(Charts.Kind.class)
  void pngIsTwiceTheScreenSizeAt192DotsPerInch(Charts.Kind kind) throws Exception {
    Picture picture = picture(kind);
    byte[] png = picture.png();
    BufferedImage image = ImageIO.read(new ByteArrayInputStream(png));
    assertThat(image.getWidth()).isEqualTo(2 * picture.widthPx()).isEqualTo(1800);
    assertThat(image.getHeight()).isEqualTo(2 * picture.heightPx());
    // PNG specification (ISO/IEC 15948), chunk pHYs: dots per metre; 192 / 0.0254 = 7559
    int at = new String(png, StandardCharsets.ISO_8859_1).indexOf("pHYs");
    assertThat(at).isPositive();
    assertThat(ByteBuffer.wrap(png).getInt(at + 4)).isBetween(7558, 7560);
    assertThat(png[at + 12]).isEqualTo((byte) 1);
  }

  @ParameterizedTest
  @EnumSource(Charts.Kind.class)
  void svgIsWellFormedAndAsksForNothingOutside(Charts.Kind kind) throws Exception {
    byte[] svg = picture(kind).svg();
    var document =
        DocumentBuilderFactory.newInstance()
            .newDocumentBuilder()
            .parse(new ByteArrayInputStream(svg));
    assertThat(document.getDocumentElement().getTagName()).isEqualTo("svg");
    assertThat(document.getElementsByTagName("title").getLength()).isEqualTo(1);
    String text = new String(svg, StandardCharsets.UTF_8);
    assertThat(text).doesNotContain("<!DOCTYPE").doesNotContain("<image").doesNotContain("NaN");
    assertThat(text.replaceAll("xmlns(:xlink)?=\"[^\"]*\"", "")).doesNotContain("http");
    assertThat(text).contains("id=\"" + kind.fileStem() + "-clip-1\"");
  }

  @ParameterizedTest
  @EnumSource(Charts.Kind.class)
  void sameInputGivesSameBytes(Charts.Kind kind) {
    Picture once = picture(kind);
    Picture again = picture(kind);
    assertThat(once.png()).isEqualTo(again.png()).isEqualTo(once.png());
    assertThat(once.svg()).isEqualTo(again.svg()).isEqualTo(once.svg());
  }

  @Test
  void theCorridorLiesBehindTheCurve() throws Exception {
    Assessment woofer = OUTCOME.ranked().get(0);
    BufferedImage image = ImageIO.read(new ByteArrayInputStream(picture(Charts.Kind.LEVEL).png()));
    PlotFrame frame = new LevelChart(SPEC, woofer, "Woofer 1", RANGES).frame();
    PanelGrid grid = new PanelGrid(3, frame.heightPx());
    int stack = 2;
    // between the grid lines of 100 Hz and 200 Hz; the curve stays inside the corridor there
    double hz = 150;
    FrequencyPlot plot = new FrequencyPlot(frame);
    var curves = woofer.stacks().get(stack).curves();
    double level = plot.valueAt(curves.frequencyHz().toArray(), curves.levelDb().toArray(), hz);
    double target = SPEC.stacks().get(stack).levelDb();
    assertThat(level).isBetween(target - 1, target + 1);
    double x = grid.left(stack) + frame.xOf(hz);
    double top = grid.top(stack);
    assertThat(pixel(image, x, top + frame.yOf(level))).isEqualTo(Palette.stack(stack));
    Color band = Palette.tint(Palette.stack(stack), 0.3);
    assertThat(pixel(image, x, top + frame.yOf(target + 1.5))).isEqualTo(band);
    assertThat(pixel(image, x, top + frame.yOf(target - 1.5))).isEqualTo(band);
    assertThat(pixel(image, x, top + frame.yOf(target - 5))).isEqualTo(Color.WHITE);
    // outside the band's corners there is no corridor
    double outside = grid.left(stack) + frame.xOf(250);
    assertThat(pixel(image, outside, top + frame.yOf(target + 1.5))).isEqualTo(Color.WHITE);
  }

  private static Color pixel(BufferedImage image, double x, double y) {
    return new Color(image.getRGB((int) Math.round(2 * x), (int) Math.round(2 * y)));
  }

  /** Okabe and Ito, Color Universal Design (2008): the set's values. */
  @Test
  void coloursAreThePublishedSetAndDifferInGrey() {
    List<Color> published =
        List.of(
            new Color(0, 0, 0),
            new Color(230, 159, 0),
            new Color(86, 180, 233),
            new Color(0, 158, 115),
            new Color(240, 228, 66),
            new Color(0, 114, 178),
            new Color(213, 94, 0),
            new Color(204, 121, 167));
    for (int i = 0; i < 6; i++) {
      assertThat(published).contains(Palette.stack(i));
      if (i > 0) {
        assertThat(Math.abs(grey(Palette.stack(i)) - grey(Palette.stack(i - 1))))
            .as("grey of stacks %d and %d", i - 1, i)
            .isGreaterThan(25);
      }
    }
  }

  /** Luma of ITU-R BT.601. */
  private static double grey(Color colour) {
    return 0.299 * colour.getRed() + 0.587 * colour.getGreen() + 0.114 * colour.getBlue();
  }

  @Test
  void frequencyLabelsAreTheAgreedOnes() {
    assertThat(FrequencyPlot.LABELLED_HZ).containsExactly(20, 50, 100, 200, 500, 1000);
    assertThat(PlotFrame.AUDIO_LOW_END).isEqualTo(new Range(20, 1000));
  }

  @Test
  void axesAreRoundAndHoldWhatIsAsked() {
    assertThat(RANGES.levelDb().lower() % 10).isZero();
    assertThat(RANGES.levelDb().upper() % 10).isZero();
    assertThat(RANGES.levelDb().upper() - RANGES.levelDb().lower()).isBetween(30.0, 70.0);
    assertThat(RANGES.loudestDb().contains(92)).isTrue();
    assertThat(RANGES.impedanceOhm().contains(3)).isTrue();
    assertThat(RANGES.excursionMm().contains(8)).isTrue();
    assertThat(PlotRanges.nextStep(3.2, true)).isEqualTo(5);
    assertThat(PlotRanges.nextStep(3.2, false)).isEqualTo(2);
    assertThat(PlotRanges.nextStep(70, true)).isEqualTo(100);
    assertThat(PlotRanges.nextStep(0.05, false)).isCloseTo(0.05, within(1e-12));
  }

  @ParameterizedTest
  @CsvSource({"1", "2", "4", "5", "7"})
  void anyNumberOfStacksIsDrawnInsideThePicture(int stackCount) throws Exception {
    DesignSpec spec = stacks(stackCount);
    SearchOutcome outcome = InventedRun.outcome(spec);
    PlotRanges ranges = PlotRanges.of(spec, outcome.ranked());
    for (Charts.Kind kind : Charts.Kind.values()) {
      Picture picture = Charts.of(kind, spec, outcome.ranked().get(0), "Woofer 1", ranges);
      BufferedImage image = ImageIO.read(new ByteArrayInputStream(picture.png()));
      // nothing may touch the picture's rim: then nothing is cut off
      for (int x = 0; x < image.getWidth(); x++) {
        assertThat(image.getRGB(x, 0)).isEqualTo(Color.WHITE.getRGB());
        assertThat(image.getRGB(x, image.getHeight() - 1)).isEqualTo(Color.WHITE.getRGB());
      }
      for (int y = 0; y < image.getHeight(); y++) {
        assertThat(image.getRGB(0, y)).isEqualTo(Color.WHITE.getRGB());
        assertThat(image.getRGB(image.getWidth() - 1, y)).isEqualTo(Color.WHITE.getRGB());
      }
    }
  }

  @Test
  void oddNamesAreDrawnAsText() throws Exception {
    DesignSpec spec =
        InventedRun.spec("x", "<script>alert(1)</script>", "=1+1 & \"quoted\"", "  \n\u0007 ");
    SearchOutcome outcome = InventedRun.outcome(spec);
    PlotRanges ranges = PlotRanges.of(spec, outcome.ranked());
    for (Charts.Kind kind : Charts.Kind.values()) {
      Picture picture =
          Charts.of(
              kind, spec, outcome.ranked().get(0), "<b>" + "long ".repeat(60) + "</b>", ranges);
      var document =
          DocumentBuilderFactory.newInstance()
              .newDocumentBuilder()
              .parse(new ByteArrayInputStream(picture.svg()));
      assertThat(document.getElementsByTagName("script").getLength()).isZero();
      assertThat(document.getElementsByTagName("b").getLength()).isZero();
    }
  }

  /** Beyond the corner the corridor falls with the wanted slope: Butterworth, 12 dB per octave. */
  @Test
  void theCorridorFallsBeyondTheCorner() throws Exception {
    DesignSpec sloped =
        new DesignSpec(
            SPEC.title(),
            SPEC.woofer(),
            SPEC.stacks(),
            SPEC.listening(),
            new Target(2.83, 40, 200, 2, 2),
            SPEC.amplifier());
    Assessment woofer = OUTCOME.ranked().get(0);
    PlotRanges ranges = PlotRanges.of(sloped, OUTCOME.ranked());
    byte[] png = Charts.of(Charts.Kind.LEVEL, sloped, woofer, "x", ranges).png();
    BufferedImage image = ImageIO.read(new ByteArrayInputStream(png));
    PlotFrame frame = new LevelChart(sloped, woofer, "x", ranges).frame();
    PanelGrid grid = new PanelGrid(3, frame.heightPx());
    double hz = 280;
    double wanted = SPEC.stacks().get(0).levelDb() - 10 * Math.log10(1 + Math.pow(hz / 200, 4));
    double x = grid.left(0) + frame.xOf(hz);
    Color band = Palette.tint(Palette.stack(0), 0.3);
    for (double off : new double[] {1.5, -1.5}) {
      assertThat(pixel(image, x, grid.top(0) + frame.yOf(wanted + off))).isEqualTo(band);
    }
    assertThat(pixel(image, x, grid.top(0) + frame.yOf(wanted - 3.9))).isEqualTo(Color.WHITE);
  }

  @Test
  void limitsThatAreNeverReachedLeaveNoLine() throws Exception {
    Assessment woofer = OUTCOME.ranked().get(0);
    var stacks =
        woofer.stacks().stream()
            .map(
                stack -> {
                  StackCurves c = stack.curves();
                  double[] never = new double[c.frequencyHz().size()];
                  Arrays.fill(never, Double.POSITIVE_INFINITY);
                  double[] holes = c.loudestDb().toArray();
                  holes[3] = Double.NaN;
                  return new StackAssessment(
                      stack.brief(),
                      stack.wiring(),
                      stack.network(),
                      stack.figures(),
                      new StackCurves(
                          c.frequencyHz(),
                          c.levelDb(),
                          c.bareLevelDb(),
                          c.impedanceReOhm(),
                          c.impedanceImOhm(),
                          Curve.of(new double[never.length]),
                          Curve.of(holes),
                          Curve.of(never),
                          Curve.of(never),
                          c.amplifierLimitDb(),
                          c.binding(),
                          java.util.Optional.empty()));
                })
            .toList();
    Assessment odd =
        new Assessment(
            woofer.woofer(),
            woofer.freeAir(),
            woofer.budget(),
            java.util.Optional.empty(),
            stacks,
            woofer.grade(),
            woofer.parts(),
            woofer.violations());
    PlotRanges ranges = PlotRanges.of(SPEC, List.of(odd));
    for (Charts.Kind kind : Charts.Kind.values()) {
      String svg =
          new String(Charts.of(kind, SPEC, odd, "Woofer 1", ranges).svg(), StandardCharsets.UTF_8);
      assertThat(svg).as(kind.name()).doesNotContain("NaN").doesNotContain("Infinity");
    }
    assertThat(new SpecificationSheet(SPEC, odd, 1, InventedRun.INFO).markdown())
        .contains("The travel that the level asked for needs is not determined.")
        .doesNotContain("Infinity");
  }

  @Test
  void dashesRunOnOverThePointsOfACurve() {
    float[] pattern = {6, 3};
    double[][] few = Dashes.cut(new double[] {0, 90}, new double[] {0, 0}, pattern);
    double[] x = IntStream.rangeClosed(0, 90).mapToDouble(i -> i).toArray();
    double[][] many = Dashes.cut(x, new double[91], pattern);
    assertThat(drawnLength(few)).isCloseTo(60, within(1e-9));
    assertThat(drawnLength(many)).isCloseTo(60, within(1e-9));
    assertThat(IntStream.range(0, many[1].length).filter(i -> Double.isNaN(many[1][i])).count())
        .isEqualTo(10);
  }

  private static double drawnLength(double[][] line) {
    double sum = 0;
    for (int i = 1; i < line[0].length; i++) {
      double length = Math.hypot(line[0][i] - line[0][i - 1], line[1][i] - line[1][i - 1]);
      sum += Double.isNaN(length) ? 0 : length;
    }
    return sum;
  }

  @Test
  void gapsInACurveStayGaps() {
    double[][] cut =
        Dashes.cut(
            new double[] {0, 10, 20, 30, 40},
            new double[] {0, 0, Double.NaN, 0, 0},
            new float[] {100, 1});
    assertThat(drawnLength(cut)).isCloseTo(20, within(1e-9));
  }

  @Test
  void aMachineWithoutFontsGetsALineToActOn() {
    OutputException fault = Lettering.noFont(new InternalError("no head"));
    assertThat(fault.exitCode()).isEqualTo(5);
    assertThat(fault).hasMessageContaining("no font").hasMessageContaining("install fontconfig");
    assertThat(fault.getMessage()).doesNotContain("\n");
  }
}

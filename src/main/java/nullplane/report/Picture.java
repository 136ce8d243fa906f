package nullplane.report;

import de.erichseifert.vectorgraphics2d.VectorGraphics2D;
import de.erichseifert.vectorgraphics2d.svg.SVGProcessor;
import de.erichseifert.vectorgraphics2d.util.PageSize;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.function.Consumer;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageTypeSpecifier;
import javax.imageio.ImageWriter;
import javax.imageio.metadata.IIOInvalidTreeException;
import javax.imageio.metadata.IIOMetadata;
import javax.imageio.metadata.IIOMetadataNode;
import javax.imageio.stream.MemoryCacheImageOutputStream;
import nullplane.units.FiniteText;

/**
 * A picture that can be written as PNG and as SVG. The same picture gives the same bytes each time
 * on one machine; letters come from the machine's fonts.
 */
public final class Picture {
  /** How many dots a PNG has per pixel at screen size. */
  static final int DOTS_PER_PIXEL = 2;

  private static final double DOTS_PER_MM = 96.0 * DOTS_PER_PIXEL / 25.4;

  private final String name;
  private final int widthPx;
  private final int heightPx;
  private final String description;
  private final Consumer<Graphics2D> painter;

  /**
   * @param name one word that no other picture of a page has
   * @param widthPx width (pixels at screen size)
   * @param heightPx height (pixels at screen size)
   * @param description what it shows, for those who cannot see it
   * @param painter paints it
   */
  Picture(
      String name, int widthPx, int heightPx, String description, Consumer<Graphics2D> painter) {
    this.name = name;
    this.widthPx = widthPx;
    this.heightPx = heightPx;
    this.description = Lettering.clean(description);
    this.painter = painter;
  }

  /** Returns the width (pixels at screen size; a PNG has twice as many). */
  public int widthPx() {
    return widthPx;
  }

  /** Returns the height (pixels at screen size; a PNG has twice as many). */
  public int heightPx() {
    return heightPx;
  }

  /** Returns what the picture shows, in one sentence. */
  public String description() {
    return description;
  }

  /**
   * Returns the picture as PNG, twice the screen size, 192 dots per inch.
   *
   * @throws nullplane.faults.OutputException if the machine has no font
   */
  public byte[] png() {
    BufferedImage image =
        new BufferedImage(
            widthPx * DOTS_PER_PIXEL, heightPx * DOTS_PER_PIXEL, BufferedImage.TYPE_INT_RGB);
    Graphics2D g = image.createGraphics();
    g.scale(DOTS_PER_PIXEL, DOTS_PER_PIXEL);
    paint(g);
    g.dispose();
    ImageWriter writer = ImageIO.getImageWritersByFormatName("png").next();
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (MemoryCacheImageOutputStream out = new MemoryCacheImageOutputStream(bytes)) {
      writer.setOutput(out);
      IIOMetadata metadata =
          writer.getDefaultImageMetadata(ImageTypeSpecifier.createFromRenderedImage(image), null);
      addDensity(metadata);
      writer.write(new IIOImage(image, null, metadata));
    } catch (IOException cause) {
      throw new UncheckedIOException("writing into memory", cause);
    } finally {
      writer.dispose();
    }
    return bytes.toByteArray();
  }

  /**
   * Returns the picture as SVG, letters as outlines.
   *
   * @throws nullplane.faults.OutputException if the machine has no font
   */
  public byte[] svg() {
    VectorGraphics2D g = new VectorGraphics2D();
    paint(g);
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try {
      new SVGProcessor()
          .getDocument(g.getCommands(), new PageSize(0, 0, widthPx, heightPx))
          .writeTo(bytes);
    } catch (IOException cause) {
      throw new UncheckedIOException("writing into memory", cause);
    }
    return SvgText.tidied(bytes.toString(StandardCharsets.UTF_8), name, description)
        .getBytes(StandardCharsets.UTF_8);
  }

  /** Paints the picture, one pixel at screen size to one unit. */
  void paint(Graphics2D g) {
    g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
    g.setColor(Palette.PAPER);
    g.fillRect(0, 0, widthPx, heightPx);
    painter.accept(g);
  }

  private static void addDensity(IIOMetadata metadata) throws IIOInvalidTreeException {
    String dots = FiniteText.of("%.4f", DOTS_PER_MM);
    IIOMetadataNode dimension = new IIOMetadataNode("Dimension");
    for (String side : new String[] {"HorizontalPixelSize", "VerticalPixelSize"}) {
      IIOMetadataNode node = new IIOMetadataNode(side);
      node.setAttribute("value", dots);
      dimension.appendChild(node);
    }
    IIOMetadataNode root = new IIOMetadataNode("javax_imageio_1.0");
    root.appendChild(dimension);
    metadata.mergeTree("javax_imageio_1.0", root);
  }
}

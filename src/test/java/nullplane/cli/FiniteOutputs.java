package nullplane.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;

/** Looks through everything a run wrote for numbers that are not finite. */
final class FiniteOutputs {
  private static final Pattern NOT_FINITE =
      Pattern.compile("(?<![A-Za-z0-9])(?:NaN|[Ii]nfinity|1\\.#INF|\u221e|\ufffd)(?![A-Za-z0-9])");
  private static final Pattern PICTURE = Pattern.compile("base64,[A-Za-z0-9+/=]+");

  private FiniteOutputs() {}

  /** Fails if a file below a folder holds such a number; returns how many files it read. */
  static int require(Path folder) throws IOException {
    List<Path> files;
    try (Stream<Path> all = Files.walk(folder)) {
      files = all.filter(Files::isRegularFile).sorted().toList();
    }
    for (Path file : files) {
      String name = file.toString();
      if (name.endsWith(".xlsx")) {
        workbook(file);
      } else if (name.endsWith(".pdf")) {
        try (PDDocument document = Loader.loadPDF(file.toFile())) {
          require(name, new PDFTextStripper().getText(document));
        }
      } else if (!name.endsWith(".png")) {
        String text = Files.readString(file);
        require(name, PICTURE.matcher(text).replaceAll(""));
        if (name.endsWith(".json")) {
          new ObjectMapper().readTree(text); // refuses what is no number of JSON
        }
      }
    }
    return files.size();
  }

  /** Fails if a text holds such a number. */
  static void require(String name, String text) {
    Matcher matcher = NOT_FINITE.matcher(text);
    if (matcher.find()) {
      int from = Math.max(0, matcher.start() - 80);
      int to = Math.min(text.length(), matcher.end() + 40);
      throw new AssertionError(name + ": " + text.substring(from, to));
    }
  }

  private static void workbook(Path file) throws IOException {
    int parts = 0;
    try (ZipInputStream in =
        new ZipInputStream(new ByteArrayInputStream(Files.readAllBytes(file)))) {
      for (ZipEntry entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
        require(
            file + "!" + entry.getName(), new String(in.readAllBytes(), StandardCharsets.UTF_8));
        parts++;
      }
    }
    assertThat(parts).isPositive();
  }
}

package nullplane.io;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import nullplane.faults.InputFault;
import nullplane.faults.InvalidInputException;

/**
 * Reads many woofers and puts up with bad ones: a YAML file, a CSV table, or a folder of both. What
 * is wrong with a row or a file is told with its place, and the others are read all the same.
 */
public final class WooferFiles {
  /** Most files of a folder that are read. */
  private static final int MOST_FILES = 20_000;

  private final List<ReadWoofer> woofers = new ArrayList<>();
  private final List<InputFault> refused = new ArrayList<>();
  private final Map<String, String> placeByName = new HashMap<>();

  private WooferFiles() {}

  /**
   * Reads every woofer of a file or folder.
   *
   * @param fileOrFolder a .yaml, .yml or .csv file, or a folder of such files; hidden files and
   *     folders within are passed over
   * @return the woofers that could be read, and the faults of the others
   * @throws InvalidInputException if no woofer at all could be read, with every fault
   */
  public static ReadWoofers readEach(Path fileOrFolder) {
    WooferFiles files = new WooferFiles();
    if (Files.isDirectory(fileOrFolder)) {
      for (Path file : filesOf(fileOrFolder)) {
        files.readFile(file);
      }
    } else {
      files.readFile(fileOrFolder);
    }
    if (files.woofers.isEmpty()) {
      throw new InvalidInputException(files.refused);
    }
    return new ReadWoofers(files.woofers, files.refused);
  }

  private void readFile(Path file) {
    try {
      if (endsWith(file, ".csv")) {
        readTable(InputText.read(file));
      } else {
        take(WooferReader.read(file), file.toString(), 0);
      }
    } catch (InvalidInputException e) {
      refused.addAll(e.faults());
    }
  }

  /** A row that was read, or what is wrong with it. */
  private record Attempt(int line, Optional<ReadWoofer> woofer, List<InputFault> faults) {}

  private void readTable(InputText input) {
    // thousands of rows, each completed and cross-checked on its own: worth all cores
    List<Attempt> attempts =
        WooferTable.rows(input, WooferSheet.KEYS).parallelStream()
            .map(row -> attempt(input, row))
            .toList();
    for (Attempt attempt : attempts) {
      attempt
          .woofer()
          .ifPresent(
              read -> take(read, input.fileName() + " line " + attempt.line(), attempt.line()));
      refused.addAll(attempt.faults());
    }
  }

  private static Attempt attempt(InputText input, WooferTable.Row row) {
    try {
      String place = input.fileName() + " line " + row.line();
      return new Attempt(
          row.line(), Optional.of(WooferReader.read(input, row.keys(), place)), List.of());
    } catch (InvalidInputException e) {
      return new Attempt(row.line(), Optional.empty(), e.faults());
    }
  }

  private void take(ReadWoofer read, String place, int line) {
    String name = read.woofer().name();
    String earlier = placeByName.putIfAbsent(name, place);
    if (earlier == null) {
      woofers.add(read);
      return;
    }
    refused.add(
        new InputFault(
            read.fileName(),
            line,
            "name",
            Excerpt.of(name),
            "the woofer of " + earlier + " has this name too",
            "a name of its own for each woofer",
            "write another name"));
  }

  private static List<Path> filesOf(Path folder) {
    List<Path> files;
    try (Stream<Path> entries = Files.list(folder)) {
      files =
          entries
              .filter(
                  file ->
                      endsWith(file, ".yaml") || endsWith(file, ".yml") || endsWith(file, ".csv"))
              .filter(file -> !String.valueOf(file.getFileName()).startsWith("."))
              .filter(file -> !Files.isDirectory(file))
              .sorted()
              .limit(MOST_FILES + 1L)
              .toList();
    } catch (IOException e) {
      throw FaultList.fatal(
          folder.toString(), 0, "", "the folder cannot be read", "", "check its permissions");
    }
    if (files.isEmpty() || files.size() > MOST_FILES) {
      throw FaultList.fatal(
          folder.toString(),
          0,
          "",
          files.isEmpty() ? "the folder holds no woofers" : "the folder holds too many woofers",
          "1 to " + MOST_FILES + " files that end in .yaml, .yml or .csv",
          "name the folder with the woofer files");
    }
    return files;
  }

  private static boolean endsWith(Path file, String ending) {
    return file.toString().toLowerCase(Locale.ROOT).endsWith(ending);
  }
}

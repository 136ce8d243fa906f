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
import nullplane.driver.Datasheet;
import nullplane.driver.Woofer;
import nullplane.faults.InputFault;
import nullplane.faults.InvalidInputException;

/** Reads woofers from YAML. All faults of a file, or of a folder, are told at once. */
public final class WooferReader {
  /** Most files of a folder that are read. */
  private static final int MOST_FILES = 2000;

  private WooferReader() {}

  /**
   * Reads one woofer file.
   *
   * @param file the file
   * @throws InvalidInputException with every fault of the file
   */
  public static ReadWoofer read(Path file) {
    refuseTable(file);
    return read(InputText.read(file));
  }

  private static void refuseTable(Path file) {
    if (endsWith(file, ".csv")) {
      throw FaultList.fatal(
          file.toString(),
          0,
          "",
          "this version reads woofers from YAML only",
          "a .yaml file or a folder of them",
          "write one YAML file for each row");
    }
  }

  /**
   * Reads a woofer from the bytes of a file.
   *
   * @param bytes the bytes
   * @param fileName the file as the user named it, for messages and for a woofer without a name
   * @throws InvalidInputException with every fault of the file
   */
  public static ReadWoofer read(byte[] bytes, String fileName) {
    return read(InputText.of(bytes, fileName));
  }

  /**
   * Reads one woofer file, or every .yaml and .yml file of a folder in the order of their names.
   * Hidden files and folders within are passed over.
   *
   * @param fileOrFolder the file or folder
   * @throws InvalidInputException with every fault of every file
   */
  public static List<ReadWoofer> readAll(Path fileOrFolder) {
    if (!Files.isDirectory(fileOrFolder)) {
      return List.of(read(fileOrFolder));
    }
    List<ReadWoofer> woofers = new ArrayList<>();
    List<InputFault> faults = new ArrayList<>();
    Map<String, String> fileByName = new HashMap<>();
    for (Path file : yamlFiles(fileOrFolder)) {
      try {
        ReadWoofer woofer = read(file);
        woofers.add(woofer);
        String name = woofer.woofer().name();
        String earlier = fileByName.putIfAbsent(name, woofer.fileName());
        if (earlier != null) {
          faults.add(
              new InputFault(
                  woofer.fileName(),
                  0,
                  "name",
                  Excerpt.of(name),
                  "the woofer of " + earlier + " has this name too",
                  "a name of its own for each woofer",
                  "write another name"));
        }
      } catch (InvalidInputException e) {
        faults.addAll(e.faults());
      }
    }
    if (!faults.isEmpty()) {
      throw new InvalidInputException(faults);
    }
    return List.copyOf(woofers);
  }

  private static List<Path> yamlFiles(Path folder) {
    List<Path> files;
    try (Stream<Path> entries = Files.list(folder)) {
      files =
          entries
              .filter(file -> endsWith(file, ".yaml") || endsWith(file, ".yml"))
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
          "1 to " + MOST_FILES + " files that end in .yaml or .yml",
          "name the folder with the woofer files");
    }
    return files;
  }

  private static boolean endsWith(Path file, String ending) {
    return file.toString().toLowerCase(Locale.ROOT).endsWith(ending);
  }

  /**
   * Reads one woofer file as far as its figures go: they need not suffice for a woofer.
   *
   * @param file the file
   * @throws InvalidInputException with every fault of the file
   */
  public static ReadDatasheet readDatasheet(Path file) {
    refuseTable(file);
    InputText input = InputText.read(file);
    FaultList faults = new FaultList(input.fileName());
    Optional<Datasheet> data =
        sheet(input, faults).flatMap(sheet -> sheet.data(stem(input.fileName())));
    faults.throwIfAny();
    return new ReadDatasheet(data.orElseThrow(), input.digest(), input.fileName());
  }

  private static ReadWoofer read(InputText input) {
    FaultList faults = new FaultList(input.fileName());
    Optional<WooferSheet> sheet = sheet(input, faults);
    Optional<Datasheet> data = sheet.flatMap(known -> known.data(stem(input.fileName())));
    sheet.ifPresent(WooferSheet::requireAll);
    faults.throwIfAny();
    Optional<Woofer> woofer = sheet.orElseThrow().woofer(data.orElseThrow());
    faults.throwIfAny();
    return new ReadWoofer(
        woofer.orElseThrow(), data.orElseThrow(), input.digest(), input.fileName());
  }

  private static Optional<WooferSheet> sheet(InputText input, FaultList faults) {
    return Section.of(faults, "", YamlTree.of(input), WooferSheet.EXAMPLE, WooferSheet.KEYS)
        .map(WooferSheet::new);
  }

  /** Returns the file's name without folders and ending, to name a woofer by. */
  private static String stem(String fileName) {
    String name = String.valueOf(Path.of(fileName).getFileName());
    int dot = name.lastIndexOf('.');
    return Excerpt.of(dot > 0 ? name.substring(0, dot) : name);
  }
}

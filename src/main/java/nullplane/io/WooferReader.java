package nullplane.io;

import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import nullplane.driver.Datasheet;
import nullplane.driver.Woofer;
import nullplane.faults.InvalidInputException;

/** Reads a woofer from YAML. All faults of a file are told at once. */
public final class WooferReader {
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
          "this is a table of woofers, and one woofer is wanted here",
          "a .yaml file",
          "write the row as a YAML file of its own, or give the table to judge");
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
        sheet(YamlTree.of(input), faults).flatMap(sheet -> sheet.data(stem(input.fileName())));
    faults.throwIfAny();
    return new ReadDatasheet(data.orElseThrow(), input.digest(), input.fileName());
  }

  private static ReadWoofer read(InputText input) {
    return read(input, YamlTree.of(input), input.fileName());
  }

  /**
   * Reads a woofer from a block of keys.
   *
   * @param input the file that holds it
   * @param keys the block
   * @param place where it stands, for people
   */
  static ReadWoofer read(InputText input, YamlNode keys, String place) {
    FaultList faults = new FaultList(input.fileName());
    Optional<WooferSheet> sheet = sheet(keys, faults);
    Optional<Datasheet> data = sheet.flatMap(known -> known.data(stem(place)));
    sheet.ifPresent(WooferSheet::requireAll);
    faults.throwIfAny();
    Optional<Woofer> woofer = sheet.orElseThrow().woofer(data.orElseThrow());
    faults.throwIfAny();
    return new ReadWoofer(woofer.orElseThrow(), data.orElseThrow(), input.digest(), place);
  }

  private static Optional<WooferSheet> sheet(YamlNode keys, FaultList faults) {
    return Section.of(faults, "", keys, WooferSheet.EXAMPLE, WooferSheet.KEYS)
        .map(WooferSheet::new);
  }

  /** Returns the file's name without folders and ending, to name a woofer by. */
  private static String stem(String fileName) {
    String name = String.valueOf(Path.of(fileName).getFileName());
    int dot = name.lastIndexOf('.');
    return Excerpt.of(dot > 0 ? name.substring(0, dot) : name);
  }
}

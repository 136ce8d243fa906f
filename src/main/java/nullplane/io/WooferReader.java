package nullplane.io;

import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
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
    if (endsWith(file, ".csv")) {
      throw FaultList.fatal(
          file.toString(),
          0,
          "",
          "this is a table of woofers, and one woofer is wanted here",
          "a .yaml file",
          "write the row as a YAML file of its own, or give the table to judge");
    }
    return read(InputText.read(file));
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
    Optional<Woofer> woofer =
        Section.of(faults, "", keys, WooferSheet.EXAMPLE, WooferSheet.KEYS)
            .flatMap(section -> new WooferSheet(section).read(stem(place)));
    faults.throwIfAny();
    return new ReadWoofer(woofer.orElseThrow(), input.digest(), place);
  }

  /** Returns the file's name without folders and ending, to name a woofer by. */
  private static String stem(String fileName) {
    String name = String.valueOf(Path.of(fileName).getFileName());
    int dot = name.lastIndexOf('.');
    return Excerpt.of(dot > 0 ? name.substring(0, dot) : name);
  }
}

package nullplane.io;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import nullplane.faults.OutputException;

/** Files that are written where none of their names is taken: all of them or none. */
public final class NewFiles {
  private NewFiles() {}

  /**
   * Writes files into a folder, which is made if it is not there. What the folder holds already
   * stays as it is.
   *
   * @param folder the folder
   * @param files contents by name, in the order of writing
   * @return the paths of the files, in that order
   * @throws OutputException if a name is taken or a file cannot be written; none is there then
   */
  public static List<Path> write(Path folder, Map<String, byte[]> files) {
    if (Files.exists(folder) && !Files.isDirectory(folder)) {
      throw new OutputException(folder.toString(), "a file has this name; name a folder");
    }
    for (String name : files.keySet()) {
      refuseTaken(folder.resolve(name));
    }
    Map<Path, Path> gathered = new LinkedHashMap<>();
    List<Path> written = new ArrayList<>();
    boolean done = false;
    try {
      Files.createDirectories(folder);
      for (Map.Entry<String, byte[]> file : files.entrySet()) {
        Path aside = Files.createTempFile(folder, ".starting-", ".tmp");
        gathered.put(aside, folder.resolve(file.getKey()));
        aside.toFile().setReadable(true, false);
        Files.write(aside, file.getValue());
      }
      for (Map.Entry<Path, Path> file : gathered.entrySet()) {
        Files.move(file.getKey(), file.getValue()); // fails if the name is taken meanwhile
        written.add(file.getValue());
      }
      done = true;
      return List.copyOf(written);
    } catch (FileAlreadyExistsException e) {
      String taken = Excerpt.of(String.valueOf(e.getMessage()));
      throw new OutputException(
          folder.toString(), taken + " has this name already; name another folder");
    } catch (IOException e) {
      throw new OutputException(folder.toString(), ResultFolder.reason(e));
    } finally {
      if (!done) {
        written.forEach(NewFiles::delete);
        gathered.keySet().forEach(NewFiles::delete);
      }
    }
  }

  private static void refuseTaken(Path file) {
    if (Files.exists(file, LinkOption.NOFOLLOW_LINKS)) {
      throw new OutputException(
          file.toString(), "a file has this name already; name another folder");
    }
  }

  private static void delete(Path file) {
    try {
      Files.deleteIfExists(file);
    } catch (IOException e) {
      // It stays; the fault that is told matters more.
    }
  }
}

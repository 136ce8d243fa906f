package nullplane.io;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.Optional;
import nullplane.faults.InputFault;
import nullplane.faults.InvalidInputException;
import nullplane.faults.OutputException;

/**
 * A file that holds the latest state of a run. A state is written beside it, flushed to the disk
 * and renamed, so that the file holds the state before or the new one, whole, whenever the run is
 * cut off. One run at a time may write it.
 */
public final class StateFile {
  /** The largest file that is read (bytes): 512 MiB. */
  private static final long MOST_BYTES = 512L << 20;

  private static final String PASSING_END = ".part";

  private final Path file;
  private final Path passing;

  /**
   * @param file where the state is kept; its folder is made when the first is written
   */
  public StateFile(Path file) {
    this.file = file;
    this.passing = file.resolveSibling(file.getFileName() + PASSING_END);
  }

  /** Returns where the state is kept. */
  public Path file() {
    return file;
  }

  /**
   * Returns the latest state; empty if none was kept.
   *
   * @throws InvalidInputException if there is a file that cannot be read
   */
  public Optional<byte[]> read() {
    try {
      if (Files.size(file) > MOST_BYTES) {
        throw unreadable("it is larger than 512 MiB");
      }
      return Optional.of(Files.readAllBytes(file));
    } catch (NoSuchFileException e) {
      return Optional.empty();
    } catch (IOException e) {
      throw unreadable(reason(e));
    }
  }

  /**
   * Puts a state in place of the one before.
   *
   * @throws OutputException if it cannot be written; the one before is still there
   */
  public void write(byte[] state) {
    try {
      if (file.getParent() != null) {
        Files.createDirectories(file.getParent());
      }
      try (FileChannel channel =
          FileChannel.open(
              passing,
              StandardOpenOption.CREATE,
              StandardOpenOption.WRITE,
              StandardOpenOption.TRUNCATE_EXISTING)) {
        ByteBuffer buffer = ByteBuffer.wrap(state);
        while (buffer.hasRemaining()) {
          channel.write(buffer);
        }
        channel.force(true);
      }
      Files.move(passing, file, StandardCopyOption.ATOMIC_MOVE);
    } catch (IOException | UnsupportedOperationException e) {
      throw new OutputException(file.toString(), reason(e));
    }
  }

  /**
   * Removes the state, and what a run that was cut off left beside it.
   *
   * @throws OutputException if it cannot be removed
   */
  public void delete() {
    try {
      Files.deleteIfExists(passing);
      Files.deleteIfExists(file);
    } catch (IOException e) {
      throw new OutputException(file.toString(), reason(e));
    }
  }

  private InvalidInputException unreadable(String why) {
    return new InvalidInputException(
        List.of(
            new InputFault(
                file.toString(),
                0,
                "",
                "",
                "the kept state cannot be read: " + why,
                "",
                "remove the file to start afresh")));
  }

  private static String reason(Exception e) {
    if (e instanceof AccessDeniedException) {
      return "permission denied";
    }
    if (e instanceof NoSuchFileException) {
      return "the folder does not exist";
    }
    if (e instanceof FileSystemException system && system.getReason() != null) {
      return Excerpt.of(system.getReason());
    }
    return Excerpt.of(e.getMessage() == null ? e.getClass().getSimpleName() : e.getMessage());
  }
}

package nullplane.io;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Arrays;
import java.util.Optional;
import java.util.UUID;

/**
 * The right to write one folder, held by one run at a time: a lock on a hidden file beside the
 * folder. The operating system takes the lock back when a process ends, however it ends, so a
 * killed run blocks nobody.
 */
final class FolderClaim implements AutoCloseable {
  private static final int ATTEMPTS = 100;
  private static final int LONGEST = 200;

  /** The byte that is locked lies behind the text, so that others can read who holds it. */
  private static final long LOCKED_BYTE = Long.MAX_VALUE - 1;

  private final Path file;
  private final Optional<FileChannel> channel;

  private FolderClaim(Path file, Optional<FileChannel> channel) {
    this.file = file;
    this.channel = channel;
  }

  /** Another run holds the claim. */
  static final class HeldException extends Exception {
    private static final long serialVersionUID = 1L;

    private HeldException(String holder) {
      super(holder);
    }
  }

  /**
   * Claims a folder.
   *
   * @param parent where the folder stands; must exist
   * @param name its name
   * @throws HeldException if another run holds it; the message says which
   * @throws IOException if nothing can be written there
   */
  static FolderClaim take(Path parent, Path name) throws IOException, HeldException {
    Path file = parent.resolve("." + name + ".lock");
    byte[] token =
        ("process " + ProcessHandle.current().pid() + "\n" + UUID.randomUUID() + "\n")
            .getBytes(StandardCharsets.UTF_8);
    for (int i = 0; i < ATTEMPTS; i++) {
      Optional<FolderClaim> claim = attempt(file, token);
      if (claim.isPresent()) {
        return claim.get();
      }
    }
    throw new HeldException("others, again and again");
  }

  /** Returns whether this claim keeps others away; not so on disks that know no locks. */
  boolean exclusive() {
    return channel.isPresent();
  }

  /** Gives the folder free. */
  @Override
  public void close() {
    if (channel.isEmpty()) {
      return;
    }
    try {
      Files.deleteIfExists(file); // while it is locked: nobody else takes this file for theirs
    } catch (IOException e) {
      // It stays, and is taken by the next claim.
    }
    try {
      channel.get().close();
    } catch (IOException e) {
      // The lock ends with the process at the latest.
    }
  }

  /** Returns a claim; nothing if the file went away meanwhile. */
  private static Optional<FolderClaim> attempt(Path file, byte[] token)
      throws IOException, HeldException {
    FileChannel channel =
        FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
    boolean ours = false;
    try {
      Optional<Boolean> locked = lock(channel);
      if (locked.isEmpty()) {
        Files.deleteIfExists(file);
        return Optional.of(new FolderClaim(file, Optional.empty()));
      }
      if (!locked.get()) {
        throw new HeldException(holder(file));
      }
      channel.truncate(0);
      ByteBuffer bytes = ByteBuffer.wrap(token);
      while (bytes.hasRemaining()) {
        channel.write(bytes);
      }
      // The holder before may have deleted the file after it was opened here.
      ours = Arrays.equals(content(file), token);
      return ours ? Optional.of(new FolderClaim(file, Optional.of(channel))) : Optional.empty();
    } finally {
      if (!ours) {
        channel.close();
      }
    }
  }

  /** Returns whether the lock was got; nothing if the disk knows no locks. */
  private static Optional<Boolean> lock(FileChannel channel) {
    try {
      FileLock lock = channel.tryLock(LOCKED_BYTE, 1, false);
      return Optional.of(lock != null);
    } catch (OverlappingFileLockException e) {
      return Optional.of(false); // this process holds it
    } catch (IOException e) {
      return Optional.empty();
    }
  }

  private static byte[] content(Path file) throws IOException {
    try (var in = Files.newInputStream(file)) {
      return in.readNBytes(LONGEST);
    } catch (NoSuchFileException e) {
      return new byte[0];
    }
  }

  private static String holder(Path file) {
    try {
      String first =
          new String(content(file), StandardCharsets.UTF_8).lines().findFirst().orElse("");
      return first.isBlank() ? "another process" : Excerpt.of(first);
    } catch (IOException e) {
      return "another process";
    }
  }
}

package nullplane.io;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/**
 * The right to write one folder, held by one run at a time: a lock on a hidden file beside the
 * folder. The operating system takes the lock back when a process ends, however it ends, so a
 * killed run blocks nobody.
 *
 * <p>POSIX systems drop a process's locks on a file as soon as the process closes any of its
 * handles on it. So the file is not opened a second time while it is locked: that it is still the
 * one of that name is told by its length, and claims of this process are also kept in memory.
 * Source: IEEE Std 1003.1-2017, fcntl, "all locks associated with a file for a given process".
 */
final class FolderClaim implements AutoCloseable {
  private static final int ATTEMPTS = 100;
  private static final int LONGEST = 200;
  private static final int LEAST_LENGTH = 100;
  private static final int MOST_LENGTH = 4000;
  private static final Set<Path> HELD_HERE = ConcurrentHashMap.newKeySet();

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
    Path file = parent.toRealPath().resolve("." + name + ".lock");
    String holder = "process " + ProcessHandle.current().pid();
    if (!HELD_HERE.add(file)) {
      throw new HeldException(holder);
    }
    boolean ours = false;
    try {
      for (int i = 0; i < ATTEMPTS; i++) {
        Optional<FolderClaim> claim = attempt(file, holder + "\n");
        if (claim.isPresent()) {
          ours = true;
          return claim.get();
        }
      }
      throw new HeldException("others, again and again");
    } finally {
      if (!ours) {
        HELD_HERE.remove(file);
      }
    }
  }

  /** Returns whether this claim keeps others away; not so on disks that know no locks. */
  boolean exclusive() {
    return channel.isPresent();
  }

  /** Gives the folder free. */
  @Override
  public void close() {
    if (channel.isEmpty()) {
      HELD_HERE.remove(file);
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
    HELD_HERE.remove(file);
  }

  /** Returns a claim; nothing if the file went away meanwhile. */
  private static Optional<FolderClaim> attempt(Path file, String holder)
      throws IOException, HeldException {
    FileChannel channel =
        FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
    boolean ours = false;
    try {
      Optional<Boolean> locked = lock(channel);
      if (locked.isEmpty()) {
        channel.close();
        Files.deleteIfExists(file);
        return Optional.of(new FolderClaim(file, Optional.empty()));
      }
      if (!locked.get()) {
        throw new HeldException(holder(file));
      }
      int length = length();
      String text = holder + ".".repeat(length - holder.length());
      write(channel, text, file);
      // The holder before may have deleted the file after it was opened here.
      ours = Files.exists(file) && Files.size(file) == length;
      return ours ? Optional.of(new FolderClaim(file, Optional.of(channel))) : Optional.empty();
    } finally {
      if (!ours) {
        channel.close();
      }
    }
  }

  /** Returns a length that no other claim has but by a rare chance. */
  private static int length() {
    long moment = System.nanoTime() / 1000 + 31 * ProcessHandle.current().pid();
    return LEAST_LENGTH + Math.floorMod(moment, MOST_LENGTH - LEAST_LENGTH);
  }

  private static void write(FileChannel channel, String text, Path file) throws IOException {
    try {
      channel.truncate(0);
      ByteBuffer bytes = ByteBuffer.wrap(text.getBytes(StandardCharsets.UTF_8));
      while (bytes.hasRemaining()) {
        channel.write(bytes);
      }
    } catch (IOException e) {
      Files.deleteIfExists(file); // a full disk; nothing may stay behind
      throw e;
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

  private static String holder(Path file) {
    try (InputStream in = Files.newInputStream(file)) {
      String first =
          new String(in.readNBytes(LONGEST), StandardCharsets.UTF_8).lines().findFirst().orElse("");
      return first.isBlank() ? "another process" : Excerpt.of(first);
    } catch (IOException e) {
      return "another process";
    }
  }
}

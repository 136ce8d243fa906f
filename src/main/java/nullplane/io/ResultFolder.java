package nullplane.io;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.AccessDeniedException;
import java.nio.file.DirectoryNotEmptyException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.stream.Stream;
import nullplane.faults.OutputException;

/**
 * A folder of results that appears whole or not at all. Files gather in a hidden folder beside the
 * final one; {@link #publish} flushes them to the disk and renames. Until then, and whenever
 * something fails, an earlier run in the final place stays as it was. Close without publishing
 * throws the gathered files away.
 *
 * <p>One run at a time writes a folder; a second one is told so when it starts. What a killed run
 * left behind is put in order by the next one.
 *
 * <p>Only an empty folder, or one that an earlier run wrote and nobody added to, is replaced.
 */
public final class ResultFolder implements AutoCloseable {
  private static final int ATTEMPTS = 100;

  private final String shown;
  private final Path finalPath;
  private final Path gathering;
  private final Renaming renaming;
  private final Deque<Path> madeParents;
  private final FolderClaim claim;
  private final Map<String, RunManifest.FileEntry> entries = new TreeMap<>();
  private boolean done;
  private boolean closed;

  private ResultFolder(
      String shown,
      Path finalPath,
      Path gathering,
      Renaming renaming,
      Deque<Path> madeParents,
      FolderClaim claim) {
    this.shown = shown;
    this.finalPath = finalPath;
    this.gathering = gathering;
    this.renaming = renaming;
    this.madeParents = madeParents;
    this.claim = claim;
  }

  /** Renames a folder within one disk. */
  interface Renaming {
    /** Renames a folder; the new name must not exist. */
    void rename(Path from, Path to) throws IOException;
  }

  /**
   * Starts a result folder. Call it before a long computation: a place that cannot be written, or
   * that another run is about to write, is found at once. What a killed run left there is put in
   * order.
   *
   * @param folder the final folder; missing parents are made
   * @param notice takes lines for the user about what a killed run left
   * @throws OutputException if the place cannot be written, is no folder, belongs to another run
   *     that goes on, or holds a folder that must not be replaced
   */
  public static ResultFolder open(Path folder, Consumer<String> notice) {
    return open(folder, notice, ResultFolder::renameAtomically);
  }

  /** Starts a result folder with a given way to rename. */
  static ResultFolder open(Path folder, Consumer<String> notice, Renaming renaming) {
    String shown = folder.toString();
    Deque<Path> made = new ArrayDeque<>();
    try {
      Path target = folder.toAbsolutePath().normalize();
      if (Files.isSymbolicLink(target) && Files.isDirectory(target)) {
        target = target.toRealPath();
      }
      Path parent = target.getParent();
      Path name = target.getFileName();
      if (parent == null || name == null) {
        throw new OutputException(shown, "this is the root of a disk; name a folder in it");
      }
      makeParents(parent, made);
      return claimed(shown, target, FolderClaim.take(parent, name), notice, renaming, made);
    } catch (FolderClaim.HeldException e) {
      removeParents(made);
      throw new OutputException(
          shown,
          "another run ("
              + e.getMessage()
              + ") is about to write it; wait for that run, or name another folder with --out");
    } catch (IOException e) {
      removeParents(made);
      throw new OutputException(shown, reason(e));
    } catch (OutputException e) {
      removeParents(made);
      throw e;
    }
  }

  private static ResultFolder claimed(
      String shown,
      Path target,
      FolderClaim claim,
      Consumer<String> notice,
      Renaming renaming,
      Deque<Path> made)
      throws IOException {
    boolean well = false;
    try {
      if (claim.exclusive()) {
        Leftovers.clear(target, nameOf(target), renaming).forEach(notice);
      }
      refuseForeign(shown, target);
      Path gathering = makeSibling(parentOf(target), nameOf(target), Leftovers.GATHERING);
      well = true;
      return new ResultFolder(shown, target, gathering, renaming, made, claim);
    } finally {
      if (!well) {
        claim.close();
      }
    }
  }

  /**
   * Adds a file.
   *
   * @param name path within the folder, with forward slashes, for example "plots/level.png"
   * @param bytes its content
   * @throws OutputException if it cannot be written
   * @throws IllegalArgumentException if the name leaves the folder, is taken, or is the manifest's
   * @throws IllegalStateException after {@link #publish} or {@link #close}
   */
  public void add(String name, byte[] bytes) {
    requireOpen();
    Path file = within(name);
    if (name.equals(RunManifest.FILE_NAME) || entries.containsKey(name)) {
      throw new IllegalArgumentException("the name " + name + " is taken");
    }
    try {
      if (!Files.isDirectory(gathering)) {
        throw new NoSuchFileException(gathering.toString());
      }
      Files.createDirectories(parentOf(file));
      writeFlushed(file, bytes);
    } catch (IOException e) {
      throw new OutputException(shown + "/" + name, reason(e));
    }
    entries.put(name, new RunManifest.FileEntry(name, bytes.length, Sha256.hex(bytes)));
  }

  /** Returns the files added so far, by name. */
  public List<RunManifest.FileEntry> files() {
    return List.copyOf(entries.values());
  }

  /**
   * Writes the manifest and puts the folder in its final place.
   *
   * @param manifest the run
   * @throws OutputException if that fails; the final place is then as it was before
   */
  public void publish(RunManifest manifest) {
    requireOpen();
    try {
      requireAllThere();
      writeFlushed(gathering.resolve(RunManifest.FILE_NAME), manifest.toJson(files()));
      flushFolders();
      refuseForeign(shown, finalPath);
      replace();
      done = true;
    } catch (IOException e) {
      throw new OutputException(shown, reason(e));
    } finally {
      close();
    }
  }

  /** Throws away what was not published. Does nothing after {@link #publish} went well. */
  @Override
  public void close() {
    if (!closed) {
      closed = true;
      if (!done) {
        done = true;
        Leftovers.delete(gathering);
      }
      claim.close();
      removeParents(madeParents); // those that hold nothing
    }
  }

  private void requireOpen() {
    if (done) {
      throw new IllegalStateException("the result folder is closed");
    }
  }

  private Path within(String name) {
    try {
      Path file = gathering.resolve(name).normalize();
      if (name.isEmpty()
          || name.indexOf('\\') >= 0
          || !file.startsWith(gathering)
          || file.equals(gathering)
          || !file.equals(gathering.resolve(name))) {
        throw new IllegalArgumentException("a file name that leaves its folder: " + name);
      }
      return file;
    } catch (InvalidPathException e) {
      throw new IllegalArgumentException("not a file name: " + name, e);
    }
  }

  /** Moves an earlier run aside, the new one in, and deletes the earlier one last. */
  private void replace() throws IOException {
    if (!Files.exists(finalPath, LinkOption.NOFOLLOW_LINKS)) {
      renaming.rename(gathering, finalPath);
      flushFolder(parentOf(finalPath));
      return;
    }
    Path holder = makeSibling(parentOf(finalPath), nameOf(finalPath), Leftovers.ASIDE);
    Path aside = holder.resolve(Leftovers.RUN);
    try {
      renaming.rename(finalPath, aside);
      try {
        renaming.rename(gathering, finalPath);
      } catch (IOException e) {
        renaming.rename(aside, finalPath);
        throw e;
      }
      flushFolder(parentOf(finalPath));
    } catch (IOException e) {
      Files.deleteIfExists(holder); // only if it is empty: an earlier run is never deleted here
      throw e;
    }
    Leftovers.delete(holder);
  }

  /** Fails if somebody took away or cut a file that was added. */
  private void requireAllThere() throws IOException {
    for (RunManifest.FileEntry entry : entries.values()) {
      if (Files.size(gathering.resolve(entry.name())) != entry.bytes()) {
        throw new IOException(entry.name() + " changed while the run went on");
      }
    }
  }

  private void flushFolders() throws IOException {
    List<Path> folders;
    try (Stream<Path> all = Files.walk(gathering)) {
      folders = new ArrayList<>(all.filter(Files::isDirectory).toList());
    }
    Collections.reverse(folders);
    for (Path folder : folders) {
      flushFolder(folder);
    }
  }

  private static void writeFlushed(Path file, byte[] bytes) throws IOException {
    try (FileChannel channel =
        FileChannel.open(file, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
      ByteBuffer buffer = ByteBuffer.wrap(bytes);
      while (buffer.hasRemaining()) {
        channel.write(buffer);
      }
      channel.force(true);
    }
  }

  /** Flushes a folder's entries; systems that cannot open a folder do without. */
  private static void flushFolder(Path folder) {
    try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
      channel.force(true);
    } catch (IOException e) {
      // Not every system can; the files themselves are flushed already.
    }
  }

  private static void renameAtomically(Path from, Path to) throws IOException {
    Files.move(from, to, StandardCopyOption.ATOMIC_MOVE);
  }

  private static void refuseForeign(String shown, Path folder) throws IOException {
    if (!Files.exists(folder, LinkOption.NOFOLLOW_LINKS)) {
      return;
    }
    if (!Files.isDirectory(folder)) {
      throw new OutputException(shown, "a file has this name; name a folder");
    }
    EarlierRun.objection(folder)
        .ifPresent(
            objection -> {
              throw new OutputException(shown, objection);
            });
  }

  private static Path makeSibling(Path parent, Path name, String kind) throws IOException {
    String start = Leftovers.start(name, kind) + ProcessHandle.current().pid() + "-";
    for (int i = 0; i < ATTEMPTS; i++) {
      try {
        return Files.createDirectory(parent.resolve(start + i));
      } catch (FileAlreadyExistsException e) {
        // Another run of this process gathers there; take the next number.
      }
    }
    throw new IOException("too many unfinished results beside it; delete " + start + "*");
  }

  private static void makeParents(Path parent, Deque<Path> made) throws IOException {
    if (Files.isDirectory(parent)) {
      return;
    }
    Path above = parent.getParent();
    if (above != null) {
      makeParents(above, made);
    }
    try {
      Files.createDirectory(parent);
      made.push(parent);
    } catch (FileAlreadyExistsException e) {
      if (!Files.isDirectory(parent)) {
        throw e;
      }
    }
  }

  private static void removeParents(Deque<Path> made) {
    for (Path parent : made) {
      try {
        Files.deleteIfExists(parent);
      } catch (IOException e) {
        return; // somebody uses it by now
      }
    }
  }

  private static Path parentOf(Path path) {
    Path parent = path.getParent();
    return parent == null ? path : parent;
  }

  private static Path nameOf(Path path) {
    Path name = path.getFileName();
    return name == null ? path : name;
  }

  static String reason(IOException e) {
    if (e instanceof NoSuchFileException) {
      return "the folder it should stand in is missing or went away";
    }
    if (e instanceof FileAlreadyExistsException || e instanceof DirectoryNotEmptyException) {
      return "something else has that name: " + Excerpt.of(String.valueOf(e.getMessage()));
    }
    if (e instanceof AccessDeniedException) {
      return "permission denied; choose a folder you may write to";
    }
    if (e instanceof FileSystemException system && system.getReason() != null) {
      return Excerpt.of(system.getReason()) + "; choose another folder";
    }
    return Excerpt.of(String.valueOf(e.getMessage()));
  }
}

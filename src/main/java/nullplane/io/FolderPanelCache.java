package nullplane.io;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.channels.ClosedByInterruptException;
import java.nio.channels.FileChannel;
import java.nio.file.AccessDeniedException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.ReadOnlyFileSystemException;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Consumer;
import java.util.regex.Pattern;
import nullplane.acoustics.PanelSolution;

/**
 * A cache of one file per key. An entry is written under a passing name, flushed and renamed, so
 * that readers and other processes see it whole or not at all; whoever renames last wins, and all
 * have written the same. Only files named as entries and passing files are ever touched.
 */
final class FolderPanelCache implements PanelCache {
  /** The most that entries take up together (bytes): 256 MiB. */
  static final long MOST_BYTES = 256L << 20;

  private static final String ENTRY_END = ".panel";
  private static final String PASSING_END = ".part";
  private static final Pattern ENTRY = Pattern.compile("[0-9a-f]{64}\\.panel");
  private static final Pattern PASSING = Pattern.compile("[0-9a-f]{64}\\.[0-9]+\\.part");
  private static final Duration ABANDONED = Duration.ofDays(1);

  private final Path folder;
  private final Consumer<String> notice;
  private final long mostBytes;
  private final AtomicBoolean toldUnkept = new AtomicBoolean();

  FolderPanelCache(Path folder, Consumer<String> notice, long mostBytes) {
    this.folder = folder;
    this.notice = notice;
    this.mostBytes = mostBytes;
  }

  private record Entry(Path file, long bytes, Instant modified) {}

  @Override
  public Optional<List<PanelSolution>> find(PanelCacheKey key) {
    Path file = fileOf(key);
    if (!Files.isDirectory(folder)) {
      return Optional.empty();
    }
    try {
      return Optional.of(CacheEntry.decode(key, read(file)));
    } catch (NoSuchFileException e) {
      return Optional.empty();
    } catch (DamagedEntryException e) {
      notice.accept(
          "cache entry " + file + " is damaged (" + e.getMessage() + "); computing it again");
      deleteQuietly(file);
      return Optional.empty();
    } catch (IOException | UnsupportedOperationException e) {
      notice.accept(
          "cache entry " + file + " cannot be read (" + reason(e) + "); computing it again");
      return Optional.empty();
    }
  }

  @Override
  public void keep(PanelCacheKey key, List<PanelSolution> solutions) {
    Optional<String> objection = CacheEntry.objection(solutions);
    if (objection.isPresent()) {
      tellUnkept(objection.get());
      return;
    }
    try {
      write(fileOf(key), key.hex(), CacheEntry.encode(key, solutions));
    } catch (IOException | UnsupportedOperationException e) {
      tellUnkept(folder + ": " + reason(e));
      return;
    }
    tidy(fileOf(key));
  }

  private Path fileOf(PanelCacheKey key) {
    return folder.resolve(key.hex() + ENTRY_END);
  }

  private static byte[] read(Path file) throws IOException, DamagedEntryException {
    BasicFileAttributes attributes = Files.readAttributes(file, BasicFileAttributes.class);
    if (!attributes.isRegularFile()) {
      throw new DamagedEntryException("it is no file");
    }
    if (attributes.size() > CacheEntry.MOST_BYTES) {
      throw new DamagedEntryException("it is larger than 64 MiB");
    }
    try (InputStream in = Files.newInputStream(file)) {
      return in.readNBytes((int) attributes.size());
    }
  }

  private void write(Path file, String name, byte[] bytes) throws IOException {
    makeFolder();
    Path passing = Files.createTempFile(folder, name + ".", PASSING_END);
    try {
      writeFlushed(passing, bytes);
      try {
        Files.move(passing, file, StandardCopyOption.ATOMIC_MOVE);
      } catch (AccessDeniedException e) {
        // Some systems refuse while another process has the file open: it is there, then.
        if (!Files.isRegularFile(file)) {
          throw e;
        }
      }
    } finally {
      deleteQuietly(passing);
    }
  }

  /** Makes the folder, for its owner only where the system knows owners. */
  private void makeFolder() throws IOException {
    if (Files.isDirectory(folder)) {
      return;
    }
    if (folder.getFileSystem().supportedFileAttributeViews().contains("posix")) {
      Files.createDirectories(
          folder,
          PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rwx------")));
    } else {
      Files.createDirectories(folder);
    }
  }

  private static void writeFlushed(Path file, byte[] bytes) throws IOException {
    try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
      ByteBuffer buffer = ByteBuffer.wrap(bytes);
      while (buffer.hasRemaining()) {
        channel.write(buffer);
      }
      channel.force(true);
    }
  }

  /** Removes what was abandoned, and the oldest entries while all are too large together. */
  private void tidy(Path newest) {
    List<Entry> entries = new ArrayList<>();
    Instant abandoned = Instant.now().minus(ABANDONED);
    try (DirectoryStream<Path> files = Files.newDirectoryStream(folder)) {
      for (Path file : files) {
        String name = String.valueOf(file.getFileName());
        boolean entry = ENTRY.matcher(name).matches();
        if (!entry && !PASSING.matcher(name).matches()) {
          continue;
        }
        Optional<Entry> found = look(file);
        if (entry) {
          found.ifPresent(entries::add);
        } else if (found.isPresent() && found.get().modified().isBefore(abandoned)) {
          deleteQuietly(file);
        }
      }
    } catch (IOException | DirectoryIteratorException e) {
      return; // the next run tidies up
    }
    long total = entries.stream().mapToLong(Entry::bytes).sum();
    entries.removeIf(entry -> entry.file().equals(newest));
    entries.sort(Comparator.comparing(Entry::modified).thenComparing(Entry::file));
    for (Entry entry : entries) {
      if (total <= mostBytes) {
        return;
      }
      deleteQuietly(entry.file());
      total -= entry.bytes();
    }
  }

  /** Returns a file's size and age; empty if it went away or is no file. */
  private static Optional<Entry> look(Path file) {
    try {
      BasicFileAttributes attributes =
          Files.readAttributes(file, BasicFileAttributes.class, LinkOption.NOFOLLOW_LINKS);
      return attributes.isRegularFile()
          ? Optional.of(
              new Entry(file, attributes.size(), attributes.lastModifiedTime().toInstant()))
          : Optional.empty();
    } catch (IOException e) {
      return Optional.empty();
    }
  }

  private void tellUnkept(String why) {
    if (!toldUnkept.getAndSet(true)) {
      notice.accept("cannot keep panel acoustics in the cache: " + why + "; going on without");
    }
  }

  private static void deleteQuietly(Path file) {
    try {
      Files.deleteIfExists(file);
    } catch (IOException | UnsupportedOperationException e) {
      // It stays; an entry is checked whenever it is read.
    }
  }

  private static String reason(Exception e) {
    if (e instanceof AccessDeniedException) {
      return "permission denied";
    }
    if (e instanceof NoSuchFileException) {
      return "the folder went away";
    }
    if (e instanceof FileAlreadyExistsException) {
      return "a file has that name";
    }
    if (e instanceof ReadOnlyFileSystemException) {
      return "it can only be read";
    }
    if (e instanceof ClosedByInterruptException) {
      return "the run was stopped";
    }
    if (e instanceof FileSystemException system && system.getReason() != null) {
      return Excerpt.of(system.getReason());
    }
    return Excerpt.of(e.getMessage() == null ? e.getClass().getSimpleName() : e.getMessage());
  }
}

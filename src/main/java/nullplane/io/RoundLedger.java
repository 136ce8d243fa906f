package nullplane.io;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.function.Consumer;
import nullplane.faults.InputFault;
import nullplane.faults.InvalidInputException;
import nullplane.faults.OutputException;
import nullplane.sample.LedgerEntry;

/**
 * The rounds of a project on disk: a folder with one file, to whose end records are added and from
 * which nothing is ever taken. Each record is one line, written by one call and flushed to the disk
 * before the next one starts. A line that a crash or a full disk cut off is told and set aside in a
 * file of its own before anything is added; the records before it stay as they are. One writer at a
 * time, by a lock on the file.
 */
public final class RoundLedger {
  /** Name of the file in its folder. */
  public static final String FILE_NAME = "rounds.jsonl";

  private static final long PATIENCE_MS = 10_000;
  private static final long NAP_MS = 20;
  private static final long LARGEST = 64L << 20;
  private static final int MOST_TORN = 10_000;

  private final Path folder;
  private final Path file;
  private final Consumer<String> notice;

  /**
   * @param folder the project's folder
   * @param notice takes one line for each record that is damaged, cut off or missing
   */
  public RoundLedger(Path folder, Consumer<String> notice) {
    this.folder = folder;
    this.file = folder.resolve(FILE_NAME);
    this.notice = notice;
  }

  /**
   * Returns what is on record, and changes nothing.
   *
   * @throws InvalidInputException if there is no ledger or it cannot be read
   */
  public LedgerContents read() {
    try (FileChannel channel = FileChannel.open(file, StandardOpenOption.READ)) {
      lock(channel, true);
      LedgerContents contents = LedgerContents.of(bytes(channel), shown());
      contents.faults().forEach(notice);
      if (contents.tornFrom() < contents.length()) {
        notice.accept(torn(contents) + "; it is passed over, and the next round sets it aside");
      }
      return contents;
    } catch (NoSuchFileException e) {
      throw fault(
          "there is no ledger of rounds here", "name the folder that sample --ledger was given");
    } catch (IOException e) {
      throw fault("the ledger cannot be read", reason(e));
    }
  }

  /**
   * Returns what is on record before a round is added; nothing if there is no ledger yet. A line
   * that was cut off is told and set aside.
   *
   * @throws InvalidInputException if the ledger cannot be read
   * @throws OutputException if the line that was cut off cannot be set aside
   */
  public LedgerContents open() {
    if (!Files.exists(file)) {
      if (Files.exists(folder) && !Files.isDirectory(folder)) {
        throw new OutputException(folder.toString(), "a file has this name; name a folder");
      }
      return LedgerContents.NONE;
    }
    try (FileChannel channel =
        FileChannel.open(file, StandardOpenOption.READ, StandardOpenOption.WRITE)) {
      lock(channel, false);
      LedgerContents contents = LedgerContents.of(bytes(channel), shown());
      contents.faults().forEach(notice);
      setAside(channel, contents);
      return contents;
    } catch (IOException e) {
      throw new OutputException(shown(), reason(e));
    }
  }

  /**
   * Adds records, each whole and on the disk before the next one.
   *
   * @param entries the records
   * @param known what was on record when they were made
   * @throws OutputException if that fails, or if somebody added records in the meantime
   */
  public void append(List<LedgerEntry> entries, LedgerContents known) {
    try {
      boolean isNew = makeFolder();
      try (FileChannel channel =
          FileChannel.open(
              file, StandardOpenOption.CREATE, StandardOpenOption.READ, StandardOpenOption.WRITE)) {
        lock(channel, false);
        LedgerContents present = LedgerContents.of(bytes(channel), shown());
        if (present.lastSequence() != known.lastSequence()) {
          throw new OutputException(
              shown(), "another run added a round in the meantime; run this one again");
        }
        setAside(channel, present);
        long sequence = present.lastSequence();
        boolean unended = present.unended();
        for (LedgerEntry entry : entries) {
          byte[] line = LedgerLine.of(LedgerJson.of(++sequence, entry));
          add(channel, unended ? afterLineFeed(line) : line);
          unended = false;
        }
      }
      if (isNew) {
        flushFolder();
      }
    } catch (IOException e) {
      throw new OutputException(shown(), reason(e));
    }
  }

  /** Adds bytes to the end in one write; takes them back if not all of them fit on the disk. */
  private static void add(FileChannel channel, byte[] bytes) throws IOException {
    long end = channel.size();
    try {
      ByteBuffer buffer = ByteBuffer.wrap(bytes);
      channel.position(end);
      while (buffer.hasRemaining()) {
        channel.write(buffer);
      }
      channel.force(true);
    } catch (IOException e) {
      try {
        channel.truncate(end);
      } catch (IOException second) {
        e.addSuppressed(second); // the next run finds the torn line, tells it and sets it aside
      }
      throw e;
    }
  }

  private static byte[] afterLineFeed(byte[] line) {
    byte[] longer = new byte[line.length + 1];
    longer[0] = '\n';
    System.arraycopy(line, 0, longer, 1, line.length);
    return longer;
  }

  /** Tells, copies, and only then cuts a torn line off. */
  private void setAside(FileChannel channel, LedgerContents contents) throws IOException {
    long from = contents.tornFrom();
    if (from >= contents.length()) {
      return;
    }
    byte[] bytes = bytes(channel, from, contents.length());
    Path aside = freeName();
    notice.accept(torn(contents) + "; it is set aside in " + aside.getFileName());
    try (FileChannel copy =
        FileChannel.open(aside, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
      ByteBuffer all = ByteBuffer.wrap(bytes);
      while (all.hasRemaining()) {
        copy.write(all);
      }
      copy.force(true);
    }
    flushFolder();
    channel.truncate(from);
    channel.force(true);
  }

  private Path freeName() throws IOException {
    for (int i = 1; i <= MOST_TORN; i++) {
      Path name = folder.resolve("torn-" + i + ".txt");
      if (!Files.exists(name)) {
        return name;
      }
    }
    throw new IOException("too many files torn-*.txt; move them away");
  }

  private String torn(LedgerContents contents) {
    return shown()
        + ":"
        + contents.tornLine()
        + ": the last record was cut off while it was written ("
        + (contents.length() - contents.tornFrom())
        + " bytes)";
  }

  private byte[] bytes(FileChannel channel) throws IOException {
    long size = channel.size();
    if (size > LARGEST) {
      throw new IOException("it is larger than 64 MiB; is this the right folder?");
    }
    return bytes(channel, 0, size);
  }

  /** Returns the bytes of a stretch of the file; fewer if it ends before. */
  private static byte[] bytes(FileChannel channel, long from, long to) throws IOException {
    ByteBuffer buffer = ByteBuffer.allocate((int) (to - from));
    int read = 0;
    while (buffer.hasRemaining() && read >= 0) {
      read = channel.read(buffer, from + buffer.position());
    }
    byte[] bytes = new byte[buffer.position()];
    buffer.flip().get(bytes);
    return bytes;
  }

  /** Takes the lock, which is given back when the channel is closed. */
  private static void lock(FileChannel channel, boolean shared) throws IOException {
    for (long waited = 0; waited < PATIENCE_MS; waited += NAP_MS) {
      try {
        if (channel.tryLock(0, Long.MAX_VALUE, shared) != null) {
          return;
        }
      } catch (OverlappingFileLockException e) {
        // another thread of this program; it will be done soon
      }
      try {
        Thread.sleep(NAP_MS);
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
        throw new IOException("interrupted while another run was writing", e);
      }
    }
    throw new IOException("another run has been writing to it for 10 s; try again later");
  }

  private boolean makeFolder() throws IOException {
    try {
      Files.createDirectories(folder);
    } catch (FileAlreadyExistsException e) {
      throw new IOException("a file has the name of the folder; name another", e);
    }
    return !Files.exists(file);
  }

  /** Flushes the folder's entries; systems that cannot open a folder do without. */
  private void flushFolder() {
    try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
      channel.force(true);
    } catch (IOException e) {
      // Not every system can; the file itself is flushed already.
    }
  }

  private String shown() {
    return file.toString();
  }

  private InvalidInputException fault(String problem, String hint) {
    return new InvalidInputException(
        List.of(new InputFault(shown(), 0, "", "", problem, "", hint)));
  }

  private static String reason(IOException e) {
    String message = e.getMessage();
    return Excerpt.of(message == null ? e.getClass().getSimpleName() : message);
  }
}

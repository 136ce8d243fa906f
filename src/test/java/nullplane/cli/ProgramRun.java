package nullplane.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/**
 * One run of the jar as a process of its own. Its output goes to files outside the folder it works
 * in, so that nothing but the program's own files appears there.
 */
final class ProgramRun {
  /** Short runs spend most of their time in the Java compiler; this keeps it to its quick half. */
  static final List<String> QUICK = List.of("-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC");

  private static final long PATIENCE_S = 180;

  private final Process process;
  private final Path outputFolder;
  private final Path outFile;
  private final Path errFile;

  private ProgramRun(Process process, Path outputFolder, Path outFile, Path errFile) {
    this.process = process;
    this.outputFolder = outputFolder;
    this.outFile = outFile;
    this.errFile = errFile;
  }

  /** What a run gave. */
  record Ended(int exitCode, byte[] outBytes, String err) {
    String out() {
      return new String(outBytes, StandardCharsets.UTF_8);
    }
  }

  /**
   * Starts the jar that the build made.
   *
   * @param workFolder where it runs
   * @param javaOptions options of the Java machine
   * @param words the command line
   */
  static ProgramRun start(Path workFolder, List<String> javaOptions, String... words)
      throws IOException, InterruptedException {
    Path output = Files.createTempDirectory("nullplane-it");
    return start(output, output.resolve("out"), workFolder, javaOptions, words);
  }

  /** Starts the jar with standard output going to a file of the caller. */
  static ProgramRun startInto(
      Path outFile, Path workFolder, List<String> javaOptions, String... words)
      throws IOException, InterruptedException {
    Path output = Files.createTempDirectory("nullplane-it");
    return start(output, outFile, workFolder, javaOptions, words);
  }

  private static ProgramRun start(
      Path output, Path outFile, Path workFolder, List<String> javaOptions, String... words)
      throws IOException, InterruptedException {
    Path errFile = output.resolve("err");
    List<String> command = new ArrayList<>(interruptible());
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(javaOptions);
    command.add("-jar");
    command.add(System.getProperty("nullplane.jar"));
    command.addAll(List.of(words));
    Process process =
        new ProcessBuilder(command)
            .directory(workFolder.toFile())
            .redirectOutput(outFile.toFile())
            .redirectError(errFile.toFile())
            .start();
    process.getOutputStream().close();
    return new ProgramRun(process, output, outFile, errFile);
  }

  /**
   * A build that runs in the background of a script may ignore Ctrl-C, and its children with it;
   * where the system's env can, it undoes that.
   */
  private static List<String> interruptible() throws IOException, InterruptedException {
    List<String> prefix = List.of("env", "--default-signal=INT");
    List<String> trial = new ArrayList<>(prefix);
    trial.add("true");
    try {
      return new ProcessBuilder(trial).start().waitFor() == 0 ? prefix : List.of();
    } catch (IOException e) {
      return List.of(); // no env here
    }
  }

  /** Presses Ctrl-C. */
  void interrupt() throws IOException, InterruptedException {
    new ProcessBuilder("kill", "-INT", Long.toString(process.pid())).start().waitFor();
  }

  boolean isAlive() {
    return process.isAlive();
  }

  /** Waits for the end; a run that does not come to it is killed and fails the test. */
  Ended end() throws IOException, InterruptedException {
    if (!process.waitFor(PATIENCE_S, TimeUnit.SECONDS)) {
      process.destroyForcibly().waitFor();
      throw new AssertionError("the program still ran after " + PATIENCE_S + " s");
    }
    boolean own = outFile.startsWith(outputFolder);
    byte[] out = own ? Files.readAllBytes(outFile) : new byte[0];
    Ended ended = new Ended(process.exitValue(), out, Files.readString(errFile));
    if (own) {
      Files.delete(outFile);
    }
    Files.delete(errFile);
    Files.delete(outputFolder);
    return ended;
  }
}

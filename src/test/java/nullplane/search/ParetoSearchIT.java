package nullplane.search;

import static org.assertj.core.api.Assertions.assertThat;

import io.jenetics.Genotype;
import io.jenetics.ext.moea.Pareto;
import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import nullplane.faults.NullplaneException;
import nullplane.io.StateFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A search in a process of its own is killed, and resumed, again and again. */
class ParetoSearchIT {
  private static final int KILLS = 10;

  @TempDir Path folder;

  /** The process: resumes from the file if there is one, and leaves the last state in another. */
  static final class Killed {
    private Killed() {}

    public static void main(String[] arguments) throws Exception {
      StateFile file = new StateFile(Path.of(arguments[0]));
      StateFile last = new StateFile(Path.of(arguments[1]));
      byte[][] latest = {new byte[0]};
      StateKeeper keeper =
          new StateKeeper() {
            @Override
            public Duration interval() {
              return Duration.ZERO;
            }

            @Override
            public void keep(byte[] state) {
              latest[0] = state;
              file.write(state);
            }
          };
      ParetoProblem problem = slowed(FrontProblems.tnk());
      ParetoConduct conduct =
          ParetoConduct.of(11, 20_000).withSizes(40, 100).withStall(new StallRule(40, 1e-3, 50));
      byte[] kept = file.read().orElse(new byte[0]);
      if (kept.length == 0) {
        ParetoSearch.run(problem, conduct, List.of(), ParetoWatch.NONE, keeper);
      } else {
        ParetoSearch.resume(problem, conduct, kept, ParetoWatch.NONE, keeper);
      }
      last.write(latest[0]);
    }

    /** Some milliseconds per generation, so that kills find the search at work. */
    private static ParetoProblem slowed(FrontProblems.Posed problem) {
      return new FrontProblems.Posed("TNK", 2, problem.reference(), g -> Merit.feasible(0, 0)) {
        @Override
        public List<Merit> evaluate(List<double[]> batch) {
          try {
            Thread.sleep(4);
          } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
          }
          return problem.evaluate(batch);
        }
      };
    }
  }

  private Process start(String state, String last) throws IOException {
    String classes =
        Stream.of(Killed.class, ParetoSearch.class, Genotype.class, Pareto.class)
            .map(type -> type.getProtectionDomain().getCodeSource().getLocation().getPath())
            .distinct()
            .collect(Collectors.joining(File.pathSeparator));
    return new ProcessBuilder(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-XX:TieredStopAtLevel=1",
            "-Xmx256m",
            "-cp",
            classes,
            Killed.class.getName(),
            folder.resolve(state).toString(),
            folder.resolve(last).toString())
        .redirectErrorStream(true)
        .redirectOutput(ProcessBuilder.Redirect.appendTo(folder.resolve("said.txt").toFile()))
        .start();
  }

  private void finish(Process process) throws Exception {
    assertThat(process.waitFor(100, TimeUnit.SECONDS)).isTrue();
    assertThat(process.exitValue()).as(() -> said()).isZero();
  }

  private String said() {
    try {
      return Files.readString(folder.resolve("said.txt"));
    } catch (IOException e) {
      return e.toString();
    }
  }

  @Test
  void killedAtAnyMomentItEndsWithTheSameBytes() throws Exception {
    finish(start("undisturbed", "expected"));
    SplittableRandom random = new SplittableRandom(20_261_125);
    StateFile file = new StateFile(folder.resolve("state"));
    int inMidRun = 0;
    for (int kill = 0; kill < KILLS; kill++) {
      byte[] before = file.read().orElse(new byte[0]);
      Process process = start("state", "found");
      while (process.isAlive() && java.util.Arrays.equals(before, readAgain(file, before))) {
        Thread.sleep(2);
      }
      Thread.sleep(random.nextInt(80));
      inMidRun += process.isAlive() ? 1 : 0;
      process.destroyForcibly().waitFor();
    }
    assertThat(inMidRun).as("kills that met the search at work").isEqualTo(KILLS);
    finish(start("state", "found"));
    assertThat(Files.readAllBytes(folder.resolve("found")))
        .isEqualTo(Files.readAllBytes(folder.resolve("expected")));
  }

  private static byte[] readAgain(StateFile file, byte[] before) {
    try {
      return file.read().orElse(before);
    } catch (NullplaneException e) {
      return before;
    }
  }
}

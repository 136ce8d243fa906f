package nullplane.io;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import nullplane.faults.InvalidInputException;
import nullplane.faults.OutputException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class StateFileTest {
  @TempDir Path folder;

  @Test
  void theLatestStateIsThereAndAHalfWrittenOneIsNot() throws Exception {
    StateFile file = new StateFile(folder.resolve("run.state"));
    assertThat(file.read()).isEmpty();
    file.write(new byte[] {1, 2, 3});
    // What a run leaves that is cut off while it writes.
    Files.write(folder.resolve("run.state.part"), new byte[] {9, 9, 9, 9, 9});
    assertThat(file.read()).hasValue(new byte[] {1, 2, 3});
    file.write(new byte[] {4});
    assertThat(file.read()).hasValue(new byte[] {4});
    try (var files = Files.list(folder)) {
      assertThat(files).containsExactly(folder.resolve("run.state"));
    }
    file.delete();
    assertThat(folder).isEmptyDirectory();
  }

  @Test
  void trouble() throws Exception {
    Files.writeString(folder.resolve("none"), "a file where a folder should be");
    StateFile nowhere = new StateFile(folder.resolve("none").resolve("run.state"));
    assertThatThrownBy(() -> nowhere.write(new byte[1]))
        .isInstanceOf(OutputException.class)
        .hasMessageContaining("cannot write")
        .hasMessageContaining("run.state");
    StateFile fresh = new StateFile(folder.resolve("fresh").resolve("run.state"));
    fresh.write(new byte[] {7});
    assertThat(fresh.read()).hasValue(new byte[] {7});
    Files.createDirectory(folder.resolve("taken"));
    assertThatThrownBy(() -> new StateFile(folder.resolve("taken")).read())
        .isInstanceOf(InvalidInputException.class)
        .hasMessageContaining("the kept state cannot be read")
        .hasMessageEndingWith("remove the file to start afresh");
  }
}

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
    StateFile nowhere = new StateFile(folder.resolve("none").resolve("run.state"));
    assertThatThrownBy(() -> nowhere.write(new byte[1]))
        .isInstanceOf(OutputException.class)
        .hasMessageEndingWith("run.state: the folder does not exist");
    Files.createDirectory(folder.resolve("taken"));
    assertThatThrownBy(() -> new StateFile(folder.resolve("taken")).read())
        .isInstanceOf(InvalidInputException.class)
        .hasMessageContaining("the kept state cannot be read")
        .hasMessageEndingWith("remove the file to start afresh");
  }
}

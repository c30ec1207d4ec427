package hingetone.output;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class WorkFolderTest {
  @TempDir Path parent;

  @Test
  void what_a_killed_program_left_goes_when_the_next_one_starts() throws IOException {
    Path left = Files.createDirectory(parent.resolve(".hingetone-unfinished-4711"));
    Files.createFile(left.resolve("lock"));
    Files.writeString(left.resolve("0"), "half a song");
    try (WorkFolder work = WorkFolder.in(parent)) {
      assertThat(left).doesNotExist();
      Files.writeString(work.resolve("0"), "another half");
    }
    assertThat(parent).isEmptyDirectory();
  }

  @Test
  void one_that_somebody_works_in_stays() throws IOException {
    try (WorkFolder one = WorkFolder.in(parent)) {
      Path half = Files.writeString(one.resolve("0"), "half a song");
      try (WorkFolder other = WorkFolder.in(parent)) {
        assertThat(half).hasContent("half a song");
        assertThat(other.resolve("0")).isNotEqualTo(half);
      }
    }
    assertThat(parent).isEmptyDirectory();
  }

  @Test
  void what_only_looks_like_ours_stays() throws IOException {
    Path others = Files.createDirectory(parent.resolve("others"));
    Files.createFile(others.resolve("lock"));
    Path unlocked = Files.createDirectory(parent.resolve(".hingetone-unfinished-1"));
    Path file = Files.createFile(parent.resolve(".hingetone-unfinished-2"));
    Path link = Files.createSymbolicLink(parent.resolve(".hingetone-unfinished-3"), others);
    Path full = Files.createDirectory(parent.resolve(".hingetone-unfinished-4"));
    Files.createFile(full.resolve("lock"));
    Files.createDirectories(full.resolve("mine/own"));
    WorkFolder.in(parent).close();
    try (Stream<Path> left = Files.list(parent)) {
      assertThat(left)
          .containsExactlyInAnyOrderElementsOf(List.of(others, unlocked, file, link, full));
    }
    assertThat(others.resolve("lock")).exists();
    assertThat(full.resolve("mine/own")).exists();
  }
}

package hingetone.sound;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.sound.level.BankLevels;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LevelStoreTest {
  private static final String SUM = "00ff00ff00ff00ff";
  private static final BankLevels BASS = new BankLevels(Map.of(33, -20.5), Map.of());
  private static final BankLevels KIT = new BankLevels(Map.of(), Map.of(36, -18.5));

  @TempDir Path folder;

  @Test
  void what_is_found_out_is_kept_for_the_next_start() throws Exception {
    Path cache = folder.resolve("cache");
    LevelStore.of(SUM, cache).add(BASS);
    LevelStore.of(SUM, cache).add(KIT);
    assertThat(LevelStore.of(SUM, cache).known()).isEqualTo(BASS.with(KIT));
    assertThat(LevelStore.of("00ff00ff00ff00fe", cache).known()).isEqualTo(BankLevels.NONE);
    try (Stream<Path> files = Files.list(cache)) {
      assertThat(files).hasSize(1);
    }
  }

  @Test
  void a_damaged_file_is_written_anew() throws Exception {
    Files.writeString(folder.resolve("levels-" + SUM + ".txt"), "program 33");
    LevelStore store = LevelStore.of(SUM, folder);
    assertThat(store.known()).isEqualTo(BankLevels.NONE);
    store.add(KIT);
    assertThat(LevelStore.of(SUM, folder).known()).isEqualTo(KIT);
  }

  @Test
  void where_nothing_can_be_kept_it_is_known_as_long_as_the_program_runs() throws Exception {
    Path file = Files.createFile(folder.resolve("file"));
    LevelStore store = LevelStore.of(SUM, file);
    store.add(BASS);
    assertThat(store.known()).isEqualTo(BASS);
    LevelStore unkept = LevelStore.unkept();
    unkept.add(KIT);
    assertThat(unkept.known()).isEqualTo(KIT);
  }
}

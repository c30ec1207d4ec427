package hingetone.sound;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class BuiltInBankTest {
  @TempDir Path folder;

  @Test
  void the_bank_is_made_once_and_then_read_again() throws Exception {
    Path cache = folder.resolve("cache");
    int sounds = BuiltInBank.kept(cache).getInstruments().length;
    Path file = cache.resolve("built-in-sounds.sf2");
    byte[] first = Files.readAllBytes(file);
    assertThat(BuiltInBank.kept(cache).getInstruments()).hasSize(sounds);
    assertThat(sounds).isGreaterThan(100);
    assertThat(Files.readAllBytes(file)).isEqualTo(first);
  }

  @Test
  void where_nothing_can_be_kept_it_is_made_anew() throws Exception {
    Path file = Files.writeString(folder.resolve("a-file"), "no folder");
    assertThat(BuiltInBank.kept(file).getInstruments()).isNotEmpty();
  }

  @Test
  void the_cache_folder_is_the_systems_own() {
    Path home = Path.of("/home/player");
    assertThat(BuiltInBank.cacheFolder("Linux", home, Map.of()))
        .isEqualTo(home.resolve(".cache/hingetone"));
    assertThat(BuiltInBank.cacheFolder("Linux", home, Map.of("XDG_CACHE_HOME", "/var/c")))
        .isEqualTo(Path.of("/var/c/hingetone"));
    assertThat(BuiltInBank.cacheFolder("Mac OS X", home, Map.of()))
        .isEqualTo(home.resolve("Library/Caches/hingetone"));
    assertThat(BuiltInBank.cacheFolder("Windows 11", home, Map.of("LOCALAPPDATA", "/local")))
        .isEqualTo(Path.of("/local/hingetone"));
  }
}

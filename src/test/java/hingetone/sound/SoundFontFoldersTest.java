package hingetone.sound;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SoundFontFoldersTest {
  @TempDir Path folder;

  @Test
  void each_system_has_its_usual_folders_the_users_own_first() {
    Path home = Path.of("/home/player");
    assertThat(SoundFontFolders.of("Linux", home, set(Map.of())).folders())
        .startsWith(home.resolve(".local/share/soundfonts"))
        .contains(Path.of("/usr/share/soundfonts"), Path.of("/usr/share/sounds/sf2"));
    assertThat(SoundFontFolders.of("Linux", home, set(Map.of("XDG_DATA_HOME", "/data"))).folders())
        .startsWith(Path.of("/data/soundfonts"));
    assertThat(SoundFontFolders.of("Mac OS X", home, set(Map.of())).folders())
        .startsWith(home.resolve("Library/Audio/Sounds/Banks"));
    assertThat(SoundFontFolders.of("Windows 11", home, set(Map.of())).folders())
        .startsWith(home.resolve("Documents").resolve("SoundFonts"));
  }

  @Test
  void whole_banks_are_found_those_named_general_midi_first() throws IOException {
    Path bank = font("another.sf2", 1_000_000);
    Path general = font("my-gm-bank.SF2", 1_000_001);
    font("kazoo.sf2", 10);
    font("readme.txt", 2_000_000);
    SoundFontFolders folders = new SoundFontFolders(List.of(folder.resolve("not-there"), folder));
    assertThat(folders.soundFonts()).containsExactly(general, bank);
  }

  @Test
  void the_programs_own_bank_lies_beside_its_jar() throws IOException {
    Path jar = Files.write(folder.resolve("program.jar"), new byte[1]);
    assertThat(SoundFontFolders.beside(jar)).contains(folder.resolve("lib"));
    assertThat(SoundFontFolders.beside(folder)).isEmpty();
  }

  private Path font(String name, int bytes) throws IOException {
    return Files.write(folder.resolve(name), new byte[bytes]);
  }

  /** An environment in which only this is set. */
  private static Function<String, Optional<String>> set(Map<String, String> variables) {
    return name -> Optional.ofNullable(variables.get(name));
  }
}

package hingetone.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.InstanceOfAssertFactories.STRING;

import hingetone.score.Note;
import hingetone.score.Part;
import hingetone.score.Role;
import hingetone.score.Score;
import hingetone.score.Sound;
import hingetone.time.Beats;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RenderedScoreTest {
  private static final Score SCORE =
      new Score(
          "Two knocks",
          Beats.ZERO,
          Beats.of(2),
          List.of(),
          List.of(part(Role.DRUMS, 38), part(Role.BASS, 40)));

  @TempDir Path folder;

  @Test
  void a_midi_file_replaces_what_was_there_and_leaves_nothing_else() throws Exception {
    Path file = Files.writeString(folder.resolve("song.mid"), "old");
    assertThat(rendered().writeMidi(file)).isEqualTo(file + ": 2 parts");
    assertThat(Files.readAllBytes(file)).startsWith('M', 'T', 'h', 'd');
    assertThat(filesLeft()).containsExactly("song.mid");
  }

  @Test
  void stems_are_named_after_the_file_and_the_part() throws Exception {
    Path font = folder.resolve("none.sf2");
    Path file = folder.resolve("song.wav");
    assertThat(rendered().writeWav(file, true, quiet()))
        .contains(
            folder.resolve("song-drums.wav") + ": a stem",
            folder.resolve("song-bass.wav") + ": a stem");
    assertThat(filesLeft()).containsExactly("song-bass.wav", "song-drums.wav", "song.wav");
    RenderedScore other = new RenderedScore(SCORE, named(font));
    assertThatThrownBy(() -> other.writeWav(folder.resolve("other.wav"), true, quiet()))
        .isInstanceOf(CommandFailure.class)
        .hasMessage("Cannot read the sound font " + font + ": there is no such file.")
        .extracting(e -> ((CommandFailure) e).status())
        .isEqualTo(ExitStatus.WRONG_INPUT);
    assertThat(filesLeft()).containsExactly("song-bass.wav", "song-drums.wav", "song.wav");
  }

  @Test
  void a_sound_file_is_reported_with_its_length_and_loudness() {
    assertThat(rendered().writeWav(folder.resolve("song.wav"), false, quiet()))
        .singleElement(STRING)
        .matches(".*song\\.wav: 0:0\\d, -1\\d\\.\\d LUFS, true peak -\\d\\.\\d dBTP, sounds of .+");
  }

  @Test
  void a_folder_that_is_not_there_is_told() {
    Path file = folder.resolve("nowhere").resolve("song.mid");
    assertThatThrownBy(() -> rendered().writeMidi(file))
        .hasMessage(
            "Cannot write " + file + ": there is no folder " + file.toAbsolutePath().getParent());
    assertThatThrownBy(() -> rendered().writeMidi(folder))
        .hasMessage(folder + " is a folder; give the name of a file.");
  }

  @Test
  void progress_is_a_bar_that_goes_away_when_all_is_done() {
    StringWriter shown = new StringWriter();
    Progress progress = Progress.always(new PrintWriter(shown));
    progress.accept(0.5);
    progress.accept(0.501);
    progress.accept(1);
    String half = "[###############---------------] 50%";
    assertThat(shown.toString()).isEqualTo("\r" + half + "\r" + " ".repeat(37) + "\r");
  }

  private static Progress quiet() {
    return Progress.always(new PrintWriter(new StringWriter()));
  }

  private static RenderedScore rendered() {
    return new RenderedScore(SCORE, new SoundFont());
  }

  private List<String> filesLeft() throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.map(file -> file.getFileName().toString()).sorted().toList();
    }
  }

  private static Part part(Role role, int key) {
    Note first = new Note(Beats.ZERO, Beats.of(1, 2), key, 90);
    return new Part(role, Sound.of(33), List.of(first, first.withOnset(Beats.ONE)));
  }

  private static SoundFont named(Path file) {
    SoundFont font = new SoundFont();
    font.file = Optional.of(file);
    return font;
  }
}

package hingetone.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.InstanceOfAssertFactories.STRING;

import hingetone.score.Note;
import hingetone.score.Part;
import hingetone.score.Role;
import hingetone.score.Score;
import hingetone.score.Sound;
import hingetone.sound.SoundBank;
import hingetone.time.Beats;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
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
    Path file = folder.resolve("song.wav");
    assertThat(rendered().writeWav(file, true, SoundBank.builtIn(), quiet()))
        .contains(
            folder.resolve("song-drums.wav") + ": a stem",
            folder.resolve("song-bass.wav") + ": a stem");
    assertThat(filesLeft()).containsExactly("song-bass.wav", "song-drums.wav", "song.wav");
  }

  @Test
  void a_sound_file_is_reported_with_its_length_and_loudness() throws Exception {
    Path file = folder.resolve("song.wav");
    assertThat(rendered().writeWav(file, false, SoundBank.builtIn(), quiet()))
        .singleElement(STRING)
        .matches(
            ".*song\\.wav: 0:0\\d, -1\\d\\.\\d LUFS, true peak -\\d\\.\\d dBTP,"
                + " sounds of built-in sounds");
  }

  @Test
  void a_score_without_a_note_is_reported_as_silence() throws Exception {
    Score empty = new Score("", Beats.ZERO, Beats.of(2), List.of(), List.of());
    Path file = folder.resolve("song.wav");
    assertThat(new RenderedScore(empty).writeWav(file, false, SoundBank.builtIn(), quiet()))
        .containsExactly(file + ": 0:01, silence, sounds of built-in sounds");
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
    return new RenderedScore(SCORE);
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
}

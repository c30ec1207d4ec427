package hingetone.output;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.score.Note;
import hingetone.score.Part;
import hingetone.score.Role;
import hingetone.score.Score;
import hingetone.score.Sound;
import hingetone.sound.SoundBank;
import hingetone.sound.file.WavFile;
import hingetone.text.Stamp;
import hingetone.time.Beats;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
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
  void a_midi_file_is_reported_with_its_parts() throws IOException {
    Path file = folder.resolve("song.mid");
    assertThat(rendered().writeMidi(file)).isEqualTo("2 parts");
    assertThat(Files.readAllBytes(file)).startsWith('M', 'T', 'h', 'd');
  }

  @Test
  void a_sound_file_is_reported_with_its_length_and_loudness() throws Exception {
    Path whole = folder.resolve("song.wav");
    Path bass = folder.resolve("bass.wav");
    assertThat(rendered().writeWav(whole, Map.of(Role.BASS, bass), SoundBank.builtIn(), quiet()))
        .matches("0:0\\d, -1\\d\\.\\d LUFS, true peak -\\d\\.\\d dBTP, sounds of .+");
    assertThat(WavFile.Samples.SHORT.stamp().find(whole)).isEqualTo(Stamp.Finding.CHANGED);
    Stamp.close(whole);
    Stamp.close(bass);
    assertThat(WavFile.Samples.SHORT.stamp().find(whole)).isEqualTo(Stamp.Finding.OURS);
    assertThat(WavFile.Samples.SHORT.stamp().find(bass)).isEqualTo(Stamp.Finding.OF_ANOTHER_KIND);
    assertThat(WavFile.Samples.FLOAT.stamp().find(bass)).isEqualTo(Stamp.Finding.OURS);
  }

  @Test
  void a_score_without_a_note_is_reported_as_silence() throws Exception {
    Score empty = new Score("", Beats.ZERO, Beats.of(2), List.of(), List.of());
    Path file = folder.resolve("song.wav");
    assertThat(new RenderedScore(empty).writeWav(file, Map.of(), SoundBank.builtIn(), quiet()))
        .isEqualTo("0:01, silence, sounds of built-in sounds");
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

  private static Part part(Role role, int key) {
    Note first = new Note(Beats.ZERO, Beats.of(1, 2), key, 90);
    return new Part(role, Sound.of(33), List.of(first, first.withOnset(Beats.ONE)));
  }
}

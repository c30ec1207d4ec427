package hingetone.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import hingetone.score.Mark;
import hingetone.score.Note;
import hingetone.score.Part;
import hingetone.score.Role;
import hingetone.score.Score;
import hingetone.score.Sound;
import hingetone.sound.TinySoundFont.Zone;
import hingetone.time.Beats;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SoundBankTest {
  private static final int KICK = 36;
  private static final int SNARE = 38;
  private static final int RIDE_BELL = 53;

  /** Drums and a bass that goes over from program 33 to 35. */
  private static final Score SCORE =
      new Score(
          "",
          Beats.ZERO,
          Beats.of(8),
          List.of(new Mark.OfSound(Beats.of(4), Role.BASS, Sound.of(35))),
          List.of(
              part(Role.DRUMS, 0, KICK, SNARE, RIDE_BELL, KICK),
              part(Role.BASS, 33, 40, 45, 40, 28)));

  private static final Zone BASS = Zone.of(0, 33);
  private static final Zone FRETLESS = Zone.of(0, 35);
  private static final Zone KIT = Zone.of(128, 0);

  @TempDir Path folder;

  /** A note every two beats. */
  private static Part part(Role role, int program, int... keys) {
    List<Note> notes =
        IntStream.range(0, keys.length)
            .mapToObj(i -> new Note(Beats.of(2L * i), Beats.ONE, keys[i], 90))
            .toList();
    return new Part(role, Sound.of(program), notes);
  }

  private Path font(String name, Zone... zones) throws IOException {
    return Files.write(folder.resolve(name), TinySoundFont.of(zones).bytes());
  }

  private SoundBank bank(Zone... zones) throws Exception {
    return SoundBank.find(Optional.of(font("bank.sf2", zones)), SCORE);
  }

  @Test
  void a_bank_that_has_every_sound_of_the_score_says_nothing() throws Exception {
    assertThat(bank(BASS, FRETLESS, KIT).silentIn(SCORE)).isEmpty();
  }

  @Test
  void what_a_bank_has_no_sound_for_is_named() throws Exception {
    assertThat(bank(BASS, KIT).silentIn(SCORE))
        .contains("bank.sf2 has no sound for Fretless Bass: you will not hear it.");
    assertThat(bank(BASS, FRETLESS).silentIn(SCORE))
        .contains("bank.sf2 has no sound for the drum kit: you will not hear it.");
    assertThat(bank(BASS, FRETLESS.keys(30, 127), KIT.keys(0, SNARE)).silentIn(SCORE))
        .contains(
            "bank.sf2 has no sound for Ride Bell and some notes of Fretless Bass: you will not"
                + " hear them.");
    assertThat(bank(BASS, KIT.velocities(100, 127)).silentIn(SCORE).orElseThrow())
        .contains("Fretless Bass, Bass Drum 1, Acoustic Snare and Ride Bell");
  }

  @Test
  void a_named_bank_with_none_of_the_sounds_is_refused() throws Exception {
    Path file = font("bank.sf2", Zone.of(0, 56));
    assertThatThrownBy(() -> SoundBank.find(Optional.of(file), SCORE))
        .isInstanceOf(SoundFailure.class)
        .hasMessage(
            file
                + " has none of the sounds needed: the drum kit, Electric Bass (finger) and"
                + " Fretless Bass.");
    Score empty = new Score("", Beats.ZERO, Beats.of(4), List.of(), List.of());
    assertThat(SoundBank.find(Optional.of(file), empty).name()).isEqualTo("bank.sf2");
  }

  @Test
  void a_synthesizer_names_each_missing_sound_once() throws Exception {
    try (Synthesizer synthesizer = Synthesizer.open(44_100, bank(BASS, KIT.keys(0, SNARE)))) {
      assertThat(synthesizer.prepare(SCORE.bySound()).orElseThrow())
          .contains("Fretless Bass and Ride Bell");
      assertThat(synthesizer.prepare(SCORE.bySound())).isEmpty();
      assertThat(synthesizer.prepare(List.of(part(Role.DRUMS, 0, 54, RIDE_BELL))))
          .contains("bank.sf2 has no sound for Tambourine: you will not hear it.");
    }
  }

  @Test
  void of_the_banks_found_the_first_is_taken_that_is_whole_and_has_every_program_and_the_kit()
      throws Exception {
    byte[] whole = TinySoundFont.of(BASS, FRETLESS, KIT.keys(0, SNARE)).bytes();
    byte[] cut = whole.clone();
    cut[7] = 1; // says that it has 16 MB more
    found("a-gm-cut.sf2", cut);
    found("b-gm-no-kit.sf2", TinySoundFont.of(BASS, FRETLESS).bytes());
    SoundFontFolders folders = new SoundFontFolders(List.of(folder));
    assertThat(SoundBank.find(Optional.empty(), SCORE, folders).name())
        .isEqualTo("built-in sounds");
    found("c-gm.sf2", whole);
    assertThat(SoundBank.find(Optional.empty(), SCORE, folders).name()).isEqualTo("c-gm.sf2");
  }

  @Test
  void banks_follow_one_another_and_one_that_cannot_be_played_is_passed_over() throws Exception {
    SoundFontFolders folders = new SoundFontFolders(List.of(folder));
    assertThat(SoundBank.builtIn().next(folders)).isEmpty();
    found("a.sf2", TinySoundFont.of(BASS).bytes());
    byte[] damaged = TinySoundFont.of(BASS).bytes();
    damaged[7] = 1;
    found("b.sf2", damaged);
    found("c.sf2", TinySoundFont.of(KIT).bytes());
    SoundBank first = SoundBank.builtIn().next(folders).orElseThrow();
    SoundBank second = first.next(folders).orElseThrow();
    assertThat(List.of(first.name(), second.name())).containsExactly("a.sf2", "c.sf2");
    assertThat(second.next(folders).orElseThrow().name()).isEqualTo("a.sf2");
  }

  /** Files in the usual folders count from 1 MB on; what follows a bank is not looked at. */
  private void found(String name, byte[] bytes) throws IOException {
    Files.write(folder.resolve(name), Arrays.copyOf(bytes, 1_000_000));
  }
}

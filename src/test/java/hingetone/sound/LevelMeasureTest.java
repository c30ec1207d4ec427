package hingetone.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hingetone.score.Note;
import hingetone.score.Part;
import hingetone.score.Role;
import hingetone.score.Score;
import hingetone.score.Sound;
import hingetone.sound.TinySoundFont.Zone;
import hingetone.sound.file.Mixdown;
import hingetone.sound.level.BankLevels;
import hingetone.sound.level.LoudnessMeter;
import hingetone.time.Beats;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LevelMeasureTest {
  private static final int BASS = 33;
  private static final int KICK = 36;
  private static final Zone[] ZONES = {Zone.of(0, BASS), Zone.of(128, 0).keys(35, 40)};
  private static final List<Part> PARTS =
      List.of(part(Role.DRUMS, 0, KICK), part(Role.BASS, BASS, 40));

  @TempDir Path folder;

  private static Part part(Role role, int program, int key) {
    List<Note> notes =
        IntStream.range(0, 8)
            .mapToObj(beat -> new Note(Beats.of(beat), Beats.of(3, 4), key, 88))
            .toList();
    return new Part(role, Sound.of(program), notes);
  }

  private SoundBank bank(int peak) throws Exception {
    Path file = folder.resolve("peak-" + peak + ".sf2");
    return SoundBank.read(Files.write(file, TinySoundFont.of(ZONES).peak(peak).bytes()));
  }

  @Test
  void a_bank_with_twice_the_amplitude_measures_six_decibels_more() throws Exception {
    BankLevels soft = LevelMeasure.of(bank(6_000), PARTS, BankLevels.NONE);
    BankLevels loud = LevelMeasure.of(bank(12_000), PARTS, BankLevels.NONE);
    assertThat(soft.programs()).containsOnlyKeys(BASS);
    double twice = 20 * Math.log10(2);
    assertThat(loud.programs().get(BASS) - soft.programs().get(BASS))
        .isCloseTo(twice, within(0.11));
    assertThat(loud.drums().get(KICK) - soft.drums().get(KICK)).isCloseTo(twice, within(0.11));
    assertThat(soft.drums().get(42)).isEqualTo(Double.NEGATIVE_INFINITY);
  }

  @Test
  void what_is_known_is_not_measured_again() throws Exception {
    SoundBank bank = bank(6_000);
    BankLevels all = LevelMeasure.of(bank, PARTS, BankLevels.NONE);
    assertThat(LevelMeasure.isMissing(PARTS, all)).isFalse();
    assertThat(LevelMeasure.of(bank, PARTS, all)).isEqualTo(BankLevels.NONE);
    List<Part> more = List.of(part(Role.LEAD, 27, 60));
    assertThat(LevelMeasure.isMissing(more, all)).isTrue();
    assertThat(LevelMeasure.of(bank, more, all).programs()).containsOnlyKeys(27);
  }

  /** The figures reckoned with are those of a louder bank: both of these are raised to them. */
  @Test
  void banks_of_other_levels_sound_alike_once_they_are_measured() throws Exception {
    for (Part part : PARTS) {
      Score score = new Score("", Beats.ZERO, Beats.of(8), List.of(), List.of(part));
      double soft = loudness(Mixdown.of(score, bank(8_000), 44_100));
      double loud = loudness(Mixdown.of(score, bank(16_000), 44_100));
      assertThat(soft).as(part.role().title()).isCloseTo(loud, within(0.5));
    }
  }

  private static double loudness(Mixdown mixdown) throws Exception {
    LoudnessMeter meter = new LoudnessMeter(44_100);
    mixdown.play((stereo, frames, done) -> meter.add(stereo, frames));
    return meter.integrated();
  }

  @Test
  void another_bank_has_another_checksum_and_a_copy_the_same() throws Exception {
    byte[] bytes = TinySoundFont.of(ZONES).bytes();
    Path one = Files.write(folder.resolve("one.sf2"), bytes);
    Path copy = Files.write(folder.resolve("copy.sf2"), bytes);
    Path other = Files.write(folder.resolve("o.sf2"), TinySoundFont.of(ZONES[0]).bytes());
    Path softer = Files.write(folder.resolve("s.sf2"), TinySoundFont.of(ZONES).peak(9).bytes());
    assertThat(BankSum.of(one)).hasSize(16).isEqualTo(BankSum.of(copy));
    assertThat(BankSum.of(other)).isNotEqualTo(BankSum.of(one));
    assertThat(BankSum.of(softer)).isNotEqualTo(BankSum.of(one));
  }
}

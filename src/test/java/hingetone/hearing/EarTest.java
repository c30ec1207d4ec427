package hingetone.hearing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hingetone.hearing.signal.Sampling;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

class EarTest {
  private static final int[] LINE = {45, 52, 57, 61, 64, 69, 64, 64, 62};

  @Test
  void a_picked_line_is_written_down() {
    List<HeardNote> notes = heard(line(), 4096);
    assertThat(notes).hasSize(LINE.length);
    for (int i = 0; i < LINE.length; i++) {
      assertThat(notes.get(i).at()).isCloseTo(0.2 + 0.35 * i, within(0.02));
      assertThat(notes.get(i).reached()).isCloseTo(LINE[i], within(0.1));
    }
  }

  /** Strings by Karplus and Strong, whose attack has all partials. */
  @Test
  void a_line_of_plucked_strings_is_plain() {
    float[] sound = PluckedStrings.silence(0.2);
    for (int midi : LINE) {
      float[] string = PluckedStrings.plucked(Sampling.hertz(midi), 0.35, midi);
      sound = PluckedStrings.inTurn(sound, string);
    }
    List<HeardNote> notes = heard(PluckedStrings.inTurn(sound, PluckedStrings.silence(0.3)), 4096);
    assertThat(notes)
        .extracting(HeardNote::fretted)
        .containsExactly(45, 52, 57, 61, 64, 69, 64, 64, 62);
    assertThat(notes).extracting(HeardNote::technique).containsOnly(Technique.PLAIN);
  }

  @Test
  void it_does_not_matter_in_which_blocks_the_sound_comes() {
    float[] line = line();
    assertThat(heard(line, 441)).isEqualTo(heard(line, line.length));
  }

  @Test
  void a_bend_is_one_note_with_the_pitch_it_reaches() {
    HeardNote bend = only(t -> 62 + 2 * smooth((t - 0.15) / 0.2));
    assertThat(bend.technique()).isEqualTo(Technique.BEND);
    assertThat(bend.struck()).isCloseTo(62, within(0.15));
    assertThat(bend.reached()).isCloseTo(64, within(0.1));
    assertThat(bend.fretted()).isEqualTo(62);
    assertThat(bend.curve()).hasSizeGreaterThan(20);
  }

  @Test
  void a_curl_is_told_from_a_plain_note() {
    HeardNote curl = only(t -> 62 + 0.5 * smooth((t - 0.2) / 0.25));
    assertThat(curl.technique()).isEqualTo(Technique.CURL);
    assertThat(curl.reached()).isCloseTo(62.5, within(0.1));
  }

  @Test
  void a_bent_string_let_down_counts_as_the_note_it_falls_to() {
    HeardNote release = only(t -> 64 - 2 * smooth((t - 0.25) / 0.2));
    assertThat(release.technique()).isEqualTo(Technique.PREBEND);
    assertThat(release.reached()).isCloseTo(62, within(0.1));
  }

  @Test
  void vibrato_is_heard_and_breaks_no_note_in_two() {
    HeardNote swinging =
        only(t -> 62 + (t < 0.2 ? 0 : 0.3 * Math.sin(2 * Math.PI * 5.5 * (t - 0.2))));
    assertThat(swinging.vibrato()).isTrue();
    assertThat(swinging.technique()).isEqualTo(Technique.PLAIN);
    assertThat(swinging.reached()).isCloseTo(62, within(0.2));
  }

  @Test
  void a_hammer_on_begins_a_note() {
    List<HeardNote> notes = heard(framed(PluckedStrings.picked(t -> t < 0.4 ? 60 : 63, 0.9)), 4096);
    assertThat(notes).hasSize(2);
    assertThat(notes.get(1).at()).isCloseTo(0.6, within(0.03));
    assertThat(notes.get(1).reached()).isCloseTo(63, within(0.1));
  }

  @Test
  void silence_and_hum_have_no_notes() {
    assertThat(heard(PluckedStrings.silence(3), 4096)).isEmpty();
    float[] hum = PluckedStrings.tone(50, 3);
    assertThat(heard(Arrays.copyOfRange(hum, Sampling.RATE, hum.length), 4096)).hasSizeLessThan(2);
  }

  @Test
  void nothing_at_all_has_no_notes() {
    assertThat(heard(new float[0], 1)).isEmpty();
  }

  private static float[] line() {
    float[] sound = PluckedStrings.silence(0.2);
    for (int midi : LINE) {
      sound = PluckedStrings.inTurn(sound, PluckedStrings.picked(t -> midi, 0.35));
    }
    return PluckedStrings.inTurn(sound, PluckedStrings.silence(0.3));
  }

  private static HeardNote only(DoubleUnaryOperator midi) {
    List<HeardNote> notes = heard(framed(PluckedStrings.picked(midi, 1)), 4096);
    assertThat(notes).hasSize(1);
    return notes.get(0);
  }

  private static float[] framed(float[] sound) {
    return PluckedStrings.inTurn(PluckedStrings.silence(0.2), sound, PluckedStrings.silence(0.3));
  }

  /** From 0 to 1 with neither a jerk at the start nor one at the end. */
  private static double smooth(double x) {
    double within = Math.max(0, Math.min(1, x));
    return within * within * (3 - 2 * within);
  }

  private static List<HeardNote> heard(float[] sound, int block) {
    Ear ear = new Ear();
    List<HeardNote> notes = new ArrayList<>();
    for (int from = 0; from < sound.length; from += block) {
      int to = Math.min(sound.length, from + block);
      notes.addAll(ear.hear(Arrays.copyOfRange(sound, from, to)));
    }
    notes.addAll(ear.rest());
    return notes;
  }
}

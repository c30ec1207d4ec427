package hingetone.take;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hingetone.midi.Received;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class PlayedNotesTest {
  private final PlayedNotes notes = new PlayedNotes();
  private final List<PlayedNote> ended = new ArrayList<>();
  private long now;

  private void send(int command, int channel, int first, int second) {
    now += 1_000_000;
    ended.addAll(notes.take(new Received(now, command, channel, first, second)));
  }

  private void wheel(int channel, int value) {
    send(0xE0, channel, (value + 8192) % 128, (value + 8192) / 128);
  }

  @Test
  void a_note_ends_with_its_note_off_or_with_a_note_on_of_velocity_0() {
    send(0x90, 0, 62, 100);
    send(0x80, 0, 62, 0);
    send(0x90, 0, 65, 80);
    send(0x90, 0, 65, 0);
    assertThat(ended)
        .containsExactly(
            new PlayedNote(1_000_000, 2_000_000, 0, 62, 100, List.of()),
            new PlayedNote(3_000_000, 4_000_000, 0, 65, 80, List.of()));
    assertThat(notes.sounding(now)).isEmpty();
  }

  /** The MIDI 1.0 detailed specification: bend sensitivity is two semitones unless stated. */
  @Test
  void a_bend_reaches_as_far_as_the_channel_states() {
    send(0x90, 1, 64, 90);
    wheel(1, 8191);
    wheel(1, 0);
    send(0x80, 1, 64, 0);
    assertThat(ended.get(0).struck()).isEqualTo(64);
    assertThat(ended.get(0).reached()).isCloseTo(66, within(0.001));
    assertThat(ended.get(0).last()).isEqualTo(64);

    int[][] twelve = {{101, 0}, {100, 0}, {6, 12}, {38, 0}, {101, 127}, {100, 127}, {6, 3}};
    for (int[] control : twelve) {
      send(0xB0, 1, control[0], control[1]);
    }
    send(0x90, 1, 64, 90);
    wheel(1, 8192 * 2 / 12);
    send(0x80, 1, 64, 0);
    assertThat(ended.get(1).reached()).isCloseTo(66, within(0.001));
  }

  @Test
  void a_note_struck_while_the_wheel_is_up_begins_bent_and_counts_as_what_it_falls_to() {
    wheel(0, 8191);
    send(0x90, 0, 60, 90);
    wheel(0, 0);
    send(0x80, 0, 60, 0);
    assertThat(ended.get(0).struck()).isCloseTo(62, within(0.001));
    assertThat(ended.get(0).reached()).isEqualTo(60);
  }

  @Test
  void a_swinging_wheel_is_vibrato_and_changes_nothing_of_what_a_note_counts_as() {
    send(0x90, 0, 60, 90);
    for (int i = 0; i < 20; i++) {
      wheel(0, i % 2 == 0 ? 1200 : -1200);
    }
    send(0x80, 0, 60, 0);
    assertThat(ended.get(0).reached()).isEqualTo(60);
  }

  @Test
  void each_of_six_channels_bends_its_own_string() {
    for (int string = 0; string < 6; string++) {
      send(0x90, string, 40 + 5 * string, 90);
    }
    wheel(2, 8191);
    for (int string = 0; string < 6; string++) {
      send(0x80, string, 40 + 5 * string, 0);
    }
    assertThat(ended.stream().filter(note -> !note.bends().isEmpty()))
        .singleElement()
        .satisfies(note -> assertThat(note.channel()).isEqualTo(2));
  }

  @Test
  void a_pedal_holds_what_is_released_under_it_until_it_goes_up() {
    send(0xB0, 0, 64, 127);
    send(0x90, 0, 62, 100);
    send(0x80, 0, 62, 0);
    send(0x90, 0, 65, 100);
    assertThat(ended).isEmpty();
    send(0xB0, 0, 64, 0);
    assertThat(ended).extracting(PlayedNote::key).containsExactly(62);
    send(0x80, 0, 65, 0);
    assertThat(ended).extracting(PlayedNote::key).containsExactly(62, 65);
  }

  @Test
  void a_note_struck_again_under_the_pedal_ends_the_one_before() {
    send(0xB0, 0, 64, 127);
    send(0x90, 0, 62, 100);
    send(0x80, 0, 62, 0);
    send(0x90, 0, 62, 90);
    assertThat(ended).singleElement().satisfies(n -> assertThat(n.velocity()).isEqualTo(100));
  }

  @Test
  void all_notes_end_when_the_instrument_says_so_or_is_lost() {
    send(0x90, 0, 62, 100);
    send(0x90, 1, 65, 100);
    send(0xB0, 0, 123, 0);
    assertThat(ended).extracting(PlayedNote::key).containsExactly(62);
    assertThat(notes.lost(now + 5)).extracting(PlayedNote::off).containsExactly(now + 5);
    assertThat(notes.sounding(now + 9)).isEmpty();
  }

  /** Whatever comes, a note ends once, not before it begins, and the loss ends the rest. */
  @Test
  void of_a_storm_of_messages_as_many_notes_end_as_were_struck() {
    Random random = new Random(41);
    int struck = 0;
    for (int i = 0; i < 100_000; i++) {
      int command = List.of(0x80, 0x90, 0xA0, 0xB0, 0xC0, 0xD0, 0xE0).get(random.nextInt(7));
      int second = random.nextInt(128);
      struck += command == 0x90 && second > 0 ? 1 : 0;
      send(command, random.nextInt(16), random.nextInt(128), second);
    }
    ended.addAll(notes.lost(now));
    assertThat(ended).hasSize(struck);
    assertThat(notes.sounding(now)).isEmpty();
  }
}

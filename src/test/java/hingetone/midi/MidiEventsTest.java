package hingetone.midi;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.score.Mark;
import hingetone.score.Note;
import hingetone.score.Part;
import hingetone.score.Role;
import hingetone.score.Score;
import hingetone.score.Sound;
import hingetone.time.Beats;
import hingetone.time.Tempo;
import java.io.ByteArrayInputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.Sequence;
import javax.sound.midi.ShortMessage;
import javax.sound.midi.Track;
import org.junit.jupiter.api.Test;

class MidiEventsTest {

  @Test
  void of_two_notes_of_a_key_that_overlap_the_first_ends_where_the_second_starts() {
    assertThat(listing(note(0, 3, 90, 0), note(1, 1, 80, 0)))
        .containsExactly("0 on 90", "1 off", "1 on 80", "2 off");
  }

  @Test
  void of_two_notes_of_a_key_at_one_place_the_louder_stays() {
    assertThat(listing(note(0, 1, 70, 0), note(0, 2, 90, 0))).containsExactly("0 on 90", "2 off");
  }

  @Test
  void a_note_that_is_pushed_late_still_ends_before_the_next_of_its_key() {
    assertThat(listing(note(0, 1, 90, 20_000), note(1, 1, 80, -15_000)))
        .containsExactly("0 +20000 on 90", "1 -15000 off", "1 -15000 on 80", "2 -15000 off");
  }

  @Test
  void messages_at_one_instant_come_as_off_control_program_on() {
    List<ShortMessage> messages = new ArrayList<>();
    messages.add(MidiEvents.message(ShortMessage.NOTE_ON, 0, 60, 90));
    messages.add(MidiEvents.message(ShortMessage.PROGRAM_CHANGE, 0, 1, 0));
    messages.add(MidiEvents.message(ShortMessage.CONTROL_CHANGE, 0, 7, 90));
    messages.add(MidiEvents.message(ShortMessage.NOTE_ON, 0, 60, 0));
    messages.sort(MidiEvents.ORDER);
    assertThat(messages)
        .extracting(ShortMessage::getCommand, ShortMessage::getData2)
        .extracting(Object::toString)
        .containsExactly("(144, 0)", "(176, 90)", "(192, 0)", "(144, 90)");
  }

  /** Crowded notes on two keys with wild offsets, at the slowest and the fastest tempo. */
  @Test
  void every_note_is_paired_in_the_file_whatever_the_notes_and_offsets() throws Exception {
    for (long seed = 0; seed < 300; seed++) {
      Random random = new Random(seed);
      List<Note> notes = new ArrayList<>();
      for (int i = 0; i < 40; i++) {
        Beats onset = Beats.of(random.nextInt(96), List.of(1, 3, 8, 24).get(random.nextInt(4)));
        Beats length = Beats.of(1 + random.nextInt(8), List.of(1, 8, 64).get(random.nextInt(3)));
        long offset = random.nextInt(80_001) - 40_000L;
        notes.add(new Note(onset, length, 40 + random.nextInt(2), 1 + random.nextInt(127), offset));
      }
      Tempo tempo = Tempo.of(random.nextBoolean() ? Tempo.SLOWEST : Tempo.FASTEST);
      assertPaired(notes, tempo, "seed " + seed);
    }
  }

  private static void assertPaired(List<Note> notes, Tempo tempo, String seed) throws Exception {
    Score score =
        new Score(
            "",
            Beats.of(4),
            Beats.of(100),
            List.of(new Mark.OfTempo(Beats.ZERO, tempo)),
            List.of(new Part(Role.BASS, Sound.of(33), notes)));
    Sequence read = MidiSystem.getSequence(new ByteArrayInputStream(MidiFile.bytes(score)));
    long[] struckAt = {-1, -1};
    int struck = 0;
    Track track = read.getTracks()[1];
    for (int i = 0; i < track.size(); i++) {
      if (!(track.get(i).getMessage() instanceof ShortMessage message)) {
        continue;
      }
      int key = message.getData1() - 40;
      long tick = track.get(i).getTick();
      if (MidiEvents.isNoteOn(message)) {
        assertThat(struckAt[key]).as(seed + " struck while sounding").isEqualTo(-1);
        struckAt[key] = tick;
        struck++;
      } else if (MidiEvents.isNoteOff(message)) {
        assertThat(struckAt[key]).as(seed + " ended before it began").isBetween(0L, tick - 1);
        struckAt[key] = -1;
      }
    }
    assertThat(struckAt).as(seed + " left sounding").containsExactly(-1, -1);
    long distinct = notes.stream().map(n -> n.onset() + " " + n.key()).distinct().count();
    assertThat(struck).as(seed).isEqualTo((int) distinct);
  }

  private static Note note(int onset, int length, int velocity, long offset) {
    return new Note(Beats.of(onset), Beats.of(length), 40, velocity, offset);
  }

  private static List<String> listing(Note... notes) {
    return MidiEvents.of(List.of(new Part(Role.BASS, Sound.of(33), List.of(notes)))).stream()
        .map(
            timed ->
                timed.at()
                    + (timed.offsetMicros() == 0 ? "" : " %+d".formatted(timed.offsetMicros()))
                    + (MidiEvents.isNoteOn(timed.message())
                        ? " on " + timed.message().getData2()
                        : " off"))
        .toList();
  }
}

package hingetone.output;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.hearing.HeardNote;
import hingetone.hearing.Technique;
import hingetone.hearing.Transcription;
import hingetone.neck.Spot;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.ShortMessage;
import javax.sound.midi.Track;
import org.junit.jupiter.api.Test;

/** Channels are counted from 1, as players count them. */
class HeardMidiTest {
  @Test
  void notes_one_after_the_other_share_channel_1_whatever_their_strings() throws Exception {
    assertThat(notesOn(note(0, 0.4, 67, 1), note(0.4, 0.8, 62, 2), note(0.8, 1, 57, 3)))
        .containsExactly("67 on channel 1", "62 on channel 1", "57 on channel 1");
  }

  @Test
  void where_two_sound_at_once_each_string_has_its_channel() throws Exception {
    assertThat(notesOn(note(0, 0.4, 62, 2), note(0, 0.4, 67, 1), note(0.4, 0.8, 64, 2)))
        .containsExactly("62 on channel 2", "67 on channel 1", "64 on channel 2");
  }

  /** Channel 10 is percussion in General MIDI 1. */
  @Test
  void a_tenth_string_leaves_out_the_channel_of_the_drums() throws Exception {
    assertThat(notesOn(note(0, 0.4, 31, 10), note(0, 0.4, 36, 9), note(0.4, 0.8, 26, 11)))
        .containsExactly("31 on channel 11", "36 on channel 9", "26 on channel 12");
  }

  private static Transcription.Placed note(double at, double end, int key, int string) {
    HeardNote note = new HeardNote(at, end, -20, key, key, Technique.PLAIN, false, List.of(), 0.9);
    return new Transcription.Placed(note, Optional.of(new Spot(string, 3)));
  }

  private static List<String> notesOn(Transcription.Placed... notes) throws Exception {
    ByteArrayOutputStream file = new ByteArrayOutputStream();
    Transcription written = new Transcription(1, 0, List.of(notes), List.of());
    HeardMidi.write(Path.of("quay.mid"), written, file);
    Track line =
        MidiSystem.getSequence(new ByteArrayInputStream(file.toByteArray())).getTracks()[1];
    List<String> on = new ArrayList<>();
    for (int i = 0; i < line.size(); i++) {
      if (line.get(i).getMessage() instanceof ShortMessage message
          && message.getCommand() == ShortMessage.NOTE_ON) {
        on.add(message.getData1() + " on channel " + (message.getChannel() + 1));
      }
    }
    return on;
  }
}

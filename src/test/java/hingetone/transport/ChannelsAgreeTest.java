package hingetone.transport;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.midi.ChannelSetup;
import hingetone.midi.MidiFile;
import hingetone.score.Mark;
import hingetone.score.Note;
import hingetone.score.Part;
import hingetone.score.Role;
import hingetone.score.Score;
import hingetone.score.Sound;
import hingetone.sequencer.Command;
import hingetone.sequencer.Rig;
import hingetone.sequencer.Timeline;
import hingetone.time.Beats;
import hingetone.time.Tempo;
import java.io.ByteArrayInputStream;
import java.util.ArrayList;
import java.util.List;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.Sequence;
import javax.sound.midi.ShortMessage;
import javax.sound.midi.Track;
import org.junit.jupiter.api.Test;

/** What is heard live and what is written are set up alike, channel by channel. */
class ChannelsAgreeTest {
  private static final int PEDAL = 64;
  private static final int ALL_NOTES_OFF = 123;
  private static final long COUNT_IN_MILLIS = 2000;

  private static final Score SCORE =
      new Score(
          "",
          Beats.of(4),
          Beats.of(12),
          List.of(
              new Mark.OfTempo(Beats.ZERO, Tempo.of(120)),
              new Mark.OfSound(Beats.of(4), Role.DRUMS, new Sound(0, 70, 50, 90)),
              new Mark.OfSound(Beats.of(8), Role.BASS, new Sound(35, 90, 64, 30))),
          List.of(
              part(Role.DRUMS, new Sound(0, 60, 64, 40)),
              part(Role.BASS, new Sound(33, 100, 60, 5)),
              part(Role.CHORDS, new Sound(27, 80, 70, 20)),
              new Part(Role.CLICK, Sound.CLICK, List.of(note(-4), note(-3))),
              part(Role.LEAD, new Sound(27, 104, 64, 35))));

  private static Note note(int beat) {
    return new Note(Beats.of(beat), Beats.of(1, 2), 40, 90).withOffsetMicros(-20_000);
  }

  private static Part part(Role role, Sound sound) {
    return new Part(role, sound, List.of(note(0), note(4), note(8)));
  }

  @Test
  void live_and_in_a_file_the_same_is_set_up_at_the_same_time() throws Exception {
    List<String> live = live();
    assertThat(live).hasSize(4 * 4 + 4 + 4).contains("0 0xb9 7 60", "3970 0xb9 7 70");
    assertThat(file()).containsExactlyInAnyOrderElementsOf(live);
  }

  @Test
  void a_note_played_early_has_the_sound_of_its_bar() {
    Rig rig = new Rig(lap -> SCORE).send(new Command.Play()).to(COUNT_IN_MILLIS + 4001);
    List<String> bass = rig.lines().stream().filter(line -> line.endsWith("ch1")).toList();
    assertThat(bass).containsSubsequence("5970 program 35 ch1", "5980 on E2 v90 ch1");
  }

  @Test
  void a_click_is_set_up_by_itself_where_no_drums_share_its_channel() {
    List<Role> roles = SCORE.parts().stream().map(Part::role).toList();
    assertThat(ChannelSetup.owners(roles, role -> role == Role.CLICK ? 5 : role.channel()))
        .contains(Role.CLICK, Role.DRUMS);
    assertThat(ChannelSetup.owners(roles, Role::channel))
        .containsExactly(Role.DRUMS, Role.BASS, Role.CHORDS, Role.LEAD);
  }

  /** What sets channels up, with its milliseconds; what comes before the start comes at it. */
  private static List<String> live() {
    Rig rig = new Rig(lap -> SCORE).send(new Command.Play()).to(COUNT_IN_MILLIS + 5500);
    List<String> lines = new ArrayList<>();
    for (Rig.Sent sent : rig.sent) {
      double millis = (sent.due() - Timeline.LEAD) / 1e6;
      addSetUp(sent.message(), Math.max(0, Math.round(millis)), lines);
    }
    return lines;
  }

  private static List<String> file() throws Exception {
    Sequence sequence = MidiSystem.getSequence(new ByteArrayInputStream(MidiFile.bytes(SCORE)));
    List<String> lines = new ArrayList<>();
    for (Track track : sequence.getTracks()) {
      for (int i = 0; i < track.size(); i++) {
        if (track.get(i).getMessage() instanceof ShortMessage message) {
          double millis = track.get(i).getTick() * 500.0 / MidiFile.TICKS;
          addSetUp(message, Math.round(millis), lines);
        }
      }
    }
    return lines;
  }

  private static void addSetUp(ShortMessage message, long millis, List<String> lines) {
    boolean controls =
        message.getCommand() == ShortMessage.CONTROL_CHANGE
            && message.getData1() != PEDAL
            && message.getData1() != ALL_NOTES_OFF;
    if (message.getCommand() == ShortMessage.PROGRAM_CHANGE || controls) {
      String status = Integer.toHexString(message.getStatus());
      lines.add(millis + " 0x" + status + " " + message.getData1() + " " + message.getData2());
    }
  }
}

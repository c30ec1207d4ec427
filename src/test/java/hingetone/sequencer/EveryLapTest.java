package hingetone.sequencer;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.score.Note;
import hingetone.score.Role;
import hingetone.score.Score;
import hingetone.time.Beats;
import java.util.ArrayList;
import java.util.List;
import javax.sound.midi.ShortMessage;
import org.junit.jupiter.api.Test;

/**
 * What can be asked of the band is asked in each of three hundred laps. A lap is one bar, whose
 * only bass note says which lap and which band it is of; the first lap is counted in.
 */
class EveryLapTest implements MessageSink {
  private static final int LAPS = 300;

  /** {@code 0} for the bar of the count-in, {@code 7: 7} for bar 7 with its bass note. */
  private final List<String> heard = new ArrayList<>();

  private Rig rig = new Rig(n -> lap(n, 0));

  private int finished;
  private long now;

  private static Score lap(int number, int band) {
    Note bass = new Note(Beats.ZERO, Beats.ONE, key(number, band), 90);
    Score bar = PlayingBand.of(1, 400, Role.BASS, bass);
    Beats countIn = number == 1 ? Beats.of(4) : Beats.ZERO;
    return new Score(bar.title(), countIn, bar.length(), bar.marks(), bar.parts());
  }

  private static int key(int lap, int band) {
    return (lap + 50 * band) % 128;
  }

  private static String bar(int bar, int band) {
    return bar + ": " + key(bar, band);
  }

  @Override
  public void send(long due, ShortMessage message) {
    if (message.getCommand() == ShortMessage.NOTE_ON && message.getChannel() == 1) {
      String bar = heard.remove(heard.size() - 1);
      heard.add(bar + ": " + message.getData1());
    }
  }

  @Override
  public void tell(SequencerEvent moment) {
    if (moment instanceof SequencerEvent.BarLine line) {
      heard.add("" + line.bar());
    } else if (moment instanceof SequencerEvent.Finished) {
      finished++;
    }
  }

  private void ask(Command... commands) {
    for (Command command : commands) {
      rig.timeline.apply(command, this);
    }
  }

  /** The next so many bars, fewer where it ends before. */
  private List<String> next(int bars) {
    heard.clear();
    long due = rig.timeline.nextDue();
    while (heard.size() < bars && due < Long.MAX_VALUE) {
      now = due + 1;
      rig.timeline.advance(now, this);
      due = rig.timeline.nextDue();
    }
    return heard;
  }

  private void playTo(int lap) {
    ask(new Command.Jump(lap), new Command.Play());
    assertThat(next(1)).hasSize(1);
  }

  @Test
  void it_stops_and_begins_again_from_the_count_in() {
    for (int lap = 1; lap <= LAPS; lap++) {
      playTo(lap);
      ask(new Command.Stop());
      assertThat(rig.playhead.at(now).position()).hasToString("bar 0 beat 1");
      ask(new Command.Play());
      assertThat(next(3)).containsExactly("0", bar(1, 0), bar(2, 0));
    }
  }

  @Test
  void it_restarts_from_the_count_in() {
    for (int lap = 1; lap <= LAPS; lap++) {
      playTo(lap);
      ask(new Command.Restart());
      assertThat(next(3)).containsExactly("0", bar(1, 0), bar(2, 0));
    }
  }

  @Test
  void it_jumps_to_the_first_lap_and_to_one_far_ahead_and_plays_on() {
    for (int lap = 1; lap <= LAPS; lap++) {
      playTo(lap);
      ask(new Command.Jump(1));
      assertThat(next(2)).containsExactly(bar(1, 0), bar(2, 0));
      ask(new Command.Pause(), new Command.Jump(lap + LAPS), new Command.Play());
      assertThat(next(2)).containsExactly(bar(lap + LAPS, 0), bar(lap + LAPS + 1, 0));
    }
  }

  @Test
  void the_groove_changes_from_the_next_bar_on_and_for_the_first_lap_too() {
    for (int lap = 1; lap <= LAPS; lap++) {
      playTo(lap);
      int band = lap;
      rig.follow(n -> lap(n, band));
      ask(new Command.Follow());
      assertThat(next(2)).containsExactly(bar(lap + 1, band), bar(lap + 2, band));
      ask(new Command.Restart());
      assertThat(next(2)).containsExactly("0", bar(1, band));
    }
  }

  @Test
  void it_ends_by_itself_after_any_number_of_laps_and_can_be_played_again() {
    for (int laps = 1; laps <= LAPS; laps++) {
      rig = new Rig(n -> lap(n, 0), PlaySetup.USUAL.withLaps(laps));
      finished = 0;
      ask(new Command.Play(), new Command.Jump(Math.max(1, laps - 7)));
      assertThat(next(LAPS)).endsWith(bar(laps, 0));
      assertThat(finished).as("%d laps", laps).isEqualTo(1);
      assertThat(rig.timeline.status().motion()).isEqualTo(Status.Motion.STOPPED);
      ask(new Command.Play());
      assertThat(next(1)).containsExactly("0");
    }
  }
}

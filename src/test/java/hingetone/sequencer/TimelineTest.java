package hingetone.sequencer;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.score.Note;
import hingetone.score.Role;
import hingetone.time.Beats;
import hingetone.time.Tempo;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Playing and standing still; at 120 a beat lasts 500 ms and a bar 2000. */
class TimelineTest {
  private static Note note(Beats on, Beats length, int key) {
    return new Note(on, length, key, 90);
  }

  @Test
  void nothing_sounds_before_play() {
    Rig rig = new Rig(n -> PlayingBand.plain(2, 120)).to(5000);
    assertThat(rig.sent).isEmpty();
    assertThat(rig.timeline.nextDue()).isEqualTo(Long.MAX_VALUE);
    assertThat(rig.place(0)).isEqualTo("bar 1 beat 1");
  }

  @Test
  void notes_fall_on_their_places_with_offs_before_ons() {
    Rig rig =
        Rig.playing(
                PlayingBand.of(
                    1,
                    120,
                    Role.BASS,
                    note(Beats.ZERO, Beats.ONE, 33),
                    note(Beats.ONE, Beats.of(2, 3), 33)))
            .to(2000);
    assertThat(rig.notes())
        .containsExactly(
            "0 on A1 v90 ch1", "500 off A1 ch1", "500 on A1 v90 ch1", "833.333333 off A1 ch1");
  }

  @Test
  void channels_are_set_up_a_little_before_the_first_note() {
    Rig rig = Rig.playing(PlayingBand.plain(1, 120)).to(1);
    assertThat(rig.lines().subList(0, 9))
        .containsExactly(
            "-30 control 7=100 ch9",
            "-30 control 10=64 ch9",
            "-30 control 91=20 ch9",
            "-30 program 0 ch9",
            "-30 control 7=100 ch1",
            "-30 control 10=64 ch1",
            "-30 control 91=20 ch1",
            "-30 program 33 ch1",
            "0 on F#2 v90 ch9");
  }

  @Test
  void a_note_held_over_the_seam_between_laps_sounds_on() {
    Rig rig =
        Rig.playing(PlayingBand.of(1, 120, Role.BASS, note(Beats.of(3), Beats.of(2), 40))).to(4000);
    assertThat(rig.notes())
        .containsExactly("1500 on E2 v90 ch1", "2500 off E2 ch1", "3500 on E2 v90 ch1");
  }

  @Test
  void a_note_before_time_zero_of_a_later_lap_ends_the_lap_before() {
    Note pickup = note(Beats.of(-1, 2), Beats.of(1, 2), 45);
    Rig rig = Rig.playing(PlayingBand.of(1, 120, Role.LEAD, pickup)).to(4000);
    assertThat(rig.strikes()).containsExactly("1750 on A2 v90 ch3", "3750 on A2 v90 ch3");
  }

  @Test
  void a_note_played_early_starts_before_its_bar_line() {
    Note early = note(Beats.ZERO, Beats.ONE, 40).withOffsetMicros(-12_000);
    Rig rig = Rig.playing(PlayingBand.of(1, 120, Role.BASS, early)).to(2100);
    assertThat(rig.strikes()).containsExactly("-12 on E2 v90 ch1", "1988 on E2 v90 ch1");
  }

  @Test
  void the_count_in_comes_before_bar_1_and_only_once() {
    Rig rig = Rig.playing(PlayingBand.countedIn(1, 120, 1)).to(3999);
    assertThat(rig.moments(SequencerEvent.BarLine.class).stream().map(SequencerEvent.BarLine::bar))
        .containsExactly(0, 1);
    assertThat(rig.strikes().get(0)).isEqualTo("0 on C#2 v90 ch9");
    assertThat(rig.place(500)).isEqualTo("bar 0 beat 2");
    assertThat(rig.place(2000)).isEqualTo("bar 1 beat 1");
    rig.to(4000.1);
    assertThat(rig.place(4000)).isEqualTo("bar 2 beat 1");
  }

  @Test
  void a_count_in_without_notes_is_clicked() {
    Rig rig =
        new Rig(
            n ->
                new hingetone.score.Score(
                    "Test",
                    Beats.of(4),
                    Beats.of(4),
                    List.of(),
                    List.of(PlayingBand.part(Role.BASS))));
    rig.send(new Command.Play()).to(4799);
    assertThat(rig.strikes())
        .containsExactly(
            "0 on E5 v120 ch9", "600 on F5 v80 ch9", "1200 on F5 v100 ch9", "1800 on F5 v80 ch9");
  }

  @Test
  void after_the_last_lap_it_stops_and_says_so() {
    Rig rig =
        new Rig(n -> PlayingBand.plain(1, 120), PlaySetup.USUAL.withoutMidiClock().withLaps(2));
    rig.send(new Command.Play()).to(9000);
    assertThat(rig.moments(SequencerEvent.Finished.class)).hasSize(1);
    assertThat(rig.timeline.status().motion()).isEqualTo(Status.Motion.STOPPED);
    assertThat(rig.strikes()).hasSize(2 * 5);
    assertThat(Wire.left(rig.messages())).isEmpty();
    assertThat(rig.place(9000)).isEqualTo("bar 1 beat 1");
  }

  @Test
  void an_ending_is_one_more_bar_and_no_new_pass() {
    PlaySetup setup = PlaySetup.USUAL.withoutMidiClock().withLaps(2).withEnding(1);
    Rig rig = new Rig(n -> PlayingBand.plain(2, 120), setup);
    rig.send(new Command.KeyWalk(5)).send(new Command.Play()).to(15_000);

    assertThat(rig.moments(SequencerEvent.BarLine.class).stream().map(SequencerEvent.BarLine::bar))
        .containsExactly(1, 2, 3, 4, 5);
    assertThat(
            rig.moments(SequencerEvent.BarLine.class).stream()
                .map(SequencerEvent.BarLine::keyShift))
        .containsExactly(0, 0, 5, 5, 5);
    assertThat(rig.moments(SequencerEvent.Finished.class)).hasSize(1);
    assertThat(Wire.left(rig.messages())).isEmpty();
  }

  @Test
  void pause_lets_go_and_play_goes_on_where_it_stood() {
    Rig rig = Rig.playing(PlayingBand.plain(2, 120)).to(750).send(new Command.Pause());
    assertThat(Wire.left(rig.messages())).isEmpty();
    rig.to(5000);
    assertThat(rig.place(4000)).isEqualTo("bar 1 beat 2+1/2");
    assertThat(rig.playhead.at(rig.now).moving()).isFalse();
    rig.send(new Command.Play()).to(5251);
    assertThat(rig.strikes())
        .containsExactly(
            "0 on F#2 v90 ch9", "0 on A1 v100 ch1", "500 on F#2 v90 ch9", "5250 on F#2 v90 ch9");
    assertThat(rig.place(5250)).isEqualTo("bar 1 beat 3");
  }

  @Test
  void stop_goes_back_to_the_top() {
    Rig rig = Rig.playing(PlayingBand.countedIn(4, 120, 1)).to(7100).send(new Command.Stop());
    assertThat(Wire.left(rig.messages())).isEmpty();
    assertThat(rig.place(7100)).isEqualTo("bar 0 beat 1");
    int before = rig.strikes().size();
    rig.to(8000).send(new Command.Play()).to(8061);
    assertThat(rig.strikes().subList(before, before + 1)).containsExactly("8060 on C#2 v90 ch9");
  }

  @Test
  void restart_begins_at_the_top_at_once() {
    Rig rig = Rig.playing(PlayingBand.plain(4, 120)).to(3100).send(new Command.Restart()).to(3200);
    assertThat(rig.strikes().subList(9, 11))
        .containsExactly("3160 on F#2 v90 ch9", "3160 on A1 v100 ch1");
    assertThat(rig.moments(SequencerEvent.BarLine.class))
        .extracting(SequencerEvent.BarLine::bar)
        .containsExactly(1, 2, 1);
  }

  @Test
  void a_new_tempo_holds_from_the_very_moment() {
    Rig rig = Rig.playing(PlayingBand.plain(2, 120)).to(250);
    rig.send(new Command.SetTempo(Tempo.of(60))).to(2000);
    // Half a beat is left at 250 ms: it now lasts 500.
    assertThat(rig.strikes().subList(2, 4))
        .containsExactly("750 on F#2 v90 ch9", "1750 on F#2 v90 ch9");
    assertThat(rig.place(1250)).isEqualTo("bar 1 beat 2+1/2");
    assertThat(rig.timeline.status().tempo()).isEqualTo(Tempo.of(60));
  }

  @Test
  void tempo_steps_and_taps_set_it_too() {
    Rig rig = Rig.playing(PlayingBand.plain(2, 120)).send(Command.StepTempo.of(-5));
    assertThat(rig.timeline.status().tempo()).isEqualTo(Tempo.of(115));
    for (long tap = 0; tap < 3; tap++) {
      rig.send(new Command.Tap(tap * 750_000_000));
    }
    assertThat(rig.timeline.status().tempo()).isEqualTo(Tempo.of(80));
  }

  @Test
  void muting_a_part_lets_it_go_at_once_and_unmuting_brings_its_next_note() {
    Rig rig = Rig.playing(PlayingBand.plain(2, 120)).to(750);
    rig.send(new Command.Mute(Role.BASS, true));
    assertThat(rig.notes()).endsWith("750 off A1 ch1");
    rig.to(2750).send(new Command.Mute(Role.BASS, false)).to(4001);
    assertThat(rig.strikes().stream().filter(s -> s.endsWith("ch1")))
        .containsExactly("0 on A1 v100 ch1", "4000 on A1 v100 ch1");
  }
}

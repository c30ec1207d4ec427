package hingetone.sequencer;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.score.Mark;
import hingetone.score.Note;
import hingetone.score.Role;
import hingetone.score.Score;
import hingetone.score.Sound;
import hingetone.time.Beats;
import hingetone.time.Tempo;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Loops, jumps, keys, ramps, levels and silence; at 120 a bar of 4/4 lasts 2000 ms. */
class LiveChangesTest {
  private static List<Integer> bars(Rig rig) {
    return rig.moments(SequencerEvent.BarLine.class).stream()
        .map(SequencerEvent.BarLine::bar)
        .toList();
  }

  private static Score riff(int bars, Beats length) {
    Note[] notes =
        IntStream.range(0, bars)
            .mapToObj(bar -> new Note(Beats.of(4L * bar), length, 40 + bar, 90))
            .toArray(Note[]::new);
    return PlayingBand.of(bars, 120, Role.BASS, notes);
  }

  @Test
  void a_loop_plays_its_bars_over_and_over_until_ended() {
    Rig rig = Rig.playing(PlayingBand.plain(8, 120)).send(new Command.Loop(2, 3)).to(11_000);
    assertThat(bars(rig)).containsExactly(1, 2, 3, 2, 3, 2);
    rig.send(new Command.Unloop()).to(16_001);
    assertThat(bars(rig)).endsWith(2, 3, 4, 5);
  }

  @Test
  void a_loop_set_behind_the_music_is_entered_at_the_next_bar_line() {
    Rig rig =
        Rig.playing(PlayingBand.plain(8, 120)).to(9000).send(new Command.Loop(2, 3)).to(15_000);
    assertThat(bars(rig)).containsExactly(1, 2, 3, 4, 5, 2, 3, 2);
  }

  @Test
  void a_note_held_over_the_end_of_a_loop_is_let_go_at_the_seam() {
    Rig rig = Rig.playing(riff(4, Beats.of(5))).send(new Command.Loop(1, 2)).to(4001);
    assertThat(rig.notes())
        .containsExactly(
            "0 on E2 v90 ch1",
            "2000 on F2 v90 ch1",
            "2500 off E2 ch1",
            "4000 off F2 ch1",
            "4000 on E2 v90 ch1");
  }

  @Test
  void a_note_so_late_that_it_would_fall_behind_a_seam_is_left_out() {
    Note late = new Note(Beats.of(31, 8), Beats.ONE, 50, 90).withOffsetMicros(80_000);
    Score bar = PlayingBand.of(4, 120, Role.BASS, late);
    assertThat(Rig.playing(bar).to(2100).strikes()).containsExactly("2017.5 on D3 v90 ch1");
    Rig looped = Rig.playing(bar).send(new Command.Loop(1, 1)).to(2100);
    assertThat(looped.strikes()).isEmpty();
    Rig silent = Rig.playing(bar).send(new Command.SilentBars(1, 1)).to(2100);
    assertThat(silent.strikes()).isEmpty();
  }

  @Test
  void a_loop_around_the_next_crossing_finds_the_change_of_key_and_the_seam() {
    Rig rig = Rig.playing(PlayingBand.plain(8, 120)).to(100).send(new Command.LoopCrossing(2, 1));
    assertThat(rig.timeline.status().loop()).contains(new Command.Loop(3, 5));
    rig.send(new Command.Unloop()).send(new Command.Jump(6)).to(2100);
    rig.send(new Command.LoopCrossing(2, 1)).to(16_100);
    assertThat(rig.timeline.status().loop()).contains(new Command.Loop(7, 9));
    assertThat(bars(rig)).containsExactly(1, 6, 7, 8, 9, 7, 8, 9, 7);
  }

  @Test
  void a_jump_waits_for_the_bar_line_even_in_the_last_moment() {
    Rig rig = Rig.playing(PlayingBand.plain(8, 120)).to(1999).send(new Command.Jump(7)).to(4001);
    assertThat(bars(rig)).containsExactly(1, 7, 8);
    assertThat(rig.strikes().subList(5, 7))
        .containsExactlyInAnyOrder("2000 on F#2 v90 ch9", "2000 on D#2 v100 ch1");
    assertThat(rig.place(2000)).isEqualTo("bar 7 beat 1");
  }

  @Test
  void a_bar_whose_first_note_already_sounds_is_played_before_a_jump() {
    Note early = new Note(Beats.of(4), Beats.ONE, 50, 90).withOffsetMicros(-20_000);
    Rig rig = Rig.playing(PlayingBand.of(4, 120, Role.BASS, early)).to(1990);
    rig.send(new Command.Jump(4)).to(4001);
    assertThat(rig.strikes()).containsExactly("1980 on D3 v90 ch1");
    assertThat(bars(rig)).containsExactly(1, 2, 4);
  }

  @Test
  void a_jump_while_paused_is_done_at_once() {
    Rig rig = Rig.playing(PlayingBand.plain(8, 120)).to(3000).send(new Command.Pause());
    rig.send(new Command.Jump(5)).to(4000);
    assertThat(rig.place(3999)).isEqualTo("bar 5 beat 1");
    rig.send(new Command.Play()).to(4100);
    assertThat(bars(rig)).containsExactly(1, 2, 5);
  }

  @Test
  void a_section_is_found_ahead_in_the_lap_or_from_its_start() {
    Rig rig = Rig.playing(PlayingBand.plain(8, 120)).to(100);
    rig.send(new Command.JumpToSection("high")).to(2100);
    rig.send(new Command.JumpToSection("low")).to(4100);
    rig.send(new Command.JumpToSection("nowhere")).to(6100);
    assertThat(bars(rig)).containsExactly(1, 5, 1, 2);
  }

  @Test
  void a_key_shift_moves_all_but_the_drums_from_the_next_bar() {
    Rig rig = Rig.playing(riff(2, Beats.of(4))).to(500).send(new Command.StepKey(2)).to(2001);
    assertThat(rig.notes())
        .containsExactly("0 on E2 v90 ch1", "2000 off E2 ch1", "2000 on G2 v90 ch1");
    assertThat(rig.moments(SequencerEvent.BarLine.class).get(1).keyShift()).isEqualTo(2);
  }

  @Test
  void a_walk_by_fourths_plays_all_twelve_keys_near_home() {
    Rig rig = Rig.playing(riff(1, Beats.ONE)).send(new Command.KeyWalk(5)).to(23_999);
    List<Integer> shifts =
        rig.moments(SequencerEvent.BarLine.class).stream()
            .map(SequencerEvent.BarLine::keyShift)
            .toList();
    Set<Integer> keys = new HashSet<>(shifts);
    assertThat(shifts).hasSize(12).startsWith(0, 5, -2, 3);
    assertThat(keys).hasSize(12).allMatch(shift -> shift >= -5 && shift <= 6);
  }

  @Test
  void a_ramp_steps_every_so_many_passes_up_to_its_goal() {
    Rig rig = new Rig(n -> PlayingBand.plain(1, 100));
    rig.send(new Command.Ramp(Tempo.of(80), Tempo.of(100), BigDecimal.valueOf(8), 2));
    rig.send(new Command.Play());
    List<String> tempos = new java.util.ArrayList<>();
    for (int lap = 0; lap < 8; lap++) {
      int before = bars(rig).size();
      for (long t = rig.now; bars(rig).size() == before; t += 10_000_000) {
        rig.now = t;
        rig.timeline.advance(t, rig);
      }
      tempos.add(rig.timeline.status().tempo().toString());
    }
    assertThat(tempos).containsExactly("80", "80", "88", "88", "96", "96", "100", "100");
    rig.send(Command.StepTempo.of(3));
    assertThat(rig.timeline.status().ramp()).isEmpty();
    assertThat(rig.timeline.status().tempo()).isEqualTo(Tempo.of(103));
  }

  @Test
  void another_band_takes_over_at_the_next_bar() {
    Rig rig = Rig.playing(riff(4, Beats.of(4))).to(1990);
    rig.follow(n -> PlayingBand.of(4, 120, Role.BASS, new Note(Beats.of(4), Beats.ONE, 50, 70)));
    rig.to(2001);
    assertThat(rig.strikes()).containsExactly("0 on E2 v90 ch1", "2000 on D3 v70 ch1");
  }

  @Test
  void another_band_begins_again_with_its_own_count_in() {
    Note last = new Note(Beats.of(-1), Beats.ONE, 52, 70);
    Score other = PlayingBand.of(2, 120, Role.BASS, last);
    Rig rig = new Rig(n -> PlayingBand.countedIn(2, 120, 1)).send(new Command.Play()).to(2500);
    rig.follow(n -> new Score("", Beats.of(4), Beats.of(8), other.marks(), other.parts()));
    int before = rig.strikes().size();
    rig.send(new Command.Restart()).to(4600);
    assertThat(rig.strikes().subList(before, rig.strikes().size()))
        .containsExactly("4060 on E3 v70 ch1");
  }

  @Test
  void a_part_changes_its_sound_before_the_line_where_the_score_says_so() {
    Note[] notes = {
      new Note(Beats.ZERO, Beats.ONE, 40, 90), new Note(Beats.of(4), Beats.ONE, 41, 90)
    };
    Score plain = PlayingBand.of(2, 120, Role.BASS, notes);
    List<Mark> marks = new ArrayList<>(plain.marks());
    marks.add(new Mark.OfSound(Beats.of(4), Role.BASS, new Sound(38, 70, 20, 5)));
    Rig rig =
        Rig.playing(new Score("Test", Beats.ZERO, Beats.of(8), marks, plain.parts())).to(4100);
    List<String> programs =
        rig.lines().stream()
            .filter(l -> l.contains("program") || l.contains("control 7=") || l.contains(" on "))
            .filter(l -> l.endsWith("ch1"))
            .toList();
    assertThat(programs)
        .containsExactly(
            "-30 control 7=100 ch1",
            "-30 program 33 ch1",
            "0 on E2 v90 ch1",
            "1970 control 7=70 ch1",
            "1970 program 38 ch1",
            "2000 on F2 v90 ch1",
            "3970 control 7=100 ch1",
            "3970 program 33 ch1",
            "4000 on E2 v90 ch1");
  }

  @Test
  void a_level_goes_over_in_small_moves_and_ends_where_it_should() {
    Rig rig = Rig.playing(PlayingBand.plain(1, 120)).to(100);
    int before = rig.sent.size();
    rig.send(new Command.StepLevel(Role.BASS, -50)).to(400);
    List<Integer> values =
        rig.sent.subList(before, rig.sent.size()).stream()
            .filter(s -> s.message().getStatus() == 0xB1 && s.message().getData1() == 7)
            .map(s -> s.message().getData2())
            .toList();
    assertThat(values).endsWith(50);
    int last = 100;
    for (int value : values) {
      assertThat(last - value).isBetween(1, 3);
      last = value;
    }
  }

  @Test
  void pedals_go_up_at_a_mute_and_at_a_seam_but_not_under_a_note_that_sounds() {
    Rig muted = Rig.playing(PlayingBand.plain(2, 120)).to(100);
    int before = muted.sent.size();
    muted.send(new Command.Mute(Role.BASS, true));
    assertThat(muted.lines().subList(before, muted.sent.size()))
        .containsExactly("100 off A1 ch1", "100 control 64=0 ch1", "100 control 123=0 ch1");
    Note early = new Note(Beats.ZERO, Beats.ONE, 50, 90).withOffsetMicros(-20_000);
    Rig looped = Rig.playing(PlayingBand.of(2, 120, Role.BASS, early)).send(new Command.Loop(1, 1));
    looped.to(1900);
    before = looped.sent.size();
    looped.to(2100);
    assertThat(looped.lines().subList(before, looped.sent.size()))
        .filteredOn(line -> line.endsWith("ch1"))
        .containsExactly("1980 on D3 v90 ch1");
  }

  @Test
  void the_volume_scales_every_channel() {
    Rig rig =
        Rig.playing(PlayingBand.plain(1, 120)).to(100).send(new Command.StepVolume(-60)).to(490);
    assertThat(rig.lines()).contains("-30 control 7=100 ch1");
    assertThat(rig.lines().stream().filter(l -> l.contains("control 7=40")))
        .hasSize(2)
        .anyMatch(l -> l.endsWith("ch1"))
        .anyMatch(l -> l.endsWith("ch9"));
  }

  @Test
  void steps_add_up_and_end_at_their_limits() {
    Rig rig = Rig.playing(PlayingBand.plain(1, 120)).to(100);
    for (int i = 0; i < 15; i++) {
      rig.send(new Command.StepKey(1)).send(new Command.StepLevel(Role.BASS, -8));
      rig.send(new Command.StepVolume(-8));
    }
    rig.send(new Command.StepLevel(Role.BASS, 3)).to(2100);
    assertThat(rig.timeline.status().keyShift()).isEqualTo(12);
    assertThat(rig.timeline.status().levels()).containsEntry(Role.BASS, 3);
    assertThat(rig.timeline.status().volume()).isZero();
  }

  @Test
  void the_band_drops_out_and_comes_back_in_time() {
    Rig rig = Rig.playing(riff(4, Beats.of(5))).send(new Command.SilentBars(2, 1)).to(8001);
    assertThat(rig.notes())
        .containsExactly(
            "0 on E2 v90 ch1",
            "2000 on F2 v90 ch1",
            "2500 off E2 ch1",
            "4000 off F2 ch1",
            "6000 on G2 v90 ch1",
            "8000 on E2 v90 ch1");
    assertThat(bars(rig)).containsExactly(1, 2, 3, 4, 5);
  }

  @Test
  void the_click_goes_on_while_the_band_is_silent() {
    Rig rig = Rig.playing(riff(1, Beats.ONE)).send(new Command.SilentBars(0, 1));
    rig.send(new Command.Click(Metronome.ON)).to(2001);
    assertThat(rig.strikes())
        .containsExactly(
            "0 on E5 v120 ch9",
            "500 on F5 v80 ch9",
            "1000 on F5 v100 ch9",
            "1500 on F5 v80 ch9",
            "2000 on E5 v120 ch9");
  }

  @Test
  void the_click_may_leave_gaps() {
    Rig two = Rig.playing(riff(1, Beats.ONE)).send(new Command.Mute(Role.BASS, true));
    two.send(new Command.Click(new Metronome(true, false, Metronome.Gap.OFF_BEATS_ONLY))).to(2001);
    assertThat(two.strikes()).containsExactly("500 on F5 v100 ch9", "1500 on F5 v100 ch9");
    Rig other = Rig.playing(riff(1, Beats.ONE)).send(new Command.Mute(Role.BASS, true));
    other.send(new Command.Click(new Metronome(true, true, Metronome.Gap.EVERY_OTHER_BAR)));
    assertThat(other.to(5999).strikes()).hasSize(8).startsWith("0 on E5 v120 ch9");
    assertThat(other.strikes().get(4)).isEqualTo("4000 on E5 v120 ch9");
  }

  @Test
  void changes_of_drums_and_click_at_one_place_never_strike_a_sounding_key() {
    Score drums = PlayingBand.of(1, 120, Role.DRUMS, new Note(Beats.ZERO, Beats.of(4), 76, 90));
    Rig rig = Rig.playing(drums).send(new Command.Click(Metronome.ON)).to(9000);
    assertThat(Wire.left(rig.messages())).hasSizeLessThanOrEqualTo(1);
  }
}

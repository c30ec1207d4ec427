package hingetone.screen;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import hingetone.score.Role;
import hingetone.sequencer.Command;
import hingetone.sequencer.Metronome;
import hingetone.sequencer.Metronome.Gap;
import hingetone.sequencer.Status;
import hingetone.sequencer.Status.Motion;
import hingetone.time.Tempo;
import java.math.BigDecimal;
import org.junit.jupiter.api.Test;

class LiveChangeTest {
  private static final State PLAYING = Examples.playing(2, "3");

  private static Command asked(Status status, Action action) {
    return LiveChange.of(PLAYING.withStatus(status), action, 0);
  }

  private static Command asked(Action action) {
    return asked(PLAYING.status(), action);
  }

  @Test
  void the_pause_key_pauses_what_plays_and_plays_what_stands() {
    assertThat(asked(Statuses.moving(Motion.PLAYING), Action.PAUSE)).isEqualTo(new Command.Pause());
    assertThat(asked(Statuses.moving(Motion.PAUSED), Action.PAUSE)).isEqualTo(new Command.Play());
    assertThat(asked(Statuses.moving(Motion.STOPPED), Action.PAUSE)).isEqualTo(new Command.Play());
  }

  @Test
  void what_is_off_is_switched_on() {
    assertThat(asked(Action.DRUMS)).isEqualTo(new Command.Mute(Role.DRUMS, true));
    assertThat(asked(Action.CLICK)).isEqualTo(new Command.Click(Metronome.ON));
    assertThat(asked(Action.SILENT_BARS)).isEqualTo(new Command.SilentBars(2, 2));
    assertThat(asked(Action.EVERY_KEY)).isEqualTo(new Command.KeyWalk(5));
    assertThat(asked(Action.LOOP)).isEqualTo(new Command.Loop(1, 8));
    assertThat(asked(Action.RAMP))
        .isEqualTo(new Command.Ramp(Tempo.of(112), Tempo.of(132), BigDecimal.valueOf(2), 1));
  }

  @Test
  void what_is_on_is_switched_off() {
    Status all = Statuses.withEverything();
    assertThat(asked(all, Action.BASS)).isEqualTo(new Command.Mute(Role.BASS, false));
    assertThat(asked(all, Action.CLICK))
        .isEqualTo(new Command.Click(new Metronome(false, true, Gap.EVERY_OTHER_BAR)));
    assertThat(asked(all, Action.SILENT_BARS)).isEqualTo(Command.SilentBars.NONE);
    assertThat(asked(all, Action.EVERY_KEY)).isEqualTo(new Command.KeyWalk(0));
    assertThat(asked(all, Action.LOOP)).isEqualTo(new Command.Unloop());
    assertThat(asked(all, Action.RAMP)).isEqualTo(new Command.SetTempo(Tempo.of(112)));
  }

  @Test
  void the_crossing_is_looped_from_another_loop_too_and_only_its_own_is_ended() {
    Command.LoopCrossing around = new Command.LoopCrossing(2, 2);
    assertThat(asked(Statuses.looping(1, 4), Action.LOOP_CROSSING)).isEqualTo(around);
    assertThat(asked(Statuses.looping(1, 8), Action.LOOP_CROSSING)).isEqualTo(around);
    assertThat(asked(Statuses.looping(7, 10), Action.LOOP_CROSSING))
        .isEqualTo(new Command.Unloop());
  }

  @Test
  void the_metronome_goes_through_its_ways() {
    assertThat(asked(Action.CLICK_WAY))
        .isEqualTo(new Command.Click(new Metronome(true, true, Gap.OFF_BEATS_ONLY)));
    assertThat(asked(Statuses.withEverything(), Action.CLICK_WAY))
        .isEqualTo(new Command.Click(new Metronome(true, true, Gap.NONE)));
  }

  @Test
  void steps_are_told_as_steps_so_that_none_is_lost_when_keys_come_fast() {
    assertThat(asked(Action.SLOWER_BY_FIVE)).isEqualTo(Command.StepTempo.of(-5));
    assertThat(asked(Action.CHORDS_SOFTER)).isEqualTo(new Command.StepLevel(Role.CHORDS, -8));
    assertThat(asked(Action.LOUDER)).isEqualTo(new Command.StepVolume(5));
    assertThat(asked(Action.KEY_DOWN)).isEqualTo(new Command.StepKey(-1));
  }

  @Test
  void what_is_not_the_bands_business_is_no_live_change() {
    assertThatThrownBy(() -> asked(Action.HELP)).isInstanceOf(IllegalArgumentException.class);
  }
}

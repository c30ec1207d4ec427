package hingetone.play;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.plan.ExampleChoice;
import hingetone.score.Role;
import hingetone.screen.Effect;
import hingetone.screen.Fader;
import hingetone.sequencer.Command;
import hingetone.sequencer.Metronome;
import hingetone.sequencer.Status;
import hingetone.time.Tempo;
import java.math.BigDecimal;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.junit.jupiter.api.Test;

class BandControlTest {
  private static Status status(Status.Motion motion) {
    return new Status(
        motion,
        Tempo.of(112),
        Optional.empty(),
        2,
        0,
        Set.of(Role.BASS),
        Map.of(Role.DRUMS, 96),
        60,
        Metronome.OFF,
        Command.SilentBars.NONE,
        Optional.empty(),
        OptionalInt.of(17));
  }

  private static Optional<Command> command(Effect effect) {
    return BandControl.command(effect, status(Status.Motion.PLAYING));
  }

  @Test
  void the_pause_key_pauses_what_plays_and_plays_what_stands() {
    Effect pause = new Effect.TogglePause();
    assertThat(command(pause)).contains(new Command.Pause());
    for (Status.Motion motion : Set.of(Status.Motion.PAUSED, Status.Motion.STOPPED)) {
      assertThat(BandControl.command(pause, status(motion))).contains(new Command.Play());
    }
    for (Status.Motion motion : Status.Motion.values()) {
      assertThat(BandControl.command(new Effect.Pause(), status(motion)))
          .contains(new Command.Pause());
    }
  }

  @Test
  void a_mute_key_turns_what_holds_now() {
    assertThat(command(new Effect.ToggleMute(Fader.DRUMS)))
        .contains(new Command.Mute(Role.DRUMS, true));
    assertThat(command(new Effect.ToggleMute(Fader.BASS)))
        .contains(new Command.Mute(Role.BASS, false));
  }

  @Test
  void levels_go_in_steps_and_stay_within_their_range() {
    assertThat(command(new Effect.LevelStep(Fader.DRUMS, 1)))
        .contains(new Command.Level(Role.DRUMS, 100));
    assertThat(command(new Effect.LevelStep(Fader.CHORDS, -1)))
        .contains(new Command.Level(Role.CHORDS, 92));
    assertThat(command(new Effect.LevelStep(Fader.EVERYTHING, 1))).contains(new Command.Volume(65));
    assertThat(command(new Effect.LevelStep(Fader.EVERYTHING, -20)))
        .contains(new Command.Volume(0));
  }

  @Test
  void tempo_keys_loops_and_jumps_go_to_the_transport_as_they_are() {
    assertThat(command(new Effect.TempoStep(-5)))
        .contains(new Command.StepTempo(BigDecimal.valueOf(-5)));
    assertThat(command(new Effect.KeyStep(1))).contains(new Command.KeyShift(3));
    assertThat(command(new Effect.KeyStep(11))).isEmpty();
    assertThat(command(new Effect.LoopBars(3, 6))).contains(new Command.Loop(3, 6));
    assertThat(command(new Effect.LoopCrossing(2, 2))).contains(new Command.LoopCrossing(2, 2));
    assertThat(command(new Effect.EndLoop())).contains(new Command.Unloop());
    assertThat(command(new Effect.Jump(9))).contains(new Command.Jump(9));
    assertThat(command(new Effect.Restart())).contains(new Command.Restart());
    assertThat(command(new Effect.Stop())).contains(new Command.Stop());
  }

  @Test
  void the_metronome_goes_through_its_ways() {
    assertThat(command(new Effect.ToggleClick())).contains(new Command.Click(Metronome.ON));
    assertThat(command(new Effect.NextClick()))
        .contains(new Command.Click(new Metronome(true, true, Metronome.Gap.values()[1])));
  }

  @Test
  void the_phrases_heard_go_round() {
    Optional<ExampleChoice> none = Optional.empty();
    Optional<ExampleChoice> statements = BandControl.next(none);
    Optional<ExampleChoice> all = BandControl.next(statements);
    assertThat(statements).contains(ExampleChoice.STATEMENTS);
    assertThat(all).contains(ExampleChoice.ALL);
    assertThat(BandControl.next(all)).contains(ExampleChoice.CROSSINGS);
    assertThat(BandControl.next(Optional.of(ExampleChoice.CROSSINGS))).isEmpty();
    assertThat(BandControl.next(Optional.of(ExampleChoice.NEXT_CROSSING)))
        .contains(ExampleChoice.STATEMENTS);
  }

  @Test
  void the_screen_shows_what_the_transport_says() {
    assertThat(BandControl.band(status(Status.Motion.PLAYING)).muted()).containsExactly(Fader.BASS);
    assertThat(BandControl.band(status(Status.Motion.PLAYING)).keyShift()).isEqualTo(2);
    assertThat(BandControl.band(status(Status.Motion.PLAYING)).click()).isEmpty();
  }
}

package hingetone.command;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.exchange.Shown;
import hingetone.score.Role;
import hingetone.screen.Effect;
import hingetone.screen.Voice;
import hingetone.time.Tempo;
import hingetone.transport.Command;
import hingetone.transport.Metronome;
import hingetone.transport.Status;
import java.math.BigDecimal;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.junit.jupiter.api.Test;

class StageTest {
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
    return Stage.command(effect, status(Status.Motion.PLAYING));
  }

  @Test
  void the_pause_key_pauses_what_plays_and_plays_what_stands() {
    Effect pause = new Effect.TogglePause();
    assertThat(command(pause)).contains(new Command.Pause());
    for (Status.Motion motion : Set.of(Status.Motion.PAUSED, Status.Motion.STOPPED)) {
      assertThat(Stage.command(pause, status(motion))).contains(new Command.Play());
    }
    for (Status.Motion motion : Status.Motion.values()) {
      assertThat(Stage.command(new Effect.Pause(), status(motion))).contains(new Command.Pause());
    }
  }

  @Test
  void a_mute_key_turns_what_holds_now() {
    assertThat(command(new Effect.ToggleMute(Voice.DRUMS)))
        .contains(new Command.Mute(Role.DRUMS, true));
    assertThat(command(new Effect.ToggleMute(Voice.BASS)))
        .contains(new Command.Mute(Role.BASS, false));
  }

  @Test
  void levels_go_in_steps_and_stay_within_their_range() {
    assertThat(command(new Effect.LevelStep(Voice.DRUMS, 1)))
        .contains(new Command.Level(Role.DRUMS, 100));
    assertThat(command(new Effect.LevelStep(Voice.CHORDS, -1)))
        .contains(new Command.Level(Role.CHORDS, 92));
    assertThat(command(new Effect.LevelStep(Voice.EVERYTHING, 1))).contains(new Command.Volume(65));
    assertThat(command(new Effect.LevelStep(Voice.EVERYTHING, -20)))
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
    Optional<Shown> none = Optional.empty();
    Optional<Shown> statements = Stage.next(none);
    Optional<Shown> all = Stage.next(statements);
    assertThat(statements).contains(Shown.STATEMENTS);
    assertThat(all).contains(Shown.ALL);
    assertThat(Stage.next(all)).contains(Shown.CROSSINGS);
    assertThat(Stage.next(Optional.of(Shown.CROSSINGS))).isEmpty();
    assertThat(Stage.next(Optional.of(Shown.NEXT_CROSSING))).contains(Shown.STATEMENTS);
  }

  @Test
  void the_screen_shows_what_the_transport_says() {
    assertThat(Stage.band(status(Status.Motion.PLAYING)).muted()).containsExactly(Voice.BASS);
    assertThat(Stage.band(status(Status.Motion.PLAYING)).keyShift()).isEqualTo(2);
    assertThat(Stage.band(status(Status.Motion.PLAYING)).click()).isEmpty();
  }
}

package hingetone.screen;

import hingetone.score.Role;
import hingetone.sequencer.Command;
import hingetone.sequencer.Command.SilentBars;
import hingetone.sequencer.Status;
import hingetone.sequencer.Status.Motion;
import hingetone.time.Tempo;
import java.math.BigDecimal;

/** The live change that a key asks of the band. */
final class LiveChange {
  private static final int LEVEL_STEP = 8;
  private static final int VOLUME_STEP = 5;

  /** Up a fourth with each pass, which goes through all twelve keys (common practice). */
  private static final int WALK = 5;

  private static final int RAMP_GOAL_ABOVE = 20;
  private static final BigDecimal RAMP_STEP = BigDecimal.valueOf(2);
  private static final SilentBars TWO_OF_FOUR = new SilentBars(2, 2);

  /** Bars before and after a crossing when it is looped. */
  private static final int BARS_AROUND = 2;

  private LiveChange() {}

  /**
   * The change of an action.
   *
   * @param nanos when the key was struck, on the machine's clock
   * @throws IllegalArgumentException when the action is not the band's business
   */
  static Command of(State state, Action action, long nanos) {
    return switch (action) {
      case PAUSE -> state.motion() == Motion.PLAYING ? new Command.Pause() : new Command.Play();
      case TOP -> new Command.Restart();
      case STOP -> new Command.Stop();
      case NEXT -> new Command.Jump(BarsAhead.nextSection(state));
      case PREVIOUS -> new Command.Jump(BarsAhead.previousSection(state));
      case SLOWER -> Command.StepTempo.of(-1);
      case FASTER -> Command.StepTempo.of(1);
      case SLOWER_BY_FIVE -> Command.StepTempo.of(-5);
      case FASTER_BY_FIVE -> Command.StepTempo.of(5);
      case TAP -> new Command.Tap(nanos);
      case RAMP -> ramp(state.status());
      case DRUMS -> mute(state, Role.DRUMS);
      case BASS -> mute(state, Role.BASS);
      case CHORDS -> mute(state, Role.CHORDS);
      case LEAD -> mute(state, Role.LEAD);
      case SILENT_BARS -> state.status().dropsOut() ? SilentBars.NONE : TWO_OF_FOUR;
      case CLICK -> new Command.Click(state.status().metronome().switched());
      case CLICK_WAY -> new Command.Click(state.status().metronome().withNextGap());
      case DRUMS_SOFTER -> new Command.StepLevel(Role.DRUMS, -LEVEL_STEP);
      case DRUMS_LOUDER -> new Command.StepLevel(Role.DRUMS, LEVEL_STEP);
      case BASS_SOFTER -> new Command.StepLevel(Role.BASS, -LEVEL_STEP);
      case BASS_LOUDER -> new Command.StepLevel(Role.BASS, LEVEL_STEP);
      case CHORDS_SOFTER -> new Command.StepLevel(Role.CHORDS, -LEVEL_STEP);
      case CHORDS_LOUDER -> new Command.StepLevel(Role.CHORDS, LEVEL_STEP);
      case CLICK_SOFTER -> new Command.StepLevel(Role.CLICK, -LEVEL_STEP);
      case CLICK_LOUDER -> new Command.StepLevel(Role.CLICK, LEVEL_STEP);
      case LEAD_SOFTER -> new Command.StepLevel(Role.LEAD, -LEVEL_STEP);
      case LEAD_LOUDER -> new Command.StepLevel(Role.LEAD, LEVEL_STEP);
      case SOFTER -> new Command.StepVolume(-VOLUME_STEP);
      case LOUDER -> new Command.StepVolume(VOLUME_STEP);
      case LOOP -> orUnloop(state, BarsAhead.section(state));
      case LOOP_FROM -> BarsAhead.fromHere(state);
      case LOOP_TO -> BarsAhead.toHere(state);
      case LOOP_CROSSING ->
          loopsCrossing(state)
              ? new Command.Unloop()
              : new Command.LoopCrossing(BARS_AROUND, BARS_AROUND);
      case KEY_UP -> new Command.StepKey(1);
      case KEY_DOWN -> new Command.StepKey(-1);
      case EVERY_KEY -> new Command.KeyWalk(state.status().keyWalk() == 0 ? WALK : 0);
      default -> throw new IllegalArgumentException("not the band's business: " + action);
    };
  }

  private static Command ramp(Status now) {
    if (now.ramp().isPresent()) {
      return new Command.SetTempo(now.tempo());
    }
    int goal = Math.min(Tempo.FASTEST, now.tempo().bpm().intValue() + RAMP_GOAL_ABOVE);
    return new Command.Ramp(now.tempo(), Tempo.of(goal), RAMP_STEP, 1);
  }

  private static Command mute(State state, Role role) {
    return new Command.Mute(role, !state.status().muted().contains(role));
  }

  /** Whether the loop that is on goes round a crossing already. */
  private static boolean loopsCrossing(State state) {
    return state
        .status()
        .loop()
        .filter(loop -> loop.lastBar() - loop.firstBar() + 1 == 2 * BARS_AROUND)
        .filter(loop -> state.facts().crossingInto(loop.firstBar() + BARS_AROUND).isPresent())
        .isPresent();
  }

  private static Command orUnloop(State state, Command loop) {
    return state.status().loop().isPresent() ? new Command.Unloop() : loop;
  }
}

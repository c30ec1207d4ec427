package hingetone.screen;

import hingetone.screen.State.Layer;
import hingetone.screen.ViewSettings.Panel;
import java.util.Optional;

/** What a message changes. */
public final class Update {
  private static final int NOTICE_BEATS = 12;

  /** Bars before and after a crossing when it is looped. */
  private static final int BARS_AROUND = 2;

  private Update() {}

  /** The state after a message and the effects it asks for. */
  public static Step apply(State state, Message message) {
    if (message instanceof Message.Beat beat) {
      return Step.of(aged(state).withNow(beat.now()));
    }
    if (message instanceof Message.Playhead playhead) {
      return Step.of(state.withNow(playhead.now()));
    }
    if (message instanceof Message.Stroke stroke) {
      return struck(state, stroke);
    }
    if (message instanceof Message.Pedal pedal) {
      return pedal(state, pedal);
    }
    if (message instanceof Message.Resized resized) {
      return Step.of(state.withSize(resized.size()));
    }
    if (message instanceof Message.Moved moved) {
      return moved(state.withPhase(moved.phase()));
    }
    if (message instanceof Message.Set set) {
      return Step.of(state.withBand(set.band()));
    }
    if (message instanceof Message.Learned learned) {
      return Step.of(state.withFacts(learned.facts()));
    }
    if (message instanceof Message.Fault fault) {
      return Step.of(state.withFault(fault.words()));
    }
    if (message instanceof Message.Over) {
      return Step.of(state, new Effect.Quit());
    }
    if (message instanceof Message.Notice notice) {
      return Step.of(state.withNotice(notice.words(), NOTICE_BEATS));
    }
    throw new IllegalArgumentException("no such message: " + message);
  }

  private static State aged(State state) {
    int left = Math.max(0, state.noticeBeats() - 1);
    return state.withNotice(left == 0 ? "" : state.notice(), left);
  }

  private static Step struck(State before, Message.Stroke stroke) {
    State state = before.withAside(false);
    boolean isControl = stroke.key().startsWith("ctrl ");
    if (state.layer() instanceof Layer.Bind bind && !isControl) {
      return stroke.key().equals("esc")
          ? Step.of(state.withLayer(new Layer.None()))
          : bound(state, "key " + stroke.key(), bind.action());
    }
    if (!(state.layer() instanceof Layer.None)) {
      Optional<Step> step = Menu.struck(state, stroke);
      if (step.isPresent()) {
        return step.get();
      }
    }
    return Action.ofKey(stroke.key(), state.settings())
        .map(action -> act(state, action, stroke.nanos()))
        .orElse(Step.of(state));
  }

  private static Step pedal(State state, Message.Pedal pedal) {
    String name = "pedal " + pedal.pedal();
    if (state.layer() instanceof Layer.Bind bind) {
      return bound(state, name, bind.action());
    }
    Action action = state.settings().bound().get(name);
    return action == null ? Step.of(state) : act(state, action, pedal.nanos());
  }

  private static Step bound(State state, String what, Action action) {
    ViewSettings settings = state.settings().withBound(what, action);
    State told =
        state
            .withSettings(settings)
            .withLayer(new Layer.None())
            .withNotice(what + " is now: " + action.words(), NOTICE_BEATS);
    return Step.of(told, new Effect.Remember(settings));
  }

  /** What an action does in a state. */
  static Step act(State state, Action action, long nanos) {
    return switch (action) {
      case PAUSE -> Step.of(state, new Effect.TogglePause());
      case TOP -> Step.of(state, new Effect.Restart());
      case STOP -> Step.of(state, new Effect.Stop());
      case NEXT -> Step.of(state, new Effect.Jump(BarsAhead.nextSection(state)));
      case PREVIOUS -> Step.of(state, new Effect.Jump(BarsAhead.previousSection(state)));
      case SLOWER -> Step.of(state, new Effect.TempoStep(-1));
      case FASTER -> Step.of(state, new Effect.TempoStep(1));
      case SLOWER_BY_FIVE -> Step.of(state, new Effect.TempoStep(-5));
      case FASTER_BY_FIVE -> Step.of(state, new Effect.TempoStep(5));
      case TAP -> Step.of(state, new Effect.Tap(nanos));
      case RAMP -> Step.of(state, new Effect.ToggleRamp());
      case DRUMS -> Step.of(state, new Effect.ToggleMute(Fader.DRUMS));
      case BASS -> Step.of(state, new Effect.ToggleMute(Fader.BASS));
      case CHORDS -> Step.of(state, new Effect.ToggleMute(Fader.CHORDS));
      case LEAD -> Step.of(state, new Effect.ToggleMute(Fader.LEAD));
      case SILENT_BARS -> Step.of(state, new Effect.ToggleSilentBars());
      case GROOVE -> Step.of(state, new Effect.NextGroove());
      case CLICK -> Step.of(state, new Effect.ToggleClick());
      case CLICK_WAY -> Step.of(state, new Effect.NextClick());
      case DRUMS_SOFTER -> level(state, Fader.DRUMS, -1);
      case DRUMS_LOUDER -> level(state, Fader.DRUMS, 1);
      case BASS_SOFTER -> level(state, Fader.BASS, -1);
      case BASS_LOUDER -> level(state, Fader.BASS, 1);
      case CHORDS_SOFTER -> level(state, Fader.CHORDS, -1);
      case CHORDS_LOUDER -> level(state, Fader.CHORDS, 1);
      case CLICK_SOFTER -> level(state, Fader.CLICK, -1);
      case CLICK_LOUDER -> level(state, Fader.CLICK, 1);
      case LEAD_SOFTER -> level(state, Fader.LEAD, -1);
      case LEAD_LOUDER -> level(state, Fader.LEAD, 1);
      case SOFTER -> level(state, Fader.EVERYTHING, -1);
      case LOUDER -> level(state, Fader.EVERYTHING, 1);
      case LOOP -> loop(state, BarsAhead.section(state));
      case LOOP_FROM -> looped(state, BarsAhead.fromHere(state));
      case LOOP_TO -> looped(state, BarsAhead.toHere(state));
      case LOOP_CROSSING -> loopCrossing(state);
      case KEY_UP -> Step.of(state, new Effect.KeyStep(1));
      case KEY_DOWN -> Step.of(state, new Effect.KeyStep(-1));
      case EVERY_KEY -> Step.of(state, new Effect.ToggleEveryKey());
      case CROSSING_EXAMPLE -> Step.of(state, new Effect.NextCrossingExample());
      case PHRASE_EXAMPLE -> Step.of(state, new Effect.NextExamples());
      case FAR -> chosen(state, state.settings().withFar(!state.settings().far()));
      case AHEAD -> chosen(state, state.settings().withSwitched(Panel.AHEAD));
      case PHRASES -> chosen(state, state.settings().withSwitched(Panel.PHRASES));
      case NECK -> chosen(state, state.settings().withSwitched(Panel.NECK));
      case NAMES -> chosen(state, state.settings().withNoteNames(!state.settings().noteNames()));
      case REDRAW -> Step.of(state, new Effect.Redraw());
      case ASIDE -> aside(state);
      case MENU -> Step.of(state.withLayer(new Layer.Menu(0)));
      case HELP -> Step.of(state.withLayer(new Layer.Help(0)));
      case QUIT -> Step.of(state, new Effect.Quit());
    };
  }

  /** First the band stands still, so that no note hangs while nobody can end it. */
  private static Step aside(State state) {
    return state.phase() == State.Phase.PLAYING
        ? Step.of(state.withAside(true), new Effect.Pause())
        : Step.of(state, new Effect.StepAside());
  }

  private static Step moved(State state) {
    return state.aside() && state.phase() != State.Phase.PLAYING
        ? Step.of(state.withAside(false), new Effect.StepAside())
        : Step.of(state);
  }

  private static Step chosen(State state, ViewSettings settings) {
    return Step.of(state.withSettings(settings), new Effect.Remember(settings));
  }

  private static Step level(State state, Fader voice, int steps) {
    return Step.of(state, new Effect.LevelStep(voice, steps));
  }

  private static Step loop(State state, BandSettings.Loop bars) {
    return state.band().loop().isPresent()
        ? Step.of(state, new Effect.EndLoop())
        : Step.of(state, new Effect.LoopBars(bars.first(), bars.last()));
  }

  private static Step looped(State state, BandSettings.Loop bars) {
    return Step.of(state, new Effect.LoopBars(bars.first(), bars.last()));
  }

  private static Step loopCrossing(State state) {
    if (state.band().loop().isPresent()) {
      return Step.of(state, new Effect.EndLoop());
    }
    return state.facts().crossings().isEmpty()
        ? Step.of(state.withNotice("This chart stays in one key.", NOTICE_BEATS))
        : Step.of(state, new Effect.LoopCrossing(BARS_AROUND, BARS_AROUND));
  }
}

package hingetone.screen;

import hingetone.screen.State.Layer;
import hingetone.screen.ViewSettings.Panel;
import hingetone.sequencer.Command;
import hingetone.sequencer.Status.Motion;
import java.util.List;
import java.util.Optional;

/** What a message changes. */
public final class Update {
  private static final int NOTICE_BEATS = 12;

  private Update() {}

  /** The state after a message and the effects it asks for. */
  public static Step apply(State state, Message message) {
    if (message instanceof Message.Beat beat) {
      return Step.of(state.withWords(state.words().aged()).withNow(beat.now()));
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
    if (message instanceof Message.Changed changed) {
      List<String> levels = ChangeWords.levels(state.status(), changed.status());
      State told = levels.isEmpty() ? state : told(state, String.join(" ", levels));
      return changed(told.withStatus(changed.status()));
    }
    if (message instanceof Message.Learned learned) {
      return Step.of(state.withFacts(learned.facts()));
    }
    if (message instanceof Message.Fault fault) {
      return Step.of(state.withWords(state.words().withFault(fault.words())));
    }
    if (message instanceof Message.Over) {
      return Step.of(state, new Effect.Quit());
    }
    if (message instanceof Message.Sounding sounding) {
      return Step.of(state.withHeard(state.heard().withSounding(sounding.notes())));
    }
    if (message instanceof Message.Recording recording) {
      return Step.of(state.withHeard(state.heard().withTake(recording.take())));
    }
    if (message instanceof Message.Verdict verdict) {
      return Step.of(state.settings().shows(Panel.HEARD) ? told(state, verdict.words()) : state);
    }
    if (message instanceof Message.Question question) {
      return Step.of(state.withWords(state.words().withQuestion(question.words())));
    }
    if (message instanceof Message.Notice notice) {
      return Step.of(told(state, notice.words()));
    }
    throw new IllegalArgumentException("no such message: " + message);
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
    if (state.words().asks() && stroke.key().matches("[1-5]")) {
      int grade = Integer.parseInt(stroke.key());
      return Step.of(told(state, ""), new Effect.Grade(grade));
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
    State done = state.withSettings(settings).withLayer(new Layer.None());
    String words = what + " is now: " + action.words();
    return Step.of(told(done, words), new Effect.Remember(settings));
  }

  /** What an action does in a state. */
  static Step act(State state, Action action, long nanos) {
    return switch (action) {
      case GROOVE -> Step.of(state, new Effect.NextGroove());
      case SOUNDS -> Step.of(state, new Effect.NextSounds());
      case CROSSING_EXAMPLE -> Step.of(state, new Effect.NextCrossingExample());
      case PHRASE_EXAMPLE -> Step.of(state, new Effect.NextExamples());
      case FAR -> chosen(state, state.settings().withFar(!state.settings().far()));
      case AHEAD -> chosen(state, state.settings().withSwitched(Panel.AHEAD));
      case PHRASES -> chosen(state, state.settings().withSwitched(Panel.PHRASES));
      case NECK -> chosen(state, state.settings().withSwitched(Panel.NECK));
      case RECORD -> Step.of(state, new Effect.RecordTake());
      case KEEP_LAST -> Step.of(state, new Effect.KeepLast());
      case HEARD -> chosen(state, state.settings().withSwitched(Panel.HEARD));
      case POSITION -> Step.of(state, new Effect.StayAround(position(state)));
      case SHOW_ALL -> chosen(state, state.settings().withAllShown());
      case NAMES -> chosen(state, state.settings().withNoteNames(!state.settings().noteNames()));
      case REDRAW -> Step.of(state, new Effect.Redraw());
      case ASIDE -> aside(state);
      case MENU -> Step.of(state.withLayer(new Layer.Menu(0)));
      case HELP -> Step.of(state.withLayer(new Layer.Help(0)));
      case QUIT -> Step.of(state, new Effect.Quit());
      case LOOP_CROSSING ->
          state.facts().crossings().isEmpty() && state.status().loop().isEmpty()
              ? Step.of(told(state, "This chart stays in one key."))
              : liveChange(state, action, nanos);
      default -> liveChange(state, action, nanos);
    };
  }

  /** The lowest fret of the shape under the hand; free again where the hand already stays. */
  private static Optional<Integer> position(State state) {
    return state.facts().position().isPresent()
        ? Optional.empty()
        : state.facts().lowestFretAt(state.position());
  }

  private static Step liveChange(State state, Action action, long nanos) {
    return Step.of(state, new Effect.Send(LiveChange.of(state, action, nanos)));
  }

  /** First the band stands still, so that no note hangs while nobody can end it. */
  private static Step aside(State state) {
    return state.motion() == Motion.PLAYING
        ? Step.of(state.withAside(true), new Effect.Send(new Command.Pause()))
        : Step.of(state, new Effect.StepAside());
  }

  private static Step changed(State state) {
    return state.aside() && state.motion() != Motion.PLAYING
        ? Step.of(state.withAside(false), new Effect.StepAside())
        : Step.of(state);
  }

  private static Step chosen(State state, ViewSettings settings) {
    return Step.of(state.withSettings(settings), new Effect.Remember(settings));
  }

  private static State told(State state, String notice) {
    return state.withWords(state.words().withNotice(notice, NOTICE_BEATS));
  }
}

package hingetone.play;

import hingetone.plan.ExampleChoice;
import hingetone.score.Role;
import hingetone.screen.BandSettings;
import hingetone.screen.Effect;
import hingetone.screen.Fader;
import hingetone.screen.State;
import hingetone.screen.ViewSettings;
import hingetone.sequencer.Command;
import hingetone.sequencer.Metronome;
import hingetone.sequencer.Metronome.Gap;
import hingetone.sequencer.Status;
import hingetone.time.Tempo;
import hingetone.transport.Transport;
import java.math.BigDecimal;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;

/** Does what the screen asks for, by commands to the transport; and tells the screen its status. */
final class BandControl {
  private static final int LEVEL_STEP = 8;
  private static final int VOLUME_STEP = 5;
  private static final int FARTHEST_SHIFT = 12;

  /** Up a fourth with each pass, which goes through all twelve keys (common practice). */
  private static final int WALK = 5;

  private static final int RAMP_GOAL_ABOVE = 20;
  private static final BigDecimal RAMP_STEP = BigDecimal.valueOf(2);
  private static final Command.SilentBars TWO_OF_FOUR = new Command.SilentBars(2, 2);

  private static final Map<Fader, Role> ROLES =
      Map.of(
          Fader.DRUMS, Role.DRUMS,
          Fader.BASS, Role.BASS,
          Fader.CHORDS, Role.CHORDS,
          Fader.LEAD, Role.LEAD,
          Fader.CLICK, Role.CLICK);

  private final Transport transport;
  private final Runnable nextGroove;
  private final Consumer<UnaryOperator<Optional<ExampleChoice>>> hear;
  private final Consumer<ViewSettings> remember;

  /**
   * A stage for a transport.
   *
   * @param nextGroove changes the groove
   * @param hear changes which example phrases are heard
   * @param remember keeps the settings
   */
  BandControl(
      Transport transport,
      Runnable nextGroove,
      Consumer<UnaryOperator<Optional<ExampleChoice>>> hear,
      Consumer<ViewSettings> remember) {
    this.transport = transport;
    this.nextGroove = nextGroove;
    this.hear = hear;
    this.remember = remember;
  }

  /** Does an effect; never waits. */
  void perform(Effect effect) {
    if (effect instanceof Effect.Remember settings) {
      remember.accept(settings.settings());
    } else if (effect instanceof Effect.NextGroove) {
      nextGroove.run();
    } else if (effect instanceof Effect.NextExamples) {
      hear.accept(BandControl::next);
    } else if (effect instanceof Effect.NextCrossingExample) {
      hear.accept(now -> Optional.of(ExampleChoice.NEXT_CROSSING));
    } else {
      command(effect, transport.status()).ifPresent(transport::send);
    }
  }

  /** None, the statements, all, the crossings, and round again. */
  static Optional<ExampleChoice> next(Optional<ExampleChoice> now) {
    List<ExampleChoice> round =
        List.of(ExampleChoice.STATEMENTS, ExampleChoice.ALL, ExampleChoice.CROSSINGS);
    return round.stream().skip(now.map(round::indexOf).orElse(-1) + 1).findFirst();
  }

  /** The command for an effect; empty where the transport has no part in it. */
  static Optional<Command> command(Effect effect, Status now) {
    if (effect instanceof Effect.TogglePause) {
      boolean plays = now.motion() == Status.Motion.PLAYING;
      return Optional.of(plays ? new Command.Pause() : new Command.Play());
    }
    if (effect instanceof Effect.Pause) {
      return Optional.of(new Command.Pause());
    }
    if (effect instanceof Effect.Stop) {
      return Optional.of(new Command.Stop());
    }
    if (effect instanceof Effect.Restart) {
      return Optional.of(new Command.Restart());
    }
    if (effect instanceof Effect.TempoStep step) {
      return Optional.of(Command.StepTempo.of(step.bpm()));
    }
    if (effect instanceof Effect.Tap tap) {
      return Optional.of(new Command.Tap(tap.nanos()));
    }
    if (effect instanceof Effect.ToggleRamp) {
      return Optional.of(
          now.ramp().isPresent() ? new Command.SetTempo(now.tempo()) : ramp(now.tempo()));
    }
    if (effect instanceof Effect.ToggleClick) {
      Metronome m = now.metronome();
      return Optional.of(new Command.Click(new Metronome(!m.on(), m.accents(), m.gap())));
    }
    if (effect instanceof Effect.NextClick) {
      Gap[] gaps = Gap.values();
      Gap next = gaps[(now.metronome().gap().ordinal() + 1) % gaps.length];
      return Optional.of(new Command.Click(new Metronome(true, now.metronome().accents(), next)));
    }
    if (effect instanceof Effect.ToggleSilentBars) {
      boolean off = now.silentBars().silent() == 0;
      return Optional.of(off ? TWO_OF_FOUR : Command.SilentBars.NONE);
    }
    return way(effect, now).or(() -> level(effect, now));
  }

  private static Command ramp(Tempo from) {
    int goal = Math.min(Tempo.FASTEST, from.bpm().intValue() + RAMP_GOAL_ABOVE);
    return new Command.Ramp(from, Tempo.of(goal), RAMP_STEP, 1);
  }

  /** What changes the order of bars or their keys. */
  private static Optional<Command> way(Effect effect, Status now) {
    if (effect instanceof Effect.LoopBars bars) {
      return Optional.of(new Command.Loop(bars.first(), bars.last()));
    }
    if (effect instanceof Effect.LoopCrossing loop) {
      return Optional.of(new Command.LoopCrossing(loop.barsBefore(), loop.barsAfter()));
    }
    if (effect instanceof Effect.EndLoop) {
      return Optional.of(new Command.Unloop());
    }
    if (effect instanceof Effect.Jump jump) {
      return Optional.of(new Command.Jump(jump.bar()));
    }
    if (effect instanceof Effect.KeyStep step) {
      int shift = now.keyShift() + step.semitones();
      boolean possible = Math.abs(shift) <= FARTHEST_SHIFT;
      return possible ? Optional.of(new Command.KeyShift(shift)) : Optional.empty();
    }
    if (effect instanceof Effect.ToggleEveryKey) {
      return Optional.of(new Command.KeyWalk(now.keyWalk() == 0 ? WALK : 0));
    }
    return Optional.empty();
  }

  private static Optional<Command> level(Effect effect, Status now) {
    if (effect instanceof Effect.ToggleMute mute) {
      Role role = ROLES.get(mute.voice());
      return Optional.of(new Command.Mute(role, !now.muted().contains(role)));
    }
    if (effect instanceof Effect.LevelStep step && step.voice() == Fader.EVERYTHING) {
      return Optional.of(new Command.Volume(percent(now.volume() + step.steps() * VOLUME_STEP)));
    }
    if (effect instanceof Effect.LevelStep step) {
      Role role = ROLES.get(step.voice());
      int level = now.levels().getOrDefault(role, 100) + step.steps() * LEVEL_STEP;
      return Optional.of(new Command.Level(role, percent(level)));
    }
    return Optional.empty();
  }

  private static int percent(int value) {
    return Math.min(100, Math.max(0, value));
  }

  /** The transport's status as the screen shows it. */
  static BandSettings band(Status status) {
    Set<Fader> muted = EnumSet.noneOf(Fader.class);
    ROLES.forEach(
        (voice, role) -> {
          if (status.muted().contains(role)) {
            muted.add(voice);
          }
        });
    return new BandSettings(
        status.tempo(),
        status.keyShift(),
        status.keyWalk() != 0,
        muted,
        status.volume(),
        click(status.metronome()),
        status.loop().map(loop -> new BandSettings.Loop(loop.firstBar(), loop.lastBar())),
        status.silentBars().silent() > 0,
        status.ramp().isPresent(),
        status.lastBar());
  }

  private static Optional<String> click(Metronome metronome) {
    String words =
        switch (metronome.gap()) {
          case NONE -> "every beat";
          case OFF_BEATS_ONLY -> "even beats";
          case EVERY_OTHER_BAR -> "every other bar";
        };
    return metronome.on() ? Optional.of(words) : Optional.empty();
  }

  /** Whether the music moves, as the screen says it. */
  static State.Phase phase(Status status) {
    return switch (status.motion()) {
      case STOPPED -> State.Phase.STOPPED;
      case PLAYING -> State.Phase.PLAYING;
      case PAUSED -> State.Phase.PAUSED;
    };
  }
}

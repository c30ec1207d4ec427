package hingetone.screen;

import hingetone.score.Role;
import hingetone.sequencer.Command;
import hingetone.sequencer.Metronome;
import hingetone.sequencer.Status;
import hingetone.time.Tempo;
import java.math.BigDecimal;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** What a band may report. */
public final class Statuses {
  private static final Status REST = Status.atRest(Tempo.of(112), 60);

  private Statuses() {}

  /** A band that moves, or does not. */
  public static Status moving(Status.Motion motion) {
    return of(motion, REST.tempo(), REST.loop(), REST.muted(), REST.end());
  }

  /** Bars that go round while it plays. */
  public static Status looping(int first, int last) {
    Optional<Command.Loop> loop = Optional.of(new Command.Loop(first, last));
    return of(Status.Motion.PLAYING, REST.tempo(), loop, REST.muted(), REST.end());
  }

  /** Playing to an end. */
  public static Status ending(int laps, int bars, int endingBars) {
    Optional<Status.End> last = Optional.of(new Status.End(laps, bars, endingBars));
    return of(Status.Motion.PLAYING, REST.tempo(), REST.loop(), REST.muted(), last);
  }

  /** Playing with a part silent, at another tempo, in a loop. */
  public static Status without(Role role, Tempo tempo, Command.Loop loop) {
    return of(Status.Motion.PLAYING, tempo, Optional.of(loop), Set.of(role), REST.end());
  }

  /** Playing with all that can be switched on. */
  public static Status withEverything() {
    Tempo tempo = REST.tempo();
    return new Status(
        Status.Motion.PLAYING,
        tempo,
        Optional.of(new Command.Loop(1, 4)),
        2,
        5,
        Set.of(Role.BASS, Role.LEAD),
        Map.of(Role.DRUMS, 96),
        60,
        new Metronome(true, true, Metronome.Gap.EVERY_OTHER_BAR),
        new Command.SilentBars(2, 2),
        Optional.of(new Command.Ramp(tempo, Tempo.of(132), BigDecimal.TEN, 1)),
        Optional.of(new Status.End(1, 16, 1)));
  }

  private static Status of(
      Status.Motion motion,
      Tempo tempo,
      Optional<Command.Loop> loop,
      Set<Role> muted,
      Optional<Status.End> end) {
    return new Status(
        motion,
        tempo,
        loop,
        0,
        0,
        muted,
        REST.levels(),
        REST.volume(),
        REST.metronome(),
        REST.silentBars(),
        REST.ramp(),
        end);
  }
}

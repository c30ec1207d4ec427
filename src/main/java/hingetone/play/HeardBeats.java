package hingetone.play;

import hingetone.chart.Form;
import hingetone.screen.Message;
import hingetone.sequencer.SequencerEvent;
import hingetone.time.Beats;
import hingetone.time.Clock;
import hingetone.time.Playhead;
import hingetone.time.Position;
import java.util.Optional;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.function.IntConsumer;

/**
 * Tells the screen what is heard when it is heard: the transport speaks of beats a little ahead, so
 * they wait here for their time. Between beats it tells of half beats, on which pickups start.
 */
public final class HeardBeats {
  private static final long LOOK_NANOS = 10_000_000;
  private static final long BREAK_AFTER_NANOS = TimeUnit.MINUTES.toNanos(25);
  private static final long LONGEST_BEAT_NANOS = TimeUnit.SECONDS.toNanos(6);

  private final LinkedBlockingQueue<SequencerEvent> ahead = new LinkedBlockingQueue<>();
  private final Form form;
  private final Consumer<Message> screen;
  private final IntConsumer keyShift;
  private final Clock clock;
  private int shift;
  private long lastBeat;
  private long played;
  private Position lastHalf = Position.of(1, 1);

  /**
   * For a form.
   *
   * @param screen gets the messages
   * @param keyShift is told of each new shift of the keys when it begins to sound
   */
  HeardBeats(Form form, Clock clock, Consumer<Message> screen, IntConsumer keyShift) {
    this.form = form;
    this.clock = clock;
    this.screen = screen;
    this.keyShift = keyShift;
  }

  /** For the transport: something happens; never waits. */
  void hear(SequencerEvent moment) {
    if (moment instanceof SequencerEvent.Beat || moment instanceof SequencerEvent.BarLine) {
      ahead.add(moment);
    } else if (moment instanceof SequencerEvent.Finished) {
      ahead.add(moment);
    } else {
      tell(moment, screen);
    }
  }

  /** Tells a screen of what is not tied to a time: losses, troubles, changes. */
  public static void tell(SequencerEvent moment, Consumer<Message> screen) {
    if (moment instanceof SequencerEvent.Changed changed) {
      screen.accept(new Message.Changed(changed.status()));
    } else if (moment instanceof SequencerEvent.Lost lost) {
      String words = lost.device() + " is gone; plug it in again and it goes on.";
      screen.accept(new Message.Fault(Optional.of(words)));
    } else if (moment instanceof SequencerEvent.Found) {
      screen.accept(new Message.Fault(Optional.empty()));
    } else if (moment instanceof SequencerEvent.Underrun underrun) {
      screen.accept(new Message.Notice(dry(underrun.count())));
    } else if (moment instanceof SequencerEvent.Trouble trouble) {
      screen.accept(new Message.Notice(trouble.sentence()));
    }
  }

  /** The first time the output helps itself. */
  private static String dry(int times) {
    return times == 1
        ? "The sound ran dry; its buffer is twice as long from now on."
        : "The sound ran dry " + times + " times; a longer --buffer makes it steadier.";
  }

  /** Passes on what is due until interrupted. */
  void run(Playhead playhead) {
    try {
      while (true) {
        SequencerEvent next = ahead.poll(LOOK_NANOS, TimeUnit.NANOSECONDS);
        if (next != null) {
          long wait = nanos(next) - clock.nanos();
          TimeUnit.NANOSECONDS.sleep(Math.max(0, wait));
          due(next);
        } else {
          between(playhead);
        }
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private static long nanos(SequencerEvent moment) {
    if (moment instanceof SequencerEvent.Beat beat) {
      return beat.nanos();
    }
    if (moment instanceof SequencerEvent.BarLine bar) {
      return bar.nanos();
    }
    return moment instanceof SequencerEvent.Finished finished ? finished.nanos() : 0;
  }

  private void due(SequencerEvent moment) {
    if (moment instanceof SequencerEvent.Beat beat) {
      screen.accept(new Message.Beat(form.quarters(beat.position())));
      lastHalf = beat.position();
      rest(beat.nanos());
    } else if (moment instanceof SequencerEvent.BarLine bar && bar.keyShift() != shift) {
      shift = bar.keyShift();
      keyShift.accept(shift);
    } else if (moment instanceof SequencerEvent.Finished) {
      screen.accept(new Message.Over());
    }
  }

  private void rest(long nanos) {
    long since = nanos - lastBeat;
    boolean wasBelow = played < BREAK_AFTER_NANOS;
    played += lastBeat == 0 || since > LONGEST_BEAT_NANOS ? 0 : Math.max(0, since);
    lastBeat = nanos;
    if (wasBelow && played >= BREAK_AFTER_NANOS) {
      played = 0;
      screen.accept(new Message.Notice("25 minutes of playing: rest hands and ears for a while."));
    }
  }

  /** Tells of a new half beat, and of any place where the music stands. */
  private void between(Playhead playhead) {
    Playhead.Place place = playhead.at(clock.nanos());
    Position at = place.position();
    Beats half = Beats.of(at.beat().times(2).floor(), 2);
    Position there = new Position(at.bar(), half);
    boolean tells = half.denominator() == 2 || !place.moving();
    boolean moved = tells && !there.equals(lastHalf);
    if (moved) {
      lastHalf = there;
      screen.accept(new Message.Playhead(form.quarters(there)));
    }
  }
}

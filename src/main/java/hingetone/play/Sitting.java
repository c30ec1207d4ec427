package hingetone.play;

import hingetone.journal.Activity;
import hingetone.journal.LogEntry;
import hingetone.journal.PracticeLog;
import hingetone.screen.Message;
import hingetone.sequencer.SequencerEvent;
import hingetone.time.Tempo;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.function.Supplier;

/**
 * Keeps a sitting in the practice log: how long was played, the fastest tempo that was kept for
 * eight bars, and, where somebody listened, how many landings were on their place. It is written
 * once a minute, so that a kill loses no more.
 *
 * <p>Told on several threads; what is written is written elsewhere.
 */
final class Sitting {
  private static final long MINUTE_NANOS = TimeUnit.MINUTES.toNanos(1);
  private static final long LONGEST_BEAT_NANOS = TimeUnit.SECONDS.toNanos(6);
  private static final int BARS_KEPT = 8;

  /** Of fewer landings nothing is said. */
  private static final int ENOUGH_LANDINGS = 4;

  private final Subject subject;
  private final Supplier<Instant> now;
  private final Consumer<LogEntry> keep;
  private Instant start = Instant.EPOCH;
  private long lastBeat;
  private long played;
  private long written;
  private Optional<Tempo> tempo = Optional.empty();
  private int barsAtTempo;
  private Optional<Double> fastest = Optional.empty();
  private int landings;
  private int onPlace;
  private Optional<Instant> recording = Optional.empty();

  /**
   * What is practised.
   *
   * @param chart its title
   * @param keys its keys, in words
   */
  record Subject(String chart, String keys) {}

  /**
   * Nothing played yet.
   *
   * @param keep takes entries; an entry takes the place of an earlier one with its start
   */
  Sitting(Subject subject, Supplier<Instant> now, Consumer<LogEntry> keep) {
    this.subject = subject;
    this.now = now;
    this.keep = keep;
  }

  /** What keeps entries in a log; where that fails the player is told once. */
  static Consumer<LogEntry> into(PracticeLog log, Consumer<Message> screen) {
    return new Consumer<>() {
      private boolean told;

      @Override
      public void accept(LogEntry entry) {
        Optional<String> problem = log.tryToKeep(entry);
        if (problem.isPresent() && !told) {
          told = true;
          screen.accept(new Message.Notice(problem.get()));
        }
      }
    };
  }

  /** Something happened to the band. */
  synchronized void hear(SequencerEvent event) {
    if (event instanceof SequencerEvent.Beat beat) {
      beat(beat.nanos());
    } else if (event instanceof SequencerEvent.BarLine) {
      bar();
    } else if (event instanceof SequencerEvent.Changed changed) {
      follow(changed.status().tempo());
    }
  }

  /** Something was told to the screen. */
  synchronized void hear(Message message) {
    if (message instanceof Message.Verdict verdict) {
      landings += verdict.onPlace().isPresent() ? 1 : 0;
      onPlace += verdict.onPlace().filter(on -> on).isPresent() ? 1 : 0;
    } else if (message instanceof Message.Recording record) {
      recording.ifPresent(this::keepTake);
      recording = record.take().map(name -> now.get());
    }
  }

  /** The sitting is over. */
  synchronized void end() {
    if (played >= MINUTE_NANOS) {
      write();
    }
  }

  private void beat(long nanos) {
    if (lastBeat == 0) {
      start = now.get();
    } else if (nanos - lastBeat <= LONGEST_BEAT_NANOS) {
      played += Math.max(0, nanos - lastBeat);
    }
    lastBeat = nanos;
    if (played - written >= MINUTE_NANOS) {
      write();
    }
  }

  private void bar() {
    barsAtTempo++;
    if (barsAtTempo == BARS_KEPT + 1 && tempo.isPresent()) {
      double bpm = tempo.get().bpm().doubleValue();
      fastest = Optional.of(Math.max(fastest.orElse(bpm), bpm));
    }
  }

  private void follow(Tempo other) {
    if (!tempo.equals(Optional.of(other))) {
      tempo = Optional.of(other);
      barsAtTempo = 0;
    }
  }

  private void write() {
    written = played;
    Optional<Double> score =
        landings < ENOUGH_LANDINGS ? Optional.empty() : Optional.of((double) onPlace / landings);
    keep.accept(
        entry(Activity.PLAY, start, TimeUnit.NANOSECONDS.toSeconds(played), fastest, score));
  }

  private void keepTake(Instant began) {
    long seconds = Duration.between(began, now.get()).toSeconds();
    keep.accept(
        entry(Activity.TAKE, began, Math.max(0, seconds), Optional.empty(), Optional.empty()));
  }

  private LogEntry entry(
      Activity activity,
      Instant began,
      long seconds,
      Optional<Double> bpm,
      Optional<Double> score) {
    return new LogEntry(began, activity, subject.chart(), subject.keys(), seconds, bpm, score);
  }
}

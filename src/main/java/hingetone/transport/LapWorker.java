package hingetone.transport;

import hingetone.score.Part;
import hingetone.score.Role;
import hingetone.score.Sound;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.RejectedExecutionException;
import java.util.function.Consumer;

/**
 * Makes laps ahead of time on a thread of its own and keeps the few around the one being played.
 */
final class LapWorker implements Laps, AutoCloseable {
  private static final int KEPT = 6;

  private final Map<Integer, Lap> ready = new ConcurrentHashMap<>();
  private final Set<Integer> asked = ConcurrentHashMap.newKeySet();
  private final Consumer<List<Part>> prepare;
  private final Set<String> prepared = new HashSet<>();
  private final Consumer<Moment> listener;
  private final ExecutorService thread =
      Executors.newSingleThreadExecutor(
          work -> {
            Thread made = new Thread(work, "laps");
            made.setDaemon(true);
            return made;
          });
  private final int bars;
  private volatile LapSource source;
  private volatile int playing = 1;

  /**
   * Makes the first lap here and now, and the second in the background.
   *
   * @param prepare gets parts with a sound that is new, before they are played
   */
  LapWorker(LapSource source, Consumer<List<Part>> prepare, Consumer<Moment> listener) {
    this.source = source;
    this.prepare = prepare;
    this.listener = listener;
    Lap first = Lap.of(1, source.lap(1));
    prepareNew(List.of(new Part(Role.CLICK, Sound.CLICK, List.of())));
    prepareNew(first.parts());
    bars = first.bars().size();
    ready.put(1, first);
    ask(2);
  }

  @Override
  public Optional<Lap> lap(int number) {
    Lap lap = ready.get(number);
    if (lap == null) {
      ask(number);
    }
    return Optional.ofNullable(lap);
  }

  @Override
  public void playing(int number) {
    playing = number;
    if (!ready.containsKey(number + 1)) {
      ask(number + 1);
    }
  }

  /**
   * Makes the laps around the one being played anew.
   *
   * @param then what to do when they are ready
   */
  void follow(LapSource other, Runnable then) {
    submit(
        () -> {
          int now = playing;
          try {
            Lap current = make(other, now);
            Lap next = make(other, now + 1);
            source = other;
            asked.clear();
            ready.clear();
            ready.put(now, current);
            ready.put(now + 1, next);
            then.run();
          } catch (RuntimeException e) {
            listener.accept(new Moment.Trouble("The band could not be changed: " + e.getMessage()));
          }
        });
  }

  private void ask(int number) {
    if (asked.add(number)) {
      submit(() -> add(number));
    }
  }

  private void add(int number) {
    try {
      ready.put(number, make(source, number));
      asked.remove(number);
      dropFarthest(number);
    } catch (RuntimeException e) {
      // It stays asked for, so that the same failure is not met again at each bar.
      listener.accept(
          new Moment.Trouble("Lap " + number + " could not be made: " + e.getMessage()));
    }
  }

  private Lap make(LapSource from, int number) {
    Lap lap = Lap.of(number, from.lap(number));
    if (lap.bars().size() != bars) {
      throw new IllegalArgumentException(
          "it has " + lap.bars().size() + " bars where the first lap has " + bars);
    }
    prepareNew(lap.parts());
    return lap;
  }

  /** A sound may take long to load, and to load it again may disturb what is playing. */
  private void prepareNew(List<Part> parts) {
    List<Part> fresh =
        parts.stream()
            .filter(part -> prepared.add(part.role() + " " + part.sound().program()))
            .toList();
    if (!fresh.isEmpty()) {
      prepare.accept(fresh);
    }
  }

  private void dropFarthest(int fresh) {
    while (ready.size() > KEPT) {
      ready.keySet().stream()
          .filter(n -> n != fresh && n != playing)
          .max((a, b) -> Integer.compare(Math.abs(a - playing), Math.abs(b - playing)))
          .ifPresent(ready::remove);
    }
  }

  private void submit(Runnable work) {
    try {
      thread.execute(work);
    } catch (RejectedExecutionException e) {
      // Closed: nothing will be played any more.
    }
  }

  @Override
  public void close() {
    thread.shutdownNow();
  }
}

package hingetone.sequencer;

import hingetone.score.Part;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import java.util.function.Function;

/**
 * Makes laps ahead of time and keeps the first, with which play begins again at any moment, and the
 * few around the one being played. Whoever asks for a lap never waits: one that was dropped is made
 * again meanwhile, and one that cannot be made has another's music.
 */
public final class ReadyLaps {
  private static final int KEPT = 6;

  private final Function<List<Part>, Optional<String>> prepare;
  private final Consumer<SequencerEvent> listener;
  private final Executor worker;
  private final Set<Integer> asked = ConcurrentHashMap.newKeySet();
  private LapSource source;
  private volatile Map<Integer, Lap> ready;
  private volatile int playing = 1;

  /**
   * Makes the first lap here and now, and the second ahead of time.
   *
   * @param prepare gets the parts of a lap, each in its one sound, before they are played; says in
   *     a sentence what of them will not be heard
   * @param listener hears of that, and of laps that cannot be made
   * @param worker makes laps, one after another
   */
  public ReadyLaps(
      LapSource source,
      Function<List<Part>, Optional<String>> prepare,
      Consumer<SequencerEvent> listener,
      Executor worker) {
    this.source = source;
    this.prepare = prepare;
    this.listener = listener;
    this.worker = worker;
    Lap first = Lap.of(1, source.lap(1));
    prepare(List.of(Metronome.part()));
    prepare(first.parts());
    ready = Map.of(1, first);
    ask(2);
  }

  /** The first lap. */
  Lap first() {
    return ready.get(1);
  }

  /** A lap, if it is ready; if not, it is made from now on. */
  Optional<Lap> lap(int number) {
    if (!ready.containsKey(number)) {
      ask(number);
    }
    return Optional.ofNullable(ready.get(number));
  }

  /** A lap or, while it is not ready, the one before it or the first: better that than a hole. */
  Lap nearest(int number) {
    return lap(number).orElseGet(() -> standIn(number));
  }

  private Lap standIn(int number) {
    Map<Integer, Lap> now = ready;
    return now.getOrDefault(number - 1, now.get(1));
  }

  /** Says that a lap is being played, so that the one after it is made and old ones may go. */
  void playing(int number) {
    playing = number;
    if (!ready.containsKey(number + 1)) {
      ask(number + 1);
    }
  }

  /**
   * Plays another band from now on, whose laps around the one being played are made here and now.
   *
   * @throws RuntimeException what the source throws; then the band stays as it was
   */
  public synchronized void follow(LapSource other) {
    Map<Integer, Lap> laps = new HashMap<>();
    for (int number : new int[] {1, playing, playing + 1}) {
      if (!laps.containsKey(number)) {
        laps.put(number, make(other, number));
      }
    }
    source = other;
    ready = Map.copyOf(laps);
  }

  private void ask(int number) {
    if (asked.add(number)) {
      worker.execute(() -> add(number));
    }
  }

  private synchronized void add(int number) {
    asked.remove(number);
    if (!ready.containsKey(number)) {
      Map<Integer, Lap> laps = new HashMap<>(ready);
      laps.put(number, made(number));
      while (laps.size() > KEPT) {
        laps.remove(farthest(laps, number));
      }
      ready = Map.copyOf(laps);
    }
  }

  /** Another's music stays in the place of a lap that cannot be made, so that it is told once. */
  private Lap made(int number) {
    try {
      return make(source, number);
    } catch (RuntimeException e) {
      listener.accept(new SequencerEvent.Trouble("Lap " + number + " could not be made: " + e));
      return standIn(number);
    }
  }

  private Lap make(LapSource from, int number) {
    Lap lap = Lap.of(number, from.lap(number));
    if (!lap.fits(first())) {
      throw new IllegalArgumentException("its bars are not those of the first lap");
    }
    prepare(lap.parts());
    return lap;
  }

  private void prepare(List<Part> parts) {
    prepare.apply(parts).ifPresent(words -> listener.accept(new SequencerEvent.Trouble(words)));
  }

  private int farthest(Map<Integer, Lap> laps, int fresh) {
    return laps.keySet().stream()
        .filter(n -> n != 1 && n != fresh && n != playing)
        .max((a, b) -> Integer.compare(Math.abs(a - playing), Math.abs(b - playing)))
        .orElseThrow();
  }
}

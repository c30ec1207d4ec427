package hingetone.take;

import hingetone.time.LastBegun;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The bars as they were played, beat by beat on the machine's clock: a log that only grows, so that
 * a note is placed where it was played whatever tempo, jumps and loops did meanwhile.
 *
 * <pre>{@code
 * PlayedBars bars = new PlayedBars();
 * bars.bar(5, 0);
 * bars.beat(0, 1);
 * bars.beat(500_000_000, 2);
 * bars.at(250_000_000).orElseThrow().beat();   // → 1.5
 * }</pre>
 */
public final class PlayedBars {
  /**
   * A bar: its number, laps counted on, and how far its keys lie from the chart's, in semitones.
   */
  public record Bar(int number, int keyShift) {
    private static final Pattern CUE =
        Pattern.compile("bar (-?\\d{1,7})(?:, keys ([+-]\\d{1,2}))?");

    /** What a cue point of a file says of it: {@code bar 5, keys +2}. */
    public String cue() {
      return "bar " + number + (keyShift == 0 ? "" : String.format(", keys %+d", keyShift));
    }

    /** The bar of which a cue point speaks; empty where it speaks of something else. */
    static Optional<Bar> ofCue(String text) {
      Matcher found = CUE.matcher(text.strip());
      if (!found.matches()) {
        return Optional.empty();
      }
      int shift = found.group(2) == null ? 0 : Integer.parseInt(found.group(2));
      return Optional.of(new Bar(Integer.parseInt(found.group(1)), shift));
    }
  }

  /**
   * A place in what was played.
   *
   * @param index which of the bars played, from 0
   * @param bar that bar
   * @param beat the beat, 1 being the bar line, with fractions
   * @param nanosPerBeat how long a beat lasts there
   */
  public record Place(int index, Bar bar, double beat, double nanosPerBeat) {}

  private record Beat(long at, int index, int beat) {}

  private final List<Bar> bars = new ArrayList<>();
  private final List<Beat> beats = new ArrayList<>();

  /** Beats, by their place in the log, in which the music stood still for a while. */
  private final Set<Integer> paused = new HashSet<>();

  /** A bar begins; its beats follow. */
  public synchronized void bar(int number, int keyShift) {
    bars.add(new Bar(number, keyShift));
  }

  /**
   * A beat of the bar that has begun last is heard.
   *
   * @param at when, in nanoseconds; never before the beat that was told last
   * @param beat which, from 1
   */
  public synchronized void beat(long at, int beat) {
    beats.add(new Beat(at, bars.size() - 1, beat));
  }

  /** The music stands still in the beat that was told last. */
  public synchronized void pause() {
    paused.add(beats.size() - 1);
  }

  /** The bars so far. */
  public synchronized List<Bar> bars() {
    return List.copyOf(bars);
  }

  /** Where a moment lies; empty before the first beat, in a pause, and while no beat is known. */
  public synchronized Optional<Place> at(long nanos) {
    int i = LastBegun.index(beats.size(), k -> beats.get(k).at() <= nanos);
    if (i < 0 || beats.size() < 2) {
      return Optional.empty();
    }
    double usual = i == 0 ? length(0) : length(i - 1);
    if (i == beats.size() - 1) {
      return Optional.of(place(i, (nanos - beats.get(i).at()) / usual, usual));
    }
    double gap = length(i);
    double gone = nanos - beats.get(i).at();
    if (i == 0 || !paused.contains(i)) {
      return Optional.of(place(i, gone / gap, gap));
    }
    double left = gap - gone;
    if (gone < usual) {
      return Optional.of(place(i, gone / usual, usual));
    }
    return left < usual ? Optional.of(place(i, 1 - left / usual, usual)) : Optional.empty();
  }

  /** How long a beat of one of the bars lasts on average; empty where no two of its beats tell. */
  public synchronized Optional<Double> nanosPerBeat(int index) {
    double nanos = 0;
    int count = 0;
    int before = LastBegun.index(beats.size(), k -> beats.get(k).index() < index);
    for (int i = before + 1; i < beats.size() - 1; i++) {
      if (beats.get(i).index() != index) {
        break;
      }
      boolean goesOn = beats.get(i + 1).index() == index || isNextBar(i);
      if (goesOn && !paused.contains(i)) {
        nanos += length(i);
        count++;
      }
    }
    return count == 0 ? Optional.empty() : Optional.of(nanos / count);
  }

  private boolean isNextBar(int beat) {
    return beats.get(beat + 1).index() == beats.get(beat).index() + 1
        && beats.get(beat + 1).beat() == 1;
  }

  private double length(int beat) {
    return Math.max(1, beats.get(beat + 1).at() - beats.get(beat).at());
  }

  private Place place(int beat, double part, double nanosPerBeat) {
    Beat from = beats.get(beat);
    return new Place(from.index(), bars.get(from.index()), from.beat() + part, nanosPerBeat);
  }
}

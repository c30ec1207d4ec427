package hingetone.neck;

import hingetone.path.CheapestPath;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * The likeliest way of a line over strings and frets: the one on which the hand moves least.
 *
 * <p>A hand covers four frets, a fifth with a stretch; to move it costs most, to go from string to
 * string little, low frets are a little likelier than high ones, and what is slid, hammered on or
 * pulled off stays on its string (common practice; the weights are a choice).
 */
public final class LikelyWay {
  private static final int HAND = 3;
  private static final double SHIFT = 1.5;
  private static final double SHIFT_A_FRET = 0.3;
  private static final double STRING = 0.15;
  private static final double HIGH_FRET = 0.02;
  private static final double OTHER_STRING = 12;
  private static final double STRETCH = 0.8;

  private final Fretboard neck;
  private final List<Moment> moments;

  /** What is fretted, under a hand whose first finger lies at a fret. */
  private record Grip(List<Spot> spots, int hand) {}

  /**
   * What is fretted at once.
   *
   * @param keys MIDI numbers, rising; one, or two for a double stop
   * @param joined whether it is reached on the string of what was before
   * @param strings the string of each, where it is known; one that lacks the note is not heeded
   */
  public record Moment(List<Integer> keys, boolean joined, List<Optional<Integer>> strings) {
    public Moment {
      keys = List.copyOf(keys);
      strings = List.copyOf(strings);
    }

    /** On strings that nobody knows. */
    public Moment(List<Integer> keys, boolean joined) {
      this(keys, joined, Collections.nCopies(keys.size(), Optional.empty()));
    }
  }

  private LikelyWay(Fretboard neck, List<Moment> moments) {
    this.neck = neck;
    this.moments = moments;
  }

  /**
   * Where each note of each moment lies; a note that the neck does not have makes its moment empty.
   */
  public static List<List<Spot>> over(Fretboard neck, List<Moment> moments) {
    LikelyWay likely = new LikelyWay(neck, moments);
    List<List<Grip>> layers = moments.stream().map(likely::grips).toList();
    return CheapestPath.through(layers, (i, grip) -> own(grip), likely::step).stream()
        .map(Grip::spots)
        .toList();
  }

  private List<Grip> grips(Moment moment) {
    List<Grip> grips = new ArrayList<>();
    for (List<Spot> way : ways(moment)) {
      int high = way.stream().mapToInt(Spot::fret).max().orElse(0);
      int low = way.stream().mapToInt(Spot::fret).filter(f -> f > 0).min().orElse(high);
      int first = Math.max(1, Math.min(low, high - HAND - 1));
      for (int hand = first; hand <= Math.max(first, low); hand++) {
        grips.add(new Grip(way, hand));
      }
    }
    return grips;
  }

  private List<List<Spot>> ways(Moment moment) {
    List<List<Spot>> ways = List.of(List.of());
    for (int i = 0; i < moment.keys.size(); i++) {
      List<List<Spot>> longer = new ArrayList<>();
      List<Spot> spots = spots(moment.keys.get(i), moment.strings.get(i));
      for (List<Spot> way : ways) {
        for (Spot spot : spots) {
          if (way.stream().noneMatch(s -> s.string() == spot.string())) {
            longer.add(Stream.concat(way.stream(), Stream.of(spot)).toList());
          }
        }
      }
      ways = longer;
    }
    return ways.isEmpty() ? List.of(List.of()) : ways;
  }

  private List<Spot> spots(int key, Optional<Integer> string) {
    List<Spot> all =
        IntStream.rangeClosed(1, neck.strings())
            .mapToObj(s -> new Spot(s, key - neck.open(s)))
            .filter(neck::has)
            .toList();
    List<Spot> known = all.stream().filter(s -> string.equals(Optional.of(s.string()))).toList();
    return known.isEmpty() ? all : known;
  }

  private static double own(Grip grip) {
    int high = grip.spots.stream().mapToInt(Spot::fret).max().orElse(0);
    return HIGH_FRET * high + STRETCH * Math.max(0, high - grip.hand - HAND);
  }

  private double step(int moment, Grip from, Grip to) {
    int moved = Math.abs(from.hand - to.hand);
    double shift = moved == 0 ? 0 : SHIFT + SHIFT_A_FRET * moved;
    if (from.spots.isEmpty() || to.spots.isEmpty()) {
      return shift;
    }
    Spot a = from.spots.get(from.spots.size() - 1);
    Spot b = to.spots.get(to.spots.size() - 1);
    int strings = Math.abs(a.string() - b.string());
    double joined = moments.get(moment).joined && strings > 0 ? OTHER_STRING : 0;
    return joined + STRING * strings + shift;
  }
}

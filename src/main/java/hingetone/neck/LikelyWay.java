package hingetone.neck;

import hingetone.path.CheapestPath;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/**
 * The likeliest way of a line over strings and frets: the one on which the hand moves least.
 *
 * <p>A hand covers four frets; to leave them costs most, to move within them little, low frets are
 * a little likelier than high ones, and what is slid, hammered on or pulled off stays on its string
 * (common practice; the weights are a choice).
 */
public final class LikelyWay {
  private static final int HAND = 3;
  private static final double SHIFT = 2;
  private static final double WITHIN = 0.25;
  private static final double STRING = 0.15;
  private static final double HIGH_FRET = 0.04;
  private static final double OTHER_STRING = 12;
  private static final double STRETCH = 3;

  private final Fretboard neck;
  private final List<Moment> moments;
  private final List<List<List<Spot>>> layers;

  /**
   * What is fretted at once.
   *
   * @param keys MIDI numbers, rising; one, or two for a double stop
   * @param joined whether it is reached on the string of what was before
   */
  public record Moment(List<Integer> keys, boolean joined) {
    public Moment {
      keys = List.copyOf(keys);
    }
  }

  private LikelyWay(Fretboard neck, List<Moment> moments) {
    this.neck = neck;
    this.moments = moments;
    this.layers = moments.stream().map(m -> ways(m.keys)).toList();
  }

  /**
   * Where each note of each moment lies; a note that the neck does not have makes its moment empty.
   */
  public static List<List<Spot>> over(Fretboard neck, List<Moment> moments) {
    LikelyWay likely = new LikelyWay(neck, moments);
    return CheapestPath.through(likely.layers, (i, way) -> own(way), likely::step);
  }

  private List<List<Spot>> ways(List<Integer> keys) {
    List<List<Spot>> ways = List.of(List.of());
    for (int key : keys) {
      List<List<Spot>> longer = new ArrayList<>();
      for (List<Spot> way : ways) {
        for (int string = 1; string <= neck.strings(); string++) {
          Spot spot = new Spot(string, key - neck.open(string));
          if (neck.has(spot) && way.stream().noneMatch(s -> s.string() == spot.string())) {
            longer.add(
                IntStream.range(0, way.size() + 1)
                    .mapToObj(i -> i < way.size() ? way.get(i) : spot)
                    .toList());
          }
        }
      }
      ways = longer;
    }
    return ways.isEmpty() ? List.of(List.of()) : ways;
  }

  private static double own(List<Spot> way) {
    double high = way.stream().mapToInt(Spot::fret).max().orElse(0);
    double low = way.stream().mapToInt(Spot::fret).filter(f -> f > 0).min().orElse((int) high);
    return HIGH_FRET * high + STRETCH * Math.max(0, high - low - HAND);
  }

  private double step(int moment, List<Spot> from, List<Spot> to) {
    if (from.isEmpty() || to.isEmpty()) {
      return 0;
    }
    Spot a = from.get(from.size() - 1);
    Spot b = to.get(to.size() - 1);
    double strings = Math.abs(a.string() - b.string());
    double joined = moments.get(moment).joined && strings > 0 ? OTHER_STRING : 0;
    boolean open = a.fret() == 0 || b.fret() == 0;
    double frets = open ? 0 : Math.abs(a.fret() - b.fret());
    return joined + STRING * strings + WITHIN * frets + SHIFT * Math.max(0, frets - HAND);
  }
}

package hingetone.neck;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/**
 * The likeliest way of a line over strings and frets: the one on which the hand moves least, found
 * by dynamic programming (Bellman 1957).
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
    return new LikelyWay(neck, moments).cheapest();
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

  private List<List<Spot>> cheapest() {
    List<int[]> cameFrom = new ArrayList<>();
    double[] costs = {0};
    for (int i = 0; i < layers.size(); i++) {
      double[] next = new double[layers.get(i).size()];
      int[] from = new int[next.length];
      for (int way = 0; way < next.length; way++) {
        next[way] = Double.MAX_VALUE;
        for (int before = 0; before < costs.length; before++) {
          double cost = costs[before] + (i == 0 ? 0 : step(i, before, way));
          if (cost < next[way]) {
            next[way] = cost;
            from[way] = before;
          }
        }
        next[way] += own(layers.get(i).get(way));
      }
      cameFrom.add(from);
      costs = next;
    }
    return back(cameFrom, costs);
  }

  private List<List<Spot>> back(List<int[]> cameFrom, double[] costs) {
    int way = 0;
    for (int i = 1; i < costs.length; i++) {
      way = costs[i] < costs[way] ? i : way;
    }
    List<List<Spot>> found = new ArrayList<>();
    for (int i = layers.size() - 1; i >= 0; i--) {
      found.add(0, layers.get(i).get(way));
      way = cameFrom.get(i)[way];
    }
    return found;
  }

  private static double own(List<Spot> way) {
    double high = way.stream().mapToInt(Spot::fret).max().orElse(0);
    double low = way.stream().mapToInt(Spot::fret).filter(f -> f > 0).min().orElse((int) high);
    return HIGH_FRET * high + STRETCH * Math.max(0, high - low - HAND);
  }

  private double step(int moment, int before, int way) {
    List<Spot> from = layers.get(moment - 1).get(before);
    List<Spot> to = layers.get(moment).get(way);
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

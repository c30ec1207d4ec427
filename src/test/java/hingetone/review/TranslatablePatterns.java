package hingetone.review;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * Geometric pattern discovery (SIA and SIATEC; Meredith, Lemström and Wiggins, Journal of New Music
 * Research 31, 2002) as a yardstick for what comes back: for each vector the most points that it
 * takes to points, and where each such pattern occurs.
 */
final class TranslatablePatterns {
  /** A point of time and pitch, or the way from one to another. */
  record Point(double time, double pitch) implements Comparable<Point> {
    Point minus(Point other) {
      return new Point(time - other.time, pitch - other.pitch);
    }

    Point plus(Point other) {
      return new Point(time + other.time, pitch + other.pitch);
    }

    @Override
    public int compareTo(Point other) {
      return Comparator.comparingDouble(Point::time)
          .thenComparingDouble(Point::pitch)
          .compare(this, other);
    }
  }

  private TranslatablePatterns() {}

  /** The maximal translatable pattern of each vector between two points, forwards. */
  static Map<Point, List<Point>> maximal(List<Point> points) {
    List<Point> sorted = points.stream().distinct().sorted().toList();
    Map<Point, List<Point>> patterns = new TreeMap<>();
    for (int i = 0; i < sorted.size(); i++) {
      for (int k = i + 1; k < sorted.size(); k++) {
        Point vector = sorted.get(k).minus(sorted.get(i));
        patterns.computeIfAbsent(vector, v -> new ArrayList<>()).add(sorted.get(i));
      }
    }
    return patterns;
  }

  /** The patterns of different shapes, each with the vectors that take it to where it occurs. */
  static Map<List<Point>, List<Point>> classes(List<Point> points) {
    TreeSet<Point> all = new TreeSet<>(points);
    Map<List<Point>, List<Point>> classes = new LinkedHashMap<>();
    TreeMap<String, List<Point>> shapes = new TreeMap<>();
    for (List<Point> pattern : maximal(points).values()) {
      Point first = pattern.get(0);
      shapes.putIfAbsent(pattern.stream().map(p -> p.minus(first)).toList().toString(), pattern);
    }
    for (List<Point> pattern : shapes.values()) {
      Point first = pattern.get(0);
      List<Point> vectors =
          all.stream()
              .map(p -> p.minus(first))
              .filter(v -> pattern.stream().allMatch(p -> all.contains(p.plus(v))))
              .toList();
      classes.put(pattern, vectors);
    }
    return classes;
  }
}

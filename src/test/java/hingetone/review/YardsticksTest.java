package hingetone.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hingetone.review.TranslatablePatterns.Point;
import hingetone.take.PlacedNote;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** The worked examples of {@code src/test/resources/reference}, whose sources stand there. */
class YardsticksTest {
  private static final Path REFERENCE = Path.of("src/test/resources/reference");

  private static Point point(int time, int pitch) {
    return new Point(time, pitch);
  }

  private static final List<Point> POINTS =
      List.of(point(0, 0), point(0, 2), point(1, 0), point(1, 1), point(1, 2), point(2, 1));

  @Test
  void the_local_boundary_detection_model_gives_the_strengths_of_the_worked_example()
      throws Exception {
    List<PlacedNote> notes = new ArrayList<>();
    List<Double> wanted = new ArrayList<>();
    for (String line : Files.readAllLines(REFERENCE.resolve("lbdm-laksin.tsv"))) {
      String[] cells = line.split("\t");
      double at = Double.parseDouble(cells[1]);
      double pitch = Double.parseDouble(cells[3]);
      notes.add(new PlacedNote(at, at + Double.parseDouble(cells[2]), pitch, pitch, 90));
      wanted.add(Double.parseDouble(cells[4]));
    }
    double[] strengths = LocalBoundaries.of(notes);
    assertThat(strengths).hasSize(23);
    for (int i = 0; i < strengths.length; i++) {
      assertThat(strengths[i]).as("note %s", i + 1).isCloseTo(wanted.get(i), within(1e-6));
    }
  }

  @Test
  void pattern_discovery_gives_the_patterns_of_the_worked_example() throws Exception {
    List<String> lines = Files.readAllLines(REFERENCE.resolve("sia-worked-example.txt"));
    List<String> found = new ArrayList<>();
    TranslatablePatterns.maximal(POINTS)
        .forEach((v, points) -> found.add(text(v) + " " + points.size() + " " + texts(points)));
    assertThat(found).isEqualTo(lines.subList(0, found.size()));
    assertThat(lines.get(found.size())).isEqualTo("vectors " + found.size());
  }

  /** Four classes, the largest with three points at two places, as the example lists them. */
  @Test
  void patterns_of_one_shape_are_one_class_with_all_places_where_it_occurs() throws Exception {
    Map<List<Point>, List<Point>> classes = TranslatablePatterns.classes(POINTS);
    String example = Files.readString(REFERENCE.resolve("sia-worked-example.txt"));
    assertThat(example).contains("TECs " + classes.size() + "\n");
    classes.forEach(
        (pattern, vectors) -> {
          List<Point> places =
              vectors.stream().map(v -> pattern.get(0).plus(v)).distinct().sorted().toList();
          assertThat(example).contains("occ " + texts(places));
        });
  }

  private static String text(Point point) {
    return "(" + (int) point.time() + ", " + (int) point.pitch() + ")";
  }

  private static String texts(List<Point> points) {
    return "[" + String.join(", ", points.stream().map(YardsticksTest::text).toList()) + "]";
  }
}

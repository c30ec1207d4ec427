package hingetone.ground.scales;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hingetone.ground.Ground;
import hingetone.ground.GroundCharts;
import hingetone.theory.Chord;
import hingetone.theory.Interval;
import hingetone.theory.Key;
import hingetone.theory.NoteName;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/**
 * A second opinion on the key: the correlation of sounding time with the profiles that Krumhansl
 * and Kessler measured (values from the reference file).
 */
class KeyProfilesTest {
  private static final double[] MAJOR = {
    6.35, 2.23, 3.48, 2.33, 4.38, 4.09, 2.52, 5.19, 2.39, 3.66, 2.29, 2.88
  };
  private static final double[] MINOR = {
    6.33, 2.68, 3.52, 5.38, 2.60, 3.53, 2.54, 4.75, 3.98, 2.69, 3.34, 3.17
  };

  private static final Path MODEL = Path.of("src/docs/ground.md");

  @Test
  void the_worked_example_comes_out_as_published() {
    double[] durations = {432, 231, 0, 405, 12, 316, 4, 126, 612, 0, 191, 1};
    assertThat(correlation(durations, MAJOR, 8)).isCloseTo(0.9697, within(0.0001));
    assertThat(correlation(durations, MINOR, 5)).isCloseTo(0.7745, within(0.0001));
    assertThat(correlation(durations, MINOR, 0)).isCloseTo(0.6223, within(0.0001));
    assertThat(correlation(durations, MAJOR, 3)).isCloseTo(0.5788, within(0.0001));
  }

  /**
   * Fifty progressions of a mode: the tonic, one or two other degrees, and a cadence (half,
   * authentic or plagal) as textbooks form them.
   *
   * @param others the degrees between, the dominant last
   */
  private static List<String> progressions(String tonic, String plagal, List<String> others) {
    Set<String> rows = new LinkedHashSet<>();
    String dominant = others.get(others.size() - 1);
    for (String x : others) {
      for (String y : others) {
        String start = tonic + " " + x + " " + y + " ";
        if (!x.equals(y) && !y.equals(dominant)) {
          rows.add(start + dominant);
          rows.add(start + dominant + " " + tonic);
        }
        if (!x.equals(y) && (y.equals(plagal) || y.equals(dominant))) {
          rows.add(start + tonic);
        }
      }
      rows.add(tonic + " " + x + " " + tonic + " " + dominant);
      rows.add(tonic + " " + x + " " + tonic + " " + tonic);
    }
    return rows.stream().limit(50).toList();
  }

  private static Map<Key, List<String>> hundred() {
    return Map.of(
        Key.parse("C major").orElseThrow(),
        progressions("1", "4", List.of("2m", "3m", "4", "6m", "5")),
        Key.parse("C minor").orElseThrow(),
        progressions("1m", "4m", List.of("4m", "b3", "b6", "b7", "5")));
  }

  @Test
  void where_the_profiles_hear_another_key_is_listed_on_the_page_about_the_model()
      throws IOException {
    Set<String> disagreements = new TreeSet<>();
    int checked = 0;
    for (Map.Entry<Key, List<String>> entry : hundred().entrySet()) {
      for (String row : entry.getValue()) {
        checked++;
        String heard = heard(entry.getKey(), row);
        if (!heard.equals(entry.getKey().toString())) {
          disagreements.add(row + " : " + heard);
        }
      }
    }
    assertThat(checked).isEqualTo(100);
    String page = Files.readString(MODEL).replace("\r", "");
    String block = page.substring(page.indexOf("```disagreements\n") + 17);
    Set<String> listed = new TreeSet<>();
    for (String line : block.substring(0, block.indexOf("```")).lines().toList()) {
      String[] parts = line.split(" : ");
      listed.add(parts[0] + " : " + parts[1]);
      assertThat(parts[2] + " : " + parts[3]).as(line).isEqualTo(judged(parts[0]));
    }
    assertThat(listed).isEqualTo(disagreements);
    assertThat(page).contains((100 - disagreements.size()) + " of 100");
  }

  /** The words that the page has for a row: why it is heard otherwise, and who is right. */
  private static String judged(String row) {
    List<String> degrees = List.of(row.split(" "));
    Key key = Key.parse(row.startsWith("1m") ? "C minor" : "C major").orElseThrow();
    boolean fourth =
        chords(key, row).stream().anyMatch(c -> c.degreeOf(key.tonic().chroma() + 5).isPresent());
    boolean half = degrees.get(degrees.size() - 1).equals("5");
    List<String> why = new ArrayList<>();
    add(why, "dominant heavy", Collections.frequency(degrees, "5") >= 2);
    add(why, "mediant", degrees.contains("3m"));
    add(why, "supertonic", degrees.contains("2m"));
    add(why, "modal", degrees.contains("b7") || degrees.contains("b3"));
    add(why, "no fourth", !fourth);
    add(why, "half close", half);
    boolean open = half && !fourth && key.toString().equals("C major");
    return String.join(", ", why) + " : " + (open ? "open" : "stated");
  }

  private static void add(List<String> why, String word, boolean holds) {
    if (holds) {
      why.add(word);
    }
  }

  @Test
  void the_first_scale_over_the_opening_tonic_is_of_the_stated_key_in_all_hundred() {
    hundred()
        .forEach(
            (key, rows) -> {
              for (String row : rows) {
                List<String> symbols = chords(key, row).stream().map(Chord::symbol).toList();
                Ground ground = GroundCharts.one(key.toString(), String.join(" | ", symbols));
                List<NoteName> first =
                    ground.scalesAt(1, hingetone.time.Beats.ONE).get(0).scale().notes();
                assertThat(first).as(row).allMatch(key.heptatonic()::contains);
              }
            });
  }

  private static List<Chord> chords(Key key, String row) {
    List<Chord> chords = new ArrayList<>();
    for (String degree : row.split(" ")) {
      boolean minor = degree.endsWith("m");
      Interval interval = Interval.parse(degree.replace("m", "")).orElseThrow();
      chords.add(Chord.parse(key.tonic().plus(interval) + (minor ? "m" : "")).orElseThrow());
    }
    return chords;
  }

  private static String heard(Key key, String row) {
    double[] durations = new double[12];
    chords(key, row).forEach(c -> c.notes().forEach(n -> durations[n.chroma()]++));
    return IntStream.range(0, 24)
        .boxed()
        .max(
            Comparator.comparingDouble(k -> correlation(durations, k < 12 ? MAJOR : MINOR, k % 12)))
        .map(k -> key.spellChroma(k % 12) + (k < 12 ? " major" : " minor"))
        .orElseThrow();
  }

  /** Pearson's correlation of durations with a profile moved to a tonic. */
  private static double correlation(double[] durations, double[] profile, int tonic) {
    double meanX = java.util.Arrays.stream(durations).average().orElseThrow();
    double meanY = java.util.Arrays.stream(profile).average().orElseThrow();
    double xy = 0;
    double xx = 0;
    double yy = 0;
    for (int i = 0; i < 12; i++) {
      double x = durations[i] - meanX;
      double y = profile[Math.floorMod(i - tonic, 12)] - meanY;
      xy += x * y;
      xx += x * x;
      yy += y * y;
    }
    return xy / Math.sqrt(xx * yy);
  }
}

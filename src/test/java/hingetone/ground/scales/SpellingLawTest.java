package hingetone.ground.scales;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.chart.Chart;
import hingetone.chart.ChartReader;
import hingetone.chart.Form;
import hingetone.text.reading.Source;
import hingetone.theory.ChordQuality;
import hingetone.theory.NoteName;
import hingetone.theory.Scale;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * A chord's scales depend on what sounds: never on how it is spelled, nor on the pitch it is at.
 */
class SpellingLawTest {
  private static final Map<Integer, List<String>> NAMES =
      Map.ofEntries(
          Map.entry(0, List.of("C", "B#")),
          Map.entry(1, List.of("C#", "Db")),
          Map.entry(2, List.of("D")),
          Map.entry(3, List.of("D#", "Eb")),
          Map.entry(4, List.of("E", "Fb")),
          Map.entry(5, List.of("F", "E#")),
          Map.entry(6, List.of("F#", "Gb")),
          Map.entry(7, List.of("G")),
          Map.entry(8, List.of("G#", "Ab")),
          Map.entry(9, List.of("A")),
          Map.entry(10, List.of("A#", "Bb")),
          Map.entry(11, List.of("B", "Cb")));

  private static final List<String> MODES = List.of("major", "minor", "blues", "phrygian");

  /** The sounds of each scale offered, counted from the key's tonic, with its fit. */
  private static List<String> offered(String key, int tonic, String chord, String next) {
    String text = "sections:\n  one: {key: %s, bars: '| %s | %s |'}\n".formatted(key, chord, next);
    Chart chart = ChartReader.read(new Source(key, text)).value().orElseThrow();
    List<String> offered = new ArrayList<>();
    for (FittingScale fit : ScaleChoice.rank(ChordContexts.of(Form.of(chart)).get(0).get(0))) {
      offered.add(sounds(fit.scale(), tonic) + " " + fit.fit());
    }
    return offered;
  }

  private static List<Integer> sounds(Scale scale, int tonic) {
    return scale.notes().stream()
        .map(NoteName::chroma)
        .map(chroma -> Math.floorMod(chroma - tonic, 12))
        .sorted()
        .toList();
  }

  /** A chord on a degree before another one, in every so many keys and under every name. */
  private static void check(String quality, String mode, int degree, int fall, int every) {
    List<String> first = List.of();
    for (int tonic = degree % every; tonic < 12; tonic += every) {
      List<String> goals = NAMES.get((tonic + degree + fall) % 12);
      for (String key : NAMES.get(tonic)) {
        for (String root : NAMES.get((tonic + degree) % 12)) {
          String goal = goals.get((root.length() + key.length()) % goals.size());
          List<String> here = offered(key + " " + mode, tonic, root + quality, goal + "m7");
          first = first.isEmpty() ? here : first;
          assertThat(here)
              .as("%s%s, %sm7 in %s %s", root, quality, goal, key, mode)
              .isEqualTo(first);
        }
      }
    }
  }

  /** Each quality in one place of its own, so that every place is met. */
  @Test
  void every_kind_of_chord_somewhere_in_some_keys_under_every_name() {
    List<ChordQuality> all = ChordQuality.ALL;
    for (int i = 0; i < all.size(); i++) {
      check(all.get(i).suffix(), MODES.get(i % 4), 5 * i % 12, i % 3 == 0 ? 5 : 11, 3);
    }
  }

  @Test
  @Tag("long")
  void every_kind_of_chord_on_every_degree_of_every_key_under_every_name() {
    for (ChordQuality quality : ChordQuality.ALL) {
      for (String mode : MODES) {
        for (int degree = 0; degree < 12; degree++) {
          check(quality.suffix(), mode, degree, degree % 2 == 0 ? 5 : 11, 1);
        }
      }
    }
  }
}

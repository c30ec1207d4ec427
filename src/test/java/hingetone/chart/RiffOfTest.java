package hingetone.chart;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.score.Note;
import hingetone.text.reading.Source;
import hingetone.theory.Key;
import hingetone.theory.Keys;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** The riff of another section, in every key it may be played in. */
class RiffOfTest {
  /** The bass of a riff of one section as another plays it, note by note. */
  private static List<Integer> moved(Key from, String bass, Key to, String how, String bars) {
    String text =
        """
        sections:
          low:
            key: %s
            riff:
              bass: %s
            bars: |
              | %sm7 |
          high:
            key: %s
            riff-of: low %s
            bars: |
              | %s |
        """;
    Source source = new Source("riff-of", text.formatted(from, bass, from.tonic(), to, how, bars));
    Chart chart = ChartReader.read(source).value().orElseThrow();
    return chart.form().get(1).riff().orElseThrow().bass().stream().map(Note::key).toList();
  }

  /** 1, b3, 4 and 5 of a minor key as note text, and where its tonic lies in the other key. */
  private static String riff(Key key) {
    int tonic = 36 + key.tonic().chroma();
    return IntStream.of(0, 3, 5, 7)
        .mapToObj(i -> key.spell(tonic + i) + "q")
        .collect(Collectors.joining(" "));
  }

  private static int tonicOf(Key from, Key to) {
    return 36 + from.tonic().chroma() + Keys.nearerWay(from, to);
  }

  @Test
  void a_riff_moves_from_any_minor_key_to_any_other_key_along_its_scale() {
    for (Key from : Keys.MINOR) {
      for (Key to : Keys.MINOR) {
        int tonic = tonicOf(from, to);
        assertThat(moved(from, riff(from), to, "", "N.C."))
            .as("%s to %s", from, to)
            .containsExactly(tonic, tonic + 3, tonic + 5, tonic + 7);
      }
      for (Key to : Keys.MAJOR) {
        int tonic = tonicOf(from, to);
        assertThat(moved(from, riff(from), to, "", "N.C."))
            .as("%s to %s", from, to)
            .containsExactly(tonic, tonic + 4, tonic + 5, tonic + 7);
      }
    }
  }

  @Test
  void notes_of_the_chord_go_to_the_chord_that_they_are_played_over() {
    for (Key from : Keys.MINOR) {
      for (Key to : Keys.MINOR) {
        int tonic = tonicOf(from, to);
        String sixth = Keys.chord(to, "b6", "7");
        String fourth = Keys.chord(to, "4", "7");
        assertThat(moved(from, riff(from), to, "", to.tonic() + "m7 | " + sixth + " | " + fourth))
            .as("the 5 goes to the b5 and the 4; the 4 between is no chord note: %s", to)
            .startsWith(tonic, tonic + 3, tonic + 5, tonic + 7)
            .containsSubsequence(tonic, tonic + 3, tonic + 5, tonic + 6)
            .endsWith(tonic, tonic + 3, tonic + 5, tonic + 5)
            .hasSize(12);
      }
    }
  }

  @Test
  void a_riff_moved_exactly_keeps_its_intervals_whatever_the_chord() {
    for (Key from : Keys.MINOR) {
      for (Key to : Keys.MAJOR) {
        int tonic = tonicOf(from, to);
        assertThat(moved(from, riff(from), to, "exactly", Keys.chord(to, "4", "7")))
            .as("%s to %s", from, to)
            .containsExactly(tonic, tonic + 3, tonic + 5, tonic + 7);
      }
    }
  }

  @Test
  void a_bass_riff_does_not_fall_below_the_lowest_string() {
    int lowestString = 28;
    for (Key from : Keys.MINOR) {
      int low = lowestString + Math.floorMod(from.tonic().chroma() - lowestString, 12);
      String bass = from.spell(low) + "h " + from.spell(low + 7) + "h";
      for (Key to : Keys.MINOR) {
        int moved = low + Keys.nearerWay(from, to);
        int tonic = moved < lowestString ? moved + 12 : moved;
        assertThat(moved(from, bass, to, "exactly", "N.C."))
            .as("%s to %s", from, to)
            .containsExactly(tonic, tonic + 7);
      }
    }
  }
}

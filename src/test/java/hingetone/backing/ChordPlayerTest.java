package hingetone.backing;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.chart.Chart;
import hingetone.chart.ChartReader;
import hingetone.groove.Grooves;
import hingetone.score.Note;
import hingetone.score.Role;
import hingetone.text.reading.Source;
import hingetone.time.Beats;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Strokes and the chords they play; places are quarter notes from the start. */
class ChordPlayerTest {
  @TempDir Path folder;

  /** Where chords are struck and their notes, of a two-bar chart in C major. */
  private Map<Beats, String> strokes(String line, String bars) throws IOException {
    String groove =
        """
        meter: 4/4
        drums: {patterns: [{lanes: {bass drum 1: x...}}]}
        bass: {patterns: [{line: 1---}]}
        chords: {voicing: close, voices: 3, sounding: 100%%, patterns: [{line: %s}]}
        """
            .formatted(line);
    Files.writeString(folder.resolve("mine.yaml"), groove);
    String text =
        "groove: mine\nsections:\n  one:\n    key: C major\n    bars: |\n      " + bars + "\n";
    Chart chart = ChartReader.read(new Source("chart", text)).value().orElseThrow();
    List<Note> notes =
        Backing.of(chart, Grooves.builtIn().withFolder(folder))
            .exact()
            .lap(2)
            .part(Role.CHORDS)
            .orElseThrow()
            .notes();
    return notes.stream()
        .collect(
            Collectors.groupingBy(
                Note::onset,
                TreeMap::new,
                Collectors.mapping(
                    n -> List.of("C", "", "D", "", "E", "F", "", "G", "", "A").get(n.key() % 12),
                    Collectors.collectingAndThen(
                        Collectors.toList(),
                        names -> names.stream().sorted().collect(Collectors.joining())))));
  }

  @Test
  void a_push_plays_the_chord_that_comes_and_is_not_struck_again_at_the_line() throws IOException {
    assertThat(strokes("\"x------x | ----x---\"", "| C | F |"))
        .containsExactlyInAnyOrderEntriesOf(
            Map.of(Beats.ZERO, "CEG", Beats.of(7, 2), "ACF", Beats.of(6), "ACF"));
  }

  @Test
  void a_push_within_the_bar_is_one_too() throws IOException {
    assertThat(strokes("x--x----", "| C F | C |"))
        .containsExactlyInAnyOrderEntriesOf(
            Map.of(
                Beats.ZERO,
                "CEG",
                Beats.of(3, 2),
                "ACF",
                Beats.of(4),
                "CEG",
                Beats.of(11, 2),
                "CEG"));
  }

  @Test
  void a_stroke_held_into_a_change_from_further_off_is_struck_again() throws IOException {
    assertThat(strokes("x---", "| C F | C |"))
        .containsExactlyInAnyOrderEntriesOf(
            Map.of(Beats.ZERO, "CEG", Beats.of(2), "ACF", Beats.of(4), "CEG"));
  }

  @Test
  void a_late_stroke_that_is_not_held_over_keeps_its_chord() throws IOException {
    assertThat(strokes("x--x....", "| C F | C |"))
        .containsEntry(Beats.of(3, 2), "CEG")
        .containsEntry(Beats.of(2), "ACF");
  }

  @Test
  void nothing_is_pushed_into_a_bar_without_a_chord() throws IOException {
    assertThat(strokes("x--x----", "| C N.C. | C |"))
        .containsEntry(Beats.of(3, 2), "CEG")
        .doesNotContainKey(Beats.of(2));
  }
}

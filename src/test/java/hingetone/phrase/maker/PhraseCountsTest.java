package hingetone.phrase.maker;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** What {@link PhraseCounts} finds in every third of its charts with one seed. */
class PhraseCountsTest {
  private static final int EVERY = 3;

  @Test
  void made_phrases_are_what_a_teacher_would_hand_out() throws Exception {
    List<Path> charts = PhraseCounts.charts();
    PhraseCounts counts =
        PhraseCounts.of(
            IntStream.range(0, charts.size() / EVERY).mapToObj(i -> charts.get(i * EVERY)).toList(),
            1);
    assertThat(counts.count("phrases")).isGreaterThan(100);
    assertThat(counts.share("of them wrong", "notes")).isLessThan(0.01);
    assertThat(counts.share("notes outside scale and chord", "notes")).isLessThan(0.05);
    assertThat(counts.share("thirds over V7 in minor", "notes over V7 in minor"))
        .isGreaterThan(0.12);
    assertThat(counts.share("thirds over blues chords", "notes over blues chords"))
        .isGreaterThan(0.1);
    assertThat(counts.share("changes by step to a guide tone", "changes with a guide tone near"))
        .isGreaterThan(0.6);
    assertThat(
            counts.share("of them bent to", "landings on the top three strings in bending styles"))
        .isGreaterThan(0.25);
    assertThat(counts.median("hold length in beats")).isGreaterThanOrEqualTo(3.5);
    assertThat(counts.count("returns claimed")).isGreaterThan(3);
    assertThat(counts.share("returns known again", "returns claimed")).isEqualTo(1);
    assertThat(counts.share("returns with another ending", "returns claimed")).isEqualTo(1);
    assertThat(counts.share("replies that share opening or rhythm", "replies"))
        .isGreaterThan(2 / 3.0);
    assertThat(counts.share("of them other than before", "replies after a new ending"))
        .isEqualTo(1);
    assertThat(counts.share("replies at rest", "replies")).isGreaterThan(0.9);
    assertThat(counts.share("phrases in five frets", "phrases in one key")).isEqualTo(1);
    assertThat(counts.count("phrases beyond eight notes a second")).isZero();
  }
}

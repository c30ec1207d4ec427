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
    assertThat(counts.share("replies at rest", "replies")).isGreaterThan(0.9);
    assertThat(counts.share("phrases in five frets", "phrases in one key")).isEqualTo(1);
    assertThat(counts.count("phrases beyond eight notes a second")).isZero();
  }
}

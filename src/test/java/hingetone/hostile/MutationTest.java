package hingetone.hostile;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.chart.ChartReader;
import org.junit.jupiter.api.Test;

class MutationTest {
  @Test
  void the_texts_are_right_before_they_are_damaged() {
    assertThat(ChartReader.readFile("src/test/resources/hostile/every-key.yaml").problems())
        .isEmpty();
  }

  @Test
  void damaged_texts_are_read_or_refused_but_never_fail() {
    for (MutationRun run : MutationRun.all()) {
      String figures = run.over(3000);

      assertThat(run.failures()).as(figures).isEmpty();
    }
  }
}

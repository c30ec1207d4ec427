package hingetone.hostile;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class DrawnChartsTest {
  @Test
  void drawn_charts_are_read_mapped_planned_and_arranged_and_flawed_ones_never_fail() {
    DrawnChartsRun run = new DrawnChartsRun();
    String figures = run.over(25);
    assertThat(run.failures()).as(figures).isEmpty();
  }
}

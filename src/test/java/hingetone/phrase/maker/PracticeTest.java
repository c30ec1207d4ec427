package hingetone.phrase.maker;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.chart.Chart;
import hingetone.chart.Form;
import hingetone.chart.PhraseTurn.Role;
import hingetone.plan.Plan;
import hingetone.plan.Prompt;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** A rule of the trade on replies, measured over the demo charts (common practice). */
class PracticeTest {
  private static final int SEEDS = 20;

  private final List<String> same = new ArrayList<>();
  private int compared;

  @Test
  void the_same_statement_with_another_ending_gets_another_reply() throws Exception {
    for (Path file : PhraseMakerTest.demoCharts()) {
      for (long seed = 1; seed <= SEEDS; seed++) {
        Chart chart = PhraseMakerTest.read(file).withSeed(seed);
        Plan plan = Plan.of(chart, Form.of(chart));
        compare(plan, PhraseMakerTest.maker(chart, plan), file.getFileName() + " seed " + seed);
      }
    }
    assertThat(compared).isGreaterThan(10);
    assertThat(same).isEmpty();
  }

  /** The first reply to each statement that comes back in its section, beside the one before. */
  private void compare(Plan plan, PhraseMaker maker, String where) {
    Map<Integer, Prompt> replies = new HashMap<>();
    plan.promptsOfLap(1).stream()
        .filter(p -> p.role() == Role.REPLY && p.crossing().isEmpty())
        .forEach(p -> replies.putIfAbsent(p.repliesTo().orElseThrow(), p));
    for (Map.Entry<Integer, Prompt> entry : replies.entrySet()) {
      Prompt reply = entry.getValue();
      Optional<Prompt> before =
          plan.prompt(entry.getKey())
              .again()
              .flatMap(statement -> Optional.ofNullable(replies.get(statement)))
              .filter(other -> other.section().equals(reply.section()));
      if (before.isPresent()) {
        compared++;
        if (maker.make(reply).phrase().equals(maker.make(before.get()).phrase())) {
          same.add(where + " prompt " + reply.index());
        }
      }
    }
  }
}

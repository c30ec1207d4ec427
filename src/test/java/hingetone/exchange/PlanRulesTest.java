package hingetone.exchange;

import static hingetone.exchange.Charts.section;
import static org.assertj.core.api.Assertions.assertThat;

import hingetone.chart.Chart;
import hingetone.chart.Form;
import hingetone.chart.Form.Bar;
import hingetone.chart.PhraseTurn.Role;
import hingetone.chart.Section;
import hingetone.time.Beats;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The rules that every plan keeps, over many charts, meters and seeds. */
class PlanRulesTest {
  private static final int SEEDS = 200;
  private static final List<String> METERS =
      List.of("2/4", "3/4", "4/4", "5/4", "6/8", "7/8", "9/8", "12/8", "5/8", "2/2");
  private static final List<String> PHRASES =
      List.of(
          "",
          "statement 2, reply 2",
          "statement 1, reply 1, reply 1, rest 1",
          "rest 1, statement 1, reply 2",
          "reply 1, statement 2 again");

  @Test
  void demo_charts_make_plans_that_keep_the_rules() throws Exception {
    for (Path file : MakerTest.demoCharts()) {
      Chart chart = MakerTest.read(file);
      for (long seed = 1; seed <= SEEDS; seed++) {
        check(chart.withSeed(seed), file.getFileName() + " seed " + seed);
      }
    }
  }

  @Test
  void in_every_meter_and_with_odd_lengths_plans_keep_the_rules() {
    for (String meter : METERS) {
      for (String next : List.of(meter, "4/4")) {
        for (String phrases : PHRASES) {
          for (long seed = 1; seed <= SEEDS / 10; seed++) {
            Section low = section("low", "A minor", meter, "Am7 Dm7 Am7 E7#9 Am7", phrases);
            Section high = section("high", "B minor", next, "Bm7 Em7 Bm7", phrases);
            String where = meter + " " + next + " \"" + phrases + "\" seed " + seed;
            check(Charts.chart(seed, low, high, low), where);
          }
        }
      }
    }
  }

  private static void check(Chart chart, String where) {
    Form form = Form.of(chart);
    Plan plan = Plan.of(chart, form);
    List<Prompt> prompts = new ArrayList<>();
    for (int lap = 1; lap <= 3; lap++) {
      prompts.addAll(plan.promptsOfLap(lap));
    }
    for (int i = 0; i < prompts.size(); i++) {
      Prompt prompt = prompts.get(i);
      String which = where + " " + prompt;
      assertThat(prompt.index()).as(which).isEqualTo(i + 1);
      landsOnAStrongBeat(form, prompt, which);
      startsEarlyByThePickup(form, prompts, i, which);
      if (i + 1 < prompts.size()) {
        Beats gap =
            form.quarters(prompts.get(i + 1).speakFrom()).minus(form.quarters(prompt.stopBy()));
        assertThat(gap.isNegative()).as("%s overlaps the next", which).isFalse();
        assertThat(gap)
            .as("%s leaves more than a breath", which)
            .isLessThanOrEqualTo(Beats.of(1, 2));
      }
    }
    Beats start = form.quarters(prompts.get(0).speakFrom());
    boolean opensWithReply = prompts.get(0).role() == Role.REPLY;
    assertThat(start).as(where).isLessThanOrEqualTo(opensWithReply ? Beats.ONE : Beats.ZERO);
    assertThat(prompts.stream().map(Prompt::lap).distinct()).containsExactly(1, 2, 3);
  }

  private static void landsOnAStrongBeat(Form form, Prompt prompt, String which) {
    Bar bar = form.bar(prompt.landOn().bar());
    if (prompt.role() == Role.STATEMENT) {
      assertThat(prompt.landOn().beat()).as(which).isEqualTo(Beats.ONE);
    } else if (prompt.role() == Role.REPLY) {
      assertThat(bar.meter().isStrong(prompt.landOn().beat())).as(which).isTrue();
    }
    assertThat(prompt.section()).as(which).isEqualTo(bar.section().name());
  }

  /** By the stated pickup, or by less where the phrase before would be left without a beat. */
  private static void startsEarlyByThePickup(Form form, List<Prompt> prompts, int i, String which) {
    Prompt prompt = prompts.get(i);
    if (prompt.isRest()) {
      return;
    }
    Bar bar = form.bar(prompt.landOn().bar());
    Beats early = form.quarters(prompt.landOn()).minus(form.quarters(prompt.speakFrom()));
    Beats stated = bar.meter().toQuarters(bar.section().pickup());
    assertThat(early).as(which).isLessThanOrEqualTo(stated);
    if (i > 0 && early.isBefore(stated)) {
      Prompt before = prompts.get(i - 1);
      Beats kept = form.quarters(before.stopBy()).minus(form.quarters(before.landOn()));
      Beats beat = form.bar(before.landOn().bar()).meter().beatLength().max(Beats.ONE);
      Beats rest = bar.meter().barLength();
      assertThat(kept).as(which).isLessThanOrEqualTo(before.isRest() ? rest : beat);
    }
  }
}

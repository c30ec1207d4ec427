package hingetone.plan;

import static hingetone.plan.PlanCharts.section;
import static org.assertj.core.api.Assertions.assertThat;

import hingetone.chart.Chart;
import hingetone.chart.Form;
import hingetone.chart.Form.Bar;
import hingetone.chart.PhraseTurn.Role;
import hingetone.chart.Section;
import hingetone.groove.Grooves;
import hingetone.ground.Ground;
import hingetone.neck.Fretboard;
import hingetone.neck.Tuning;
import hingetone.phrase.maker.MadePhrase;
import hingetone.phrase.maker.PhraseMaker;
import hingetone.phrase.maker.PhraseMakerTest;
import hingetone.time.Beats;
import hingetone.time.Meter;
import hingetone.time.Position;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The rules that every plan keeps, over many charts, meters and seeds. */
class PlanRulesTest {
  private static final int FEW = 10;
  private static final int ALL = 200;

  private static final List<String> PHRASES =
      List.of(
          "",
          "statement 2, reply 2",
          "statement 1, reply 1, reply 1, rest 1",
          "rest 1, statement 1, reply 2",
          "reply 1, statement 2 again");

  private int plans;
  private int prompts;
  private int phrases;

  @Test
  void demo_charts_make_plans_that_keep_the_rules() throws Exception {
    demoCharts(FEW);
  }

  @Test
  void in_every_meter_and_with_odd_lengths_plans_keep_the_rules() {
    everyMeter(FEW);
  }

  @Test
  void phrases_fit_their_space_in_the_meter_of_every_groove() {
    phrasesFit(1);
  }

  @Test
  void however_early_phrases_may_start_one_that_goes_over_a_line_rings_half_a_beat_past_it() {
    everyPickup(1);
  }

  @Test
  @Tag("long")
  void two_hundred_seeds_keep_the_rules() throws Exception {
    demoCharts(ALL);
    everyMeter(ALL);
    phrasesFit(ALL);
    everyPickup(FEW);
    System.out.println(plans + " plans, " + prompts + " prompts, " + phrases + " phrases");
  }

  private void demoCharts(int seeds) throws Exception {
    for (Path file : PhraseMakerTest.demoCharts()) {
      Chart chart = PhraseMakerTest.read(file);
      for (long seed = 1; seed <= seeds; seed++) {
        check(chart.withSeed(seed), file.getFileName() + " seed " + seed);
      }
    }
  }

  private void everyMeter(int seeds) {
    for (String meter : meters()) {
      for (String next : List.of(meter, "4/4")) {
        for (String phrases : PHRASES) {
          for (long seed = 1; seed <= seeds; seed++) {
            String where = meter + " " + next + " \"" + phrases + "\" seed " + seed;
            check(chart(meter, next, phrases, seed), where);
          }
        }
      }
    }
  }

  /** The meters of all grooves, and more that a chart may have. */
  private static List<String> meters() {
    Stream<String> drawn =
        Grooves.builtIn().all().stream().flatMap(g -> g.meters().stream()).map(Meter::toString);
    Stream<String> more =
        Stream.of("2/4", "3/4", "4/4", "5/4", "6/8", "7/8", "9/8", "12/8", "5/8", "2/2", "11/8");
    return Stream.concat(drawn, more).distinct().toList();
  }

  private static Chart chart(String meter, String next, String phrases, long seed) {
    Section low = section("low", "F minor", meter, "Fm7 Bbm7 Fm7 C7b9 Fm7", phrases);
    Section high = section("high", "Ab minor", next, "Abm7 Dbm7 Abm7", phrases);
    return PlanCharts.chart(seed, low, high, low);
  }

  private void phrasesFit(int seeds) {
    for (String meter : meters()) {
      for (String phrases : PHRASES) {
        Form form = Form.of(chart(meter, "4/4", phrases, 1));
        Ground ground = Ground.of(form, Fretboard.of(Tuning.STANDARD, 0));
        for (long seed = 1; seed <= seeds; seed++) {
          Plan plan = Plan.of(chart(meter, "4/4", phrases, seed), form);
          PhraseMaker maker = PhraseMakerTest.withBank(PhraseMaker.of(plan, ground, seed));
          String where = meter + " \"" + phrases + "\" seed " + seed;
          plan.promptsOfLap(1).stream()
              .filter(prompt -> !prompt.isRest())
              .forEach(prompt -> fits(form, maker.make(prompt), where));
        }
      }
    }
  }

  private void everyPickup(int seeds) {
    for (String meter : meters()) {
      for (int beats : List.of(0, 2, 5, 8)) {
        for (long seed = 1; seed <= seeds; seed++) {
          Section low = section("low", "G minor", meter, "Gm7 Cm7 Gm7", "statement 1, reply 2");
          Section high = section("high", "C minor", meter, "Cm7 Fm7 G7", "reply 2, statement 1");
          Beats pickup = Beats.of(beats);
          Chart chart =
              PlanCharts.chart(
                  seed, PlanCharts.withPickup(low, pickup), PlanCharts.withPickup(high, pickup));
          ringsOverTheLine(chart, meter + " pickup " + beats + " seed " + seed);
        }
      }
    }
  }

  private void ringsOverTheLine(Chart chart, String where) {
    Form form = Form.of(chart);
    Plan plan = Plan.of(chart, form);
    PhraseMaker maker =
        PhraseMaker.of(plan, Ground.of(form, Fretboard.of(Tuning.STANDARD, 0)), chart.seed());
    List<Prompt> prompts = new ArrayList<>(plan.promptsOfLap(1));
    prompts.addAll(plan.promptsOfLap(2));
    for (int i = 0; i + 1 < prompts.size(); i++) {
      Prompt prompt = prompts.get(i);
      Prompt next = prompts.get(i + 1);
      boolean over = prompt.crossing().isPresent() && next.crossing().isEmpty();
      if (over && !prompt.section().equals(next.section())) {
        Position line = Position.of(next.landOn().bar(), 1);
        Beats past = form.quarters(prompt.stopBy()).minus(form.quarters(line));
        Beats half = form.bar(line.bar()).meter().beatLength().dividedBy(2);
        assertThat(past).as("%s %s", where, prompt).isGreaterThanOrEqualTo(half);
      }
      fits(form, maker.make(prompt), where);
    }
  }

  private void fits(Form form, MadePhrase made, String where) {
    Prompt prompt = made.prompt();
    Beats landing = form.quarters(prompt.landOn());
    Beats start = landing.plus(made.phrase().start());
    Beats end = landing.plus(made.phrase().end());
    assertThat(start).as("%s %s", where, made).isGreaterThanOrEqualTo(at(form, prompt.speakFrom()));
    assertThat(end).as("%s %s", where, made).isLessThanOrEqualTo(at(form, prompt.stopBy()));
    phrases++;
  }

  private static Beats at(Form form, Position position) {
    return form.quarters(position);
  }

  private void check(Chart chart, String where) {
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
    plans++;
    this.prompts += prompts.size();
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
    Beats stated = stated(bar);
    assertThat(early).as(which).isLessThanOrEqualTo(stated);
    if (i > 0 && early.isBefore(stated)) {
      Prompt before = prompts.get(i - 1);
      Beats kept = form.quarters(before.stopBy()).minus(form.quarters(before.landOn()));
      Beats beat = form.bar(before.landOn().bar()).meter().beatLength().max(Beats.ONE);
      Beats rest = bar.meter().barLength();
      assertThat(kept).as(which).isLessThanOrEqualTo(before.isRest() ? rest : beat);
    }
  }

  /** The section's pickup in quarter notes; in meters over eighths only whole eighths of it. */
  private static Beats stated(Bar bar) {
    Beats quarters = bar.meter().toQuarters(bar.section().pickup());
    Beats eighths = Beats.of(quarters.times(2).floor(), 2);
    return bar.meter().denominator() == 8 ? eighths : quarters;
  }
}

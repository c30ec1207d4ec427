package hingetone.phrase.maker;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.chart.Chart;
import hingetone.chart.Fluency;
import hingetone.chart.Form;
import hingetone.ground.Ground;
import hingetone.neck.Fretboard;
import hingetone.phrase.Tone;
import hingetone.plan.Plan;
import hingetone.plan.Prompt;
import hingetone.time.Beats;
import hingetone.time.Tempo;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

class ThinningTest {
  @Test
  void no_phrase_inside_a_key_is_faster_than_the_player_gets() throws Exception {
    int phrases = 0;
    for (Path file : PhraseMakerTest.demoCharts()) {
      for (int bpm : List.of(70, 130, 230, 330)) {
        for (Fluency fluency : Fluency.values()) {
          phrases += check(PhraseMakerTest.read(file).withTempo(Tempo.of(bpm)), fluency);
        }
      }
    }
    assertThat(phrases).isGreaterThan(300);
  }

  private static int check(Chart chart, Fluency fluency) {
    Form form = Form.of(chart);
    Plan plan = Plan.of(chart, form);
    Ground ground = Ground.of(form, Fretboard.of(chart.tuning(), chart.capo()));
    PhraseMaker maker = PhraseMaker.of(plan, ground, chart.seed()).withFluency(fluency);
    int phrases = 0;
    for (Prompt prompt : plan.promptsOfLap(1)) {
      if (!prompt.isRest() && prompt.crossing().isEmpty()) {
        Form.Bar bar = form.bar(prompt.landOn().bar());
        double quarters = bar.section().tempo().quartersPerMinute(bar.meter()).toDouble() / 60;
        List<Beats> onsets =
            maker.make(prompt).phrase().tones().stream().map(Tone::onset).distinct().toList();
        for (int i = 1; i < onsets.size(); i++) {
          double seconds = onsets.get(i).minus(onsets.get(i - 1)).toDouble() / quarters;
          assertThat(1 / seconds)
              .as("prompt %d of %s at %s", prompt.index(), chart.title(), quarters * 60)
              .isLessThanOrEqualTo(fluency.picked() + 1e-9);
        }
        assertThat(maker.make(prompt).phrase().tones())
            .anyMatch(tone -> !tone.onset().isPositive() && tone.end().isPositive());
        phrases++;
      }
    }
    return phrases;
  }

  @Test
  void an_easy_phrase_has_fewer_notes_than_a_fast_one_and_fills_their_place() throws Exception {
    Chart chart = PhraseMakerTest.read(Path.of("demo-charts/slow-tide.yaml"));
    List<Tone> fast = tones(chart.withTempo(Tempo.of(200)), Fluency.FAST);
    List<Tone> easy = tones(chart.withTempo(Tempo.of(200)), Fluency.EASY);
    assertThat(easy).hasSizeLessThan(fast.size());
    assertThat(sum(easy)).isGreaterThan(0.9 * sum(fast));
  }

  private static List<Tone> tones(Chart chart, Fluency fluency) {
    Form form = Form.of(chart);
    Plan plan = Plan.of(chart, form);
    Ground ground = Ground.of(form, Fretboard.of(chart.tuning(), chart.capo()));
    PhraseMaker maker = PhraseMaker.of(plan, ground, chart.seed()).withFluency(fluency);
    return plan.promptsOfLap(1).stream()
        .filter(prompt -> !prompt.isRest())
        .flatMap(prompt -> maker.make(prompt).phrase().tones().stream())
        .toList();
  }

  private static double sum(List<Tone> tones) {
    return tones.stream().mapToDouble(tone -> tone.length().toDouble()).sum();
  }
}

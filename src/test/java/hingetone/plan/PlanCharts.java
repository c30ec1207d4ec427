package hingetone.plan;

import hingetone.chart.Chart;
import hingetone.chart.ChartBar;
import hingetone.chart.Fluency;
import hingetone.chart.Leave;
import hingetone.chart.PhraseTurn;
import hingetone.chart.PhraseTurn.Role;
import hingetone.chart.Section;
import hingetone.neck.Tuning;
import hingetone.score.Fullness;
import hingetone.theory.Chord;
import hingetone.theory.Key;
import hingetone.time.Beats;
import hingetone.time.Meter;
import hingetone.time.Tempo;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** Charts for tests, made in a line or two. */
public final class PlanCharts {
  private PlanCharts() {}

  /** A section of one-chord bars: {@code section("low", "C minor", "4/4", "Cm7 Fm7 Cm7 G7b9")}. */
  public static Section section(
      String name, String key, String meter, String chords, String phrases) {
    Meter itsMeter = Meter.parse(meter).orElseThrow();
    Beats bar = Beats.of(itsMeter.beatsPerBar());
    List<ChartBar> bars =
        Arrays.stream(chords.split(" "))
            .map(Chord::parse)
            .map(chord -> new ChartBar(List.of(new ChartBar.Slot(Beats.ONE, bar, chord))))
            .toList();
    return new Section(
        name,
        Key.parse(key).orElseThrow(),
        itsMeter,
        Tempo.of(112),
        Optional.empty(),
        Fullness.NORMAL,
        Optional.empty(),
        bars,
        turns(phrases),
        Beats.of(3, 2),
        List.of(),
        Optional.empty());
  }

  static Section leaving(Section s, Leave... leave) {
    return new Section(
        s.name(),
        s.key(),
        s.meter(),
        s.tempo(),
        s.groove(),
        s.band(),
        s.swing(),
        s.bars(),
        s.phrases(),
        s.pickup(),
        List.of(leave),
        s.riff());
  }

  static Section withPickup(Section s, Beats pickup) {
    return new Section(
        s.name(),
        s.key(),
        s.meter(),
        s.tempo(),
        s.groove(),
        s.band(),
        s.swing(),
        s.bars(),
        s.phrases(),
        pickup,
        s.leave(),
        s.riff());
  }

  public static Chart chart(long seed, Section... form) {
    List<Section> sections = Arrays.stream(form).distinct().toList();
    return new Chart(
        "Test",
        sections,
        List.of(form),
        1,
        "guitar",
        Tuning.STANDARD,
        0,
        Optional.empty(),
        Fluency.NORMAL,
        seed);
  }

  private static List<PhraseTurn> turns(String phrases) {
    List<PhraseTurn> turns = new ArrayList<>();
    for (String turn : phrases.isEmpty() ? new String[0] : phrases.split(", ")) {
      String[] words = turn.split(" ");
      turns.add(
          new PhraseTurn(
              Role.valueOf(words[0].toUpperCase(java.util.Locale.ROOT)),
              Integer.parseInt(words[1]),
              words.length > 2));
    }
    return turns;
  }
}

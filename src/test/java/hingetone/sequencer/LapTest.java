package hingetone.sequencer;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.backing.Backing;
import hingetone.chart.Chart;
import hingetone.chart.ChartReader;
import hingetone.groove.Grooves;
import hingetone.midi.MidiNote;
import hingetone.score.Mark;
import hingetone.score.Note;
import hingetone.score.Part;
import hingetone.score.Role;
import hingetone.score.Score;
import hingetone.score.Sound;
import hingetone.text.reading.Source;
import hingetone.time.Beats;
import hingetone.time.Meter;
import hingetone.time.Tempo;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class LapTest {
  private static final String CHART =
      """
      tempo: 90
      sections:
        low: {key: F minor, groove: gravel-road, bars: "| Fm7 | Bbm7 / C7 / | Fm7 |"}
        high: {key: D minor, groove: paper-boat, meter: 6/8, tempo: 70, bars: "| Dm7 | Gm7 | A7 |"}
      form: low high low
      """;

  private static Score score(int lap) {
    Chart chart = ChartReader.read(new Source("two", CHART)).value().orElseThrow();
    return Backing.of(chart, Grooves.builtIn()).lap(lap);
  }

  @Test
  void each_bar_is_as_the_last_marks_up_to_its_line_say() {
    Score score = score(1);
    for (Lap.Bar bar : Lap.of(1, score).bars()) {
      assertThat(bar.meter()).isEqualTo(last(score, Mark.OfMeter.class, bar.start()).meter());
      assertThat(bar.tempo()).isEqualTo(last(score, Mark.OfTempo.class, bar.start()).tempo());
      assertThat(bar.key()).contains(last(score, Mark.OfKey.class, bar.start()).key());
      Mark.OfSection section = last(score, Mark.OfSection.class, bar.start());
      assertThat(bar.section()).contains(section.name());
      assertThat(bar.opensSection()).isEqualTo(section.at().equals(bar.start()));
      for (Role role : List.of(Role.DRUMS, Role.BASS, Role.CHORDS)) {
        Sound sound =
            score.sounds(role).stream()
                .filter(mark -> !mark.at().isAfter(bar.start()))
                .reduce((a, b) -> b)
                .orElseThrow()
                .sound();
        assertThat(bar.sounds()).containsEntry(role, sound);
      }
    }
  }

  private static <M extends Mark> M last(Score score, Class<M> kind, Beats at) {
    return score.marks(kind).filter(m -> !m.at().isAfter(at)).reduce((a, b) -> b).orElseThrow();
  }

  @Test
  void the_bars_and_the_count_in_hold_every_note_once_in_its_place() {
    for (int number : List.of(1, 2)) {
      Score score = score(number);
      Lap lap = Lap.of(number, score);
      List<MidiNote> held =
          java.util.stream.Stream.concat(lap.countIn().stream(), lap.bars().stream())
              .flatMap(bar -> bar.notes().stream().map(note -> note.later(bar.start())))
              .toList();
      List<MidiNote> all = MidiNote.of(score.parts());
      assertThat(held.size() + lap.pickups().size()).isEqualTo(all.size());
      assertThat(held).containsAll(all.subList(lap.pickups().size(), all.size()));
      assertThat(lap.pickups()).allMatch(note -> note.on().isNegative());
      for (Lap.Bar bar : lap.bars()) {
        assertThat(bar.notes())
            .allMatch(n -> !n.on().isNegative() && n.on().isBefore(bar.length()));
      }
    }
  }

  @Test
  void a_pickup_without_a_count_in_is_left_to_the_lap_before() {
    Note early = new Note(Beats.of(-1, 2), Beats.ONE, 45, 80);
    Part bass = new Part(Role.BASS, Sound.of(33), List.of(early));
    List<Mark> marks = List.of(new Mark.OfMeter(Beats.ZERO, Meter.of(3, 4)));
    Lap lap = Lap.of(2, new Score("", Beats.ZERO, Beats.of(6), marks, List.of(bass)));
    assertThat(lap.bars()).hasSize(2).allMatch(bar -> bar.notes().isEmpty());
    assertThat(lap.pickups()).extracting(MidiNote::on).containsExactly(Beats.of(-1, 2));
    assertThat(lap.bars().get(0).tempo()).isEqualTo(Tempo.of(100));
    assertThat(lap.bars().get(0).section()).isEqualTo(Optional.empty());
  }
}

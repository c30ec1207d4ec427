package hingetone.backing;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.chart.Chart;
import hingetone.chart.ChartReader;
import hingetone.groove.Groove;
import hingetone.groove.Grooves;
import hingetone.score.Note;
import hingetone.score.Part;
import hingetone.score.Role;
import hingetone.score.Score;
import hingetone.score.Sound;
import hingetone.text.reading.Source;
import hingetone.time.Beats;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class BackingTest {
  private static Chart chart(String name) {
    return ChartReader.readFile("demo-charts/" + name + ".yaml").value().orElseThrow();
  }

  @ParameterizedTest
  @ValueSource(strings = {"lantern-quay", "mill-race", "slow-tide"})
  void every_lap_of_a_demo_chart_is_filled_by_the_whole_band(String name) {
    Backing backing = Backing.of(chart(name), Grooves.builtIn());
    for (int lap = 1; lap <= 8; lap++) {
      Score score = backing.lap(lap);
      for (Role role : List.of(Role.DRUMS, Role.BASS, Role.CHORDS)) {
        List<Note> notes = score.part(role).orElseThrow().notes();
        assertThat(notes).as(role + " of lap " + lap).hasSizeGreaterThan(20);
        assertThat(notes).allMatch(n -> !n.onset().isNegative());
        assertThat(notes).allMatch(n -> n.onset().isBefore(score.length()));
      }
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"lantern-quay", "mill-race", "slow-tide"})
  void the_same_seed_plays_the_same_and_another_lap_another(String name) {
    Chart chart = chart(name);
    Backing backing = Backing.of(chart, Grooves.builtIn());

    assertThat(Backing.of(chart, Grooves.builtIn()).lap(3)).isEqualTo(backing.lap(3));
    assertThat(drums(backing, 3)).isNotEqualTo(drums(backing, 4));
    assertThat(Backing.of(chart.withSeed(99), Grooves.builtIn()).lap(3))
        .isNotEqualTo(backing.lap(3));
  }

  @ParameterizedTest
  @ValueSource(strings = {"lantern-quay", "mill-race", "slow-tide"})
  void only_the_first_lap_counts_in(String name) {
    Chart chart = chart(name);
    Backing backing = Backing.of(chart, Grooves.builtIn());

    Part click = backing.lap(1).part(Role.CLICK).orElseThrow();
    assertThat(click.notes()).hasSize(4).allMatch(n -> n.onset().isNegative());
    assertThat(backing.lap(1).countIn()).isEqualTo(click.notes().get(0).onset().negated());
    assertThat(backing.lap(2).part(Role.CLICK)).isEmpty();
    assertThat(backing.lap(2).countIn()).isEqualTo(Beats.ZERO);
  }

  @Test
  void each_section_sounds_as_its_own_groove_says() {
    String text =
        """
        sections:
          low: {key: E minor, groove: gravel-road, bars: "| Em7 | C7 |"}
          high: {key: G minor, groove: paper-boat, meter: 6/8, bars: "| Gm7 | Cm7 |"}
        """;
    Chart chart = ChartReader.read(new Source("two", text)).value().orElseThrow();
    Backing backing = Backing.of(chart, Grooves.builtIn());
    Groove rock = Grooves.builtIn().read("gravel-road").value().orElseThrow();
    Groove ballad = Grooves.builtIn().read("paper-boat").value().orElseThrow();
    for (Score lap : List.of(backing.lap(1), backing.lap(2), backing.lastLap(3))) {
      for (Role role : List.of(Role.DRUMS, Role.BASS, Role.CHORDS)) {
        assertThat(soundAt(lap, role, Beats.ZERO)).isEqualTo(rock.sound(role));
        assertThat(soundAt(lap, role, Beats.of(8))).isEqualTo(ballad.sound(role));
        assertThat(soundAt(lap, role, backing.form().length().minus(Beats.of(1, 8))))
            .isEqualTo(ballad.sound(role));
      }
    }
    Score ending = backing.lastLap(3);
    assertThat(soundAt(ending, Role.BASS, backing.form().length()))
        .isEqualTo(rock.sound(Role.BASS));
  }

  /** How a part sounds at a place: as the last change up to there says. */
  private static Sound soundAt(Score score, Role role, Beats place) {
    return score.sounds(role).stream()
        .filter(mark -> !mark.at().isAfter(place))
        .reduce((earlier, later) -> later)
        .orElseThrow()
        .sound();
  }

  private static List<Note> drums(Backing backing, int lap) {
    return backing.lap(lap).part(Role.DRUMS).orElseThrow().notes();
  }

  @ParameterizedTest
  @ValueSource(strings = {"lantern-quay", "mill-race", "slow-tide"})
  void a_piece_of_two_laps_ends_with_a_chord_on_the_bar_line_after_them(String name) {
    Backing backing = Backing.of(chart(name), Grooves.builtIn());

    assertThat(backing.lapOf(1, 2)).isEqualTo(backing.over(2).lap(1));
    Score ending = backing.lapOf(3, 2);
    assertThat(ending.length()).isEqualTo(backing.lap(1).length());
    assertThat(ending.part(Role.BASS).orElseThrow().notes())
        .hasSize(1)
        .allMatch(n -> n.onset().isZero());
    assertThat(ending.part(Role.CHORDS).orElseThrow().notes())
        .hasSizeGreaterThan(1)
        .allMatch(n -> n.onset().isZero());
    assertThat(backing.lapOf(2, 2).part(Role.BASS).orElseThrow().notes())
        .allMatch(n -> n.onset().isBefore(ending.length()));
  }
}

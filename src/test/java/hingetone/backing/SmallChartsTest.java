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
import hingetone.text.reading.Source;
import hingetone.theory.Key;
import hingetone.theory.Keys;
import hingetone.time.Beats;
import hingetone.time.Meter;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The smallest charts and the oddest meters. */
class SmallChartsTest {
  private static final Key F_MINOR = Keys.key("F minor");

  static Stream<Groove> grooves() {
    return Grooves.builtIn().all().stream();
  }

  /** Every meter that the chart reader takes. */
  static Stream<Meter> meters() {
    return Stream.of(2, 4, 8, 16)
        .flatMap(lower -> IntStream.rangeClosed(1, 32).mapToObj(upper -> Meter.of(upper, lower)));
  }

  private static Backing backing(
      String groove, Meter meter, String grouping, Key key, String bars) {
    String text =
        """
        meter: %s
        groove: %s
        %s
        sections:
          one:
            key: %s
            bars: |
              %s
        """
            .formatted(meter, groove, grouping, key, bars);
    Chart chart = ChartReader.read(new Source("small", text)).value().orElseThrow();
    return Backing.of(chart, Grooves.builtIn());
  }

  private static List<Note> notes(Score score, Role role) {
    return score.part(role).map(Part::notes).orElseThrow();
  }

  private static void assertThatTheBandPlays(Backing backing, Key key) {
    Beats form = backing.form().length();
    for (Score lap : List.of(backing.lap(1), backing.lap(2), backing.lastLap(3))) {
      for (Role role : List.of(Role.DRUMS, Role.BASS, Role.CHORDS)) {
        assertThat(notes(lap, role))
            .isNotEmpty()
            .allMatch(n -> !n.onset().isNegative() && !n.end().isAfter(lap.length()));
      }
      Note first = notes(lap, Role.BASS).get(0);
      assertThat(first.onset()).isLessThan(form);
      assertThat(first.key() % 12).isEqualTo(key.tonic().chroma());
    }
    assertThat(backing.lastLap(3).length()).isGreaterThan(form);
  }

  @ParameterizedTest
  @MethodSource("grooves")
  void every_groove_plays_a_chart_of_one_bar(Groove groove) {
    Meter meter = groove.meters().stream().findFirst().orElse(Meter.COMMON);
    for (Key key : Keys.MINOR) {
      String bar = "| " + key.tonic() + "m7 |";
      assertThatTheBandPlays(backing(groove.name(), meter, "", key, bar), key);
    }
  }

  @ParameterizedTest
  @MethodSource("meters")
  void the_plain_groove_plays_every_meter(Meter meter) {
    Backing backing = backing("plain", meter, "", F_MINOR, "| Fm7 | C7 |");
    assertThatTheBandPlays(backing, F_MINOR);
    List<Beats> drums =
        notes(backing.exact().lap(2), Role.DRUMS).stream().map(Note::onset).distinct().toList();
    for (int strong : meter.strongBeats()) {
      assertThat(drums).contains(meter.toQuarters(Beats.of(strong - 1L)));
    }
  }

  @Test
  void the_plain_groove_follows_a_grouping() {
    Meter meter = Meter.of(7, 8);
    assertThatTheBandPlays(backing("plain", meter, "grouping: 3+2+2", F_MINOR, "| Fm7 |"), F_MINOR);
  }

  @ParameterizedTest
  @MethodSource("grooves")
  void without_a_chord_only_the_drums_play_and_the_tonic_ends_it(Groove groove) {
    Meter meter = groove.meters().stream().findFirst().orElse(Meter.COMMON);
    Backing backing = backing(groove.name(), meter, "", F_MINOR, "| N.C. | N.C. |");
    assertThat(notes(backing.lap(1), Role.DRUMS)).hasSizeGreaterThan(4);
    assertThat(notes(backing.lap(1), Role.BASS)).isEmpty();
    assertThat(notes(backing.lap(1), Role.CHORDS)).isEmpty();
    Score last = backing.lastLap(2);
    assertThat(notes(last, Role.BASS))
        .hasSize(1)
        .allMatch(
            n ->
                n.onset().equals(backing.form().length())
                    && n.key() % 12 == F_MINOR.tonic().chroma());
    assertThat(notes(last, Role.CHORDS)).isNotEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"| N.C. Fm7 |", "| Fm7 N.C. |", "| N.C. | Fm7 |"})
  void a_rest_in_the_chords_is_one_for_bass_and_chords(String bars) {
    Backing backing = backing("gravel-road", Meter.COMMON, "", F_MINOR, bars);
    ChordChanges harmony = ChordChanges.of(backing.form());
    for (Role role : List.of(Role.BASS, Role.CHORDS)) {
      assertThat(notes(backing.exact().lap(2), role))
          .isNotEmpty()
          .allMatch(n -> harmony.at(n.onset()).chord().isPresent());
    }
  }
}

package hingetone.hearing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hingetone.theory.Key;
import hingetone.time.Beats;
import hingetone.time.TempoMap;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.Function;
import org.junit.jupiter.api.Test;

class AlignmentTest {
  private static final TempoMap TEMPO = TempoMap.of(Beats.of(110));
  private static final double QUARTER = 60.0 / 110;
  private static final Key LOW = Key.parse("D minor").orElseThrow();
  private static final Key HIGH = Key.parse("F# minor").orElseThrow();

  /** Four bars in each key by turns. */
  private static final Function<Beats, Key> KEYS =
      place -> place.dividedBy(16).floor() % 2 == 0 ? LOW : HIGH;

  @Test
  void the_beat_is_found_though_the_recording_starts_a_little_off_and_a_little_fast() {
    Alignment found =
        Alignment.find(line(4.5, 1.01, 0), TEMPO, Beats.ONE, 4 * QUARTER, KEYS).orElseThrow();
    assertThat(found.ratio()).isCloseTo(1.01, within(0.003));
    assertThat(found.closeness()).isGreaterThan(Alignment.LEAST_CLOSENESS);
  }

  @Test
  void the_expected_place_is_kept_where_the_keys_agree() {
    double expected = 4 * QUARTER;
    Alignment found =
        Alignment.find(line(expected, 1, 0), TEMPO, Beats.ONE, expected, KEYS).orElseThrow();
    assertThat(found.offset()).isCloseTo(expected, within(0.015));
    assertThat(found.place(expected + 5 * QUARTER)).isEqualTo(Beats.of(5));
  }

  @Test
  void another_place_is_taken_where_the_keys_say_so() {
    double played = 20 * QUARTER;
    Alignment found =
        Alignment.find(line(played, 1, 0), TEMPO, Beats.ONE, 4 * QUARTER, KEYS).orElseThrow();
    assertThat(found.offset()).isCloseTo(played, within(4 * QUARTER));
  }

  /** Long notes on the beats, some short ones between them, which keep to eighths either way. */
  @Test
  void a_recording_that_begins_half_a_beat_off_is_not_taken_for_one_of_off_beats() {
    double played = 4.4 * QUARTER;
    List<HeardNote> notes = new ArrayList<>();
    for (int beat = 0; beat < 32; beat++) {
      notes.add(note(played + beat * QUARTER, 0.9 * QUARTER, 62));
      if (beat % 3 == 1) {
        notes.add(note(played + (beat + 0.5) * QUARTER, 0.1, 65));
      }
    }
    Alignment found = Alignment.find(notes, TEMPO, Beats.ONE, 4 * QUARTER, KEYS).orElseThrow();
    double beats = (found.offset() - played) / QUARTER;
    assertThat(beats).isCloseTo(Math.rint(beats), within(0.05));
  }

  @Test
  void in_a_compound_meter_the_beats_are_dotted_quarters() {
    double dotted = 1.5 * QUARTER;
    List<HeardNote> notes = new ArrayList<>();
    for (int beat = 0; beat < 24; beat++) {
      notes.add(note(2 + beat * dotted, 0.8 * dotted, 62));
      notes.add(note(2 + (beat + 2 / 3.0) * dotted, 0.1, 65));
    }
    Alignment found =
        Alignment.find(notes, TEMPO, Beats.of(3, 2), 2 + 0.4 * dotted, KEYS).orElseThrow();
    double beats = (found.offset() - 2) / dotted;
    assertThat(beats).isCloseTo(Math.rint(beats), within(0.05));
  }

  private static HeardNote note(double at, double length, double midi) {
    return new HeardNote(at, at + length, -20, midi, midi, Technique.PLAIN, false, List.of(), 1);
  }

  @Test
  void notes_that_keep_to_no_beat_are_seen_as_such() {
    Alignment found =
        Alignment.find(line(4, 1, 0.3), TEMPO, Beats.ONE, 4 * QUARTER, KEYS).orElseThrow();
    assertThat(found.closeness()).isLessThan(Alignment.LEAST_CLOSENESS);
  }

  @Test
  void too_few_notes_tell_nothing() {
    assertThat(Alignment.find(line(4, 1, 0).subList(0, 7), TEMPO, Beats.ONE, 0, KEYS)).isEmpty();
  }

  @Test
  void a_change_of_tempo_in_the_piece_is_followed() {
    TempoMap two =
        new TempoMap(
            List.of(
                new TempoMap.Step(Beats.ZERO, Beats.of(60)),
                new TempoMap.Step(Beats.of(8), Beats.of(120))));
    Alignment given = Alignment.at(1, two, List.of());
    assertThat(given.place(1)).isEqualTo(Beats.ZERO);
    assertThat(given.place(5.5)).isEqualTo(Beats.of(9, 2));
    assertThat(given.place(10)).isEqualTo(Beats.of(10));
    assertThat(given.place(0)).isEqualTo(Beats.of(-1));
  }

  @Test
  void moments_are_placed_beat_by_beat_on_the_coarsest_grid_that_keeps_them_apart() {
    Alignment given = Alignment.at(0, TempoMap.of(Beats.of(60)), List.of());
    assertThat(given.places(List.of(0.01, 0.34, 0.66, 0.99, 1.24, 1.52, 1.74)))
        .extracting(Beats::toString)
        .containsExactly("0", "1/3", "2/3", "1", "1+1/4", "1+1/2", "1+3/4");
    assertThat(given.places(List.of(0.0, 0.12, 0.26, 0.37, 0.9)))
        .extracting(Beats::toString)
        .containsExactly("0", "1/8", "1/4", "3/8", "1");
    assertThat(given.places(List.of(0.0, 0.041, 0.082, 0.123))).doesNotHaveDuplicates().isSorted();
    assertThat(given.places(List.of())).isEmpty();
  }

  /** Eighths up and down the pentatonic of each key, some left out, for 16 bars. */
  private static List<HeardNote> line(double offset, double ratio, double loose) {
    Random random = new Random(4);
    List<HeardNote> notes = new ArrayList<>();
    for (int eighth = 0; eighth < 128; eighth++) {
      if (random.nextInt(3) > 0) {
        int root = eighth / 32 % 2 == 0 ? 62 : 66;
        int[] steps = {0, 3, 5, 7, 10};
        double midi = root + steps[random.nextInt(5)];
        double at = offset + eighth * QUARTER / 2 / ratio + loose * random.nextDouble();
        notes.add(
            new HeardNote(at, at + 0.2, -20, midi, midi, Technique.PLAIN, false, List.of(), 1));
      }
    }
    return notes;
  }
}

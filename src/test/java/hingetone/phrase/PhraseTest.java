package hingetone.phrase;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.notation.NoteText;
import hingetone.score.Note;
import hingetone.text.reading.Source;
import hingetone.text.reading.Span;
import hingetone.theory.Interval;
import hingetone.theory.Key;
import hingetone.theory.Keys;
import hingetone.theory.NoteName;
import hingetone.theory.Pitch;
import hingetone.theory.Scale;
import hingetone.time.Beats;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class PhraseTest {
  private static final Key D_MINOR = Keys.key("D minor");
  private static final Scale PENTATONIC = D_MINOR.pentatonic();

  /** A phrase from note text, so many quarters of which are its pickup. */
  private static Phrase phrase(String notes, Beats pickup) {
    NoteText text =
        NoteText.read(new Source("test", notes), new Span(0, notes.length())).value().orElseThrow();
    List<Tone> tones =
        text.notes().stream()
            .map((Note n) -> Tone.of(n.onset().minus(pickup), n.length(), D_MINOR.spell(n.key())))
            .toList();
    return new Phrase(D_MINOR, tones);
  }

  private static final Phrase ASKING = phrase("A4i C5i D5i F5q. G5i A5q", Beats.of(3, 2));

  private static String pitches(Phrase phrase) {
    return phrase.tones().stream().map(t -> t.pitch().toString()).collect(Collectors.joining(" "));
  }

  private static String onsets(Phrase phrase) {
    return phrase.tones().stream().map(t -> t.onset().toString()).collect(Collectors.joining(" "));
  }

  @Test
  void time_is_counted_from_the_landing() {
    assertThat(onsets(ASKING)).isEqualTo("-1+1/2 -1 -1/2 0 1+1/2 2");
    assertThat(ASKING.landing().pitch()).isEqualTo(Pitch.parse("F5").orElseThrow());
    assertThat(ASKING.length()).isEqualTo(Beats.of(9, 2));
  }

  @Test
  void a_push_an_eighth_early_is_the_landing() {
    Phrase pushed = phrase("A4i D5i- D5-h C5q", Beats.ONE);
    assertThat(pushed.landing().pitch()).isEqualTo(Pitch.parse("D5").orElseThrow());
  }

  @Test
  void in_another_key_every_note_is_the_same_degree() {
    for (Key to : everyKey()) {
      Phrase moved = ASKING.inKey(to);
      List<Interval> before = degrees(ASKING);
      assertThat(moved.key()).isEqualTo(to);
      assertThat(degrees(moved).stream().map(Interval::number))
          .as("%s", to)
          .isEqualTo(before.stream().map(Interval::number).toList());
      assertThat(moved.tones()).allMatch(t -> to.heptatonic().contains(t.pitch().name()));
      assertThat(Math.abs(moved.landing().pitch().midi() - ASKING.landing().pitch().midi()))
          .isLessThanOrEqualTo(7);
    }
  }

  private static List<Key> everyKey() {
    return IntStream.rangeClosed(-5, 6)
        .mapToObj(NoteName::ofFifths)
        .flatMap(tonic -> Key.MODES.stream().map(mode -> new Key(tonic, mode)))
        .toList();
  }

  private static List<Interval> degrees(Phrase phrase) {
    return phrase.tones().stream().map(t -> phrase.key().tonic().to(t.pitch().name())).toList();
  }

  @Test
  void a_note_outside_the_scale_stays_outside_by_as_much() {
    for (Key from : Keys.MINOR) {
      int tonic = 60 + from.tonic().chroma();
      Phrase blue =
          new Phrase(
              from,
              IntStream.range(0, 3)
                  .mapToObj(i -> Tone.of(Beats.of(i), Beats.ONE, from.spell(tonic + 5 + i)))
                  .toList());
      for (Key to : Keys.MINOR) {
        Phrase moved = blue.inKey(to);
        int fourth = moved.landing().pitch().midi();
        assertThat(Math.floorMod(fourth - to.tonic().chroma(), 12)).isEqualTo(5);
        assertThat(moved.tones())
            .as("4 b5 5 from %s to %s", from, to)
            .extracting(t -> t.pitch().midi())
            .containsExactly(fourth, fourth + 1, fourth + 2);
      }
    }
  }

  @Test
  void moved_exactly_every_note_moves_by_the_interval_and_back() {
    Phrase moved = ASKING.plus(Interval.FIFTH);
    assertThat(pitches(moved)).isEqualTo("E5 G5 A5 C6 D6 E6");
    assertThat(moved.key()).hasToString("A minor");
    assertThat(moved.plus(Interval.FIFTH.negated())).isEqualTo(ASKING);
    assertThat(ASKING.octaves(-1).octaves(1)).isEqualTo(ASKING);
  }

  @Test
  void displaced_it_keeps_its_rhythm_and_lands_elsewhere() {
    Phrase later = ASKING.shifted(Beats.of(1, 2));
    assertThat(onsets(later)).isEqualTo("-1 -1/2 0 1/2 2 2+1/2");
    assertThat(later.shifted(Beats.of(-1, 2))).isEqualTo(ASKING);
  }

  @Test
  void a_figure_of_three_eighths_comes_back_on_another_beat_each_time() {
    Phrase figure = phrase("D5i F5i G5i", Beats.ZERO);
    assertThat(onsets(figure.repeated(Beats.of(3, 2), 3)))
        .isEqualTo("0 1/2 1 1+1/2 2 2+1/2 3 3+1/2 4");
  }

  @Test
  void a_figure_longer_than_its_period_is_cut_where_it_comes_round() {
    Phrase figure = phrase("D5q F5q G5q", Beats.ZERO);
    Phrase round = figure.repeated(Beats.of(5, 2), 2);
    assertThat(onsets(round)).isEqualTo("0 1 2 2+1/2 3+1/2 4+1/2");
    assertThat(round.tones().get(2).length()).isEqualTo(Beats.of(1, 2));
  }

  @Test
  void another_ending_leaves_the_opening_as_it_was() {
    Phrase other =
        ASKING
            .before(Beats.of(3, 2))
            .then(List.of(Tone.of(Beats.of(3, 2), Beats.ONE, Pitch.parse("D5").orElseThrow())));
    assertThat(pitches(other)).isEqualTo("A4 C5 D5 F5 D5");
  }

  @Test
  void mirrored_it_turns_round_its_landing_and_twice_is_itself() {
    Phrase mirrored = ASKING.mirrored(PENTATONIC);
    assertThat(pitches(mirrored)).isEqualTo("C6 A5 G5 F5 D5 C5");
    assertThat(mirrored.mirrored(PENTATONIC)).isEqualTo(ASKING);
  }

  @Test
  void moved_along_the_scale_by_steps() {
    assertThat(pitches(ASKING.steps(PENTATONIC, 1))).isEqualTo("C5 D5 F5 G5 A5 C6");
    assertThat(ASKING.steps(PENTATONIC, 3).steps(PENTATONIC, -3)).isEqualTo(ASKING);
  }

  @Test
  void thinned_it_keeps_its_landing_and_its_outer_notes() {
    assertThat(onsets(ASKING.thinned(Beats.ONE))).isEqualTo("-1+1/2 -1 0 2");
  }

  @Test
  void thickened_long_notes_move_on_by_step_towards_the_next() {
    Phrase thick = ASKING.thickened(PENTATONIC);
    assertThat(pitches(thick)).isEqualTo("A4 C5 D5 F5 G5 G5 A5");
    assertThat(thick.length()).isEqualTo(ASKING.length());
  }
}

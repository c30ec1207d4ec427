package hingetone.review;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.hearing.Technique;
import hingetone.neck.Spot;
import hingetone.take.Handling;
import hingetone.take.PlacedNote;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** The keys are those of the take beside the tests: C minor in its first four bars. */
class PlayedNeckTest {
  private static PlacedNote note(double at, int pitch, Optional<Integer> string) {
    Handling handling = new Handling(Technique.PLAIN, false, string, List.of());
    return new PlacedNote(at, at + 0.4, pitch, pitch, 90, handling);
  }

  private static PlayedNeck neck(Optional<Integer> string, int... pitches) throws IOException {
    List<PlacedNote> notes = new ArrayList<>();
    for (int pitch : pitches) {
      notes.add(note(4 + notes.size() / 2.0, pitch, string));
    }
    Played played = Evening.played();
    Review review = Review.of(new Played(played.bars(), notes, played.tempos()), Evening.chart());
    return review.neck();
  }

  /** C minor pentatonic at the eighth fret, as every handbook has it (common practice). */
  @Test
  void the_scale_from_its_tonic_on_the_lowest_string_is_pattern_one_at_the_eighth_fret()
      throws IOException {
    PlayedNeck neck = neck(Optional.empty(), 48, 51, 53, 55, 58, 60, 63, 65, 67, 70, 72, 75);
    PhrasePlace place = neck.places().get(0).orElseThrow();
    assertThat(place.pattern()).contains(1);
    assertThat(place.low()).isEqualTo(8);
    assertThat(place.high()).isEqualTo(11);
    assertThat(place.end()).isEqualTo(PhrasePlace.End.WHOLE);
    assertThat(place.words()).isEqualTo("frets 8 to 11, pattern 1 from its 1");
  }

  @Test
  void a_string_that_is_known_is_kept_and_one_that_cannot_be_is_not() throws IOException {
    assertThat(neck(Optional.of(4), 60, 63, 65).spots())
        .containsExactly(
            Optional.of(new Spot(4, 10)),
            Optional.of(new Spot(4, 13)),
            Optional.of(new Spot(4, 15)));
    assertThat(neck(Optional.of(1), 45, 48, 50).spots())
        .allSatisfy(spot -> assertThat(spot.orElseThrow().string()).isGreaterThan(2));
    assertThat(neck(Optional.of(9), 60, 63, 65).spots()).allMatch(Optional::isPresent);
  }

  @Test
  void a_chord_of_six_notes_has_no_guessed_places() throws IOException {
    List<PlacedNote> chord = new ArrayList<>();
    for (int pitch : new int[] {48, 55, 60, 63, 67, 72}) {
      chord.add(note(4, pitch, Optional.empty()));
    }
    Played played = Evening.played();
    Review review = Review.of(new Played(played.bars(), chord, played.tempos()), Evening.chart());
    assertThat(review.neck().spots()).hasSize(6).allMatch(Optional::isEmpty);
    assertThat(review.neck().places()).containsOnly(Optional.empty());
  }
}

package hingetone.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hingetone.review.ReviewedPhrase.Role;
import hingetone.take.PlacedNote;
import hingetone.time.Position;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The take beside the tests, composed for them: what is in it is said in each test. */
class ReviewTest {
  @Test
  void a_statement_lands_on_the_bar_line_after_its_pickup_and_has_a_reply() throws Exception {
    List<ReviewedPhrase> phrases = Evening.review().phrases();
    ReviewedPhrase statement = phrases.get(0);
    assertThat(statement.role()).isEqualTo(Role.STATEMENT);
    assertThat(statement.start()).isEqualTo(Position.of(0, 4));
    assertThat(statement.landing().orElseThrow().at()).isEqualTo(Position.of(1, 1));
    assertThat(statement.landing().orElseThrow().pitch()).isEqualTo(72);
    assertThat(statement.landing().orElseThrow().offsetMs()).isCloseTo(10, within(1.0));
    assertThat(phrases.get(1).role()).isEqualTo(Role.REPLY);
    assertThat(phrases.get(1).repliesTo()).contains(1);
  }

  @Test
  void the_statement_comes_back_in_the_other_key_with_another_ending_and_at_home()
      throws Exception {
    List<ReviewedPhrase> phrases = Evening.review().phrases();
    ReviewedPhrase.Return away = phrases.get(3).returns().orElseThrow();
    assertThat(away.of()).isEqualTo(1);
    assertThat(away.semitones()).isEqualTo(3);
    assertThat(away.sameEnding()).isFalse();
  }

  @Test
  void a_run_by_single_frets_and_a_held_common_tone_are_told() throws Exception {
    List<CrossedLine> lines = Evening.review().lines();
    assertThat(lines).extracting(CrossedLine::atBar).containsExactly(5, 9);
    assertThat(lines.get(0).way().kind()).isEqualTo(LineWay.Kind.RUN);
    assertThat(lines.get(0).chromaticNotes()).isPositive();
    assertThat(lines.get(1).way().kind()).isEqualTo(LineWay.Kind.HOLD);
    assertThat(lines.get(1).holdsCommon()).isTrue();
  }

  @Test
  void the_shares_of_a_bar_add_up_to_one_and_a_landing_on_the_tonic_is_a_chord_note()
      throws Exception {
    List<BarShares> bars = Evening.review().bars();
    for (BarShares bar : bars) {
      double sum = bar.chordTone() + bar.scaleTone() + bar.colour() + bar.passing() + bar.outside();
      assertThat(sum).isCloseTo(1, within(1e-9));
    }
    assertThat(bars.get(0).bar().number()).isEqualTo(1);
    assertThat(bars.get(0).chordTone()).isGreaterThan(0.5);
  }

  @Test
  void the_story_says_it_in_sentences_bar_numbers_first() throws Exception {
    assertThat(Story.of(Evening.review()))
        .contains(
            "Bars 0 to 2: a statement that lands on C, the 1 of Cm7, on the bar line after two notes of"
                + " pickup, and stays open on F, the 4.",
            "Into bar 9, Eb minor to C minor: Eb held over the line, the b3 of C minor; both keys"
                + " have it, so it carries across.")
        .anyMatch(line -> line.contains("hrase 1 comes back in another key"))
        .anyMatch(line -> line.startsWith("Timing: on the beat on average"))
        .last()
        .asString()
        .startsWith("What worked: 4 of 4 landings are in place");
    Played nothing =
        new Played(Evening.review().played().bars(), List.of(), Evening.review().played().tempos());
    assertThat(Story.of(Review.of(nothing, Evening.chart())))
        .containsExactly("Nothing was played.");
  }

  @Test
  void a_late_but_even_hand_has_a_lag_and_hardly_a_spread() throws Exception {
    Played played = Evening.review().played();
    List<PlacedNote> late = new ArrayList<>();
    for (PlacedNote n : played.notes()) {
      late.add(new PlacedNote(n.at() + 0.06, n.end() + 0.06, n.struck(), n.reached(), 90));
    }
    Timing timing = Timing.of(new Played(played.bars(), late, played.tempos()));
    assertThat(timing.meanMs()).isCloseTo(30, within(2.0));
    assertThat(timing.spreadMs()).isLessThan(4);
  }
}

package hingetone.reviewing;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.backing.Backing;
import hingetone.groove.Grooves;
import hingetone.review.Evening;
import hingetone.score.Note;
import hingetone.score.Role;
import hingetone.score.Score;
import hingetone.time.Beats;
import java.io.IOException;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class PhraseScoreTest {
  @Test
  void a_phrase_is_heard_in_its_bars_slower_where_that_is_wanted() throws IOException {
    Score alone = new PhraseScore(Evening.review(), Optional.empty(), 50).of(1);
    assertThat(alone.parts()).hasSize(1);
    assertThat(alone.length()).isEqualTo(Beats.of(8));
    assertThat(alone.tempoMap().quartersPerMinute(Beats.ZERO)).isEqualTo(Beats.of(60));
    assertThat(alone.part(Role.LEAD).orElseThrow().notes())
        .extracting(Note::key)
        .containsExactly(65, 67, 72, 70, 67, 65);
    assertThat(alone.part(Role.LEAD).orElseThrow().notes().get(0).onset().toDouble())
        .isBetween(2.9, 3.1);
  }

  @Test
  void the_band_plays_what_it_plays_in_those_bars() throws IOException {
    Backing band = Backing.of(Evening.chart(), Grooves.builtIn());
    Score with = new PhraseScore(Evening.review(), Optional.of(band), 100).of(2);
    Score lap = band.lap(1);
    Beats start = Beats.of(4);
    int bass =
        (int)
            lap.part(Role.BASS).orElseThrow().notes().stream()
                .filter(n -> !n.onset().isBefore(start) && n.onset().isBefore(Beats.of(12)))
                .count();
    assertThat(with.length()).isEqualTo(Beats.of(8));
    assertThat(with.part(Role.BASS).orElseThrow().notes()).hasSize(bass).isNotEmpty();
    assertThat(PhraseScore.withoutLead(with).part(Role.LEAD)).isEmpty();
  }

  @Test
  void a_bent_note_is_struck_then_reached() throws IOException {
    Score bent = new PhraseScore(Evening.bent(), Optional.empty(), 100).of(1);
    assertThat(bent.part(Role.LEAD).orElseThrow().notes())
        .extracting(Note::key)
        .startsWith(65, 67, 69, 67);
  }
}

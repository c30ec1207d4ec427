package hingetone.text;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class SuggestionTest {
  private static final List<String> KNOWN =
      List.of("tempo", "title", "meter", "form", "capo", "m7");

  @Test
  void the_nearest_known_word_is_found() {
    assertThat(Suggestion.nearest("tmepo", KNOWN)).contains("tempo");
    assertThat(Suggestion.nearest("TITEL", KNOWN)).contains("title");
    assertThat(Suggestion.nearest("froms", KNOWN)).contains("form");
  }

  @Test
  void a_word_too_far_away_gets_no_suggestion() {
    assertThat(Suggestion.nearest("xylophone", KNOWN)).isEmpty();
    assertThat(Suggestion.nearest("", KNOWN)).isEmpty();
    assertThat(Suggestion.nearest("z9", KNOWN)).isEmpty();
  }

  @Test
  void a_swap_of_neighbours_is_one_edit() {
    assertThat(Suggestion.edits("tempo", "tmepo")).isEqualTo(1);
    assertThat(Suggestion.edits("abc", "abc")).isZero();
    assertThat(Suggestion.edits("", "abc")).isEqualTo(3);
    assertThat(Suggestion.edits("kitten", "sitting")).isEqualTo(3);
  }
}

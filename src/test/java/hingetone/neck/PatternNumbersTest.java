package hingetone.neck;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.theory.Scale;
import java.util.List;
import org.junit.jupiter.api.Test;

class PatternNumbersTest {
  private static List<String> names(String scale, PatternNumbers numbers) {
    Scale named = Scale.parse(scale).orElseThrow();
    return Shapes.of(Fretboard.of(Tuning.STANDARD, 0), named).stream()
        .limit(5)
        .map(numbers::name)
        .toList();
  }

  @Test
  void five_note_shapes_are_numbered_up_the_neck_from_the_one_on_the_tonic() {
    assertThat(names("E minor pentatonic", PatternNumbers.FROM_THE_TONIC))
        .containsExactly(
            "from its 1 (pattern 1)",
            "from its b3 (pattern 2)",
            "from its 4 (pattern 3)",
            "from its 5 (pattern 4)",
            "from its b7 (pattern 5)");
    assertThat(names("E dorian", PatternNumbers.FROM_THE_TONIC).get(0)).isEqualTo("from its 1");
  }

  @Test
  void a_teacher_who_begins_on_another_degree_has_it_as_number_one() {
    PatternNumbers others = PatternNumbers.parse(" b3  6").orElseThrow();
    assertThat(names("E minor pentatonic", others).subList(0, 3))
        .containsExactly(
            "from its 1 (pattern 5)", "from its b3 (pattern 1)", "from its 4 (pattern 2)");
    assertThat(names("G major pentatonic", others).get(0)).isEqualTo("from its 6 (pattern 1)");
    assertThat(PatternNumbers.parse("b3 x")).isEmpty();
    assertThat(PatternNumbers.parse("")).isEmpty();
  }
}

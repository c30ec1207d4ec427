package hingetone.backing;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.groove.ChordStyle;
import hingetone.groove.ChordStyle.Voicing;
import hingetone.groove.Groove;
import hingetone.groove.Grooves;
import hingetone.theory.Chord;
import hingetone.theory.Key;
import hingetone.theory.Keys;
import java.util.List;
import org.junit.jupiter.api.Test;

/** How chords are gripped; common practice of guitarists. */
class VoicingsTest {
  private static List<Groove> grooves(boolean power) {
    return Grooves.builtIn().all().stream()
        .filter(groove -> (groove.chords().voicing() == Voicing.POWER) == power)
        .toList();
  }

  @Test
  void a_power_chord_stands_on_its_root_and_lies_on_the_low_strings() {
    assertThat(grooves(true)).isNotEmpty();
    for (Groove groove : grooves(true)) {
      for (Key key : Keys.MINOR) {
        Chord chord = Chord.parse(key.tonic() + "5").orElseThrow();
        assertThat(new Voicings(groove.chords()).of(chord, key))
            .as("%s in %s", chord, groove.name())
            .allMatch(choice -> choice.keys().get(0) % 12 == chord.root().chroma())
            .anyMatch(choice -> choice.keys().get(0) < 52 && choice.keys().get(0) >= 40);
      }
    }
  }

  @Test
  void a_sharp_nine_is_gripped_root_third_seventh_ninth() {
    int gripped = 0;
    for (Groove groove : grooves(false)) {
      ChordStyle style = groove.chords();
      for (Key key : Keys.MINOR) {
        Chord chord = Chord.parse(key.tonic() + "7#9").orElseThrow();
        for (Voicings.Choice choice : new Voicings(style).of(chord, key)) {
          if (style.voices() >= 4) {
            int root = choice.keys().get(0);
            assertThat(choice.keys()).containsExactly(root, root + 4, root + 10, root + 15);
            assertThat(root % 12).isEqualTo(chord.root().chroma());
            gripped++;
          }
        }
      }
    }
    assertThat(gripped).isPositive();
  }
}

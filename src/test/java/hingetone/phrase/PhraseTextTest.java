package hingetone.phrase;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.text.reading.Reading;
import hingetone.text.reading.Source;
import hingetone.theory.Key;
import hingetone.time.Beats;
import hingetone.time.Meter;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

class PhraseTextTest {
  private static final Key KEY = Key.parse("G minor").orElseThrow();

  private static Phrase read(Key key, Meter meter, String notes) {
    String file =
        "statements:\n  it: {key: %s, meter: %s, notes: \"%s\"}\n".formatted(key, meter, notes);
    Reading<List<Statement>> read = PhraseReader.read(new Source("it", file));
    assertThat(read.problems()).as(notes).isEmpty();
    return read.value().orElseThrow().get(0).phrase();
  }

  @Test
  void every_statement_of_the_bank_is_read_again_as_it_was() {
    for (Statement statement : StatementBank.builtIn().read().value().orElseThrow()) {
      Phrase phrase = statement.phrase();
      String text = PhraseText.of(phrase, statement.meter()).orElseThrow();
      assertThat(read(phrase.key(), statement.meter(), text)).as(text).isEqualTo(phrase);
    }
  }

  /**
   * Onsets and lengths as recordings are written: sixteenths, triplets, thirty-seconds, sextuplets.
   */
  @Test
  void notes_of_any_written_length_are_read_again_as_they_were() {
    Random random = new Random(3);
    for (int round = 0; round < 300; round++) {
      List<Tone> tones = new ArrayList<>();
      Beats at = Beats.of(-random.nextInt(5), 2);
      boolean strikes = false;
      for (int i = 0; i < 10; i++) {
        int parts = new int[] {2, 4, 4, 3, 8, 6}[random.nextInt(6)];
        Beats length = Beats.of(1 + random.nextInt(parts + 2), parts);
        boolean landsHere = at.isZero();
        strikes |= landsHere;
        tones.add(Tone.of(at, length, KEY.spell(55 + random.nextInt(20))));
        at = at.plus(length).plus(Beats.of(random.nextInt(2), parts));
        at = !strikes && at.isPositive() ? Beats.ZERO : at;
        if (tones.get(i).end().isAfter(at)) {
          tones.set(i, tones.get(i).withLength(at.minus(tones.get(i).onset())));
        }
      }
      Phrase phrase = new Phrase(KEY, tones);
      Optional<String> text = PhraseText.of(phrase, Meter.COMMON);
      if (text.isPresent() && !phrase.end().isAfter(Beats.of(16))) {
        assertThat(read(KEY, Meter.COMMON, text.get())).as(text.get()).isEqualTo(phrase);
      }
    }
  }

  @Test
  void a_bent_note_is_the_one_it_reaches() {
    Tone bent = Tone.of(Beats.ZERO, Beats.ONE, KEY.spell(60)).withBend(KEY.spell(62));
    Tone next = Tone.of(Beats.ONE, Beats.of(2), KEY.spell(67));
    assertThat(PhraseText.of(new Phrase(KEY, List.of(bent, next)), Meter.COMMON))
        .contains("| D4q G4h");
  }
}

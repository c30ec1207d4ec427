package hingetone.notation;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.score.Note;
import hingetone.text.reading.Diagnostic;
import hingetone.text.reading.Reading;
import hingetone.text.reading.Source;
import hingetone.text.reading.Span;
import hingetone.theory.Pitch;
import hingetone.time.Beats;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;

class NoteTextTest {
  @Test
  void reads_notes_with_their_lengths() {
    assertThat(listing("A2q C3i D3i. E3h"))
        .isEqualTo("0:45 x1 | 1:48 x1/2 | 1+1/2:50 x3/4 | 2+1/4:52 x2");
    assertThat(read("A2q C3i D3i. E3h").length()).isEqualTo(Beats.of(17, 4));
  }

  @Test
  void bar_lines_and_rests_leave_the_place_of_what_follows() {
    assertThat(listing("Rh C4h | C4w Rq")).isEqualTo("2:60 x2 | 4:60 x4");
    assertThat(read("Rh C4h | C4w Rq").length()).isEqualTo(Beats.of(9));
    assertThat(read("| Rh C4h | C4w Rq |").barLines())
        .containsExactly(Beats.ZERO, Beats.of(4), Beats.of(9));
  }

  /** MIDI number = 12 (octave + 1) + semitones above C: middle C is C4, 60 (MusicXML 4.0). */
  @Test
  void every_spelling_in_every_octave_sounds_as_scientific_pitch_says() {
    for (String letter : List.of("C", "D", "E", "F", "G", "A", "B", "a", "b", "c")) {
      for (String accidental : List.of("", "#", "b", "##", "bb")) {
        for (int octave = 0; octave <= 9; octave++) {
          int expected = Pitch.parse(letter + accidental + octave).orElseThrow().midi();
          String text = letter + accidental + octave + "q";
          if (expected < 128) {
            assertThat(read(text).notes().get(0).key()).as(text).isEqualTo(expected);
          } else {
            assertThat(problem(text)).contains("too high");
          }
        }
      }
    }
  }

  @Test
  void every_length_is_exact() {
    String letters = "whqistxo";
    for (int i = 0; i < letters.length(); i++) {
      Beats plain = Beats.of(4, 1L << i);
      String note = "C4" + letters.charAt(i);
      assertThat(read(note).length()).isEqualTo(plain);
      assertThat(read(note + ".").length()).isEqualTo(plain.times(Beats.of(3, 2)));
      assertThat(read(note + "*").length()).isEqualTo(plain.times(Beats.of(2, 3)));
      for (int notes = 2; notes <= 15; notes++) {
        for (int time = 1; time < notes; time++) {
          String text = note + "*" + time + ":" + notes;
          assertThat(read(text).length()).as(text).isEqualTo(plain.times(Beats.of(time, notes)));
        }
      }
    }
    assertThat(read("C4qi").length()).isEqualTo(Beats.of(3, 2));
    assertThat(problem("C4h.i")).isEqualTo("\"C4h.i\" is no note");
    assertThat(read("C4qi*").length()).isEqualTo(Beats.ONE);
    assertThat(problem("C4h..")).isEqualTo("\"C4h..\" is no note");
  }

  @Test
  void a_thousand_triplets_add_up_exactly() {
    String text = "C4i* ".repeat(999);
    assertThat(read(text).length()).isEqualTo(Beats.of(333));
  }

  @Test
  void tied_notes_are_one_note() {
    assertThat(listing("C4q- C4-h- C4-i D4q")).isEqualTo("0:60 x3+1/2 | 3+1/2:62 x1");
  }

  @Test
  void notes_joined_by_a_plus_sound_together() {
    assertThat(listing("C4h+E4h+G4h C4q+E4q- E4-q"))
        .isEqualTo("0:60 x2 | 0:64 x2 | 0:67 x2 | 2:60 x1 | 2:64 x2");
  }

  @Test
  void loudness_is_kept_and_64_where_none_is_stated() {
    assertThat(read("C4qa110 C4q").notes()).extracting(Note::velocity).containsExactly(110, 64);
  }

  @Test
  void a_turkish_locale_changes_nothing() {
    Locale before = Locale.getDefault();
    try {
      Locale.setDefault(Locale.forLanguageTag("tr"));
      assertThat(listing("c4i d4i")).isEqualTo("0:60 x1/2 | 1/2:62 x1/2");
    } finally {
      Locale.setDefault(before);
    }
  }

  @Test
  void lines_of_a_block_are_read_one_after_the_other_and_keep_their_places() {
    Source source = new Source("x.yaml", "bass: |\r\n  A2h C3h\r\n  D3q Hq\r\n");
    Reading<NoteText> reading = NoteText.read(source, new Span(11, 18), new Span(22, 28));
    assertThat(reading.problems().get(0).report())
        .isEqualTo(
            """
            x.yaml:3:7: "Hq" is no note
              |
            3 |   D3q Hq
              |       ^^
            I was reading note text and expected a note such as A2q (letter, octave, length), F#3i. or Rh.
            """);
  }

  @Test
  void each_mistake_is_named() {
    assertThat(problem("Cq")).isEqualTo("\"Cq\" has no octave");
    assertThat(problem("C4")).isEqualTo("\"C4\" has no length");
    assertThat(problem("C4a90")).isEqualTo("\"C4a90\" has no length");
    assertThat(problem("C4q+")).isEqualTo("a note is missing beside the +");
    assertThat(problem("C4q+E4h")).isEqualTo("notes joined by + have different lengths");
    assertThat(problem("C4q- D4q")).isEqualTo("the tie is not taken up");
    assertThat(problem("C4-q")).isEqualTo("nothing is tied to this note");
    assertThat(problem("C4q*3:2")).isEqualTo("\"*3:2\" is no tuplet");
    assertThat(problem("C4q*0:0")).isEqualTo("\"*0:0\" is no tuplet");
    assertThat(problem("C4qa200")).isEqualTo("no such loudness: 200");
    assertThat(problem("Rqa20")).isEqualTo("a rest has no tie and no loudness");
    assertThat(problem("$A=B")).isEqualTo("\"$A=B\" cannot stand in note text");
    assertThat(problem("V1 C4q")).isEqualTo("\"V1\" is no note");
    assertThat(problem(" \t\r\n ")).isEqualTo("there are no notes here");
    assertThat(problem("")).isEqualTo("there are no notes here");
    assertThat(problem("C4ı")).isEqualTo("\"C4ı\" is no note");
  }

  @Test
  void nothing_written_throws_or_hangs() {
    long seed = 20;
    Random random = new Random(seed);
    String signs = "ABCDEFGRabcr#b0123456789whqistxo.*:-+_|$[]()=/{}&@ \r\n\tVITLKé𝄞ı";
    for (int i = 0; i < 3000; i++) {
      int length = random.nextInt(24);
      StringBuilder text = new StringBuilder();
      for (int j = 0; j < length; j++) {
        text.append(signs.charAt(random.nextInt(signs.length())));
      }
      Assertions.assertTimeoutPreemptively(
          Duration.ofSeconds(20),
          () -> NoteText.read(new Source("fuzz", text.toString()), new Span(0, text.length())),
          "seed " + seed + ": " + text);
    }
  }

  private static NoteText read(String text) {
    Reading<NoteText> reading = NoteText.read(new Source("text", text), new Span(0, text.length()));
    assertThat(reading.problems()).extracting(Diagnostic::report).isEmpty();
    return reading.value().orElseThrow();
  }

  private static String problem(String text) {
    Reading<NoteText> reading = NoteText.read(new Source("text", text), new Span(0, text.length()));
    assertThat(reading.problems()).as(text).isNotEmpty();
    return reading.problems().get(0).message();
  }

  private static String listing(String text) {
    return read(text).notes().stream()
        .map(n -> n.onset() + ":" + n.key() + " x" + n.length())
        .collect(Collectors.joining(" | "));
  }
}

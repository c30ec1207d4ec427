package hingetone.theory;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ChordTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = ':',
      textBlock =
          """
          C            : C E G
          Dm7          : D F A C
          Cmaj7        : C E G B
          CM7          : C E G B
          Cm7          : C Eb G Bb
          D7#9         : D F# A C E#
          F#m7b5       : F# A C E
          Bbdim7       : Bb Db Fb Abb
          G13          : G B D F A E
          C7b5#9       : C E Gb Bb D#
          C7alt        : C E G# Bb D#
          D9sus4       : D G A C E
          C6/9         : C E G A D
          Ebm(maj7)    : Eb Gb Bb D
          A5           : A E
          Cb5          : Cb Gb
          C(b5)        : C E Gb
          C+           : C E G#
          Dm7#5        : D F Bb C
          F#7no3       : F# C# E
          """)
  void a_symbol_gives_its_notes(String symbol, String notes) {
    assertThat(chord(symbol.strip()).notes()).isEqualTo(Spellings.names(notes.strip()));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ':',
      quoteCharacter = '"',
      textBlock =
          """
          Dmin7 Dmi7 D-7 DMin7 D−7 Dm⁷                         : Dm7
          CΔ CΔ7 C∆ C△7 Cmaj7 CMaj7 CM7 Cma7 C^7 C7M            : Cmaj7
          C° Co Cdim                                            : Cdim
          C°7 Cº7 Co7 Cdim7                                     : Cdim7
          Cø Cø7 CØ Cm7b5 C-7b5 Cm7-5 Cmin7(b5) Cm7♭5            : Cm7b5
          C+ Caug C(#5) C(♯5) Caug5 CM#5                        : Caug
          C+7 Caug7 C7+ C7+5 C7#5 C7aug C7(#5)                  : C7#5
          C-Δ7 CmM7 CminMaj7 Cm(maj7) Cm/maj7 C-(Δ7) CmΔ         : CmMaj7
          C7(b9,#11) C7b9#11 C7#11b9 C7(♭9)(♯11) C7-9+11 C7(#11b9) : C7b9#11
          C7sus C7sus4 C7Sus4 C7(sus4)                          : C7sus4
          C7b9sus C7sus4b9 C7susb9 C7(b9)sus4                   : C7sus4b9
          Cadd9 Cadd2 C2 C(add9) C(9) CAdd9                     : Cadd9
          C6/9 C69 CM69 CΔ6/9                                   : C6/9
          C7alt Calt Calt7                                      : C7alt
          C9+ C9#5 Caug9 C+9                                    : C9#5
          F♯m7 F#min7                                           : F#m7
          B♭13 Bb13                                             : Bb13
          C7(13) C7add13 C7add6                                 : C7add13
          Gxm7 G##m7                                            : G##m7
          """)
  void spellings_of_one_chord_are_the_same_chord(String spellings, String symbol) {
    for (String spelling : spellings.strip().split(" +")) {
      assertThat(Chord.parse(spelling)).as(spelling).contains(chord(symbol.strip()));
    }
    assertThat(chord(symbol.strip())).hasToString(symbol.strip());
  }

  @ParameterizedTest
  @CsvSource({
    "D/F#, D, F#",
    "C6/9, C6/9, C",
    "C6/9/E, C6/9, E",
    "Dm7/C, Dm7, C",
    "Cm/maj7/Eb, CmMaj7, Eb",
    "C/Bb, C, Bb",
    "C7(b9#11)/Bb, C7b9#11, Bb",
    "F♯m/C♯, F#m, C#",
    "Cm6/9/A, Cm6/9, A"
  })
  void the_note_after_a_slash_is_the_bass(String symbol, String upper, String lowest) {
    Chord chord = chord(symbol);

    assertThat(new Chord(chord.root(), chord.quality(), Optional.empty())).hasToString(upper);
    assertThat(chord.lowest()).hasToString(lowest);
    assertThat(chord.notes()).isEqualTo(chord(upper).notes());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        " ",
        "a",
        "am7",
        "bb",
        "H7",
        "N.C.",
        "%",
        "/",
        "C/",
        "C/H",
        "C/e",
        "C/9",
        "C/E/G",
        "C//E",
        "C###",
        "Cbbb",
        "Cmj7",
        "C7#",
        "C7b",
        "C7()",
        "C7(b9",
        "C7b9)",
        "C7(b9,)",
        "C7(,b9)",
        "C7((b9))",
        "C7,b9",
        "C7b9b9",
        "C7b5(b5)",
        "C5sus4",
        "C9(9)",
        "C no3 no3",
        "Cmaj7 ",
        " Cmaj7",
        "C maj7",
        "Cmmaj",
        "C10",
        "C8",
        "C4",
        "Cm3",
        "C7b10",
        "C😀",
        "Ｃ7",
        "C\u0000",
        "C\n",
        "C7/🎸",
        "Δ"
      })
  void anything_else_is_no_chord(String text) {
    assertThat(Chord.parse(text)).isEmpty();
    assertThat(Chord.fault(text)).isPresent();
  }

  /** Part, its start and end, and where reading got stuck. */
  @ParameterizedTest
  @CsvSource({
    "Dmj7, QUALITY 1 4 2", "am7, ROOT 0 1 0", "H7, ROOT 0 1 0", "'', ROOT 0 0 0",
    "C7#9x, QUALITY 1 5 4", "Cmaj7/H, BASS 6 7 6", "C/e, BASS 2 3 2", "C/, BASS 2 2 2",
    "C/E7, BASS 2 4 3", "Cxyz/E, QUALITY 2 4 2", "C7(b9, QUALITY 1 5 5", "C###, QUALITY 3 4 3",
    "Cmj7/E, QUALITY 1 4 2", "C7b9b9, QUALITY 1 6 6", "C5sus4, QUALITY 1 6 6"
  })
  void a_fault_says_which_part_was_not_understood(String symbol, String fault) {
    Chord.Fault found = Chord.fault(symbol).orElseThrow();

    assertThat(found.part() + " " + found.start() + " " + found.end() + " " + found.stuckAt())
        .isEqualTo(fault);
  }

  /** All rows with up to two alterations: what reads, prints, and reads back as the same. */
  @Test
  void every_quality_reads_back_as_it_prints() {
    Set<String> suffixes = new HashSet<>();
    for (ChordQuality quality : ChordQuality.ALL) {
      assertThat(suffixes.add(quality.suffix())).as(quality.suffix()).isTrue();
      for (String suffix : alteredTwice(quality.suffix())) {
        Optional<ChordQuality> read = ChordQuality.parse(suffix);
        read.ifPresent(q -> assertThat(ChordQuality.parse(q.suffix())).as(suffix).contains(q));
      }
    }
  }

  @Test
  void alterations_are_read_in_any_order_and_make_every_combination() {
    for (String base : List.of("7", "9", "13", "m7", "maj7", "m9", "maj9")) {
      List<String> alterations = List.of("b5", "#5", "b9", "#9", "#11", "b13");
      for (int chosen = 0; chosen < 64; chosen++) {
        List<String> names = new ArrayList<>();
        for (int i = 0; i < 6; i++) {
          if ((chosen & 1 << i) != 0) {
            names.add(alterations.get(i));
          }
        }
        ChordQuality forward = ChordQuality.parse(base + String.join("", names)).orElseThrow();
        Collections.reverse(names);
        String reversed = names.isEmpty() ? base : base + "(" + String.join(",", names) + ")";

        assertThat(ChordQuality.parse(reversed)).as(reversed).contains(forward);
      }
    }
  }

  @Test
  void no_spelling_means_two_qualities_and_no_alias_hides_an_alteration() {
    Set<String> seen = new HashSet<>();
    for (ChordQuality quality : ChordQuality.ALL) {
      for (String name : names(quality).toList()) {
        for (String spelling : ChordSpelling.spellings(name)) {
          assertThat(seen.add(spelling)).as(spelling).isTrue();
          assertThat(ChordQuality.parse(spelling)).as(spelling).contains(quality);
        }
        for (Alteration alteration : Alteration.ALL) {
          assertThat(ChordQuality.parse(name + alteration.name()))
              .as(name + alteration.name())
              .isEqualTo(ChordQuality.parse(quality.suffix() + alteration.name()));
        }
      }
    }
  }

  @Test
  void every_chord_starts_at_its_root_and_rises() {
    for (ChordQuality quality : ChordQuality.ALL) {
      assertThat(quality.intervals().get(0)).isEqualTo(Interval.UNISON);
      assertThat(quality.intervals().stream().map(Interval::semitones))
          .as(quality.suffix())
          .isSorted()
          .doesNotHaveDuplicates();
      for (Interval interval : quality.intervals()) {
        int chroma = Math.floorMod(interval.semitones(), 12);
        assertThat(quality.has(chroma)).isTrue();
        assertThat(new Chord(Spellings.name("C"), quality, Optional.empty()).degreeOf(chroma))
            .contains(interval);
      }
    }
  }

  @Test
  void symbols_on_every_root_and_bass_read_back_as_they_print() {
    for (NoteName root : Spellings.NAMES) {
      for (ChordQuality quality : ChordQuality.ALL) {
        Chord chord = new Chord(root, quality, Optional.empty());
        assertThat(Chord.parse(chord.symbol())).as(chord.symbol()).contains(chord);
        assertThat(Chord.fault(chord.symbol())).isEmpty();
        for (NoteName bass : Spellings.NAMES) {
          Chord slash = new Chord(root, quality, Optional.of(bass));
          assertThat(Chord.parse(slash.symbol())).as(slash.symbol()).contains(slash);
        }
      }
    }
  }

  @Test
  void moving_a_chord_moves_each_of_its_notes() {
    for (Interval interval : Spellings.INTERVALS) {
      for (ChordQuality quality : ChordQuality.ALL) {
        Chord chord = new Chord(Spellings.name("Eb"), quality, Optional.of(Spellings.name("G")));
        Chord moved = chord.plus(interval);

        assertThat(moved.notes())
            .isEqualTo(chord.notes().stream().map(n -> n.plus(interval)).toList());
        assertThat(moved.lowest()).isEqualTo(chord.lowest().plus(interval));
        assertThat(moved.plus(interval.negated())).isEqualTo(chord);
      }
    }
  }

  @Test
  void every_suggested_suffix_is_read() {
    assertThat(ChordQuality.suffixes()).doesNotContain("").doesNotHaveDuplicates();
    for (String suffix : ChordQuality.suffixes()) {
      assertThat(ChordQuality.parse(suffix)).as(suffix).isPresent();
    }
  }

  @Test
  void any_text_is_a_chord_or_has_a_fault_within_it() {
    long seed = 7;
    Random random = new Random(seed);
    String letters = "ABCDEFGHabcdefg#b♯♭𝄪x/()+-,°øΔ^0123456789majinsudo \t";
    for (int i = 0; i < 100_000; i++) {
      StringBuilder text = new StringBuilder();
      for (int length = random.nextInt(12); length > 0; length--) {
        text.append(letters.charAt(random.nextInt(letters.length())));
      }
      String symbol = text.toString();
      Optional<Chord> chord = Chord.parse(symbol);
      Optional<Chord.Fault> fault = Chord.fault(symbol);

      assertThat(fault.isPresent()).as("seed %d: %s", seed, symbol).isEqualTo(chord.isEmpty());
      fault.ifPresent(
          f ->
              assertThat(List.of(0, f.start(), f.stuckAt(), f.end(), symbol.length()))
                  .as("seed %d: %s", seed, symbol)
                  .isSorted());
      chord.ifPresent(c -> assertThat(Chord.parse(c.symbol())).as(symbol).contains(c));
    }
  }

  @Test
  void a_text_without_end_is_read_to_its_first_mistake() {
    for (String endless :
        List.of("b9", "(", "add9", "/", "(b9)", "m", "7", "/E", "#", "maj7#11b5")) {
      assertThat(Chord.parse("C7" + endless.repeat(200_000))).isEmpty();
      assertThat(Chord.fault("C7" + endless.repeat(200_000))).isPresent();
    }
  }

  private static List<String> alteredTwice(String suffix) {
    List<String> all = new ArrayList<>(List.of(suffix));
    for (Alteration first : Alteration.ALL) {
      all.add(suffix + first.name());
      all.add(suffix + "(" + first.name() + ")");
      for (Alteration second : Alteration.ALL) {
        all.add(suffix + "(" + first.name() + "," + second.name() + ")");
      }
    }
    return all;
  }

  private static Stream<String> names(ChordQuality quality) {
    return Stream.concat(Stream.of(quality.suffix()), quality.aliases().stream());
  }

  private static Chord chord(String symbol) {
    return Chord.parse(symbol).orElseThrow(() -> new AssertionError(symbol + " is not read"));
  }
}

package hingetone.ground;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.time.Beats;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

class ScaleChoiceTest {
  /**
   * What harmony handbooks give for a chord in its place; common practice, no single source: key |
   * bars | bar | a scale whose notes must be among the first three.
   */
  private static final String HANDBOOK =
      """
      A minor | Am7 | 1 | A minor pentatonic
      A minor | Am7 | Dm7 | 2 | A minor
      A minor | Am | Dm | E7 | Am | 3 | A harmonic minor
      A minor | Am7 | D7 | 2 | D mixolydian
      A minor | Bm7b5 | E7 | Am6 | 1 | B locrian
      A minor | Bm7b5 | E7 | Am6 | 3 | A melodic minor
      C major | Cmaj7 | Am7 | Dm7 | G7 | 1 | C major
      C major | Cmaj7 | Am7 | Dm7 | G7 | 3 | D dorian
      C major | Cmaj7 | Am7 | Dm7 | G7 | 4 | G mixolydian
      C major | Cmaj7 | Dm7 | Fmaj7 | 1 | C major pentatonic
      C major | C | A7 | Dm | G7 | 2 | A mixolydian b6
      C major | C | E7 | Am | G7 | 2 | E phrygian dominant
      C major | C | D7 | G7 | C | 2 | D mixolydian
      C major | C | Bb7 | C | C | 2 | Bb lydian dominant
      C major | C | Fm | C | G | 2 | F melodic minor
      C major | Cmaj7 | Db7 | Cmaj7 | 2 | Db lydian dominant
      C major | Dm7b5 | G7b9 | Cmaj7 | 2 | G phrygian dominant
      C major | C | Ab | Bb | C | 2 | Ab lydian
      C major | Dm7 | G7#5 | Cmaj7 | 2 | G whole tone
      C major | C | Cdim7 | Dm7 | 2 | C diminished
      D mixolydian | D | C | G | 1 | D mixolydian
      E phrygian | Em | F | 1 | E phrygian
      D dorian | Dm7 | G7 | 1 | D dorian
      C major | C | Fm | C | G | 2 | F dorian
      Db major | Dbmaj7 | Gbmaj7 | Gbm6 | Ab7 | 3 | Gb melodic minor
      Gb major | Gbmaj7 | Bb7 | Ebm7 | Db7 | 2 | Bb phrygian dominant
      G blues | G7 | C7 | G7 | D7 | 2 | C mixolydian
      G blues | G7 | C7 | G7 | D7 | 2 | G minor pentatonic
      G blues | G7 | C7 | C#dim7 | G7 | 3 | G blues
      F major | F | C7b9 | F6 | 2 | C half-whole diminished
      F major | F | C7b9 | F6 | 2 | F harmonic minor
      E minor | Em | B7b13 | Em | 2 | B altered
      Ab major | Abmaj7 | Dbm7 | Gb7 | Abmaj7 | 3 | Gb lydian dominant
      """;

  /** The one that a teacher names first, common practice as above: key | bars | bar | scale. */
  private static final String FIRST =
      """
      C major | Cmaj7 | Fmaj7 | G7 | 1 | C major
      C major | C | F | G | 1 | C major pentatonic
      C major | C | Ab | Bb | C | 2 | C minor
      C major | C | Fm | C | G | 2 | C minor
      C major | C | Bb | F | C | 2 | C mixolydian
      C major | C | F#m7b5 | B7 | Em7 | 2 | E minor
      C major | C | F#m7b5 | B7 | Em7 | 3 | E harmonic minor
      C major | Dm7 | G7alt | Cmaj7 | 2 | G altered
      C major | C | Ebdim7 | Dm7 | G7 | 2 | C diminished
      Db major | Dbmaj7 | Ebm7 | Ab7 | 1 | Db major
      Db major | Dbmaj7 | Ebm7 | Ab7 | 3 | Db major
      Gb major | Gbmaj7 | Cbmaj7 | Db7 | 2 | Gb major
      D major | D | Bm | F#m | 2 | D major pentatonic
      E minor | Em | Am | B | Em | 3 | E harmonic minor
      C minor | Cm | Fm | G | Ab | 3 | C harmonic minor
      C minor | Cm | F7 | Cm | 2 | C dorian
      C minor | Cm | Db | Cm | 2 | C phrygian
      G blues | G7 | E7 | Am7 | D7 | 2 | A harmonic minor
      F lydian | Fmaj7 | G/F | 1 | F lydian
      E dorian | Em7 | A7 | 2 | E dorian
      A minor | Am | A+ | Dm | E+ | 2 | D melodic minor
      Ab major | Abmaj7 | Dbm7 | Gb7 | Abmaj7 | 3 | Gb lydian dominant
      """;

  @Test
  void the_first_scale_is_the_one_that_a_teacher_names() {
    for (String row : FIRST.lines().toList()) {
      String[] cells = row.split(" \\| ");
      int bar = Integer.parseInt(cells[cells.length - 2]);
      String bars = String.join(" | ", List.of(cells).subList(1, cells.length - 2));
      List<String> names = Charts.names(Charts.one(cells[0], bars), bar);
      assertThat(names.get(0)).as(row + " gave " + names).isEqualTo(cells[cells.length - 1]);
    }
  }

  @Test
  void a_scale_on_another_tonic_is_named_from_the_chords_root_as_well() {
    Ground ground = Charts.one("C major", "C | Fm | C | G");
    assertThat(ground.scalesAt(2, Beats.ONE).get(0).why())
        .startsWith("On the tonic, the notes of F dorian: has F Ab C of Fm");
  }

  @Test
  void the_handbooks_scale_is_among_the_first_three() {
    for (String row : HANDBOOK.lines().toList()) {
      String[] cells = row.split(" \\| ");
      int bar = Integer.parseInt(cells[cells.length - 2]);
      String bars = String.join(" | ", List.of(cells).subList(1, cells.length - 2));
      Ground ground = Charts.one(cells[0], bars);
      Set<Integer> wanted = notes(cells[cells.length - 1]);
      assertThat(
              ground.scalesAt(bar, Beats.ONE).stream()
                  .limit(3)
                  .map(s -> Home.chromas(s.scale().notes().stream())))
          .as(row + " gave " + Charts.names(ground, bar))
          .contains(wanted);
    }
  }

  private static Set<Integer> notes(String scale) {
    return Home.chromas(hingetone.theory.Scale.parse(scale).orElseThrow().notes().stream());
  }

  @Test
  void over_a_riff_on_a_minor_or_dominant_tonic_the_minor_pentatonic_comes_first() {
    // Common practice; adding the major sixth gives the Dorian colour.
    for (String chord : List.of("Am7", "Am", "A5", "A7", "A7#9")) {
      List<String> names = Charts.names(Charts.one("A minor", chord + " | " + chord), 1);
      assertThat(names.get(0)).as(chord).isEqualTo("A minor pentatonic");
      assertThat(names.stream().map(ScaleChoiceTest::notes))
          .as(chord)
          .anyMatch(notes -> notes.contains(6) && notes.contains(9));
    }
    assertThat(Charts.names(Charts.one("A minor", "Am7 | Am7"), 1)).contains("A dorian");
  }

  @Test
  void over_the_sharp_nine_dominant_of_a_minor_key_both_minor_pentatonics_are_offered() {
    // Common practice. In the key itself, and at the end of a section that leads to it.
    assertThat(Charts.names(Charts.one("A minor", "Am7 | Am7 | Am7 | E7#9"), 4).subList(0, 2))
        .containsExactlyInAnyOrder("A minor pentatonic", "E minor pentatonic");
    Ground leading =
        Charts.two(
            "B minor",
            "Bm7 | E7 | Bm7 | E7#9",
            "A minor",
            "Am7 | Am7",
            hingetone.neck.Fretboard.of(hingetone.neck.Tuning.STANDARD, 0));
    assertThat(Charts.names(leading, 4).subList(0, 3))
        .contains("A minor pentatonic", "E minor pentatonic");
  }

  @Test
  void sevenths_on_the_first_and_fourth_degree_are_a_blues_also_where_the_key_says_major() {
    Ground blues = Charts.one("G major", "G7 | C7 | G7 | D7");
    assertThat(Charts.names(blues, 1)).startsWith("G minor pentatonic");
    Ground leaving = Charts.one("G major", "G7 | C | G | D7");
    assertThat(Charts.names(leaving, 1)).startsWith("C major");
  }

  @Test
  void a_blues_begins_on_the_minor_pentatonic_and_offers_the_mixolydian() {
    Ground blues = Charts.one("A blues", "A7 | D7 | A7 | E7");
    assertThat(Charts.names(blues, 1).subList(0, 2))
        .containsExactly("A minor pentatonic", "A mixolydian");
    assertThat(Charts.names(blues, 4).subList(0, 3)).contains("A minor pentatonic");
  }

  @Test
  void every_fit_lies_between_0_and_1_ranked_with_a_reason() {
    for (String chord : List.of("C", "F#m7b5", "Bb7#9", "Ebmaj7", "G7alt", "Abdim7", "N.C.")) {
      List<FittingScale> scales = Charts.one("C minor", chord + " | Cm7").scalesAt(1, Beats.ONE);
      assertThat(scales).as(chord).isNotEmpty();
      assertThat(scales)
          .extracting(FittingScale::fit)
          .isSortedAccordingTo((a, b) -> b.compareTo(a));
      assertThat(scales).allMatch(s -> s.fit() >= 0 && s.fit() <= 1 && !s.why().isBlank());
    }
  }

  @Test
  void the_reason_names_chord_tones_colours_and_clashes() {
    Ground ground = Charts.one("A minor", "Am7 | Am7");
    assertThat(ground.scalesAt(1, Beats.ONE).get(0).why())
        .isEqualTo("On the tonic: has A C E G of Am7, D (11) is colour.");
    assertThat(
            ground.scalesAt(1, Beats.ONE).stream()
                .filter(s -> s.scale().toString().equals("A minor"))
                .findFirst()
                .orElseThrow()
                .why())
        .isEqualTo(
            "On the tonic: has A C E G of Am7, B (9) D (11) are colour, F (b13) clashes: pass"
                + " through it.");
  }

  @Test
  void the_parts_of_a_fit_and_of_a_hold_add_up_to_one() {
    assertThat(Weights.CHORD + Weights.CLASH + Weights.KEY + Weights.TONIC + Weights.EASE)
        .isCloseTo(1, org.assertj.core.api.Assertions.within(1e-9));
    assertThat(
            Weights.DEGREE_BEFORE
                + Weights.DEGREE_AFTER
                + Weights.CHORD_BEFORE
                + Weights.CHORD_AFTER)
        .isCloseTo(1, org.assertj.core.api.Assertions.within(1e-9));
  }
}

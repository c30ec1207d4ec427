package hingetone.ground.scales;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.chart.Form;
import hingetone.ground.Ground;
import hingetone.ground.GroundCharts;
import hingetone.theory.Chord;
import hingetone.theory.Interval;
import hingetone.theory.Key;
import hingetone.theory.Keys;
import hingetone.theory.NoteName;
import hingetone.theory.Scale;
import hingetone.theory.ScaleType;
import hingetone.time.Beats;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class ScaleChoiceTest {
  /**
   * What harmony handbooks give for a chord in its place, in whatever key; common practice, no
   * single source: key | bars | bar | a scale whose notes must be among the first three.
   */
  private static final String HANDBOOK =
      """
      C minor | Cm7 | 1 | C minor pentatonic
      C minor | Cm7 | Fm7 | 2 | C minor
      C minor | Cm | Fm | G7 | Cm | 3 | C harmonic minor
      C minor | Cm7 | F7 | 2 | F mixolydian
      C minor | Dm7b5 | G7 | Cm6 | 1 | D locrian
      C minor | Dm7b5 | G7 | Cm6 | 3 | C melodic minor
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
      C major | C | Ab | Bb | C | 2 | Ab lydian
      C major | C | Fm | C | G | 2 | F dorian
      C major | C | Bb | F | C | 2 | Bb lydian
      C major | C | F#m7b5 | B7 | Em7 | 2 | F# locrian
      C major | C | F#m7b5 | B7 | Em7 | 3 | B phrygian dominant
      C major | Dm7 | G7alt | Cmaj7 | 2 | G altered
      C major | C | Ebdim7 | Dm7 | G7 | 2 | Eb diminished
      Db major | Dbmaj7 | Ebm7 | Ab7 | 1 | Db major
      Db major | Dbmaj7 | Ebm7 | Ab7 | 3 | Db major
      Gb major | Gbmaj7 | Cbmaj7 | Db7 | 2 | Gb major
      D major | D | Bm | F#m | 2 | D major pentatonic
      E minor | Em | Am | B | Em | 3 | B phrygian dominant
      C minor | Cm | Fm | G | Ab | 3 | G phrygian dominant
      C minor | Cm | F7 | Cm | 2 | F mixolydian
      C minor | Cm | Db | Cm | 2 | Db lydian
      G blues | G7 | E7 | Am7 | D7 | 2 | E phrygian dominant
      F lydian | Fmaj7 | G/F | 1 | F lydian
      E dorian | Em7 | A7 | 2 | E dorian
      C minor | Cm | C+ | Fm | G+ | 2 | C mixolydian b6
      Ab major | Abmaj7 | Dbm7 | Gb7 | Abmaj7 | 3 | Gb lydian dominant
      """;

  /**
   * A row of a table moved up by so many semitones.
   *
   * @param offered what is offered over the chord it asks about
   * @param scale the answer
   * @param text the row, and the key it was moved to
   */
  private record Row(List<FittingScale> offered, Scale scale, String text) {
    static Row of(String line, int semitones) {
      String[] cells = line.split(" \\| ");
      Key written = Key.parse(cells[0]).orElseThrow();
      Key key = written.shifted(semitones);
      Interval up = written.tonic().to(key.tonic());
      String bars =
          Stream.of(cells)
              .limit(cells.length - 2L)
              .skip(1)
              .map(chord -> Chord.parse(chord).orElseThrow().plus(up).toString())
              .collect(Collectors.joining(" | "));
      Scale scale = Scale.parse(cells[cells.length - 1]).orElseThrow().plus(up);
      int bar = Integer.parseInt(cells[cells.length - 2]);
      return new Row(
          ScaleChoiceTest.offered(GroundCharts.form(key.toString(), bars), bar),
          scale,
          key + ", " + line);
    }

    static List<Row> inEveryKey(String table) {
      return table
          .lines()
          .flatMap(line -> IntStream.range(0, 12).mapToObj(semitones -> of(line, semitones)))
          .toList();
    }
  }

  /** What is offered over the chord on a bar line. */
  private static List<FittingScale> offered(Form form, int bar) {
    return ScaleChoice.rank(ChordContexts.of(form).get(bar - 1).get(0));
  }

  @Test
  void the_first_scale_is_the_one_that_a_teacher_names() {
    for (Row row : Row.inEveryKey(FIRST)) {
      assertThat(row.offered.get(0).scale()).as(row.text).isEqualTo(row.scale);
    }
  }

  @Test
  void a_scale_named_from_the_chords_root_has_its_parents_name_as_well() {
    Ground ground = GroundCharts.one("C major", "C | Fm | C | G");
    assertThat(ground.scalesAt(2, Beats.ONE).get(0).why())
        .startsWith("On the chord's root, the notes of C minor: has F Ab C of Fm");
  }

  @Test
  void the_handbooks_scale_is_among_the_first_three() {
    for (Row row : Row.inEveryKey(HANDBOOK)) {
      assertThat(
              row.offered.stream()
                  .limit(3)
                  .map(s -> ImpliedKey.chromas(s.scale().notes().stream())))
          .as("%s gave %s", row.text, row.offered)
          .contains(ImpliedKey.chromas(row.scale.notes().stream()));
    }
  }

  @Test
  void over_a_riff_on_a_minor_or_dominant_tonic_the_minor_pentatonic_comes_first() {
    // Common practice; adding the major sixth gives the Dorian colour.
    for (Key key : Keys.MINOR) {
      for (String quality : List.of("m7", "m", "5", "7", "7#9")) {
        String chord = key.tonic() + quality;
        Ground ground = GroundCharts.one(key.toString(), chord + " | " + chord);
        assertThat(GroundCharts.names(ground, 1))
            .as(chord)
            .startsWith(key.tonic() + " minor pentatonic");
        assertThat(ground.scalesAt(1, Beats.ONE))
            .as("%s has its fourth and its major sixth", chord)
            .anyMatch(s -> has(s.scale(), key, "4") && has(s.scale(), key, "6"));
      }
      String riff = key.tonic() + "m7 | " + key.tonic() + "m7";
      assertThat(GroundCharts.names(GroundCharts.one(key.toString(), riff), 1))
          .contains(key.tonic() + " dorian");
    }
  }

  private static boolean has(Scale scale, Key key, String degree) {
    return scale.contains(NoteName.parse(Keys.degree(key, degree)).orElseThrow());
  }

  @Test
  void over_the_sharp_nine_dominant_of_a_minor_key_both_minor_pentatonics_are_offered() {
    // Common practice. In the key itself, and at the end of a section in any other key.
    for (Key key : Keys.MINOR) {
      String tonic = key.tonic() + "m7";
      String dominant = Keys.chord(key, "5", "7#9");
      String[] both = {
        key.tonic() + " minor pentatonic", Keys.degree(key, "5") + " minor pentatonic"
      };
      Ground own =
          GroundCharts.one(key.toString(), String.join(" | ", tonic, tonic, tonic, dominant));
      assertThat(GroundCharts.names(own, 4).subList(0, 2)).containsExactlyInAnyOrder(both);
      for (Key before : Keys.MINOR) {
        String first = before.tonic() + "m7";
        String bars = String.join(" | ", first, Keys.chord(before, "4", "7"), first, dominant);
        String sections =
            GroundCharts.section("one", before.toString(), bars)
                + GroundCharts.section("two", key.toString(), tonic);
        if (!before.equals(key)) {
          assertThat(offered(GroundCharts.form(sections), 4).stream().limit(5))
              .as("%s to %s", before, key)
              .anyMatch(s -> sounds(s.scale(), both[0]))
              .anyMatch(s -> sounds(s.scale(), both[1]));
        }
      }
    }
  }

  @Test
  void over_a_riff_the_homes_minor_pentatonic_goes_on_through_the_dominant() {
    // Common practice in rock and blues: the tonic's pentatonic stays, the dominant's own beside
    // it.
    for (Key key : Keys.MINOR) {
      for (String quality : List.of("7", "7b9", "7#9", "7sus4", "5")) {
        String tonic = key.tonic() + "5";
        String dominant = Keys.chord(key, "5", quality);
        String bars = String.join(" | ", tonic, tonic, tonic, dominant);
        List<String> names = GroundCharts.names(GroundCharts.one(key.toString(), bars), 4);
        String home = key.tonic() + " minor pentatonic";
        String own = Keys.degree(key, "5") + " minor pentatonic";
        assertThat(names.subList(0, 2)).as("%s %s", key, dominant).contains(home);
        assertThat(names.subList(0, 4)).as("%s %s", key, dominant).contains(own);
        String plain = String.join(" | ", key.tonic() + "m7", dominant, key.tonic() + "m7");
        assertThat(GroundCharts.names(GroundCharts.one(key.toString(), plain), 2).subList(0, 2))
            .as("%s %s without a riff", key, dominant)
            .contains(home);
      }
      Key blues = new Key(key.tonic(), ScaleType.named("blues"));
      String bars =
          key.tonic() + "7 | % | " + Keys.chord(key, "5", "7") + " | " + key.tonic() + "7";
      assertThat(GroundCharts.names(GroundCharts.one(blues.toString(), bars), 3).subList(0, 2))
          .as("%s", blues)
          .contains(key.tonic() + " minor pentatonic");
    }
  }

  private static boolean sounds(Scale scale, String name) {
    Scale other = Scale.parse(name).orElseThrow();
    return other.tonic().soundsLike(scale.tonic()) && other.type().equals(scale.type());
  }

  @Test
  void over_the_sharp_nine_dominant_they_are_these_degrees() {
    // Common practice, as in reference/README.md: 1 #9 4 5 b7 and 4 #9 b13 b7 1 of the chord.
    for (Key key : Keys.MINOR) {
      Chord chord = Chord.parse(Keys.chord(key, "5", "7#9")).orElseThrow();
      Scale roots = new Scale(chord.root(), ScaleType.named("minor pentatonic"));
      assertThat(over(chord, roots)).containsExactly("1", "#9", "11", "5", "b7");
      assertThat(over(chord, key.pentatonic())).containsExactly("11", "b13", "b7", "1", "#9");
    }
  }

  private static List<String> over(Chord chord, Scale scale) {
    return scale.notes().stream().map(note -> DegreeNames.over(chord, note)).toList();
  }

  @Test
  void the_minor_pentatonic_a_whole_tone_up_lies_inside_the_dorian_mode() {
    // Common practice; the lower key's major sixth is the upper one's fifth.
    for (Key lower : Keys.MINOR) {
      Key upper = lower.shifted(2);
      Scale dorian = new Scale(lower.tonic(), ScaleType.named("dorian"));
      assertThat(upper.pentatonic().notes()).as("%s", lower).allMatch(dorian::contains);
      NoteName sixth = NoteName.parse(Keys.degree(lower, "6")).orElseThrow();
      assertThat(DegreeNames.in(lower, sixth)).hasToString("6");
      assertThat(DegreeNames.in(upper, sixth)).hasToString("5");
    }
  }

  @Test
  void sevenths_on_the_first_and_fourth_degree_are_a_blues_also_where_the_key_says_major() {
    Ground blues = GroundCharts.one("G major", "G7 | C7 | G7 | D7");
    assertThat(GroundCharts.names(blues, 1)).startsWith("G minor pentatonic");
    Ground leaving = GroundCharts.one("G major", "G7 | C | G | D7");
    assertThat(GroundCharts.names(leaving, 1)).startsWith("G mixolydian");
  }

  @Test
  void a_blues_begins_on_the_minor_pentatonic_and_offers_the_mixolydian() {
    for (Key minor : Keys.MINOR) {
      Key key = Keys.key(minor.tonic() + " blues");
      String one = key.tonic() + "7";
      String four = Keys.chord(key, "4", "7");
      String five = Keys.chord(key, "5", "7");
      Ground blues = GroundCharts.one(key.toString(), String.join(" | ", one, four, one, five));
      assertThat(GroundCharts.names(blues, 1))
          .startsWith(key.tonic() + " minor pentatonic", key.tonic() + " mixolydian");
      assertThat(GroundCharts.names(blues, 4).subList(0, 3))
          .contains(key.tonic() + " minor pentatonic");
    }
  }

  @Test
  void every_fit_lies_between_0_and_1_ranked_with_a_reason() {
    for (String chord : List.of("C", "F#m7b5", "Bb7#9", "Ebmaj7", "G7alt", "Abdim7", "N.C.")) {
      List<FittingScale> scales =
          GroundCharts.one("C minor", chord + " | Cm7").scalesAt(1, Beats.ONE);
      assertThat(scales).as(chord).isNotEmpty();
      assertThat(scales)
          .extracting(FittingScale::fit)
          .isSortedAccordingTo((a, b) -> b.compareTo(a));
      assertThat(scales).allMatch(s -> s.fit() >= 0 && s.fit() <= 1 && !s.why().isBlank());
    }
  }

  @Test
  void the_reason_names_chord_tones_colours_and_clashes() {
    Ground ground = GroundCharts.one("C minor", "Cm7 | Cm7");
    assertThat(ground.scalesAt(1, Beats.ONE).get(0).why())
        .isEqualTo("On the tonic: has C Eb G Bb of Cm7, F (11) is colour.");
    assertThat(
            ground.scalesAt(1, Beats.ONE).stream()
                .filter(s -> s.scale().toString().equals("C minor"))
                .findFirst()
                .orElseThrow()
                .why())
        .isEqualTo(
            "On the tonic: has C Eb G Bb of Cm7, D (9) F (11) are colour, Ab (b13) clashes: pass"
                + " through it.");
  }

  @Test
  void what_the_chord_does_is_the_reason_where_that_names_the_scale() {
    Ground ground = GroundCharts.one("Eb major", "Fm7 | E7 | Ebmaj7");
    assertThat(ground.scalesAt(2, Beats.ONE).get(0).why())
        .startsWith("Over a tritone substitute: has E G# B D of E7");
  }

  /** The third between minor and major is the sound of the blues (common practice). */
  @Test
  void over_a_dominant_seventh_of_the_blues_the_reason_tells_of_the_curl_on_the_third() {
    Ground ground = GroundCharts.one("Eb blues", "Eb7 | Ab7");
    assertThat(ground.scalesAt(1, Beats.ONE))
        .filteredOn(s -> s.scale().toString().equals("Eb minor pentatonic"))
        .singleElement()
        .satisfies(s -> assertThat(s.why()).contains("Gb is curled up towards G"));
    assertThat(ground.scalesAt(1, Beats.ONE))
        .filteredOn(s -> s.scale().toString().equals("Eb mixolydian"))
        .singleElement()
        .satisfies(s -> assertThat(s.why()).doesNotContain("curled"));
  }

  /** Both thirds and what each chord does with them (common practice). */
  @Test
  void in_a_blues_the_reasons_tell_of_both_thirds_over_each_of_its_chords() {
    for (Key minor : Keys.MINOR) {
      Key key = Keys.key(minor.tonic() + " blues");
      String bars = key.tonic() + "7 | " + Keys.chord(key, "4", "7") + " | ";
      Ground blues = GroundCharts.one(key.toString(), bars + Keys.chord(key, "5", "7"));
      String home = key.tonic() + " minor pentatonic";
      assertThat(why(blues, 1, home))
          .contains(note(key, "b3") + " is curled up towards " + note(key, "3"))
          .contains(note(key, "3") + " is to arrive on")
          .contains(note(key, "6") + " (6) sweetens it")
          .contains(note(key, "b5") + " (b5) only passes");
      assertThat(why(blues, 2, home))
          .contains(note(key, "3") + " is left alone as " + note(key, "b3") + " is its seventh")
          .contains(note(key, "6") + ", its third, is to arrive on");
      assertThat(why(blues, 3, home))
          .contains(note(key, "b7") + " is curled up towards " + note(key, "7"))
          .contains(note(key, "7") + " is to arrive on");
    }
  }

  private static String note(Key key, String degree) {
    return NoteName.parse(Keys.degree(key, degree)).orElseThrow().simplified().toString();
  }

  private static String why(Ground ground, int bar, String scale) {
    return ground.scalesAt(bar, Beats.ONE).stream()
        .filter(s -> s.scale().toString().equals(scale))
        .findFirst()
        .orElseThrow()
        .why();
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

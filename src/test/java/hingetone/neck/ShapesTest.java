package hingetone.neck;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.neck.Shape.Layout;
import hingetone.neck.Shape.Stretch;
import hingetone.theory.Key;
import hingetone.theory.Keys;
import hingetone.theory.Scale;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

class ShapesTest {
  private static final Fretboard NECK = Fretboard.of(Tuning.STANDARD, 0);

  /** Open strings in common use and one of our own, with steps of 3, 8, 1, 6 and 2 semitones. */
  static final List<Tuning> TUNINGS =
      List.of(
          Tuning.STANDARD,
          Tuning.parse("D A D G A D").orElseThrow(),
          Tuning.parse("open G").orElseThrow(),
          Tuning.parse("7-string").orElseThrow(),
          Tuning.parse("bass").orElseThrow(),
          Tuning.parse("E2 G2 D#3 E3 A#3 C4").orElseThrow(),
          Tuning.parse("C2 G2 D3 A3 E4 B4").orElseThrow());

  @Test
  void the_five_a_minor_pentatonic_shapes_are_those_of_the_handbooks() {
    // The table in reference/README.md, common to guitar handbooks; named by the starting degree.
    assertThat(frets("A minor pentatonic", "1", 5)).isEqualTo("5-8 5-7 5-7 5-7 5-8 5-8");
    assertThat(frets("A minor pentatonic", "b3", 8)).isEqualTo("8-10 7-10 7-10 7-9 8-10 8-10");
    assertThat(frets("A minor pentatonic", "4", 10))
        .isEqualTo("10-12 10-12 10-12 9-12 10-13 10-12");
    assertThat(frets("A minor pentatonic", "5", 12))
        .isEqualTo("12-15 12-15 12-14 12-14 13-15 12-15");
    assertThat(frets("A minor pentatonic", "b7", 3)).isEqualTo("3-5 3-5 2-5 2-5 3-5 3-5");
  }

  @Test
  void c_major_with_three_notes_a_string_is_that_of_the_handbooks() {
    assertThat(frets("C major", "1", 8))
        .isEqualTo("8-10-12 8-10-12 9-10-12 9-10-12 10-12-13 10-12-13");
  }

  @Test
  void no_note_is_missed_or_doubled_and_none_lies_off_the_neck_in_any_tuning() {
    for (Tuning tuning : TUNINGS) {
      for (int capo : List.of(0, 3)) {
        Fretboard neck = Fretboard.of(tuning, capo);
        for (String name :
            List.of("F minor pentatonic", "Eb major", "F# blues", "C diminished", "B whole tone")) {
          Scale scale = Scale.parse(name).orElseThrow();
          List<Shape> shapes = Shapes.of(neck, scale);
          assertThat(shapes).as("%s in %s", name, tuning).isNotEmpty();
          shapes.forEach(shape -> isWhole(neck, shape));
        }
      }
    }
  }

  private static void isWhole(Fretboard neck, Shape shape) {
    int[] sounding =
        shape.dots().stream().mapToInt(dot -> neck.midi(dot.spot())).sorted().toArray();
    int[] wanted =
        java.util.stream.IntStream.rangeClosed(sounding[0], sounding[sounding.length - 1])
            .filter(midi -> shape.scale().degreeOf(Math.floorMod(midi, 12)).isPresent())
            .toArray();
    assertThat(sounding).as("%s in %s", shape, neck.tuning()).isEqualTo(wanted);
    assertThat(shape.dots()).allMatch(dot -> neck.has(dot.spot()));
    assertThat(shape.dots()).allMatch(dot -> dot.pitch().midi() == neck.midi(dot.spot()));
  }

  @Test
  void in_standard_tuning_no_string_takes_more_than_five_frets() {
    for (String kind : List.of("minor pentatonic", "major", "harmonic minor", "blues", "altered")) {
      for (int tonic = 0; tonic < 12; tonic++) {
        Scale scale =
            new Scale(
                hingetone.theory.NoteName.ofFifths(tonic - 5),
                hingetone.theory.ScaleType.named(kind));
        assertThat(Shapes.of(NECK, scale)).noneMatch(shape -> shape.stretch() == Stretch.TOO_WIDE);
      }
    }
  }

  @Test
  void a_tuning_that_allows_no_better_has_its_stretches_marked() {
    Fretboard wide = Fretboard.of(Tuning.parse("C2 A2 F#3 D4").orElseThrow(), 0);
    assertThat(Shapes.of(wide, Scale.parse("C minor pentatonic").orElseThrow()))
        .isNotEmpty()
        .allMatch(shape -> shape.stretch() == Stretch.TOO_WIDE);
  }

  @Test
  void when_a_key_moves_up_every_shape_moves_up_as_many_frets() {
    // Common practice.
    Map<Key, List<List<Spot>>> all =
        Keys.MINOR.stream().collect(Collectors.toMap(key -> key, key -> spots(NECK, key)));
    for (Key from : Keys.MINOR) {
      for (Key to : Keys.MINOR) {
        List<List<Spot>> shapes = all.get(to);
        for (List<Spot> shape : all.get(from)) {
          List<Spot> moved = shape.stream().map(spot -> spot.up(Keys.up(from, to))).toList();
          if (moved.stream().allMatch(NECK::has)) {
            assertThat(shapes).as("%s to %s", from, to).contains(moved);
          }
        }
      }
    }
  }

  @Test
  void a_capo_moves_every_shape_down_by_its_fret() {
    for (int fret = 1; fret <= 5; fret++) {
      Fretboard capo = new Fretboard(Tuning.STANDARD, fret, NECK.lastFret(), false);
      for (Key key : Keys.MINOR) {
        List<List<Spot>> shapes = spots(capo, key);
        for (List<Spot> shape : spots(NECK, key)) {
          int down = -fret;
          List<Spot> moved = shape.stream().map(spot -> spot.up(down)).toList();
          if (moved.stream().allMatch(capo::has)) {
            assertThat(shapes).as("%s, capo %d", key, fret).contains(moved);
          }
        }
      }
    }
  }

  private static List<List<Spot>> spots(Fretboard neck, Key key) {
    return Shapes.of(neck, key.pentatonic()).stream()
        .map(shape -> shape.dots().stream().map(Dot::spot).toList())
        .toList();
  }

  private static String frets(String scale, String start, int fret) {
    Shape found =
        Shapes.of(NECK, Scale.parse(scale).orElseThrow()).stream()
            .filter(s -> s.layout() == Layout.EVEN && s.start().toString().equals(start))
            .filter(s -> s.lowest().fret() == fret)
            .findFirst()
            .orElseThrow();
    return found.strings().stream()
        .map(s -> s.stream().map(d -> "" + d.fret()).collect(Collectors.joining("-")))
        .collect(Collectors.joining(" "));
  }
}

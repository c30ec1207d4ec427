package hingetone.neck;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.theory.Key;
import hingetone.theory.Keys;
import hingetone.theory.Scale;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

class BendTest {
  private static final Fretboard NECK = Fretboard.of(Tuning.STANDARD, 0);

  @Test
  void a_bend_goes_from_one_note_of_the_scale_to_another() {
    for (Shape shape : minorPentatonics()) {
      for (Bend bend : Bend.all(shape)) {
        int rise = bend.to().midi() - bend.from().pitch().midi();
        assertThat(rise).isEqualTo(bend.size().semitones());
        assertThat(shape.scale().contains(bend.to().name())).isTrue();
        assertThat(bend.size().isPlayableAt(bend.from().spot(), bend.from().pitch().midi()))
            .isTrue();
      }
    }
  }

  /** Common practice: a bass player bends half a tone, on any of the strings. */
  @Test
  void the_strings_of_a_bass_are_not_bent_farther_than_half_a_tone() {
    Fretboard bass = Fretboard.of(Tuning.parse("bass").orElseThrow(), 0);
    List<Bend> bends =
        Shapes.of(bass, Scale.parse("E minor pentatonic").orElseThrow()).stream()
            .flatMap(shape -> Bend.all(shape).stream())
            .toList();
    assertThat(bends).isNotEmpty().allMatch(bend -> bend.size().cents() <= 100);
  }

  @Test
  void only_the_minor_third_is_curled() {
    for (Shape shape : minorPentatonics()) {
      assertThat(Bend.all(shape))
          .filteredOn(b -> b.size() == Bend.Size.CURL)
          .isNotEmpty()
          .allMatch(b -> b.from().degree().toString().equals("b3"));
    }
  }

  @Test
  void a_fourth_bent_under_the_seventh_has_another_fingering_an_octave_lower() {
    // Common practice: the fourth on string 2 bent a whole tone under the seventh at the same fret
    // of string 1; an octave lower it lies on strings 3 and 2, eight and seven frets below, where
    // a whole tone can be bent there.
    for (Key key : Keys.MINOR) {
      Set<Integer> frets = new TreeSet<>();
      for (Shape shape : Shapes.of(NECK, key.pentatonic())) {
        for (HeldBend pair : HeldBend.all(shape)) {
          Spot bent = pair.bend().from().spot();
          boolean fourthUnderSeventh =
              bent.string() == 2
                  && pair.held().spot().equals(new Spot(1, bent.fret()))
                  && pair.bend().from().degree().toString().equals("4")
                  && pair.bend().size() == Bend.Size.WHOLE;
          if (fourthUnderSeventh && bent.fret() >= 11) {
            assertThat(pair.bend().toDegree()).hasToString("5");
            assertThat(pair.held().degree()).hasToString("b7");
            assertThat(Figure.of(pair).octaves(NECK, -1).orElseThrow().touches())
                .containsExactly(
                    new Figure.Touch(new Spot(3, bent.fret() - 8), Optional.of(Bend.Size.WHOLE)),
                    new Figure.Touch(new Spot(2, bent.fret() - 7), Optional.empty()));
            frets.add(bent.fret());
          }
        }
      }
      assertThat(frets).as("%s", key).isNotEmpty();
    }
  }

  @Test
  void double_stops_lie_under_one_hand_and_know_their_interval() {
    for (Shape shape : minorPentatonics()) {
      assertThat(DoubleStop.all(shape))
          .isNotEmpty()
          .allMatch(s -> Math.abs(s.low().fret() - s.high().fret()) < Shape.HAND)
          .allMatch(
              s ->
                  s.interval().semitones()
                      == NECK.midi(s.high().spot()) - NECK.midi(s.low().spot()));
    }
  }

  private static List<Shape> minorPentatonics() {
    return Keys.MINOR.stream().flatMap(key -> Shapes.of(NECK, key.pentatonic()).stream()).toList();
  }
}

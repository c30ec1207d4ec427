package hingetone.neck;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.theory.Scale;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class BendTest {
  private static final Fretboard NECK = Fretboard.of(Tuning.STANDARD, 0);

  @Test
  void a_bend_goes_from_one_note_of_the_scale_to_another() {
    for (Shape shape : minorPentatonic()) {
      for (Bend bend : Bend.all(shape)) {
        int rise = bend.to().midi() - bend.from().pitch().midi();
        assertThat(rise).isEqualTo(bend.semitones());
        assertThat(shape.scale().contains(bend.to().name())).isTrue();
        assertThat(bend.kind().isPlayableAt(bend.from().spot())).isTrue();
      }
    }
  }

  @Test
  void only_the_minor_third_is_curled() {
    for (Shape shape : minorPentatonic()) {
      assertThat(Bend.all(shape))
          .filteredOn(b -> b.kind() == Bend.Kind.CURL)
          .isNotEmpty()
          .allMatch(b -> b.from().degree().toString().equals("b3"));
    }
  }

  @Test
  void the_pair_at_fret_15_has_another_fingering_an_octave_lower() {
    // Common practice: string 2 fret 15 bent from D5 to E5 under G5 on string 1 fret 15; an octave
    // lower string 3 fret 7 bent and string 2 fret 8.
    HeldBend pair =
        minorPentatonic().stream()
            .flatMap(s -> HeldBend.all(s).stream())
            .filter(h -> h.bend().from().spot().equals(new Spot(2, 15)))
            .filter(h -> h.bend().kind() == Bend.Kind.WHOLE)
            .filter(h -> h.held().spot().equals(new Spot(1, 15)))
            .findFirst()
            .orElseThrow();
    assertThat(pair.bend().to()).hasToString("E5");
    assertThat(pair.held().pitch()).hasToString("G5");
    Figure lower = Figure.of(pair).octaves(NECK, -1).orElseThrow();
    assertThat(lower.touches())
        .containsExactly(
            new Figure.Touch(new Spot(3, 7), Optional.of(Bend.Kind.WHOLE)),
            new Figure.Touch(new Spot(2, 8), Optional.empty()));
  }

  @Test
  void double_stops_lie_under_one_hand_and_know_their_interval() {
    for (Shape shape : minorPentatonic()) {
      assertThat(DoubleStop.all(shape))
          .isNotEmpty()
          .allMatch(s -> Math.abs(s.low().fret() - s.high().fret()) < Shape.HAND)
          .allMatch(
              s ->
                  s.interval().semitones()
                      == NECK.midi(s.high().spot()) - NECK.midi(s.low().spot()));
    }
  }

  private static List<Shape> minorPentatonic() {
    return Shapes.of(NECK, Scale.parse("A minor pentatonic").orElseThrow());
  }
}

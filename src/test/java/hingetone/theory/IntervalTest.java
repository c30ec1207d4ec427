package hingetone.theory;

import static hingetone.theory.Spellings.INTERVALS;
import static hingetone.theory.Spellings.NAMES;
import static hingetone.theory.Spellings.PITCHES;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class IntervalTest {
  @ParameterizedTest
  @CsvSource({
    "1,0,0",
    "b2,1,1",
    "2,2,1",
    "b3,3,2",
    "3,4,2",
    "4,5,3",
    "#4,6,3",
    "b5,6,4",
    "5,7,4",
    "#5,8,4",
    "b6,8,5",
    "6,9,5",
    "bb7,9,6",
    "b7,10,6",
    "7,11,6",
    "8,12,7",
    "b9,13,8",
    "9,14,8",
    "#9,15,8",
    "11,17,10",
    "#11,18,10",
    "b13,20,12",
    "13,21,12",
    "15,24,14",
    "b1,-1,0",
    "-5,-7,-4",
    "-b3,-3,-2"
  })
  void a_degree_has_its_semitones_and_its_staff_steps(String degree, int semitones, int steps) {
    Interval interval = Interval.parse(degree).orElseThrow();

    assertThat(interval.semitones()).isEqualTo(semitones);
    assertThat(interval.steps()).isEqualTo(steps);
    assertThat(interval).hasToString(degree);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "b",
        "#",
        "0",
        "16",
        "99",
        "03",
        "b#3",
        "3b",
        "--3",
        "b-3",
        "+5",
        " 3",
        "3 ",
        "x4",
        "♭3",
        "bbbbbbb3",
        "9999999999",
        "三"
      })
  void anything_else_is_no_degree(String text) {
    assertThat(Interval.parse(text)).isEmpty();
  }

  @Test
  void every_interval_reads_back_as_it_prints() {
    assertThat(INTERVALS).hasSizeGreaterThan(140);
    for (Interval interval : INTERVALS) {
      assertThat(Interval.parse(interval.toString())).as("" + interval).contains(interval);
    }
  }

  @Test
  void number_and_alteration_take_an_interval_apart() {
    for (int number = 1; number <= 15; number++) {
      for (int alteration = -6; alteration <= 6; alteration++) {
        Interval interval = Interval.ofNumber(number, alteration);

        assertThat(interval.number()).isEqualTo(number);
        assertThat(interval.alteration()).isEqualTo(alteration);
        assertThat(interval.simple().number()).isEqualTo((number - 1) % 7 + 1);
        assertThat(interval.simple().alteration()).isEqualTo(alteration);
      }
    }
  }

  @Test
  void adding_goes_in_any_order_and_can_be_undone() {
    for (Interval a : INTERVALS) {
      assertThat(a.plus(Interval.UNISON)).isEqualTo(a);
      assertThat(a.plus(a.negated())).isEqualTo(Interval.UNISON);
      for (Interval b : INTERVALS) {
        assertThat(a.plus(b)).isEqualTo(b.plus(a));
        assertThat(a.plus(b).minus(b)).isEqualTo(a);
        assertThat(a.plus(b).semitones()).isEqualTo(a.semitones() + b.semitones());
        assertThat(a.plus(b).steps()).isEqualTo(a.steps() + b.steps());
      }
    }
  }

  @Test
  void a_pitch_moved_and_moved_back_is_spelled_as_before() {
    for (Pitch pitch : PITCHES) {
      for (Interval interval : INTERVALS) {
        Pitch moved = pitch.plus(interval);

        assertThat(moved.midi()).isEqualTo(pitch.midi() + interval.semitones());
        assertThat(staffPlace(moved)).isEqualTo(staffPlace(pitch) + interval.steps());
        assertThat(pitch.to(moved)).isEqualTo(interval);
        assertThat(moved.minus(interval)).isEqualTo(pitch);
        assertThat(moved.name()).isEqualTo(pitch.name().plus(interval));
      }
    }
  }

  @Test
  void names_are_moved_without_their_octaves() {
    for (NoteName name : NAMES) {
      for (NoteName other : NAMES) {
        Interval between = name.to(other);

        assertThat(name.plus(between)).isEqualTo(other);
        assertThat(other.minus(between)).isEqualTo(name);
        assertThat(between.steps()).isBetween(0, 6);
      }
    }
  }

  @Test
  void moving_on_and_on_never_fails_and_comes_back() {
    NoteName name = Spellings.name("B##");
    Interval up = Interval.parse("######4").orElseThrow();
    NoteName far = name;
    for (int i = 0; i < 1000; i++) {
      far = far.plus(up);
    }
    assertThat(far.simplified().alteration()).isBetween(-1, 1);
    assertThat(far.simplified().soundsLike(far)).isTrue();
    for (int i = 0; i < 1000; i++) {
      far = far.minus(up);
    }
    assertThat(far).isEqualTo(name);
  }

  @Test
  void the_line_of_fifths_is_the_order_of_the_sharps() {
    assertThat(IntStream.rangeClosed(-8, 13).mapToObj(NoteName::ofFifths).toList())
        .isEqualTo(Spellings.names("Fb Cb Gb Db Ab Eb Bb F C G D A E B F# C# G# D# A# E# B# F##"));
  }

  private static int staffPlace(Pitch pitch) {
    return 7 * pitch.octave() + pitch.name().letter().ordinal();
  }
}

package hingetone.neck;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.neck.Shape.Stretch;
import hingetone.theory.Interval;
import hingetone.theory.Scale;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.IntSummaryStatistics;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The laws of shapes on necks of every kind, from three strings to twelve. */
class OddNecksTest {
  /** All tunings with a name, and others of 3 to 12 strings: in fifths, in pairs, re-entrant. */
  private static final List<Tuning> TUNINGS =
      Stream.concat(
              Tuning.NAMED.stream(),
              Stream.of(
                      "C3 G3 D4",
                      "D2 D2 D2",
                      "G4 C4 E4 A4",
                      "C2 A2 F#3 D4",
                      "G4 D3 G3 B3 D4",
                      "E2 G2 D#3 E3 A#3 C4",
                      "B0 E1 A1 D2 G2 C3 F3 A#3",
                      "F#1 B1 E2 A2 D3 G3 B3 E4 A4",
                      "C2 C#2 F2 B2 C3 F#3 G3 C4 D4 G#4",
                      "D2 A2 D3 F#3 A3 D4 D4 A4 D5 F#5 A5",
                      "E2 E3 A2 A3 D3 D4 G3 G4 B3 B3 E4 E4",
                      "B0 E1 A1 D2 G2 C3 F3 A#3 D4 F4 A4 C5")
                  .map(notes -> Tuning.parse(notes).orElseThrow()))
          .toList();

  private static final List<Scale> SCALES =
      Stream.of(
              "C minor pentatonic",
              "Eb major",
              "F# blues",
              "C harmonic minor",
              "B altered",
              "G diminished",
              "Db whole tone")
          .map(name -> Scale.parse(name).orElseThrow())
          .toList();

  private final List<String> wrong = new ArrayList<>();
  private int checked;

  @Test
  void shapes_keep_their_laws_on_every_neck() {
    int turn = 0;
    for (Fretboard neck : necks(3)) {
      check(neck, SCALES.get(turn++ % SCALES.size()));
    }
    assertThat(wrong).isEmpty();
    assertThat(checked).isGreaterThan(8_000);
  }

  @Test
  @Tag("long")
  void shapes_of_every_scale_keep_their_laws_on_every_neck() {
    for (Fretboard neck : necks(1)) {
      SCALES.forEach(scale -> check(neck, scale));
    }
    assertThat(wrong).isEmpty();
    assertThat(checked).isGreaterThan(100_000);
  }

  /** Each tuning with each capo up to the twelfth fret, on 21 to 27 frets, so many apart. */
  private static List<Fretboard> necks(int apart) {
    List<Fretboard> necks = new ArrayList<>();
    for (int capo = 0; capo <= 12; capo++) {
      for (int frets = 21; frets <= 27; frets += apart) {
        for (Tuning tuning : TUNINGS) {
          necks.add(new Fretboard(tuning, capo, frets, false));
        }
      }
    }
    return necks;
  }

  private void check(Fretboard neck, Scale scale) {
    List<Shape> shapes = Shapes.of(neck, scale);
    if (shapes.isEmpty()) {
      wrong.add("no shape of " + scale + " on " + neck);
    }
    for (Shape shape : shapes) {
      checked++;
      if (!isRight(neck, shape)) {
        wrong.add(shape.stretch() + " " + shape.dots() + " on " + neck);
      }
    }
  }

  private static boolean isRight(Fretboard neck, Shape shape) {
    int[] sounding = shape.dots().stream().mapToInt(d -> neck.midi(d.spot())).sorted().toArray();
    int[] wanted =
        IntStream.rangeClosed(sounding[0], sounding[sounding.length - 1])
            .filter(midi -> shape.scale().degreeOf(Math.floorMod(midi, 12)).isPresent())
            .toArray();
    boolean whole = Arrays.equals(sounding, wanted);
    int widest = shape.strings().stream().mapToInt(OddNecksTest::width).max().orElseThrow();
    boolean marked =
        switch (shape.stretch()) {
          case NONE -> widest <= 4;
          case WIDE -> widest == 5;
          case TOO_WIDE, BROKEN -> true;
        };
    return shape.dots().stream().allMatch(d -> neck.has(d.spot()))
        && shape.dots().stream().allMatch(d -> d.pitch().midi() == neck.midi(d.spot()))
        && whole == (shape.stretch() != Stretch.BROKEN)
        && marked;
  }

  private static int width(List<Dot> string) {
    return string.isEmpty() ? 0 : string.get(string.size() - 1).fret() - string.get(0).fret() + 1;
  }

  @Test
  void a_shape_is_too_wide_only_where_no_other_from_its_degree_is_within_reach() {
    List<String> needless = new ArrayList<>();
    int found = 0;
    for (Tuning tuning : TUNINGS) {
      Fretboard neck = Fretboard.of(tuning, 0);
      for (Scale scale : SCALES) {
        Set<Interval> degrees = new HashSet<>();
        Shapes.of(neck, scale).stream()
            .filter(s -> s.stretch() == Stretch.TOO_WIDE)
            .forEach(s -> degrees.add(s.start()));
        found += degrees.size();
        for (Interval degree : degrees) {
          if (new Plain(neck, scale).reaches(degree)) {
            needless.add(tuning + " " + scale + " from " + degree);
          }
        }
      }
    }
    assertThat(found).isPositive();
    assertThat(needless).isEmpty();
  }

  /** Every way to share a scale out over the strings, tried plainly, beside the program's own. */
  private record Plain(Fretboard neck, Scale scale) {

    boolean reaches(Interval degree) {
      List<Integer> order =
          IntStream.rangeClosed(1, neck.strings())
              .map(i -> neck.strings() + 1 - i)
              .boxed()
              .sorted(Comparator.comparing(neck::open))
              .toList();
      int open = neck.open(order.get(0));
      return IntStream.rangeClosed(0, neck.lastFret())
          .filter(fret -> scale.degreeOf((open + fret) % 12).filter(degree::equals).isPresent())
          .anyMatch(fret -> shares(order, 0, open + fret, new ArrayList<>()));
    }

    private boolean shares(List<Integer> order, int next, int from, List<List<Integer>> frets) {
      if (next == order.size()) {
        return withinReach(frets);
      }
      int open = neck.open(order.get(next));
      List<Integer> here = new ArrayList<>();
      for (int midi = from; midi < from + 12; midi++) {
        if (scale.degreeOf(midi % 12).isEmpty()) {
          continue;
        }
        here.add(midi - open);
        boolean fits = here.get(0) >= 0 && midi - open <= neck.lastFret();
        if (!fits || here.get(here.size() - 1) - here.get(0) > 4) {
          return false;
        }
        List<List<Integer>> longer = new ArrayList<>(frets);
        longer.add(List.copyOf(here));
        if (shares(order, next + 1, midi + 1, longer)) {
          return true;
        }
      }
      return false;
    }

    /** Six frets at most on two strings that follow one another. */
    private static boolean withinReach(List<List<Integer>> frets) {
      return IntStream.range(1, frets.size())
          .allMatch(
              i -> {
                IntSummaryStatistics ends =
                    frets.subList(i - 1, i + 1).stream()
                        .flatMap(List::stream)
                        .mapToInt(fret -> fret)
                        .summaryStatistics();
                return ends.getMax() - ends.getMin() < 6;
              });
    }
  }

  @Test
  void where_no_whole_shape_fits_above_the_capo_the_notes_there_are_given_and_marked() {
    // Five frets above the capo, strings a fifth or a major sixth apart: B or F# is out of reach.
    for (String notes : List.of("C3 G3 D4", "C2 A2 F#3 D4", "D2 D2 D2")) {
      Fretboard neck = new Fretboard(Tuning.parse(notes).orElseThrow(), 12, 17, false);
      for (Scale scale : SCALES) {
        for (Shape shape : Shapes.of(neck, scale)) {
          assertThat(isRight(neck, shape)).as("%s on %s", shape, neck).isTrue();
        }
      }
    }
    Fretboard fifths = new Fretboard(Tuning.parse("C3 G3 D4").orElseThrow(), 12, 17, false);
    assertThat(Shapes.of(fifths, Scale.parse("Eb minor pentatonic").orElseThrow()))
        .singleElement()
        .satisfies(shape -> assertThat(shape.stretch()).isEqualTo(Stretch.BROKEN))
        .satisfies(
            shape ->
                assertThat(shape.dots())
                    .extracting(d -> d.pitch().toString())
                    .containsExactly("Db4", "Eb4", "Ab4", "Bb4", "Eb5", "Gb5"));
  }
}

package hingetone.ground.ways;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.chart.EveryPair;
import hingetone.chart.Form;
import hingetone.ground.Ground;
import hingetone.ground.GroundCharts;
import hingetone.neck.Figure;
import hingetone.neck.Fretboard;
import hingetone.neck.Shape;
import hingetone.neck.Spot;
import hingetone.neck.Tuning;
import hingetone.theory.Key;
import hingetone.theory.Keys;
import hingetone.theory.NoteName;
import hingetone.theory.Scale;
import hingetone.time.Beats;
import hingetone.time.Position;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class CrossingTest {
  private static final Fretboard GUITAR = Fretboard.of(Tuning.STANDARD, 0);

  /** One of our own with odd steps. */
  private static final Fretboard ODD =
      Fretboard.of(Tuning.parse("E2 G2 D#3 E3 A#3 C4").orElseThrow(), 0);

  /** Six that players use, and the odd one. */
  private static final List<Fretboard> NECKS =
      List.of(
          GUITAR,
          Fretboard.of(Tuning.parse("D A D G A D").orElseThrow(), 2),
          Fretboard.of(Tuning.parse("open G").orElseThrow(), 0),
          Fretboard.of(Tuning.parse("7-string").orElseThrow(), 0),
          new Fretboard(Tuning.parse("bass").orElseThrow(), 0, 20, true),
          new Fretboard(Tuning.parse("drop D").orElseThrow(), 0, 27, false),
          ODD);

  @Test
  void the_hand_finds_shapes_of_the_new_key_where_it_is() {
    Ground ground = GroundCharts.everyMinorPair();
    for (Crossing crossing : ground.crossings()) {
      Shape hand = ground.neckAt(crossing.atBar() - 1, Beats.ONE);
      assertThat(crossing.stays())
          .as("%s to %s", crossing.from(), crossing.to())
          .isNotEmpty()
          .allMatch(stay -> stay.from().equals(hand))
          .allMatch(stay -> stay.to().low() <= hand.high() && stay.to().high() >= hand.low());
    }
  }

  @Test
  void the_seam_is_a_crossing_and_a_change_of_section_without_a_change_of_key_is_none() {
    Ground ground =
        GroundCharts.ground(
            GroundCharts.section("one", "F minor", "Fm7 | Fm7")
                + GroundCharts.section("two", "F minor", "Bbm7 | Fm7")
                + GroundCharts.section("three", "Ab minor", "Abm7 | C7"),
            GUITAR);
    assertThat(ground.crossings()).extracting(Crossing::atBar).containsExactly(5, 7);
    assertThat(ground.nextCrossing(Position.of(0, 1)).orElseThrow().atBar()).isEqualTo(5);
    assertThat(ground.nextCrossing(Position.of(5, 1)).orElseThrow().atBar()).isEqualTo(7);
    assertThat(ground.nextCrossing(Position.of(7, 1)).orElseThrow().atBar()).isEqualTo(11);
    assertThat(ground.nextCrossing(Position.of(18, 4)).orElseThrow().atBar()).isEqualTo(19);
    assertThat(GroundCharts.one("F minor", "Fm7 | C7").nextCrossing(Position.of(1, 1))).isEmpty();
  }

  @Test
  void the_dominant_at_a_sections_end_is_a_turnaround_to_whatever_key_comes_next() {
    for (String altered : List.of("7", "7b9", "7#9", "7#5")) {
      for (Key here : Keys.MINOR) {
        Key next = here.shifted(altered.length() + here.tonic().chroma() % 7);
        String tonic = here.tonic() + "m7";
        String dominant = Keys.chord(next, "5", altered);
        Ground ground =
            GroundCharts.two(
                next.toString(),
                next.tonic() + "m7 | " + next.tonic() + "m7",
                here.toString(),
                tonic + " | " + dominant + " | " + dominant,
                GUITAR);
        assertThat(ground.turnarounds()).as("%s to %s", here, next).hasSize(1);
        Turnaround back = ground.turnarounds().get(0);
        assertThat(back.atBar()).isEqualTo(6);
        assertThat(back.bars()).isEqualTo(2);
        assertThat(back.dominant()).hasToString(dominant);
        assertThat(back.to()).isEqualTo(next);
        assertThat(back.holds()).isNotEmpty();
        assertThat(back.runs()).isNotEmpty();
      }
    }
  }

  @Test
  void over_every_pair_of_minor_keys_and_of_major_keys_all_ways_keep_their_rules() {
    for (List<Key> keys : List.of(Keys.MINOR, Keys.MAJOR)) {
      String chord = keys.equals(Keys.MINOR) ? "m7" : "maj7";
      for (Fretboard neck : keys.equals(Keys.MINOR) ? NECKS : List.of(GUITAR, ODD)) {
        Form form = Form.of(EveryPair.of(keys, key -> key.tonic() + chord));
        Ground ground = Ground.of(form, neck);
        Set<String> pairs = new HashSet<>();
        for (Crossing crossing : ground.crossings()) {
          pairs.add(crossing.from() + " " + crossing.to());
          check(ground, crossing);
        }
        for (Form.Bar bar : ground.form().bars()) {
          Shape shape = ground.neckAt(bar.number(), Beats.ONE);
          assertThat(shape.dots()).as("bar %d", bar.number()).allMatch(d -> neck.has(d.spot()));
        }
        assertThat(pairs).hasSize(12 * 11);
      }
    }
  }

  private static void check(Ground ground, Crossing crossing) {
    Fretboard neck = ground.fretboard();
    Set<Integer> small = common(crossing.from().pentatonic(), crossing.to().pentatonic());
    Set<Integer> large = common(crossing.from().heptatonic(), crossing.to().heptatonic());
    assertThat(chromas(crossing.commonTones().pentatonic())).isEqualTo(small);
    assertThat(chromas(crossing.commonTones().scale())).isEqualTo(large);
    List<Object> wrong = new ArrayList<>();
    for (Hold hold : crossing.holds()) {
      if (!isRight(hold, crossing, neck, small, large)) {
        wrong.add(hold);
      }
    }
    for (Run run : crossing.runs()) {
      if (!isRight(run, crossing, neck)) {
        wrong.add(run);
      }
    }
    for (Stay stay : crossing.stays()) {
      if (!stay.to().dots().stream().allMatch(d -> neck.has(d.spot()))) {
        wrong.add(stay);
      }
    }
    assertThat(crossing.holds()).isNotEmpty();
    assertThat(crossing.runs()).isNotEmpty();
    assertThat(wrong).as("%s to %s in %s", crossing.from(), crossing.to(), neck).isEmpty();
  }

  /** On the neck, and a common tone, or where the pentatonics share none a half step to the new. */
  private static boolean isRight(
      Hold hold, Crossing crossing, Fretboard neck, Set<Integer> small, Set<Integer> large) {
    int moved = hold.noteAfter().midi() - hold.note().midi();
    boolean stays = moved == 0 && large.contains(hold.note().name().chroma());
    boolean moves =
        Math.abs(moved) == 1
            && small.isEmpty()
            && in(crossing.to().pentatonic(), hold.noteAfter().midi());
    return neck.has(hold.spot())
        && neck.midi(hold.spot()) == hold.note().midi()
        && (hold.move() == Hold.Move.STAY ? stays : moves)
        && hold.bend().stream().allMatch(b -> large.contains(b.to().name().chroma()));
  }

  /**
   * Its last step on the line and in the new pentatonic, all of it on the neck; not begun more than
   * two beats before, what lies between two notes in half a beat.
   */
  private static boolean isRight(Run run, Crossing crossing, Fretboard neck) {
    Run.Step last = run.steps().get(run.steps().size() - 1);
    boolean brief =
        run.kind() == Run.Kind.SCALE
            || run.steps().subList(1, run.steps().size() - 1).stream()
                .allMatch(s -> s.beats().equals(Beats.of(1, 2)) && s.notes().size() == 2);
    return brief
        && !run.steps().get(0).beatsBefore().isAfter(Beats.of(2))
        && last.beatsBefore().isZero()
        && isRight(run.octaves(neck, -1), run, neck, -12)
        && isRight(run.octaves(neck, 1), run, neck, 12)
        && last.notes().stream().allMatch(n -> in(crossing.to().pentatonic(), n.midi()))
        && run.steps().stream().allMatch(s -> s.spots().stream().allMatch(neck::has));
  }

  /** The same notes so many semitones away, with room on the neck for the whole walk. */
  private static boolean isRight(Optional<Figure> moved, Run run, Fretboard neck, int semitones) {
    if (moved.isEmpty()) {
      return true;
    }
    List<Spot> spots = moved.get().touches().stream().map(Figure.Touch::spot).toList();
    return IntStream.range(0, spots.size())
        .allMatch(
            i ->
                neck.midi(spots.get(i)) == neck.midi(run.figure().get(i)) + semitones
                    && neck.has(spots.get(i))
                    && neck.has(spots.get(i).up(run.frets())));
  }

  private static boolean in(Scale scale, int midi) {
    return scale.degreeOf(Math.floorMod(midi, 12)).isPresent();
  }

  /** A plain set computation, beside the program's own. */
  private static Set<Integer> common(Scale one, Scale other) {
    Set<Integer> both = chromas(one.notes());
    both.retainAll(chromas(other.notes()));
    return both;
  }

  private static Set<Integer> chromas(List<NoteName> notes) {
    Set<Integer> chromas = new HashSet<>();
    notes.forEach(n -> chromas.add(n.chroma()));
    return chromas;
  }
}

package hingetone.ground.ways;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.ground.Ground;
import hingetone.ground.GroundCharts;
import hingetone.neck.Fretboard;
import hingetone.neck.Spot;
import hingetone.neck.Tuning;
import hingetone.theory.Key;
import hingetone.theory.Keys;
import hingetone.time.Beats;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Busy ways from one key into another: figures walked fret by fret. */
class RunFinderTest {
  private static final Fretboard GUITAR = Fretboard.of(Tuning.STANDARD, 0);

  private static List<Run> walks(Crossing crossing, int size) {
    return crossing.runs().stream()
        .filter(run -> run.kind() == Run.Kind.WALK && run.figure().size() == size)
        .toList();
  }

  @Test
  void a_double_stop_is_walked_fret_by_fret_on_its_strings_to_land_on_the_line() {
    // Common practice; its shape on the strings never changes on the way.
    for (Crossing crossing : GroundCharts.everyMinorPair().crossings()) {
      List<Run> walks = walks(crossing, 2);
      assertThat(walks).as("%s to %s", crossing.from(), crossing.to()).isNotEmpty();
      for (Run walk : walks) {
        List<Spot> figure = walk.figure();
        assertThat(walk.steps())
            .extracting(Run.Step::spots)
            .isEqualTo(
                RunFinder.moves(walk.frets()).stream()
                    .map(frets -> figure.stream().map(spot -> spot.up(frets)).toList())
                    .toList());
        assertThat(walk.steps().get(walk.steps().size() - 1).beatsBefore().isZero()).isTrue();
      }
    }
  }

  @Test
  void a_minor_third_up_it_goes_over_three_frets() {
    Ground ground = GroundCharts.two("G minor", "Gm7 | Gm7", "Bb minor", "Bbm7 | Bbm7", GUITAR);
    Run walk =
        walks(ground.crossings().get(0), 2).stream()
            .filter(run -> run.figure().equals(List.of(new Spot(3, 7), new Spot(2, 8))))
            .findFirst()
            .orElseThrow();
    assertThat(walk.steps())
        .extracting(s -> s.notes().toString())
        .containsExactly("[D4, G4]", "[Eb4, Ab4]", "[E4, A4]", "[F4, Bb4]");
    assertThat(walk.steps())
        .extracting(Run.Step::beatsBefore)
        .containsExactly(Beats.of(3, 2), Beats.ONE, Beats.of(1, 2), Beats.ZERO);
  }

  @Test
  void a_figure_of_three_or_four_notes_is_touched_briefly_on_the_frets_between() {
    for (Crossing crossing : GroundCharts.everyMinorPair().crossings()) {
      for (int size : List.of(3, 4)) {
        for (Run walk : walks(crossing, size)) {
          int last = walk.steps().size() - 1;
          for (int i = 0; i <= last; i++) {
            assertThat(walk.steps().get(i).notes())
                .as("%s to %s: %s", crossing.from(), crossing.to(), walk)
                .hasSize(i == 0 || i == last ? size : 2);
          }
        }
      }
    }
  }

  @Test
  void no_figure_walks_farther_than_three_frets_where_the_keys_lie_nearer_or_share_all_notes() {
    GroundCharts.everyMinorPair().crossings().stream()
        .filter(crossing -> Math.abs(crossing.semitones()) <= 3)
        .forEach(RunFinderTest::atMostThreeFrets);
    for (Key major : Keys.MAJOR) {
      String minor = Keys.degree(major, "6") + " minor";
      GroundCharts.two(major.toString(), "N.C. | N.C.", minor, "N.C.", GUITAR)
          .crossings()
          .forEach(RunFinderTest::atMostThreeFrets);
    }
  }

  private static void atMostThreeFrets(Crossing crossing) {
    assertThat(crossing.runs())
        .as("%s to %s", crossing.from(), crossing.to())
        .filteredOn(run -> run.kind() == Run.Kind.WALK)
        .isNotEmpty()
        .allMatch(run -> Math.abs(run.frets()) <= 3);
  }

  @Test
  void a_fourth_or_a_fifth_is_crossed_by_a_short_walk_rather_than_by_five_frets() {
    int far = 0;
    for (Crossing crossing : GroundCharts.everyMinorPair().crossings()) {
      if (Math.abs(crossing.semitones()) == 5) {
        for (int size : List.of(2, 3)) {
          assertThat(Math.abs(walks(crossing, size).get(0).frets()))
              .as("%d notes, %s to %s", size, crossing.from(), crossing.to())
              .isLessThan(4);
        }
        far += Math.abs(walks(crossing, 4).get(0).frets()) < 4 ? 0 : 1;
      }
    }
    assertThat(far).as("of 24, with four notes").isLessThanOrEqualTo(2);
  }

  @Test
  void shifts_above_three_frets_are_walked_at_their_end_only() {
    assertThat(RunFinder.moves(1)).containsExactly(0, 1);
    assertThat(RunFinder.moves(2)).containsExactly(0, 1, 2);
    assertThat(RunFinder.moves(-3)).containsExactly(0, -1, -2, -3);
    assertThat(RunFinder.moves(5)).containsExactly(0, 3, 4, 5);
    assertThat(RunFinder.moves(-6)).containsExactly(0, -4, -5, -6);
  }
}
